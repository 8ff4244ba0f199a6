"""How well a place in the default bands explains a log: minus the log posterior, and its slope."""

import numpy as np

from shop_calc import defaults
from shop_calc.science.normal import normal_below
from shop_calc.science.setting import INITIAL_SET_PA
from shop_calc.trade.logbook.log_ages import ENERGY_UNIT_J_MOL, energy_place, log_age_curves
from shop_calc.trade.logbook.set_places import NAMES, steepness_at, value_at
from shop_calc.trade.timeline.look_likelihood import log_prior_of_set, prior_pull_of_set

_POUR_PLACES = np.linspace(-4.5, 4.5, 61)  # deviations of one pour from its recipe over which it is summed
_POUR_WEIGHT = np.exp(-0.5 * _POUR_PLACES**2) / np.exp(-0.5 * _POUR_PLACES**2).sum()
_WRONG_READING = 1.5  # judgement: scatter of a reading that is simply wrong, in the logarithm
_NEVER = 1e-300  # keeps the logarithm of what cannot be finite


class Posterior:
    """Minus the log posterior of the three places, for all looks of some pours at once.

    Parameters
    ----------
    facts : sequence of PourFacts
        Pours of one recipe and layer [as its fields].
    rough : float
        Factor on every scatter [-].

    Examples
    --------
    >>> f"{Posterior(())(np.zeros(3)):.5f}"
    '0.01511'

    Notes
    -----
    A cue lies between two looks with a normal scatter, a reading scatters about the model; a share of both may be
    anything. Each pour is summed over its own place about the mean of the recipe.

    References
    ----------
    Interval-censored normal likelihood. Derived.
    """

    def __init__(self, facts, rough=1.0):
        curves, after, before, goal, scatter, pour, first = [], [], [], [], [], [], 0
        read_at, read_log, read_scatter, read_pour = [], [], [], []
        for number, pour_facts in enumerate(facts):
            times = []

            def place(at, times=times, first=first):
                times.append(at)
                return first + len(times) - 1

            for item in pour_facts.between:
                after.append(-1 if item.after_h is None else place(item.after_h))
                before.append(-1 if item.before_h is None else place(item.before_h))
                goal.append(item.log_resistance)
                scatter.append(item.scatter)
                pour.append(number)
            for reading in pour_facts.readings:
                read_at.append(place(reading.at_h))
                read_log.append(reading.log_resistance)
                read_scatter.append(reading.scatter)
                read_pour.append(number)
            if times:
                curves.append(log_age_curves(pour_facts, times))
                first += len(times)
        self.count, self.left_out = len(facts), None
        self.curves = np.concatenate(curves, axis=1) if curves else np.zeros((5, 0))
        self.after, self.before = np.array(after, dtype=int), np.array(before, dtype=int)
        self.goal, self.scatter = np.array(goal)[:, np.newaxis], rough * np.array(scatter)[:, np.newaxis]
        self.read_at, self.read_log = np.array(read_at, dtype=int), np.array(read_log)[:, np.newaxis]
        self.read_scatter = rough * np.array(read_scatter)[:, np.newaxis]
        # row p of `cue_of` adds up the cues of pour p, row p of `read_of` its readings
        self.cue_of = np.equal.outer(np.arange(self.count), np.array(pour, dtype=int)).astype(float)
        self.read_of = np.equal.outer(np.arange(self.count), np.array(read_pour, dtype=int)).astype(float)
        self.wrong, self.pour_scatter = defaults.si("wrong_look_share"), defaults.si("pour_scatter")

    def __call__(self, places):
        """Minus log posterior, without its constant."""
        return self.with_slope(places)[0]

    def with_slope(self, places):
        """Minus log posterior and its derivatives by the three places; shape (3,)."""
        height = 0.5 * float(np.sum(np.square(places[1:]))) - float(log_prior_of_set(places[0]))
        slope = np.array([float(prior_pull_of_set(places[0])), places[1], places[2]])
        if not self.count:
            return height, slope
        resistance, growth = self._log_resistance(places)
        cues, cue_push = self._cues(resistance)
        readings, read_push = self._readings(resistance)
        by_pour = self.cue_of @ cues + self.read_of @ readings
        top = by_pour.max(axis=1, keepdims=True)
        share = np.exp(by_pour - top) * _POUR_WEIGHT
        whole = share.sum(axis=1, keepdims=True)
        each, share = top[:, 0] + np.log(whole[:, 0]), share / whole
        if self.left_out is not None:
            each[self.left_out], share[self.left_out] = 0.0, 0.0
        push = np.zeros_like(resistance)
        push[self.read_at] = read_push * (self.read_of.T @ share)
        share_of_cue = self.cue_of.T @ share
        for at, part in zip((self.after, self.before), cue_push, strict=True):
            there = at >= 0
            push[at[there]] = (part * share_of_cue)[there]
        along_set, along_exponent, along_energy = growth
        slope -= (
            along_set * push.sum(), along_exponent * (push * (resistance - np.log(INITIAL_SET_PA))).sum(),
            along_energy @ push.sum(axis=1),
        )  # fmt: skip
        return height - float(each.sum()), slope

    def pour_place(self, places):
        """Most likely place of each pour about the mean of its recipe [-]."""
        resistance, _ = self._log_resistance(places)
        by_pour = self.cue_of @ self._cues(resistance)[0] + self.read_of @ self._readings(resistance)[0]
        return _POUR_PLACES[np.argmax(by_pour + np.log(_POUR_WEIGHT), axis=1)]

    def _log_resistance(self, places):
        """Log of resistance at each look and place of its pour, shape (looks, 61), and how it grows along each band.

        Along initial set it grows everywhere alike, along the exponent with its distance from initial set, along
        activation energy as the age of each look does.
        """
        initial_h, exponent, energy = (value_at(name, place) for name, place in zip(NAMES, places, strict=True))
        steep = [steepness_at(name, place) for name, place in zip(NAMES, places, strict=True)]
        at, power = float(energy_place(energy)), np.arange(len(self.curves))
        late = at**power @ self.curves - np.log(initial_h)
        resistance = np.log(INITIAL_SET_PA) + exponent * (late[:, np.newaxis] - self.pour_scatter * _POUR_PLACES)
        age_growth = (power[1:] * at ** power[:-1]) @ self.curves[1:] * energy / ENERGY_UNIT_J_MOL
        return resistance, (-exponent * steep[0], steep[1], exponent * age_growth * steep[2])

    def _cues(self, resistance):
        """Log likelihood of each cue, and its derivatives by the resistance at the looks before and after it."""
        def past(at, absent):
            z = (resistance[at] - self.goal) / self.scatter
            there = (at >= 0)[:, np.newaxis]
            density = np.exp(-0.5 * z * z) / (np.sqrt(2.0 * np.pi) * self.scatter)
            return np.where(there, normal_below(z), absent), np.where(there, density, 0.0)

        if not len(self.goal):
            nothing = np.zeros((0, len(_POUR_PLACES)))
            return nothing, (nothing, nothing)
        (low, low_growth), (high, high_growth) = past(self.after, 0.0), past(self.before, 1.0)
        likely = (1.0 - self.wrong) * np.maximum(high - low, 0.0) + self.wrong / 2
        factor = np.where(high > low, (1.0 - self.wrong) / likely, 0.0)
        return np.log(likely), (-factor * low_growth, factor * high_growth)

    def _readings(self, resistance):
        """Log likelihood of each reading, and its derivative by the resistance at that look."""
        away = self.read_log - resistance[self.read_at]
        right = (1.0 - self.wrong) * np.exp(-0.5 * (away / self.read_scatter) ** 2)
        wrong = self.wrong * np.exp(-0.5 * (away / _WRONG_READING) ** 2) * self.read_scatter / _WRONG_READING
        likely = right + wrong + _NEVER
        return np.log(likely), away * (right / self.read_scatter**2 + wrong / _WRONG_READING**2) / likely
