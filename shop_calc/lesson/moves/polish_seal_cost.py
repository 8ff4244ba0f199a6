"""Lesson 08: when to polish and seal, in tables; and a wet towel that is weighed until it is dry."""

from shop_calc import defaults, units
from shop_calc.lesson.pictures.scales import day_name
from shop_calc.lesson.table import table
from shop_calc.science.evaporation import menzel_rate_kg_m2_h
from shop_calc.science.moist_air import wet_bulb_c
from shop_calc.trade.after.finish_words import SEALERS
from shop_calc.trade.after.polish_seal import FIBRE_WORDS, fibre_showing
from shop_calc.trade.after.quarter_hour import not_before
from shop_calc.trade.timeline.drying import moving_air
from shop_calc.units import show

DEPTHS = ("1/64 in", "3/128 in", "3/64 in", "1/8 in")  # one of each kind
TOWEL_BAND = (0.5, 2.0)  # judgement: Menzel's formula is for slabs in wind; a towel hangs in still air


def when(plan, hour_h):
    """Say from when something may be done, rounded up to the quarter hour.

    Parameters
    ----------
    plan : Plan
        A plan, for the day of its first water [-].
    hour_h : float
        Hours after the first water [h].

    Returns
    -------
    str
        Day and time [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> when(make_plan(read_job(demo_job("garden_bench_top"))), 31.554)
    'Tue 5 May 15:45'

    References
    ----------
    Common practice, no source.
    """
    moment = not_before(plan.day, hour_h)
    return f"{day_name(moment)} {moment:%H:%M}"


def fibre_depths(own_m):
    """Say how much fibre shows after polishing so deep.

    Parameters
    ----------
    own_m : float
        Depth that this job polishes off [m].

    Returns
    -------
    Table
        Ours, and one depth of each kind [-].

    Examples
    --------
    >>> fibre_depths(0.0002).rows[0]
    ('ours, 7.87 mil (200 µm)', 'so shallow that fibre stays under the skin')

    References
    ----------
    Common practice, no source; limits in data/defaults.csv.
    """
    depths = [(f"ours, {show(own_m, 'film_thickness')}", own_m)]
    depths += [(text, units.parse(text, "length", entry="polish depth")) for text in DEPTHS]
    rows = [(words, FIBRE_WORDS[fibre_showing(depth)]) for words, depth in depths]
    return table(("polished off", "fibre in the face"), rows)


def steps(plan):
    """Lay out the steps after the night.

    Parameters
    ----------
    plan : Plan
        A plan [-].

    Returns
    -------
    Table
        What, not before, the sign that decides [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> [row[1] for row in steps(make_plan(read_job(demo_job("garden_bench_top")))).rows][1::2]
    ['Tue 5 May 15:45', 'Sun 10 May 16:00']

    References
    ----------
    As shop_calc.trade.after.finish.
    """
    rows = [
        (step.title, "not in 28 days" if step.from_h is None else when(plan, step.from_h), step.cue)
        for step in plan.finish.steps
    ]
    return table(("what", "not before", "the sign that decides"), rows)


def cautions(plan, step):
    """Give the cautions of one step, a line each.

    Parameters
    ----------
    plan : Plan
        A plan [-].
    step : str
        Key of the step: "polish", "seal" [-].

    Returns
    -------
    Table
        One caution a row [-].

    Raises
    ------
    ValueError
        When the plan has no such step.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> cautions(make_plan(read_job(demo_job("garden_bench_top"))), "seal").rows[0][0][:8]
    'Solvents'

    References
    ----------
    29 CFR 1926.1153 and 1910.1053 for the limits of silica; the rest common practice, no source.
    """
    for each in plan.finish.steps:
        if each.key == step:
            sentences = each.safety.replace(". ", ".\n").splitlines()
            return table((f"{each.title}: take care",), [(sentence,) for sentence in sentences])
    raise ValueError(f"step: {step!r} given; the plan has {', '.join(each.key for each in plan.finish.steps)}")


def sealer_kinds():
    """Set the kinds of sealer side by side.

    Returns
    -------
    Table
        Kind, usual age, ages that are quoted, what it does to damp concrete [-].

    Examples
    --------
    >>> sealer_kinds().rows[2][1:3]
    ('28 days', '4 to 28')

    References
    ----------
    Rows seal_wait_... of data/defaults.csv.
    """
    rows = []
    for kind in SEALERS.values():
        low, usual, high = (age / 24.0 for age in defaults.si_band(kind.row))
        rows.append((kind.title, f"{usual:.0f} days", f"{low:.0f} to {high:.0f}", kind.damp))
    return table(("sealer", "usual age", "quoted, days", "on damp concrete"), rows)


def towel_band(long, wide, air, humidity, hours):
    """Predict what a wet towel loses that hangs free in a still room.

    Parameters
    ----------
    long, wide : str
        Size of the towel, hanging in one layer, as people write it [-].
    air, humidity : str
        The room [-].
    hours : float
        How long it hangs [h].

    Returns
    -------
    tuple of float
        Low, likely, high loss [kg].

    Raises
    ------
    ValueError
        When an entry cannot be read.

    Notes
    -----
    Both sides dry. A wet towel is nearly as cold as a wet thermometer; warmer by what the walls send it, which is in
    the band.

    Examples
    --------
    >>> [f"{1000 * kg:.3f}" for kg in towel_band("28 in", "16 in", "70 F", "50 %", 1.0)]
    ['13.238', '26.477', '52.953']

    References
    ----------
    Menzel 1954, from memory; the band is our judgement.
    """
    size_m2 = units.parse(long, "length", entry="towel, long") * units.parse(wide, "length", entry="towel, wide")
    air_c = units.parse(air, "temperature", entry="air")
    rh = units.parse(humidity, "fraction", entry="humidity")
    rate = float(menzel_rate_kg_m2_h(wet_bulb_c(air_c, rh), air_c, rh, moving_air(0.0)))
    likely = 2.0 * size_m2 * rate * hours
    return TOWEL_BAND[0] * likely, likely, TOWEL_BAND[1] * likely
