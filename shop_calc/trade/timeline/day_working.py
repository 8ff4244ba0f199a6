"""The working of the day, the drying and the night: where each hour comes from."""

from shop_calc import defaults
from shop_calc.science import build_up, setting
from shop_calc.science.loads import GRAVITY_M_S2
from shop_calc.trade.timeline.stages import STAGES
from shop_calc.trade.working import Step

_CLOCK_SOURCE = "ASTM C1074 form for the age, ASTM C403/C403M for 500 psi; heat balance of the slab, derived"
_AGES = {
    "strip": ("strip_pr_low", "sides off"),
    "patch": ("strip_pr_high", "last patch"),
    "first_steel": ("first_steel_pr_low", "first steel"),
    "last_steel": ("last_steel_pr_high", "last steel"),
    "stop": ("stop_pr", "stop"),
}


def day_working(day):
    """Write the working of a day: set clock, edge, stages.

    Parameters
    ----------
    day : Day
        The day [h].

    Returns
    -------
    tuple of Step
        Ages by formula, hours by procedure [h].

    Examples
    --------
    >>> from datetime import datetime
    >>> from shop_calc.trade.timeline.day import DayInputs, plan_day
    >>> from shop_calc.trade.timeline.room import steady_room
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> day_working(plan_day(inputs))[0].name
    'strip_age_h'

    References
    ----------
    ASTM C403/C403M and C1074 forms; resistances of the stages in data/defaults.csv.
    """
    bands = day.samples.inputs.bands or {}  # a shop's own log gives them
    initial_h, exponent = (bands.get(name, defaults.si_band(name))[1] for name in ("set_time_initial", "set_exponent"))
    steps = []
    for key, (row, words) in _AGES.items():
        resistance_pa = defaults.si(row)
        steps.append(
            Step(
                f"{key}_age_h", f"te_{key}", "t_i * (PR / PR_i)**(1 / b)",
                (("t_i", initial_h, "h"), ("PR", resistance_pa, "Pa"), ("PR_i", setting.INITIAL_SET_PA, "Pa"),
                 ("b", exponent, "-")),
                float(setting.age_at_resistance_h(resistance_pa, initial_h, exponent)), "h",
                defaults.get(row).mark, f"{_CLOCK_SOURCE}; {defaults.get(row).source}",
                f"equivalent age at 21 °C for {words}",
            )
        )  # fmt: skip
    inputs = day.samples.inputs
    demand_pa = float(
        build_up.edge_demand_pa(
            inputs.standing_m, defaults.si("slab_density"), safety_factor=defaults.si("edge_safety_factor")
        )
    )
    steps.append(
        Step(
            "base_edge_demand_pa", "tau_edge", "SF * rho * g * h / 2",
            (("SF", defaults.si("edge_safety_factor"), "-"), ("rho", defaults.si("slab_density"), "kg/m3"),
             ("g", GRAVITY_M_S2, "m/s2"), ("h", inputs.standing_m, "m")),
            demand_pa, "Pa", "derived", "mechanics of a free edge", "yield stress that lets the base stand",
        )
    )  # fmt: skip
    rest_s = float(
        build_up.rest_to_stress_linear_s(demand_pa, defaults.si("yield_stress_start"), defaults.si("build_up_rate"))
    )
    steps.append(
        Step(
            "base_edge_rest_s", "t_edge", "(tau_edge - tau_0) / A" if rest_s > 0 else "by standing from the start",
            (("tau_edge", demand_pa, "Pa"), ("tau_0", defaults.si("yield_stress_start"), "Pa"),
             ("A", defaults.si("build_up_rate"), "Pa/s")),
            rest_s, "s", "memory", "from memory of Roussel 2006", "rest until the base stands, middle day",
        )
    )  # fmt: skip
    for stage in day.stages:
        source = "data/defaults.csv for the resistances; " + _CLOCK_SOURCE
        how = "by the 500 sampled days: "
        for name, value, words in (
            ("look_from", stage.look_from_h, how + "the hour before which only 5 % open, evaporation left out"),
            ("likely_from", stage.likely_from_h, how + "the median opening"),
            ("likely_to", stage.likely_to_h, how + "the median closing"),
            ("over_by", stage.over_by_h, how + "the hour by which 95 % have closed"),
        ):
            steps.append(
                Step(
                    f"{stage.key}_{name}_h", f"{stage.key}_{name}", words,
                    (("mix", inputs.mix_temp_c, "C"), ("air", inputs.room.air_temp_c[0], "C"),
                     ("T", inputs.thickness_m, "m")),
                    value, "h", "judgement", source, f"{STAGES[stage.key].title}: {name.replace('_', ' ')}, "
                    "hours after the first water",
                )
            )  # fmt: skip
        if stage.deadline_h is not None:
            steps.append(
                Step(
                    f"{stage.key}_deadline_h", f"{stage.key}_deadline", how + "the median last good moment",
                    (("gap", defaults.si("layer_gap"), "h"), ("PR_gap", defaults.si("layer_gap_pr"), "Pa")),
                    stage.deadline_h, "h", "judgement", defaults.get("layer_gap").source,
                    f"{STAGES[stage.key].title}: later and the layers part",
                )
            )  # fmt: skip
    return tuple(steps)


def night_working(drying, cure):
    """Write the working of the evaporation and of the night.

    Parameters
    ----------
    drying : Drying
        Evaporation of the day [kg/m2/h].
    cure : Cure
        The night [as its fields].

    Returns
    -------
    tuple of Step
        Rates, losses and ages [as named].

    Examples
    --------
    >>> night_working.__name__
    'night_working'

    References
    ----------
    Menzel 1954, from memory; band: Hover, ACI SP-338 (2020).
    """
    menzel = "Menzel 1954, from memory; still air moves at 1.5 km/h (derived from NIST/DTU 2000)"
    band = defaults.si("evaporation_band")
    peak = (("W", drying.peak_kg_m2_h, "kg/m2/h"), ("band", band, "-"))
    hover = defaults.get("evaporation_band").source
    steps = [
        Step("peak_evaporation_kg_m2_h", "W", "by Menzel's formula at the temperature of the slab, largest value",
             (("t", drying.peak_at_h, "h"),), drying.peak_kg_m2_h, "kg/m2/h", "memory", menzel,
             "largest evaporation from the face while it is worked"),
        Step("peak_evaporation_low_kg_m2_h", "W_low", "W * (1 - band)", peak, drying.peak_low_kg_m2_h, "kg/m2/h",
             "read", hover, "low end of its band"),
        Step("peak_evaporation_high_kg_m2_h", "W_high", "W * (1 + band)", peak, drying.peak_high_kg_m2_h, "kg/m2/h",
             "read", hover, "high end of its band"),
        Step("face_water_lost_kg_m2", "w", "by adding the rate up until the last steel, falling once the surface dries",
             (("w_0", defaults.si("free_water"), "kg/m2"),), drying.lost_kg_m2, "kg/m2", "judgement", menzel,
             "water the open face loses by the last steel"),
        Step("face_water_lost_share", "s", "by dividing that loss by the water of the face",
             (("w", drying.lost_kg_m2, "kg/m2"),), drying.lost_share, "-", "derived", "mass balance",
             "share of the face's water lost by the last steel"),
        Step("night_mean_demand_kg_m2_h", "W_night", "by Menzel's formula on an open face, mean of the night",
             (("t_0", cure.from_h, "h"), ("t_1", cure.until_h, "h")), cure.mean_demand_kg_m2_h, "kg/m2/h", "memory",
             menzel, "mean evaporation demand of the night"),
        Step("night_peak_demand_kg_m2_h", "W_peak", "by Menzel's formula on an open face, largest of the night",
             (("t_0", cure.from_h, "h"), ("t_1", cure.until_h, "h")), cure.peak_demand_kg_m2_h, "kg/m2/h", "memory",
             menzel, "largest evaporation demand of the night"),
    ]  # fmt: skip
    for choice in cure.choices:
        steps.append(
            Step(f"cure_{choice.key}_age_h", f"te_{choice.key}", "by stepping the slab through the night under this cover",
                 (("t_0", cure.from_h, "h"), ("t_1", cure.until_h, "h")), choice.morning_age_h, "h", "derived",
                 "ASTM C1074 form; heat balance of the slab", f"{choice.title}: equivalent age at 21 °C in the morning")
        )  # fmt: skip
        steps.append(
            Step(f"cure_{choice.key}_water_lost_kg_m2", f"w_{choice.key}",
                 "by adding Menzel's rate up over the night, falling once the surface dries",
                 (("t_0", cure.from_h, "h"), ("t_1", cure.until_h, "h")), choice.water_lost_kg_m2, "kg/m2",
                 "read" if choice.key == "membrane" else "memory",
                 "ASTM C309 limit, 0.55 kg/m2 in 72 h" if choice.key == "membrane" else menzel,
                 f"{choice.title}: water lost by the morning")
        )  # fmt: skip
    return tuple(steps)
