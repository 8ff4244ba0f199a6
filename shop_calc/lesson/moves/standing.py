"""Lesson 06: what a piece may stand on, by the rules for seats, for strips beside an opening, and for counters."""

from shop_calc import defaults, units
from shop_calc.lesson.table import table
from shop_calc.science import bending
from shop_calc.trade.after.seat_rule import seat_limit_pa
from shop_calc.trade.after.supports import check_supports
from shop_calc.trade.shape.outline import rectangle
from shop_calc.trade.shape.piece import build_piece
from shop_calc.units import show

SINK_M = (29.5, 17.5)  # invented beside a demo top: length and depth of the opening, in
RAIL_M = tuple(units.convert(size, "in", "m") for size in (SINK_M[0], 4.25))  # the strip before it: length, width

COUNTER_IN = (96.0, 25.0, 1.5)  # invented: length, depth and thickness of a counter
BAY_IN, BAR_IN = 24.0, 10.0  # invented: a cabinet or a bay, and a bar beyond it
SAYS = {"free": "kneel on it", "care": "kneel slowly, nobody drops", "nobody": "nobody sits, kneels, stands",
        "lean": "not even leaning", "stop": "do not pour"}  # fmt: skip


def rail_stress_pa(length_m, width_m, thickness_m, density_kg_m3):
    """Stress of a strip beside an opening when a person leans on its middle, ends free to turn.

    Parameters
    ----------
    length_m, width_m, thickness_m : float
        Length of the opening, width of the strip, thickness of the top [m].
    density_kg_m3 : float
        Density [kg/m3].

    Returns
    -------
    float
        Tension at the middle, below [Pa].

    Raises
    ------
    ValueError
        When a size is not positive.

    Examples
    --------
    >>> f"{rail_stress_pa(0.8382, 0.0762, 0.0381, 2402.769) / 6894.757:.3f}"
    '780.599'

    References
    ----------
    Derived: elementary beam theory; rail_load of data/defaults.csv, judgement.
    """
    size = (length_m, width_m, thickness_m, density_kg_m3)
    return float(bending.simple_span_stress_pa(*size, defaults.si("rail_load")))


def stand_table(plan, rail_thicknesses=("1 1/2 in", "2 1/2 in")):
    """Set what people load side by side: a bench on two legs where they help most, and a strip before a sink.

    Parameters
    ----------
    plan : Plan
        The planned job, a seat of which nobody has said what carries it [-].
    rail_thicknesses : sequence of str
        Thicknesses of a top with a sink, as people write them [-].

    Returns
    -------
    Table
        A row a place, stress and whether it holds [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> [row[-1] for row in stand_table(make_plan(read_job(demo_job("garden_bench_top")))).rows]
    ['no: 3.17 times what it may', 'no: 3.16 times what it may', 'no: 1.69 times what it may', 'holds, at 0.64 of what it may']

    References
    ----------
    Rule of this project, judgement; beam theory.
    """
    handling = plan.handling
    limit = float(seat_limit_pa(handling.strength.counted_pa))
    rows = [
        (f"the bench {_place(check)}, {show(check.size_m, 'length')}", check.stress_pa) for check in handling.legs
    ]
    for thickness in rail_thicknesses:
        thick_m = units.parse(thickness, "length", entry="thickness")
        stress = rail_stress_pa(*RAIL_M, thick_m, handling.density_kg_m3)
        width, length = show(RAIL_M[1], "length"), show(RAIL_M[0], "length")
        top = show(thick_m, "length")
        rows.append((f"a strip by a sink, {width} wide, {length} long, {top} thick", stress))
    caption = f"Each may have {show(limit, 'pressure')}: its strength in bending over the scatter."
    shown = [(where, show(stress, "pressure"), _verdict(stress / limit)) for where, stress in rows]
    return table(("where", "pull, people in it", "does it hold?"), shown, caption)


def counter_table(plan):
    """Set a counter that nobody sits on over a cabinet, over an open bay and beyond its support, side by side.

    Parameters
    ----------
    plan : Plan
        The planned job, of which density and strength are taken [-].

    Returns
    -------
    Table
        A row a place: three stresses and the step that follows [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> [row[-1] for row in counter_table(make_plan(read_job(demo_job("garden_bench_top")))).rows]
    ['kneel slowly, nobody drops', 'nobody sits, kneels, stands', 'nobody sits, kneels, stands']

    References
    ----------
    Rule of this project, judgement; theory of plates.
    """
    length, depth, thick, bay, bar = (units.convert(size, "in", "m") for size in (*COUNTER_IN, BAY_IN, BAR_IN))
    top, handling = build_piece(rectangle(length, depth), thick), plan.handling
    given = (top, handling.density_kg_m3, handling.strength.counted_pa)
    (closed,) = check_supports(*given, bay, rails="front and back")
    (open_bay,) = check_supports(*given, bay, rails="back")
    (beyond,) = check_supports(*given, overhang_m=bar)
    rows = []
    for where, check in (("over a cabinet, four sides carried", closed), ("over a bay, no rail in front", open_bay),
                         (f"a bar, {show(bar, 'length')} beyond", beyond)):  # fmt: skip
        pulls = (check.lean_pa, check.people_pa, check.drop_pa)
        rows.append((where, *(show(check.own_pa + pull, "pressure") for pull in pulls), SAYS[check.step]))
    helps = show(bay / 4.0 / open_bay.ratio, "length")
    caption = (
        f"A top {show(depth, 'length')} deep and {show(thick, 'length')} thick; cabinet and bay {show(bay, 'length')} wide. "
        f"It may have {show(closed.limit_pa, 'pressure')}. At the open edge a strip of {helps} helps."
    )
    return table(("where", "leaning", "kneeling slowly", "dropping", "so"), rows, caption)


def _place(check):
    return "between two legs" if check.key == "span" else "beyond a leg"


def _verdict(share):
    return f"no: {share:.2f} times what it may" if share > 1.0 else f"holds, at {share:.2f} of what it may"
