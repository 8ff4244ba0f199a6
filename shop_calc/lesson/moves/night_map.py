"""Lesson 09: which cover for which air, as a map."""

import numpy as np

from shop_calc import defaults
from shop_calc.lesson.pictures.what_if import Side, WhatIf, WhatIfMap
from shop_calc.science.checks import require
from shop_calc.science.evaporation import menzel_rate_kg_m2_h
from shop_calc.trade.curing.cure_rules import pick_cover
from shop_calc.trade.timeline.drying import moving_air
from shop_calc.trade.timeline.room import room_at
from shop_calc.units import convert

HUMIDITIES, SPEEDS_MPH = np.linspace(10.0, 100.0, 46), np.linspace(0.0, 18.0, 46)
_M_S = float(convert(1.0, "mph", "m/s"))


def cover_map(plan):
    """Draw which cover the night asks for, over humidity and wind.

    Parameters
    ----------
    plan : Plan
        The plan whose night is taken: its air and the temperature of its open face, as means [-].

    Returns
    -------
    WhatIfMap
        The picture; the dot is the plan's own night [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> cover_map(make_plan(read_job(demo_job("garden_bench_top")))).alt[-23:]
    '(0 m/s): leave it open.'

    References
    ----------
    As shop_calc.trade.curing.cure_rules.
    """
    night = mean_night(plan)
    score = cover_score(*night[:2], HUMIDITIES / 100.0, _M_S * SPEEDS_MPH[:, np.newaxis], plan.mix.has_silica_fume)
    here = float(cover_score(*night, plan.mix.has_silica_fume))
    shown = WhatIf(
        Side(HUMIDITIES, "humidity", "-", words="%"), Side(SPEEDS_MPH, "moving air", "mph", "m/s", "mph", "m/s"),
        score, (0.0,), _cover_words, (100.0 * night[2], night[3] / _M_S, here),
    )  # fmt: skip
    drawn = WhatIfMap(shown, "Which cover tonight", "light: leave it open; dark: damp fabric flat, plastic over it")
    drawn.point.set_clip_on(False)  # a still room lies on the edge of the map
    return drawn


def _cover_words(score):
    return "change of cover" if score == 0 else "damp fabric" if score > 0 else "leave it open"


def mean_night(plan):
    """Give the night of a plan in four means.

    Parameters
    ----------
    plan : Plan
        A plan [-].

    Returns
    -------
    tuple of float
        Open face, air, humidity and stated air speed [°C, °C, -, m/s].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> [round(value, 2) for value in mean_night(make_plan(read_job(demo_job("garden_bench_top"))))][2:]
    [0.56, 0.0]

    References
    ----------
    As shop_calc.trade.curing.cure.
    """
    hours, face_c = plan.cure.night("open")
    air_c, humidity, wind = room_at(plan.day.samples.inputs.room, hours)
    return tuple(float(np.mean(each)) for each in (face_c, air_c, humidity, wind))


def cover_score(face_c, air_c, rh_fraction, wind_m_s, silica_fume=False):
    """Say how far the cover rule is from its limit: above 0 it wants damp fabric.

    Parameters
    ----------
    face_c, air_c : float
        Temperatures of the face and of the air, all night [°C].
    rh_fraction, wind_m_s : float or array
        Humidity and stated air speed [-, m/s].
    silica_fume : bool
        True when the binder has silica fume [-].

    Returns
    -------
    float or array
        0 on the limit, at most 1 beyond it, at least -1 below it [-].

    Raises
    ------
    ValueError
        When the humidity is outside 0 to 1.

    Examples
    --------
    >>> f"{cover_score(17.0, 18.0, 0.55, 0.0):.5f}", float(cover_score(17.0, 5.0, 0.55, 0.0))
    ('-0.57143', 1.0)

    References
    ----------
    The rule is `pick_cover`; this only says how near its limits are, so that a line can be drawn.
    """
    humidity = require("humidity", rh_fraction, 0, 1, unit="(as a fraction)")
    rate = menzel_rate_kg_m2_h(face_c, air_c, humidity, moving_air(wind_m_s))
    amber, dry = defaults.si("face_amber"), defaults.si("cure_humidity_low")
    score = np.maximum(rate / amber - 1.0, (dry - humidity) / dry)
    score = np.where(pick_cover(0.0, 0.0, air_c, air_c, 1.0, silica_fume)[0] == "open", score, 1.0)
    return np.clip(score, -1.0, 1.0)[()]
