"""All canopies of a plan in one line: how each fares, and which one the page looks at."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QMenu, QSizePolicy, QToolButton, QWidget

from planner.app import theme
from planner.app.plain import PlainLabel, explain
from planner.estimate.canopies import called
from planner.estimate.result import CanopyLight, Estimate, Figures, of_canopy
from planner.metrics.figures import percent, ppfd
from planner.plan.place import OWN, judged
from planner.reports.content import ALL_TOGETHER

_MOST_CHARACTERS = 24


def fares(figures: Figures) -> str:
    """The mean, and on which side of its band most of a canopy lies: '341, 69 % over'."""
    text = ppfd(figures.mean)
    sides = {
        "inside": figures.share_inside,
        "over": figures.share_over,
        "under": figures.share_under,
    }
    known = {side: share for side, share in sides.items() if share is not None}
    if not known:
        return text
    most = max(known, key=known.__getitem__)
    return f"{text}, {percent(known[most])} {most}"


class CanopyLine(QWidget):
    """A button for each canopy, from the lowest up; hidden where there is one alone.

    Those without room go into a menu. ``looked(Place)`` with the canopy that is asked for.
    """

    looked = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("Canopies")
        self.buttons: list[QToolButton] = []
        self.more = theme.small_button("", "More canopies")
        self.more.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        self.more.setMenu(QMenu(self.more))
        self.together = PlainLabel(quiet=True)
        self._estimate: Estimate | None = None
        self._row = theme.row(
            self.more, theme.REST, self.together, on=self, gap=theme.HALF,
            edges=(theme.HALF, 0, theme.RHYTHM, 0),
        )  # fmt: skip
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.setFixedHeight(self.more.sizeHint().height())
        self.hide()

    def show_estimate(self, estimate: Estimate) -> None:
        """Tell of the canopies of an estimate; the one it is seen by is pressed."""
        self._estimate = estimate
        self.setVisible(bool(estimate.tops))
        if not estimate.tops:
            return
        while len(self.buttons) > len(estimate.canopies):
            self.buttons.pop().deleteLater()
        while len(self.buttons) < len(estimate.canopies):
            self._add_button()
        for button, canopy in zip(self.buttons, estimate.canopies, strict=True):
            button.setText(self._words(canopy, _MOST_CHARACTERS))
            button.setChecked(canopy.place == estimate.place)
            told = of_canopy(canopy.place.title(estimate.plan), canopy.figures)
            button.setAccessibleName(told)
            leads = canopy.place == judged(estimate.plan)
            explain(button, told, *([LEADS] if leads else []))
        self.together.setText(f"{ALL_TOGETHER}: {fares(estimate.overall)}")
        explain(self.together, of_canopy(ALL_TOGETHER, estimate.overall))
        self._share_room()

    def _words(self, canopy: CanopyLight, most: int) -> str:
        name = "Own canopy" if canopy.place == OWN else called(canopy.plan, canopy.place)
        if len(name) > most:
            name = f"{name[: most - 1]}…"
        return f"{name}: {fares(canopy.figures)}".replace("&", "&&")

    def _add_button(self) -> None:
        button = QToolButton()
        button.setAutoRaise(True)
        button.setCheckable(True)
        button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        k = len(self.buttons)
        button.clicked.connect(lambda: self._look(k))
        self._row.insertWidget(k, button)
        self.buttons.append(button)

    def _look(self, k: int) -> None:
        if self._estimate is not None and k < len(self._estimate.canopies):
            # Pressed again it stays pressed.
            self.buttons[k].setChecked(True)
            self.looked.emit(self._estimate.canopies[k].place)

    def _share_room(self) -> None:
        """Show as many as there is room for; the one looked at always."""
        room = self.width() - 2 * theme.RHYTHM - self.more.sizeHint().width()
        together = self.together.sizeHint().width() + theme.HALF
        # What all get together stands in All figures as well.
        self.together.setVisible(together <= room / 2)
        room -= together if together <= room / 2 else 0
        shown: set[int] = set()
        order = sorted(range(len(self.buttons)), key=lambda k: not self.buttons[k].isChecked())
        for k in order:
            room -= self.buttons[k].sizeHint().width() + theme.HALF
            if room < 0 and shown:
                break
            shown.add(k)
        menu = self.more.menu()
        menu.clear()
        canopies = () if self._estimate is None else self._estimate.canopies
        for k, (button, canopy) in enumerate(zip(self.buttons, canopies, strict=False)):
            button.setVisible(k in shown)
            if k not in shown:
                menu.addAction(self._words(canopy, 120)).triggered.connect(
                    lambda _on=False, k=k: self._look(k)
                )
        self.more.setText(f"{len(self.buttons) - len(shown)} more")
        self.more.setVisible(len(shown) < len(self.buttons))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._share_room()


LEADS = "The plan is judged by it: options, searches and surveys speak of it."
