"""How cold or warm the water must be today, when ice is needed, and what no water can do."""

from dataclasses import dataclass, replace

from shop_calc import defaults
from shop_calc.science import heat_balance
from shop_calc.science.checks import require
from shop_calc.trade.batching.mix_heat import MixHeat
from shop_calc.trade.batching.water_advice import water_advice
from shop_calc.trade.working import Step

AS_IT_COMES_K = 0.5  # judgement: a shop thermometer reads no finer


@dataclass(frozen=True)
class Temps:
    """Temperatures of what goes in, as stored.

    Parameters
    ----------
    powder_c : float
        Cement and other powders [°C].
    sand_c : float
        Sand of the recipe [°C].
    stone_c : float
        Coarse sand and stone [°C].
    tap_water_c : float
        Water from the tap [°C].
    liquids_c : float
        Polymer and admixtures [°C].

    Examples
    --------
    >>> Temps(21.0, 21.0, 21.0, 15.0, 21.0).tap_water_c
    15.0

    References
    ----------
    Common practice, no source.
    """

    powder_c: float
    sand_c: float
    stone_c: float
    tap_water_c: float
    liquids_c: float


def temps(powder_c=None, *, sand_c=None, stone_c=None, tap_water_c=None, liquids_c=None):
    """Collect the temperatures; what is not measured lies beside the powder, the water comes from the tap.

    Parameters
    ----------
    powder_c, sand_c, stone_c, tap_water_c, liquids_c : float or None
        Temperatures, None where nobody measured [°C].

    Returns
    -------
    Temps
        All of them [°C].

    Raises
    ------
    ValueError
        When a temperature is impossible.

    Examples
    --------
    >>> temps(21.111, tap_water_c=15.556).stone_c
    21.111

    References
    ----------
    Common practice, no source.
    """
    powder = defaults.si("powder_temp") if powder_c is None else powder_c
    solids = heat_balance.SOLID_TEMP_C
    liquids = max(powder, 0.0) if liquids_c is None else liquids_c  # a frozen polymer is spoiled
    tap = defaults.si("tap_water_temp") if tap_water_c is None else tap_water_c
    return Temps(
        require("temperature of the powder", powder, *solids, unit="°C"),
        require("temperature of the sand", powder if sand_c is None else sand_c, *solids, unit="°C"),
        require("temperature of the stone", powder if stone_c is None else stone_c, *solids, unit="°C"),
        require("temperature of the tap water", tap, *heat_balance.WATER_TEMP_C, unit="°C"),
        require("temperature of the liquids", liquids, *heat_balance.WATER_TEMP_C, unit="°C"),
    )


@dataclass(frozen=True)
class WaterPlan:
    """Water for the wanted mix temperature.

    Parameters
    ----------
    wanted_mix_temp_c : float
        What was wanted [°C].
    method : str
        "as it comes", "chilled", "warmed", "ice", or "out of reach" [-].
    needed_water_temp_c : float
        Temperature that the added water would need; not liquid water outside 0 to 100 [°C].
    water_temp_c : float
        Temperature of the liquid water to use [°C].
    ice_share : float
        Share of the added water that goes in as ice [-].
    ice_instead_share : float
        Ice that does the work of chilled water, with the rest from the tap; 0 when none is needed [-].
    mix_temp_c : float
        Temperature of the mortar that comes out [°C].
    base_temp_c : float
        Temperature of the base once stone at its own temperature is in [°C].
    base_follows : float
        Degrees that the base gets warmer where the mortar comes out one degree warmer [-].
    coldest_c, warmest_c : float
        Mortar temperatures that water and ice can reach today [°C].
    degrees_for_one : tuple of (str, float)
        Degrees of each material for one degree of the mortar [-].
    water_equivalent_kg : float
        Heat capacity of the mortar as water [kg per kg of basis].
    words : str
        What to do, in one sentence [-].
    advice : tuple of Advice
        Warnings and notes [-].
    working : tuple of Step
        How the numbers came about [-].

    Examples
    --------
    >>> from shop_calc.trade.mortar.mix import build_mix
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> f"{plan_water(build_mix(recipe('demo mortar')), temps(21.111), 15.556).base_temp_c:.3f}"
    '15.556'

    References
    ----------
    From memory of ACI 305R, temperature of freshly mixed concrete.
    """

    wanted_mix_temp_c: float
    method: str
    needed_water_temp_c: float
    water_temp_c: float
    ice_share: float
    ice_instead_share: float
    mix_temp_c: float
    base_temp_c: float
    base_follows: float
    coldest_c: float
    warmest_c: float
    degrees_for_one: tuple
    water_equivalent_kg: float
    words: str
    advice: tuple
    working: tuple


def plan_water(mix, temperatures, wanted_mix_temp_c=None, *, face_alone=False):
    """Find the water, or the ice, that brings the mortar to a wanted temperature.

    Not for the temperature an hour later: the room and the setting are not in it.

    Parameters
    ----------
    mix : Mix
        The mix [-].
    temperatures : Temps
        What lies in the shop [°C].
    wanted_mix_temp_c : float or None
        Wanted temperature of the mortar [°C].
    face_alone : bool
        True when the face is mixed in loads of its own, which hold no water out for wet stone [-].

    Returns
    -------
    WaterPlan
        Method, water temperature, ice share, the temperatures that come out and what is out of reach [°C].

    Raises
    ------
    ValueError
        When a temperature is impossible.

    Notes
    -----
    It is the mortar that is brought to the temperature: it is what the water meets, and it becomes the face.
    The base comes out between it and the stone. Ice counts as part of the added water; at most 75 % of it,
    and the rest comes from the tap, or from the ice bath when the tap is too warm. What wet stone brings is held
    out of the mixing water and does not cool.

    Examples
    --------
    >>> from shop_calc.trade.mortar.mix import build_mix
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> plan = plan_water(build_mix(recipe("demo mortar")), temps(21.111), 15.556)
    >>> plan.method, f"{plan.water_temp_c:.4f}"
    ('chilled', '5.1935')

    References
    ----------
    From memory of ACI 305R, temperature of freshly mixed concrete; the limits of ice are read.
    """
    row = defaults.get("wanted_mix_temp")
    wanted = row.value if wanted_mix_temp_c is None else wanted_mix_temp_c
    wanted = require("wanted mix temperature", wanted, row.minimum, row.maximum, unit="°C")
    heat = MixHeat(mix, temperatures, stone_follows=not face_alone)
    base_heat = MixHeat(mix, temperatures)
    tap = temperatures.tap_water_c
    cold, hot = min(defaults.si("water_coldest"), tap), max(defaults.si("water_hot_limit"), tap)
    coldest = heat.mix_c(cold, defaults.si("ice_limit"))
    warmest = heat.mix_c(hot)
    needed = heat.water_for_c(wanted)
    ice_share = instead = 0.0
    if heat.added_kg <= 0:
        method, water = "out of reach", tap
    elif abs(needed - tap) <= AS_IT_COMES_K:
        method, water = "as it comes", tap
    elif needed > tap:
        method, water = ("warmed", needed) if needed <= hot else ("out of reach", hot)
    else:
        instead = heat.ice_share(wanted, tap)
        if needed >= cold:
            method, water = "chilled", needed
        else:
            method, water, ice_share = _ice(heat, wanted, tap, cold, instead)
    mortar = heat.mix_c(water, ice_share)
    plan = WaterPlan(
        wanted_mix_temp_c=wanted,
        method=method,
        needed_water_temp_c=needed,
        water_temp_c=water,
        ice_share=ice_share,
        ice_instead_share=min(instead, 1.0) if method == "chilled" else 0.0,
        mix_temp_c=mortar,
        base_temp_c=base_heat.base_c(base_heat.mix_c(water, ice_share), temperatures),
        base_follows=base_heat.base_follows() * _alike(base_heat, heat),
        coldest_c=coldest,
        warmest_c=warmest,
        degrees_for_one=heat.degrees_for_one(),
        water_equivalent_kg=heat.capacity_kg,
        words="",
        advice=(),
        working=(),
    )
    words, advice = water_advice(plan, mix, temperatures)
    return replace(plan, words=words, advice=advice, working=_working(plan, heat))


def _alike(heat, other):
    """Degrees of one mortar for one degree of another that gets the same water."""
    if other.added_kg <= 0:
        return 1.0
    return min(heat.added_kg / heat.capacity_kg / (other.added_kg / other.capacity_kg), 1.0)


def _ice(heat, wanted, tap, cold, with_tap):
    limit = defaults.si("ice_limit")
    if with_tap <= limit:
        return "ice", tap, with_tap
    with_cold = heat.ice_share(wanted, cold)
    if with_cold <= limit:
        return "ice", cold, with_cold
    return "out of reach", cold, limit


def _working(plan, heat):
    source = "from memory of ACI 305R, temperature of freshly mixed concrete"
    inputs = (
        ("T_want", plan.wanted_mix_temp_c, "C"),
        ("C_mortar", heat.capacity_kg, "kg"),
        ("H_rest", heat.other_heat, "kg·K"),
        ("W_added", heat.added_kg, "kg"),
    )
    steps = [
        Step(
            "water_equivalent_kg",
            "C_mortar",
            "0.22*(W_powder + W_sand) + W_added + W_liquids + W_damp",
            (
                ("W_powder", heat.solids[0], "kg"),
                ("W_sand", heat.solids[1], "kg"),
                ("W_added", heat.added_kg, "kg"),
                ("W_liquids", heat.others[0], "kg"),
                ("W_damp", heat.others[1], "kg"),
            ),
            heat.capacity_kg,
            "kg",
            "memory",
            source,
            f"heat capacity of the mortar as water for 1 kg of {heat.mix.basis}",
        ),
    ]
    if heat.added_kg > 0:
        steps.append(
            Step(
                "water_needed_temp_c",
                "T_need",
                "(T_want*C_mortar - H_rest)/W_added",
                inputs,
                plan.needed_water_temp_c,
                "C",
                "derived",
                source + ", read backwards",
                "temperature that the added water would need",
            )
        )
    steps.append(
        Step(
            "water_mix_temp_c",
            "T_mix",
            "(H_rest + (W_added - W_ice)*T_use - L_ice*W_ice)/C_mortar",
            (
                ("H_rest", heat.other_heat, "kg·K"),
                ("W_added", heat.added_kg, "kg"),
                ("W_ice", heat.added_kg * plan.ice_share, "kg"),
                ("T_use", plan.water_temp_c, "C"),
                ("L_ice", heat_balance.ICE_LATENT_HEAT_K, "delta_K"),
                ("C_mortar", heat.capacity_kg, "kg"),
            ),
            plan.mix_temp_c,
            "C",
            "memory",
            source,
            "temperature of the mortar that comes out",
        )
    )
    return tuple(steps)
