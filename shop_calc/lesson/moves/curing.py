"""Lesson 05: what the air takes from a face, moved on a map."""

from dataclasses import dataclass

import numpy as np

from shop_calc import defaults
from shop_calc.lesson.pictures.evaporation import WORDS, DryingSheet, EvaporationMap
from shop_calc.lesson.pictures.follow import Follow
from shop_calc.science.evaporation import estimate_band_kg_m2_h, menzel_rate_kg_m2_h
from shop_calc.science.layer_water import water_share_lost
from shop_calc.trade.timeline.drying import moving_air
from shop_calc.units import show

HUMIDITIES = np.linspace(0.10, 1.0, 37)
STILL_M_S = float(moving_air(0.0))
SPEEDS_M_S = np.append(0.0, np.linspace(STILL_M_S, 11.0, 44))  # to the end of the charts it was drawn for


@dataclass(frozen=True)
class Drying:
    """The air over a face, and what it takes.

    Parameters
    ----------
    sheet : EvaporationMap
        The map and the point on it [as its fields].
    hour_share : float
        What one hour takes of the water of the face [fraction].

    Examples
    --------
    >>> drying(21.0, 18.0, 0.5, 0.0, face_thickness_m=0.00635, face_water_kg_m3=280.0).sheet.field
    0

    References
    ----------
    Menzel 1954, from memory.
    """

    sheet: EvaporationMap
    hour_share: float


def drying(air_temp_c, surface_temp_c, rh_fraction, wind_m_s, *, face_thickness_m, face_water_kg_m3):
    """Lay one moment on the map of evaporation.

    Parameters
    ----------
    air_temp_c, surface_temp_c : float
        Temperatures of the air and of the face [°C].
    rh_fraction : float
        Humidity of the air [-].
    wind_m_s : float
        Air speed as stated; a still room moves a little [m/s].
    face_thickness_m : float
        Thickness of the face [m].
    face_water_kg_m3 : float
        Water in the fresh face [kg/m3].

    Returns
    -------
    Drying
        The map and the point [as its fields].

    Examples
    --------
    >>> now = drying(21.0, 18.0, 0.5, 0.0, face_thickness_m=0.00635, face_water_kg_m3=280.0)
    >>> f"{now.sheet.here_rate_kg_m2_h:.5f}"
    '0.08868'

    References
    ----------
    Menzel 1954, from memory; limits in data/defaults.csv; band: Hover, ACI SP-338 (2020).
    """
    rates = menzel_rate_kg_m2_h(surface_temp_c, air_temp_c, HUMIDITIES, moving_air(SPEEDS_M_S)[:, np.newaxis])
    speed = float(moving_air(wind_m_s))
    here = float(menzel_rate_kg_m2_h(surface_temp_c, air_temp_c, rh_fraction, speed))
    band = estimate_band_kg_m2_h(here)
    sheet = EvaporationMap(
        HUMIDITIES, SPEEDS_M_S, rates, defaults.si("face_amber"), defaults.si("face_red"), rh_fraction, speed, here,
        air_temp_c, surface_temp_c, (float(band.low_kg_m2_h), float(band.high_kg_m2_h)),
    )  # fmt: skip
    return Drying(sheet, float(water_share_lost(here, face_thickness_m, face_water_kg_m3)))


def face_water_kg_m3(plan):
    """Give the water in the fresh face of a plan.

    Parameters
    ----------
    plan : Plan
        A plan [-].

    Returns
    -------
    float
        Water per volume of mortar [kg/m3].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> 200 < face_water_kg_m3(make_plan(read_job(demo_job("garden_bench_top")))) < 350
    True

    References
    ----------
    Derived: mass balance of the mortar.
    """
    return plan.mix.total_water_kg / plan.mix.mortar_m3


def drier(plan):
    """Give the model of the block for the face of a plan.

    Parameters
    ----------
    plan : Plan
        A plan [-].

    Returns
    -------
    callable
        `model(air_temp_c, surface_temp_c, rh_fraction, wind_m_s)`, gives a Drying [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> model = drier(make_plan(read_job(demo_job("garden_bench_top"))))
    >>> model(4.4, 21.1, 0.5, 4.5).sheet.field
    2

    References
    ----------
    As `drying`.
    """
    water, thickness = face_water_kg_m3(plan), plan.layers.face_thickness_m

    def model(air_temp_c, surface_temp_c, rh_fraction, wind_m_s):
        return drying(
            air_temp_c, surface_temp_c, rh_fraction, wind_m_s, face_thickness_m=thickness, face_water_kg_m3=water
        )

    return model


def drying_words(result, system="both"):
    """Say what the air takes, how sure that is, and what it means for a face.

    Parameters
    ----------
    result : Drying
        The moment [-].
    system : str
        "us", "si" or "both" [-].

    Returns
    -------
    str
        Two lines [-].

    Examples
    --------
    >>> now = drying(21.0, 18.0, 0.5, 0.0, face_thickness_m=0.00635, face_water_kg_m3=280.0)
    >>> print(drying_words(now, "si"))
    The air takes 0.089 kg/m²·h: easy on a face.
    Between 0.053 kg/m²·h and 0.12 kg/m²·h; in one hour 5 % of the water of the face.

    References
    ----------
    As `drying`.
    """
    sheet = result.sheet
    rate = lambda value: show(value, "rate", system, digits=2)  # noqa: E731
    low, high = sheet.band_kg_m2_h
    if sheet.here_rate_kg_m2_h <= 0:
        if sheet.surface_temp_c < sheet.air_temp_c:
            return "The air takes nothing.\nThe face is too cold for air so damp: water settles on it instead."
        return "The air takes nothing.\nIt holds all the water it can, and the face is no warmer."
    gone = f"in one hour {100 * result.hour_share:.0f} % of the water of the face"
    if result.hour_share > 1:
        gone = f"a face that stays wet has no water left after {60 / result.hour_share:.0f} min"
    return (
        f"The air takes {rate(sheet.here_rate_kg_m2_h)}: {WORDS[sheet.field]}.\n"
        f"Between {rate(low)} and {rate(high)}; {gone}."
    )


def drying_sheet(model):
    """Give the picture of the block.

    Parameters
    ----------
    model : callable
        From `drier` [-].

    Returns
    -------
    Follow
        Takes a Drying [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> drying_sheet(drier(make_plan(read_job(demo_job("garden_bench_top"))))).alt[:18]
    'Map of evaporation'

    References
    ----------
    Common practice, no source.
    """
    return Follow(DryingSheet(model(21.0, 18.0, 0.5, 0.0).sheet), lambda result: result.sheet)
