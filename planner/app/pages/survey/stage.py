"""The drawings of the page with their bar: one, or two side by side at one scale."""

from __future__ import annotations

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QWidget

from planner.app import theme
from planner.app.pages.survey.drawing import SurveyDrawing
from planner.app.pages.survey.picture import Picture
from planner.app.plots.colour_bar import ColourBar
from planner.app.plots.residual_map import DivergingBar


class Stage(QWidget):
    """Shows one picture or two, and the bar that explains their colours."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.first = SurveyDrawing("Survey drawing")
        self.second = SurveyDrawing("Second survey drawing")
        self.light_bar = ColourBar()
        self.residual_bar = DivergingBar()
        self._drawings = QHBoxLayout()
        self._drawings.setContentsMargins(0, 0, 0, 0)
        self._drawings.setSpacing(theme.RHYTHM)
        self._drawings.addWidget(self.first, 1)
        self._drawings.addWidget(self.second, 1)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(theme.RHYTHM)
        layout.addLayout(self._drawings, 1)
        layout.addWidget(self.light_bar)
        layout.addWidget(self.residual_bar)
        for part in (self.second, self.light_bar, self.residual_bar):
            part.hide()

    def show_pictures(self, first: Picture, second: Picture | None = None) -> None:
        """Show a picture, or two beside each other."""
        self.first.show_picture(first)
        self.second.setVisible(second is not None)
        if second is not None:
            self.second.show_picture(second)
        if first.style is not None:
            self.light_bar.show_style(first.style)
        self.light_bar.setVisible(first.style is not None)
        self.residual_bar.show_map(first.residuals)
        self.residual_bar.setVisible(first.residuals is not None)
        self._turn()

    def _turn(self) -> None:
        """Beside each other, or one above the other where that draws them larger."""
        picture = self.first.picture
        if picture is None:
            return
        x0, y0, x1, y1 = picture.plan.space.bounds
        wide, tall = x1 - x0, y1 - y0
        bars = sum(bar.width() for bar in (self.light_bar, self.residual_bar) if bar.isVisible())
        width, height = self.width() - bars, self.height()
        beside = min((width / 2 - 60) / wide, (height - 90) / tall)
        above = min((width - 60) / wide, (height / 2 - 90) / tall)
        turned = QBoxLayout.Direction.TopToBottom
        straight = QBoxLayout.Direction.LeftToRight
        self._drawings.setDirection(turned if above > 1.05 * beside else straight)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._turn()

    def fit(self) -> None:
        """Show the whole space."""
        self.first.fit()
        self.second.fit()
