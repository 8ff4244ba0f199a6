"""A pour worked again on the same hidden day: from its diary, or with one act at another hour."""

from dataclasses import dataclass

from shop_calc.trade.rehearsal.acts import act
from shop_calc.trade.rehearsal.bench import begin, let_pass
from shop_calc.trade.rehearsal.damage import damage_words
from shop_calc.trade.rehearsal.words import ACTS, WAITS_MIN


@dataclass(frozen=True)
class Instead:
    """What an act would have done at another hour.

    Parameters
    ----------
    at_h : float
        That hour [h].
    damage : tuple of Damage
        What it would have done [as its fields].
    said : str
        Why it could not have been done then; empty when it could [-].

    Examples
    --------
    >>> Instead(2.0, ()).words
    'no harm'

    References
    ----------
    Computed anew on the same hidden day.
    """

    at_h: float
    damage: tuple
    said: str = ""

    @property
    def words(self):
        """The same in a few words."""
        return self.said or damage_words(self.damage)


def diary_text(state):
    """Write all acts on one line, to be kept or handed in.

    Parameters
    ----------
    state : State
        The piece [as its fields].

    Returns
    -------
    str
        Acts in order, waits included, separated by semicolons [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> diary_text(act(act(begin("oak", "mild"), "wait 15"), "look edge"))
    'wait 15; look edge'

    References
    ----------
    Common practice, no source.
    """
    return "; ".join(entry.word for entry in state.diary)


def play(state, acts):
    """Do several things in order.

    Parameters
    ----------
    state : State
        Where it begins [as its fields].
    acts : str or sequence of str
        Acts, as `diary_text` writes them or one by one [-].

    Returns
    -------
    State
        The piece after the last [as its fields].

    Raises
    ------
    ValueError
        When one of them is unknown.

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> len(play(begin("oak", "mild"), "wait 15; wait 5; spread").diary)
    3

    References
    ----------
    Common practice, no source.
    """
    words = acts.split(";") if isinstance(acts, str) else acts
    for word in words:
        if str(word).strip():
            state = act(state, " ".join(str(word).split()))
    return state


def before(state, number, hour_h=None):
    """Give the piece as it was before one line of its diary, or earlier.

    Parameters
    ----------
    state : State
        A pour [as its fields].
    number : int
        Line of the diary, from 0 [-].
    hour_h : float, optional
        An earlier hour; lines after it are left out [h].

    Returns
    -------
    State
        The same pour at that moment [as its fields].

    Examples
    --------
    >>> end = play(begin("oak", "mild"), "wait 30; spread; wait 15; screed")
    >>> before(end, 3).screeded_h is None
    True

    References
    ----------
    The same hidden day, worked again.
    """
    until_h = state.diary[number].hour_h if hour_h is None else hour_h
    now = begin(state.pour)
    for entry in state.diary[:number]:
        if entry.hour_h > until_h:
            break
        if entry.word not in WAITS_MIN and ACTS[entry.word].kind != "look":
            now = act(let_pass(now, entry.hour_h - now.hour_h), entry.word)
    return let_pass(now, until_h - now.hour_h)


def moved(state, number, by_h):
    """Do one act of the diary at another hour, everything before it as it was.

    Parameters
    ----------
    state : State
        A pour [as its fields].
    number : int
        Line of the diary, from 0 [-].
    by_h : float
        How much later; negative for earlier [h].

    Returns
    -------
    Instead
        What it would have done [as its fields].

    Examples
    --------
    >>> end = play(begin("oak", "mild"), "step away; spread")
    >>> moved(end, 1, -0.5).at_h < end.diary[1].hour_h
    True

    References
    ----------
    Computed anew on the same hidden day.
    """
    entry = state.diary[number]
    if by_h < 0:
        now = before(state, number, max(entry.hour_h + by_h, state.pour.starts_h))
    else:
        now = let_pass(before(state, number), by_h)
    then = act(now, entry.word)
    done = then.diary[-1] if then.diary[-1].word == entry.word else then.diary[len(now.diary)]
    if not done.minutes:
        return Instead(now.hour_h, (), f"not possible then: {done.said[0].lower()}{done.said[1:].rstrip('.')}")
    fresh = [item for item in then.damage[len(now.damage) :] if item.word == entry.word]
    return Instead(now.hour_h, tuple(fresh))
