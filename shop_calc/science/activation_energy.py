"""Activation energy of setting from what was measured at different temperatures."""

import numpy as np

from shop_calc.science.checks import require
from shop_calc.science.setting import GAS_CONSTANT_J_MOL_K, KELVIN


def activation_energy_from_times_j_mol(temp_a_c, time_a_h, temp_b_c, time_b_h):
    """Activation energy from the times to the same state at two temperatures.

    Parameters
    ----------
    temp_a_c : float or array
        First temperature [°C].
    time_a_h : float or array
        Time to the state at the first temperature, or any multiple of it [h].
    temp_b_c : float or array
        Second temperature, another one [°C].
    time_b_h : float or array
        Time at the second temperature, in the same measure [h].

    Returns
    -------
    float or array
        Activation energy; negative when the warmer one was slower [J/mol].

    Raises
    ------
    ValueError
        When the temperatures are equal or a time is not above 0.

    Notes
    -----
    `E = R ln(ta/tb)/(1/Ta - 1/Tb)`.

    Examples
    --------
    >>> f"{activation_energy_from_times_j_mol(10.0, 2.0, 20.0, 1.0):.6g}"
    '47837.2'

    References
    ----------
    Derived from the form of ASTM C1074.
    """
    first = require("time at the first temperature", time_a_h, 0, unit="h", low_open=True)
    second = require("time at the second temperature", time_b_h, 0, unit="h", low_open=True)
    cold = 1 / (require("first temperature", temp_a_c, -50, 100, unit="°C") + KELVIN)
    span = cold - 1 / (require("second temperature", temp_b_c, -50, 100, unit="°C") + KELVIN)
    if np.any(span == 0):
        raise ValueError(f"second temperature: {temp_b_c} °C given twice; it must differ from the first")
    return GAS_CONSTANT_J_MOL_K * np.log(first / second) / span


def fit_activation_energy_j_mol(temp_c, time_h):
    """Activation energy from the times to the same state at several temperatures.

    Not for times measured on different mixes.

    Parameters
    ----------
    temp_c : array, shape (n,)
        Temperatures, at least two different ones [°C].
    time_h : array, shape (n,)
        Times to the state, or any multiple of them [h].

    Returns
    -------
    float
        Activation energy by least squares of ln time on 1/T [J/mol].

    Raises
    ------
    ValueError
        When there are fewer than two temperatures or a time is not above 0.

    Examples
    --------
    >>> f"{fit_activation_energy_j_mol([10.0, 20.0, 30.0], [4.0, 2.0, 1.2]):.6g}"
    '43020.3'

    References
    ----------
    Derived from the form of ASTM C1074.
    """
    return _slope("time", temp_c, time_h)


def fit_activation_energy_from_rates_j_mol(temp_c, rate_ratio):
    """Activation energy from the rates of the same thing at several temperatures.

    For peaks of a heat curve or other rates; they rise with temperature where times fall.

    Parameters
    ----------
    temp_c : array, shape (n,)
        Temperatures, at least two different ones [°C].
    rate_ratio : array, shape (n,)
        Rates, all in one unit or all over the same rate [-].

    Returns
    -------
    float
        Activation energy by least squares of ln rate on 1/T [J/mol].

    Raises
    ------
    ValueError
        When there are fewer than two temperatures or a rate is not above 0.

    Examples
    --------
    >>> f"{fit_activation_energy_from_rates_j_mol([10.0, 20.0, 35.0], [6.1, 11.7, 22.3]):.6g}"
    '37292.2'

    References
    ----------
    Derived from the form of ASTM C1074.
    """
    return -_slope("rate", temp_c, rate_ratio)


def _slope(name, temp_c, values):
    """R times the least-squares slope of ln values on 1/T."""
    inverse = 1 / (np.atleast_1d(require("temperature", temp_c, -50, 100, unit="°C")) + KELVIN)
    logs = np.log(np.atleast_1d(require(name, values, 0, low_open=True)))
    if inverse.shape != logs.shape or np.ptp(inverse) == 0:
        raise ValueError(
            f"{name}: {logs.size} values for {inverse.size} temperatures given; one for each is needed, "
            "at two temperatures or more"
        )
    away = inverse - inverse.mean()
    return GAS_CONSTANT_J_MOL_K * np.sum(away * logs) / np.sum(away**2)
