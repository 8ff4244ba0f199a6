"""Lesson 08: what one top or several cost in whole packs, and what of it is used."""

from dataclasses import dataclass

from shop_calc.lesson.book import book
from shop_calc.lesson.pictures.cost_bars import CostBars, CostRow
from shop_calc.lesson.pictures.follow import Follow
from shop_calc.science.loads import spread_rate_m2_m3
from shop_calc.trade.after.cost import SEALER, cost_line
from shop_calc.trade.after.polish_seal import sealer_volume_m3
from shop_calc.trade.batching.shopping import bags
from shop_calc.units import convert, parse, show

MOST = 80.0  # end of the scale for one top, in the invented prices of the demo job


@dataclass(frozen=True)
class Shopped:
    """Packs for several tops alike.

    Parameters
    ----------
    tops_count : int
        How many tops [-].
    lines : tuple of CostLine
        Packs for all of them [currency].
    sealer_m3 : float
        Sealer for all of them [m3].
    top_area_m2 : float
        Top of one of them [m2].
    money : callable
        `money(amount)`: an amount as the shop writes it [-].

    Examples
    --------
    >>> Shopped(2, (), 0.001, 0.58, str).cash
    0

    References
    ----------
    Arithmetic, anyone can repeat it.
    """

    tops_count: int
    lines: tuple
    sealer_m3: float
    top_area_m2: float
    money: object

    @property
    def cash(self):
        """Price of all packs."""
        return sum(line.cash for line in self.lines)

    @property
    def pro_rata(self):
        """Price of what is used."""
        return sum(line.pro_rata for line in self.lines)


def cost_rows(lines, tops_count=1):
    """Turn lines of a cost into bars, the dearest first; money by the top, what is left for all of them.

    Parameters
    ----------
    lines : sequence of CostLine
        Packs [currency].
    tops_count : int
        Tops that share them [-].

    Returns
    -------
    list of CostRow
        As many as there are lines [currency].

    Examples
    --------
    >>> cost_rows([cost_line("stone", "mass", 12.0, 22.67962, 7.5)])[0].cash
    7.5

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    ordered = sorted(lines, key=lambda line: -line.price)
    return [
        CostRow(line.what, line.cash / tops_count, line.pro_rata / tops_count, line.left_over, line.kind)
        for line in ordered
    ]


def cost_picture(cost, title):
    """Draw the packs of one piece.

    Parameters
    ----------
    cost : Cost
        A plan's cost [currency].
    title : str
        One line over it [-].

    Returns
    -------
    CostBars
        Its `still` puts it on the page [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> cost_picture(make_plan(read_job(demo_job("garden_bench_top"))).cost, "A top").alt[:6]
    'A top.'

    References
    ----------
    Common practice, no source.
    """
    return CostBars(cost_rows(cost.lines), cost.money, title=title)


def shopper(plan):
    """Give the model of the block: one top of a plan or several, with another sealer.

    Parameters
    ----------
    plan : Plan
        A plan with prices [-].

    Returns
    -------
    callable
        `model(tops_count, coats_count, coverage_m2_m3)`, gives a Shopped [-].

    Notes
    -----
    What is counted by the piece, as the board of the form, is bought once and serves every top.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> model = shopper(make_plan(read_job(demo_job("garden_bench_top"))))
    >>> f"{model(1, 2, 4000.0).pro_rata:.4f}"
    '110.2366'

    References
    ----------
    As shop_calc.trade.after.cost.
    """
    finish, cost = plan.finish, plan.cost

    def model(tops_count, coats_count, coverage_m2_m3):
        tops = round(tops_count)
        sealer_m3 = tops * float(sealer_volume_m3(finish.both_m2, coverage_m2_m3, round(coats_count)))
        lines = tuple(_again(line, tops, sealer_m3) for line in cost.lines)
        return Shopped(tops, lines, sealer_m3, plan.layers.top_area_m2, cost.money)

    return model


def _again(line, tops_count, sealer_m3):
    needed = line.needed * (1 if line.kind == "number" else tops_count)
    return cost_line(line.what, line.kind, sealer_m3 if line.what == SEALER else needed, line.pack, line.price)


def shopped_words(result, system="both"):
    """Say what each top costs in packs and in what is used, and what sealer all of them take.

    Parameters
    ----------
    result : Shopped
        Packs [currency].
    system : str
        "us", "si" or "both" [-].

    Returns
    -------
    str
        Three lines [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> print(shopped_words(shopper(make_plan(read_job(demo_job("garden_bench_top"))))(1, 2, 4000.0), "us"))
    One top: packs $270.00, used $110.24.
    By the square foot of top: packs $43.20, used $17.64.
    Sealer 3.04 cup: packs bought 1, left over 7.7 fl oz.

    References
    ----------
    As `shopper`.
    """
    tops, money = result.tops_count, result.money
    cash, used = result.cash / tops, result.pro_rata / tops
    unit, name = ("m2", "square metre") if system == "si" else ("ft2", "square foot")
    area = float(convert(result.top_area_m2, "m2", unit))
    sealer = next(line for line in result.lines if line.what == SEALER)
    left = show(sealer.left_over, "liquid", system)
    return (
        f"{'One top' if tops == 1 else f'{tops} tops, each'}: packs {money(cash)}, used {money(used)}.\n"
        f"By the {name} of top: packs {money(cash / area)}, used {money(used / area)}.\n"
        f"Sealer {show(result.sealer_m3, 'liquid', system)}: packs bought {sealer.count}, left over {left}."
    )


def shopping_picture(model):
    """Give the picture of the block.

    Parameters
    ----------
    model : callable
        From `shopper` [-].

    Returns
    -------
    Follow
        Takes a Shopped [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> shopping_picture(shopper(make_plan(read_job(demo_job("garden_bench_top"))))).alt[:17]
    'What one top pays'

    References
    ----------
    Common practice, no source.
    """
    first = model(1, 2, 4000.0)
    read = lambda result: cost_rows(result.lines, result.tops_count)  # noqa: E731
    return Follow(CostBars(read(first), first.money, MOST, "What one top pays; what all of them leave over"), read)


def by_yield_or_label(volume, bag_yield, bag, wet_weight):
    """Lay coverage and both ways to count bags beside the check tables.

    Parameters
    ----------
    volume, bag_yield, bag, wet_weight : str
        Volume to fill, what a bag makes, what its label weighs, how heavy the wet mix is, as people write it [-].

    Returns
    -------
    Table
        Theirs and ours [-].

    Examples
    --------
    >>> [row[2] for row in by_yield_or_label("74.61 ft3", "0.30 ft3", "40 lb", "145 lb/ft3").rows]
    ['267.4 ft²/gal', '249.0', '271.0']

    References
    ----------
    data/published names the source of each row.
    """
    count = bags(
        parse(volume, "volume", entry="volume"), parse(bag_yield, "volume", entry="yield of a bag"),
        bag_kg=parse(bag, "mass", entry="bag"), wet_density_kg_m3=parse(wet_weight, "density", entry="wet mix"),
    )  # fmt: skip
    coat = convert(spread_rate_m2_m3(0.25, convert(1.5, "mil", "m")), "m2/m3", "ft2/gal")
    return book(
        ("one coat, a quarter solids, 1.5 mil", "CV-1", coat),
        ("bags, by what a bag makes", "V07b", count.count),
        ("bags, by the weight on the label", "V07c", count.count_by_weight),
    )
