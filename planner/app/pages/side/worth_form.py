"""Worth it: tariff, prices and gain of the chosen side against the baseline, and lamp heat."""

from __future__ import annotations

from typing import Any, Final

from PySide6.QtWidgets import QCheckBox, QWidget

from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.form import NoteLabel, TextLine
from planner.app.fields.panel import FieldForm
from planner.app.pages.side.comparer import Comparer
from planner.app.pages.side.linked import Linked
from planner.app.pages.side.worth_board import WorthBoard
from planner.app.plain import tooltip
from planner.app.quantity_box import QuantityBox
from planner.estimate.compare import Side
from planner.estimate.worth import (
    ASSUMPTIONS,
    CAUTION,
    WorthError,
    air_flow,
    covers,
    in_words,
    worth,
)
from planner.plan.costs import Form, Goods, LampPrice
from planner.plan.edits import changed
from planner.plan.plan import Plan
from planner.plan.quantity import Quantity, quantity_of

_RISE: Final = Quantity("K", decimals=1, step=0.5).within(0.5, 40.0)
_START: Final = Goods(lining="none", form=Form.ROLL, width=1.2, length=10.0, price=None)


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
        self.add_heading("Tariff")
        self.tariff = self.add_dial("tariff").box
        self.currency = TextLine("Currency")
        self.currency.setMaxLength(8)
        self.currency_row = self.add_row("Currency", self.currency)
        self.currency.committed.connect(self._set_currency)
        self.span = self.add_dial("span").box
        self.add_heading("Prices of lamps")
        _, self.lamp = self.add_choice("Lamp", [])
        self.lamp.activated.connect(lambda _line: self._show_goods())
        self.lamp_price = self.add_quantity(
            "Price of one",
            quantity_of(LampPrice, "price", step=1.0),
            lambda plan: plan.costs.lamp_price(self.lamp.currentData() or "") or 0.0,
            self._with_lamp_price,
            "Set price of lamp",
            "Leave it at 0 while not known.",
        ).box
        self.add_heading("How it is sold")
        _, self.lining = self.add_choice("Lining", [])
        self.lining.activated.connect(lambda _line: self._show_goods())
        sold = [("Rolls", Form.ROLL), ("Sheets", Form.SHEET)]
        self.form_row, self.form = self.add_choice("Sold as", sold)
        self.form.activated.connect(self._set_form)
        self.sold = {
            part: self._goods_number(part.capitalize(), part, f"Set {part} of goods")
            for part in ("width", "length")
        }
        self.price = self._goods_number(
            "Price of one",
            "price",
            "Set price of goods",
            "Of one roll or sheet; leave it at 0 while not known.",
            step=0.5,
        )
        self.overlap = self.add_dial("overlap").box
        self.seams = QCheckBox("Seams are welcome")
        self.seams.setToolTip(
            tooltip("Pieces that fit whole may be put together from strips where that saves some.")
        )
        self.seams.clicked.connect(self._set_seams)
        self.add_wide(self.seams)
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
        comparer.priced.connect(self._show_gain)
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
        made = changed(self._goods, lining=key, **parts)
        rest = tuple(goods for goods in plan.costs.goods if goods.lining != key)
        return changed(plan, costs=changed(plan.costs, goods=(*rest, made)))

    def _set_currency(self, text: str) -> None:
        def build() -> Plan:
            return changed(self.plan, costs=changed(self.plan.costs, currency=text))

        self.edit(self.currency_row, build, "Set currency")

    def _with_lamp_price(self, plan: Plan, value: float) -> Plan:
        key = self.lamp.currentData()
        rest = [one for one in plan.costs.lamp_prices if one.model != key]
        if key is not None and value > 0:
            rest.append(LampPrice(model=key, price=value))
        return changed(plan, costs=changed(plan.costs, lamp_prices=tuple(rest)))

    def _set_seams(self, on: bool) -> None:
        made = changed(self.plan, costs=changed(self.plan.costs, seams=on))
        self._document.apply(made, "Welcome seams" if on else "Avoid seams")

    def _set_form(self, line: int) -> None:
        def build() -> Plan:
            return self._with_goods(self.plan, form=self.form.itemData(line))

        self.edit(self.form_row, build, "Set form of sale")

    # -- showing ------------------------------------------------------------------------

    @property
    def side(self) -> Side | None:
        """The side that is weighed: the chosen one."""
        return self._comparer.chosen

    def refresh(self, plan: Plan | None = None) -> None:
        """Show costs and gain as they stand."""
        plan = plan or self.plan
        self.currency.set_value(plan.costs.currency)
        self.seams.setChecked(plan.costs.seams)
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
        lamps = {lamp.model.key: lamp.model.name for plan in plans for lamp in plan.lamps}
        for combo, offered in ((self.lining, entries), (self.lamp, lamps)):
            if [combo.itemData(k) for k in range(combo.count())] != list(offered):
                chosen = combo.currentData()
                combo.clear()
                for key, name in offered.items():
                    combo.addItem(name, key)
                combo.widen_list()
                combo.setCurrentIndex(max(combo.findData(chosen), 0))

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
        say = self._board.words.setText
        if side is None or base is None or side.estimate is None or base.estimate is None:
            say("The light is still being computed.")
            return
        plan, costs = side.plan, self._document.plan.costs
        if side is base:
            say(
                f"'{side.name}' is the baseline: choose another option to weigh it. Below is what "
                "all of its linings and lamps take."
            )
            self._board.show_bill(plan, side.name, self._comparer.whole, ())
            return
        bought = self._comparer.bill(side)
        if bought is None:
            say("What has to be bought is being laid out.")
            self._board.show_bill(plan, side.name, None, ())
            return
        try:
            say(
                in_words(
                    side.name, base.name, worth(side.estimate, base.estimate, bought, costs), costs
                )
            )
        except WorthError as error:
            say(str(error))
        new = {cover.lining for cover in bought.unknown}
        new |= {one.cover.lining for one in bought.purchases}
        there = tuple(cover for cover in covers(plan) if cover.lining not in new)
        self._board.show_bill(plan, side.name, bought, there)
