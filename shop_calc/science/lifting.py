"""How much one person may lift: the revised NIOSH equation. For teams see `teams`.

The equation is for two-handed lifting and lowering of a stable load while standing. It is not for carrying,
pushing, one hand, kneeling, shovelling, unstable or hot loads, slippery floors, or more than 8 hours.
"""

from dataclasses import dataclass

import numpy as np

from shop_calc.science.checks import require

# US form of the equation, which its printed examples use. The metric form of the same book rounds its
# constants (23 kg, 25 cm, 75 cm) and gives up to 2.5 % less.
LOAD_CONSTANT_KG = 51.0 * 0.45359237
_IN = 0.0254
NEAREST_M, FARTHEST_M = 10.0 * _IN, 25.0 * _IN
KNUCKLE_M, HIGHEST_M = 30.0 * _IN, 70.0 * _IN
SHORTEST_TRAVEL_M, LONGEST_TRAVEL_M = 10.0 * _IN, 70.0 * _IN
LARGEST_TWIST_DEG = 135.0
LONGEST_DAY_H = 8.0

# NIOSH 94-110, Table 5: lifts a minute; factors for up to 1, 2 and 8 hours; the lifts a minute above which
# a lift from below 30 in gets 0. From memory; three independent public copies in program source agree.
_LIFTS = (0.2, 0.5, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15)
_FREQUENCY = {
    1.0: (1.00, .97, .94, .91, .88, .84, .80, .75, .70, .60, .52, .45, .41, .37, .34, .31, .28),
    2.0: (.95, .92, .88, .84, .79, .72, .60, .50, .42, .35, .30, .26, .23, .21, 0, 0, 0),
    8.0: (.85, .81, .75, .65, .55, .45, .35, .27, .22, .18, .15, .13, 0, 0, 0, 0, 0),
}  # fmt: skip
_LOW_LIMIT = {1.0: 12.0, 2.0: 10.0, 8.0: 8.0}

# NIOSH 94-110, Table 7: below 30 in, at 30 in or more. Origin as above.
COUPLING = {"good": (1.00, 1.00), "fair": (0.95, 1.00), "poor": (0.90, 0.90)}

@dataclass(frozen=True)
class LiftingLimit:
    """Recommended weight limit of one lift with the factors that made it.

    Parameters
    ----------
    limit_kg : float or array
        Recommended weight limit, 0 outside the limits of use [kg].
    horizontal_factor, vertical_factor, distance_factor, asymmetry_factor : float or array
        Factors for reach, height, travel and twist [-].
    frequency_factor, coupling_factor : float or array
        Factors for lifts a minute and for the grip [-].

    Examples
    --------
    >>> LiftingLimit(20.0, 1.0, 1.0, 1.0, 1.0, 1.0, 0.9).limit_kg
    20.0

    References
    ----------
    NIOSH Publication 94-110 (1994).
    """

    limit_kg: float
    horizontal_factor: float
    vertical_factor: float
    distance_factor: float
    asymmetry_factor: float
    frequency_factor: float
    coupling_factor: float


def frequency_factor(lifts_per_minute, duration_h, start_height_m):
    """NIOSH factor for how often and how long one lifts.

    Parameters
    ----------
    lifts_per_minute : float or array
        Lifts a minute, averaged over 15 minutes; under 0.2 counts as 0.2 [1/min].
    duration_h : float
        How long it goes on, with the rests that the book wants: up to 8 [h].
    start_height_m : float or array
        Height of the hands [m].

    Returns
    -------
    float or array
        Factor, 0 when that often is too often [-].

    Raises
    ------
    ValueError
        When the lifts are negative or the duration is not between 0 and 8 hours.

    Notes
    -----
    Between two rows of the table the row of the more frequent lifting is taken, which is the careful side.

    Examples
    --------
    >>> f"{frequency_factor(3.0, 1.0, 0.5588):.5f}"
    '0.88000'

    References
    ----------
    NIOSH Publication 94-110, Table 5, from memory; three independent public copies agree.
    """
    lifts = require("lifts a minute", lifts_per_minute, 0)
    duration = float(require("duration of lifting", duration_h, 0, LONGEST_DAY_H, unit="h", low_open=True))
    height = require("height of the hands", start_height_m, 0, unit="m")
    column = next(hours for hours in _FREQUENCY if duration <= hours)
    table = np.append(_FREQUENCY[column], 0.0)
    factor = table[np.searchsorted(_LIFTS, np.asarray(lifts) - 1e-9)]
    too_often = (np.asarray(height) < KNUCKLE_M) & (np.asarray(lifts) > _LOW_LIMIT[column])
    return np.where(too_often, 0.0, factor)[()]


def weight_limit(
    reach_m, height_m, travel_m, twist_deg=0.0, lifts_per_minute=0.2, duration_h=1.0, coupling="poor"
):
    """Recommended weight limit of one person by the revised NIOSH equation.

    Work it out at the start of the lift, and at its end too where the load is set down with care; the smaller
    counts. For its limits of use see the head of this module: a slab carried on edge is outside them.

    Parameters
    ----------
    reach_m : float or array
        From between the ankles to the hands, level; under 10 in counts as 10 in [m].
    height_m : float or array
        Hands above the floor [m].
    travel_m : float or array
        Height between start and end; under 10 in counts as 10 in [m].
    twist_deg : float or array
        Turn of the body away from straight ahead [deg].
    lifts_per_minute : float or array
        How often [1/min].
    duration_h : float
        For how long [h].
    coupling : str
        "good" (handles), "fair" (fingers bent under), "poor" (a sack, a slab) [-].

    Returns
    -------
    LiftingLimit
        Limit and factors; 0 beyond 25 in of reach, 70 in of height or travel, 135 degrees [kg, -].

    Raises
    ------
    ValueError
        When an entry is negative or the grip is none of the three.

    Notes
    -----
    51 lb x 10/H x (1 - 0.0075 |V - 30|) x (0.82 + 1.8/D) x (1 - 0.0032 A) x FM x CM, inches and degrees.
    About 3 in 4 women and 99 in 100 men in good health can lift that (same book, from memory).

    Examples
    --------
    >>> at_start = weight_limit(0.254, 0.5588, 0.9398, 0.0, 3.0, 1.0, "fair")
    >>> round(float(at_start.limit_kg), 4)
    15.7912

    References
    ----------
    Waters, Putz-Anderson and Garg, NIOSH Publication 94-110 (1994).
    """
    reach = np.asarray(require("reach", reach_m, 0, unit="m"))
    height = np.asarray(require("height of the hands", height_m, 0, unit="m"))
    travel = np.asarray(require("travel of the load", travel_m, 0, unit="m"))
    twist = np.asarray(require("twist", twist_deg, 0, 180, unit="deg"))
    try:
        low, high = COUPLING[str(coupling).strip().lower()]
    except KeyError:
        raise ValueError(f"grip: {coupling!r} given; it must be good, fair or poor") from None
    slack = 1.0 + 1e-9  # binary rounding of inches must not push the very limit outside
    distance = 0.82 + 1.8 * _IN / np.maximum(travel, SHORTEST_TRAVEL_M)
    factors = (
        np.where(reach > FARTHEST_M * slack, 0.0, NEAREST_M / np.maximum(reach, NEAREST_M)),
        np.where(height > HIGHEST_M * slack, 0.0, 1.0 - 0.0075 / _IN * np.abs(height - KNUCKLE_M)),
        np.where(travel > LONGEST_TRAVEL_M * slack, 0.0, distance),
        np.where(twist > LARGEST_TWIST_DEG, 0.0, 1.0 - 0.0032 * twist),
        np.asarray(frequency_factor(lifts_per_minute, duration_h, height)),
        np.where(height < KNUCKLE_M * (1 - 1e-9), low, high),
    )
    limit = np.asarray(LOAD_CONSTANT_KG)
    for factor in factors:
        limit = limit * factor
    return LiftingLimit(*(value[()] for value in (limit, *factors)))


def lifting_index(load_kg, limit_kg):
    """Load over the recommended limit: above 1 the lift is beyond what most people should do.

    Parameters
    ----------
    load_kg : float or array
        What is lifted [kg].
    limit_kg : float or array
        Recommended weight limit [kg].

    Returns
    -------
    float or array
        Lifting index; infinite where the limit is 0 [-].

    Raises
    ------
    ValueError
        When a mass is negative.

    Notes
    -----
    For one person only; `teams.team_index` for a team.

    Examples
    --------
    >>> round(float(lifting_index(36.287, 13.2131)), 5)
    2.74629

    References
    ----------
    NIOSH Publication 94-110 (1994), section 1.4.
    """
    load = np.asarray(require("load", load_kg, 0, unit="kg"))
    limit = np.asarray(require("weight limit", limit_kg, 0, unit="kg"))
    with np.errstate(divide="ignore", invalid="ignore"):
        return np.where(limit > 0, load / limit, np.inf)[()]
