"""The window's frame: the choices of its View menu, the bar of pages, the line of state."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from dataclasses import asdict
from typing import Any, Final

from PySide6.QtCore import QObject, Qt, QTimer, Signal, Slot
from PySide6.QtGui import QFontMetrics, QPalette, QUndoStack
from PySide6.QtWidgets import (
    QCheckBox,
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QStackedWidget,
    QUndoView,
    QWidget,
)

from planner.app import theme
from planner.app.actions import WindowActions
from planner.app.display import COLOUR_MAPS, MAP_CELLS, SWITCHES, Display, DisplayState
from planner.app.fields.form import QuietButton, StillCombo
from planner.app.plain import PlainLabel, explain, tooltip
from planner.app.settings import Settings
from planner.app.theme import Theme
from planner.estimate.result import Estimate, Quality
from planner.language import LANGUAGES
from planner.metrics.figures import MAPPED
from planner.units import LengthUnit

UNKNOWN_COLOURS: Final = (
    "Not known of this light: the colours of every lamp must be counted. Choose a spectrum in the "
    "fields of each lamp, then 'Count its colours'."
)


class ViewChoices(QObject):
    """Connects the display state, the theme and the settings with their actions."""

    def __init__(self, display: Display, settings: Settings, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.display, self.settings = display, settings
        self._actions: WindowActions | None = None
        display.changed.connect(self._on_changed)

    def handlers(self) -> dict[str, Callable[..., Any]]:
        """Handlers of the actions of the View menu that are choices."""
        update = self.display.update
        maps = {
            f"map_{name}": lambda _on, name=name: update(colour_map=name) for name in COLOUR_MAPS
        }
        cells = {
            f"cells_{count}": lambda _on, count=count: update(cells=count) for count in MAP_CELLS
        }
        shown = {f"shows_{key}": lambda _on, key=key: update(shows=key) for key in MAPPED}
        themes = {
            f"theme_{choice}": lambda _on, choice=choice: self.choose_theme(choice)
            for choice in Theme
        }
        return {
            "unit_cm": lambda _on: update(unit=LengthUnit.CM),
            "unit_in": lambda _on: update(unit=LengthUnit.INCH),
            **{key: lambda on, key=key: update(**{key: on}) for key in SWITCHES},
            **maps,
            **cells,
            **shown,
            **themes,
        }

    def attach(self, actions: WindowActions) -> None:
        """Show the choices in force as checks from now on."""
        self._actions = actions
        actions.menus["shows"].setToolTipsVisible(True)
        self._offer(())
        self._check(self.display.state)
        actions[f"theme_{self.settings.values.theme}"].setChecked(True)

    def offer(self, estimate: Estimate) -> None:
        """Offer other maps than that of PPFD where the light has any."""
        self._offer(estimate.maps)

    def _offer(self, known: Collection[str]) -> None:
        if self._actions is None:
            return
        for key in MAPPED:
            action, there = self._actions[f"shows_{key}"], key == "mean" or key in known
            action.setEnabled(there)
            action.setToolTip(tooltip(action.statusTip() if there else UNKNOWN_COLOURS))

    def choose_theme(self, choice: Theme) -> None:
        """Take a theme and remember it."""
        self.settings.keep(theme=choice)
        theme.apply(choice)
        if self._actions is not None:
            self._actions[f"theme_{choice}"].setChecked(True)

    def _on_changed(self, state: DisplayState) -> None:
        self.settings.keep(**asdict(state))
        self._check(state)

    def _check(self, state: DisplayState) -> None:
        if self._actions is None:
            return
        self._actions["unit_cm" if state.unit is LengthUnit.CM else "unit_in"].setChecked(True)
        self._actions[f"map_{state.colour_map}"].setChecked(True)
        self._actions[f"shows_{state.shows}"].setChecked(True)
        for count in MAP_CELLS:
            # A number from an older settings file may be none of those offered.
            self._actions[f"cells_{count}"].setChecked(count == state.cells)
        for key in SWITCHES:
            self._actions[key].setChecked(getattr(state, key))


_UNITS = ((LengthUnit.CM, "Centimetres"), (LengthUnit.INCH, "Inches"))
_LANGUAGES = (("", "As the system"), *LANGUAGES.items())
_THEMES = ((Theme.SYSTEM, "As the system"), (Theme.LIGHT, "Light"), (Theme.DARK, "Dark"))


class SettingsDialog(QDialog):
    """How things are shown. Nothing of a plan is changed here, so there is nothing to undo."""

    def __init__(self, choices: ViewChoices, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Settings")
        self._choices = choices
        self.unit = _combo("Lengths in", _UNITS)
        self.colour_map = _combo("Colour map", [(name, name.capitalize()) for name in COLOUR_MAPS])
        cells = sorted({*MAP_CELLS, choices.display.state.cells})
        self.cells = _combo("Map cells", [(count, f"{count} x {count}") for count in cells])
        self.theme = _combo("Theme", _THEMES)
        self.language = _combo("Language", _LANGUAGES)
        self.later = PlainLabel("The language changes when the program is started again.")
        self.later.hide()
        self.contours = QCheckBox("Contour lines")
        self.band_wash = QCheckBox("Mark the target band")
        self.notices = QCheckBox("Tell on the desktop when long work is done")
        kept = choices.settings.values
        self.notices.setChecked(kept.notices)
        self._arrange()
        self._show(choices.display.state)
        self.theme.setCurrentIndex(self.theme.findData(kept.theme))
        self.language.setCurrentIndex(self.language.findData(kept.language))
        self._connect()

    def _arrange(self) -> None:
        layout = QFormLayout(self)
        layout.setContentsMargins(theme.WIDE, theme.WIDE, theme.WIDE, theme.WIDE)
        layout.setSpacing(theme.RHYTHM)
        for combo in (self.unit, self.colour_map, self.cells, self.theme, self.language):
            layout.addRow(combo.accessibleName(), combo)
        layout.addRow("", self.later)
        layout.addRow("", self.contours)
        layout.addRow("", self.band_wash)
        layout.addRow("", self.notices)
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        buttons.rejected.connect(self.accept)
        layout.addRow(buttons)

    def _connect(self) -> None:
        for name, combo in (
            ("unit", self.unit), ("colour_map", self.colour_map), ("cells", self.cells)
        ):  # fmt: skip
            combo.activated.connect(
                lambda _row, name=name, combo=combo: self._update(name, combo.currentData())
            )
        self.theme.activated.connect(
            lambda _row: self._choices.choose_theme(Theme(self.theme.currentData()))
        )
        self.language.activated.connect(self._choose_language)
        self.contours.toggled.connect(lambda on: self._update("contours", on))
        self.band_wash.toggled.connect(lambda on: self._update("band_wash", on))
        self.notices.toggled.connect(lambda on: self._choices.settings.keep(notices=on))
        self._choices.display.changed.connect(self._show)

    def _update(self, name: str, value: Any) -> None:
        # Qt hands a member of a StrEnum back as a plain text.
        value = LengthUnit(value) if name == "unit" else value
        self._choices.display.update(**{name: value})

    def _choose_language(self) -> None:
        self._choices.settings.keep(language=self.language.currentData())
        self.later.show()

    def _show(self, state: DisplayState) -> None:
        self.unit.setCurrentIndex(self.unit.findData(state.unit))
        self.colour_map.setCurrentIndex(self.colour_map.findData(state.colour_map))
        self.cells.setCurrentIndex(self.cells.findData(state.cells))
        self.contours.setChecked(state.contours)
        self.band_wash.setChecked(state.band_wash)


class HistoryDialog(QDialog):
    """The steps made so far, one a line; a click goes to where a step had just been made."""

    def __init__(self, stack: QUndoStack, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle("History")
        self.view = QUndoView(stack)
        self.view.setEmptyLabel("As opened")
        self.view.setAccessibleName("Steps made so far")
        theme.column(
            PlainLabel("Click a step to go to where it had just been made."), self.view, on=self,
            edges=theme.RHYTHM,
        )  # fmt: skip
        self.resize(320, 420)


def _combo(name: str, entries: Any) -> StillCombo:
    return StillCombo(name=name, entries=[(text, value) for value, text in entries])


# -- switching pages -------------------------------------------------------------------

Maker = Callable[[], QWidget]


class Pages(QStackedWidget):
    """Pages by key; a page that was made stays as it was left.

    ``switched(str)`` carries the key of the page now in sight.
    """

    switched = Signal(str)

    def __init__(
        self, key: str, page: QWidget, makers: Mapping[str, Maker], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._makers = dict(makers)
        self._made: dict[str, QWidget] = {key: page}
        self.current = key
        self.addWidget(page)

    def page(self, key: str) -> QWidget:
        """A page, made when first asked for; raises ``KeyError`` where none is of that key."""
        page = self._made.get(key)
        if page is None:
            page = self._made[key] = self._makers[key]()
            self.addWidget(page)
        return page

    def go(self, key: str) -> None:
        """Show a page; raises ``KeyError`` where there is none of that key."""
        page = self.page(key)
        if key != self.current:
            self.current = key
            self.setCurrentWidget(page)
            self.switched.emit(key)

    def made(self, key: str) -> QWidget | None:
        """A page, if it was made already."""
        return self._made.get(key)


class PageBar(QWidget):
    """The names of the pages side by side; the one in sight is underlined by the accent."""

    def __init__(self, pages: Pages, names: Mapping[str, str]) -> None:
        super().__init__()
        self.setAccessibleName("Pages")
        layout = theme.row(on=self, gap=theme.HALF, edges=(theme.RHYTHM, 0, theme.RHYTHM, 0))
        self.buttons: dict[str, QuietButton] = {}
        for key, name in names.items():
            made = QuietButton(name, QPalette.ColorRole.WindowText)
            made.setCheckable(True)
            made.clicked.connect(lambda _on, key=key: pages.go(key))
            made.clicked.connect(lambda _on: self._mark(pages.current))
            # Room for the bold name, or it would be cut once its page is in sight.
            bold = made.font()
            bold.setBold(True)
            made.setMinimumWidth(QFontMetrics(bold).horizontalAdvance(name) + theme.WIDE)
            layout.addWidget(made)
            self.buttons[key] = made
        pages.switched.connect(self._mark)
        self._mark(pages.current)

    def _mark(self, current: str) -> None:
        for key, made in self.buttons.items():
            made.setChecked(key == current)
            font = made.font()
            font.setBold(key == current)
            made.setFont(font)
            made.updateGeometry()


# -- the state of the estimate in the status bar ---------------------------------------

PATIENCE_MS: Final = 300
"""Work that takes no longer is not spoken of."""
_QUALITY: Final = {
    Quality.DEFAULT: "Light as sketched",
    Quality.FINE: "Light as sketched, computed most finely",
}


class StateLine(PlainLabel):
    """One short line; it always says whether what is shown is final."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("", parent)
        self.setAccessibleName("State of the estimate")
        self.setFont(theme.tabular(self.font()))
        self._estimate: Estimate | None = None
        self.problem = ""
        self._busy = self._failed = False
        self._fraction: float | None = None
        self._patience = QTimer(self, singleShot=True, interval=PATIENCE_MS)
        self._patience.timeout.connect(self._refresh)
        self._refresh()

    @Slot(bool)
    def show_busy(self, busy: bool) -> None:
        """Work began or ended."""
        self._busy = busy
        self._fraction = None
        if busy:
            self._failed = False
            self._patience.start()
        else:
            self._patience.stop()
        self._refresh()

    @Slot(float)
    def show_progress(self, fraction: float) -> None:
        """So much of the running work is done."""
        if self._busy and not self._patience.isActive():
            self._fraction = fraction
            self._refresh()

    def show_estimate(self, estimate: Estimate) -> None:
        """An estimate is shown."""
        self._estimate, self._failed, self.problem = estimate, False, ""
        explain(self, f"Computed in {estimate.seconds:.2f} s.")
        self._refresh()

    def show_failure(self, message: str) -> None:
        """The estimate failed; the old one stays. The message itself stands on the page."""
        self._failed = True
        self.problem = message
        explain(self, message)
        self._refresh()

    def _refresh(self) -> None:
        self.setText(self._words())

    def _words(self) -> str:
        done = "" if self._fraction is None else f" {self._fraction:.0%}"
        if self._failed:
            return "Not computed - see the message"
        if self._estimate is None:
            return f"Computing the light…{done}" if self._busy else ""
        if self._estimate.options.quality is Quality.PREVIEW:
            return f"Preview - refining…{done}"
        if self._busy and not self._patience.isActive():
            return f"Last light - working…{done}"
        return _QUALITY[self._estimate.options.quality]
