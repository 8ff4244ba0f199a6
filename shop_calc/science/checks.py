"""One wording for impossible input: which entry, what was given, what is allowed."""

import numpy as np


def allowed(low=None, high=None, unit="", *, low_open=False, high_open=False):
    """Say a range in words.

    Parameters
    ----------
    low, high : float or None
        Ends of the range, in `unit` [any unit].
    unit : str
        Unit as a person reads it; empty for pure numbers [-].
    low_open, high_open : bool
        True when the end itself is not allowed [-].

    Returns
    -------
    str
        "more than 0 and at most 5 kg" and the like [-].

    Examples
    --------
    >>> allowed(0, 5, "kg", low_open=True)
    'more than 0 and at most 5 kg'

    References
    ----------
    Common practice, no source.
    """
    parts = []
    if low is not None:
        parts.append(f"{'more than' if low_open else 'at least'} {low:g}")
    if high is not None:
        parts.append(f"{'less than' if high_open else 'at most'} {high:g}")
    words = " and ".join(parts) or "any number"
    return f"{words} {unit}".strip()


def require(name, value, low=None, high=None, *, unit="", low_open=False, high_open=False):
    """Return `value` as float or array, or say clearly what is wrong with it.

    Parameters
    ----------
    name : str
        The entry in shop words, as the message will call it [-].
    value : float or array
        What was given [any unit].
    low, high : float or None
        Ends of the allowed range [unit of value].
    unit : str
        Unit for the message [-].
    low_open, high_open : bool
        True when the end itself is not allowed [-].

    Returns
    -------
    float or ndarray
        The same numbers, ready to calculate with [unit of value].

    Raises
    ------
    ValueError
        When any number is missing, not finite, or outside the range.

    Examples
    --------
    >>> require("mass", 2.5000, 0, unit="kg")
    2.5

    References
    ----------
    Common practice, no source.
    """
    try:
        numbers = np.asarray(value, dtype=float)
    except (TypeError, ValueError):
        raise ValueError(f"{name}: {value!r} given; it must be a number") from None
    if np.isscalar(value) or numbers.ndim == 0:  # the common case in a slider, kept cheap
        number = float(numbers)
        bad = not np.isfinite(number)
        bad = bad or (low is not None and (number < low or (low_open and number == low)))
        bad = bad or (high is not None and (number > high or (high_open and number == high)))
        wrong, result = number, number
    else:
        mask = ~np.isfinite(numbers)
        if low is not None:
            mask |= (numbers <= low) if low_open else (numbers < low)
        if high is not None:
            mask |= (numbers >= high) if high_open else (numbers > high)
        bad = bool(mask.any())
        wrong, result = (float(numbers[mask].flat[0]) if bad else 0.0), numbers
    if bad:
        limits = allowed(low, high, unit, low_open=low_open, high_open=high_open)
        raise ValueError(f"{name}: {wrong:g} {unit} given; it must be {limits}".replace("  ", " "))
    return result


def one_each(name, value, masses):
    """Return `value` as an array, or say that its list does not fit the list of masses.

    Parameters
    ----------
    name : str
        The entry in shop words, plural [-].
    value : float or array, shape (..., n)
        One value for all masses, or one for each along the last axis [any unit].
    masses : array, shape (..., n)
        The masses that the values belong to [kg].

    Returns
    -------
    ndarray
        The same values [unit of value].

    Raises
    ------
    ValueError
        When there are several values, but not one for each mass: broadcasting would count a mass twice.

    Examples
    --------
    >>> one_each("relative densities", [3.15, 2.65], [80.0, 100.0])
    array([3.15, 2.65])

    References
    ----------
    Common practice, no source.
    """
    value, count = np.atleast_1d(value), np.atleast_1d(masses).shape[-1]
    if value.shape[-1] not in (1, count):
        raise ValueError(f"{name}: {value.shape[-1]} given for {count} masses; there must be one for each")
    return value
