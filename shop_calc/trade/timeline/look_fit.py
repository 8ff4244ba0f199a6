"""What looks say about resistance, as numbers: intervals between "not yet" and "seen", and readings with scatter.

The same few lines serve the day that is re-planned at the bench and the log that is fitted afterwards.
"""

from dataclasses import dataclass

import numpy as np

from shop_calc import defaults
from shop_calc.trade.timeline.look import CUES
from shop_calc.trade.timeline.rod import print_resistance_pa


@dataclass(frozen=True)
class Between:
    """A resistance, or an early cue, that came after one look and before another.

    Parameters
    ----------
    name : str
        Stage of the cue, or "soft" and "faint" for readings that only bound [-].
    layer : str
        "face", "base", "both" (the slower of the two, and the edge must stand) or "early" [-].
    log_resistance : float or None
        Logarithm of the resistance at which it comes; None for the early cue [-].
    scatter : float
        Standard deviation of the cue, in the logarithm of resistance; for the early cue in hours [-].
    after_h : float or None
        Latest look that did not find it [h].
    before_h : float or None
        Earliest look that found it [h].
    looks : tuple of int
        Numbers of the two looks [-].

    Examples
    --------
    >>> Between("strip", "face", 11.1, 0.4, 2.25, 2.75, (0, 1)).before_h
    2.75

    References
    ----------
    Common practice, no source.
    """

    name: str
    layer: str
    log_resistance: float | None
    scatter: float
    after_h: float | None
    before_h: float | None
    looks: tuple


@dataclass(frozen=True)
class Reading:
    """A resistance read at one hour.

    Parameters
    ----------
    layer : str
        "face" or "base" [-].
    at_h : float
        Hours after the first water [h].
    log_resistance : float
        Logarithm of the resistance in Pa [-].
    scatter : float
        Standard deviation of the logarithm, of this reading alone [-].
    by_rod : bool
        True for the rod, whose readings of one day share an error [-].
    look : int
        Number of the look [-].

    Examples
    --------
    >>> Reading("face", 2.5, 12.0, 0.2, True, 0).by_rod
    True

    References
    ----------
    Common practice, no source.
    """

    layer: str
    at_h: float
    log_resistance: float
    scatter: float
    by_rod: bool
    look: int


@dataclass(frozen=True)
class Evidence:
    """Looks sorted into intervals and readings, and pairs that cannot both be.

    Parameters
    ----------
    between : tuple of Between
        Intervals [as its fields].
    readings : tuple of Reading
        Readings [as its fields].
    clashes : tuple of (int, int)
        Numbers of two looks that contradict each other [-].
    left_out : frozenset of int
        Looks that are not used: both of a pair, or the one that contradicts more others than any of these [-].

    Examples
    --------
    >>> Evidence((), (), (), frozenset()).clashes
    ()

    References
    ----------
    Common practice, no source.
    """

    between: tuple
    readings: tuple
    clashes: tuple
    left_out: frozenset


CLASH_DEVIATIONS = 2.5  # judgement: one pair in a hundred parts so far by scatter alone


def gather(looks, hours):
    """Sort looks into evidence.

    Parameters
    ----------
    looks : sequence of Look
        The looks [as its fields].
    hours : sequence of float
        Their hours after the first water [h].

    Returns
    -------
    Evidence
        Intervals, readings and clashes [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.timeline.look import not_yet, seen
    >>> gather((not_yet(2.25, "strip"), seen(2.75, "strip")), (2.25, 2.75)).between[0].after_h
    2.25
    >>> gather((seen(2.25, "strip"), not_yet(2.75, "strip")), (2.25, 2.75)).clashes
    ((0, 1),)

    Notes
    -----
    Between two looks at one cue the same eye decides, so that its scatter counts once. Two looks clash when one
    says "there" before another says "not yet" of the same cue, or when resistance would have fallen by more than
    CLASH_DEVIATIONS of their scatter.

    References
    ----------
    Scatters: data/defaults.csv.
    """
    facts = [_fact(number, look, hour) for number, (look, hour) in enumerate(zip(looks, hours, strict=True))]
    clashes = tuple(
        (a.look, b.look) if a.at_h <= b.at_h else (b.look, a.look)
        for place, a in enumerate(facts)
        for b in facts[place + 1 :]
        if _clash(a, b)
    )
    out = _left_out(clashes)
    bounds, readings = {}, []
    for fact in facts:
        if fact.look in out:
            continue
        if fact.side == "is":
            readings.append(Reading(fact.layer, fact.at_h, fact.log_resistance, fact.scatter, fact.by_rod, fact.look))
        else:
            bounds.setdefault((fact.name, fact.layer), []).append(fact)
    return Evidence(tuple(_between(facts) for facts in bounds.values()), tuple(readings), clashes, out)


def _left_out(clashes):
    """The fewest looks to leave out: one that contradicts several others goes alone, of a pair go both."""
    out, left = set(), list(clashes)
    while left:
        count = {}
        for number in (number for pair in left for number in pair):
            count[number] = count.get(number, 0) + 1
        worst = max(count, key=count.get)
        others = {number for pair in left if worst in pair for number in pair} - {worst}
        gone = {worst} if all(count[number] < count[worst] for number in others) else {worst, *others}
        out |= gone
        left = [pair for pair in left if not gone & set(pair)]
    return frozenset(out)


@dataclass(frozen=True)
class _Fact:
    """One look as a bound on, or a reading of, the logarithm of resistance."""

    look: int
    at_h: float
    name: str
    layer: str
    side: str  # "below", "above" or "is"
    log_resistance: float | None
    scatter: float
    by_rod: bool = False


def _fact(number, look, hour):
    layer = look.layer or "face"
    if look.kind in ("seen", "not_yet"):
        side = "above" if look.kind == "seen" else "below"
        row = CUES[look.stage]
        if row is None:
            return _Fact(number, hour, look.stage, "early", side, None, defaults.si("early_cue_scatter"))
        layer = look.layer or ("both" if look.stage == "strip" else "face")
        return _Fact(number, hour, look.stage, layer, side, np.log(defaults.si(row)), defaults.si("cue_scatter"))
    softest = defaults.si("power_law_from")
    if look.kind == "rod":
        scatter = defaults.si("rod_scatter")
        if look.resistance_pa < softest:
            return _Fact(number, hour, "soft", layer, "below", np.log(softest), scatter, True)
        return _Fact(number, hour, "rod", layer, "is", np.log(look.resistance_pa), scatter, True)
    scatter, faintest = defaults.si("print_scatter"), defaults.si("print_faintest")
    if look.depth_m > defaults.si("print_deepest"):
        return _Fact(number, hour, "soft", layer, "below", np.log(softest), scatter)
    if look.depth_m < faintest:
        return _Fact(number, hour, "faint", layer, "above", np.log(print_resistance_pa(faintest)), scatter)
    return _Fact(number, hour, "print", layer, "is", np.log(print_resistance_pa(look.depth_m)), scatter)


def _clash(a, b):
    first, later = (a, b) if (a.at_h, a.side == "below") <= (b.at_h, b.side == "below") else (b, a)
    if first.side == "below" or later.side == "above":
        return False
    if (first.name, first.layer) == (later.name, later.layer) and first.side != later.side:
        return True  # one cue, there and gone again
    same = {first.layer, later.layer}
    comparable = len(same) == 1 or (first.layer == "both" and later.layer in ("face", "base"))
    if not comparable or "early" in same:
        return False
    fallen = first.log_resistance - later.log_resistance
    return fallen > CLASH_DEVIATIONS * np.hypot(first.scatter, later.scatter)


def _between(facts):
    after = max((f for f in facts if f.side == "below"), key=lambda f: f.at_h, default=None)
    before = min((f for f in facts if f.side == "above"), key=lambda f: f.at_h, default=None)
    one = after or before
    return Between(
        one.name, one.layer, one.log_resistance, one.scatter,
        after.at_h if after else None, before.at_h if before else None,
        tuple(f.look for f in (after, before) if f),
    )  # fmt: skip
