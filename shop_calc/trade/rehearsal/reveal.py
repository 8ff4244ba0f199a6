"""The truth of a pour, uncovered afterwards: when each stage really opened and closed on the piece as it lay."""

import numpy as np

from shop_calc import defaults, units
from shop_calc.science import build_up
from shop_calc.trade.rehearsal.pour import GRID_H
from shop_calc.trade.rehearsal.state import BEARING_FACTOR
from shop_calc.trade.timeline.cloud import SAMPLED
from shop_calc.trade.timeline.stages import ORDER, STAGES, Stage

_WINDOWS = {
    "first_steel": ("first_steel_pr_low", "first_steel_pr_high"),
    "last_steel": ("last_steel_pr_low", "last_steel_pr_high"),
    "stop": ("stop_pr", "stop_pr"),
}


def true_stages(state):
    """Give the stages as they really were, the piece lying as it did.

    Not for a plan: it knows what nobody knew.

    Parameters
    ----------
    state : State
        A pour, finished or not; what is still to come is reckoned with an open face [as its fields].

    Returns
    -------
    tuple of Stage
        In order; the likely window is the true one, and it is looked for from its opening on [h].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> [stage.key for stage in true_stages(begin("oak", "mild"))][-1]
    'stop'

    References
    ----------
    Windows of data/defaults.csv on the hidden day.
    """
    windows = _windows(state)
    stages = []
    for key in ORDER:
        opens_h, closes_h = windows[key]
        stages.append(Stage(STAGES[key], opens_h, opens_h, max(closes_h, opens_h), max(closes_h, opens_h)))
    return tuple(stages)


def _windows(state):
    pour = state.pour
    reach = {layer: _reach(state, layer) for layer in ("base", "face")}
    pa = {name: defaults.si(name) for name in ("strip_pr_low", "strip_pr_high", "layer_gap_pr")}
    base_h = (pour.told.base_loads_h[0], pour.starts_h)
    rest_h = max(defaults.si("base_ready_earliest"), _edge_rest_h(pour, pour.told.standing_m))
    by_late_h = reach["base"](_late_pa(pour.told.standing_m))
    face_open_h = min(pour.starts_h + rest_h, max(by_late_h, pour.starts_h))
    face_close_h = min(_gap_h(state), reach["base"](pa["layer_gap_pr"]))
    on_h = face_open_h if state.face_on_h is None else state.face_on_h
    settled_h = on_h if state.settled_h is None else state.settled_h
    shine_h = min(_shine_h(pour, on_h), reach["face"](pa["strip_pr_low"]))
    deep_m = pour.told.thickness_m + pour.told.drop_m
    stands_h = min(settled_h + _edge_rest_h(pour, deep_m), _slower(reach, _late_pa(deep_m)))
    strip_h = max(_slower(reach, pa["strip_pr_low"]), stands_h)
    found = {
        "base": base_h, "face": (face_open_h, face_close_h), "float": (on_h, shine_h), "look": (settled_h, strip_h),
        "strip": (strip_h, reach["face"](pa["strip_pr_high"])),
    }  # fmt: skip
    for key, (opens, closes) in _WINDOWS.items():
        found[key] = (reach["face"](defaults.si(opens)), reach["face"](defaults.si(closes)))
    return found


def _slower(reach, resistance_pa):
    return max(reach["base"](resistance_pa), reach["face"](resistance_pa))


def _late_pa(height_m):
    """Resistance from which an edge of this height stands by the late clock alone."""
    return max(_demand_pa(height_m) * BEARING_FACTOR, defaults.si("power_law_from"))


def _demand_pa(height_m):
    factor = defaults.get("edge_safety_factor").value
    return float(build_up.edge_demand_pa(height_m, defaults.si("slab_density"), safety_factor=factor))


def _edge_rest_h(pour, height_m):
    start_pa, rate_pa_s = pour.build_up
    return float(build_up.rest_to_stress_linear_s(_demand_pa(height_m), start_pa, rate_pa_s)) / 3600.0


def _gap_h(state):
    """When the base has had the longest pause that it may have."""
    ages = np.asarray(state.pour.ages_h["base", True])
    start_age_h = float(np.interp(state.pour.starts_h, np.arange(len(ages)) * GRID_H, ages))
    return _hour_at(state, "base", start_age_h + defaults.si("layer_gap"))


def _shine_h(pour, on_h):
    """When a face that nobody works turns dull."""
    demand = np.asarray(pour.demand_kg_m2)
    hours = np.arange(len(demand)) * GRID_H
    start = float(np.interp(on_h, hours, demand))
    return float(np.interp(start + pour.free_water_kg_m2, demand, hours))


def _reach(state, layer):
    return lambda resistance_pa: _hour_at(state, layer, state.pour.age_at_h(resistance_pa))


def _hour_at(state, layer, age_h):
    """Hour at which a layer of this very piece reached an age; beyond its path as if it lay open."""
    place = 1 if layer == "base" else 2
    ages = [step[place] for step in state.path]
    hours = [step[0] for step in state.path]
    open_ages = np.asarray(state.pour.ages_h[layer, True])
    open_hours = np.arange(len(open_ages)) * GRID_H
    if age_h <= ages[0]:
        return float(np.interp(age_h, open_ages, open_hours))
    if age_h <= ages[-1]:
        return float(np.interp(age_h, ages, hours))
    end_age_h = float(np.interp(hours[-1], open_hours, open_ages))
    slope_h = (open_ages[-1] - open_ages[-2]) / GRID_H
    needed_h = end_age_h + age_h - ages[-1]
    if needed_h > open_ages[-1]:
        return float(open_hours[-1] + (needed_h - open_ages[-1]) / slope_h)
    return float(np.interp(needed_h, open_ages, open_hours))


_HIDDEN = (  # field of the hidden day, what it is, kind of unit
    ("initial_set_h", "Initial set at 21 °C", "duration"),
    ("build_up_pa_s", "Growth of stiffness at rest", "pressure_rate"),
    ("free_water_kg_m2", "Water lost before the skin dries", "areal_mass"),
    ("evaporation_factor", "Evaporation over its estimate", "number"),
    ("room_error_k", "The room beside its thermometer", "temperature_difference"),
)


def truth_lines(pour):
    """Say what was hidden, line by line, beside what the plan counted with.

    Parameters
    ----------
    pour : Pour
        The pour [as its fields].

    Returns
    -------
    tuple of (str, str, str)
        What it is, the plan's value, the value of the day [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.truth import draw_pour
    >>> truth_lines(draw_pour("oak", "mild"))[0][0]
    'Initial set at 21 °C'

    References
    ----------
    Plan: data/defaults.csv.
    """
    bands = pour.told.bands or {}
    rows = []
    for field, words, kind in _HIDDEN:
        name = SAMPLED[field][0]
        planned = bands[name][1] if name in bands else defaults.si(name)
        rows.append((words, units.show(planned, kind), units.show(float(getattr(pour.hidden, field)[0]), kind)))
    rows.append(("What nobody foresaw", "nothing", pour.surprise or "nothing"))
    rows.append(("The face share in its bucket", "smooth", "stiffened falsely" if pour.false_set else "smooth"))
    return tuple(rows)
