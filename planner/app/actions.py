"""Actions and menus as data: what the window can do, under which key, in which menu.

To add an action: one line in ``ACTIONS``, its key in ``MENUS``, and a handler of the
same key where the window wires them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Final

from PySide6.QtGui import QAction, QActionGroup, QKeySequence, QUndoStack
from PySide6.QtWidgets import QMenu, QMenuBar, QWidget

from planner.app.display import COLOUR_MAPS, MAP_CELLS
from planner.catalogue.library import DEMO
from planner.metrics.figures import FIGURE, MAPPED
from planner.plan.groups import Edge

Standard = QKeySequence.StandardKey
Role = QAction.MenuRole
Handler = Callable[..., Any]


@dataclass(frozen=True)
class ActionSpec:
    """One action.

    ``standard`` is the platform's own key for it; ``keys`` are bound besides, or alone
    where the platform has none. Actions of one ``group`` are checked, and exclude each other.
    """

    key: str
    text: str
    tip: str
    standard: Standard | None = None
    keys: str = ""
    checkable: bool = False
    group: str | None = None
    role: Role = Role.NoRole


@dataclass(frozen=True)
class Submenu:
    """A menu inside a menu; without entries it is filled while the program runs."""

    key: str
    text: str
    entries: tuple[str | Submenu | None, ...] = ()


def _keys(*parts: str | Submenu) -> tuple[str | Submenu | None, ...]:
    """The entries of a menu: keys of actions in lines of words, '-' for a line between."""
    found: list[str | Submenu | None] = []
    for part in parts:
        found += [part] if isinstance(part, Submenu) else [
            None if word == "-" else word for word in part.split()
        ]  # fmt: skip
    return tuple(found)


# fmt: off
EXAMPLES: Final = (
    (DEMO, "Hallway &cabinet", "seedlings under two bars in a cabinet with a cut corner"),
    ("hallway-cabinet-measured", "Hallway cabinet, &measured",
     "the same cabinet with the options it was weighed against and a survey"),
    ("tent", "&Tent", "lettuce in a tent of 60 x 60 x 160 cm"),
    ("closet", "&L-shaped closet", "herbs about a chimney, with a shelf in the light"),
    ("shelf", "&Shelf", "seedlings on a shelf that is open on three sides"),
    ("rack", "&Rack", "three tiers, with two bars under each shelf"),
    ("trays", "Tra&ys", "trays of two heights in a tent"),
)
# fmt: on
"""Invented plans of ``resources/demo``: key, text of the menu, what it shows."""

ACTIONS: Final = (
    ActionSpec("new", "&New", "Start an empty plan", Standard.New),
    ActionSpec(
        "new_window", "New &window", "One more window, for another plan", keys="Ctrl+Shift+N"
    ),
    ActionSpec("open", "&Open…", "Open a plan file", Standard.Open),
    *(
        ActionSpec(f"example_{key}", text, f"Open {what}, as a new plan; all of it is invented")
        for key, text, what in EXAMPLES
    ),
    ActionSpec("save", "&Save", "Save the plan to its file", Standard.Save),
    ActionSpec(
        "save_as", "Save &as…", "Save the plan to another file", Standard.SaveAs, "Ctrl+Shift+S"
    ),
    ActionSpec(
        "lamp_from_file",
        "Add &lamp from file…",
        "Hang a lamp whose light is in an LM-63 or EULUMDAT file",
        keys="Ctrl+Shift+L",
    ),
    ActionSpec(
        "report",
        "Repor&t…",
        "The decision, or a build sheet, on paper or as one file",
        Standard.Print,
        "Ctrl+P",
    ),
    ActionSpec("export_lamp", "Selected &lamp as LM-63…", "Write the selected lamp's .ies file"),
    ActionSpec("export_csv", "Map as &CSV…", "Write the light map as a table"),
    ActionSpec("export_json", "Map and figures as &JSON…", "Write map, figures and balance"),
    ActionSpec("export_drawing", "Map as &drawing…", "Write the map as lines (SVG) or as PNG"),
    ActionSpec("export_plan", "Save the pla&n drawing…", "Write it as shown: lines (SVG) or PNG"),
    ActionSpec("export_side", "Save the &side view…", "Write it as shown: lines (SVG) or PNG"),
    ActionSpec("copy_map", "Copy the &map", "Put the map as a picture on the clipboard"),
    ActionSpec("copy_plan", "Copy the &plan drawing", "Put it on the clipboard as it is shown"),
    ActionSpec("copy_side", "Copy the &side view", "Put it on the clipboard as it is shown"),
    ActionSpec("export_picture", "&Picture of the window…", "Write the window as a PNG picture"),
    ActionSpec("close", "&Close window", "Close this window and its plan", Standard.Close),
    ActionSpec(
        "quit",
        "&Quit",
        "Close the program, all its windows",
        Standard.Quit,
        "Ctrl+Q",
        role=Role.QuitRole,
    ),
    ActionSpec("add_lamp", "&Add lamp", "Hang one more lamp like the selected one", keys="Ctrl+L"),
    ActionSpec(
        "duplicate",
        "D&uplicate",
        "Put copies beside the selected lamps and obstacles",
        keys="Ctrl+D",
    ),
    ActionSpec("copy", "Cop&y", "Copy the selected lamps and obstacles as text", Standard.Copy),
    ActionSpec("cut", "Cu&t", "Copy what is selected and take it away", Standard.Cut),
    ActionSpec(
        "paste",
        "&Paste",
        "Put in what was copied, of any plan, or the lamp a line of a data sheet describes",
        Standard.Paste,
    ),
    ActionSpec("remove", "Re&move", "Take what is selected away", Standard.Delete),
    ActionSpec("select_lamps", "Select all &lamps", "Select every lamp", Standard.SelectAll),
    ActionSpec(
        "history",
        "Hist&ory…",
        "The steps made so far; a click goes back, or forward again",
        keys="Ctrl+Alt+Z",
    ),
    ActionSpec(
        "level_lamps",
        "All lamps to this &height",
        "Hang all lamps as high as the selected one",
        keys="Ctrl+Shift+H",
    ),
    *(
        ActionSpec(f"align_{edge}", text, f"Bring {line} in line with the one that leads")
        for edge, text, line in (
            ("left", "&Left sides", "left sides"),
            ("centre", "&Centres", "centres, one behind the other,"),
            ("right", "&Right sides", "right sides"),
            ("front", "&Front sides", "front sides"),
            ("middle", "&Middles", "middles, one beside the other,"),
            ("back", "&Back sides", "back sides"),
        )
    ),
    ActionSpec("gaps_across", "Equal &gaps across", "Equal gaps from left to right"),
    ActionSpec("gaps_deep", "Equal gaps in &depth", "Equal gaps from front to back"),
    ActionSpec("shares_across", "&Spread across", "Each over its share of the width"),
    ActionSpec("shares_deep", "Spread &in depth", "Each over its share of the depth"),
    ActionSpec("add_shelf", "&Shelf", "Put a shelf into the middle of the space"),
    ActionSpec("add_tray", "&Tray", "Put a tray with a canopy of its own on the floor"),
    ActionSpec("add_pot", "&Pot", "Put a pot into the middle of the space"),
    ActionSpec("add_box", "&Box", "Put a box into the middle of the space"),
    ActionSpec(
        "keep_variant",
        "&Keep as an option",
        "Keep the sketch as an option, to see it side by side with the plan",
        keys="Ctrl+K",
    ),
    ActionSpec("keep_new", "Keep it as ne&w", "Keep an option with new lamps and clean walls"),
    ActionSpec("keep_later", "Keep it a year o&n", "Keep an option with lamps a year older"),
    ActionSpec("unit_cm", "&Centimetres", "Show lengths in centimetres", group="unit"),
    ActionSpec("unit_in", "&Inches", "Show lengths in inches", group="unit"),
    *(
        ActionSpec(
            f"map_{name}",
            name.capitalize(),
            f"Colour the light with the map '{name}', dark where it is dark",
            group="colour_map",
        )
        for name in COLOUR_MAPS
    ),
    *(
        ActionSpec(
            f"shows_{key}",
            FIGURE[key].map_name,
            f"Show {FIGURE[key].map_name} on the map, in {FIGURE[key].map_unit}",
            group="shows",
        )
        for key in MAPPED
    ),
    *(
        ActionSpec(
            f"cells_{count}",
            f"{count} x {count}",
            f"Compute the light in {count} by {count} cells over the space",
            group="cells",
        )
        for count in MAP_CELLS
    ),
    ActionSpec(
        "settings",
        "&Settings…",
        "Units, colours, map cells and theme in one place",
        Standard.Preferences,
        "Ctrl+,",
        role=Role.PreferencesRole,
    ),
    ActionSpec(
        "contours", "Contour &lines", "Lines of equal PPFD", keys="Ctrl+Shift+C", checkable=True
    ),
    ActionSpec(
        "band_wash",
        "Mark the target &band",
        "Mark what is under, inside and over the target band",
        keys="Ctrl+B",
        checkable=True,
    ),
    ActionSpec(
        "gains",
        "Mark which &wall to line first",
        "Mark at each wall what ten points more of reflectance would bring",
        keys="Ctrl+G",
        checkable=True,
    ),
    ActionSpec(
        "ladder",
        "L&adder of heights",
        "Show beside the selected lamp what the light would be at each height",
        keys="Ctrl+H",
        checkable=True,
    ),
    ActionSpec(
        "stretched",
        "Colours over the light p&resent",
        "Spread the colours from the lowest to the highest light present instead of from dark",
        keys="Ctrl+Shift+R",
        checkable=True,
    ),
    *(
        ActionSpec(f"theme_{key}", text, tip, group="theme")
        for key, text, tip in (
            ("system", "As the &system", "Light or dark as the desktop"),
            ("light", "&Light", "Dark text on light ground"),
            ("dark", "&Dark", "Light text on dark ground"),
        )
    ),
    *(
        ActionSpec(f"page_{key}", text, tip, keys=f"Ctrl+{number}", group="page")
        for number, key, text, tip in (
            (1, "sketch", "&Sketch", "The space to scale with its light"),
            (
                *(2, "side", "Side &by side"),
                "The plan beside its options; sweeps, answers and what it is worth",
            ),
            (3, "survey", "S&urvey", "Readings at the holes of a board, laid over the estimate"),
        )
    ),
    ActionSpec("zoom_in", "Lar&ger", "Enlarge the drawing", Standard.ZoomIn, "Ctrl+="),
    ActionSpec("zoom_out", "Smaller", "Make the drawing smaller", Standard.ZoomOut),
    ActionSpec("fit", "&Fit drawing", "Show the whole space as large as it goes", keys="Ctrl+0"),
    ActionSpec(
        "measure",
        "M&easure",
        "Draw a measuring line from one point to another",
        keys="Ctrl+M",
        checkable=True,
    ),
    ActionSpec(
        "large_side",
        "S&ide view large",
        "Give the side view the room of the plan; press again to return",
        keys="Ctrl+E",
        checkable=True,
    ),
    ActionSpec(
        "full_screen",
        "Full &screen",
        "Use the whole screen; press again to return",
        Standard.FullScreen,
        "F11",
        checkable=True,
    ),
    ActionSpec(
        "help_start", "How to &start", "The first five minutes", Standard.HelpContents, "F1"
    ),
    ActionSpec("tour", "Show me &round", "Six steps in place: size, lamp, lining, figures, pages"),
    ActionSpec("help_guide", "A &worked example", "From the tape measure to the survey"),
    ActionSpec("help_cautions", "&Cautions", "Heat, water, electricity and eyes"),
    ActionSpec("help_glossary", "&Glossary", "What the words and figures mean"),
    ActionSpec("help_lamp-files", "&Lamps from files", "What the program reads, and what it asks"),
    ActionSpec("help_spectra", "S&pectra", "Lux, lumens and photons"),
    ActionSpec("help_news", "What is &new", "What each version brought"),
    ActionSpec("data_folder", "Open data &folder", "Where your own lamps and linings are kept"),
    ActionSpec("about", "&About", "Versions and licence; details to copy", role=Role.AboutRole),
)

MENUS: Final = (
    Submenu(
        "file",
        "&File",
        _keys(
            "new new_window open",
            Submenu("recent", "Open &recent"),
            Submenu("example", "Open an exa&mple", tuple(f"example_{key}" for key, *_ in EXAMPLES)),
            "- save save_as - lamp_from_file",
            Submenu(
                "export",
                "&Export",
                _keys(
                    "export_csv export_json export_drawing export_plan export_side "
                    "export_picture - export_lamp"
                ),
            ),
            "report - close quit",
        ),
    ),
    Submenu(
        "edit",
        "&Edit",
        _keys(
            "undo redo history - add_lamp",
            Submenu("add_lamp_kind", "Add lamp from &catalogue"),
            Submenu("add_obstacle", "Add o&bstacle", _keys("add_shelf add_tray add_pot add_box")),
            "- select_lamps duplicate cut copy paste remove -",
            Submenu("picture", "Copy as p&icture", _keys("copy_map copy_plan copy_side")),
            "-",
            Submenu(
                "arrange",
                "Ali&gn and spread",
                _keys(
                    *(f"align_{edge}" for edge in Edge),
                    "- gaps_across gaps_deep shares_across shares_deep",
                ),
            ),
            "level_lamps - keep_variant keep_new keep_later - settings",
        ),
    ),
    Submenu(
        "view",
        "&View",
        _keys(
            Submenu("page", "&Page", _keys("page_sketch page_side page_survey")),
            Submenu("unit", "&Units", _keys("unit_cm unit_in")),
            Submenu("colour_map", "&Colour map", tuple(f"map_{name}" for name in COLOUR_MAPS)),
            Submenu("shows", "Map s&hows", tuple(f"shows_{key}" for key in MAPPED)),
            Submenu("cells", "&Map cells", tuple(f"cells_{count}" for count in MAP_CELLS)),
            Submenu("theme", "&Theme", _keys("theme_system theme_light theme_dark")),
            "- contours band_wash gains ladder stretched - zoom_in zoom_out fit measure "
            "large_side full_screen",
        ),
    ),
    Submenu(
        "help",
        "&Help",
        _keys(
            "help_start tour help_guide help_cautions help_glossary help_lamp-files "
            "help_spectra help_news - data_folder - about"
        ),
    ),
)


class WindowActions:
    """The actions of one window, by key, and its menus.

    Raises ``KeyError`` when an action has no handler or a menu names an unknown action:
    a slip in the tables shows at the first start.
    """

    def __init__(
        self, window: QWidget, undo_stack: QUndoStack, handlers: Mapping[str, Handler]
    ) -> None:
        self.menus: dict[str, QMenu] = {}
        self._groups: dict[str, QActionGroup] = {}
        self._actions: dict[str, QAction] = {}
        for spec in ACTIONS:
            self._actions[spec.key] = self._made(window, spec, handlers[spec.key])
        undo = undo_stack.createUndoAction(window, "Undo")
        undo.setShortcuts(_shortcuts(Standard.Undo))
        redo = undo_stack.createRedoAction(window, "Redo")
        redo.setShortcuts(_shortcuts(Standard.Redo, "Ctrl+Y Ctrl+Shift+Z"))
        self._actions |= {"undo": undo, "redo": redo}
        window.addActions(list(self._actions.values()))

    def __getitem__(self, key: str) -> QAction:
        return self._actions[key]

    def __iter__(self) -> Iterator[str]:
        """The keys of all actions, undo and redo included."""
        return iter(self._actions)

    def fill(self, bar: QMenuBar) -> None:
        """Build the menus."""
        for menu in MENUS:
            self._add_menu(bar, menu)

    def _made(self, window: QWidget, spec: ActionSpec, handler: Handler) -> QAction:
        action = QAction(spec.text, window)
        checkable = spec.checkable or spec.group is not None
        action.setObjectName(spec.key)
        action.setStatusTip(spec.tip)
        action.setToolTip(spec.tip)
        action.setCheckable(checkable)
        action.setMenuRole(spec.role)
        action.setShortcuts(_shortcuts(spec.standard, spec.keys))
        if spec.group is not None:
            if spec.group not in self._groups:
                self._groups[spec.group] = QActionGroup(window)
            self._groups[spec.group].addAction(action)
        if checkable:
            action.triggered.connect(handler)
        else:
            # Without the state Qt would hand on, which a command does not expect.
            action.triggered.connect(lambda: handler())  # noqa: PLW0108
        return action

    def _add_menu(self, parent: QMenuBar | QMenu, menu: Submenu) -> None:
        made = parent.addMenu(menu.text)
        made.setObjectName(f"menu_{menu.key}")
        made.setAccessibleName(menu.text.replace("&", ""))
        self.menus[menu.key] = made
        for entry in menu.entries:
            if entry is None:
                made.addSeparator()
            elif isinstance(entry, Submenu):
                self._add_menu(made, entry)
            else:
                made.addAction(self._actions[entry])


def _shortcuts(standard: Standard | None, keys: str = "") -> list[QKeySequence]:
    """The platform's keys first, ours after them; none twice.

    Without a platform theme several standard keys (Quit, Save as) have no binding.
    """
    found = [] if standard is None else QKeySequence.keyBindings(standard)
    for key in keys.split():
        sequence = QKeySequence(key)
        if sequence not in found:
            found.append(sequence)
    return found
