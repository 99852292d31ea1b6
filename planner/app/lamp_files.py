"""Lamps from files: asked for by menu or dropped on the window, shown, hung, kept, written."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QDialog,
    QDialogButtonBox,
    QGridLayout,
    QLabel,
    QLineEdit,
    QRadioButton,
    QWidget,
)

from planner.app import theme
from planner.app.edit_steps import EditSteps
from planner.app.fields.choosers import SpectrumChoice
from planner.app.fields.form import AlertLabel, NoteLabel, StillCombo, button
from planner.app.fields.panel import Workplace
from planner.app.plain import PlainLabel
from planner.app.plots.lamp_plots import PolarPlot, curves_of
from planner.app.quantity_box import QuantityBox
from planner.app.questions import Questions, in_file_name, write_text
from planner.app.settings import Settings
from planner.catalogue.lamp_files.convert import (
    aimed_down,
    summary,
    to_lamp_model,
    to_photometry,
    turned,
)
from planner.catalogue.lamp_files.photometry import (
    SIDEWAYS,
    LampFileError,
    Photometry,
    total_lumens,
)
from planner.catalogue.library import CatalogueError
from planner.metrics.figures import FIGURE
from planner.metrics.spectra import lux_per_umol, photon_flux_from_lumens
from planner.plan.lamp import LampModel
from planner.plan.quantity import PHOTON_FLUX, WATTS, Quantity
from planner.plan.refusal import refusal
from planner.plan.spectrum import Spectrum
from planner.units import capital

ABOUT: Final = (
    "A lamp file tells how the light is spread, not how many photons there are. Type the photon "
    "flux the maker prints, or compute it from the lumens with a spectrum."
)
TURNS: Final = ("as in the file", "by 90°", "by 180°", "by 270°")
KEEP_KEY: Final = "from-file"


class LampFileDialog(QDialog):
    """Preview of one file. ``accepted_model(LampModel, bool)``: hang it, and keep it as own.

    The key of the model is a stand-in; who keeps it gives it one of its own.
    """

    accepted_model = Signal(object, bool)
    spectrum_file_wanted = Signal()

    def __init__(
        self,
        path: Path,
        sets: tuple[Photometry, ...],
        spectra: SpectrumChoice,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(f"Lamp from {path.name}")
        self.spectrum: Spectrum | None = None
        """The spectrum the flux was computed with, once the lamp is taken."""
        self._path, self._sets, self._spectra = path, sets, spectra
        self.facts = QGridLayout()
        self.facts.setHorizontalSpacing(theme.WIDE)
        self.facts.setVerticalSpacing(2)
        self.facts.setColumnStretch(1, 1)
        self.warnings = PlainLabel(name="What is doubtful in the file", wrap=True)
        self.polar = PolarPlot(height=190)
        self.polar.setMinimumWidth(300)
        self._make_fields()
        self._arrange()
        self._connect()
        self._show_set()

    # -- building -----------------------------------------------------------------------

    def _make_fields(self) -> None:
        self.alert = AlertLabel()
        self.name_line = QLineEdit()
        self.set_combo = StillCombo(
            entries=[(f"Set {number}", number) for number in range(1, len(self._sets) + 1)]
        )
        self.turn_combo = StillCombo()
        self.turn_combo.addItems(TURNS)
        self.aim_switch = QCheckBox("Aim its beam straight down")
        self.typed_choice = QRadioButton("Photon flux (PPF)")
        self.computed_choice = QRadioButton("From its lumens with")
        self.typed_choice.setChecked(True)
        self.ppf_box = self._number(PHOTON_FLUX.within(0.0, PHOTON_FLUX.maximum), "Photon flux")
        self.spectrum_combo = StillCombo()
        self.spectrum_button = button("Spectrum from file…", "A CSV table of wavelength and value.")
        self.computed = NoteLabel()
        self.watts_box = self._number(WATTS.within(0.0, WATTS.maximum), "Watts")
        self.keep_switch = QCheckBox("Keep it among my own lamps, too")
        named = (
            (self.name_line, "Name"), (self.set_combo, "Lamp set"),
            (self.turn_combo, "Turn the light"), (self.spectrum_combo, "Spectrum"),
            (self.aim_switch, self.aim_switch.text()), (self.keep_switch, self.keep_switch.text()),
            (self.typed_choice, "Type the photon flux"),
            (self.computed_choice, "Compute the photon flux from the lumens with a spectrum"),
        )  # fmt: skip
        for widget, name in named:
            widget.setAccessibleName(name)
        self.buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
        self.hang_button = self.buttons.addButton(
            "Hang lamp", QDialogButtonBox.ButtonRole.AcceptRole
        )
        self._fill_spectra()

    def _number(self, quantity: Quantity, name: str) -> QuantityBox:
        box = QuantityBox(quantity, name)
        box.committed.connect(box.reset)
        box.stepped.connect(box.reset)
        box.refused.connect(self.alert.say)
        box.reverted.connect(lambda: self.alert.say(""))
        return box

    def _arrange(self) -> None:
        says = theme.column(self.facts, theme.RHYTHM, self.warnings, theme.REST)
        upper = theme.row(
            (says, 1), (self.polar, 0, Qt.AlignmentFlag.AlignTop), gap=3 * theme.RHYTHM
        )
        form = QGridLayout()
        form.setHorizontalSpacing(theme.RHYTHM)
        form.setVerticalSpacing(theme.HALF)
        form.setColumnStretch(1, 1)
        lines: tuple[tuple[QWidget | str, QWidget, QWidget | None], ...] = (
            ("Name", self.name_line, None),
            ("Lamp set", self.set_combo, None),
            ("Turn the light", self.turn_combo, None),
            ("", self.aim_switch, None),
            (self.typed_choice, self.ppf_box, None),
            (self.computed_choice, self.spectrum_combo, self.spectrum_button),
            ("", self.computed, None),
            ("Watts", self.watts_box, None),
            ("", self.keep_switch, None),
        )
        self._labels: dict[QWidget, QWidget] = {}
        for line, (label, field, beside) in enumerate(lines):
            text: QWidget = PlainLabel(label) if isinstance(label, str) else label
            if isinstance(text, QLabel):
                text.setBuddy(field)
            self._labels[field] = text
            form.addWidget(text, line, 0)
            form.addWidget(field, line, 1, 1, 1 if beside else 2)
            if beside is not None:
                form.addWidget(beside, line, 2)
        theme.column(
            upper, NoteLabel(ABOUT), form, self.alert, theme.REST, self.buttons, on=self,
            gap=theme.RHYTHM, edges=theme.WIDE,
        )  # fmt: skip
        self.setMinimumWidth(880)

    def _connect(self) -> None:
        self.buttons.accepted.connect(self._hang)
        self.buttons.rejected.connect(self.reject)
        self.set_combo.activated.connect(self._show_set)
        self.turn_combo.activated.connect(self._show_shape)
        self.aim_switch.toggled.connect(self._show_shape)
        self.typed_choice.toggled.connect(self._show_flux)
        self.spectrum_combo.activated.connect(self._show_flux)
        self.spectrum_button.clicked.connect(self.spectrum_file_wanted)

    # -- showing ------------------------------------------------------------------------

    @property
    def photometry(self) -> Photometry:
        """The file, with the lamp set chosen."""
        return self._sets[max(self.set_combo.currentIndex(), 0)]

    def _show_set(self) -> None:
        photometry = self.photometry
        theme.emptied(self.facts)
        for line, (what, value) in enumerate(summary(photometry)):
            label, said = NoteLabel(what), PlainLabel(value)
            label.setWordWrap(False)
            said.setWordWrap(True)
            self.facts.addWidget(label, line, 0, Qt.AlignmentFlag.AlignTop)
            self.facts.addWidget(said, line, 1)
        several = len(self._sets) > 1
        self.set_combo.setVisible(several)
        self._labels[self.set_combo].setVisible(several)
        aimable = SIDEWAYS in photometry.warnings
        self.aim_switch.setVisible(aimable)
        told = "\n".join(f"△ {warning}" for warning in photometry.warnings)
        self.warnings.setText(told)
        self.warnings.setVisible(bool(told))
        self.name_line.setText(photometry.name or self._path.stem)
        self.watts_box.reset(photometry.watts or 0.0)
        self._show_shape()
        self._show_flux()
        self.adjustSize()

    def _show_shape(self) -> None:
        self.alert.say("")
        shape = turned(self.photometry, self.turn_combo.currentIndex())
        if self.aim_switch.isChecked():
            shape = aimed_down(shape)
        dark = shape.candela.max() <= 0
        self.polar.show_curves(None if dark else curves_of(shape))
        if dark:
            self.alert.say("The beam of this file is too narrow to be aimed down.")

    def _show_flux(self) -> None:
        computing = self.computed_choice.isChecked()
        self.ppf_box.setEnabled(not computing)
        self.spectrum_combo.setEnabled(computing)
        self.spectrum_button.setEnabled(computing)
        lumens = total_lumens(self.photometry)
        spectrum = self._spectra.spectra[self.spectrum_combo.currentIndex()]
        flux = photon_flux_from_lumens(lumens, spectrum)
        self.computed.setText(
            f"{lumens:.0f} lm of this spectrum are {FIGURE['photon_flux'].text(flux)}."
        )
        self.computed.setEnabled(computing)

    def _fill_spectra(self) -> None:
        self.spectrum_combo.offer([(one.name, one.key) for one in self._spectra.spectra])

    def choose_newest_spectrum(self, notes: tuple[str, ...] = ()) -> None:
        """Use the spectrum that was read last, and tell what is doubtful about it."""
        self._fill_spectra()
        self.spectrum_combo.setCurrentIndex(self.spectrum_combo.count() - 1)
        self.computed_choice.setChecked(True)
        self._show_flux()
        self.alert.say(" ".join(notes))

    # -- the lamp -----------------------------------------------------------------------

    def model(self) -> LampModel:
        """The lamp as the fields stand.

        Raises
        ------
        LampFileError, ValueError
            If something is missing or impossible; the message says what would be right.
        """
        computing = self.computed_choice.isChecked()
        spectrum = self._spectra.spectra[self.spectrum_combo.currentIndex()]
        ppf, watts = self.ppf_box.value, self.watts_box.value
        return to_lamp_model(
            self.photometry,
            key=KEEP_KEY,
            name=self.name_line.text().strip(),
            ppf=None if computing or ppf <= 0 else ppf,
            lumens_per_umol=lux_per_umol(spectrum) if computing else None,
            watts=watts if watts > 0 else None,
            quarter_turns=self.turn_combo.currentIndex(),
            aim_down=self.aim_switch.isChecked(),
            source=f"Lamp file {self._path.name}, {self.photometry.source_format}",
        )

    def _hang(self) -> None:
        boxes = (self.ppf_box, self.watts_box)
        for box in boxes:
            box.commit()
        if any(box.is_edited for box in boxes):
            return
        try:
            model = self.model()
        except LampFileError as error:
            text = str(error)
            self.alert.say(capital(text))
            return
        except ValueError as error:
            self.alert.say(refusal(error))
            return
        chosen = self._spectra.spectra[self.spectrum_combo.currentIndex()]
        self.spectrum = chosen if self.computed_choice.isChecked() else None
        self.accepted_model.emit(model, self.keep_switch.isChecked())
        self.accept()


# -- lamps from files ------------------------------------------------------------------

LAMP_FILTER: Final = "Lamp files (*.ies *.ldt *.IES *.LDT);;All files (*)"
SPECTRUM_FILTER: Final = "Tables (*.csv *.txt *.tsv);;All files (*)"
LM63_FILTER: Final = "LM-63 lamp files (*.ies);;All files (*)"
MOST_SETS: Final = 20


class LampFileCommands(QObject):
    """What the window does with lamp files; ``told(str)`` with a line for the status bar."""

    told = Signal(str)

    def __init__(
        self,
        workplace: Workplace,
        steps: EditSteps,
        spectra: SpectrumChoice,
        questions: Questions,
        settings: Settings,
        window: QWidget,
    ) -> None:
        super().__init__(window)
        self._workplace, self._steps, self._spectra = workplace, steps, spectra
        self._questions, self._settings, self._window = questions, settings, window
        self.dialog: LampFileDialog | None = None

    # -- in -------------------------------------------------------------------------------

    def choose(self) -> None:
        """Ask which lamp file, and show it."""
        path = self._questions.open_file("Add lamp from file", self._settings.folder, LAMP_FILTER)
        if path is not None:
            self.show_file(path)

    def show_file(self, path: Path) -> bool:
        """Show a lamp file in its preview; one message says why it cannot be read."""
        try:
            sets = _read_all_sets(path)
        except LampFileError as error:
            text = str(error)
            message = text if path.name in text else f"'{path.name}', {text}"
            self._questions.tell_failure("This lamp file cannot be used", message)
            return False
        self._settings.keep(last_folder=path.absolute().parent)
        dialog = LampFileDialog(path, sets, self._spectra, self._window)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.accepted_model.connect(self._hang)
        dialog.spectrum_file_wanted.connect(self._read_spectrum)
        dialog.finished.connect(self._forget)
        self.dialog = dialog
        dialog.open()
        dialog.ppf_box.setFocus()
        return True

    def _forget(self) -> None:
        self.dialog = None

    def _read_spectrum(self) -> None:
        from planner.catalogue.spectra import SpectrumError  # noqa: PLC0415 - seldom needed

        folder = self._settings.folder
        path = self._questions.open_file("Spectrum from file", folder, SPECTRUM_FILTER)
        if path is None or self.dialog is None:
            return
        try:
            _, notes = self._spectra.read(path)
        except SpectrumError as error:
            self.dialog.alert.say(str(error))
        else:
            self.dialog.choose_newest_spectrum(notes)

    def _hang(self, model: LampModel, keep: bool) -> None:
        shelf = self._workplace.shelf
        # Lamps of one key count as one kind: a plan may hold others from files by that name.
        taken = {lamp.model.key for lamp in self._workplace.document.plan.lamps}
        model = model.model_copy(update={"key": shelf.own_lamp_key(model.name, taken)})
        if keep:
            try:
                shelf.save(model)
            except CatalogueError as error:
                self._questions.tell_failure("The lamp was not kept", str(error))
        if self.dialog is not None and self.dialog.spectrum is not None:
            self._spectra.choose(model.key, self.dialog.spectrum)
        self._steps.hang_model(model)

    # -- out ------------------------------------------------------------------------------

    def export(self) -> bool:
        """Write the selected lamp as an LM-63 file; whether it was written."""
        from planner.catalogue.lamp_files.lm63_write import lm63_text  # noqa: PLC0415

        index = self._steps.lamp
        if index is None:
            return False
        model = self._workplace.document.plan.lamps[index].model
        proposal = self._settings.folder / f"{in_file_name(model.name) or 'lamp'}.ies"
        spectrum = self._spectra.of_lamp(model.key)
        scale = None if spectrum is None else lux_per_umol(spectrum)

        def write(path: Path) -> None:
            write_text(path, lm63_text(to_photometry(model, scale)))

        path = self._questions.save_into("Lamp as LM-63", proposal, LM63_FILTER, "lamp", write)
        if path is None:
            return False
        light = "scaled to 1000 lm" if spectrum is None else f"lumens by '{spectrum.name}'"
        self.told.emit(f"Wrote {path.name}, {light}")
        return True


def _read_all_sets(path: Path) -> tuple[Photometry, ...]:
    """The file once for each of its lamp sets (only EULUMDAT has several)."""
    from planner.catalogue.lamp_files.reading import read_lamp_file  # noqa: PLC0415

    found = [read_lamp_file(path)]
    while found[0].source_format == "EULUMDAT" and len(found) < MOST_SETS:
        try:
            found.append(read_lamp_file(path, lamp_set=len(found)))
        except LampFileError:
            break
    return tuple(found)
