"""What a slip is, and four ways to make one."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Slip:
    """A wrong way that people take, and the hint that leads back.

    Parameters
    ----------
    name : str
        What went wrong, in a few words; for tests and for the instructor [-].
    wrong : callable
        `wrong(answer, numbers)` gives the wrong value; `answer` is the right function [SI, or words].
    hint : str
        A question or a pointer; never the number itself [-].

    Examples
    --------
    >>> Slip("twice", lambda answer, numbers: 2 * answer(**numbers), "Count the faces.").name
    'twice'

    References
    ----------
    Common practice, no source.
    """

    name: str
    wrong: object
    hint: str


def times(factor, name, hint):
    """Make the slip of an answer that is a fixed multiple of the right one.

    Parameters
    ----------
    factor : float
        Wrong over right [-].
    name, hint : str
        What went wrong, and the way back [-].

    Returns
    -------
    Slip
        For a `Question` [-].

    Examples
    --------
    >>> times(2, "twice", "Count again.").wrong(lambda: 3.0, {})
    6.0

    References
    ----------
    Common practice, no source.
    """
    return Slip(name, lambda answer, numbers: answer(**numbers) * factor, hint)


def with_number(changes, name, hint):
    """Make the slip of the right sum with wrong numbers in it.

    Parameters
    ----------
    changes : callable
        `changes(numbers)` gives a dict of the numbers that are taken wrongly [SI].
    name, hint : str
        What went wrong, and the way back [-].

    Returns
    -------
    Slip
        For a `Question` [-].

    Examples
    --------
    >>> with_number(lambda n: {"a": n["a"] / 2}, "half", "All of it.").wrong(lambda a: a, {"a": 3.0})
    1.5

    References
    ----------
    Common practice, no source.
    """
    return Slip(name, lambda answer, numbers: answer(**{**numbers, **changes(numbers)}), hint)


def by(wrong, name, hint):
    """Make a slip with a sum of its own.

    Parameters
    ----------
    wrong : callable
        `wrong(**numbers)`: the wrong sum [SI].
    name, hint : str
        What went wrong, and the way back [-].

    Returns
    -------
    Slip
        For a `Question` [-].

    Examples
    --------
    >>> by(lambda a: a + 1, "one more", "Count the gaps.").wrong(None, {"a": 3.0})
    4.0

    References
    ----------
    Common practice, no source.
    """
    return Slip(name, lambda answer, numbers: wrong(**numbers), hint)


def word(choice, hint):
    """Make the slip of a wrong word, or of a wrong order of words.

    Parameters
    ----------
    choice : str or tuple of str
        The wrong word, or the words in a wrong order [-].
    hint : str
        The way back [-].

    Returns
    -------
    Slip
        For a `Question` of kind "choice" or "order" [-].

    Examples
    --------
    >>> word("open", "What does the wind do?").wrong(None, {})
    'open'

    References
    ----------
    Common practice, no source.
    """
    name = choice if isinstance(choice, str) else ", ".join(choice)
    return Slip(name, lambda answer, numbers: choice, hint)
