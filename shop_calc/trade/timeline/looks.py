"""Re-planning: what was seen at the bench tightens every later window at once."""

from dataclasses import dataclass, replace

import numpy as np

from shop_calc.trade.advice import Advice
from shop_calc.trade.timeline.day import EARLY_SHARE, LATE_SHARE, Day, read_day
from shop_calc.trade.timeline.look import CUES, look_h, look_words, not_yet, rod_reading, seen, thumb_print
from shop_calc.trade.timeline.look_fit import gather
from shop_calc.trade.timeline.look_weights import weigh_days
from shop_calc.trade.timeline.stages import ORDER
from shop_calc.trade.timeline.weighted_days import quantile

__all__ = ["Replan", "not_yet", "replan", "rod_reading", "seen", "thumb_print"]

FAR_SHIFT = 2.0  # judgement: beyond this deviation of its band the initial set is worth a word


@dataclass(frozen=True)
class Replan:
    """The day after the looks, beside the day before them.

    Parameters
    ----------
    day : Day
        Re-planned, every window at once [h].
    before : Day
        As it stood [h].
    opening_before_h, opening_after_h : dict of str to (float, float, float)
        5 %, 50 % and 95 % points of the opening of each stage with a cue [h].
    effective_days : float
        Number of equal days that the weighted days are worth [-].
    clashes : tuple of (Look, Look)
        Looks that contradict each other [-].
    left_out : tuple of Look
        Looks not used for that: both of a pair, or the one that contradicts several others [-].
    marks : tuple of (str, float, bool)
        Looks at cues as the ribbon of the day draws them: stage, hour, whether it was there [-, h, -].
    advice : tuple of Advice
        What changed, what does not fit [-].

    Examples
    --------
    >>> from datetime import datetime
    >>> from shop_calc.trade.timeline.day import DayInputs, plan_day
    >>> from shop_calc.trade.timeline.room import steady_room
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> result = replan(plan_day(inputs), (not_yet(2.25, "strip"), seen(2.75, "strip")))
    >>> result.band_h("first_steel") < 0.75 * result.band_before_h("first_steel")
    True

    References
    ----------
    Common practice, no source.
    """

    day: Day
    before: Day
    opening_before_h: dict
    opening_after_h: dict
    effective_days: float
    clashes: tuple
    left_out: tuple
    marks: tuple
    advice: tuple

    def band_h(self, stage):
        """Width of the opening of a stage after the looks, 5 to 95 % [h]."""
        return self.opening_after_h[stage][2] - self.opening_after_h[stage][0]

    def band_before_h(self, stage):
        """Width of the opening of a stage before the looks, 5 to 95 % [h]."""
        return self.opening_before_h[stage][2] - self.opening_before_h[stage][0]


def replan(day, looks):
    """Plan the rest of the day from what was seen.

    Give all looks of the day each time; the order does not matter.

    Parameters
    ----------
    day : Day or DaySamples
        The day as planned, or its days [h].
    looks : sequence of Look
        What was seen since the first water [as its fields].

    Returns
    -------
    Replan
        The new day, the old one, and what changed [as its fields].

    Raises
    ------
    ValueError
        When a look is before the first water or four days after it.

    Examples
    --------
    >>> from datetime import datetime
    >>> from shop_calc.trade.timeline.day import DayInputs, plan_day
    >>> from shop_calc.trade.timeline.room import steady_room
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> day = plan_day(inputs)
    >>> result = replan(day, (seen(2.25, "strip"), not_yet(2.75, "strip")))
    >>> result.advice[0].text
    'Look again, these two cannot both be: cue for "Sides off, patch the edges" seen at 10:15; \
cue for "Sides off, patch the edges" not yet there at 10:45.'

    Notes
    -----
    Every one of the 500 days is weighed by how well it explains the looks: interval-censored between "not yet" and
    "seen", a normal scatter in the logarithm of resistance. The early edge of every window keeps evaporative
    cooling out, and weighs its days so: what the looks already show of the day is not counted a second time.

    References
    ----------
    Bayes' rule; scatters in data/defaults.csv, judgement.
    """
    samples = day.samples if isinstance(day, Day) else day
    before = day if isinstance(day, Day) else read_day(samples)
    looks = tuple(looks)
    hours = tuple(look_h(look, samples.inputs.water_in) for look in looks)
    evidence = gather(looks, hours)
    if not evidence.between and not evidence.readings:
        opening = _opening(before.samples, before.weight)
        result = Replan(
            before, before, opening, opening, 1.0 / float((before.weight**2).sum()), *_clashes(looks, evidence), (), ()
        )
        return replace(result, advice=_clash_advice(result, samples.inputs.water_in))
    weighted = weigh_days(samples, evidence)
    after = _no_look_back(read_day(weighted.samples, *weighted.weight), looks, hours, evidence.left_out)
    at_cues = ((look, at) for look, at in zip(looks, hours, strict=True) if look.stage)
    marks = tuple((look.stage, at, look.kind == "seen") for look, at in at_cues)
    result = Replan(
        after, before, _opening(before.samples, before.weight), _opening(after.samples, after.weight),
        weighted.effective_days, *_clashes(looks, evidence), marks, (),
    )  # fmt: skip
    poor = tuple(looks[number] for number in weighted.poor)
    return replace(result, advice=_advice(result, weighted, poor))


def _clashes(looks, evidence):
    """Pairs of looks that contradict each other, and the looks left out for it."""
    pairs = tuple((looks[a], looks[b]) for a, b in evidence.clashes)
    return pairs, tuple(looks[number] for number in sorted(evidence.left_out))


def _opening(samples, weight):
    """5, 50 and 95 % points of the opening of every stage with a cue."""
    keys = tuple(CUES)
    stack = np.array([samples.open_h[key] for key in keys])
    points = np.stack([quantile(stack, weight, share) for share in (EARLY_SHARE, 0.5, LATE_SHARE)], axis=1)
    return {key: tuple(float(value) for value in row) for key, row in zip(keys, points, strict=True)}


def _no_look_back(day, looks, hours, out):
    """Nobody looks for a stage before the look that did not find it, or that found an earlier one."""
    earliest = dict.fromkeys(ORDER, 0.0)
    for number, (look, at) in enumerate(zip(looks, hours, strict=True)):
        if look.stage and number not in out:
            for key in ORDER[ORDER.index(look.stage) + (look.kind == "seen") :]:
                earliest[key] = max(earliest[key], at)
    stages = tuple(
        replace(stage, look_from_h=min(max(stage.look_from_h, earliest[stage.key]), stage.likely_from_h))
        for stage in day.stages
    )
    return replace(day, stages=stages)


def _advice(result, weighted, poor):
    lines = list(_clash_advice(result, result.day.water_in))
    if poor:
        words = "; ".join(look_words(look, result.day.water_in) for look in poor)
        lines.append(
            Advice(
                "act", "looks", f"Look again, this hardly fits the rest: {words}. Check hour, layer and unit.",
                "No mortar explains it well together with the others; all looks count as twice as rough, and the "
                "windows stay wider.", "derived", "weights of the 500 days",
            )
        )  # fmt: skip
    if weighted.softened < 1.0:
        lines.append(
            Advice(
                "act", "looks", "These looks do not fit one mortar: the windows are kept wide. Look again, and check "
                "hours, layer and units of the readings.",
                f"Only {weighted.effective_days:.0f} of the days are left after counting each look for "
                f"{weighted.softened:.2f} of its worth.", "derived", "effective number of weighted samples",
            )
        )  # fmt: skip
    if abs(weighted.shift) > FAR_SHIFT:
        pace = "slower" if weighted.shift > 0 else "faster"
        lines.append(
            Advice(
                "act", "looks", f"Today's mortar is far {pace} than planned. The rest of the day follows the looks; "
                "check mix temperature, water, reducer and retarder, and write it in the log.",
                f"Its initial set lies {abs(weighted.shift):.1f} deviations from the middle of the plan.", "derived",
                "bands of data/defaults.csv or of the log",
            )
        )  # fmt: skip
    old, new = (plan.stage("first_steel") for plan in (result.before, result.day))
    lines.append(
        Advice(
            "note", "first_steel",
            f"First steel likely from {result.day.clock(new.likely_from_h):%H:%M}, before the looks "
            f"{result.before.clock(old.likely_from_h):%H:%M}.",
            f"Nine days of ten open within {result.band_h('first_steel') * 60:.0f} min, before the looks "
            f"{result.band_before_h('first_steel') * 60:.0f}.", "derived", "weights of the 500 days",
        )
    )  # fmt: skip
    return tuple(lines)


def _clash_advice(result, water_in):
    return tuple(
        Advice(
            "act", "looks",
            f"Look again, these two cannot both be: {look_words(a, water_in)}; {look_words(b, water_in)}.",
            "Mortar does not get softer. " + (
                "Neither of the two is used until one is taken back." if {a, b} <= set(result.left_out) else
                f"Not used: {look_words(a if a in result.left_out else b, water_in)}, which contradicts others, too."
            ), "derived", "resistance never falls; scatters of data/defaults.csv",
        )
        for a, b in result.clashes
    )  # fmt: skip
