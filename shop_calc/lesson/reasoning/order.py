"""Steps to put in order."""

import hashlib

from shop_calc.lesson.question import Question
from shop_calc.lesson.slips import word


def _moved(steps, step, before):
    others = [each for each in steps if each != step]
    others.insert(others.index(before), step)
    return tuple(others)


def _scrambled(id, steps):
    """An order for the page that does not give the right one away, the same on every machine."""
    for attempt in range(100):
        mixed = tuple(sorted(steps, key=lambda step: hashlib.sha256(f"{id}|{step}|{attempt}".encode()).digest()))
        if mixed != steps:
            break
    return mixed


def order_steps(id, text, steps, early, hints):
    """Make a question that asks to put steps in order.

    Parameters
    ----------
    id : str
        Short name, unique in its lesson [-].
    text : str
        The question [-].
    steps : sequence of str
        The steps in their right order, at least three [-].
    early : sequence of (str, str, str)
        Foreseen slips: a step, the one before which it is put too early, and the hint that leads back [-].
    hints : tuple of str
        Two general hints [-].

    Returns
    -------
    Question
        Of kind "order"; the steps stand scrambled on the page [-].

    Raises
    ------
    ValueError
        When there are too few steps, one stands twice, or a slip leaves the order as it is.

    Examples
    --------
    >>> question = order_steps("day", "In order?", ("screed", "float", "steel"),
    ...     [("steel", "float", "What does steel close?")], ("Wet first.", "Hard last."))
    >>> question.answer(), question.slips[0].name
    (('screed', 'float', 'steel'), 'screed, steel, float')

    References
    ----------
    Common practice, no source.
    """
    steps = tuple(steps)
    if len(steps) < 3 or len(set(steps)) != len(steps):
        raise ValueError(f"question {id}: {len(set(steps))} different steps given; at least three, each once")
    slips = []
    for step, before, hint in early:
        if step not in steps or before not in steps or steps.index(step) <= steps.index(before):
            raise ValueError(f"question {id}: {step!r} before {before!r} is no slip in this order")
        slips.append(word(_moved(steps, step, before), hint))
    return Question(
        id, text, lambda: steps, "order", slips=tuple(slips), hints=tuple(hints), choices=_scrambled(id, steps)
    )
