"""Variants: each edit of their list an undo step, keeping a sketch, trying by the dozen."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Final

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import (
    QCheckBox,
    QWidget,
)

from planner.app import theme
from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.choosers import Shelf, lining_places, lining_title
from planner.app.fields.form import TickList, button
from planner.app.fields.panel import FieldForm
from planner.app.plain import PlainLabel
from planner.metrics.figures import FIGURE
from planner.plan import variant_edits
from planner.plan.ageing import as_new, fading_words, later
from planner.plan.lamp import LampModel
from planner.plan.lining import Lining
from planner.plan.place import Place
from planner.plan.plan import Plan, Setup
from planner.plan.quantity import COUNT, HANGING_HEIGHT
from planner.plan.refusal import refusal
from planner.units import LengthUnit, in_unit


class VariantSteps(QObject):
    """What can be done to the variants of the open plan.

    ``told`` carries a sentence about what was done, ``refused`` one about what was not.
    The plan as it was opened, saved or last kept is the one a sketch is compared with when
    it is kept.
    """

    told = Signal(str)
    refused = Signal(str)

    def __init__(self, document: Document, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._document = document
        self._before = document.plan
        document.path_changed.connect(self._begin_here)

    def _begin_here(self) -> None:
        self._before = self._document.plan

    # -- making -------------------------------------------------------------------------

    def keep(self, unit: LengthUnit = LengthUnit.CM) -> None:
        """Keep the sketch as a variant, whole as it is now.

        Where something was changed since the plan was opened or saved, the sketch goes back
        to where it was and the variant is named for what differs; else the plan stays, and so
        it does where it began without a lamp: nobody wishes to go back to an empty space.
        """
        plan = self._document.plan
        before = self._before if self._before.lamps else plan
        name = variant_edits.name_of(before, plan, unit)
        start = plan.with_setup(before) if name else plan
        words = (
            "The sketch is back where it was; adopt the option to work on with it."
            if name
            else "Go on sketching; it stays as it is now."
        )
        kept = (name or f"{plan.name}, kept"[: variant_edits.MOST_LETTERS], plan)
        made = self._made(lambda _plan: variant_edits.add_variants(start, kept))
        if made is None:
            return
        self._before = made
        found = made.variants[-1].name
        self._document.apply(made, f"Keep option {found}")
        self.told.emit(f"Kept as option '{found}'. {words}")

    def handlers(self) -> dict[str, Callable[[], object]]:
        """What keeps the sketch at another age, by the keys of the window's actions."""
        return {
            "keep_new": lambda: self.keep_as("As new", as_new(self._document.plan)),
            "keep_later": lambda: self.keep_as("A year on", later(self._document.plan)),
        }

    def keep_as(self, name: str, setup: Setup) -> bool:
        """Keep a setup that was found as one more variant; the sketch stays as it is."""
        kept = (name[: variant_edits.MAX_NAME], setup)
        made = self._made(lambda plan: variant_edits.add_variants(plan, kept))
        if made is None:
            return False
        found = made.variants[-1].name
        self._document.apply(made, f"Keep option {found}")
        more = f" {words}" if (words := fading_words(made.variants[-1].setup)) else ""
        self.told.emit(f"Kept as option '{found}', beside the plan.{more}")
        return True

    def try_all(
        self,
        linings: Sequence[Lining] = (),
        lamps: Sequence[tuple[LampModel, int]] = (),
        heights: tuple[float, float, int] | None = None,
        *,
        place: Place | None = None,
        unit: LengthUnit = LengthUnit.CM,
    ) -> bool:
        """One more variant for every combination; ``heights`` are from, to (metres), how many.

        What cannot be is told in words, and the others are made.
        """
        cannot: list[str] = []

        def build(plan: Plan) -> Plan:
            tried = () if heights is None else variant_edits.heights_between(*heights)
            return variant_edits.try_all(
                plan, linings=linings, place=place, lamps=lamps, heights=tried, unit=unit,
                refused=cannot.append,
            )  # fmt: skip

        made = self._made(build)
        count = 0 if made is None else len(made.variants) - len(self._document.plan.variants)
        only = linings[0].name if count == 1 and linings else ""
        done = self._apply(made, f"Try lining {only}" if only else f"Try {count} options")
        if done and cannot:
            rest = f" {len(cannot) - 1} more cannot be either." if len(cannot) > 1 else ""
            self.told.emit(f"{count} tried. {cannot[0]}{rest}")
        return done

    # -- one of them --------------------------------------------------------------------

    def rename(self, key: str, name: str) -> bool:
        """Give a variant another name."""
        name = name.strip()
        if not name:
            self.refused.emit("An option needs a name.")
            return False
        made = self._made(lambda plan: variant_edits.change_variant(plan, key, name=name))
        return self._apply(made, f"Rename option {name}")

    def remove(self, key: str) -> bool:
        """Take a variant out."""
        name = self._document.plan.variant(key).name
        made = self._made(lambda plan: variant_edits.remove_variant(plan, key))
        return self._apply(made, f"Remove option {name}")

    def move(self, key: str, by: int) -> bool:
        """Move a variant along the list."""
        return self.move_to(key, self._place(key) + by)

    def move_to(self, key: str, to: int) -> bool:
        """Give a variant another place in the list."""
        if to == self._place(key) or not 0 <= to < len(self._document.plan.variants):
            return False
        made = self._made(lambda plan: variant_edits.move_variant(plan, key, to))
        return self._apply(made, f"Move option {self._document.plan.variant(key).name}")

    def _place(self, key: str) -> int:
        return [variant.key for variant in self._document.plan.variants].index(key)

    def duplicate(self, key: str) -> bool:
        """One more variant just as this one, behind it."""
        name = self._document.plan.variant(key).name
        made = self._made(lambda plan: variant_edits.duplicate_variant(plan, key))
        return self._apply(made, f"Duplicate option {name}")

    def open(self, key: str) -> bool:
        """Put a variant on the sketch; it stays in the list, and so does what was sketched."""
        name = self._document.plan.variant(key).name
        made = self._made(lambda plan: variant_edits.open_variant(plan, key))
        words = f"The sketch is '{name}' now; what was on it is kept as an option."
        return self.adopt_plan(made, f"Open option {name}", words)

    def adopt(self, key: str) -> bool:
        """Make a variant the plan itself."""
        name = self._document.plan.variant(key).name
        made = self._made(lambda plan: variant_edits.adopt_variant(plan, key))
        return self.adopt_plan(made, f"Adopt option {name}", f"'{name}' is the plan now.")

    def adopt_plan(self, made: Plan | None, label: str, words: str = "") -> bool:
        """Make a plan that was found the open one; its lists stay those of the open plan."""
        if made is None or not self._apply(made, label):
            return False
        self._before = made
        self.told.emit(f"{words} Undo brings the former plan back.".strip())
        return True

    def _made(self, build: Callable[[Plan], Plan]) -> Plan | None:
        try:
            return build(self._document.plan)
        except ValueError as error:
            self.refused.emit(refusal(error))
            return None

    def _apply(self, made: Plan | None, label: str) -> bool:
        if made is None:
            return False
        self._document.apply(made, label)
        return True


_MOST_LAMPS: Final = 12.0


def offer_things(ticks: TickList, things: Mapping[str, Lining] | Mapping[str, LampModel]) -> None:
    """Offer linings (none but those that are a surface) or lamps, where they are others."""
    titles = {
        key: lining_title(one)
        if isinstance(one, Lining)
        else f"{FIGURE['watts'].text(one.watts)}  {one.name}"
        for key, one in things.items()
        if not (isinstance(one, Lining) and one.is_opening)
    }
    if ticks.keys != tuple(titles):
        ticks.offer([(key, title, things[key].name) for key, title in titles.items()])


class TryForm(QWidget):
    """Linings, lamps and heights beside each other; ``made`` when options were added."""

    made = Signal()

    def __init__(
        self, document: Document, display: Display, shelf: Shelf, steps: VariantSteps
    ) -> None:
        super().__init__()
        self._document, self._display = document, display
        self._shelf, self._steps = shelf, steps
        self._linings: dict[str, Lining] = {}
        self._lamps: dict[str, LampModel] = {}
        self.linings = TickList("Linings to try")
        self.lamps = TickList("Lamps to try")
        self.form = FieldForm(document, display)
        _, self.where = self.form.add_choice("Linings go onto", [])
        _, self.least = self.form.add_number("Lamps, from", COUNT.within(1.0, _MOST_LAMPS), 1)
        _, self.most = self.form.add_number("to", COUNT.within(1.0, _MOST_LAMPS), 1)
        self.heights = self.form.add_wide(QCheckBox("Several hanging heights"))
        self.low_row, self.low = self.form.add_number("From", HANGING_HEIGHT, 0.2)
        self.high_row, self.high = self.form.add_number("To", HANGING_HEIGHT, 0.5)
        self.count_row, self.count = self.form.add_number("How many", COUNT.within(2.0, 20.0), 4)
        self.words = self.form.add_wide(PlainLabel(name="What will be tried", wrap=True))
        self.try_button = button("Try them", "One option for every combination")
        self.try_button.clicked.connect(self.try_ticked)
        self.form.add_buttons(self.try_button)
        self.alert = self.form.add_alert()
        self.form.end()
        self._arrange()
        for box in (self.least, self.most, self.count):
            box.committed.connect(lambda _value: self._count())
            box.stepped.connect(lambda _value: self._count())
        self.heights.toggled.connect(lambda _on: self._count())
        for ticks in (self.linings, self.lamps):
            ticks.counted.connect(self._count)
        steps.refused.connect(self._refuse)
        document.changed.connect(lambda _old, _new: self._fill())
        shelf.changed.connect(self._fill)
        self._fill()

    def _arrange(self) -> None:
        layout = theme.row(on=self, gap=theme.WIDE)
        for heading, ticks in (("Linings", self.linings), ("Lamps", self.lamps)):
            title = PlainLabel(heading, bold=True)
            column = theme.column(title, (ticks, 1), gap=theme.HALF)
            layout.addLayout(column, 1)

    def _fill(self) -> None:
        plan = self._document.plan
        self._linings = self._shelf.catalogue.linings_for(plan)
        self._lamps = self._shelf.catalogue.lamps_for(plan)
        offer_things(self.linings, self._linings)
        offer_things(self.lamps, self._lamps)
        self.where.offer(lining_places(plan))

    def _lamp_counts(self) -> range:
        low, high = round(self.least.value), round(self.most.value)
        return range(min(low, high), max(low, high) + 1)

    def _count(self) -> None:
        linings, lamps = len(self.linings.ticked()), len(self.lamps.ticked())
        heights = round(self.count.value) if self.heights.isChecked() else 0
        for row in (self.low_row, self.high_row, self.count_row):
            row.set_visible(self.heights.isChecked())
        parts = [f"{linings} lining{'s' * (linings != 1)}"] * (linings > 0)
        numbers = len(self._lamp_counts())
        parts += [f"{lamps * numbers} kinds and numbers of lamps"] * (lamps > 0)
        parts += [f"{heights} heights"] * (heights > 0)
        whole = max(linings, 1) * max(lamps * numbers, 1) * max(heights, 1) if parts else 0
        self.words.setText(" x ".join(parts) or "Tick linings, lamps, or several heights.")
        self.try_button.setEnabled(whole > 0)
        text = "Try it" if whole == 1 else f"Try these {whole}" if whole else "Try"
        self.try_button.setText(text)
        self.try_button.setAccessibleName(text)

    def try_ticked(self) -> None:
        """Make an option of every combination."""
        self.form.take_typed()
        self.alert.say("")
        heights = None
        if self.heights.isChecked():
            heights = self.low.value, self.high.value, round(self.count.value)
        made = self._steps.try_all(
            [self._linings[key] for key in self.linings.ticked()],
            [(self._lamps[key], n) for key in self.lamps.ticked() for n in self._lamp_counts()],
            heights,
            place=self.where.currentData(),
            unit=self._display.unit,
        )
        if made:
            self.linings.tick()
            self.lamps.tick()
            self.made.emit()

    def _refuse(self, sentence: str) -> None:
        if self.isVisible():
            self.alert.say(in_unit(sentence, self._display.unit))
