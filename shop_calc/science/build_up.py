"""Yield stress of a mix at rest, and the stress that an edge needs to stand by itself.

The early clock: minutes to about an hour, zero at the last remixing or tapping. Not to be joined with the
late clock of penetration resistance.
"""

import numpy as np

from shop_calc.science.checks import require
from shop_calc.science.loads import GRAVITY_M_S2

#: Longest rest over which a straight growth is a fair picture [s]. Judgement: in a measured record the
#: growth of the first 5 minutes carried on to 17 is 57 % too much. A deep base leaves it; the plan says so.
VALID_REST_S = (0.0, 3600.0)


def yield_stress_linear_pa(rest_s, start_pa, rate_pa_s):
    """Yield stress after a rest, growing evenly.

    Parameters
    ----------
    rest_s : float or array
        Rest since the last working or tapping [s].
    start_pa : float or array
        Yield stress just after working [Pa].
    rate_pa_s : float or array
        Growth [Pa/s].

    Returns
    -------
    float or array
        Yield stress [Pa].

    Raises
    ------
    ValueError
        When an entry is below 0.

    Notes
    -----
    `tau0 + A t`. Classes of growth from memory: under 0.1 slow, 0.1 to 0.5 common, above 0.5 Pa/s fast.

    Examples
    --------
    >>> f"{yield_stress_linear_pa(1200.0, 150.0, 0.5123):.6g}"
    '764.76'

    References
    ----------
    From memory of N. Roussel, "A thixotropy model for fresh fluid concretes", Cement and Concrete Research 36
    (2006).
    """
    return _start(start_pa) + _rate(rate_pa_s) * require("rest", rest_s, 0, unit="s")


def rest_to_stress_linear_s(stress_pa, start_pa, rate_pa_s):
    """Rest after which an evenly growing yield stress reaches a value.

    Parameters
    ----------
    stress_pa : float or array
        Yield stress to reach [Pa].
    start_pa : float or array
        Yield stress just after working [Pa].
    rate_pa_s : float or array
        Growth, above 0 [Pa/s].

    Returns
    -------
    float or array
        Rest; 0 when the start is enough [s].

    Raises
    ------
    ValueError
        When stress or start is below 0 or the growth not above 0.

    Examples
    --------
    >>> f"{rest_to_stress_linear_s(822.274, 150.0, 0.5):.6g}"
    '1344.55'

    References
    ----------
    `yield_stress_linear_pa` turned round.
    """
    return _missing(stress_pa, start_pa) / _rate(rate_pa_s, low_open=True)


def yield_stress_exponential_pa(rest_s, start_pa, rate_pa_s, time_constant_s):
    """Yield stress after a rest, growing ever faster.

    Parameters
    ----------
    rest_s : float or array
        Rest since the last working or tapping [s].
    start_pa : float or array
        Yield stress just after working [Pa].
    rate_pa_s : float or array
        Growth at the beginning [Pa/s].
    time_constant_s : float or array
        Time in which the growth quickens e-fold [s].

    Returns
    -------
    float or array
        Yield stress [Pa].

    Raises
    ------
    ValueError
        When an entry is below 0 or the time constant not above 0.

    Notes
    -----
    `tau0 + A tc (exp(t/tc) - 1)`; the linear form for short rests.

    Examples
    --------
    >>> f"{yield_stress_exponential_pa(1200.0, 150.0, 0.5, 3600.0):.6g}"
    '862.102'

    References
    ----------
    From memory of A. Perrot and others, "Prediction of lateral form pressure exerted by concrete at low
    casting rates", Materials and Structures 48 (2015).
    """
    constant = require("time constant", time_constant_s, 0, unit="s", low_open=True)
    grown = np.expm1(require("rest", rest_s, 0, unit="s") / constant)
    return _start(start_pa) + _rate(rate_pa_s) * constant * grown


def rest_to_stress_exponential_s(stress_pa, start_pa, rate_pa_s, time_constant_s):
    """Rest after which an ever faster growing yield stress reaches a value.

    Parameters
    ----------
    stress_pa : float or array
        Yield stress to reach [Pa].
    start_pa : float or array
        Yield stress just after working [Pa].
    rate_pa_s : float or array
        Growth at the beginning, above 0 [Pa/s].
    time_constant_s : float or array
        Time in which the growth quickens e-fold [s].

    Returns
    -------
    float or array
        Rest; 0 when the start is enough [s].

    Raises
    ------
    ValueError
        When stress or start is below 0, or growth or time constant not above 0.

    Examples
    --------
    >>> f"{rest_to_stress_exponential_s(822.274, 150.0, 0.5, 3600.0):.6g}"
    '1142.47'

    References
    ----------
    `yield_stress_exponential_pa` turned round.
    """
    constant = require("time constant", time_constant_s, 0, unit="s", low_open=True)
    return constant * np.log1p(_missing(stress_pa, start_pa) / (_rate(rate_pa_s, low_open=True) * constant))


def edge_demand_pa(height_m, density_kg_m3, safety_factor=1.0):
    """Yield stress that an upright edge needs to stand without its form.

    Parameters
    ----------
    height_m : float or array
        Height of the edge [m].
    density_kg_m3 : float or array
        Density of the fresh mix [kg/m3].
    safety_factor : float or array
        Factor on the demand, 1 or more [-].

    Returns
    -------
    float or array
        Yield stress needed [Pa].

    Raises
    ------
    ValueError
        When height or density is not above 0 or the factor below 1.

    Notes
    -----
    `rho g h/2`: the greatest shear in a column under its own weight (Tresca).

    Examples
    --------
    >>> f"{edge_demand_pa(0.0508, 2200.0):.6g}"
    '547.996'

    References
    ----------
    Derived: mechanics.
    """
    return _foot_pressure_pa(height_m, density_kg_m3, safety_factor) / 2


def edge_demand_strict_pa(height_m, density_kg_m3, safety_factor=1.0):
    """Yield stress that an upright edge needs, by the stricter of two rules.

    Parameters
    ----------
    height_m : float or array
        Height of the edge [m].
    density_kg_m3 : float or array
        Density of the fresh mix [kg/m3].
    safety_factor : float or array
        Factor on the demand, 1 or more [-].

    Returns
    -------
    float or array
        Yield stress needed [Pa].

    Raises
    ------
    ValueError
        As `edge_demand_pa`.

    Notes
    -----
    `rho g h/sqrt(3)` (von Mises).

    Examples
    --------
    >>> f"{edge_demand_strict_pa(0.0508, 2200.0):.6g}"
    '632.771'

    References
    ----------
    Derived: mechanics.
    """
    return _foot_pressure_pa(height_m, density_kg_m3, safety_factor) / np.sqrt(3)


def edge_demand_undrained_pa(height_m, density_kg_m3, safety_factor=1.0):
    """Yield stress at which a long upright bank would slide, for comparison only.

    A lower bound by slope stability; the edge of a thin piece is planned with `edge_demand_pa`.

    Parameters
    ----------
    height_m : float or array
        Height of the bank [m].
    density_kg_m3 : float or array
        Density of the fresh mix [kg/m3].
    safety_factor : float or array
        Factor on the demand, 1 or more [-].

    Returns
    -------
    float or array
        Yield stress needed [Pa].

    Raises
    ------
    ValueError
        As `edge_demand_pa`.

    Examples
    --------
    >>> f"{edge_demand_undrained_pa(0.0508, 2200.0):.6g}"
    '289.945'

    References
    ----------
    From memory of soil mechanics: stability number 3.78 of a vertical undrained bank.
    """
    return _foot_pressure_pa(height_m, density_kg_m3, safety_factor) / 3.78


def _foot_pressure_pa(height_m, density_kg_m3, safety_factor):
    """Pressure of its own weight at the foot of the edge, times the factor."""
    height = require("height of the edge", height_m, 0, unit="m", low_open=True)
    density = require("density", density_kg_m3, 0, unit="kg/m3", low_open=True)
    return require("safety factor", safety_factor, 1) * density * GRAVITY_M_S2 * height


def _start(start_pa):
    return require("yield stress at the start", start_pa, 0, unit="Pa")


def _rate(rate_pa_s, low_open=False):
    return require("growth of yield stress", rate_pa_s, 0, unit="Pa/s", low_open=low_open)


def _missing(stress_pa, start_pa):
    """Stress still to be gained."""
    return np.maximum(require("yield stress to reach", stress_pa, 0, unit="Pa") - _start(start_pa), 0.0)
