"""Worth it: tariff, goods and gain of the chosen side against the baseline, and lamp heat."""

from __future__ import annotations

from typing import Any, Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.form import NoteLabel
from planner.app.fields.text_line import TextLine
from planner.app.pages.side.comparer import Comparer, Linked
from planner.app.pages.side.question_form import QuestionForm
from planner.app.pages.side.worth_board import WorthBoard
from planner.app.quantity_box import QuantityBox
from planner.estimate.compare import Side
from planner.metrics.cost import ASSUMPTIONS, CAUTION, Cover, air_flow, covers
from planner.plan.costs import Costs, Form, Goods
from planner.plan.edits import changed
from planner.plan.plan import Plan
from planner.plan.quantity import Quantity
from planner.plan.refusal import refusal

_MONEY: Final = Quantity("", decimals=4, step=0.01).within(0.0, 1.0e6)
_PRICE: Final = Quantity("", decimals=2, step=0.5).within(0.0, 1.0e6)
_WIDTH: Final = Quantity(is_length=True).within(0.02, 10.0)
_LENGTH: Final = Quantity(is_length=True).within(0.02, 200.0)
_OVERLAP: Final = Quantity(is_length=True).within(0.0, 0.3)
_RISE: Final = Quantity("K", decimals=1, step=0.5).within(0.5, 40.0)
_START: Final = Goods(lining="none", form=Form.ROLL, width=1.2, length=10.0, price=None)
_HALF_YEAR: Final = 6.0


class WorthForm(QuestionForm):
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
        super().__init__(display, parent)
        self._document, self._comparer = document, comparer
        self._linked, self._board = linked, board
        self.words = NoteLabel()
        self.words.setForegroundRole(self.palette().ColorRole.WindowText)
        self.words.setAccessibleName("Whether it is worth it")
        self.words.setTextFormat(Qt.TextFormat.PlainText)
        self.add_wide(self.words)
        self.add_heading("Tariff")
        self.tariff = self._money_row("Price of 1 kWh", _MONEY, "price_per_kwh", "Set tariff")
        self.currency = TextLine("Currency")
        self.currency.setMaxLength(8)
        self.currency_row = self.add_row("Currency", self.currency)
        self.currency.committed.connect(lambda text: self._set_costs("Set currency", currency=text))
        self.add_heading("How it is sold")
        _, self.lining = self.add_choice("Lining", [])
        self.lining.activated.connect(lambda _line: self._show_goods())
        _, self.form = self.add_choice("Sold as", [("Rolls", Form.ROLL), ("Sheets", Form.SHEET)])
        self.form.activated.connect(
            lambda line: self._set_goods("Set form of sale", form=self.form.itemData(line))
        )
        self.width_box = self._goods_row("Width", _WIDTH, "width", "Set width of goods")
        self.length_box = self._goods_row("Length", _LENGTH, "length", "Set length of goods")
        _, self.price = self.add_number(
            "Price of one", _PRICE, 0.0, "Of one roll or sheet; leave it at 0 while not known."
        )
        self._edits(
            self.price, lambda value: self._set_goods("Set price of goods", price=value or None)
        )
        _, self.overlap = self.add_number(
            "Overlap", _OVERLAP, 0.02, "Added to every side of a cut piece, for corners and seams."
        )
        self._edits(self.overlap, lambda value: self._set_costs("Set overlap", overlap=value))
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

    def _money_row(self, label: str, quantity: Quantity, part: str, step: str) -> QuantityBox:
        _, box = self.add_number(label, quantity, 0.0, "Leave it at 0 while it is not known.")
        self._edits(box, lambda value: self._set_costs(step, **{part: value or None}))
        return box

    def _goods_row(self, label: str, quantity: Quantity, part: str, step: str) -> QuantityBox:
        _, box = self.add_number(label, quantity, 0.0)
        self._edits(box, lambda value: self._set_goods(step, **{part: value}))
        return box

    @staticmethod
    def _edits(box: QuantityBox, edit: Any) -> None:
        box.committed.connect(edit)
        box.stepped.connect(edit)

    # -- edits --------------------------------------------------------------------------

    def _set_costs(self, step: str, **parts: Any) -> None:
        costs = self._document.plan.costs
        old = {name: getattr(costs, name) for name in Costs.model_fields}
        try:
            made = changed(self._document.plan, costs=Costs.model_validate({**old, **parts}))
        except ValueError as error:
            self.alert.say(refusal(error, self._display.unit))
            return
        self.alert.say("")
        self._document.apply(made, step)

    def _set_goods(self, step: str, **parts: Any) -> None:
        key = self.lining.currentData()
        if key is None:
            return
        costs = self._document.plan.costs
        old = costs.goods_of(key) or _START
        values = {name: getattr(old, name) for name in Goods.model_fields}
        try:
            made = Goods.model_validate({**values, "lining": key, **parts})
        except ValueError as error:
            self.alert.say(refusal(error, self._display.unit))
            return
        rest = tuple(goods for goods in costs.goods if goods.lining != key)
        self._set_costs(step, goods=(*rest, made))

    # -- showing ------------------------------------------------------------------------

    @property
    def side(self) -> Side | None:
        """The side that is weighed: the chosen one."""
        sides = self._comparer.sides
        return sides[min(self._linked.state.chosen, len(sides) - 1)] if sides else None

    def refresh(self) -> None:
        """Show costs and gain as they stand."""
        costs = self._document.plan.costs
        self.tariff.set_value(costs.price_per_kwh or 0.0)
        self.currency.set_value(costs.currency)
        self.overlap.set_value(costs.overlap)
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
        key = self.lining.currentData()
        goods = None if key is None else self._document.plan.costs.goods_of(key)
        shown = goods or _START
        self.form.setCurrentIndex(self.form.findData(shown.form))
        self.width_box.set_value(shown.width)
        self.length_box.set_value(shown.length)
        self.price.set_value(shown.price or 0.0)

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
            bought.append(purchase(cover, goods, costs.overlap))
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
