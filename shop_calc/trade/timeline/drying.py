"""What the air takes from the face between placing and the last steel, and what to do about it."""

from dataclasses import dataclass
from math import ceil, gcd

import numpy as np

from shop_calc import defaults, units
from shop_calc.science import evaporation
from shop_calc.science.layer_water import water_share_lost
from shop_calc.trade.advice import Advice
from shop_calc.trade.timeline.room import room_at
from shop_calc.trade.timeline.set_clock import STEP_S, run_clock

FINEST_S, _AT_ONCE_H = 30, 1e-6  # seconds on the clock of a job matter to nobody
_SOURCE = "Menzel 1954 (from memory); limits: FHWA-HRT-05-038 ch. 5, ACI 305R/308; band: Hover, ACI SP-338 (2020)"


@dataclass(frozen=True)
class Drying:
    """Evaporation over the working hours of the face.

    Parameters
    ----------
    time_h : ndarray of shape (steps,)
        Hours after the first water [h].
    rate_kg_m2_h : ndarray of shape (steps,)
        Free-water rate at the temperature of the surface [kg/m2/h].
    peak_kg_m2_h : float
        Largest rate from placing to the last steel [kg/m2/h].
    peak_low_kg_m2_h, peak_high_kg_m2_h : float
        Ends of its band [kg/m2/h].
    peak_at_h : float
        When it is largest, hours after the first water [h].
    level : str
        green, amber or red for a low-bleed face [-].
    lost_kg_m2 : float
        Water lost by the last steel while the surface dries [kg/m2].
    lost_share : float
        That loss over the water of the face [-].
    advice : tuple of Advice
        What to do [-].

    Examples
    --------
    >>> face_level(0.3)
    'amber'

    References
    ----------
    Menzel 1954, from memory; limits in data/defaults.csv.
    """

    time_h: np.ndarray
    rate_kg_m2_h: np.ndarray
    peak_kg_m2_h: float
    peak_low_kg_m2_h: float
    peak_high_kg_m2_h: float
    peak_at_h: float
    level: str
    lost_kg_m2: float
    lost_share: float
    advice: tuple


def moving_air(wind_m_s):
    """Give the air speed that evaporation is reckoned with: a room called still moves a little.

    Parameters
    ----------
    wind_m_s : float or array
        Air speed as stated [m/s].

    Returns
    -------
    float or array
        The stated speed, or that of a still room if it is less [m/s].

    Examples
    --------
    >>> f"{float(moving_air(0.0)) * 3.6:.4f}"
    '1.5000'

    Notes
    -----
    Measured loss of a thin paste in a still room is a third above still-air Menzel. Only evaporation uses this
    floor; the set clock takes the speed as stated, because it was fitted that way.

    References
    ----------
    Derived from NIST/DTU, Cement and Concrete Research 30 (2000) 1157.
    """
    return np.maximum(wind_m_s, defaults.si("still_air_speed"))


def face_level(rate_kg_m2_h):
    """Grade an evaporation rate for a low-bleed face.

    Parameters
    ----------
    rate_kg_m2_h : float
        Evaporation rate [kg/m2/h].

    Returns
    -------
    str
        green, amber or red [-].

    Examples
    --------
    >>> face_level(0.54), face_level(0.12)
    ('red', 'green')

    References
    ----------
    Red: half the ordinary limit, FHWA-HRT-05-038 ch. 5. Amber: judgement.
    """
    if rate_kg_m2_h >= defaults.si("face_red"):
        return "red"
    return "amber" if rate_kg_m2_h >= defaults.si("face_amber") else "green"


def face_clock(day):
    """Step the face through the middle day, until the last steel at least; a log's middle where there is one.

    Parameters
    ----------
    day : Day
        The day [h].

    Returns
    -------
    SetClock
        Single histories, counted from the face's own water [as its fields].

    Examples
    --------
    >>> face_clock.__name__
    'face_clock'

    References
    ----------
    As shop_calc.trade.timeline.set_clock.
    """
    inputs = day.samples.inputs
    least_h = day.stage("stop").likely_from_h - inputs.face_load_h
    return run_clock(
        inputs.mix_temp_c, inputs.thickness_m, inputs.room, start_h=inputs.face_load_h, least_h=least_h,
        days=inputs.middle_day(), step_s=_step_s(inputs),
    )  # fmt: skip


def _step_s(inputs):
    """The longest step, up to that of the set clock, with which every change of the air stands between two steps."""
    apart_s = (round((hour - inputs.face_load_h) * 3600.0) for hour in inputs.room.from_h if hour > inputs.face_load_h)
    together_s = gcd(*apart_s) or round(STEP_S)
    return max(together_s / ceil(together_s / STEP_S), FINEST_S)


def rates_of_a_wet_face(steps_h, temp_c, room, until_h):
    """Read what the air takes from a wet face, at every step and at both sides of every change of the air.

    Parameters
    ----------
    steps_h : ndarray of shape (steps,)
        Rising hours after the first water [h].
    temp_c : ndarray of shape (steps,)
        Temperature of the face at these hours [°C].
    room : Room
        The air [as its fields].
    until_h : float
        The last hour asked for [h].

    Returns
    -------
    tuple of ndarray of shape (n,)
        Hours after the first water, where the air changes one just before it too, and rates [h, kg/m2/h].

    Examples
    --------
    >>> from shop_calc.trade.timeline.room import Room
    >>> room = Room((0.0, 1.0), (21.0, 30.0), (0.5, 0.3), (0.0, 4.0))
    >>> hours, rate = rates_of_a_wet_face(np.linspace(0.0, 2.0, 5), np.full(5, 17.0), room, 1.75)
    >>> [f"{hour:.2f} h: {each:.4f}" for hour, each in zip(hours, rate)]
    ['0.00 h: 0.0750', '0.50 h: 0.0750', '1.00 h: 0.0750', '1.00 h: 0.2335', '1.50 h: 0.2335', '1.75 h: 0.2335']

    Notes
    -----
    Largest where the air changes, at either end, or in between. On the clock of a face: within 0.3 % of steps of two
    seconds, tried on rooms with three changes of up to 28 K and 7 m/s (tests/test_drying_peak.py).

    References
    ----------
    Menzel 1954, from memory.
    """
    changes = [hour for hour in room.from_h if steps_h[0] + _AT_ONCE_H < hour < until_h - _AT_ONCE_H]
    at_change = np.any(np.abs(steps_h[:, np.newaxis] - changes) <= _AT_ONCE_H, axis=1)
    steps_in = steps_h[(steps_h < until_h - _AT_ONCE_H) & ~at_change]
    hours = np.concatenate((steps_in, changes, changes, [until_h]))
    before = np.zeros(hours.size)  # the first of the two at a change still has the air before it
    before[steps_in.size : steps_in.size + len(changes)] = 2 * _AT_ONCE_H
    order = np.argsort(hours - before, kind="stable")
    hours = (hours - before)[order]
    air_c, rh_fraction, wind_m_s = room_at(room, hours)
    return hours, evaporation.menzel_rate_kg_m2_h(np.interp(hours, steps_h, temp_c), air_c, rh_fraction, moving_air(wind_m_s))


def face_drying(day, clock, face_thickness_m, face_water_kg_m3):
    """Follow the face from placing to the last steel.

    Parameters
    ----------
    day : Day
        The day [h].
    clock : SetClock
        The face on the middle day, see face_clock [as its fields].
    face_thickness_m : float
        Thickness of the face [m].
    face_water_kg_m3 : float
        Water in the fresh face [kg/m3].

    Returns
    -------
    Drying
        Rates, losses and what to do [kg/m2/h].

    Examples
    --------
    >>> face_level(0.0)
    'green'

    Notes
    -----
    The rate is that of a wet surface at the slab's own temperature, so cool air over a warm slab counts: that is
    how plastic shrinkage cracks come in cold weather too. It starts with the face as it leaves the mixer, the
    warmest that it can be placed in cool air.

    References
    ----------
    Menzel 1954, from memory.
    """
    inputs = day.samples.inputs
    own = clock.history
    until_h = day.stage("last_steel").likely_to_h
    hours, rate = rates_of_a_wet_face(own.time_h + inputs.face_load_h, own.temp_c, inputs.room, until_h)
    peak = float(rate.max())
    band = evaporation.estimate_band_kg_m2_h(peak)
    demand = float(np.trapezoid(rate, hours))
    free = defaults.si("free_water")
    lost = demand if demand <= free else free * (1.0 + np.log(demand / free))
    share = float(water_share_lost(lost, face_thickness_m, face_water_kg_m3))
    level = face_level(peak)
    return Drying(
        hours, rate, peak, float(band.low_kg_m2_h), float(band.high_kg_m2_h), float(hours[rate.argmax()]), level,
        float(lost), share, _advice(level, peak, band, share, inputs),
    )  # fmt: skip


def _advice(level, peak, band, share, inputs):
    rate = units.show(peak, "rate")
    between = (
        f"between {units.show(float(band.low_kg_m2_h), 'rate')} and {units.show(float(band.high_kg_m2_h), 'rate')}"
    )
    lines = []
    if level == "red":
        lines.append(
            Advice(
                "act", "float",
                "Do not leave the face open to this air: stop the wind, shade it, cover it between passes, cool the mix.",
                f"The air can take {rate} from the face ({between}); a low-bleed face needs protection from "
                f"{units.show(defaults.si('face_red'), 'rate')}. It can look ready while it is soft below the skin.",
                "read", _SOURCE,
            )
        )  # fmt: skip
    elif level == "amber":
        lines.append(
            Advice(
                "act", "float",
                "Keep a cover at hand between passes and keep fans and draughts off the face.",
                f"The air can take {rate} from the face ({between}); the limit for a low-bleed face is "
                f"{units.show(defaults.si('face_red'), 'rate')}. Dull is not ready: press below the skin.",
                "judgement", _SOURCE,
            )
        )  # fmt: skip
    air_c = inputs.room.air_temp_c[0]
    if level != "green" and air_c < inputs.mix_temp_c - 5:
        lines.append(
            Advice(
                "note", "float", "Cold air over a warm slab dries it too; it is not only hot weather.",
                f"Mix {units.show(inputs.mix_temp_c, 'temperature')}, air {units.show(air_c, 'temperature')}.",
                "derived", "vapour pressure of the warm surface against that of the air",
            )
        )  # fmt: skip
    if share > 0.3:
        lines.append(
            Advice(
                "act", "look", "Test below the skin before every tool: a crust can carry a finger over a soft base.",
                f"By the last steel the face would lose {100 * share:.0f} % of its water if it lay open; what leaves is drawn "
                "from the base after that.", "derived", _SOURCE,
            )
        )  # fmt: skip
    return tuple(lines)
