"""Worth it: what a lining costs against what it brings.

Light is proportional to output, and power is taken as proportional to output, so more
light at the same power can be had as less power at the same light, in the same ratio.
"""

from __future__ import annotations

from dataclasses import dataclass

from planner.estimate.result import Estimate
from planner.metrics.cost import (
    Cover,
    Purchase,
    covers,
    kilowatt_hours_per_month,
    payback_months,
    purchase,
)
from planner.plan.costs import Costs
from planner.plan.plan import Plan


@dataclass(frozen=True)
class Worth:
    """What a plan with other linings brings against a plan without them.

    ``more_light`` is the mean PPFD over the baseline's at the same power (1.2: a fifth
    more). ``output_share`` is the part of its present output at which it gives the
    baseline's mean; ``kwh_saved`` and ``money_saved`` are per month at that output.
    ``stronger_watts`` is the power the baseline would need for the same light from a
    stronger lamp of the same efficacy, ``stronger_kwh`` and ``stronger_money`` what that
    takes more per month. ``purchases`` holds what is bought anew and whose goods are
    known, ``unknown`` the covers whose goods are not. Money is None where a price or the
    tariff is not known, ``payback`` (months) also where nothing is saved.
    """

    more_light: float
    output_share: float
    kwh_saved: float
    money_saved: float | None
    stronger_watts: float
    stronger_kwh: float
    stronger_money: float | None
    purchases: tuple[Purchase, ...]
    unknown: tuple[Cover, ...]
    cost: float | None
    payback: float | None


class WorthError(ValueError):
    """Two plans that cannot be weighed against each other; the message says why."""


def worth(lined: Estimate, baseline: Estimate, costs: Costs) -> Worth:
    """Weigh an estimate with other linings against a baseline.

    Raises
    ------
    WorthError
        If one of them is dark.
    """
    light, before = lined.figures, baseline.figures
    if light.mean <= 0 or before.mean <= 0:
        raise WorthError("A dark plan has no light to weigh; raise its output or hang a lamp.")
    ratio = light.mean / before.mean
    hours = lined.plan.photoperiod_hours
    share = 1 / ratio
    # What is saved is counted from the lined plan: less of its power for the old light.
    kwh_saved = kilowatt_hours_per_month(light.watts * (1 - share), hours)
    stronger = before.watts * ratio
    stronger_kwh = kilowatt_hours_per_month(stronger - before.watts, hours)
    tariff = costs.price_per_kwh
    bought, unknown = new_purchases(lined.plan, baseline.plan, costs)
    prices = [one.cost for one in bought if one.cost is not None]
    known = len(prices) == len(bought) and not unknown
    cost = sum(prices) if known else None
    money = None if tariff is None else kwh_saved * tariff
    return Worth(
        more_light=ratio,
        output_share=share,
        kwh_saved=kwh_saved,
        money_saved=money,
        stronger_watts=stronger,
        stronger_kwh=stronger_kwh,
        stronger_money=None if tariff is None else stronger_kwh * tariff,
        purchases=bought,
        unknown=unknown,
        cost=cost,
        payback=None if cost is None or money is None else payback_months(cost, money),
    )


def new_purchases(
    lined: Plan, baseline: Plan, costs: Costs
) -> tuple[tuple[Purchase, ...], tuple[Cover, ...]]:
    """What must be bought for a plan beyond what the baseline's surfaces carry already.

    A piece is there already when the baseline has one of the same lining, name and size.
    The second part holds covers whose goods were not entered.
    """
    there = {cover.lining: cover.pieces for cover in covers(baseline, costs.overlap)}
    bought, unknown = [], []
    for cover in covers(lined, costs.overlap):
        part = cover.without(there.get(cover.lining, ()))
        if not part.pieces:
            continue
        goods = costs.goods_of(cover.lining)
        if goods is None:
            unknown.append(part)
        else:
            bought.append(purchase(part, goods, costs))
    return tuple(bought), tuple(unknown)
