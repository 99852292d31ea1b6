"""The test of two readings: what a lamp's beam is, and how sure it is then."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QScrollArea

from planner.app.fields.form import NoteLabel, button
from planner.app.fields.panel import FieldPanel, Workplace
from planner.plan.lamp import CosineProfile, LampModel
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.quantity import HANGING_HEIGHT, Quantity
from planner.plan.refusal import refusal
from planner.plan.survey_edits import beam_in_plan
from planner.units import COVERAGE

if TYPE_CHECKING:
    from planner.app.quantity_box import QuantityBox
    from planner.estimate.two_readings import BeamFound

_HUNG_M: Final = 0.5
_PAUSE_MS: Final = 150
"""From the last key to the answer."""
_READING: Final = Quantity(minimum=0.0, maximum=200_000.0)
"""In any unit of a meter: only the ratio counts."""


class TwoReadingsFields(FieldPanel):
    """Two readings and a height; shown while asked for, under the beam angle of a lamp."""

    def __init__(self, workplace: Workplace) -> None:
        super().__init__(workplace)
        self.open_button = self.add_wide(
            button(
                "Test of two readings …", "Tells the beam angle from two readings under this lamp."
            )
        )
        self.open_button.setCheckable(True)
        self.about = self.add_wide(
            NoteLabel(
                "In the dark, only this lamp burning, no wall near it that is not matt black: one "
                "reading straight under its middle, one as far aside as it hangs above the sensor, "
                "across its longer side, the sensor level. Do not look into the lamp."
            )
        )
        self.height_row, self.height_box = self.add_number(
            "Lamp above sensor", HANGING_HEIGHT, _HUNG_M, "So far aside is the second reading."
        )
        self.under_row, self.under_box = self.add_number(
            "Read under it", _READING, 0.0, "In any unit of your meter, both in the same."
        )
        self.beside_row, self.beside_box = self.add_number("Read aside", _READING, 0.0)
        self.told = self.add_wide(NoteLabel())
        self.take_button = self.add_wide(
            button("Use this beam", "Sets the beam angle and its doubt.", act=self.take)
        )
        self._pause = QTimer(self, singleShot=True, interval=_PAUSE_MS)
        self._pause.timeout.connect(self.tell)
        for box in (self.height_box, self.under_box, self.beside_box):
            box.lineEdit().textChanged.connect(lambda _text: self._pause.start())
        self.open_button.toggled.connect(self._show_test)
        self._show_test(False)

    def show_selection(self, selection: Place) -> None:
        """Show another lamp; what was found of the last one is gone."""
        self.open_button.setChecked(False)
        self.told.setText("")
        super().show_selection(selection)

    def refresh(self, plan: Plan) -> None:
        """Offer the test where the beam is an angle."""
        super().refresh(plan)
        lamp = self.selection.kind is PlaceKind.LAMP and self.selection.fits(plan)
        offered = lamp and isinstance(self._model(plan).profile, CosineProfile)
        self.open_button.setVisible(offered)
        if not offered:
            self.open_button.setChecked(False)

    def _show_test(self, shown: bool) -> None:
        for row in (self.height_row, self.under_row, self.beside_row):
            row.set_visible(shown)
        for part in (self.about, self.take_button, self.told):
            part.setVisible(shown)

        if shown:
            # The rows have their places once the layout had its turn.
            QTimer.singleShot(0, self._into_view)

    def _into_view(self) -> None:
        """Scroll the column so far that all of the test is seen, its beginning above all."""
        area = self.parentWidget()
        while area is not None and not isinstance(area, QScrollArea):
            area = area.parentWidget()
        if area is not None and self.open_button.isChecked():
            for part in (self.take_button, self.open_button):
                area.ensureWidgetVisible(part, 0, 8)

    def _model(self, plan: Plan) -> LampModel:
        return plan.lamps[self.selection.index].model

    def _found(self) -> BeamFound:
        """What the numbers as they stand tell; raises ``ValueError`` where they tell nothing."""
        # Heavy to import, and asked for by few.
        from planner.estimate.two_readings import beam_of_readings  # noqa: PLC0415

        def number(box: QuantityBox) -> float:
            return box.quantity.parse(box.lineEdit().text(), self.unit)

        under, beside, height = map(number, (self.under_box, self.beside_box, self.height_box))
        return beam_of_readings(self._model(self.plan), under, beside, height)

    def _words(self, found: BeamFound, before: LampModel) -> str:
        from planner.estimate.two_readings import beam_words  # noqa: PLC0415

        known = self.workplace.doubt()
        beam = ("beam", before.key)
        parts = () if known is None else known.parts
        mean = next((COVERAGE * one.mean for one in parts if (one.quantity, one.of) == beam), None)
        return beam_words(found, before, mean)

    def tell(self) -> None:
        """Say what the readings tell as soon as both are typed, before the plan takes it."""
        if not self.open_button.isChecked() or not self.selection.fits(self.plan):
            return
        try:
            words = self._words(self._found(), self._model(self.plan))
        except ValueError:
            words = ""  # half typed; what is wrong is said when it is asked for
        self.told.setText(words)
        QTimer.singleShot(0, self._into_view)  # words may push the button down

    def take(self) -> None:
        """Find the beam and put it into the plan, for all lamps of this kind."""
        self.take_typed()
        self._pause.stop()
        before = self._model(self.plan)
        try:
            found = self._found()
        except ValueError as error:
            self.told.setText("")
            self.beside_row.show_error(refusal(error, self.unit))
            return
        words = self._words(found, before)
        profile = CosineProfile.from_beam_angle(found.angle_deg)
        doubt = round(found.doubt_deg, 1)
        if self.edit(
            self.beside_row,
            lambda: beam_in_plan(self.plan, before.key, profile, doubt),
            "Set beam by two readings",
        ):
            self.told.setText(words)
