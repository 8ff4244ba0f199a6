"""Slips with doses, ratios, allowances and temperatures."""

from shop_calc.lesson.slips.making import Slip, times, with_number


def percent_of_bag_not_cement(
    share, hint="Percent of what? The dose is given on the cement, not on the whole bag."
):
    """A dose taken of the whole bag instead of the cement in it.

    Parameters
    ----------
    share : str
        The number that is the cement share of the bag [-].
    hint : str
        The way back [-].

    Returns
    -------
    Slip
        For a `Question` whose answer is proportional to the share [-].

    Examples
    --------
    >>> percent_of_bag_not_cement("s").wrong(lambda s: 40.0 * s, {"s": 0.25})
    40.0

    References
    ----------
    Common practice, no source.
    """
    return with_number(lambda numbers: {share: 1.0}, "percent of bag not cement", hint)


def percent_not_turned(hint="Per cent means out of a hundred: 5 % of 200 is 10."):
    """Percent used as if it were the number itself.

    Parameters
    ----------
    hint : str
        The way back [-].

    Returns
    -------
    Slip
        For a `Question` whose answer is proportional to one percentage [-].

    Examples
    --------
    >>> percent_not_turned().wrong(lambda: 0.05, {})
    5.0

    References
    ----------
    Common practice, no source.
    """
    return times(100.0, "percent not turned", hint)


def ratio_upside_down(
    ratio, hint="Which of the two is larger in the shop? Put that one on top and look again."
):
    """Multiplied where it should be divided, or the other way round.

    Parameters
    ----------
    ratio : str
        The number that is the ratio [-].
    hint : str
        The way back [-].

    Returns
    -------
    Slip
        For a `Question` [-].

    Examples
    --------
    >>> ratio_upside_down("r").wrong(lambda r: 10 * r, {"r": 0.5})
    20.0

    References
    ----------
    Common practice, no source.
    """
    return with_number(lambda numbers: {ratio: 1.0 / numbers[ratio]}, "ratio upside down", hint)


def waste_forgotten(allowance, hint="What stays in the bucket and on the screed? It has to be mixed too."):
    """Net amount given where the allowance belongs on top.

    Parameters
    ----------
    allowance : str
        The number that is the allowance [-].
    hint : str
        The way back [-].

    Returns
    -------
    Slip
        For a `Question` [-].

    Examples
    --------
    >>> waste_forgotten("w").wrong(lambda w: 10 * (1 + w), {"w": 0.25})
    10.0

    References
    ----------
    Common practice, no source.
    """
    return with_number(lambda numbers: {allowance: 0.0}, "waste forgotten", hint)


def waste_taken_off(allowance, hint="Does an allowance make the amount larger or smaller?"):
    """Allowance subtracted where it should be added.

    Parameters
    ----------
    allowance : str
        The number that is the allowance [-].
    hint : str
        The way back [-].

    Returns
    -------
    Slip
        For a `Question` [-].

    Examples
    --------
    >>> waste_taken_off("w").wrong(lambda w: 10 * (1 + w), {"w": 0.25})
    7.5

    References
    ----------
    Common practice, no source.
    """
    return with_number(lambda numbers: {allowance: -numbers[allowance]}, "waste taken off", hint)


def plain_mass_average(parts, hint="A pound of water holds four to five times the heat of a pound of sand."):
    """Temperatures averaged by mass alone, as if water held no more heat than stone.

    Parameters
    ----------
    parts : tuple of (str, str)
        Names of mass and temperature of each part [-].
    hint : str
        The way back [-].

    Returns
    -------
    Slip
        For a `Question` that asks for the temperature of a mix [-].

    Examples
    --------
    >>> slip = plain_mass_average((("m_kg", "a_c"), ("w_kg", "b_c")))
    >>> slip.wrong(None, {"m_kg": 3.0, "a_c": 20.0, "w_kg": 1.0, "b_c": 0.0})
    15.0

    References
    ----------
    Common practice, no source.
    """

    def wrong(answer, numbers):
        total = sum(numbers[mass] for mass, _ in parts)
        return sum(numbers[mass] * numbers[temperature] for mass, temperature in parts) / total

    return Slip("plain mass average", wrong, hint)


def fahrenheit_for_celsius(name, hint="Which scale is that number on? Name it beside every temperature."):
    """A temperature in °F put in where °C belongs.

    Parameters
    ----------
    name : str
        The number that is a temperature [-].
    hint : str
        The way back [-].

    Returns
    -------
    Slip
        For a `Question` [-].

    Examples
    --------
    >>> fahrenheit_for_celsius("t_c").wrong(lambda t_c: t_c, {"t_c": 10.0})
    50.0

    References
    ----------
    Common practice, no source.
    """
    return with_number(lambda numbers: {name: 1.8 * numbers[name] + 32.0}, "Fahrenheit for Celsius", hint)
