"""Five hundred days that could be today, sampled once and the same everywhere."""

import csv
from dataclasses import dataclass, fields
from functools import cache
from statistics import NormalDist

import numpy as np

from shop_calc import defaults

# Cloud field -> (row of the defaults table, True when its spread is a ratio and not a difference).
# The order fixes which column of data/day_cloud.csv drives which quantity.
SAMPLED = {
    "initial_set_h": ("set_time_initial", True),
    "exponent": ("set_exponent", True),
    "activation_energy_j_mol": ("activation_energy", True),
    "room_error_k": ("room_temperature_error", False),
    "evaporation_factor": ("evaporation_factor", True),
    "free_water_kg_m2": ("free_water", True),
    "h_bottom_w_m2_k": ("h_bottom", True),
    "yield_start_pa": ("yield_stress_start", True),
    "build_up_pa_s": ("build_up_rate", True),
    "build_up_time_s": ("build_up_time", True),
}
_ONE_BY_ONE = np.eye(3)
_SIGMA_TO_BAND = NormalDist().inv_cdf(0.95)  # low and high of the table are the 5 % and 95 % points


@dataclass(frozen=True)
class Cloud:
    """A set of possible days; every field has one number a day.

    Parameters
    ----------
    initial_set_h : ndarray of shape (days,)
        Initial set of the mortar, equivalent hours at 21 °C [h].
    exponent : ndarray of shape (days,)
        Exponent of penetration resistance [-].
    activation_energy_j_mol : ndarray of shape (days,)
        Apparent activation energy [J/mol].
    room_error_k : ndarray of shape (days,)
        What the room is warmer than stated [K].
    evaporation_factor : ndarray of shape (days,)
        Evaporation over its estimate [-].
    free_water_kg_m2 : ndarray of shape (days,)
        Water lost before the surface dries [kg/m2].
    h_bottom_w_m2_k : ndarray of shape (days,)
        Heat exchange below [W/m2/K].
    yield_start_pa : ndarray of shape (days,)
        Yield stress after working [Pa].
    build_up_pa_s : ndarray of shape (days,)
        Growth of yield stress at rest [Pa/s].
    build_up_time_s : ndarray of shape (days,)
        Time constant of the exponential form [s].
    weight : ndarray of shape (days,)
        How likely each day still is, sums to one [-].

    Examples
    --------
    >>> len(day_cloud().weight)
    500

    References
    ----------
    Spreads: data/defaults.csv. Points: Sobol 1967 sequence, data/day_cloud.csv.
    """

    initial_set_h: np.ndarray
    exponent: np.ndarray
    activation_energy_j_mol: np.ndarray
    room_error_k: np.ndarray
    evaporation_factor: np.ndarray
    free_water_kg_m2: np.ndarray
    h_bottom_w_m2_k: np.ndarray
    yield_start_pa: np.ndarray
    build_up_pa_s: np.ndarray
    build_up_time_s: np.ndarray
    weight: np.ndarray


class Bands(dict):
    """Bands that replace those of the defaults table, with what a fit knows of three of them together.

    Parameters
    ----------
    rows : dict of str to (low, middle, high)
        Bands by the names of the defaults table [SI unit of each].
    root : ndarray of shape (3, 3), optional
        Lower triangle whose product with its own transpose is the correlation of initial set, exponent and
        activation energy; they vary one by one if left out [-].

    Examples
    --------
    >>> Bands({"set_exponent": (6.0, 7.0, 8.0)}).root
    array([[1., 0., 0.],
           [0., 1., 0.],
           [0., 0., 1.]])

    References
    ----------
    Cholesky's factor of a correlation matrix.
    """

    def __init__(self, rows=(), root=None):
        super().__init__(rows)
        self.root = np.eye(3) if root is None else np.asarray(root, dtype=float)


def spread(low, middle, high, deviation, ratio=True):
    """Turn standard normal deviations into values with the given 5 %, 50 % and 95 % points.

    Parameters
    ----------
    low, middle, high : float
        The 5 %, 50 % and 95 % points [unit of the quantity].
    deviation : float or array
        Standard normal deviations [-].
    ratio : bool
        True spreads by ratio (a quantity that cannot be negative), False by difference [-].

    Returns
    -------
    float or ndarray
        The values, one for each deviation [unit of the quantity].

    Examples
    --------
    >>> round(float(spread(2.7, 3.4, 4.3, 1.6448536)), 5)
    4.3

    Notes
    -----
    Two half-distributions meet at the middle, so that a lopsided band keeps its median.

    References
    ----------
    Common practice, no source.
    """
    share = np.asarray(deviation, dtype=float) / _SIGMA_TO_BAND
    if ratio:
        return middle * np.where(share > 0, high / middle, middle / low) ** share
    return middle + np.where(share > 0, high - middle, middle - low) * share


@cache
def _deviations():
    """Standard normal deviations of the stored points, shape (10, 500)."""
    with open(defaults.data_folder() / "day_cloud.csv", newline="", encoding="utf-8") as file:
        points = [[float(cell) for cell in row[1:]] for row in list(csv.reader(file))[1:]]
    inverse = NormalDist().inv_cdf
    return np.array([[inverse(cell) for cell in row] for row in points]).T


@cache
def _default_cloud():
    return _sample({})


def _sample(bands):
    return cloud_at(_deviations(), bands)


def cloud_at(rows, bands=None, weight=None):
    """Give days at chosen places of the bands.

    Parameters
    ----------
    rows : ndarray of shape (10, days)
        Standard normal deviations, in the order of SAMPLED; 0 is the middle of a band, 1.645 its high end [-].
    bands : dict of str to (low, middle, high), optional
        As in day_cloud [SI unit of each].
    weight : ndarray of shape (days,), optional
        Weights; equal if left out [-].

    Returns
    -------
    Cloud
        The days [as its fields].

    Examples
    --------
    >>> cloud_at(np.zeros((10, 1))).initial_set_h
    array([3.4])

    References
    ----------
    Spreads: data/defaults.csv.
    """
    bands = bands or {}
    values = {}
    rows = np.array(rows, dtype=float)
    rows[:3] = getattr(bands, "root", _ONE_BY_ONE) @ rows[:3]
    for column, (field, (name, ratio)) in zip(rows, SAMPLED.items(), strict=True):
        values[field] = spread(*bands.get(name, defaults.si_band(name)), column, ratio)
    return Cloud(**values, weight=np.full(rows.shape[1], 1.0 / rows.shape[1]) if weight is None else weight)


def deviations(cloud, bands=None):
    """Say where in their bands the values of some days lie; `cloud_at` turned round.

    Parameters
    ----------
    cloud : Cloud
        The days [as its fields].
    bands : dict of str to (low, middle, high), optional
        The bands that they were made with [SI unit of each].

    Returns
    -------
    ndarray of shape (10, days)
        Standard normal deviations in the order of SAMPLED; 0 where a band has no width [-].

    Examples
    --------
    >>> round(float(deviations(cloud_at(np.full((10, 1), 0.5)))[0, 0]), 5)
    0.5

    References
    ----------
    Derived.
    """
    bands = bands or {}
    rows = []
    for field, (name, ratio) in SAMPLED.items():
        low, middle, high = bands.get(name, defaults.si_band(name))
        value = getattr(cloud, field)
        step = np.log(value / middle) if ratio else value - middle
        up, down = (np.log(high / middle), np.log(middle / low)) if ratio else (high - middle, middle - low)
        width = np.where(step > 0, up, down)
        rows.append(np.divide(step, width, out=np.zeros_like(step), where=width > 0) * _SIGMA_TO_BAND)
    rows = np.array(rows)
    rows[:3] = np.linalg.solve(getattr(bands, "root", _ONE_BY_ONE), rows[:3])
    return rows


def day_cloud(bands=None):
    """Give the 500 days.

    Parameters
    ----------
    bands : Bands or dict of str to (low, middle, high), optional
        Bands in SI that replace those of the defaults table, by its names; a shop's own log gives them
        [SI unit of each].

    Returns
    -------
    Cloud
        The same days at every call and on every machine [as its fields].

    Examples
    --------
    >>> round(float(np.median(day_cloud().initial_set_h)), 2)
    3.4

    Notes
    -----
    The points are stored, not drawn anew: a plan printed today can be printed again in ten years.

    References
    ----------
    Points: Sobol 1967 sequence, unscrambled, points 1 to 500 in ten dimensions, as scipy gives them.
    """
    return _sample(bands) if bands else _default_cloud()


def middle_day(bands=None):
    """Give the one day on which every uncertain quantity has its default.

    Parameters
    ----------
    bands : dict of str to (low, middle, high), optional
        As in day_cloud [SI unit of each].

    Returns
    -------
    Cloud
        Fields of shape (1,) [as its fields].

    Examples
    --------
    >>> middle_day().initial_set_h
    array([3.4])

    References
    ----------
    Defaults: data/defaults.csv.
    """
    bands = bands or {}
    values = {
        field: np.array([bands.get(name, defaults.si_band(name))[1]]) for field, (name, _) in SAMPLED.items()
    }
    return Cloud(**values, weight=np.ones(1))


def field_names():
    """List the uncertain quantities of a day.

    Returns
    -------
    tuple of str
        Field names without the weight [-].

    Examples
    --------
    >>> field_names()[0]
    'initial_set_h'

    References
    ----------
    Common practice, no source.
    """
    return tuple(f.name for f in fields(Cloud) if f.name != "weight")
