"""Weights of the five hundred days after looks at the bench, and new days where too few of the old ones fit."""

from dataclasses import dataclass, replace

import numpy as np

from shop_calc import defaults
from shop_calc.science.setting import INITIAL_SET_PA
from shop_calc.trade.timeline.cloud import SAMPLED, cloud_at, day_cloud, deviations
from shop_calc.trade.timeline.day_samples import sample_again
from shop_calc.trade.timeline.early_hours import early_hours
from shop_calc.trade.timeline.look_likelihood import log_between, log_prior_of_set, log_readings
from shop_calc.trade.timeline.set_clock import at_h

ENOUGH_DAYS = 100.0  # judgement: the 5 % point of fewer days wanders by a quarter of the band
POOR_FIT = 0.1  # judgement: a look that comes ten times less often than it should is worth a word
WIDER = 2.0  # judgement: how much more looks scatter that hardly fit one another
FEWEST_DAYS = 40.0  # judgement: below this the looks are softened, and the plan says so
ROUNDS = 10
# What may be drawn anew without stepping the slab again: rows of the deviations, initial set first.
_FREE = tuple(list(SAMPLED).index(name) for name in ("initial_set_h", "exponent", "yield_start_pa", "build_up_pa_s"))
_SET = _FREE[0]
_LEAST_AGE_H = 1e-3
_LEAST_LOG = -1e4
_BAND_END = 1.645  # deviations at the 95 % end of a band


@dataclass(frozen=True)
class Weighted:
    """Days with the weights that the looks leave them.

    Parameters
    ----------
    samples : DaySamples
        The days, new ones where too few of the old fitted [h].
    weight : ndarray of shape (2, days)
        With evaporative cooling and without it, each summing to one [-].
    effective_days : float
        Number of equal days that would be worth as much, the smaller of the two rows [-].
    renewed : bool
        True when new days were drawn [-].
    softened : float
        Power to which the likelihood was taken; 1 unless too few days fitted even then [-].
    shift : float
        How far the middle of initial set moved, in the deviations of its band [-].
    poor : tuple of int
        Numbers of looks that the weighted days explain badly [-].

    Examples
    --------
    >>> Weighted(None, np.ones((2, 1)), 1.0, False, 1.0, 0.0, ()).renewed
    False

    References
    ----------
    Bayes' rule.
    """

    samples: object
    weight: np.ndarray
    effective_days: float
    renewed: bool
    softened: float
    shift: float
    poor: tuple


def weigh_days(samples, evidence):
    """Weigh the days by what was seen.

    Parameters
    ----------
    samples : DaySamples
        The days, equally likely before the looks [h].
    evidence : Evidence
        What was seen [as its fields].

    Returns
    -------
    Weighted
        Days and weights [as its fields].

    Examples
    --------
    >>> from datetime import datetime
    >>> from shop_calc.trade.timeline.day import DayInputs, sample_day
    >>> from shop_calc.trade.timeline.look import not_yet, seen
    >>> from shop_calc.trade.timeline.look_fit import gather
    >>> from shop_calc.trade.timeline.room import steady_room
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> looks = (not_yet(2.25, "strip"), seen(2.75, "strip"))
    >>> weigh_days(sample_day(inputs), gather(looks, (2.25, 2.75))).effective_days > 100
    True

    Notes
    -----
    Importance sampling. Where fewer than ENOUGH_DAYS are left, what does not move the slab's temperature (initial
    set, exponent, early clock) is drawn anew for each day from a normal distribution laid over what is left, and
    weighed by prior times likelihood over that distribution: the answer stays that of Bayes' rule. The other
    quantities of a day keep their draws. The prior of the drawn initial set has a wide part (odd_mix_share): far off,
    the mix is to blame rather than the room. Only where that fails too is the likelihood softened to a power below
    one, which widens every band.

    References
    ----------
    Population Monte Carlo, from memory of Cappe and others 2004; Bayes' rule.
    """
    given = _weigh(samples, evidence, ())
    if not given.poor:
        return given
    # Looks that hardly fit one another scatter more than supposed: count them so, and keep the windows wide.
    return _weigh(samples, _wider(evidence, WIDER), given.poor)


def _wider(evidence, factor):
    def wide(items):
        return tuple(replace(item, scatter=factor * item.scatter) for item in items)

    return replace(evidence, between=wide(evidence.between), readings=wide(evidence.readings))


def _weigh(samples, evidence, poor):
    ages = _Ages(samples, evidence)
    rows = deviations(samples.days, samples.inputs.bands)
    prior = np.log(np.maximum(samples.days.weight, 1e-300))
    fit = prior + ages.log_likelihood(samples.days)
    renewed = False
    for _ in range(ROUNDS):
        if _effective(_normal(fit)) >= ENOUGH_DAYS:
            break
        rows, prior, likelihood = _draw(rows, prior, fit - prior, ages, samples.inputs.bands)
        fit, renewed = prior + likelihood, True
    softened = 1.0 if _effective(_normal(fit)) >= FEWEST_DAYS else _power(prior, fit - prior, FEWEST_DAYS)
    weight = _normal(prior + softened * (fit - prior))
    days = samples.days
    if renewed:
        days = cloud_at(rows, samples.inputs.bands, _normal(prior))
        samples = sample_again(samples, days)
    shift = float((weight[0] * rows[_SET]).sum())
    return Weighted(samples, weight, _effective(weight), renewed, softened, shift, poor or ages.poor(days, weight))


def _normal(log_weight):
    """Weights that sum to one along the last axis."""
    weight = np.exp(log_weight - log_weight.max(axis=-1, keepdims=True))
    return weight / weight.sum(axis=-1, keepdims=True)


def _effective(weight):
    return float((1.0 / (weight**2).sum(axis=-1)).min())


def _power(prior, likelihood, wanted):
    """Largest power of the likelihood, at most 1, that leaves as many effective days as wanted."""
    low, high = 0.0, 1.0
    if _effective(_normal(prior + likelihood)) >= wanted:
        return 1.0
    for _ in range(20):
        middle = (low + high) / 2
        low, high = (middle, high) if _effective(_normal(prior + middle * likelihood)) >= wanted else (low, middle)
    return low


def _draw(rows, prior, likelihood, ages, bands):
    """New days around what the looks leave; rows, log prior weight, log likelihood."""
    fit = prior + likelihood
    power = _power(0.0, fit, ENOUGH_DAYS / 2)  # part of the way when the looks are far off
    weight = _normal(power * fit).mean(axis=0)
    free = rows[list(_FREE)]
    free[0] -= ages.lead  # a warm day and a fast mortar look alike
    middle = (free * weight).sum(axis=1, keepdims=True)
    away = free - middle
    spread = 1.5 * (away * weight) @ away.T + 1e-4 * np.eye(len(_FREE))  # wide, so that no tail is lost
    root = np.linalg.cholesky(spread)
    drawn = middle + root @ ages.normal
    drawn[0] += ages.lead
    new = rows.copy()
    new[list(_FREE)] = drawn
    log_drawn = -0.5 * (ages.normal**2).sum(axis=0) - np.log(np.diag(root)).sum()
    prior = log_prior_of_set(drawn[0]) - 0.5 * (drawn[1:] ** 2).sum(axis=0) - log_drawn
    return new, prior, ages.log_likelihood(cloud_at(new, bands))


class _Ages:
    """Equivalent ages at the looks, which initial set and exponent do not move."""

    def __init__(self, samples, evidence):
        self.samples, self.evidence = samples, evidence
        inputs, history = samples.inputs, samples.clock.history
        starts_h = {"base": inputs.base_loads_h[0], "face": inputs.face_load_h}
        self.log_age = {}
        times = {(b.layer, at) for b in evidence.between for at in (b.after_h, b.before_h) if at is not None}
        times |= {(reading.layer, reading.at_h) for reading in evidence.readings}
        for layer, at in times:
            for one in ("base", "face") if layer == "both" else (layer,):
                if one != "early":
                    age_h = _age_h(history, at - starts_h[one])
                    row = age_h[:2] if one == "base" else age_h[-2:]
                    self.log_age[one, at] = np.log(np.maximum(row, _LEAST_AGE_H))
        usual = deviations(day_cloud())[list(_FREE)]
        self.normal = np.resize(usual, (len(_FREE), samples.days.weight.size))
        self.lead = np.zeros(samples.days.weight.size)
        if self.log_age:
            mean = np.mean([row.mean(axis=0) for row in self.log_age.values()], axis=0)
            low, _, high = (inputs.bands or {}).get("set_time_initial", defaults.si_band("set_time_initial"))
            self.lead = (mean - mean.mean()) / max(np.log(high / low) / (2 * _BAND_END), 1e-6)

    def log_likelihood(self, days):
        """Log likelihood of all looks, shape (2, days): with evaporative cooling and without."""
        return sum((part for _, part, _ in self.parts(days)), np.zeros((2, days.weight.size)))

    def parts(self, days):
        """Each piece of evidence: numbers of its looks, log likelihood (2, days), the best it could be."""
        base = face = days
        if self.samples.inputs.base_bands is not None:
            base = cloud_at(deviations(days, self.samples.inputs.bands), self.samples.inputs.base_bands)
        mortar = {"base": base, "face": face}

        def log_resistance(layer, at):
            day = mortar[layer]
            return np.log(INITIAL_SET_PA) + day.exponent * (self.log_age[layer, at] - np.log(day.initial_set_h))

        early = early_hours(self.samples.inputs, days)
        for item in self.evidence.between:
            after, before = (
                None if at is None else self._past(item, at, log_resistance, early)
                for at in (item.after_h, item.before_h)
            )
            best = 0.0
            if after is not None and before is not None:  # the middle of the two looks, at this pace
                best = log_between((after - before) / 2, (before - after) / 2)
            yield item.looks, np.maximum(log_between(after, before), _LEAST_LOG), np.maximum(best, _LEAST_LOG)
        for by_rod, shared in ((True, defaults.si("rod_day_scatter")), (False, 0.0)):
            kind = [reading for reading in self.evidence.readings if reading.by_rod is by_rod]
            if kind:
                difference = np.array([r.log_resistance - log_resistance(r.layer, r.at_h) for r in kind])
                scatter = np.array([r.scatter for r in kind])
                usual = -0.5 * np.log(2.0) * len(kind)  # mean of exp(-z^2/2) over readings that scatter as they should
                yield tuple(r.look for r in kind), log_readings(difference, scatter, shared), usual

    def poor(self, days, weight):
        """Numbers of the looks that the weighed days explain badly."""
        found = set()
        for looks, part, best in self.parts(days):
            if (weight * np.exp(part - best)).sum(axis=-1).max() < POOR_FIT:
                found.update(looks)
        return tuple(sorted(found))

    def _past(self, item, at, log_resistance, early):
        """How far the mortar is past a cue at one hour, over the scatter; shape (2, days)."""
        if item.layer == "early":
            return np.broadcast_to((at - early.face_on_h) / item.scatter, (2, self.lead.size))
        layers = ("base", "face") if item.layer == "both" else (item.layer,)
        return np.min([(log_resistance(layer, at) - item.log_resistance) / item.scatter for layer in layers], axis=0)


def _age_h(history, at_hour):
    """Equivalent age of every row and day; beyond the history at its last pace, before the water zero."""
    if at_hour <= 0:
        return np.zeros_like(history.equivalent_age_h[0])
    beyond = max(at_hour - history.time_h[-1], 0.0)
    age_h = at_h(history.time_h, history.equivalent_age_h, at_hour)
    pace = (history.equivalent_age_h[-1] - history.equivalent_age_h[-2]) / (history.time_h[1] - history.time_h[0])
    return age_h + beyond * pace
