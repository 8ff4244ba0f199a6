"""Setting by equivalent age: temperature speeds the clock, a power law of that clock gives the resistance.

Valid for the late clock only, which starts when water meets cement: a power law is zero at time zero and says
nothing about the soft stage before the first reading.
"""

import numpy as np

from shop_calc.science.checks import require

KELVIN = 273.15
GAS_CONSTANT_J_MOL_K = 8.314462618  # SI definition

#: Reference temperature of equivalent ages, 70 °F rounded [°C]. Judgement.
REFERENCE_TEMP_C = 21.0

#: Temperatures over which one activation energy is a fair picture [°C]; above 30 °C sources disagree by 20
#: to 30 %.
VALID_TEMP_C = (5.0, 30.0)

_PA_PER_PSI = 6894.757293168361
INITIAL_SET_PA = 500 * _PA_PER_PSI  # ASTM C403: penetration resistance at initial set, 500 psi
FINAL_SET_PA = 4000 * _PA_PER_PSI  # ASTM C403: at final set, 4000 psi


def rate_factor(temp_c, activation_energy_j_mol, reference_temp_c=REFERENCE_TEMP_C):
    """How many times faster setting runs than at the reference temperature.

    Parameters
    ----------
    temp_c : float or array
        Temperature of the mix [°C].
    activation_energy_j_mol : float or array
        Activation energy E [J/mol].
    reference_temp_c : float or array
        Temperature at which the factor is 1 [°C].

    Returns
    -------
    float or array
        Rate over the rate at the reference temperature [-].

    Raises
    ------
    ValueError
        When a temperature is outside -50 to 100 °C or the energy below 0.

    Notes
    -----
    `exp(-(E/R)(1/T - 1/Tr))`. Heat rates of portland paste at 10, 20 and 35 °C give E 36.5 to 37.3 kJ/mol;
    trade rules and surveys of set times 28 to 47. Fair over VALID_TEMP_C.

    Examples
    --------
    >>> f"{rate_factor(30.0, 36000.0):.6g}"
    '1.54806'

    References
    ----------
    Form of ASTM C1074, equivalent age.
    """
    kelvin = require("mix temperature", temp_c, -50, 100, unit="°C") + KELVIN
    reference = require("reference temperature", reference_temp_c, -50, 100, unit="°C") + KELVIN
    energy = require("activation energy", activation_energy_j_mol, 0, unit="J/mol")
    return np.exp(energy / GAS_CONSTANT_J_MOL_K * (1 / reference - 1 / kelvin))


def equivalent_age_h(time_h, temp_c, activation_energy_j_mol, reference_temp_c=REFERENCE_TEMP_C):
    """Age at the reference temperature that would set the mix as far as a record of temperatures has.

    For temperatures read now and then, straight between the readings. For a list of periods, each at one
    temperature, use `equivalent_age_of_periods_h`.

    Parameters
    ----------
    time_h : array, shape (n,)
        Times of the readings, rising [h].
    temp_c : array, shape (n, ...)
        Temperature of the mix at these times [°C].
    activation_energy_j_mol : float or array
        Activation energy E [J/mol].
    reference_temp_c : float or array
        Reference temperature [°C].

    Returns
    -------
    array, shape (n, ...)
        Equivalent age since the first reading [h].

    Raises
    ------
    ValueError
        When the times do not rise, or as `rate_factor`.

    Notes
    -----
    Trapezoids of `rate_factor`: with readings 3 °C apart the error is under 0.3 %.

    Examples
    --------
    >>> f"{equivalent_age_h([0.0, 1.0, 2.0], [16.0, 18.0, 20.0], 36000.0)[-1]:.6g}"
    '1.72242'

    References
    ----------
    Form of ASTM C1074.
    """
    times = np.asarray(require("time", time_h, unit="h"))
    spans = np.diff(times)
    require("time between readings", spans, 0, unit="h")
    rate = rate_factor(temp_c, activation_energy_j_mol, reference_temp_c)
    spans = spans.reshape((-1,) + (1,) * (rate.ndim - 1))
    age = np.zeros_like(rate)
    np.cumsum(spans * (rate[1:] + rate[:-1]) / 2, axis=0, out=age[1:])
    return age


def equivalent_age_of_periods_h(
    duration_h, temp_c, activation_energy_j_mol, reference_temp_c=REFERENCE_TEMP_C
):
    """Equivalent age of a list of periods, each at one temperature.

    Parameters
    ----------
    duration_h : float or array, shape (n,)
        Length of each period [h].
    temp_c : array, shape (n,)
        Temperature of each period [°C].
    activation_energy_j_mol : float
        Activation energy E [J/mol].
    reference_temp_c : float
        Reference temperature [°C].

    Returns
    -------
    float
        Equivalent age at the end of the last period [h].

    Raises
    ------
    ValueError
        When a duration is below 0, or as `rate_factor`.

    Examples
    --------
    >>> f"{equivalent_age_of_periods_h(1.0, [24.0, 21.0, 18.0, 16.0], 40000.0, 23.0):.6g}"
    '3.38303'

    References
    ----------
    Form of ASTM C1074.
    """
    duration = require("duration", duration_h, 0, unit="h")
    return np.sum(duration * rate_factor(temp_c, activation_energy_j_mol, reference_temp_c))


def penetration_resistance_pa(equivalent_age_h, initial_set_h, exponent):
    """Penetration resistance at an equivalent age.

    Not for the soft stage: below about 10 psi the real curve is flatter than a power law carried back.

    Parameters
    ----------
    equivalent_age_h : float or array
        Equivalent age since water met cement [h].
    initial_set_h : float or array
        Equivalent age at 500 psi [h].
    exponent : float or array
        Exponent b, 5.5 to 8.5 for common mixes [-].

    Returns
    -------
    float or array
        Penetration resistance [Pa].

    Raises
    ------
    ValueError
        When the age is below 0, or set time or exponent not above 0.

    Notes
    -----
    `PR = 500 psi (te/ti)^b`.

    Examples
    --------
    >>> f"{penetration_resistance_pa(2.5, 3.4, 7.0):.6g}"
    '400605'

    References
    ----------
    ASTM C403/C403M for the limits of 500 and 4000 psi; the power law is its log-log plot.
    """
    age = require("equivalent age", equivalent_age_h, 0, unit="h")
    return INITIAL_SET_PA * (age / _set_time(initial_set_h)) ** _exponent(exponent)


def age_at_resistance_h(resistance_pa, initial_set_h, exponent):
    """Equivalent age at which the penetration resistance is reached.

    Parameters
    ----------
    resistance_pa : float or array
        Penetration resistance [Pa].
    initial_set_h : float or array
        Equivalent age at 500 psi [h].
    exponent : float or array
        Exponent b [-].

    Returns
    -------
    float or array
        Equivalent age since water met cement [h].

    Raises
    ------
    ValueError
        When the resistance is below 0, or set time or exponent not above 0.

    Examples
    --------
    >>> f"{age_at_resistance_h(275790.0, 3.4, 7.0):.6g}"
    '2.37016'

    References
    ----------
    `penetration_resistance_pa` turned round.
    """
    resistance = require("penetration resistance", resistance_pa, 0, unit="Pa")
    return _set_time(initial_set_h) * (resistance / INITIAL_SET_PA) ** (1 / _exponent(exponent))


def exponent_from_set_times(initial_h, final_h):
    """Exponent of the power law from the two set times.

    Parameters
    ----------
    initial_h : float or array
        Time at 500 psi [h].
    final_h : float or array
        Time at 4000 psi, later [h].

    Returns
    -------
    float or array
        Exponent b [-].

    Raises
    ------
    ValueError
        When the final set does not come after the initial set.

    Notes
    -----
    `b = ln 8/ln(tf/ti)`.

    Examples
    --------
    >>> f"{exponent_from_set_times(3.4, 4.6):.6g}"
    '6.87917'

    References
    ----------
    Derived from the limits of ASTM C403/C403M.
    """
    ratio = require("final set over initial set", final_h / _set_time(initial_h), 1, low_open=True)
    return np.log(FINAL_SET_PA / INITIAL_SET_PA) / np.log(ratio)


def _set_time(initial_set_h):
    """A checked set time."""
    return require("initial set", initial_set_h, 0, unit="h", low_open=True)


def _exponent(exponent):
    """A checked exponent."""
    return require("set exponent", exponent, 0, low_open=True)
