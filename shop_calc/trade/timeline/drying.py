"""What the air takes from the face between placing and the last steel, and what to do about it."""

from dataclasses import dataclass

import numpy as np

from shop_calc import defaults, units
from shop_calc.science import evaporation
from shop_calc.science.layer_water import water_share_lost
from shop_calc.trade.advice import Advice
from shop_calc.trade.timeline.room import room_at
from shop_calc.trade.timeline.set_clock import run_clock

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
        days=inputs.middle_day(),
    )  # fmt: skip


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
    end_h = day.stage("last_steel").likely_to_h
    hours = clock.history.time_h + inputs.face_load_h
    air_c, rh_fraction, wind_m_s = room_at(inputs.room, hours)
    rate = evaporation.menzel_rate_kg_m2_h(clock.history.temp_c, air_c, rh_fraction, moving_air(wind_m_s))
    working = hours <= end_h + 1e-9
    hours, rate = hours[working], rate[working]
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
