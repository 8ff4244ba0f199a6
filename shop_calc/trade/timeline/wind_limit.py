"""The wind at which the air takes too much: a line that a person in the shop can see crossed."""

import math
from dataclasses import dataclass

from shop_calc import defaults
from shop_calc.science import evaporation
from shop_calc.trade.timeline.room import room_at
from shop_calc.trade.timeline.set_clock import at_h


@dataclass(frozen=True)
class WindLines:
    """Wind over the face from which care, and from which protection is needed, at the driest hour of the day.

    Parameters
    ----------
    at_h : float
        The hour whose air the lines are for: that of the largest evaporation, after the first water [h].
    surface_temp_c, air_temp_c : float
        Face and air at that hour [°C].
    rh_fraction : float
        Humidity at that hour [-].
    wind_m_s : float
        Wind of the job at that hour [m/s].
    care_m_s, protect_m_s : float
        Wind at the amber and at the red limit; 0 or less where still air takes that much, infinite where no wind
        does [m/s].

    Examples
    --------
    >>> WindLines(2.0, 18.0, 21.0, 0.5, 0.0, 2.6, 6.4).protect_m_s
    6.4

    References
    ----------
    Menzel 1954, from memory; limits in data/defaults.csv.
    """

    at_h: float
    surface_temp_c: float
    air_temp_c: float
    rh_fraction: float
    wind_m_s: float
    care_m_s: float
    protect_m_s: float


def wind_at_rate_m_s(rate_kg_m2_h, concrete_temp_c, air_temp_c, rh_fraction):
    """Find the wind at which a wet surface loses water at a given rate.

    Not for a surface that has stopped shining: it loses less.

    Parameters
    ----------
    rate_kg_m2_h : float
        Evaporation rate [kg/m2/h].
    concrete_temp_c : float
        Temperature of the surface [°C].
    air_temp_c : float
        Air temperature [°C].
    rh_fraction : float
        Relative humidity, 0 to 1 [-].

    Returns
    -------
    float
        Wind; below 0 where still air takes more than that, infinite where the air takes nothing [m/s].

    Raises
    ------
    ValueError
        When an entry cannot be.

    Examples
    --------
    >>> f"{wind_at_rate_m_s(0.26862, 21.0, 21.0, 0.5):.4f}"
    '2.0000'

    Notes
    -----
    Menzel's rate rises in a straight line with the wind, so that two rates give the line. As good as the rate
    itself, 40 % either way. More wind also cools the face, which then loses less: the line errs to the safe side.

    References
    ----------
    Derived from Menzel 1954 (from memory), as shop_calc.science.evaporation.
    """
    air = (concrete_temp_c, air_temp_c, rh_fraction)
    still, one = (float(evaporation.menzel_rate_kg_m2_h(*air, wind)) for wind in (0.0, 1.0))
    return (rate_kg_m2_h - still) / (one - still) if one > still else math.inf


def wind_lines(day, drying, history):
    """Draw the two lines for the hour at which the day takes most from the face.

    Parameters
    ----------
    day : Day
        The day [h].
    drying : Drying
        What the air takes, for its worst hour [kg/m2/h].
    history : SlabHistory
        Temperature of the face from its own water on, as a Cure keeps it [°C].

    Returns
    -------
    WindLines
        Wind at the amber and at the red limit [m/s].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> lines = wind_lines(plan.day, plan.drying, plan.cure.before)
    >>> lines.care_m_s < lines.protect_m_s
    True

    References
    ----------
    Menzel 1954, from memory; limits in data/defaults.csv.
    """
    hour = drying.peak_at_h
    surface_c = float(at_h(history.time_h, history.temp_c, hour - day.samples.inputs.face_load_h))
    air_c, rh_fraction, wind_m_s = (float(value) for value in room_at(day.samples.inputs.room, hour))
    care, protect = (
        wind_at_rate_m_s(defaults.si(row), surface_c, air_c, rh_fraction) for row in ("face_amber", "face_red")
    )
    return WindLines(hour, surface_c, air_c, rh_fraction, wind_m_s, care, protect)
