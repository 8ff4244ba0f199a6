"""Slips with sizes, counts and signs."""

from math import prod

from shop_calc.lesson.slips.making import Slip, times, with_number


def inch_for_foot(power=1, hint="Are all sizes in the same unit? An inch is a twelfth of a foot."):
    """Inches used where feet belong: twelve times too much, once for each size left in inches.

    Parameters
    ----------
    power : int
        How many sizes were left in inches [-].
    hint : str
        The way back [-].

    Returns
    -------
    Slip
        For a `Question` [-].

    Examples
    --------
    >>> inch_for_foot().wrong(lambda: 2.0, {})
    24.0

    References
    ----------
    Common practice, no source.
    """
    return times(12.0**power, "inch for foot", hint)


def radius_for_diameter(name, hint="A hole is ordered by its diameter. Does your sum want the radius?"):
    """Diameter put in where the radius belongs.

    Parameters
    ----------
    name : str
        The number that is a diameter [-].
    hint : str
        The way back [-].

    Returns
    -------
    Slip
        For a `Question` [-].

    Examples
    --------
    >>> round(radius_for_diameter("d_m").wrong(lambda d_m: 3.14159 / 4 * d_m**2, {"d_m": 1.0}), 5)
    3.14159

    References
    ----------
    Common practice, no source.
    """
    return with_number(lambda numbers: {name: 2 * numbers[name]}, "radius for diameter", hint)


def one_side_forgotten(name, hint="How many edges will be seen? Walk round the piece with a finger."):
    """One exposed edge too few.

    Parameters
    ----------
    name : str
        The number that counts the edges [-].
    hint : str
        The way back [-].

    Returns
    -------
    Slip
        For a `Question` [-].

    Examples
    --------
    >>> one_side_forgotten("ends").wrong(lambda ends: 5.0 * ends, {"ends": 2})
    5.0

    References
    ----------
    Common practice, no source.
    """
    return with_number(lambda numbers: {name: numbers[name] - 1}, "one side forgotten", hint)


def left_out(name, hint, value=0.0):
    """One part forgotten: a side, a layer, the water in the sand.

    Parameters
    ----------
    name : str
        The number that was left out [-].
    hint : str
        The way back [-].
    value : float
        What stands in its place [SI].

    Returns
    -------
    Slip
        For a `Question` [-].

    Examples
    --------
    >>> left_out("b", "Count the ends.").wrong(lambda a, b: a + b, {"a": 1.0, "b": 2.0})
    1.0

    References
    ----------
    Common practice, no source.
    """
    return with_number(lambda numbers: {name: value}, f"{name} left out", hint)


def swapped(first, second, hint="Which number belongs to which? Say each with its name."):
    """Two numbers in each other's place.

    Parameters
    ----------
    first, second : str
        Names of the two [-].
    hint : str
        The way back [-].

    Returns
    -------
    Slip
        For a `Question` [-].

    Examples
    --------
    >>> swapped("a", "b").wrong(lambda a, b: a - b, {"a": 3.0, "b": 1.0})
    -2.0

    References
    ----------
    Common practice, no source.
    """
    return with_number(lambda n: {first: n[second], second: n[first]}, f"{first} and {second} swapped", hint)


def sign_flipped(hint="Which way round? Say in words whether it should grow or shrink."):
    """Right size, wrong sign.

    Parameters
    ----------
    hint : str
        The way back [-].

    Returns
    -------
    Slip
        For a `Question` [-].

    Examples
    --------
    >>> sign_flipped().wrong(lambda: 3.0, {})
    -3.0

    References
    ----------
    Common practice, no source.
    """
    return times(-1.0, "sign flipped", hint)


def added_not_multiplied(names, hint="Do these add up, or does one act on the other?"):
    """Numbers added where they should be multiplied.

    Parameters
    ----------
    names : tuple of str
        The numbers in question; the answer is proportional to their product [-].
    hint : str
        The way back [-].

    Returns
    -------
    Slip
        For a `Question` [-].

    Examples
    --------
    >>> added_not_multiplied(("a", "b")).wrong(lambda a, b: a * b, {"a": 2.0, "b": 5.0})
    7.0

    References
    ----------
    Common practice, no source.
    """

    def wrong(answer, numbers):
        values = [numbers[name] for name in names]
        return answer(**numbers) / prod(values) * sum(values)

    return Slip("added not multiplied", wrong, hint)
