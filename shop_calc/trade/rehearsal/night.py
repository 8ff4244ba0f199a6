"""The night after: what the cover does until the morning, and what was never done."""

from dataclasses import replace
from datetime import timedelta

import numpy as np

from shop_calc import defaults, units
from shop_calc.science import evaporation, slab_heat
from shop_calc.trade.curing.cure import CHOICES
from shop_calc.trade.curing.cure_rules import pick_cover
from shop_calc.trade.rehearsal.damage import BAD, TRACE, Damage, past
from shop_calc.trade.rehearsal.harm_of_water import of_drying, of_uncover
from shop_calc.trade.rehearsal.pour import GRID_H, read_at
from shop_calc.trade.timeline.drying import moving_air
from shop_calc.trade.timeline.room import room_steps

STEP_S = 900.0  # the night changes slowly: parts as long as a step move its rates by 0.25 % at most, tried on 180 nights
SHORTEST_H = 4.0  # as in the plan: the morning comes at least so long after the last tool


def morning_h(pour, hour_h):
    """Say when the piece is looked at next day.

    Parameters
    ----------
    pour : Pour
        The pour [as its fields].
    hour_h : float
        When it was left, hours after the first water [h].

    Returns
    -------
    float
        The morning, hours after the first water [h].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.truth import draw_pour
    >>> morning_h(draw_pour("oak", "mild"), 6.0)
    24.0

    References
    ----------
    Row morning_hour of data/defaults.csv.
    """
    left = pour.clock(hour_h)
    morning = left.replace(hour=int(defaults.si("morning_hour")), minute=0, second=0, microsecond=0)
    while morning < left + timedelta(hours=SHORTEST_H):
        morning += timedelta(days=1)
    return (morning - pour.water_in).total_seconds() / 3600.0


def night_demand(pour, hour_h):
    """Give what the air of a night really takes from an open face.

    Parameters
    ----------
    pour : Pour
        The pour [as its fields].
    hour_h : float
        When it is left, hours after the first water [h].

    Returns
    -------
    tuple of float
        Mean and largest rate, coldest and hottest air, lowest humidity [kg/m2/h, °C, -].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.truth import draw_pour
    >>> pour = draw_pour("oak", "mild")
    >>> night_demand(pour, 6.0)[0] < night_demand(pour, 6.0)[1]
    True

    References
    ----------
    As shop_calc.trade.curing.cure, with the hidden factor and the hidden error of the thermometer.
    """
    air_c, rh_fraction, wind_m_s = _air(pour.room, pour, hour_h)
    air_c = air_c + float(pour.hidden.room_error_k[0])
    factor = float(pour.hidden.evaporation_factor[0])
    slab = slab_heat.slab_history(
        read_at(pour.temp_c, min(hour_h, (len(pour.temp_c) - 1) * GRID_H)), pour.told.thickness_m, air_c, rh_fraction,
        wind_m_s, step_s=STEP_S, activation_energy_j_mol=defaults.si("activation_energy"),
        density_kg_m3=defaults.si("slab_density"), heat_capacity_j_kg_k=defaults.si("slab_heat_capacity"),
        h_bottom_w_m2_k=defaults.si("h_bottom"), h_radiation_w_m2_k=defaults.si("h_radiation"),
        free_water_kg_m2=defaults.si("free_water"), evaporation_factor=factor, longest_part_s=STEP_S,
    )  # fmt: skip
    rate = factor * evaporation.menzel_rate_kg_m2_h(slab.temp_c[:-1], air_c, rh_fraction, wind_m_s)
    return _summary(rate, air_c, rh_fraction)


def _air(room, pour, hour_h):
    """Air of every step of the night, and its speed over the piece."""
    count = int(np.ceil((morning_h(pour, hour_h) - hour_h) * 3600.0 / STEP_S))  # never few: see SHORTEST_H
    air_c, rh_fraction, wind_m_s = room_steps(room, hour_h, STEP_S, count)
    return air_c, rh_fraction, moving_air(wind_m_s)


def _summary(rate, air_c, rh_fraction):
    return float(rate.mean()), float(rate.max()), float(air_c.min()), float(air_c.max()), float(rh_fraction.min())


def expected_cover(pour, hour_h):
    """Choose the cover that fits the night as it is expected.

    Parameters
    ----------
    pour : Pour
        The pour; of it only what the plan on the wall knows [as its fields].
    hour_h : float
        When it is left [h].

    Returns
    -------
    tuple of (str, str)
        Key of the cover, and why [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.truth import draw_pour
    >>> expected_cover(draw_pour("oak", "hot and windy"), 6.0)[0]
    'fabric'

    Notes
    -----
    By the evening a thin piece is as warm as its room, so that the air's temperature stands for the face's.

    References
    ----------
    As shop_calc.trade.curing.cure_rules.pick_cover.
    """
    air_c, rh_fraction, wind_m_s = _air(pour.told.room, pour, hour_h)
    rate = evaporation.menzel_rate_kg_m2_h(air_c, air_c, rh_fraction, wind_m_s)
    pick, _, reason = pick_cover(*_summary(rate, air_c, rh_fraction), pour.plan.mix.has_silica_fume)
    return pick, reason


def of_night(state):
    """Find what the night does to a piece that is left now.

    Parameters
    ----------
    state : State
        The piece as it is left [as its fields].

    Returns
    -------
    tuple of Damage
        All that shows in the morning [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> [damage.key for damage in of_night(begin("oak", "mild"))]
    ['no face']

    References
    ----------
    Limits of data/defaults.csv; see each consequence.
    """
    if state.face_on_h is None:
        return (_one("no face", state, 1.0, "The piece was left before the face was spread."),)
    return (*of_drying(state), *_unfinished(state), *of_cover_overnight(state, state.cover))


def of_cover_overnight(state, key):
    """Find what one cover does until the morning.

    Parameters
    ----------
    state : State
        The piece as it is left [as its fields].
    key : str
        A cover [-].

    Returns
    -------
    tuple of Damage
        Blotches, a dried face, crazing, or nothing [as its fields].

    Raises
    ------
    ValueError
        When there is no such cover.

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> of_cover_overnight(begin("oak", "mild"), "fabric")
    ()

    References
    ----------
    As shop_calc.trade.curing.cure.
    """
    if key not in CHOICES:
        raise ValueError(f"cover: {key!r} given; it must be one of {', '.join(CHOICES)}")
    if key == "plastic":
        since_h = state.cover_from_h if state.cover == "plastic" else state.hour_h
        lying = state.having(cover="plastic", cover_from_h=since_h, hour_h=morning_h(state.pour, state.hour_h))
        return tuple(replace(damage, at_h=state.hour_h) for damage in of_uncover(lying))
    if key not in ("open", "mist"):
        return ()
    mean, peak, _, hottest_c, driest = night_demand(state.pour, state.hour_h)
    amber, red = defaults.si("face_amber"), defaults.si("face_red")
    severity = max(past(mean, amber, 1.5 * amber), past(peak, red, 1.5 * red))
    if hottest_c > defaults.si("cure_air_hot") or driest < defaults.si("cure_humidity_low"):
        severity = max(severity, 0.8 * TRACE)  # warm or dry air alone: a trace
    rates = f"The night took {units.show(mean, 'rate')} on average and {units.show(peak, 'rate')} at its worst"
    limits = f"an open face stands {units.show(amber, 'rate')} and {units.show(red, 'rate')}"
    if key == "mist":
        if severity <= 0.0:
            return ()
        return (_one("dry mist", state, max(severity, TRACE), f"{rates}; nobody misted after you left."),)
    warm = units.show(hottest_c, "temperature")
    reason = f"{rates}; {limits}. Air up to {warm}, humidity down to {100 * driest:.0f} %."
    return (_one("thirst", state, severity, reason),) if severity > 0.0 else ()


def _one(key, state, severity, reason):
    return Damage(key, state.hour_h, "leave", severity, reason)


def _unfinished(state):
    """What was never done shows too."""
    found = []
    if state.screeded_h is None:
        found.append(_one("uneven", state, BAD, "No board was drawn over it."))
    left = [side for side in state.pour.sides if side not in state.off]
    if left:
        found.append(_one("form edge", state, BAD, f"Still on: {', '.join(left)}."))
    bare = [side for side in state.off if side not in state.patched]
    if bare:
        found.append(_one("holes", state, 2 * TRACE, f"Not patched: {', '.join(bare)}."))
    if not state.steel:
        found.append(_one("hollows", state, BAD, "No steel touched it."))
    return tuple(found)
