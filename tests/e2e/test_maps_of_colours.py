"""What the map of the sketch shows is chosen by hand: PPFD, ePPFD, or the share of a colour."""

from __future__ import annotations

import dataclasses
from typing import Any

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QCheckBox, QMenu
from pytestqt.qtbot import QtBot

from planner.app.main_window import MainWindow
from planner.app.plots import colours
from planner.app.plots.exported import DrawingOut
from planner.app.settings import Settings
from planner.estimate.result import CanopyLight, Estimate, EstimateOptions
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.space import CarriedCanopy, Obstacle
from planner.plan.target import PpfdTarget
from planner.plan.wavebands import LEAVES, Wavebands
from planner.units import PPFD_UNIT
from tests.e2e.shell import made_up_light, make_window, small_plan

pytestmark = pytest.mark.gui

TRAY = Obstacle(
    name="Tray", x=0.7, y=0.7, underside=0.2, thickness=0.1, length=0.2, width=0.2,
    canopy=CarriedCanopy(),
)  # fmt: skip


def coloured_light(plan: Plan, options: EstimateOptions, **_: Any) -> Estimate:
    """PPFD 200 all over; of it blue grows from 10 % at the left wall to 30 % at the right one.

    A fifth more is far-red. On the tray 300, with 40 % of blue and no far-red.
    """
    found = made_up_light(plan, options)
    even = np.full(found.ppfd.shape, 200.0)
    blue = np.broadcast_to(0.1 + 0.2 * found.x, even.shape) * even
    bands = {"blue": blue, "green": 0.2 * even, "red": 0.8 * even - blue, "far_red": 0.25 * even}
    tops = []
    for index, one in enumerate(plan.obstacles):
        at = (np.array([one.x - 0.05, one.x + 0.05]), np.array([one.y - 0.05, one.y + 0.05]))
        above = np.full((2, 2), 300.0)
        parts = {"blue": 0.4, "green": 0.1, "red": 0.5, "far_red": 0.0}
        tops.append(
            CanopyLight(
                plan=plan, place=Place(PlaceKind.TOP, index), ppfd=above, x=at[0], y=at[1],
                cell_area=np.full((2, 2), 0.01), figures=found.figures,
                bands={band: part * above for band, part in parts.items()},
            )
        )  # fmt: skip
    return dataclasses.replace(found, ppfd=even, bands=bands, tops=tuple(tops))


def coloured_window(qtbot: QtBot, plan: Plan | None = None) -> MainWindow:
    plan = plan or small_plan().model_copy(update={"target": PpfdTarget(low=100, high=150)})
    window, _ = make_window(qtbot, plan, light=coloured_light, settings=Settings.in_memory())
    window.resize(1280, 800)
    QApplication.processEvents()
    window.page.fit()
    return window


def choose(window: MainWindow, words: str) -> None:
    """Open the menu under the button on the drawing, and click an entry of it."""
    QTest.mouseClick(window.page.map_button, Qt.MouseButton.LeftButton)
    menu = QApplication.activePopupWidget()
    assert isinstance(menu, QMenu)
    entry = next(action for action in menu.actions() if action.text() == words)
    QTest.mouseClick(menu, Qt.MouseButton.LeftButton, pos=menu.actionGeometry(entry).center())


def hover(window: MainWindow, x: float, y: float) -> str:
    view = window.page.plan_view
    QTest.mouseMove(view, view.viewport.to_pixel(x, y).toPoint() + QPoint(3, 3))
    QTest.mouseMove(view, view.viewport.to_pixel(x, y).toPoint())
    return view.status()


def test_without_colours_the_menu_says_why_there_is_no_map_of_them(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot, settings=Settings.in_memory())
    ppfd, *others = window.actions_.menus["shows"].actions()
    assert window.actions_.menus["shows"].toolTipsVisible()
    assert ppfd.isEnabled()
    assert "colours" not in ppfd.toolTip()
    for one in others:
        assert not one.isEnabled()
        assert "colours of every lamp must be counted" in one.toolTip()
    assert window.page.map_button.isHidden()
    assert "The map shows" not in window.page.plan_view.words()
    assert window.page.colour_bar.legend.unit == ("µmol", "m⁻² s⁻¹")
    assert hover(window, 0.3, 0.5).startswith(("1", "0", "9", "2"))


def test_the_menu_of_the_colour_bar_says_what_its_colours_are_of(qtbot: QtBot) -> None:
    window = coloured_window(qtbot)
    bar = window.page.colour_bar
    assert bar.contextMenuPolicy() is Qt.ContextMenuPolicy.ActionsContextMenu
    by_text = {action.text().replace("&", ""): action for action in bar.actions()}
    assert list(by_text) == [
        *("Map shows", "Colour map", "Colours over the light present", "Mark the target band"),
    ]
    assert bar.legend.levels[0] == 0
    by_text["Colours over the light present"].trigger()
    low, high = bar.legend.levels
    assert 100 < low < 200 <= high < 300


def test_the_share_of_blue_is_chosen_read_and_put_away_again(qtbot: QtBot) -> None:
    window = coloured_window(qtbot)
    page = window.page
    view, bar = page.plan_view, page.colour_bar
    window.display.update(band_wash=True)
    assert all(one.isEnabled() for one in window.actions_.menus["shows"].actions())
    assert page.map_button.isVisible()
    assert page.map_button.text().startswith("PPFD")
    assert hover(window, 0.25, 0.5).startswith(f"200 {PPFD_UNIT} at")
    before = window.document.undo_stack.count()
    choose(window, "Blue")
    assert page.map_button.text().startswith("Blue")
    # A quarter of the way from 10 to 30 %, and three quarters.
    assert hover(window, 0.25, 0.5).startswith("Blue 15 % of PPFD at x 2")
    assert hover(window, 0.75, 0.2).startswith("Blue 25 % of PPFD at x 7")
    assert bar.legend.unit == ("Blue", "% of", "PPFD")
    assert bar.legend.words == "Blue: Colours run from 10 to 30 % of PPFD."
    # Nothing that is of PPFD alone: no lines, no band, no wish by the bar, no light aside.
    style = view.light_style()
    assert (style.contours, style.wash, style.band, bar.wishes) == (False, False, None, False)
    assert bar.legend.wash is None
    assert page.elevation.light_at_pointer() == ""
    assert "The map shows Blue: 10 to 30 % of PPFD." in view.words()
    said = page.section.accessibleDescription()
    assert said.startswith("Blue along a line")
    assert said.endswith("from 10 to 30 % of PPFD.")
    heads, rows = page.section.table()
    assert heads[1] == "Blue (% of PPFD)"
    assert rows[40][1] == pytest.approx(15, abs=0.2)
    choose(window, "PPFD")
    assert hover(window, 0.25, 0.5).startswith(f"200 {PPFD_UNIT} at")
    assert view.light_style().wash
    assert bar.wishes
    assert page.section.accessibleDescription().startswith("PPFD along")
    assert window.document.undo_stack.count() == before


def test_colours_on_the_drawing_are_those_beside_the_bar(qtbot: QtBot) -> None:
    """A pixel of the picture against the table of colours, by the share the light was made with."""
    window = coloured_window(qtbot)
    choose(window, "Blue")
    view = window.page.plan_view
    picture = view.grab().toImage()
    table = colours.table(window.display.state.colour_map, dimmed=view.light_style().dimmed)
    ratio = picture.devicePixelRatio()
    for x in (0.1, 0.2, 0.9):
        pixel = (view.viewport.to_pixel(x, 0.15) * ratio).toPoint()
        share = (10 + 20 * x - 10) / 20
        expected = table[round(share * (len(table) - 1))][:3].astype(int)
        colour = picture.pixelColor(pixel)
        found = np.array((colour.red(), colour.green(), colour.blue()))
        assert np.abs(found - expected).max() <= 4, x


def test_trays_show_the_same_quantity(qtbot: QtBot) -> None:
    plan = small_plan().model_copy(update={"obstacles": (TRAY,)})
    window = coloured_window(qtbot, plan)
    assert hover(window, 0.73, 0.73).startswith(f"300 {PPFD_UNIT}")
    choose(window, "Blue")
    assert hover(window, 0.73, 0.73).startswith("Blue 40 % of PPFD")
    # One scale for both: the tray's 40 % is its end.
    assert window.page.plan_view.levels[1] == pytest.approx(40)
    choose(window, "Far-red")
    assert hover(window, 0.2, 0.2).startswith("Far-red 20 % of ePPFD")
    assert hover(window, 0.73, 0.73).startswith("Far-red 0 % of ePPFD")
    choose(window, "ePPFD")
    assert hover(window, 0.2, 0.2).startswith(f"ePPFD 250 {PPFD_UNIT}")
    assert window.page.colour_bar.legend.unit == ("ePPFD", "µmol", "m⁻² s⁻¹")
    assert window.page.plan_view.levels[0] == 0


def test_where_it_is_dark_no_colour_has_a_share(qtbot: QtBot) -> None:
    plan = small_plan().model_copy(update={"obstacles": (TRAY,)})
    window = coloured_window(qtbot, plan)
    assert window.estimate is not None
    (top,) = window.estimate.tops
    dark = dataclasses.replace(
        top, ppfd=0.0 * top.ppfd, bands=dict.fromkeys(top.bands or (), 0.0 * top.ppfd)
    )
    window.show_estimate(dataclasses.replace(window.estimate, tops=(dark,)))
    assert hover(window, 0.73, 0.73).startswith(f"0 {PPFD_UNIT}")
    choose(window, "Blue")
    assert hover(window, 0.73, 0.73).startswith("x 7")
    view = window.page.plan_view
    pixel = view.viewport.to_pixel(0.75, 0.75).toPoint()
    light = view.grab().toImage().pixelColor(pixel)
    assert light.lightness() > 200


def test_a_choice_that_is_no_longer_known_gives_way_to_ppfd(qtbot: QtBot) -> None:
    window = coloured_window(qtbot)
    choose(window, "Red")
    assert hover(window, 0.5, 0.3).startswith("Red 60 % of PPFD")
    assert window.estimate is not None
    without = dataclasses.replace(window.estimate, bands=None)
    window.show_estimate(without)
    window.choices.offer(without)
    assert not window.actions_["shows_blue_share"].isEnabled()
    assert window.page.map_button.isHidden()
    assert hover(window, 0.5, 0.3).startswith(f"200 {PPFD_UNIT}")
    assert window.page.colour_bar.legend.unit == ("µmol", "m⁻² s⁻¹")
    assert window.page.section.accessibleDescription().startswith("PPFD along")


def test_the_map_goes_out_as_it_is_shown(qtbot: QtBot) -> None:
    window = coloured_window(qtbot)
    choose(window, "Blue")
    made: list[DrawingOut] = []
    window.map_out(made.append)
    assert "Blue, % of PPFD" in made[0].svg().decode()
    assert "Blue from 10 to 30 % of PPFD" in made[0].svg().decode()
    choose(window, "PPFD")
    window.map_out(made.append)
    assert "% of PPFD" not in made[1].svg().decode()


def test_the_choice_is_kept_for_the_next_start(qtbot: QtBot) -> None:
    window = coloured_window(qtbot)
    choose(window, "Blue")
    assert window.settings.values.shows == "blue_share"
    assert window.settings.display_state.shows == "blue_share"


def coloured_lamp(plan: Plan) -> Plan:
    model = plan.lamps[0].model.model_copy(
        update={"wavebands": Wavebands(blue=0.2, green=0.3, red=0.5, far_red=0.1)}
    )
    return plan.model_copy(update={"lamps": (plan.lamps[0].model_copy(update={"model": model}),)})


def leaves_at(plan: Plan, place: Place) -> Wavebands | None:
    carried = plan.obstacles[0].canopy
    assert carried is not None
    return (plan.canopy if place.kind is PlaceKind.CANOPY else carried).wavebands


def test_leaves_are_given_their_colours_by_a_tick(qtbot: QtBot) -> None:
    plan = small_plan().model_copy(update={"obstacles": (TRAY,)})
    window = coloured_window(qtbot, coloured_lamp(plan))
    column, document = window.page.column, window.document
    for place in (Place(PlaceKind.CANOPY), Place(PlaceKind.OBSTACLE, 0)):
        window.selection.select(place)
        switch: QCheckBox = column.panel.colours_switch  # type: ignore[attr-defined]
        assert switch.isVisible()
        assert not switch.isChecked()
        switch.click()
        assert leaves_at(document.plan, place) == LEAVES
        assert document.undo_stack.undoText() == "Give leaves their colours"
        document.undo_stack.undo()
        assert leaves_at(document.plan, place) is None
        assert not switch.isChecked()


def test_without_coloured_lamps_leaves_have_no_such_tick(qtbot: QtBot) -> None:
    plan = small_plan().model_copy(update={"obstacles": (TRAY,)})
    window = coloured_window(qtbot, plan)
    for place in (Place(PlaceKind.CANOPY), Place(PlaceKind.OBSTACLE, 0)):
        window.selection.select(place)
        switch: QCheckBox = window.page.column.panel.colours_switch  # type: ignore[attr-defined]
        assert not switch.isVisible()
