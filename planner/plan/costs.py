"""What things cost: the user's tariff and the sizes linings are bought in.

They belong to the plan and not to the catalogue: prices differ by place and by day, and a
plan sent to somebody else should show the sums it was decided with. Amounts are plain
numbers in the user's own currency, whose sign is only a text. Nothing has a price until
somebody has typed it.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated, Self

from pydantic import Field, model_validator

from planner.plan.quantity import Key, Value

Amount = Annotated[float, Field(ge=0.0, le=1.0e6, json_schema_extra={"unit": "currency"})]
GoodsWidth = Annotated[float, Field(ge=0.02, le=10.0, json_schema_extra={"unit": "m"})]
GoodsLength = Annotated[float, Field(ge=0.02, le=200.0, json_schema_extra={"unit": "m"})]
Months = Annotated[float, Field(ge=1.0, le=240.0, json_schema_extra={"unit": "months"})]
Allowance = Annotated[float, Field(ge=0.0, le=0.3, json_schema_extra={"unit": "m"})]


class Form(StrEnum):
    """How a lining is sold."""

    ROLL = "roll"
    SHEET = "sheet"


class Goods(Value):
    """The roll or sheet a lining is bought as, and what one of them costs."""

    lining: Key
    form: Form = Form.ROLL
    width: GoodsWidth = Field(description="Width of the roll, or the sheet's shorter side.")
    length: GoodsLength = Field(description="Length on one roll, or the sheet's longer side.")
    price: Amount | None = Field(default=None, description="Of one roll or sheet.")


class LampPrice(Value):
    """What one lamp of a model costs."""

    model: Key
    price: Amount


class Costs(Value):
    """Tariff, currency, goods by the key of their lining, lamps by the key of their model."""

    price_per_kwh: Amount | None = Field(default=None, description="The tariff.")
    currency: Annotated[str, Field(max_length=8)] = ""
    overlap: Allowance = Field(
        default=0.02, description="Added to every side of a cut piece, for corners and seams."
    )
    seams: bool = Field(
        default=False, description="Whether pieces that fit whole may be put together from strips."
    )
    goods: Annotated[tuple[Goods, ...], Field(max_length=60)] = ()
    lamp_prices: Annotated[tuple[LampPrice, ...], Field(max_length=60)] = ()
    span_months: Months = Field(
        default=12.0, description="How long the light is run in a reckoned total."
    )

    @model_validator(mode="after")
    def _check(self) -> Self:
        keys = [goods.lining for goods in self.goods]
        for key in keys:
            if keys.count(key) > 1:
                raise ValueError(f"the goods of lining '{key}' are given twice; keep one.")
        models = [one.model for one in self.lamp_prices]
        for key in models:
            if models.count(key) > 1:
                raise ValueError(f"the price of lamp '{key}' is given twice; keep one.")
        return self

    def goods_of(self, lining: str) -> Goods | None:
        """How a lining is sold, or None when nothing was entered."""
        return next((goods for goods in self.goods if goods.lining == lining), None)

    def lamp_price(self, model: str) -> float | None:
        """What one lamp of a model costs, or None when nobody has said."""
        return next((one.price for one in self.lamp_prices if one.model == model), None)
