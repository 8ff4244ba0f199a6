"""Cost: whole packs and what is left of them, the cash they take, and beside it the share that the piece uses."""

import difflib
from dataclasses import dataclass, replace

from shop_calc.science import portions
from shop_calc.science.checks import require
from shop_calc.trade.advice import Advice
from shop_calc.trade.batching.shopping import packs
from shop_calc.trade.working import Step
from shop_calc.units import show

SEALER = "sealer"
FREE = ("water", "water for the stone", "ice")  # nobody buys them in packs; a price may still be given
LIQUIDS = ("polymer liquid", "liquid admixture", "water")


@dataclass(frozen=True)
class CostLine:
    """One material with its packs and its money.

    Parameters
    ----------
    what : str
        The material [-].
    kind : str
        Kind of its amounts: mass, liquid or number [-].
    needed, pack : float
        Amount needed, and what one pack holds [kg, m3 or -].
    count : int
        Whole packs [-].
    exact_count : float
        Packs by the number, not rounded [-].
    left_over : float
        What remains of the packs [kg, m3 or -].
    price, cash, pro_rata : float
        Price of a pack, of all packs, of the share that is used [currency].

    Examples
    --------
    >>> cost_line("fine silica sand", "mass", 22.0, 22.67962, 9.0).count
    1

    References
    ----------
    Arithmetic, anyone can repeat it.
    """

    what: str
    kind: str
    needed: float
    pack: float
    count: int
    exact_count: float
    left_over: float
    price: float
    cash: float
    pro_rata: float

    def words(self, system="both"):
        """Needed, packs and leftover in one line."""
        if self.kind == "number":
            return f"{self.needed:g}"
        return (
            f"{show(self.needed, self.kind, system)}: {self.count} of {show(self.pack, self.kind, system)}, "
            f"{show(self.left_over, self.kind, system)} left over"
        )


@dataclass(frozen=True)
class Cost:
    """What the materials of one piece cost.

    Parameters
    ----------
    currency : str
        The shop's own sign [-].
    lines : tuple of CostLine
        Priced materials [as their fields].
    unpriced : tuple of str
        Materials of the piece without a price [-].
    unused : tuple of str
        Prices of what this piece does not have: a price list may serve many jobs [-].
    cash, pro_rata : float
        All packs, and the share that is used [currency].
    cash_m2, pro_rata_m2 : float
        The same for each square metre of top [currency/m2].
    advice : tuple of Advice
        What is missing [-].
    working : tuple of Step
        How the sums came about [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> cost = make_plan(read_job(demo_job("garden_bench_top"))).cost
    >>> cost.pro_rata < cost.cash
    True

    References
    ----------
    Arithmetic, anyone can repeat it. Work, form and tools are in it only as far as the job gives them a price.
    """

    currency: str
    lines: tuple
    unpriced: tuple
    unused: tuple
    cash: float
    pro_rata: float
    cash_m2: float
    pro_rata_m2: float
    advice: tuple = ()
    working: tuple = ()

    def money(self, amount):
        """Write an amount in the shop's currency."""
        sign = self.currency
        return f"{sign}{amount:,.2f}" if len(sign) <= 1 else f"{amount:,.2f} {sign}"


def cost_line(what, kind, needed, pack, price):
    """Count the packs of one material and their money.

    Parameters
    ----------
    what : str
        The material [-].
    kind : str
        mass, liquid or number [-].
    needed, pack : float
        Amount needed, and what one pack holds [kg, m3 or -].
    price : float
        Price of a pack [currency].

    Returns
    -------
    CostLine
        Packs rounded up, with the share beside them [-].

    Raises
    ------
    ValueError
        When an amount is negative or a pack holds nothing.

    Examples
    --------
    >>> line = cost_line("portland cement", "mass", 31.547, 42.63768, 18.5)
    >>> line.count, f"{line.cash:.2f} {line.pro_rata:.4f}"
    (1, '18.50 13.6879')

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    if kind == "mass":
        row = packs(needed, pack)
        count, exact, left = row.count, row.exact_count, row.left_over_kg
    else:
        require(f"{what} needed", needed, 0)
        require(f"pack of {what}", pack, 0, low_open=True)
        count, exact = int(portions.whole_units_count(needed, pack)), needed / pack
        left = max(count * pack - needed, 0.0)
    money = require(f"price of {what}", price, 0)
    return CostLine(what, kind, needed, pack, count, exact, left, money, count * money, exact * money)


def _liquid_density_kg_m3(mix, name):
    """Density of a liquid as it comes: its solids by their own density, its water at 1000 kg/m3."""
    line = next(line for line in mix.lines if line.name == name)
    return line.mass_kg / (line.volume_mass_kg / (1000.0 * line.relative_density) + line.water_kg / 1000.0)


def _line(price, needs, mix, sealer_m3):
    what = price.what
    if price.count is not None:
        return cost_line(what, "number", price.count, 1.0, price.price)
    if what == SEALER:
        if price.pack_m3 is None:
            raise ValueError(f"cost.prices.{SEALER}: a mass given; its pack must be a volume, as in pack = \"1 qt\"")
        return cost_line(what, "liquid", sealer_m3, price.pack_m3, price.price)
    need = needs[what]
    if price.pack_kg is not None:
        return cost_line(what, "mass", need.total_kg, price.pack_kg, price.price)
    if need.kind == "water":
        return cost_line(what, "liquid", need.total_kg / 1000.0, price.pack_m3, price.price)
    if need.kind not in LIQUIDS:
        raise ValueError(f"cost.prices.{what}: a volume given; its pack must be a mass, it is bought by weight")
    return cost_line(what, "liquid", need.total_kg / _liquid_density_kg_m3(mix, what), price.pack_m3, price.price)


def plan_cost(batch, mix, area_m2, sealer_m3=0.0, prices=(), currency=""):
    """Add up what a piece costs.

    Not a price for a customer: work, form, tools and what goes wrong are in it only where the job prices them.

    Parameters
    ----------
    batch : Batch
        Everything that is mixed [kg].
    mix : Mix
        The mix, for the density of its liquids [kg].
    area_m2 : float
        Area of the top [m2].
    sealer_m3 : float
        Sealer needed [m3].
    prices : sequence of Price
        Prices of the job [currency].
    currency : str
        The shop's own sign [-].

    Returns
    -------
    Cost
        Lines, sums, what has no price [currency].

    Raises
    ------
    ValueError
        When a pack is of the wrong kind.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("counter_worked_example")))
    >>> plan_cost(plan.batch, plan.mix, plan.layers.top_area_m2).cash
    0.0

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    area = require("area of the top", area_m2, 0, unit="m2", low_open=True)
    needs = {each.name: each for each in batch.ingredients}
    used = [price for price in prices if price.count is not None or price.what in (*needs, SEALER)]
    lines = tuple(_line(price, needs, mix, sealer_m3) for price in used)
    unused = tuple(price.what for price in prices if price not in used)
    have = {line.what for line in lines}
    unpriced = tuple(name for name in needs if name not in have and name not in FREE)
    if sealer_m3 > 0 and SEALER not in have:
        unpriced = (*unpriced, SEALER)
    cash, share = (float(sum(getattr(line, name) for line in lines)) for name in ("cash", "pro_rata"))
    cost = Cost(currency, lines, unpriced, unused, cash, share, cash / area, share / area)
    return replace(cost, advice=_advice(cost), working=_working(cost, area) if lines else ())


def _advice(cost):
    if not cost.lines or not cost.unpriced:
        return ()
    reason = "They have no price in [cost.prices]."
    for name in cost.unpriced:
        near = difflib.get_close_matches(name, cost.unused, n=1, cutoff=0.6)
        reason += f" Is the price of {near[0]!r} meant for {name}?" if near else ""
    given = ("given", "prices as given with the job")
    return (Advice("note", "cost", f"Not in the sum: {', '.join(cost.unpriced)}.", reason, *given),)


def _working(cost, area_m2):
    steps = []
    for number, line in enumerate(cost.lines, 1):
        unit = {"mass": "kg", "liquid": "m3", "number": "-"}[line.kind]
        steps += [
            Step(f"cost_{number}_packs_count", f"N_{number}", "by rounding needed over pack up",
                 ((f"need_{number}", line.needed, unit), (f"pack_{number}", line.pack, unit)), line.count, "-",
                 "derived",
                 "arithmetic", f"{line.what}: packs to buy"),
            Step(f"cost_{number}_cash", f"cash_{number}", f"N_{number} * price_{number}",
                 ((f"N_{number}", line.count, "-"), (f"price_{number}", line.price, "-")), line.cash, "-", "given",
                 "price as given with the job", f"{line.what}: cash"),
            Step(f"cost_{number}_pro_rata", f"share_{number}", f"need_{number} / pack_{number} * price_{number}",
                 ((f"need_{number}", line.needed, unit), (f"pack_{number}", line.pack, unit),
                  (f"price_{number}", line.price, "-")), line.pro_rata, "-", "given", "price as given with the job",
                 f"{line.what}: share that is used"),
        ]  # fmt: skip
    for name, symbol, value, words in (("cost_cash", "cash", cost.cash, "all packs"),
                                       ("cost_pro_rata", "share", cost.pro_rata, "the share that is used"
                                       )):  # fmt: skip
        parts = tuple((f"{symbol}_{n}", getattr(line, name.removeprefix("cost_")), "-")
                      for n, line in enumerate(cost.lines, 1))  # fmt: skip
        steps.append(Step(name, f"{symbol}_all", " + ".join(part[0] for part in parts), parts, value, "-", "derived",
                          "arithmetic", f"cost of {words}"))  # fmt: skip
        steps.append(Step(f"{name}_m2", f"{symbol}_m2", f"{symbol}_all / A_top",
                          ((f"{symbol}_all", value, "-"), ("A_top", area_m2, "m2")), value / area_m2, "-", "derived",
                          "arithmetic", f"cost of {words}, each square metre of top"))  # fmt: skip
    return tuple(steps)
