"""What to say about the temperature of the water: care with ice, care with heat, and what no water can do."""

from shop_calc import defaults, units
from shop_calc.trade.advice import Advice

WHERE = "water"
HAND_WARM_C = 27.0  # judgement: below that nobody would call it warm, and no cement minds it


def water_advice(plan, mix, temperatures):
    """Put the water plan into words.

    Parameters
    ----------
    plan : WaterPlan
        The plan, numbers only [-].
    mix : Mix
        The mix [-].
    temperatures : Temps
        What lies in the shop [°C].

    Returns
    -------
    tuple of (str, tuple of Advice)
        What to do in one sentence; warnings and notes [-].

    Examples
    --------
    >>> from shop_calc.trade.mortar.mix import build_mix
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> from shop_calc.trade.batching.water import plan_water, temps
    >>> plan_water(build_mix(recipe("demo mortar")), temps(21.111), 15.556).words
    'Chill the mixing water to 41.3 °F (5.2 °C).'

    References
    ----------
    Marks and sources stand in each Advice and in data/defaults.csv.
    """
    advice = [*_ice(plan), *_hot(plan), *_reach(plan, temperatures), *_frost(temperatures), *_share(plan)]
    return _words(plan, mix), tuple(advice)


def _temp(value_c):
    return units.show(value_c, "temperature")


def _words(plan, mix):
    if plan.method == "as it comes":
        return f"Use tap water as it comes; the mortar comes out at {_temp(plan.mix_temp_c)}."
    if plan.method == "chilled":
        return f"Chill the mixing water to {_temp(plan.water_temp_c)}."
    if plan.method == "warmed":
        return f"Warm the mixing water to {_temp(plan.water_temp_c)}."
    ice = f"{100 * plan.ice_share:.0f} % of the mixing water as ice, the rest at {_temp(plan.water_temp_c)}"
    if plan.method == "ice":
        return f"Put in {ice}."
    if mix.added_water_kg <= 0:
        return f"There is no mixing water to chill or warm; the mortar comes out at {_temp(plan.mix_temp_c)}."
    does = ice if plan.ice_share > 0 else f"water at {_temp(plan.water_temp_c)}"
    return f"Even {does} gives {_temp(plan.mix_temp_c)}; no water can do {_temp(plan.wanted_mix_temp_c)}."


def _row(level, text, reason, name):
    row = defaults.get(name)
    return Advice(level, WHERE, text, reason, row.mark, row.source)


def _ice(plan):
    share = plan.ice_share
    if share > defaults.si("ice_unreliable"):
        yield _row(
            "act",
            "Chill the powder and sand overnight rather than trust so much ice.",
            f"{100 * share:.0f} % of the water is ice; above 50 % it rarely all melts in time and the "
            "estimate is "
            "unreliable.",
            "ice_unreliable",
        )
    elif share > defaults.si("ice_warn"):
        yield _row(
            "act",
            "Crush the ice fine and mix until the last of it is gone before the face share is set aside.",
            f"{100 * share:.0f} % of the water is ice; above 20 % watch that all of it melts, or it melts "
            "later and "
            "leaves holes.",
            "ice_warn",
        )
    elif share > 0:
        yield _row(
            "note", "Weigh the ice as water.", f"{100 * share:.0f} % of the mixing water is ice.", "ice_warn"
        )
    if plan.method == "chilled" and 0 < plan.ice_instead_share <= defaults.si("ice_limit"):
        yield _row(
            "note",
            f"No chilled water? {100 * plan.ice_instead_share:.0f} % of the tap water as ice does the same.",
            "Melting ice cools its own mass of water by 80 °C (144 °F).",
            "ice_warn",
        )


def _hot(plan):
    if plan.method in ("warmed", "out of reach") and plan.water_temp_c > defaults.si("water_hot_warn"):
        yield _row(
            "act",
            "Put the hot water to the sand first and the cement last; hot water never meets cement alone. "
            "Cover the "
            "skin: it scalds.",
            f"The water is {_temp(plan.water_temp_c)}; above {_temp(defaults.si('water_hot_warn'))} it "
            "stiffens cement "
            "at once.",
            "water_hot_warn",
        )
    elif plan.method == "warmed" and plan.water_temp_c > HAND_WARM_C:
        yield _row(
            "note",
            "Put the warm water to the sand first and the cement last.",
            f"The water is {_temp(plan.water_temp_c)}; hot water never meets cement alone.",
            "water_hot_warn",
        )


def _reach(plan, temperatures):
    if plan.method != "out of reach":
        return
    colder = plan.wanted_mix_temp_c < plan.mix_temp_c
    solids = "colder" if colder else "warmer"
    text = f"Store powder and sand {solids}, " + ("mix early in the day, " if colder else "heat the shop, ")
    yield _row(
        "act",
        text + f"or plan the day with {_temp(plan.mix_temp_c)}.",
        f"Water and ice reach {_temp(plan.coldest_c)} to {_temp(plan.warmest_c)} today with powder at "
        f"{_temp(temperatures.powder_c)}; {_temp(plan.wanted_mix_temp_c)} is outside.",
        "ice_limit" if colder else "water_hot_limit",
    )


def _frost(temperatures):
    cold = [
        f"{name} at {_temp(value)}"
        for name, value in (("sand", temperatures.sand_c), ("stone", temperatures.stone_c))
        if value < 0
    ]
    if cold:
        yield Advice(
            "act",
            WHERE,
            "Thaw sand and stone before they are weighed; polymer that was ever frozen is spoiled.",
            f"{' and '.join(cold)}: ice in damp grains counts nowhere in the heat balance "
            "and melts in the piece.",
        )


def _share(plan):
    parts = ", ".join(f"{degrees:.1f} of {name}" for name, degrees in plan.degrees_for_one)
    yield Advice(
        "note",
        WHERE,
        "Take the temperatures of powder, sand and water before the pour.",
        f"One degree of mortar takes {parts}. The old rule of 8-4-2 for cement, water, aggregate is for "
        "lean mixes.",
        "derived",
        "heat balance of this mix",
    )
