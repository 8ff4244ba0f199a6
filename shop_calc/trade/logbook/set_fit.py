"""The fit of a log: initial set, exponent and activation energy, with the defaults as prior."""

from dataclasses import dataclass

import numpy as np

from shop_calc import defaults
from shop_calc.science.setting import INITIAL_SET_PA
from shop_calc.trade.logbook.log_ages import energy_place, log_age_curves
from shop_calc.trade.timeline.cloud import spread
from shop_calc.trade.timeline.look_likelihood import log_prior_of_set

NAMES = ("set_time_initial", "set_exponent", "activation_energy")
BAND_END = 1.6448536269514722  # deviations at the 95 % end of a band
_POUR_PLACES = np.linspace(-4.5, 4.5, 61)  # deviations of one pour from its recipe over which it is summed
_POUR_WEIGHT = np.exp(-0.5 * _POUR_PLACES**2) / np.exp(-0.5 * _POUR_PLACES**2).sum()
_WRONG_READING = 1.5  # judgement: scatter of a reading that is simply wrong, in the logarithm
_STEP = 0.02
_ROUGH = 4.0  # a first fit takes every look as so much rougher: no look is given up before the fit has come near


@dataclass(frozen=True)
class SetFit:
    """Where in their default bands a log puts the three quantities.

    Parameters
    ----------
    place : ndarray of shape (3,)
        Standard normal deviations of initial set, exponent, activation energy; of the recipe's mean [-].
    covariance : ndarray of shape (3, 3)
        Their covariance, that of activation energy included even where it was not fitted [-].
    energy_fitted : bool
        Whether activation energy was free [-].

    Examples
    --------
    >>> SetFit(np.zeros(3), np.eye(3), False).value("set_exponent")
    7.0

    References
    ----------
    As `fit_set`.
    """

    place: np.ndarray
    covariance: np.ndarray
    energy_fitted: bool

    def value(self, name):
        """The fitted value of one of NAMES [SI unit]."""
        return self._at(name, self.place[NAMES.index(name)])

    def known_band(self, name):
        """5 %, fitted and 95 % value of the recipe's own mean [SI unit]."""
        number = NAMES.index(name)
        return self._band(name, self.place[number], np.sqrt(self.covariance[number, number]))

    def next_band(self, name):
        """The same for the next pour, which scatters about that mean; what a plan needs [SI unit]."""
        number = NAMES.index(name)
        middle, deviation = self.place[number], np.sqrt(self.covariance[number, number])
        if name != "set_time_initial":
            return self._band(name, middle, deviation)
        share = mean_share()
        return self._band(name, middle, np.sqrt(deviation**2 + (1.0 - share**2) / share**2))

    def _band(self, name, middle, deviation):
        ends = (middle - BAND_END * deviation, middle, middle + BAND_END * deviation)
        return tuple(float(self._at(name, end)) for end in ends)

    def _at(self, name, place):
        return float(_value(name, place))


def mean_share():
    """Say how much of the default band of initial set is the recipe's mean, the rest being pour to pour.

    Returns
    -------
    float
        Standard deviation of the mean over that of a pour [-].

    Examples
    --------
    >>> f"{mean_share():.4f}"
    '0.9355'

    References
    ----------
    Derived; pour_scatter of data/defaults.csv is a judgement.
    """
    low, _, high = defaults.si_band("set_time_initial")
    total = np.log(high / low) / (2 * BAND_END)
    return float(np.sqrt(1.0 - min(defaults.si("pour_scatter") / total, 0.95) ** 2))


def _value(name, place):
    """Value at a place of a default band; the mean of initial set lies in the narrower part of it."""
    place = mean_share() * place if name == "set_time_initial" else place
    return spread(*defaults.si_band(name), place)


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

    References
    ----------
    As `fit_set`.
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
        self.goal, self.scatter, self.pour = np.array(goal), rough * np.array(scatter), np.array(pour, dtype=int)
        self.read_at, self.read_log = np.array(read_at, dtype=int), np.array(read_log)
        self.read_scatter, self.read_pour = rough * np.array(read_scatter), np.array(read_pour, dtype=int)
        self.wrong, self.pour_scatter = defaults.si("wrong_look_share"), defaults.si("pour_scatter")

    def log_resistance(self, places):
        """Logarithm of resistance at every look, for each place of its pour; shape (looks, 61)."""
        initial_h, exponent, energy = (_value(name, place) for name, place in zip(NAMES, places, strict=True))
        powers = float(energy_place(energy)) ** np.arange(len(self.curves))
        late = powers @ self.curves - np.log(initial_h)
        return np.log(INITIAL_SET_PA) + exponent * (late[:, np.newaxis] - self.pour_scatter * _POUR_PLACES)

    def by_pour(self, places):
        """Log likelihood of each pour at each place of it; shape (pours, 61)."""
        from scipy.special import ndtr

        log_resistance = self.log_resistance(places)
        total = np.zeros((self.count, len(_POUR_PLACES)))
        if self.goal.size:
            def past(at, absent):
                z = (log_resistance[at] - self.goal[:, np.newaxis]) / self.scatter[:, np.newaxis]
                return np.where((at < 0)[:, np.newaxis], absent, ndtr(z))

            seen = np.maximum(past(self.before, 1.0) - past(self.after, 0.0), 0.0)
            np.add.at(total, self.pour, np.log((1.0 - self.wrong) * seen + self.wrong / 2))
        if self.read_log.size:
            away = self.read_log[:, np.newaxis] - log_resistance[self.read_at]
            scatter = self.read_scatter[:, np.newaxis]
            right = np.exp(-0.5 * (away / scatter) ** 2)
            wrong = np.exp(-0.5 * (away / _WRONG_READING) ** 2) * scatter / _WRONG_READING
            np.add.at(total, self.read_pour, np.log((1.0 - self.wrong) * right + self.wrong * wrong + 1e-300))
        return total

    def __call__(self, places):
        """Minus log posterior, without its constant."""
        prior = 0.5 * float(np.sum(np.square(places[1:]))) - float(log_prior_of_set(places[0]))
        if not self.count:
            return prior
        by_pour = self.by_pour(places)
        top = by_pour.max(axis=1, keepdims=True)
        each = top[:, 0] + np.log(np.exp(by_pour - top) @ _POUR_WEIGHT)
        return prior - float(each.sum() - (0.0 if self.left_out is None else each[self.left_out]))

    def pour_place(self, places):
        """Most likely place of each pour about the mean of its recipe [-]."""
        return _POUR_PLACES[np.argmax(self.by_pour(places) + np.log(_POUR_WEIGHT), axis=1)]


def fit_set(facts, energy_free):
    """Fit the three quantities to pours: the most likely values, the defaults as prior.

    Parameters
    ----------
    facts : sequence of PourFacts
        Pours of one recipe and layer [as its fields].
    energy_free : bool
        False keeps activation energy at its default [-].

    Returns
    -------
    SetFit
        Places in the default bands, and how well they are known [-].

    Examples
    --------
    >>> fit_set((), True).value("set_time_initial")
    3.4

    Notes
    -----
    Cues are interval-censored between two looks, readings have a normal scatter in the logarithm; each pour
    differs from its recipe by pour_scatter, over which it is summed; wrong_look_share of the looks may be anything.
    The prior of initial set has a wide part, see look_likelihood.log_prior_of_set. The covariance is the inverse of the
    second derivatives at the answer (Laplace). Activation energy counts in it also where it is not fitted, so that
    what is not known of it widens the rest.

    References
    ----------
    Maximum a posteriori with Laplace's approximation; scipy.optimize.minimize.
    """
    place = np.zeros(3)
    posterior = Posterior(facts)
    if posterior.count:
        place = _lowest(posterior, _lowest(Posterior(facts, _ROUGH), place, energy_free), energy_free)
    return SetFit(place, np.linalg.inv(_curvature(posterior, place)), energy_free)


def places_without_each(facts, fit):
    """Fit again with each pour left out in turn.

    Parameters
    ----------
    facts : sequence of PourFacts
        Pours of one recipe and layer [as its fields].
    fit : SetFit
        The fit of all of them [-].

    Returns
    -------
    list of ndarray of shape (3,)
        Places in the default bands, one for each pour left out [-].

    Examples
    --------
    >>> places_without_each((), fit_set((), False))
    []

    References
    ----------
    Leave one out; as `fit_set`.
    """
    posterior = Posterior(facts)
    found = []
    for number in range(posterior.count):
        posterior.left_out = number
        found.append(_lowest(posterior, fit.place, fit.energy_fitted, 1e-3))
    return found


def _lowest(function, start, energy_free, near_enough=1e-4):
    """Where a function of the three places is lowest, downhill from a start."""
    from scipy.optimize import minimize

    free = 3 if energy_free else 2
    place = np.zeros(3)
    place[:free] = minimize(
        lambda some: function(np.concatenate((some, place[free:]))), start[:free], method="BFGS",
        options={"gtol": near_enough},
    ).x  # fmt: skip
    return place


def _curvature(function, at):
    """Second derivatives by central differences, kept no flatter than the prior."""
    size, steps = len(at), _STEP * np.eye(len(at))
    matrix = np.empty((size, size))
    middle = function(at)
    for i in range(size):
        for j in range(i + 1):
            if i == j:
                value = (function(at + 2 * steps[i]) - 2 * middle + function(at - 2 * steps[i])) / (4 * _STEP**2)
            else:
                value = (
                    function(at + steps[i] + steps[j]) - function(at + steps[i] - steps[j])
                    - function(at - steps[i] + steps[j]) + function(at - steps[i] - steps[j])
                ) / (4 * _STEP**2)  # fmt: skip
            matrix[i, j] = matrix[j, i] = value
    values, vectors = np.linalg.eigh(matrix)
    return vectors @ np.diag(np.maximum(values, 0.9)) @ vectors.T
