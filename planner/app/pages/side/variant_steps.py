"""Edits of the list of variants, each one named undo step; and keeping a sketch as a variant."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QObject, Signal

from planner.app.document import Document
from planner.plan import variant_edits
from planner.plan.costs import Costs
from planner.plan.edits import changed
from planner.plan.lining import Lining
from planner.plan.plan import Plan
from planner.plan.variant import (
    Change,
    LineAllWalls,
    LineCeiling,
    LineFloor,
    LineWall,
    SetHangingHeight,
    SetLampModel,
    SetLampPlace,
    SetOutput,
    Variant,
)
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
        """Keep the sketch as a variant.

        What was changed since the plan was opened or saved becomes the variant, and the
        sketch goes back; where nothing was changed, or more than a variant can hold, the
        plan stays and the variant keeps it as it is now.
        """
        plan = self._document.plan
        found = _sketched(self._before, plan)
        start = _back(self._before, plan) if found else plan
        if found:
            variant = Variant(name=name_of(start, found, unit), changes=found)
            words = "The sketch is back where it was; adopt the variant to work on with it."
        else:
            variant = Variant(name=f"{plan.name}, kept"[:_NAME_LENGTH], changes=pinned(plan))
            words = "Go on sketching; it stays as it is now."
        made = self._made(lambda _plan: variant_edits.add_variants(start, variant))
        if made is None:
            return
        self._before = made
        kept = made.variants[-1].name
        self._document.apply(made, f"Keep as variant {kept}")
        self.told.emit(f"Kept as variant '{kept}'. {words}")

    def try_linings(self, linings: Sequence[Lining]) -> bool:
        """One more variant for each lining, on all walls."""
        made = self._made(lambda plan: variant_edits.try_linings(plan, linings))
        count = len(linings)
        label = f"Try lining {linings[0].name}" if count == 1 else f"Try {count} linings"
        return count > 0 and self._apply(made, label)

    def try_heights(self, low: float, high: float, count: int, unit: LengthUnit) -> bool:
        """One more variant for each hanging height of a range (metres)."""
        made = self._made(lambda plan: variant_edits.try_heights(plan, low, high, count, unit))
        return self._apply(made, f"Try {count} hanging heights")

    # -- one of them --------------------------------------------------------------------

    def rename(self, index: int, name: str) -> bool:
        """Give a variant another name."""
        name = name.strip()
        if not name:
            self.refused.emit("A variant needs a name.")
            return False
        made = self._made(lambda plan: variant_edits.change_variant(plan, index, name=name))
        return self._apply(made, f"Rename variant {name}")

    def remove(self, index: int) -> bool:
        """Take a variant out."""
        name = self._document.plan.variants[index].name
        made = self._made(lambda plan: variant_edits.remove_variant(plan, index))
        return self._apply(made, f"Remove variant {name}")

    def remove_all(self) -> bool:
        """Take all variants out."""
        made = self._made(lambda plan: changed(plan, variants=()))
        return self._apply(made, "Remove all variants")

    def move(self, index: int, to: int) -> bool:
        """Give a variant another place in the list."""
        if not 0 <= to < len(self._document.plan.variants):
            return False
        name = self._document.plan.variants[index].name
        made = self._made(lambda plan: variant_edits.move_variant(plan, index, to))
        return self._apply(made, f"Move variant {name}")

    def adopt(self, index: int) -> bool:
        """Make a variant the plan itself."""
        name = self._document.plan.variants[index].name
        made = self._made(lambda plan: variant_edits.adopt_variant(plan, index))
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
            self.refused.emit(_capital(variant_edits.reason(error)))
            return None
        return made

    def _apply(self, made: Plan | None, label: str) -> bool:
        if made is None:
            return False
        self._document.apply(made, label)
        return True


def with_lists_of(found: Plan, plan: Plan) -> Plan:
    """A plan found by a search, with name, variants, surveys and schedule of the open one."""
    return changed(
        found,
        name=plan.name,
        variants=plan.variants,
        surveys=plan.surveys,
        schedule=plan.schedule,
        target=plan.target,
    )


def same_light(one: Plan, other: Plan) -> bool:
    """Whether two plans differ at most in their lists, name and costs."""
    return _stripped(one) == _stripped(other)


def _stripped(plan: Plan) -> Plan:
    return variant_edits.bare(plan).model_copy(update={"name": "", "note": "", "costs": Costs()})


def _back(before: Plan, plan: Plan) -> Plan:
    """The plan before the sketch, with what a variant cannot hold as it is now."""
    return changed(
        before,
        name=plan.name,
        note=plan.note,
        target=plan.target,
        variants=plan.variants,
        surveys=plan.surveys,
        schedule=plan.schedule,
        costs=plan.costs,
    )


def _sketched(before: Plan, plan: Plan) -> tuple[Change, ...]:
    try:
        found = variant_edits.differences(before, plan)
    except ValueError:
        return ()
    return _gathered(plan, found)


def _gathered(plan: Plan, found: tuple[Change, ...]) -> tuple[Change, ...]:
    """The same changes with one for all walls in the place of one for each."""
    walls = [one for one in found if isinstance(one, LineWall)]
    whole = {one.wall for one in walls if one.band is None}
    alike = {one.lining.key for one in walls}
    if len(alike) != 1 or whole != set(range(len(plan.walls))):
        return found
    rest = tuple(one for one in found if not isinstance(one, LineWall))
    return (LineAllWalls(lining=walls[0].lining), *rest)


def pinned(plan: Plan) -> tuple[Change, ...]:
    """Changes that hold what a sketch usually changes where it is now."""
    found: list[Change] = []
    for wall, cover in enumerate(plan.walls):
        for band, one in enumerate(cover.bands):
            which = band if len(cover.bands) > 1 else None
            found.append(LineWall(wall=wall, band=which, lining=plan.lining(one.lining)))
    found = list(_gathered(plan, tuple(found)))
    found.append(LineCeiling(lining=plan.lining(plan.ceiling)))
    found.append(LineFloor(lining=plan.lining(plan.floor)))
    for k, lamp in enumerate(plan.lamps):
        found.append(SetLampModel(lamp=k, model=lamp.model))
        found.append(SetHangingHeight(lamp=k, hanging_height=lamp.hanging_height))
        found.append(SetOutput(lamp=k, output_percent=lamp.output_percent))
        found.append(SetLampPlace(lamp=k, x=lamp.x, y=lamp.y))
    return tuple(found[:60])


def differs(plan: Plan, variant: Variant, unit: LengthUnit = LengthUnit.CM) -> tuple[str, ...]:
    """What a variant really changes in the plan as it stands, in words."""
    words: list[str] = []
    found = variant_edits.bare(plan)
    for change in variant.changes:
        try:
            made = variant_edits.apply(found, change)
        except ValueError:
            continue
        if not same_light(made, found):
            words.append(variant_edits.say(plan, change, unit))
        found = made
    return tuple(words)


def name_of(plan: Plan, changes: Sequence[Change], unit: LengthUnit) -> str:
    """A name for a variant, from what differs."""
    said = [variant_edits.say(plan, change, unit) for change in changes]
    if len(said) == 1:
        only = changes[0]
        if isinstance(only, LineAllWalls):
            return only.lining.name
    text = ", ".join(said)
    if len(text) > _NAME_LENGTH:
        text = f"{said[0]} and {len(said) - 1} more" if len(said) > 1 else text
    return _capital(text)[:_NAME_LENGTH]


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
