"""The line under the maps: the chosen variant's name, and what can be done with it."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QToolButton, QWidget

from planner.app import theme
from planner.app.document import Document
from planner.app.fields.form import AlertLabel, link_button
from planner.app.fields.text_line import TextLine
from planner.app.pages.side.comparer import Comparer
from planner.app.pages.side.linked import Linked
from planner.app.pages.side.variant_steps import VariantSteps
from planner.estimate.compare import Side


class CardBar(QWidget):
    """Rename, adopt, move, remove; nothing of it for the plan itself and open air."""

    def __init__(
        self,
        document: Document,
        comparer: Comparer,
        linked: Linked,
        steps: VariantSteps,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._document, self._comparer = document, comparer
        self._linked, self._steps = linked, steps
        self.name = TextLine("Name of the variant")
        self.name.setMinimumWidth(120)
        self.name.setMaximumWidth(260)
        self.name.committed.connect(self._rename)
        self.adopt = self._verb("Adopt", "Make this variant the plan itself (Enter)")
        self.earlier = self._verb("Earlier", "One place towards the front (Ctrl+Left)")
        self.later = self._verb("Later", "One place towards the end (Ctrl+Right)")
        self.remove = self._verb("Remove", "Take this variant out (Delete)")
        self.as_baseline = self._verb("As baseline", "Measure the others against this one (B)")
        self.alert = AlertLabel()
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(theme.HALF)
        layout.addWidget(self.name, 1)
        for verb in self.verbs:
            layout.addWidget(verb)
        layout.addWidget(self.alert, 2)
        layout.addStretch(1)
        self.adopt.clicked.connect(self.do_adopt)
        self.earlier.clicked.connect(lambda: self.do_move(-1))
        self.later.clicked.connect(lambda: self.do_move(1))
        self.remove.clicked.connect(self.do_remove)
        self.as_baseline.clicked.connect(self.do_baseline)
        comparer.compared.connect(self.refresh)
        linked.changed.connect(lambda _new, _old: self.refresh())
        document.changed.connect(lambda _old, _new: self.refresh())
        steps.refused.connect(self.alert.say)
        self.refresh()

    @property
    def verbs(self) -> tuple[QToolButton, ...]:
        """The buttons, as they stand."""
        return self.adopt, self.as_baseline, self.earlier, self.later, self.remove

    def _verb(self, text: str, tip: str) -> QToolButton:
        made = link_button(text)
        made.setToolTip(f"<p>{tip}</p>")
        return made

    # -- which --------------------------------------------------------------------------

    @property
    def side(self) -> Side | None:
        """The chosen side."""
        sides = self._comparer.sides
        return sides[min(self._linked.state.chosen, len(sides) - 1)] if sides else None

    @property
    def index(self) -> int | None:
        """Which variant of the plan is chosen, None for anything else."""
        side = self.side
        if side is None or side.index is None or side.index >= len(self._document.plan.variants):
            return None
        return side.index

    def refresh(self) -> None:
        """Show what can be done with the chosen side."""
        index = self.index
        self.alert.say("")
        self.name.setVisible(index is not None)
        if index is not None:
            self.name.set_value(self._document.plan.variants[index].name)
        last = len(self._document.plan.variants) - 1
        self.adopt.setEnabled(index is not None)
        self.remove.setEnabled(index is not None)
        self.earlier.setEnabled(index is not None and index > 0)
        self.later.setEnabled(index is not None and index < last)
        self.as_baseline.setEnabled(self._linked.state.chosen != self._linked.state.baseline)
        for verb in self.verbs:
            verb.setVisible(verb.isEnabled())

    # -- doing --------------------------------------------------------------------------

    def _rename(self, name: str) -> None:
        if self.index is not None:
            self._steps.rename(self.index, name)

    def do_adopt(self) -> None:
        """Make the chosen variant the plan."""
        if self.index is not None and self._steps.adopt(self.index):
            self._linked.update(chosen=0, baseline=0)

    def do_remove(self) -> None:
        """Take the chosen variant out."""
        if self.index is not None:
            self._steps.remove(self.index)

    def do_move(self, by: int) -> None:
        """Move the chosen variant; it stays chosen."""
        index = self.index
        if index is not None and self._steps.move(index, index + by):
            state = self._linked.state
            moved = {index + 1: index + by + 1, index + by + 1: index + 1}
            self._linked.update(
                chosen=moved.get(state.chosen, state.chosen),
                baseline=moved.get(state.baseline, state.baseline),
            )

    def do_baseline(self) -> None:
        """Measure the others against the chosen side."""
        self._linked.update(baseline=self._linked.state.chosen)

    def edit_name(self) -> None:
        """Put the keyboard into the name."""
        if self.index is not None:
            self.name.setFocus()
            self.name.selectAll()
