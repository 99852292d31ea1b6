"""Steps about lamps and obstacles that are offered in more than one place, and in the menus."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QMenu

from planner.app.canvas.plan_drags import levelled
from planner.app.fields.choosers import lamp_facts
from planner.app.fields.panel import Workplace
from planner.language import inside
from planner.plan import edits, groups
from planner.plan.additions import (
    PLAIN_PANEL,
    SHAPES,
    Clip,
    Shape,
    duplicated,
    new_lamp,
    new_obstacle,
    pasted,
)
from planner.plan.groups import Chosen, Edge
from planner.plan.lamp import LampModel
from planner.plan.place import Place, PlaceKind, every
from planner.plan.plan import Plan
from planner.plan.refusal import refusal
from planner.plan.space import Point


def hang_lamp(
    workplace: Workplace,
    model: LampModel | None = None,
    at: Point | None = None,
    label: str = "Add lamp",
) -> str:
    """Hang one more lamp and select it; of the kind hung last where none is named.

    Returns an empty text, or a sentence about what prevents it.
    """
    plan = workplace.document.plan
    if model is None:
        offered = workplace.shelf.catalogue.lamps
        model = plan.lamps[-1].model if plan.lamps else offered[0] if offered else PLAIN_PANEL
    lamp, made = model, (Place(PlaceKind.LAMP, len(plan.lamps)),)
    return _put(workplace, label, lambda: (edits.add_lamp(plan, new_lamp(plan, lamp, at)), made))


def place_obstacle(workplace: Workplace, shape: Shape, at: Point | None = None) -> str:
    """Put one more obstacle into the space and select it; returns any error."""
    plan = workplace.document.plan
    label, made = f"Add {inside(shape.name)}", (Place(PlaceKind.OBSTACLE, len(plan.obstacles)),)
    return _put(
        workplace, label, lambda: (edits.add_obstacle(plan, new_obstacle(plan, shape, at)), made)
    )


def duplicate(workplace: Workplace, places: Chosen) -> str:
    """Put copies of lamps and obstacles beside them and select these; returns any error."""
    plan = workplace.document.plan
    label = groups.named("Duplicate", places)
    return _put(workplace, label, lambda: duplicated(plan, places), places)


def _put(
    workplace: Workplace,
    label: str,
    edit: Callable[[], tuple[Plan, Chosen]],
    copied: Chosen = (),
) -> str:
    """Make an edit that puts something in, and select what it put."""
    try:
        after, made = edit()
    except ValueError as error:
        return refusal(error, workplace.display.unit)
    more = len(made) > len(copied) > 0
    took = "The copy stands a storey up, with the lamps of its tier." if more else ""
    workplace.document.apply(after, label, took=took)
    workplace.selection.select_all(made)
    return ""


def remove(workplace: Workplace, places: Chosen) -> None:
    """Take lamps and obstacles away and show the space again."""
    after = groups.removed(workplace.document.plan, places)
    workplace.selection.select(Place())
    workplace.document.apply(after, groups.named("Remove", places))


class EditSteps(QObject):
    """The Edit menu's steps about lamps and obstacles.

    Signals: ``refused(str)`` with the sentence why a step was not possible, ``told(str)`` with
    what was read. ``pointer`` gives the place under the hand in metres, None where it is not
    over the plan.
    """

    refused = Signal(str)
    told = Signal(str)

    def __init__(
        self,
        workplace: Workplace,
        parent: QObject | None = None,
        *,
        pointer: Callable[[], Point | None] = lambda: None,
    ) -> None:
        super().__init__(parent)
        self._workplace, self._pointer = workplace, pointer

    @property
    def lamp(self) -> int | None:
        """Index of the lamp selected, or leading what is."""
        chosen = self.chosen
        return chosen[0].index if chosen and chosen[0].kind is PlaceKind.LAMP else None

    @property
    def chosen(self) -> Chosen:
        """The lamps and obstacles selected, the one that leads first."""
        plan = self._workplace.document.plan
        return tuple(place for place in self._workplace.selection.chosen if place.fits(plan))

    def handlers(self) -> dict[str, Callable[..., None]]:
        """Handlers of the actions of the menu."""
        arrange: Callable[..., Callable[[], None]] = partial(partial, self._arrange)
        return {
            "add_lamp": self.hang,
            "duplicate": self.duplicate,
            "copy": self.copy,
            "cut": self.cut,
            "paste": self.paste,
            "remove": self.remove,
            "select_lamps": self.select_lamps,
            "level_lamps": self.level,
            "gaps_across": arrange("Distribute", groups.distributed, 0),
            "gaps_deep": arrange("Distribute", groups.distributed, 1),
            "shares_across": arrange("Spread", groups.spread, 0),
            "shares_deep": arrange("Spread", groups.spread, 1),
            **{f"align_{kind}": arrange("Align", groups.aligned, kind) for kind in Edge},
            **{f"add_{shape.key}": lambda shape=shape: self.add(shape) for shape in SHAPES},
        }

    def hang(self, at: Point | None = None) -> None:
        """Hang a lamp: of the kind selected, or else of the kind hung last."""
        index = self.lamp
        lamps = self._workplace.document.plan.lamps
        self._tell(hang_lamp(self._workplace, None if index is None else lamps[index].model, at))

    def hang_model(self, model: LampModel) -> None:
        """Hang a lamp of the catalogue."""
        self._tell(hang_lamp(self._workplace, model))

    def add(self, shape: Shape, at: Point | None = None) -> None:
        """Put an obstacle into the middle of the space, or near a point of it."""
        self._tell(place_obstacle(self._workplace, shape, at))

    def put_here(self, key: str, at: Point) -> None:
        """What a menu on the drawing puts near a point: a lamp, an obstacle, what was copied."""
        if key == "paste":
            self.paste(at)
        elif key == "add_lamp":
            self.hang(at)
        else:
            self.add(next(shape for shape in SHAPES if key == f"add_{shape.key}"), at)

    # -- what is selected ---------------------------------------------------------------

    def select_lamps(self) -> None:
        """Select all lamps; the one selected goes on leading."""
        selection, plan = self._workplace.selection, self._workplace.document.plan
        lead = selection.chosen[:1]
        rest = every(plan, PlaceKind.LAMP)
        selection.select_all((*(one for one in lead if one in rest), *rest))

    def duplicate(self) -> None:
        """Put copies beside what is selected."""
        if self.chosen:
            self._tell(duplicate(self._workplace, self.chosen))

    def remove(self) -> None:
        """Take away what is selected."""
        if self.chosen:
            remove(self._workplace, self.chosen)

    def copy(self) -> None:
        """Put what is selected on the clipboard, as the text a plan's file has of it."""
        if self.chosen:
            clip = Clip.of(self._workplace.document.plan, self.chosen)
            QGuiApplication.clipboard().setText(clip.model_dump_json(indent=1))

    def cut(self) -> None:
        """Put what is selected on the clipboard and take it away."""
        self.copy()
        self.remove()

    def paste(self, at: Point | None = None) -> None:
        """Put in what is on the clipboard: where it was, near a point, or beside.

        A line of a data sheet is hung as a new kind of lamp.
        """
        plan, text = self._workplace.document.plan, QGuiApplication.clipboard().text()
        try:
            clip = Clip.read(text)
        except ValueError:
            self.hang_data_sheet(text, at)
            return
        label = groups.named("Paste", clip.places)
        self._tell(_put(self._workplace, label, lambda: pasted(plan, clip, at)))

    def hang_data_sheet(self, text: str, at: Point | None = None) -> None:
        """Hang a lamp that a line of text describes: at a place, else under the hand."""
        from planner.catalogue import data_sheet  # noqa: PLC0415 - when something is pasted

        if not data_sheet.says_lamp(text):
            self._tell(
                "There is nothing to paste: copy a lamp or an obstacle, of any plan, or a line of "
                f"a data sheet such as '{data_sheet.EXAMPLE}'."
            )
            return
        try:
            read = data_sheet.read_data_sheet(text)
        except data_sheet.DataSheetError as error:
            self._tell(str(error))
            return
        problem = hang_lamp(self._workplace, read.model, at or self._pointer(), "Paste lamp")
        self._tell(problem)
        if not problem:
            self.told.emit(f"Hung as read: {read.words}.")

    def level(self) -> None:
        """Hang all lamps as high as the selected one."""
        index = self.lamp
        if index is not None:
            edit = levelled(self._workplace.document.plan, index)
            self._workplace.document.apply(edit.plan, edit.label, took=edit.took)

    def _arrange(self, verb: str, edit: Callable[..., Plan], how: object) -> None:
        places, document = self.chosen, self._workplace.document
        if places:
            try:
                after = edit(document.plan, places, how)
            except ValueError as error:
                self._tell(refusal(error, self._workplace.display.unit))
                return
            document.apply(after, groups.named(verb, places))

    def attach(self, menu: QMenu) -> None:
        """Offer the lamps of the catalogue in a menu, filled whenever it opens."""
        menu.aboutToShow.connect(lambda: self._fill(menu))
        self._fill(menu)

    def _fill(self, menu: QMenu) -> None:
        menu.clear()
        for model in self._workplace.shelf.catalogue.lamps:
            action = menu.addAction(model.name.replace("&", "&&"))
            action.setStatusTip(lamp_facts(model))
            action.triggered.connect(lambda _=False, model=model: self.hang_model(model))

    def _tell(self, problem: str) -> None:
        if problem:
            self.refused.emit(problem)
