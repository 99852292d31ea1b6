"""Worth it: tariff, goods and gain of the chosen side against the baseline, and lamp heat."""

from __future__ import annotations

from typing import Any, Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.controls import TextLine
from planner.app.fields.form import NoteLabel
from planner.app.fields.panel import FieldForm
from planner.app.pages.side.comparer import Comparer, Linked
from planner.app.pages.side.worth_board import WorthBoard
from planner.app.quantity_box import QuantityBox
from planner.estimate.compare import Side
from planner.metrics.cost import ASSUMPTIONS, CAUTION, Cover, air_flow, covers
from planner.plan.costs import Costs, Form, Goods
from planner.plan.edits import changed, replaced
from planner.plan.plan import Plan
from planner.plan.quantity import Quantity, quantity_of

_RISE: Final = Quantity("K", decimals=1, step=0.5).within(0.5, 40.0)
_START: Final = Goods(lining="none", form=Form.ROLL, width=1.2, length=10.0, price=None)
_HALF_YEAR: Final = 6.0


class WorthForm(FieldForm):
    """Costs belong to the plan: every edit of them is one undo step."""

    def __init__(
        self,
        document: Document,
        display: Display,
        comparer: Comparer,
        linked: Linked,
        board: WorthBoard,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(document, display, parent)
        self._document, self._comparer = document, comparer
        self._linked, self._board = linked, board
        self.words = NoteLabel()
        self.words.setForegroundRole(self.palette().ColorRole.WindowText)
        self.words.setAccessibleName("Whether it is worth it")
        self.words.setTextFormat(Qt.TextFormat.PlainText)
        self.add_wide(self.words)
        self.add_heading("Tariff")
        self.tariff = self.add_dial("tariff").box
        self.currency = TextLine("Currency")
        self.currency.setMaxLength(8)
        self.currency_row = self.add_row("Currency", self.currency)
        self.currency.committed.connect(self._set_currency)
        self.add_heading("How it is sold")
        _, self.lining = self.add_choice("Lining", [])
        self.lining.activated.connect(lambda _line: self._show_goods())
        sold = [("Rolls", Form.ROLL), ("Sheets", Form.SHEET)]
        self.form_row, self.form = self.add_choice("Sold as", sold)
        self.form.activated.connect(self._set_form)
        self.width_box = self._goods_number("Width", "width", "Set width of goods")
        self.length_box = self._goods_number("Length", "length", "Set length of goods")
        self.price = self._goods_number(
            "Price of one",
            "price",
            "Set price of goods",
            "Of one roll or sheet; leave it at 0 while not known.",
            step=0.5,
        )
        self.overlap = self.add_dial("overlap").box
        self.add_heading("Lamp heat")
        _, self.rise = self.add_number(
            "Warmer by at most", _RISE, 5.0, "How much warmer than the room the space may become."
        )
        for signal in (self.rise.committed, self.rise.stepped):
            signal.connect(lambda _value: self._show_air())
        self.air = NoteLabel()
        self.air.setForegroundRole(self.palette().ColorRole.WindowText)
        self.air.setAccessibleName("Air flow")
        self.add_wide(self.air)
        self.add_wide(NoteLabel(f"{ASSUMPTIONS} {CAUTION}"))
        self.alert = self.add_alert()
        self.end()
        document.changed.connect(lambda _old, _new: self.refresh())
        comparer.compared.connect(self.refresh)
        comparer.told.connect(self._show_gain)
        linked.changed.connect(lambda _new, _old: self.refresh())
        self.refresh()

    def _goods_number(
        self, label: str, part: str, step_name: str, about: str = "", **shown: Any
    ) -> QuantityBox:
        def read(_plan: Plan) -> float:
            return getattr(self._goods, part) or 0.0

        def build(plan: Plan, value: float) -> Plan:
            return self._with_goods(plan, **{part: value or None})

        kind = quantity_of(Goods, part, **shown)
        return self.add_quantity(label, kind, read, build, step_name, about).box

    # -- edits --------------------------------------------------------------------------

    @property
    def _goods(self) -> Goods:
        """The goods of the lining chosen, or what to begin with."""
        key = self.lining.currentData()
        return (None if key is None else self.plan.costs.goods_of(key)) or _START

    def _with_goods(self, plan: Plan, **parts: Any) -> Plan:
        key = self.lining.currentData()
        if key is None:
            return plan
        made = replaced(self._goods, lining=key, **parts)
        rest = tuple(goods for goods in plan.costs.goods if goods.lining != key)
        return changed(plan, costs=replaced(plan.costs, goods=(*rest, made)))

    def _set_currency(self, text: str) -> None:
        def build() -> Plan:
            return changed(self.plan, costs=replaced(self.plan.costs, currency=text))

        self.edit(self.currency_row, build, "Set currency")

    def _set_form(self, line: int) -> None:
        def build() -> Plan:
            return self._with_goods(self.plan, form=self.form.itemData(line))

        self.edit(self.form_row, build, "Set form of sale")

    # -- showing ------------------------------------------------------------------------

    @property
    def side(self) -> Side | None:
        """The side that is weighed: the chosen one."""
        sides = self._comparer.sides
        return sides[min(self._linked.state.chosen, len(sides) - 1)] if sides else None

    def refresh(self, plan: Plan | None = None) -> None:
        """Show costs and gain as they stand."""
        plan = plan or self.plan
        self.currency.set_value(plan.costs.currency)
        self._fill_linings()
        self._show_goods()
        self._show_gain()
        self._show_air()

    def _fill_linings(self) -> None:
        side = self.side
        plans = [self._document.plan] if side is None else [side.plan, self._document.plan]
        entries: dict[str, str] = {}
        for plan in plans:
            for cover in covers(plan):
                entries.setdefault(cover.lining, plan.lining(cover.lining).name)
        present = [self.lining.itemData(k) for k in range(self.lining.count())]
        if present == list(entries):
            return
        chosen = self.lining.currentData()
        self.lining.clear()
        for key, name in entries.items():
            self.lining.addItem(name, key)
        self.lining.widen_list()
        self.lining.setCurrentIndex(max(self.lining.findData(chosen), 0))

    def _show_goods(self) -> None:
        self.form.setCurrentIndex(self.form.findData(self._goods.form))
        super().refresh(self.plan)

    def _show_air(self) -> None:
        side = self.side
        plan = self._document.plan if side is None else side.plan
        watts = sum(lamp.watts for lamp in plan.lamps)
        if watts <= 0:
            self.air.setText("No lamp is lit, so there is no heat to carry away.")
            return
        flow = air_flow(watts, self.rise.value)
        self.air.setText(
            f"{watts:.0f} W of lamp heat need {flow:.0f} m³/h of room air, so that the space "
            f"becomes at most {self.rise.value:g} K warmer."
        )

    def _show_gain(self) -> None:
        side, base = self.side, self._comparer.baseline
        if side is None or base is None or side.estimate is None or base.estimate is None:
            self.words.setText("The light is still being computed.")
            return
        plan = side.plan
        if side is base:
            self.words.setText(
                "Choose a variant in the maps; it is weighed against the baseline. Below is what "
                "all linings of this plan take."
            )
            self._board.show_covers(plan, side.name, *_all_of(plan, self._document.plan.costs), ())
            return
        from planner.estimate.worth import WorthError, worth  # noqa: PLC0415 - with the page only

        try:
            found = worth(side.estimate, base.estimate, self._document.plan.costs)
        except WorthError as error:
            self.words.setText(str(error))
            self._board.show_covers(plan, side.name, (), (), ())
            return
        words = gain_in_words(side.name, base.name, found, self._document.plan.costs)
        telling = self._comparer.telling(side)
        if telling is not None and not telling.clear:
            words = f"The two cannot be told apart, so do not count on it: {words}"
        self.words.setText(words)
        new = {cover.lining for cover in found.unknown}
        new |= {bought.cover.lining for bought in found.purchases}
        there = tuple(cover for cover in covers(plan) if cover.lining not in new)
        self._board.show_covers(plan, side.name, found.purchases, found.unknown, there)


def _all_of(plan: Plan, costs: Costs) -> tuple[Any, tuple[Cover, ...]]:
    """Purchases of everything a plan is lined with, and covers whose goods are not known."""
    from planner.metrics.cost import purchase  # noqa: PLC0415 - beside covers above

    bought, unknown = [], []
    for cover in covers(plan, costs.overlap):
        goods = costs.goods_of(cover.lining)
        if goods is None:
            unknown.append(cover)
        else:
            bought.append(purchase(cover, goods, costs))
    return tuple(bought), tuple(unknown)


def gain_in_words(name: str, base: str, found: Any, costs: Costs) -> str:
    """What a side brings against the baseline, and when it has paid for itself."""
    sign = f" {costs.currency}" if costs.currency else ""
    change = 100 * (found.more_light - 1)
    if change < 0:
        return (
            f"{name} gives {-change:.0f} % less light than {base} at the same power; the same "
            f"light would take {100 * found.output_share:.0f} % of its output."
        )
    parts = [
        f"{name} gives {change:.0f} % more light than {base} at the same power.",
        f"Or the same light at {100 * found.output_share:.0f} % of its output, which saves "
        f"{found.kwh_saved:.1f} kWh a month"
        + ("." if found.money_saved is None else f" ({found.money_saved:.2f}{sign})."),
    ]
    stronger = f"A stronger lamp would need {found.stronger_watts:.0f} W for that light"
    stronger += f", {found.stronger_kwh:.1f} kWh a month more"
    if found.stronger_money is not None:
        stronger += f" ({found.stronger_money:.2f}{sign})"
    parts.append(f"{stronger}.")
    if found.unknown:
        parts.append("Say below how its linings are sold to see what it costs.")
    elif found.cost is None:
        parts.append("Write the price of one to see what it costs.")
    elif not found.purchases:
        parts.append("Nothing has to be bought for it.")
    else:
        parts.append(f"It costs {found.cost:.2f}{sign}.")
        if found.money_saved is None:
            parts.append("With a tariff it can be said when that is paid back.")
        elif found.payback is None:
            parts.append("It saves no money, so it does not pay itself back.")
        else:
            quick = " - soon" if found.payback <= _HALF_YEAR else ""
            parts.append(
                f"At lower output it has paid itself back after {found.payback:.1f} months{quick}."
            )
    return " ".join(parts)
