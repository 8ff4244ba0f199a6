"""Lesson 09: a whole job in a few lines, what moves it, a load against the watch."""

from shop_calc.lesson.bench import over_band
from shop_calc.lesson.moves.night_map import cover_map, cover_score, mean_night  # noqa: F401  the lesson finds all under one name
from shop_calc.lesson.moves.ready_by import ready_by, ready_map, ready_words  # noqa: F401  likewise
from shop_calc.lesson.moves.stiffening import SAME_H
from shop_calc.science.checks import require
from shop_calc.trade.after.quarter_hour import not_before
from shop_calc.units import convert, show

_EARLY = ("form", "piece", "mix", "batch", "water", "base", "face", "float")  # advice for before the trowel
# judgement, ours: one weighing at a kitchen table, tare to tick; stirring one bowl until nothing dry is left
WEIGHING_MIN, STIRRING_MIN = (0.3, 0.75, 1.5), (2.0, 3.0, 5.0)


def first_move(plan):
    """Find the first hour at which the piece may be moved in any of the usual ways.

    Parameters
    ----------
    plan : Plan
        A plan [-].

    Returns
    -------
    datetime or None
        On the clock; None when no way is allowed in the days that are planned [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> f"{first_move(make_plan(read_job(demo_job('garden_bench_top')))):%a %H:%M}"
    'Tue 08:00'

    References
    ----------
    As shop_calc.trade.after.handling.
    """
    hours = [carry.earliest_h for carry in plan.handling.carries if carry.earliest_h is not None]
    return not_before(plan.day, min(hours)) if hours else None


def plan_words(plan, before=None):
    """Say a whole plan in a few lines, and what moved against an earlier one.

    Parameters
    ----------
    plan : Plan
        The plan [-].
    before : Plan, optional
        The plan before something was changed [-].

    Returns
    -------
    str
        Lines: water and mix, the clock, the night and the move, what changed, what stops the job [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> print(plan_words(make_plan(read_job(demo_job("garden_bench_top")))))
    First water Mon 4 May 08:00, mix at 60 °F (15.6 °C). Chill the mixing water to 41.3 °F (5.2 °C).
    Sides off from 10:22, first steel 11:03, last steel 11:43 to 12:06, stop 12:33. These hours say when to look.
    Tonight: leave it open. Move it from Tue 5 May 08:00, not earlier.

    References
    ----------
    As the parts of the plan.
    """
    day, stage = plan.day, plan.day.stage
    at = lambda hour: f"{day.clock(hour):%H:%M}"  # noqa: E731
    last, move, cover = stage("last_steel"), first_move(plan), plan.cure.picked.title
    moved = "No way to move it is allowed yet" if move is None else f"Move it from {_date(move)}, not earlier"
    lines = [
        f"First water {_date(day.water_in)}, mix at {show(plan.batch.water.mix_temp_c, 'temperature')}. "
        f"{plan.batch.water.words}",
        f"Sides off from {at(stage('strip').likely_from_h)}, first steel {at(stage('first_steel').likely_from_h)}, "
        f"last steel {at(last.likely_from_h)} to {at(last.likely_to_h)}, stop {at(stage('stop').likely_from_h)}. "
        "These hours say when to look.",
        f"Tonight: {cover[0].lower()}{cover[1:]}. {moved}.",
    ]
    if before is not None:
        told = {line.text for line in before.advice}
        lines.append(_changed(plan, before))
        new = [line for line in plan.advice if line.level == "act" and line.where in _EARLY and line.text not in told]
        lines += [f"Now also: {line.text}" for line in new]
    lines += [f"STOP: {line.text}" for line in plan.advice if line.level == "stop"]
    return "\n".join(lines)


def _date(when):
    return f"{when:%a} {when.day} {when:%b %H:%M}"


def _changed(plan, before):
    """What moved, in hours since the first water, so that another start alone moves nothing."""
    found = []
    for key, name in (("strip", "sides"), ("first_steel", "first steel"), ("last_steel", "last steel")):
        off = plan.day.stage(key).likely_from_h - before.day.stage(key).likely_from_h
        if abs(off) > SAME_H:
            found.append(f"{name} {show(round(60.0 * abs(off)) / 60.0, 'duration')} {'later' if off > 0 else 'earlier'}")
    aside = plan.batch.on_scale_kg / before.batch.on_scale_kg - 1.0
    if abs(aside) > 0.005:
        found.append(f"face share {100 * aside:+.0f} %")
    made = plan.batch.mortar_kg / before.batch.mortar_kg - 1.0
    if abs(made) > 0.005:
        found.append(f"mortar {100 * made:+.0f} %")
    if plan.cure.pick != before.cure.pick:
        found.append("another cover")
    loads = len(plan.batch.loads) - len(before.batch.loads)
    if loads:
        found.append(f"{abs(loads)} {'load' if abs(loads) == 1 else 'loads'} {'more' if loads > 0 else 'fewer'}")
    return "Against the file: " + ("nothing moves." if not found else ", ".join(found) + ".")


def load_band_h(weighings, stirrings=1):
    """Forecast how long it takes to weigh and stir one small load.

    Parameters
    ----------
    weighings : int
        How many things are weighed [-].
    stirrings : int
        How many bowls are stirred [-].

    Returns
    -------
    tuple of float
        Low, likely, high [h].

    Raises
    ------
    ValueError
        When there is nothing to weigh.

    Examples
    --------
    >>> [round(60 * hours, 5) for hours in load_band_h(5)]
    [3.5, 6.75, 12.5]

    References
    ----------
    Our judgement.
    """
    require("weighings", weighings, 1, 50)
    require("stirrings", stirrings, 0, 50)
    return tuple((weighings * w + stirrings * s) / 60.0 for w, s in zip(WEIGHING_MIN, STIRRING_MIN, strict=True))


def timed(took, weighings):
    """Lay a timed load over its forecast; nothing that is typed stops the lesson.

    Parameters
    ----------
    took : float or str
        What the watch said; a bare number is in minutes, three dots for not yet [min].
    weighings : int
        How many things were weighed [-].

    Returns
    -------
    Still or Said
        Shown by the notebook [-].

    Examples
    --------
    >>> timed("long", 5)
    This cannot be read: ...

    References
    ----------
    As `load_band_h`.
    """
    return over_band(
        took, load_band_h(weighings), "duration", "min", (0.0, convert(20.0, "min", "h")), "One load at the kitchen table",
        "Beyond the band? Then look at what you fetched while the mix was already wet.",
    )  # fmt: skip
