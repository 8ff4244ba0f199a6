"""Readings of setting made with a rod, a needle or a Vicat needle, and what they say about set."""

from dataclasses import dataclass

import numpy as np

from shop_calc.science.checks import require
from shop_calc.science.loads import GRAVITY_M_S2
from shop_calc.science.setting import FINAL_SET_PA, INITIAL_SET_PA

#: Fewest readings from which a fitted curve is worth more than the default. Judgement, from a forecast test
#: on one record: three readings missed its final set by 4 or by 78 minutes, depending on which three; five
#: by 13.
FEWEST_READINGS = 5

#: Penetration of the Vicat needle at initial set [m]. ASTM C191, from memory.
VICAT_INITIAL_M = 0.025


@dataclass(frozen=True)
class PenetrationFit:
    """A penetration record as a power law `PR = 500 psi (t/ti)^b`.

    Parameters
    ----------
    exponent : float
        Exponent b, the slope of the record on log-log paper [-].
    initial_set_h, final_set_h : float
        Times at 500 and 4000 psi on the fitted line [h].
    correlation : float
        Correlation of the logarithms [-].
    count : int
        Readings used [-].

    Examples
    --------
    >>> fit_penetration([3.0, 4.0, 5.0], [5e5, 3.4e6, 1.6e7]).count
    3

    References
    ----------
    As `fit_penetration`.
    """

    exponent: float
    initial_set_h: float
    final_set_h: float
    correlation: float
    count: int


def needle_resistance_pa(mass_kg, area_m2):
    """Penetration resistance from a needle or rod pressed into the mix on a scale.

    Parameters
    ----------
    mass_kg : float or array
        Reading of the scale, less the cup [kg].
    area_m2 : float or array
        Area of the flat end of the needle [m2].

    Returns
    -------
    float or array
        Force over area [Pa].

    Raises
    ------
    ValueError
        When the reading is below 0 or the area not above 0.

    Examples
    --------
    >>> f"{needle_resistance_pa(2.783, 7.9173e-6):.6g}"
    '3.44712e+06'

    References
    ----------
    ASTM C403/C403M: force over the bearing area of the needle.
    """
    mass = require("scale reading", mass_kg, 0, unit="kg")
    return mass * GRAVITY_M_S2 / require("area of the needle", area_m2, 0, unit="m2", low_open=True)


def fit_penetration(time_h, resistance_pa):
    """Fit a penetration record and read the set times off the line.

    Not to be run back below the first reading, nor trusted below FEWEST_READINGS.

    Parameters
    ----------
    time_h : array, shape (n,)
        Times since water met cement, in hours of the clock or of equivalent age [h].
    resistance_pa : array, shape (n,)
        Penetration resistances at these times, rising [Pa].

    Returns
    -------
    PenetrationFit
        Exponent [-], set times [h], correlation [-], count [-].

    Raises
    ------
    ValueError
        When there are fewer than two times, or the resistance does not rise with time.

    Notes
    -----
    Least squares of log resistance on log time, as ASTM C403 allows; set times are reported to 5 minutes
    there.

    Examples
    --------
    >>> f"{fit_penetration([3.0, 4.0, 5.0], [5e5, 3.4e6, 1.6e7]).initial_set_h:.6g}"
    '3.99452'

    References
    ----------
    ASTM C403/C403M, log-log fit.
    """
    time = np.log(np.atleast_1d(require("time", time_h, 0, unit="h", low_open=True)))
    resistance = np.log(
        np.atleast_1d(require("penetration resistance", resistance_pa, 0, unit="Pa", low_open=True))
    )
    if time.shape != resistance.shape or time.size < 2 or np.ptp(time) == 0:
        raise ValueError(
            f"penetration record: {time.size} times and {resistance.size} resistances given; one for each "
            "time is needed, at two times or more"
        )
    late, stiff = time - time.mean(), resistance - resistance.mean()
    exponent = np.sum(late * stiff) / np.sum(late**2)
    if exponent <= 0:
        raise ValueError("penetration resistance: falls with time in this record; it must rise")

    def time_at(pa):
        return float(np.exp(time.mean() + (np.log(pa) - resistance.mean()) / exponent))

    correlation = exponent * np.sqrt(np.sum(late**2) / np.sum(stiff**2))
    return PenetrationFit(
        float(exponent), time_at(INITIAL_SET_PA), time_at(FINAL_SET_PA), float(correlation), time.size
    )


def initial_set_from_vicat_h(time_h, penetration_m, set_penetration_m=VICAT_INITIAL_M):
    """Initial set from a record of the Vicat needle, by straight lines between the readings.

    Another event than initial set by penetration resistance: do not compare the two hours.

    Parameters
    ----------
    time_h : array, shape (n,)
        Times since water met cement, rising [h].
    penetration_m : array, shape (n,)
        Penetration at these times [m].
    set_penetration_m : float
        Penetration that counts as initial set [m].

    Returns
    -------
    float
        Time at which the penetration first falls to the limit; nan when the record never crosses it [h].

    Raises
    ------
    ValueError
        When times and penetrations differ in number or the times do not rise.

    Examples
    --------
    >>> f"{initial_set_from_vicat_h([2.5, 2.75, 3.0], [0.033, 0.027, 0.024]):.6g}"
    '2.91667'

    References
    ----------
    ASTM C191: linear interpolation to 25 mm; from memory.
    """
    times = np.atleast_1d(require("time", time_h, 0, unit="h"))
    depths = np.atleast_1d(require("penetration", penetration_m, 0, unit="m"))
    if times.shape != depths.shape or np.any(np.diff(times) <= 0):
        raise ValueError(
            f"penetration: {depths.size} values for {times.size} times given; one for each is needed, and "
            "the times must rise"
        )
    reached = depths <= set_penetration_m
    if not reached.any() or (reached[0] and depths[0] < set_penetration_m):
        return float("nan")
    after = int(np.argmax(reached))
    if depths[after] == set_penetration_m:
        return float(times[after])
    share = (depths[after - 1] - set_penetration_m) / (depths[after - 1] - depths[after])
    return float(times[after - 1] + share * (times[after] - times[after - 1]))


def false_set_ratio(final_penetration_m, initial_penetration_m):
    """Share of its first penetration that a paste still allows after a rest.

    A low share that comes back on remixing is false set: remix, add no water.

    Parameters
    ----------
    final_penetration_m : float or array
        Penetration after the rest [m].
    initial_penetration_m : float or array
        Penetration just after mixing [m].

    Returns
    -------
    float or array
        Final over initial penetration; below 0.5 it fails the usual limit [-].

    Raises
    ------
    ValueError
        When the first penetration is not above 0 or the second below 0.

    Examples
    --------
    >>> f"{false_set_ratio(0.0115, 0.0321):.6g}"
    '0.358255'

    References
    ----------
    From memory of ASTM C451.
    """
    first = require("initial penetration", initial_penetration_m, 0, unit="m", low_open=True)
    return require("final penetration", final_penetration_m, 0, unit="m") / first
