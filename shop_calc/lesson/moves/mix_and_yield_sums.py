"""Sums of lesson 02: the answer of each question and its working, line by line, by the question's name."""

from shop_calc.science.absolute_volume import WATER_DENSITY_KG_M3, mass_by_difference_kg
from shop_calc.science.ssd_basis import ssd_batch_mass_kg
from shop_calc.science.water_ratio import water_cementitious_ratio, water_for_ratio_kg, water_in_liquid_kg
from shop_calc.trade.batching.layer_mix import face_share_m3, set_aside_kg
from shop_calc.trade.batching.shopping import bags
from shop_calc.trade.working import Step
from shop_calc.units import convert

CEMENT, SAND = 3.15, 2.65  # relative densities that the question gives
_VOLUMES = "absolute volumes, NAVEDTRA 14070/14071 ch. 17"
_WATER = ("rho_w", WATER_DENSITY_KG_M3, "kg/m3")


def _step(name, symbol, formula, inputs, value, unit, words, source="conservation of mass"):
    return Step(name, symbol, formula, tuple(inputs), float(value), unit, "derived", source, words)


def _sand_kg(volume_m3, cement_kg, water_kg, air_fraction):
    return float(mass_by_difference_kg(volume_m3, [cement_kg, water_kg], [CEMENT, 1.0], air_fraction, SAND))


def _sand_steps(volume_m3, cement_kg, water_kg, air_fraction):
    taken = cement_kg / (CEMENT * WATER_DENSITY_KG_M3) + water_kg / WATER_DENSITY_KG_M3
    masses = (("m_c", cement_kg, "kg"), ("m_w", water_kg, "kg"), _WATER)
    rest = (("V", volume_m3, "m3"), ("a", air_fraction, "-"), ("V_taken", taken, "m3"), _WATER)
    sand = _sand_kg(volume_m3, cement_kg, water_kg, air_fraction)
    return (
        _step("taken_m3", "V_taken", "m_c/(3.15*rho_w) + m_w/rho_w", masses, taken, "m3",
              "room of cement and water", _VOLUMES),
        _step("sand_kg", "m_s", "(V*(1 - a) - V_taken)*2.65*rho_w", rest, sand, "kg",
              "what is left beside the air is sand", _VOLUMES),
    )  # fmt: skip


def _poured_kg(binder_kg, ratio, polymer_kg, solids_fraction):
    return water_for_ratio_kg(binder_kg, ratio) - water_in_liquid_kg(polymer_kg, solids_fraction)


def _poured_steps(binder_kg, ratio, polymer_kg, solids_fraction):
    total, inside = binder_kg * ratio, polymer_kg * (1 - solids_fraction)
    poured = _poured_kg(binder_kg, ratio, polymer_kg, solids_fraction)
    return (
        _step("all_water_kg", "W", "B*r", (("B", binder_kg, "kg"), ("r", ratio, "-")), total, "kg",
              "all the water that the ratio allows"),
        _step("inside_kg", "W_in", "m_p*(1 - s)", (("m_p", polymer_kg, "kg"), ("s", solids_fraction, "-")), inside,
              "kg", "water inside the polymer"),
        _step("poured_kg", "W_pour", "W - W_in", (("W", total, "kg"), ("W_in", inside, "kg")), poured, "kg",
              "what is left to pour"),
    )  # fmt: skip


def _sugar_kg(bag_kg, cement_share, dose_fraction):
    return bag_kg * cement_share * dose_fraction


def _sugar_steps(bag_kg, cement_share, dose_fraction):
    cement = bag_kg * cement_share
    dose = (("m_c", cement, "kg"), ("d", dose_fraction, "-"))
    return (
        _step("cement_kg", "m_c", "m_bag*s", (("m_bag", bag_kg, "kg"), ("s", cement_share, "-")), cement, "kg",
              "cement in the bag"),
        _step("sugar_kg", "m_sugar", "m_c*d", dose, _sugar_kg(bag_kg, cement_share, dose_fraction), "kg",
              "dose on that cement"),
    )  # fmt: skip


def _aside_steps(face_m3, face_allowance_fraction, mortar_density_kg_m3):
    share = face_share_m3(face_m3, face_allowance_fraction)
    mass = set_aside_kg(face_m3, face_allowance_fraction, mortar_density_kg_m3)
    return (
        _step("share_m3", "V_s", "V_f*(1 + a)", (("V_f", face_m3, "m3"), ("a", face_allowance_fraction, "-")), share,
              "m3", "face mortar to make, allowance in it"),
        _step("aside_kg", "m", "V_s*rho", (("V_s", share, "m3"), ("rho", mortar_density_kg_m3, "kg/m3")), mass, "kg",
              "volume times density"),
    )  # fmt: skip


def _damp_steps(ssd_mass_kg, free_moisture_fraction):
    inputs = (("m", ssd_mass_kg, "kg"), ("f", free_moisture_fraction, "-"))
    mass = ssd_batch_mass_kg(ssd_mass_kg, free_moisture_fraction)
    return (_step("damp_kg", "m_damp", "m*(1 + f)", inputs, mass, "kg", "the same grains with their water"),)


def _bags(volume_m3, bag_yield_m3, bag_kg, wet_density_kg_m3):
    return bags(volume_m3, bag_yield_m3, bag_kg=bag_kg, wet_density_kg_m3=wet_density_kg_m3)


def _bag_count(**given):
    return float(_bags(**given).count)


def _bag_steps(**given):
    made, inputs = _bags(**given), (("V", given["volume_m3"], "m3"), ("Y", given["bag_yield_m3"], "m3"))
    return (
        _step("exact_count", "n", "V/Y", inputs, made.exact_count, "-", "volume over yield", "arithmetic"),
        _step("bag_count", "N", "by rounding n up to whole bags", (), made.count, "-", "half a bag is not sold",
              "arithmetic"),
    )  # fmt: skip


def _pints_m3(sheet_kg):
    return float(convert(convert(sheet_kg, "kg", "lb"), "pt", "m3"))


def _pints_kg(sheet_kg):
    return _pints_m3(sheet_kg) * WATER_DENSITY_KG_M3


def _pint_steps(sheet_kg):
    count, pint_m3 = float(convert(sheet_kg, "kg", "lb")), float(convert(1.0, "pt", "m3"))
    pint_kg = pint_m3 * WATER_DENSITY_KG_M3
    return (
        _step("pint_kg", "p", "V*rho_w", (("V", pint_m3, "m3"), _WATER), pint_kg, "kg", "what a pint of water weighs"),
        _step("jug_kg", "m", "n*p", (("n", count, "-"), ("p", pint_kg, "kg")), _pints_kg(sheet_kg), "kg",
              "as many pints as there are pounds"),
    )  # fmt: skip


def _left_ratio(binder_kg, ratio, stone_kg, absorption_fraction):
    return float(water_cementitious_ratio(binder_kg, binder_kg * ratio, -stone_kg * absorption_fraction))


def _left_steps(binder_kg, ratio, stone_kg, absorption_fraction):
    drinks = stone_kg * absorption_fraction
    left = _left_ratio(binder_kg, ratio, stone_kg, absorption_fraction)
    return (
        _step("drinks_kg", "W_d", "m_st*ab", (("m_st", stone_kg, "kg"), ("ab", absorption_fraction, "-")), drinks, "kg",
              "what the stone drinks"),
        _step("left_ratio", "r_left", "(B*r - W_d)/B",
              (("B", binder_kg, "kg"), ("r", ratio, "-"), ("W_d", drinks, "kg")), left, "-",
              "what is left for the binder"),
    )  # fmt: skip


def bags_by_weight(**given):
    """Count bags the wrong way, by wet weight over the label: the slip of the question on bags.

    Parameters
    ----------
    **given : float
        As the question gives them [SI].

    Returns
    -------
    float
        Bags, too many of them [-].

    Examples
    --------
    >>> bags_by_weight(volume_m3=2.11270, bag_yield_m3=0.00849505, bag_kg=18.1437, wet_density_kg_m3=2322.68)
    271.0

    References
    ----------
    A wrong answer met in print; see `trade.batching.shopping.bags`.
    """
    return float(_bags(**given).count_by_weight)


ANSWERS = {
    "sand": _sand_kg,
    "poured": _poured_kg,
    "sugar": _sugar_kg,
    "set_aside": set_aside_kg,
    "damp_sand": ssd_batch_mass_kg,
    "bags": _bag_count,
    "pints": _pints_kg,
    "left_dry": _left_ratio,
}
WORKING = {
    "sand": _sand_steps,
    "poured": _poured_steps,
    "sugar": _sugar_steps,
    "set_aside": _aside_steps,
    "damp_sand": _damp_steps,
    "bags": _bag_steps,
    "pints": _pint_steps,
    "left_dry": _left_steps,
}
