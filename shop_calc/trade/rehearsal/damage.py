"""One consequence on one day, and how far past its limit an act has to be."""

from dataclasses import dataclass
from math import log

from shop_calc.trade.rehearsal.consequences import CONSEQUENCES

TRACE, BAD = 0.25, 0.60  # a consequence below TRACE is a trace, from BAD on it is bad; judgement


@dataclass(frozen=True)
class Damage:
    """One consequence on one day.

    Parameters
    ----------
    key : str
        A key of CONSEQUENCES [-].
    at_h : float
        When the act was done, hours after the first water [h].
    word : str
        The act [-].
    severity : float
        0 at the limit, TRACE where it becomes plain to see, 1 at worst [-].
    reason : str
        Why, with the numbers of this day [-].
    healed_h : float or None
        When it was undone [h].

    Examples
    --------
    >>> Damage("dark", 6.0, "steel", 0.7, "").size
    'bad'

    References
    ----------
    Common practice, no source.
    """

    key: str
    at_h: float
    word: str
    severity: float
    reason: str
    healed_h: float | None = None

    @property
    def row(self):
        """What it is and where the rule comes from."""
        return CONSEQUENCES[self.key]

    @property
    def stays(self):
        """True when it can be seen and was not undone."""
        return self.healed_h is None and self.severity >= TRACE

    @property
    def size(self):
        """How bad, in a word."""
        return "bad" if self.severity >= BAD else "plain to see" if self.severity >= TRACE else "a trace"


def past(value, limit, plain):
    """Say how far a value is beyond a limit, either way.

    Parameters
    ----------
    value : float
        What it was [any unit].
    limit : float
        Up to here all is well [unit of value].
    plain : float
        Here it becomes plain to see; above the limit for a thing that must not be late, below it for one that must
        not be early [unit of value].

    Returns
    -------
    float
        0 on the good side of the limit, TRACE at plain, at most 1; by the logarithm [-].

    Examples
    --------
    >>> past(40.0, 60.0, 40.0), past(90.0, 60.0, 40.0)
    (0.25, 0.0)

    References
    ----------
    Judgement: resistance and rates are felt by their ratios.
    """
    if value <= 0.0:
        return 1.0 if plain < limit else 0.0
    return min(max(TRACE * log(value / limit) / log(plain / limit), 0.0), 1.0)


def short_of(value, needed, least):
    """Say how far a stress is short of what is needed with its safety factor.

    Parameters
    ----------
    value : float
        What there is [any unit].
    needed : float
        With this nothing moves [unit of value].
    least : float
        Without any safety: with less it moves by its own weight [unit of value].

    Returns
    -------
    float
        0 when there is enough, TRACE halfway between the two, 1 at `least` less the same span [-].

    Examples
    --------
    >>> short_of(100.0, 90.0, 60.0), short_of(75.0, 90.0, 60.0)
    (0.0, 0.25)

    References
    ----------
    Judgement.
    """
    span = max((needed - least) / 2.0, 1e-9)
    return min(max(TRACE * (needed - value) / span, 0.0), 1.0)


def damage_words(damage):
    """Say in a few words what an act did.

    Parameters
    ----------
    damage : sequence of Damage
        Its consequences [as its fields].

    Returns
    -------
    str
        "no harm", or each consequence with its size [-].

    Examples
    --------
    >>> damage_words((Damage("dark", 6.0, "steel", 0.7, ""),))
    'dark marks from the blade, bad'

    References
    ----------
    Common practice, no source.
    """
    found = [f"{item.row.title[0].lower()}{item.row.title[1:]}, {item.size}" for item in damage if item.severity > 0.0]
    return "; ".join(found) or "no harm"


def found(key, state, word, severity, reason):
    """Write one consequence down, where there is one.

    Parameters
    ----------
    key : str
        A key of CONSEQUENCES [-].
    state : State
        The piece at the moment of the act [as its fields].
    word : str
        The act [-].
    severity : float
        As from `past` [-].
    reason : str
        Why [-].

    Returns
    -------
    tuple of Damage
        One, or none when there is no harm [as its fields].

    Examples
    --------
    >>> found("dark", None, "steel", 0.0, "")
    ()

    References
    ----------
    Common practice, no source.
    """
    return (Damage(key, state.hour_h, word, severity, reason),) if severity > 0.0 else ()
