"""Steps about lamps and obstacles that are offered in more than one place, and in the menus."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QMenu

from planner.app.fields.panel import Workplace
from planner.plan import edits
from planner.plan.additions import (
    PLAIN_PANEL,
    SHAPES,
    Shape,
    duplicate_lamp,
    new_lamp,
    new_obstacle,
    rehung,
)
from planner.plan.lamp import Lamp, LampModel
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.refusal import refusal
from planner.plan.space import Point


def hang_lamp(workplace: Workplace, model: LampModel | None = None) -> str:
    """Hang one more lamp and select it; of the kind hung last where none is named.

    Returns an empty text, or a sentence about what prevents it.
    """
    plan = workplace.document.plan
    if model is None:
        offered = workplace.shelf.lamps
        model = plan.lamps[-1].model if plan.lamps else offered[0] if offered else PLAIN_PANEL
    kind, lamp = PlaceKind.LAMP, model
    return _put(workplace, "Add lamp", kind, lambda: edits.add_lamp(plan, new_lamp(plan, lamp)))


def place_obstacle(workplace: Workplace, shape: Shape) -> str:
    """Put one more obstacle into the space and select it; returns any error."""
    plan = workplace.document.plan
    label, kind = f"Add {shape.name.lower()}", PlaceKind.OBSTACLE
    return _put(workplace, label, kind, lambda: edits.add_obstacle(plan, new_obstacle(plan, shape)))


def twin_lamp(workplace: Workplace, index: int) -> str:
    """Hang a second lamp like this one beside it and select it; returns any error."""
    plan = workplace.document.plan
    return _put(workplace, "Duplicate lamp", PlaceKind.LAMP, lambda: duplicate_lamp(plan, index))


def _put(workplace: Workplace, label: str, kind: PlaceKind, edit: Callable[[], Plan]) -> str:
    """Make an edit that puts one thing more at the end of its kind, and select it."""
    try:
        after = edit()
    except ValueError as error:
        return refusal(error, workplace.display.unit)
    workplace.document.apply(after, label)
    count = len(after.lamps if kind is PlaceKind.LAMP else after.obstacles)
    workplace.selection.select(Place(kind, count - 1))
    return ""


def remove_lamp(workplace: Workplace, index: int) -> None:
    """Take a lamp down and show the space again."""
    after = edits.remove_lamp(workplace.document.plan, index)
    workplace.selection.select(Place())
    workplace.document.apply(after, "Remove lamp")


def remove_obstacle(workplace: Workplace, index: int) -> None:
    """Take an obstacle away and show the space again."""
    after = edits.remove_obstacle(workplace.document.plan, index)
    workplace.selection.select(Place())
    workplace.document.apply(after, "Remove obstacle")


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
        """Index of the selected lamp, if one is."""
        return self._selected(PlaceKind.LAMP)

    @property
    def obstacle(self) -> int | None:
        """Index of the selected obstacle, if one is."""
        return self._selected(PlaceKind.OBSTACLE)

    def _selected(self, kind: PlaceKind) -> int | None:
        current = self._workplace.selection.current
        fits = current.fits(self._workplace.document.plan)
        return current.index if current.kind is kind and fits else None

    def handlers(self) -> dict[str, Callable[..., None]]:
        """Handlers of the actions of the menu."""
        shapes = {f"add_{shape.key}": lambda shape=shape: self.add(shape) for shape in SHAPES}
        return {
            "add_lamp": self.hang,
            "duplicate_lamp": self.duplicate,
            "copy_lamp": self.copy,
            "cut_lamp": self.cut,
            "paste_lamp": self.paste,
            "remove_lamp": lambda: self._with(self.lamp, remove_lamp),
            "remove_obstacle": lambda: self._with(self.obstacle, remove_obstacle),
            **shapes,
        }

    def _with(self, index: int | None, step: Callable[[Workplace, int], object]) -> None:
        if index is not None:
            step(self._workplace, index)

    def hang(self) -> None:
        """Hang a lamp: of the kind selected, or else of the kind hung last."""
        index = self.lamp
        lamps = self._workplace.document.plan.lamps
        self._tell(hang_lamp(self._workplace, None if index is None else lamps[index].model))

    def hang_model(self, model: LampModel) -> None:
        """Hang a lamp of the catalogue."""
        self._tell(hang_lamp(self._workplace, model))

    def duplicate(self) -> None:
        """Hang a copy beside the selected lamp."""
        index = self.lamp
        if index is not None:
            self._tell(twin_lamp(self._workplace, index))

    def copy(self) -> None:
        """Put the selected lamp on the clipboard, as the text a plan's file has of it."""
        index = self.lamp
        if index is not None:
            lamp = self._workplace.document.plan.lamps[index]
            QGuiApplication.clipboard().setText(lamp.model_dump_json(indent=1))

    def cut(self) -> None:
        """Put the selected lamp on the clipboard and take it down."""
        self.copy()
        self._with(self.lamp, remove_lamp)

    def paste(self) -> None:
        """Hang the lamp that is on the clipboard: where it hung, or beside.

        A line of a data sheet is hung as a new kind of lamp.
        """
        text = QGuiApplication.clipboard().text()
        try:
            lamp = Lamp.model_validate_json(text)
        except ValueError:
            self.hang_data_sheet(text)
            return
        plan = self._workplace.document.plan
        kind = PlaceKind.LAMP
        self._tell(
            _put(
                self._workplace,
                "Paste lamp",
                kind,
                lambda: edits.add_lamp(plan, rehung(plan, lamp)),
            )
        )

    def hang_data_sheet(self, text: str, at: Point | None = None) -> None:
        """Hang a lamp that a line of text describes: at a place, else under the hand."""
        from planner.catalogue import data_sheet  # noqa: PLC0415 - when something is pasted

        if not data_sheet.says_lamp(text):
            self._tell(
                "There is no lamp to paste: copy one, here or in another plan, or a line of a "
                f"data sheet such as '{data_sheet.EXAMPLE}'."
            )
            return
        try:
            read = data_sheet.read_data_sheet(text)
        except data_sheet.DataSheetError as error:
            self._tell(str(error))
            return
        plan, near = self._workplace.document.plan, at or self._pointer()
        problem = _put(
            self._workplace,
            "Paste lamp",
            PlaceKind.LAMP,
            lambda: edits.add_lamp(plan, new_lamp(plan, read.model, near)),
        )
        self._tell(problem)
        if not problem:
            self.told.emit(f"Hung as read: {read.words}.")

    def add(self, shape: Shape) -> None:
        """Put an obstacle into the middle of the space."""
        self._tell(place_obstacle(self._workplace, shape))

    def attach(self, menu: QMenu) -> None:
        """Offer the lamps of the catalogue in a menu, filled whenever it opens."""
        menu.aboutToShow.connect(lambda: self._fill(menu))
        self._fill(menu)

    def _fill(self, menu: QMenu) -> None:
        menu.clear()
        for model in self._workplace.shelf.lamps:
            action = menu.addAction(model.name.replace("&", "&&"))
            action.setStatusTip(f"{model.ppf:g} µmol/s, {model.watts:g} W")
            action.triggered.connect(lambda _=False, model=model: self.hang_model(model))

    def _tell(self, problem: str) -> None:
        if problem:
            self.refused.emit(problem)
