"""Lesson 09: a whole job in a few lines, what moves it, two maps of what could be, a load against the watch."""

from dataclasses import dataclass

import numpy as np

from shop_calc.lesson.bench import over_band
from shop_calc.lesson.moves.night_map import cover_map, cover_score, mean_night  # noqa: F401  the lesson finds all under one name
from shop_calc.lesson.pictures.follow import Follow
from shop_calc.lesson.pictures.what_if import Side, WhatIf, WhatIfMap
from shop_calc.science.checks import require
from shop_calc.trade.after.handling_advice import not_before
from shop_calc.trade.timeline.what_if import middle_times_h
from shop_calc.units import convert, show

ROOMS_F, MIXES_F = np.linspace(50.0, 90.0, 11), np.linspace(50.0, 86.0, 10)
DONE, LINES_H = "last_steel_end", (3.0, 3.5, 4.0, 5.0, 6.0)
HUMIDITIES, SPEEDS_MPH = np.linspace(10.0, 100.0, 46), np.linspace(0.0, 18.0, 46)
_SAME_H = 1.5 / 60.0
_EARLY = ("form", "piece", "mix", "batch", "water", "base", "face", "float")  # advice for before the trowel
_M_S = float(convert(1.0, "mph", "m/s"))
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
        if abs(off) > _SAME_H:
            found.append(f"{name} {show(round(60.0 * abs(off)) / 60.0, 'duration')} {'later' if off > 0 else 'earlier'}")
    aside = plan.batch.set_aside_kg / before.batch.set_aside_kg - 1.0
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


@dataclass(frozen=True)
class ReadyBy:
    """When the last steel is done, over room and mortar.

    Parameters
    ----------
    shown : WhatIf
        The map and the point on it [h].
    mix_temp_c : float
        The mortar here [°C].
    done_h : float
        Here, after the water of the face share [h].

    Examples
    --------
    >>> ReadyBy(None, 16.0, 4.0).done_h
    4.0

    References
    ----------
    As shop_calc.trade.timeline.what_if.
    """

    shown: WhatIf
    mix_temp_c: float
    done_h: float


def ready_by(plan):
    """Give the model of the block: when the last steel is done, for every room and mortar at once.

    Parameters
    ----------
    plan : Plan
        The plan whose first water and thickness are taken [-].

    Returns
    -------
    callable
        `model(mix_temp_c, air_temp_c, thickness_m, wind_m_s)`, gives a ReadyBy [h].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> model = ready_by(make_plan(read_job(demo_job("garden_bench_top"))))
    >>> f"{model(15.5556, 21.1111, 0.0381, 0.0).done_h:.3f}"
    '4.116'

    References
    ----------
    As shop_calc.trade.timeline.what_if: the middle day, an even room, the mortar alone.
    """
    inputs = plan.day.samples.inputs
    rh_fraction = inputs.room.rh_fraction[0]
    across, up = (Side(v, n, "F", "C", "°F", "°C") for v, n in ((ROOMS_F, "room"), (MIXES_F, "mortar as mixed")))
    mixes, rooms = (convert(grid.ravel(), "F", "C") for grid in np.meshgrid(MIXES_F, ROOMS_F, indexing="ij"))

    def clock(hour):
        return f"{plan.day.clock(inputs.face_load_h + hour):%H:%M}"

    def model(mix_temp_c, air_temp_c, thickness_m, wind_m_s):
        times = middle_times_h(
            np.append(mixes, mix_temp_c), np.append(rooms, air_temp_c), rh_fraction, wind_m_s, thickness_m, (DONE,)
        )[DONE]  # fmt: skip
        here = float(times[-1])
        answer = times[:-1].reshape(MIXES_F.size, ROOMS_F.size)
        place = (float(convert(air_temp_c, "C", "F")), float(convert(mix_temp_c, "C", "F")), here)
        return ReadyBy(WhatIf(across, up, answer, LINES_H, clock, place), mix_temp_c, here)

    return model


def ready_words(plan):
    """Give the words of the block.

    Parameters
    ----------
    plan : Plan
        The plan whose first water is taken [-].

    Returns
    -------
    callable
        `words(result, system)`, gives two lines [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> print(ready_words(plan)(ready_by(plan)(15.5556, 21.1111, 0.0381, 0.0)).splitlines()[0])
    Last steel done about 12:07, 4 h 7 min after the water of the face.

    References
    ----------
    As `ready_by`.
    """
    water_h = plan.day.samples.inputs.face_load_h

    def words(result, system="both"):
        held = result.done_h > LINES_H[1]
        return (
            f"Last steel done about {plan.day.clock(water_h + result.done_h):%H:%M}, {show(result.done_h, 'duration')} "
            f"after the water of the face.\n"
            f"Mortar at {show(result.mix_temp_c, 'temperature', system)}: "
            + ("a long morning; there is time to look." if held else "a short morning; look early and often.")
        )

    return words


def ready_map(plan, title=""):
    """Give the picture of the block: lines of equal hours over room and mortar.

    Parameters
    ----------
    plan : Plan
        The plan [-].
    title : str
        One line over the picture [-].

    Returns
    -------
    Follow
        Takes a ReadyBy [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> ready_map(make_plan(read_job(demo_job("garden_bench_top")))).alt[:31]
    'Last steel done, by the clock. '

    References
    ----------
    Common practice, no source.
    """
    inputs = plan.day.samples.inputs
    start = ready_by(plan)(
        inputs.mix_temp_c, inputs.room.air_temp_c[0], inputs.thickness_m, inputs.room.wind_m_s[0]
    )
    title = title or "Last steel done, by the clock"
    return Follow(WhatIfMap(start.shown, title, "lines of equal time, on the middle day"), lambda result: result.shown)


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
