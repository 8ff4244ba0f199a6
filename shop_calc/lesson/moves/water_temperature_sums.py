"""Sums of lesson 03: the answer of each question and its working, line by line, by the question's name."""

from shop_calc.science.cooling import ICE_LATENT_HEAT_K, ice_for_kg, water_temperature_for_c
from shop_calc.science.heat_balance import (
    SOLID_SPECIFIC_HEAT,
    WATER_SPECIFIC_HEAT_J_KG_K,
    degrees_for_one_ratio,
    mix_temp_c,
    mixer_heat_rise_k,
    water_equivalent_kg,
)
from shop_calc.trade.working import Step

_SOURCE = "from memory of ACI 305R, temperature of freshly mixed concrete"


def _step(name, symbol, formula, inputs, value, unit, words, mark="memory", source=_SOURCE):
    return Step(name, symbol, formula, tuple(inputs), float(value), unit, mark, source, words)


def _capacity(solid_kg, water_kg):
    capacity = water_equivalent_kg([solid_kg], [water_kg])
    inputs = (("S", solid_kg, "kg"), ("W", water_kg, "kg"))
    words = "the whole mix, counted as water; S is powder and sand"
    return capacity, _step("capacity_kg", "C", "0.22*S + W", inputs, capacity, "kg", words)


def _mix(cement_kg, sand_kg, solids_c, water_kg, water_c):
    return float(mix_temp_c([cement_kg, sand_kg], [solids_c, solids_c], [water_kg], [water_c]))


def _mix_steps(cement_kg, sand_kg, solids_c, water_kg, water_c):
    capacity, first = _capacity(cement_kg + sand_kg, water_kg)
    inputs = (
        ("S", cement_kg + sand_kg, "kg"), ("T_s", solids_c, "C"), ("W", water_kg, "kg"), ("T_w", water_c, "C"),
        ("C", capacity, "kg"),
    )  # fmt: skip
    mix = _mix(cement_kg, sand_kg, solids_c, water_kg, water_c)
    return first, _step("mix_c", "T", "(0.22*S*T_s + W*T_w)/C", inputs, mix, "C", "what the mix comes to")


def _needed(solids_kg, solids_c, water_kg, wanted_c):
    return float(water_temperature_for_c(wanted_c, [solids_kg], [solids_c], water_kg))


def _needed_steps(solids_kg, solids_c, water_kg, wanted_c):
    capacity, first = _capacity(solids_kg, water_kg)
    inputs = (
        ("T", wanted_c, "C"), ("C", capacity, "kg"), ("S", solids_kg, "kg"), ("T_s", solids_c, "C"),
        ("W", water_kg, "kg"),
    )  # fmt: skip
    needed = _needed(solids_kg, solids_c, water_kg, wanted_c)
    words = "the same balance read backwards"
    return first, _step("needed_c", "T_w", "(T*C - 0.22*S*T_s)/W", inputs, needed, "C", words)


def _colder(cement_kg, sand_kg, water_kg, fall_k):
    return fall_k * float(degrees_for_one_ratio(water_kg, 1.0, [cement_kg, sand_kg], [water_kg]))


def _colder_steps(cement_kg, sand_kg, water_kg, fall_k):
    capacity, first = _capacity(cement_kg + sand_kg, water_kg)
    one = capacity / water_kg
    inputs = (("C", capacity, "kg"), ("W", water_kg, "kg"))
    fall = (("n", one, "-"), ("dT", fall_k, "delta_K"))
    colder = _colder(cement_kg, sand_kg, water_kg, fall_k)
    return (
        first,
        _step("degrees_for_one", "n", "C/W", inputs, one, "-", "degrees of water for one of the mix"),
        _step("colder_k", "dT_w", "n*dT", fall, colder, "delta_K", "by so much the water must be colder"),
    )


def _ice(solids_kg, solids_c, water_kg, water_c, wanted_c):
    return float(ice_for_kg(wanted_c, [solids_kg], [solids_c], water_kg, water_c))


def _ice_steps(solids_kg, solids_c, water_kg, water_c, wanted_c):
    capacity, first = _capacity(solids_kg, water_kg)
    without = float(mix_temp_c([solids_kg], [solids_c], [water_kg], [water_c]))
    plain = (
        ("S", solids_kg, "kg"), ("T_s", solids_c, "C"), ("W", water_kg, "kg"), ("T_w", water_c, "C"),
        ("C", capacity, "kg"),
    )  # fmt: skip
    fall = (
        ("T_0", without, "C"), ("T", wanted_c, "C"), ("C", capacity, "kg"), ("L", ICE_LATENT_HEAT_K, "delta_K"),
        ("T_w", water_c, "C"), ("T_f", 0.0, "C"),
    )  # fmt: skip
    ice = _ice(solids_kg, solids_c, water_kg, water_c, wanted_c)
    return (
        first,
        _step("without_c", "T_0", "(0.22*S*T_s + W*T_w)/C", plain, without, "C", "the mix without ice"),
        _step("ice_kg", "I", "(T_0 - T)*C/(L + T_w - T_f)", fall, ice, "kg",
              "ice takes L to melt, and then lacks the degrees from freezing, T_f, up to the tap"),
    )  # fmt: skip


def _page(cement_kg, cement_c, water_kg, water_c):
    return float(mix_temp_c([cement_kg], [cement_c], [water_kg], [water_c]))


def _page_steps(cement_kg, cement_c, water_kg, water_c):
    return _mix_steps(cement_kg, 0.0, cement_c, water_kg, water_c)


def _rise(power_w, time_s, mortar_kg, capacity_kg):
    return float(mixer_heat_rise_k(power_w, time_s, capacity_kg))


def _rise_steps(power_w, time_s, mortar_kg, capacity_kg):
    heat = power_w * time_s
    source = "energy balance, anyone can repeat it"
    each = (("Q", heat, "J"), ("c_w", WATER_SPECIFIC_HEAT_J_KG_K, "J/kg/K"), ("C", capacity_kg, "kg"))
    return (
        _step("heat_j", "Q", "P*t", (("P", power_w, "W"), ("t", time_s, "s")), heat, "J", "all the work of the drill",
              "derived", source),
        _step("rise_k", "dT", "Q/(c_w*C)", each, _rise(power_w, time_s, mortar_kg, capacity_kg), "delta_K",
              "as heat in the mortar", "derived", source),
    )  # fmt: skip


def with_water_weighted(solid_kg, solid_c, water_kg, water_c):
    """Put the 0.22 on the water instead of the powder: a slip.

    Parameters
    ----------
    solid_kg, water_kg : float
        Masses [kg].
    solid_c, water_c : float
        Temperatures [°C].

    Returns
    -------
    float
        A wrong temperature [°C].

    Examples
    --------
    >>> round(with_water_weighted(4.0000, 32.2222, 0.5000, 4.44444), 4)
    31.4788

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    water = SOLID_SPECIFIC_HEAT * water_kg
    return (solid_kg * solid_c + water * water_c) / (solid_kg + water)


ANSWERS = {"mix": _mix, "needed": _needed, "colder": _colder, "ice": _ice, "page": _page, "mixer": _rise}
WORKING = {
    "mix": _mix_steps, "needed": _needed_steps, "colder": _colder_steps, "ice": _ice_steps, "page": _page_steps,
    "mixer": _rise_steps,
}  # fmt: skip
