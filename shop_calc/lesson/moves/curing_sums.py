"""Lesson 05: the sums behind its questions, each with its working."""

from shop_calc import defaults
from shop_calc.science.evaporation import menzel_coefficient_kg_m2_h_pa
from shop_calc.science.layer_water import water_share_lost
from shop_calc.trade.working import Step


def rate_kg_m2_h(surface_pa, air_pa, rh_fraction, wind_m_s):
    """Menzel's rate from vapour pressures.

    Parameters
    ----------
    surface_pa : float
        Saturation pressure at the temperature of the surface [Pa].
    air_pa : float
        Saturation pressure at the temperature of the air [Pa].
    rh_fraction : float
        Humidity [-].
    wind_m_s : float
        Air speed [m/s].

    Returns
    -------
    float
        Evaporation rate [kg/m2/h].

    Examples
    --------
    >>> f"{rate_kg_m2_h(2503.0, 838.0, 0.5, 4.4704):.5f}"
    '0.79997'

    References
    ----------
    Menzel 1954, from memory.
    """
    return float((surface_pa - rh_fraction * air_pa) * menzel_coefficient_kg_m2_h_pa(wind_m_s))


def _rate_steps(surface_pa, air_pa, rh_fraction, wind_m_s):
    pull = surface_pa - rh_fraction * air_pa
    opens = float(menzel_coefficient_kg_m2_h_pa(wind_m_s))
    return (
        Step("pull_pa", "p", "e_0 - r * e_a",
             (("e_0", surface_pa, "Pa"), ("r", rh_fraction, "-"), ("e_a", air_pa, "Pa")),
             pull, "Pa", "derived", "definition of relative humidity", "what the face presses more than the air"),
        Step("coefficient_kg_m2_h_pa", "c", "k * (0.253 + b * v)",
             (("k", 0.315 / 1000, "kg/m2/h/Pa"), ("b", 0.060 * 3.6, "s/m"), ("v", wind_m_s, "m/s")),
             opens, "kg/m2/h/Pa", "memory", "from memory of Menzel 1954",
             "what the wind carries off (0.44 and 0.096 are k and b, rounded)"),
        Step("rate_kg_m2_h", "W", "p * c", (("p", pull, "Pa"), ("c", opens, "kg/m2/h/Pa")), pull * opens, "kg/m2/h",
             "memory", "from memory of Menzel 1954", "evaporation"),
    )  # fmt: skip


def coldest_water_c(surface_c):
    """Coldest curing water for a surface.

    Parameters
    ----------
    surface_c : float
        Temperature of the face [°C].

    Returns
    -------
    float
        Coldest water that may touch it [°C].

    Examples
    --------
    >>> f"{coldest_water_c(31.111):.5g}"
    '20.111'

    References
    ----------
    UFGS 03700: 11 °C (20 °F); the page prints 7 °C beside 20 °F, a misprint.
    """
    return surface_c - defaults.si("curing_water_drop")


def _water_steps(surface_c):
    drop = defaults.si("curing_water_drop")
    return (
        Step("coldest_water_c", "T_w", "T_s - d", (("T_s", surface_c, "C"), ("d", drop, "delta_K")),
             coldest_water_c(surface_c), "C", "read", "UFGS 03700", "coldest water (11 °C below the face, near 20 °F)"),
    )  # fmt: skip


def lost_share(rate_kg_m2_h, hours_h, thickness_m, water_kg_m3):
    """Share of a face's water that an open evening takes.

    Parameters
    ----------
    rate_kg_m2_h : float
        Evaporation rate [kg/m2/h].
    hours_h : float
        How long it lies open [h].
    thickness_m : float
        Thickness of the face [m].
    water_kg_m3 : float
        Water in the fresh face [kg/m3].

    Returns
    -------
    float
        Share of its water [fraction].

    Examples
    --------
    >>> f"{lost_share(0.3, 1.5, 0.00635, 290.0):.5f}"
    '0.24437'

    References
    ----------
    Derived: mass balance of one layer.
    """
    return float(water_share_lost(rate_kg_m2_h * hours_h, thickness_m, water_kg_m3))


def _share_steps(rate_kg_m2_h, hours_h, thickness_m, water_kg_m3):
    lost, held = rate_kg_m2_h * hours_h, thickness_m * water_kg_m3
    return (
        Step("lost_kg_m2", "w", "W * t", (("W", rate_kg_m2_h, "kg/m2/h"), ("t", hours_h, "h")), lost, "kg/m2",
             "derived", "arithmetic", "water lost"),
        Step("held_kg_m2", "m", "d * c", (("d", thickness_m, "m"), ("c", water_kg_m3, "kg/m3")), held, "kg/m2",
             "derived", "arithmetic", "water in the face"),
        Step("lost_share", "s", "w / m", (("w", lost, "kg/m2"), ("m", held, "kg/m2")),
             lost_share(rate_kg_m2_h, hours_h, thickness_m, water_kg_m3), "-", "derived", "arithmetic", "share of it"),
    )  # fmt: skip


WORKING = {
    "menzel": _rate_steps,
    "curing_water": _water_steps,
    "share": _share_steps,
}
