"""Lesson 09: when the last steel is done, from mortar, room, thickness and moving air, in words and as a map."""

from dataclasses import dataclass, replace

import numpy as np

from shop_calc.lesson.pictures.follow import Follow
from shop_calc.lesson.pictures.what_if import Side, WhatIf, WhatIfMap
from shop_calc.trade.timeline.day import plan_day
from shop_calc.trade.timeline.room import steady_room
from shop_calc.trade.timeline.what_if import middle_times_h
from shop_calc.units import convert, show

ROOMS_F, MIXES_F = np.linspace(50.0, 90.0, 11), np.linspace(50.0, 86.0, 10)
DONE, LINES_H = "last_steel_end", (3.0, 3.5, 4.0, 5.0, 6.0)


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
    As shop_calc.trade.timeline.day.
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
    '4.103'

    References
    ----------
    As shop_calc.trade.timeline.day.

    Notes
    -----
    The hour here is the likely hour of a plan with this mortar, room and thickness, base and hands counted in. The rest
    of the map is the mortar alone on its middle day, drawn out or in by one factor so that it goes through that hour:
    within a few minutes of what a plan says there (tests/test_likely_hours.py).
    """
    inputs = plan.day.samples.inputs
    face_m = inputs.thickness_m - inputs.base_depth_m
    rh_fraction = inputs.room.rh_fraction[0]
    across, up = (Side(v, n, "F", "C", "°F", "°C") for v, n in ((ROOMS_F, "room"), (MIXES_F, "mortar as mixed")))
    mixes, rooms = (convert(grid.ravel(), "F", "C") for grid in np.meshgrid(MIXES_F, ROOMS_F, indexing="ij"))

    def clock(hour):
        return f"{plan.day.clock(inputs.face_load_h + hour):%H:%M}"

    def model(mix_temp_c, air_temp_c, thickness_m, wind_m_s):
        times = middle_times_h(
            np.append(mixes, mix_temp_c), np.append(rooms, air_temp_c), rh_fraction, wind_m_s, thickness_m, (DONE,),
            inputs.bands,
        )[DONE]  # fmt: skip
        room = steady_room(air_temp_c, rh_fraction, wind_m_s)
        sizes = {"thickness_m": thickness_m, "base_depth_m": thickness_m - face_m}
        here = plan_day(replace(inputs.mixed_at(mix_temp_c), room=room, **sizes)).likely_h(DONE) - inputs.face_load_h
        answer = (times[:-1] * here / times[-1]).reshape(MIXES_F.size, ROOMS_F.size)
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
    Last steel done about 12:06, 4 h 6 min after the water of the face.

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
    return Follow(WhatIfMap(start.shown, title, "lines of equal time, drawn through this one"), lambda result: result.shown)
