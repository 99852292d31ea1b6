"""Edits of the list of variants, each one named undo step; and keeping a sketch as a variant."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QObject, Signal

from planner.app.document import Document
from planner.plan import variant_edits
from planner.plan.lamp import LampModel
from planner.plan.lining import Lining
from planner.plan.plan import Plan
from planner.plan.refusal import refusal
from planner.units import LengthUnit

_NAME_LENGTH = 60


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
        to where it was and the variant is named for what differs; else the plan stays.
        """
        plan = self._document.plan
        name = variant_edits.name_of(self._before, plan, unit)
        start = plan.with_setup(self._before) if name else plan
        words = (
            "The sketch is back where it was; adopt the variant to work on with it."
            if name
            else "Go on sketching; it stays as it is now."
        )
        kept = (name or f"{plan.name}, kept"[:_NAME_LENGTH], plan)
        made = self._made(lambda _plan: variant_edits.add_variants(start, kept))
        if made is None:
            return
        self._before = made
        found = made.variants[-1].name
        self._document.apply(made, f"Keep as variant {found}")
        self.told.emit(f"Kept as variant '{found}'. {words}")

    def try_all(
        self,
        linings: Sequence[Lining] = (),
        lamps: Sequence[tuple[LampModel, int]] = (),
        heights: tuple[float, float, int] | None = None,
        *,
        wall: int | None = None,
        unit: LengthUnit = LengthUnit.CM,
    ) -> bool:
        """One more variant for every combination; ``heights`` are from, to (metres), how many."""

        def build(plan: Plan) -> Plan:
            tried = () if heights is None else variant_edits.heights_between(*heights)
            return variant_edits.try_all(
                plan, linings=linings, wall=wall, lamps=lamps, heights=tried, unit=unit
            )

        made = self._made(build)
        count = 0 if made is None else len(made.variants) - len(self._document.plan.variants)
        only = linings[0].name if count == 1 and linings else ""
        return self._apply(made, f"Try lining {only}" if only else f"Try {count} options")

    # -- one of them --------------------------------------------------------------------

    def rename(self, key: str, name: str) -> bool:
        """Give a variant another name."""
        name = name.strip()
        if not name:
            self.refused.emit("A variant needs a name.")
            return False
        made = self._made(lambda plan: variant_edits.change_variant(plan, key, name=name))
        return self._apply(made, f"Rename variant {name}")

    def remove(self, key: str) -> bool:
        """Take a variant out."""
        name = self._document.plan.variant(key).name
        made = self._made(lambda plan: variant_edits.remove_variant(plan, key))
        return self._apply(made, f"Remove variant {name}")

    def move(self, key: str, by: int) -> bool:
        """Move a variant along the list."""
        return self.move_to(key, self._place(key) + by)

    def move_to(self, key: str, to: int) -> bool:
        """Give a variant another place in the list."""
        if to == self._place(key) or not 0 <= to < len(self._document.plan.variants):
            return False
        made = self._made(lambda plan: variant_edits.move_variant(plan, key, to))
        return self._apply(made, f"Move variant {self._document.plan.variant(key).name}")

    def _place(self, key: str) -> int:
        return [variant.key for variant in self._document.plan.variants].index(key)

    def duplicate(self, key: str) -> bool:
        """One more variant just as this one, behind it."""
        name = self._document.plan.variant(key).name
        made = self._made(lambda plan: variant_edits.duplicate_variant(plan, key))
        return self._apply(made, f"Duplicate variant {name}")

    def open(self, key: str) -> bool:
        """Put a variant on the sketch; it stays in the list, and so does what was sketched."""
        name = self._document.plan.variant(key).name
        made = self._made(lambda plan: variant_edits.open_variant(plan, key))
        words = f"The sketch is '{name}' now; what was on it is kept as a variant."
        return self.adopt_plan(made, f"Open variant {name}", words)

    def adopt(self, key: str) -> bool:
        """Make a variant the plan itself."""
        name = self._document.plan.variant(key).name
        made = self._made(lambda plan: variant_edits.adopt_variant(plan, key))
        return self.adopt_plan(made, f"Adopt variant {name}", f"'{name}' is the plan now.")

    def adopt_plan(self, made: Plan | None, label: str, words: str = "") -> bool:
        """Make a plan that was found the open one; its lists stay those of the open plan."""
        if made is None:
            return False
        if not self._apply(made, label):
            return False
        self._before = made
        self.told.emit(f"{words} Undo brings the former plan back.".strip())
        return True

    def _made(self, build: Callable[[Plan], Plan]) -> Plan | None:
        try:
            made = build(self._document.plan)
        except ValueError as error:
            self.refused.emit(refusal(error))
            return None
        return made

    def _apply(self, made: Plan | None, label: str) -> bool:
        if made is None:
            return False
        self._document.apply(made, label)
        return True
