"""Rows of a log that do not fit: they contradict another row, or lie far from the fit."""

from dataclasses import dataclass

import numpy as np

from shop_calc import defaults
from shop_calc.science.normal import normal_below
from shop_calc.science.setting import INITIAL_SET_PA
from shop_calc.trade.logbook.set_places import values_at
from shop_calc.trade.logbook.set_posterior import Posterior

_FAR_READING, _FAR_CUE = 3.0, 0.02  # judgement: beyond these a row is named


@dataclass(frozen=True)
class Misfit:
    """A row of the log that does not fit the others.

    Parameters
    ----------
    line : int
        Line of the file [-].
    pour_id : str
        Which pour [-].
    words : str
        What the row says and what the fit says [-].

    Examples
    --------
    >>> str(Misfit(12, "bench 3", "strip seen at 1.2 h; the fit says 2.4 h"))
    'line 12, pour bench 3: strip seen at 1.2 h; the fit says 2.4 h'

    References
    ----------
    Common practice, no source.
    """

    line: int
    pour_id: str
    words: str

    def __str__(self):
        return f"line {self.line}, pour {self.pour_id}: {self.words}"


def misfits_of(facts, fitted, fit):
    """Find the looks that are badly explained even with the pour's own place, and those that contradict others.

    Parameters
    ----------
    facts, fitted : sequence of PourFacts
        All pours that could be read, and those of them that the fit stands on [as its fields].
    fit : SetFit
        The fit [-].

    Returns
    -------
    list of (Misfit, Row)
        In order of their lines [as its fields].

    Examples
    --------
    >>> misfits_of((), (), None)
    []

    References
    ----------
    Common practice, no source; how far is far is a judgement.
    """
    found = []
    for one in facts:
        for number in sorted(one.left_out):
            against = sorted({one.rows[n].line for pair in one.clashes if number in pair for n in pair if n != number})
            lines = "line" if len(against) == 1 else "lines"
            words = f"not used, it contradicts {lines} {', '.join(map(str, against))}"
            found.append((Misfit(one.rows[number].line, one.pour.pour_id, words), one.rows[number]))
    if not fitted:
        return found
    own = Posterior(fitted).pour_place(fit.place)
    for one, place in zip(fitted, own, strict=True):
        shifted = _Shifted(one, fit.place, place)
        found.extend((Misfit(row.line, one.pour.pour_id, words), row) for row, words in shifted.poor())
    return sorted(found, key=lambda pair: pair[0].line)


class _Shifted:
    """One pour with its own initial set."""

    def __init__(self, facts, places, pour_place):
        self.facts = facts
        initial_h, self.exponent, self.energy = values_at(places)
        self.initial_h = initial_h * np.exp(defaults.si("pour_scatter") * pour_place)

    def log_resistance(self, at_h):
        age_h = np.maximum(self.facts.age_h(at_h, self.energy), 1e-6)
        return float(np.log(INITIAL_SET_PA) + self.exponent * np.log(age_h / self.initial_h))

    def hour(self, log_resistance):
        age_h = self.initial_h * np.exp((log_resistance - np.log(INITIAL_SET_PA)) / self.exponent)
        return float(self.facts.time_at_age_h(age_h, self.energy))

    def poor(self):
        for reading in self.facts.readings:
            if abs(reading.log_resistance - self.log_resistance(reading.at_h)) > _FAR_READING * reading.scatter:
                said, fits = np.exp([reading.log_resistance, self.log_resistance(reading.at_h)]) / 1000.0
                what = "rod" if reading.by_rod else "thumb print"
                yield self.facts.rows[reading.look], f"{what} says {said:.0f} kPa, the fit {fits:.0f} kPa"
        for item in self.facts.between:
            ends = [
                None if at is None else float(normal_below((self.log_resistance(at) - item.log_resistance) / item.scatter))
                for at in (item.after_h, item.before_h)
            ]
            hour = f"the fit puts it at {self.hour(item.log_resistance):.2f} h after the water"
            for at, share, says in ((item.after_h, ends[0], "not yet"), (item.before_h, ends[1], "seen")):
                if share is not None and (1.0 - share if says == "not yet" else share) < _FAR_CUE:
                    row = self.facts.rows[item.looks[0] if says == "not yet" else item.looks[-1]]
                    yield row, f"{item.name} {says} at {at:.2f} h, {hour}"
