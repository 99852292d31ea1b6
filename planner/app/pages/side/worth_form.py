"""Worth it: tariff, prices and gain of the chosen side, what to buy and how it is cut."""

from __future__ import annotations

from typing import Any, Final

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QFrame,
    QScrollArea,
    QSizePolicy,
    QWidget,
)

from planner.app import theme
from planner.app.canvas.ink import Ink, figure_font, mixed, pen
from planner.app.display import Display
from planner.app.document import Document
from planner.app.fields.form import NoteLabel, TextLine
from planner.app.fields.panel import FieldForm
from planner.app.pages.side.comparer import Comparer
from planner.app.pages.side.linked import Linked
from planner.app.pages.side.options_table import ReadTable
from planner.app.plain import PlainLabel, explain
from planner.app.quantity_box import QuantityBox
from planner.estimate.compare import Side
from planner.estimate.worth import (
    ASSUMPTIONS,
    CAUTION,
    Bill,
    Cover,
    Purchase,
    WorthError,
    air_flow,
    covers,
    in_words,
    worth,
)
from planner.language import word
from planner.metrics.cutting import CuttingList, Placed
from planner.metrics.figures import FIGURE, money, percent
from planner.plan.costs import Form, Goods, LampPrice
from planner.plan.edits import changed
from planner.plan.plan import Plan
from planner.plan.quantity import Quantity, quantity_of
from planner.units import format_length

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
    ) -> None:
        super().__init__(document, display)
        self._document, self._comparer = document, comparer
        self._linked, self._board = linked, board
        self._led: object = None
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
            part: self._goods_number(word(part).capitalize(), part, f"Set {word(part)} of goods")
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
        explain(
            self.seams,
            "Pieces that fit whole may be put together from strips where that saves some.",
        )
        self.seams.clicked.connect(self._set_seams)
        self.add_wide(self.seams)
        self.add_heading("Lamp heat")
        _, self.rise = self.add_number(
            "Warmer by at most", _RISE, 5.0, "How much warmer than the room the space may become."
        )
        for signal in (self.rise.committed, self.rise.stepped):
            signal.connect(lambda _value: self._show_air())
        self.air = self.add_wide(PlainLabel(name="Air flow", wrap=True))
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
            combo.offer([(name, key) for key, name in offered.items()])

    def _show_goods(self) -> None:
        self.form.setCurrentIndex(self.form.findData(self._goods.form))
        super().refresh(self.plan)

    def _show_air(self) -> None:
        side = self.side
        plan = self._document.plan if side is None else side.plan
        watts = plan.watts
        if watts <= 0:
            self.air.setText("No lamp is lit, so there is no heat to carry away.")
            return
        flow = air_flow(watts, self.rise.value)
        self.air.setText(
            f"{FIGURE['watts'].text(watts)} of lamp heat need {flow:.0f} m³/h of room air, so that "
            f"the space becomes at most {_RISE.text(self.rise.value, None)} warmer."
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
        self._lead_to([cover.lining for cover in bought.unknown], side)

    def _lead_to(self, unknown: list[str], side: Side) -> None:
        """Show what an option still needs a price of, once: the price of another would not help."""
        if unknown and side.identity != self._led:
            self._led = side.identity
            if self.lining.currentData() not in unknown:
                self.lining.setCurrentIndex(self.lining.findData(unknown[0]))
                self._show_goods()


# -- What is bought of each lining in a table, and how it is cut, to scale -------------

_MOST_ROLLS: Final = 6
_ALIKE_M: Final = 0.005


class CuttingDrawing(QWidget):
    """Rolls lie on their side, unrolled to the right; only as much as is used is drawn."""

    def __init__(self, display: Display) -> None:
        super().__init__()
        self._display = display
        self.purchases: tuple[tuple[str, Purchase], ...] = ()
        self.empty = ""
        self.setAccessibleName("Cutting list")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        display.changed.connect(lambda _state: self.update())

    def show_purchases(self, purchases: tuple[tuple[str, Purchase], ...], empty: str = "") -> None:
        """Show what is cut of what, each with the name of its lining; ``empty`` is why nothing."""
        self.purchases, self.empty = purchases, empty
        self.setAccessibleDescription(" ".join(self.words()) or empty)
        self.updateGeometry()
        self.update()

    def words(self) -> list[str]:
        """The cutting list in words, a sentence a piece."""
        unit = self._display.unit
        said = []
        for name, bought in self.purchases:
            kind = "roll" if bought.goods.form is Form.ROLL else "sheet"
            for piece in bought.cutting.placed:
                size = (
                    f"{format_length(piece.size_along, unit, with_unit=False)} x "
                    f"{format_length(piece.size_across, unit)}"
                )
                said.append(f"{name}, {kind} {piece.roll + 1}: {piece.label}, {size}.")
        return said

    def _strips(self) -> list[tuple[str, CuttingList, int, str]]:
        return [
            (name, bought.cutting, roll, self._measured(bought))
            for name, bought in self.purchases
            for roll in range(min(bought.cutting.rolls, _MOST_ROLLS))
        ]

    def _measured(self, bought: Purchase) -> str:
        """What is cut of all rolls together, and with how much less nobody could do."""
        cutting, unit = bought.cutting, self._display.unit
        used = format_length(cutting.used_length, unit)
        if cutting.used_length <= cutting.least_length + _ALIKE_M:
            return f": {used} cut, and no layout does with less"
        least = format_length(cutting.least_length, unit)
        return f": {used} cut; no layout does with less than {least}"

    def sizeHint(self) -> QSize:
        return QSize(360, 60 + 80 * len(self._strips()))

    def minimumSizeHint(self) -> QSize:
        return QSize(200, 60 + 56 * len(self._strips()))

    def paintEvent(self, _event: QPaintEvent) -> None:
        ink = Ink.of(self.palette())
        painter = QPainter(self)
        painter.fillRect(self.rect(), ink.paper)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(figure_font(self.font(), 0.88))
        strips = self._strips()
        if not strips:
            painter.setPen(ink.quiet)
            flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
            painter.drawText(self.rect().adjusted(20, 10, -20, -10), flags, self.empty)
            painter.end()
            return
        metrics = QFontMetricsF(painter.font())
        line = metrics.height()
        lengths = [_drawn_length(cutting, roll) for _, cutting, roll, _ in strips]
        across = sum(cutting.width for _, cutting, _, _ in strips)
        room = self.height() - len(strips) * (line + 10) - 8
        scale = min((self.width() - 24) / max(*lengths, 0.01), room / max(across, 0.01))
        y = 4.0
        for (name, cutting, roll, said), length in zip(strips, lengths, strict=True):
            painter.setPen(ink.ink)
            width = format_length(cutting.width, self._display.unit)
            text = f"{name} {roll + 1} of {cutting.rolls}, {width} wide"
            text += said if roll == 0 else ""
            painter.drawText(QPointF(12, y + metrics.ascent()), text)
            area = QRectF(12, y + line + 2, length * scale, cutting.width * scale)
            painter.fillRect(area, mixed(ink.paper, ink.ink, 0.06))
            painter.setPen(pen(ink.quiet, 1.0))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(area)
            for piece in cutting.placed:
                if piece.roll == roll:
                    self._paint_piece(painter, piece, area, scale, ink)
            y = area.bottom() + 8
        painter.end()

    def _paint_piece(
        self, painter: QPainter, piece: Placed, area: QRectF, scale: float, ink: Ink
    ) -> None:
        rect = QRectF(
            area.left() + piece.along * scale, area.top() + piece.across * scale,
            piece.size_along * scale, piece.size_across * scale,
        )  # fmt: skip
        painter.fillRect(rect, mixed(ink.paper, ink.accent, 0.22))
        painter.setPen(pen(ink.accent, 1.2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(rect)
        metrics = QFontMetricsF(painter.font())
        unit = self._display.unit
        size = (
            f"{format_length(piece.size_along, unit, with_unit=False)} x "
            f"{format_length(piece.size_across, unit, with_unit=False)}"
        )
        painter.setPen(ink.ink)
        inside = rect.adjusted(3, 1, -3, -1)
        elide = Qt.TextElideMode.ElideRight
        if inside.width() < metrics.horizontalAdvance("Wall 1") < inside.height():
            # A narrow piece is read from its side.
            painter.save()
            painter.translate(rect.center())
            painter.rotate(-90)
            room = QRectF(-rect.height() / 2, -rect.width() / 2, rect.height(), rect.width())
            text = metrics.elidedText(f"{piece.label}, {size}", elide, room.width() - 6)
            painter.drawText(room, Qt.AlignmentFlag.AlignCenter, text)
            painter.restore()
            return
        texts = [metrics.elidedText(piece.label, elide, inside.width())]
        if inside.height() >= 2 * metrics.height():
            texts.append(metrics.elidedText(size, elide, inside.width()))
        if inside.height() >= 0.8 * metrics.height():
            flags = Qt.AlignmentFlag.AlignCenter
            painter.drawText(inside, flags, "\n".join(texts))


def _drawn_length(cutting: CuttingList, roll: int) -> float:
    """How much of a roll is drawn: what is cut from it, and a little more where there is."""
    used = max((p.along + p.size_along for p in cutting.placed if p.roll == roll), default=0.0)
    return min(cutting.length, 1.06 * used)


HEADINGS = ("What", "Area", "Pieces", "To buy", "Waste", "Cost")


class WorthBoard(QWidget):
    """A table of linings over a drawing of the cuts."""

    def __init__(self, document: Document, display: Display) -> None:
        super().__init__()
        self._document = document
        self.heading = PlainLabel("To buy and to cut", bold=True)
        self.table = ReadTable("Linings to buy", HEADINGS)
        self.drawing = CuttingDrawing(display)
        area = QScrollArea()
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setWidgetResizable(True)
        area.setWidget(self.drawing)
        self.words = PlainLabel(name="Whether it is worth it", wrap=True)
        theme.column(self.words, self.heading, (self.table, 1), (area, 2), on=self, gap=theme.HALF)

    def show_bill(
        self, plan: Plan, name: str, bought: Bill | None, there: tuple[Cover, ...]
    ) -> None:
        """Show what is bought for a plan (None: still being laid out), and what is there."""
        self.heading.setText(f"To buy and to cut for '{name}'")
        empty = "No lining has to be bought, so nothing is cut."
        if bought is None:
            self.heading.setText(f"Laying out the pieces for '{name}'…")
            bought, empty = Bill(), ""
        elif bought.unknown:
            empty = "Say how the linings are sold, and the pieces are laid out here."
        lines = [self._cells(plan, one.cover, one, "") for one in bought.purchases]
        lines += [self._cells(plan, one, None, "say how it is sold") for one in bought.unknown]
        for lamp in bought.lamps:
            count = f"{lamp.count} lamp" + ("" if lamp.count == 1 else "s")
            price = None if lamp.price is None else lamp.count * lamp.price
            lines.append((lamp.name, "", "", count, "", self._money(price)))
        if lines:
            area = sum(one.cover.area for one in bought.purchases)
            area += sum(one.area for one in bought.unknown)
            total = self._money(bought.cost)
            lines.append(("All of it", FIGURE["canopy_area"].text(area), "", "", "", total))
        lines += [self._cells(plan, one, None, "is there") for one in there]
        self.table.fill(lines)
        named = tuple((_name(plan, one.cover.lining), one) for one in bought.purchases)
        self.drawing.show_purchases(named, empty)

    def _money(self, value: float | None) -> str:
        return "no price" if value is None else money(value, self._document.plan.costs.currency)

    def _cells(
        self, plan: Plan | None, cover: Cover, bought: Purchase | None, words: str
    ) -> tuple[str, ...]:
        name = _name(plan, cover.lining)
        area, pieces = FIGURE["canopy_area"].text(cover.area), str(len(cover.pieces))
        if bought is None:
            return name, area, pieces, words, "", ""
        kind = "roll" if bought.goods.form is Form.ROLL else "sheet"
        count = bought.cutting.rolls
        buy = f"{count} {kind}" + ("" if count == 1 else "s")
        waste = percent(bought.cutting.waste)
        return name, area, pieces, buy, waste, self._money(bought.cost)


def _name(plan: Plan | None, key: str) -> str:
    if plan is None or all(lining.key != key for lining in plan.linings):
        return key
    return plan.lining(key).name
