"""Maturity: how much curing a temperature history is worth, by two rules.

The datum of the temperature-time factor is always an explicit argument: the same night is worth
twice as much with one datum in use as with another, so no value is meant without it.
"""

import numpy as np

from shop_calc.science.checks import require

# Datums in use. 14 °F is -10 °C, not 0 °C; a page that calls them equal has made that slip.
DATUM_NURSE_SAUL_C = -10.0  # Saul 1951, from memory; the older 11 °F is -11.7 °C

EN_VALID_TEMP_C = (0.0, 80.0)  # EN 1992-1-1:2004 B.1(3), above equation (B.10)
SAUL_VALID_TEMP_C = (0.0, 40.0)  # linear rule; above and below it the Arrhenius form is nearer, from memory


def temperature_time_c_h(time_h, temp_c, datum_c):
    """Temperature-time factor (Nurse-Saul) of a history given as steps.

    A step colder than the datum counts nothing and never takes back. Do not use it to compare
    mixes, or with a target that was measured with another datum.

    Parameters
    ----------
    time_h : float or array (..., n)
        Length of each step [h].
    temp_c : float or array (..., n)
        Mean temperature of the concrete in each step [°C].
    datum_c : float
        Temperature below which hardening is taken to stop [°C].

    Returns
    -------
    float or array (...)
        Sum over the last axis of the steps; valid range `SAUL_VALID_TEMP_C` [°C h].

    Raises
    ------
    ValueError
        When a length is negative or a temperature is not a possible one.

    Notes
    -----
    M = sum max(T - T0, 0) dt. Being linear in T it gives hot curing too much: at 3 days a 40 C
    cure measured +18 % of strength and a 12 C cure -11 % against 20 C (Materials 13 (2020) 4646).

    Examples
    --------
    >>> float(temperature_time_c_h([12.0, 12.0], [20.0, 25.0], -10.0))
    780.0

    References
    ----------
    Form of ASTM C1074 (temperature-time factor), from memory.
    """
    hours = require("length of a step", time_h, 0, unit="h")
    excess = _excess_c(temp_c, datum_c)
    return _total(excess * hours)


def sampled_temperature_time_c_h(time_h, temp_c, datum_c):
    """Temperature-time factor of a history read off a thermometer at certain times.

    Between two readings the temperature is taken to run straight. Not for readings so far apart
    that a night is missed.

    Parameters
    ----------
    time_h : array (n,)
        Times of the readings, rising [h].
    temp_c : array (..., n)
        Readings [°C].
    datum_c : float
        Temperature below which hardening is taken to stop [°C].

    Returns
    -------
    float or array (...)
        Temperature-time factor from the first to the last reading [°C h].

    Raises
    ------
    ValueError
        When there are fewer than two readings or the times do not rise.

    Notes
    -----
    Exact for straight pieces, also where one crosses the datum: of a piece from p above to n below
    only the part above counts, p^2 / (2 (p + n)) of its length.

    Examples
    --------
    >>> round(float(sampled_temperature_time_c_h([0.0, 10.0], [-5.1, 5.0], 0.0)), 5)
    12.37624

    References
    ----------
    Form of ASTM C1074, from memory; the integration is derived.
    """
    times = np.atleast_1d(require("time of a reading", time_h, unit="h"))
    steps = np.diff(times)
    if times.size < 2 or np.any(steps <= 0):
        raise ValueError("time of a reading: at least two are needed, each later than the one before")
    datum = require("datum", datum_c, -30, 20, unit="°C")
    excess = np.asarray(require("temperature", temp_c, -50, 100, unit="°C")) - datum
    left, right = excess[..., :-1], excess[..., 1:]
    above = np.maximum(left, 0) + np.maximum(right, 0)
    span = np.maximum(np.abs(left) + np.abs(right), 1e-300)  # a piece lying on the datum counts nothing
    # With both ends above, above == span and the share is 1; with one below, it is the part above.
    return np.sum(steps * above / 2 * above / span, axis=-1)


def age_for_maturity_h(maturity_c_h, temp_c, datum_c):
    """Time at one temperature that reaches a wanted temperature-time factor.

    Not for a swinging temperature: sum the steps instead.

    Parameters
    ----------
    maturity_c_h : float or array
        Wanted temperature-time factor, measured with the same datum [°C h].
    temp_c : float or array
        Temperature of the concrete, above the datum [°C].
    datum_c : float
        Datum [°C].

    Returns
    -------
    float or array
        Age [h].

    Raises
    ------
    ValueError
        When the temperature is not above the datum: then it is never reached.

    Notes
    -----
    The inverse of `temperature_time_c_h` for one step.

    Examples
    --------
    >>> round(age_for_maturity_h(3500.0, 23.0, 0.0), 4)
    152.1739

    References
    ----------
    Form of ASTM C1074, from memory.
    """
    wanted = require("temperature-time factor", maturity_c_h, 0, unit="°C h")
    datum = require("datum", datum_c, -30, 20, unit="°C")
    temp = require("temperature", temp_c, datum, 100, unit="°C", low_open=True)
    return wanted / (temp - datum)


def en_rate_factor(temp_c):
    """How fast concrete ages at a temperature, against 20 C, by EN 1992-1-1.

    The name of the same quantity with another activation energy is `setting.rate_factor`: use that
    one for setting, this one only together with the EN 1992 strength curve.

    Parameters
    ----------
    temp_c : float or array
        Temperature of the concrete [°C].

    Returns
    -------
    float or array
        Hours of age gained in an hour; valid range `EN_VALID_TEMP_C` [-].

    Raises
    ------
    ValueError
        When the temperature is not a possible one.

    Notes
    -----
    exp(13.65 - 4000/(273 + T)); 4000 K is an activation energy of 33.3 kJ/mol. With the printed
    rounding it gives 0.9983 and not 1 at 20 C.

    Examples
    --------
    >>> round(float(en_rate_factor(30.0)), 6)
    1.566243

    References
    ----------
    EN 1992-1-1:2004, B.1(3), equation (B.10).
    """
    temp = require("temperature", temp_c, -50, 100, unit="°C")
    return np.exp(13.65 - 4000.0 / (273.0 + temp))


def en_adjusted_age_h(time_h, temp_c):
    """Temperature-adjusted age of EN 1992-1-1 of a history given as steps.

    Use it only with the EN 1992 strength and creep curves, for which it was fitted.

    Parameters
    ----------
    time_h : float or array (..., n)
        Length of each step [h].
    temp_c : float or array (..., n)
        Mean temperature of the concrete in each step [°C].

    Returns
    -------
    float or array (...)
        Age at 20 C that is worth the same, summed over the last axis [h].

    Raises
    ------
    ValueError
        When a length is negative or a temperature is not a possible one.

    Notes
    -----
    The structuralcodes package gives the same numbers (its `t_T`, in days).

    Examples
    --------
    >>> round(float(en_adjusted_age_h(24.0, 30.0)) / 24, 6)
    1.566243

    References
    ----------
    EN 1992-1-1:2004, B.1(3), equation (B.10).
    """
    hours = require("length of a step", time_h, 0, unit="h")
    return _total(en_rate_factor(temp_c) * hours)


def _excess_c(temp_c, datum_c):
    temp = require("temperature", temp_c, -50, 100, unit="°C")
    datum = require("datum", datum_c, -30, 20, unit="°C")
    return np.maximum(temp - datum, 0.0)


def _total(pieces):
    return np.sum(pieces, axis=-1) if np.ndim(pieces) else pieces
