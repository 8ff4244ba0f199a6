"""The fit of a log: initial set, exponent and activation energy, with the defaults as prior."""

from dataclasses import dataclass

import numpy as np

from shop_calc.science.descent import lowest
from shop_calc.trade.logbook.set_places import BAND_END, NAMES, mean_share, value_at
from shop_calc.trade.logbook.set_posterior import Posterior

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
        return value_at(name, self.place[NAMES.index(name)])

    def known_band(self, name):
        """5 %, fitted and 95 % value of the recipe's own mean [SI unit]."""
        number = NAMES.index(name)
        return self._band(name, self.place[number], np.sqrt(self.covariance[number, number]))

    def next_band(self, name):
        """The same for the next pour, which scatters about that mean; what a plan needs [SI unit]."""
        number = NAMES.index(name)
        return self._band(name, self.place[number], self._next_deviation(number))

    def next_root(self):
        """How the three hang together for the next pour: lower triangle of Cholesky's factor of their correlation [-]."""
        deviation = np.sqrt(np.diag(self.covariance))
        together = self.covariance / np.outer(deviation, deviation)
        own = np.array([deviation[0] / self._next_deviation(0), 1.0, 1.0])  # what scatters from pour to pour is nobody's
        together = together * np.outer(own, own)
        np.fill_diagonal(together, 1.0)
        return np.linalg.cholesky(together)

    def _next_deviation(self, number):
        """Deviation of the next pour about the fitted place."""
        share = mean_share() if number == 0 else 1.0
        return np.sqrt(self.covariance[number, number] + (1.0 - share**2) / share**2)

    def _band(self, name, middle, deviation):
        ends = (middle - BAND_END * deviation, middle, middle + BAND_END * deviation)
        return tuple(value_at(name, end) for end in ends)


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
    Maximum a posteriori with Laplace's approximation; science.descent.
    """
    place = np.zeros(3)
    posterior = Posterior(facts)
    if posterior.count:
        rough = _lowest(Posterior(facts, _ROUGH), place, energy_free, 1e-2)
        place = _lowest(posterior, rough, energy_free)
    covariance = np.linalg.inv(_curvature(posterior, place))
    return SetFit(place, (covariance + covariance.T) / 2, energy_free)


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
        found.append(_lowest(posterior, fit.place, fit.energy_fitted, 1e-3, fit.covariance))
    return found


def _lowest(posterior, start, energy_free, near_enough=1e-4, about=None):
    """Where the posterior is highest, from a start; `about` is a guess of the covariance."""
    free = 3 if energy_free else 2
    place = np.zeros(3)

    def of_free(some):
        height, slope = posterior.with_slope(np.concatenate((some, place[free:])))
        return height, slope[:free]

    place[:free] = lowest(of_free, start[:free], near_enough, None if about is None else about[:free, :free])
    return place


def _curvature(posterior, at):
    """Second derivatives by central differences of the slope, kept no flatter than the prior."""
    rows = [(posterior.with_slope(at + step)[1] - posterior.with_slope(at - step)[1]) / (2 * _STEP)
            for step in _STEP * np.eye(len(at))]  # fmt: skip
    values, vectors = np.linalg.eigh((np.array(rows) + np.transpose(rows)) / 2)
    return vectors @ np.diag(np.maximum(values, 0.9)) @ vectors.T
