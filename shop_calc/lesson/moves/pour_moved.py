"""Lesson 11: one act moved to another time, and what that changes."""

from shop_calc.lesson.moves.pour_shown import ribbon_of, shown_stages
from shop_calc.lesson.pictures.follow import Follow
from shop_calc.trade.rehearsal.damage import TRACE
from shop_calc.trade.rehearsal.debrief import debrief
from shop_calc.trade.rehearsal.replay import moved

MOVABLE = {
    "the face": ("face", "spread"),
    "the first side off": ("strip", "strip"),
    "the first steel": ("first_steel", "steel"),
    "the last steel": ("last_steel", "steel"),
}


def mover(state):
    """Give the model of the block: one act of a finished pour at another hour, all before it as it was.

    Parameters
    ----------
    state : State
        A finished pour [as its fields].

    Returns
    -------
    callable
        `model(which, later_h)`, gives the name, the hour as done, and what it would have done [-, h, Instead].

    Raises
    ------
    ValueError
        When the act was never done in that pour.

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> from shop_calc.trade.rehearsal.policies import by_cues, work_through
    >>> end = work_through(begin("oak", "mild"), by_cues)
    >>> mover(end)("the first steel", -0.5)[2].words
    'air and water under a closed skin, bad'

    References
    ----------
    Computed anew on the same hidden day.
    """
    numbers = {}
    for row in debrief(state).decisions:
        for name, (stage, word) in MOVABLE.items():
            if (row.stage, row.word) == (stage, word) and name not in numbers:
                numbers[name] = _line(state, row)

    def model(which, later_h):
        if which not in numbers:
            raise ValueError(f"{which}: it was not done in this pour")
        number = numbers[which]
        return which, state.diary[number].hour_h, moved(state, number, later_h)

    return model


def _line(state, row):
    return next(
        number
        for number, entry in enumerate(state.diary)
        if entry.word == row.word and abs(entry.hour_h - row.at_h) < 1e-9
    )


def mover_words(state):
    """Give the words of the block.

    Parameters
    ----------
    state : State
        The pour that the model has [as its fields].

    Returns
    -------
    callable
        `words(result, system)`, gives what shows, and why [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> from shop_calc.trade.rehearsal.policies import by_cues, work_through
    >>> end = work_through(begin("oak", "mild"), by_cues)
    >>> mover_words(end)(mover(end)("the first steel", 0.0), "both").splitlines()[0][-8:]
    'no harm.'

    References
    ----------
    Common practice, no source.
    """
    clock = state.pour.clock

    def words(result, system="both"):
        which, _, instead = result
        lines = [f"{which[0].upper()}{which[1:]} at {clock(instead.at_h):%H:%M}: {instead.words}."]
        lines += [item.reason for item in instead.damage if item.severity > 0.0]
        return "\n".join(lines)

    return words


def moving_mark(state, title=""):
    """Give the picture of the block: the true windows, and the act where it is moved to.

    Parameters
    ----------
    state : State
        The pour that the model has [as its fields].
    title : str
        One line over the picture [-].

    Returns
    -------
    Follow
        Takes what the model gives [-].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.bench import begin
    >>> from shop_calc.trade.rehearsal.policies import by_cues, work_through
    >>> end = work_through(begin("oak", "mild"), by_cues)
    >>> picture = moving_mark(end, "Moved")
    >>> picture.update(mover(end)("the first steel", 0.0))
    >>> picture.alt[:6]
    'Moved.'

    References
    ----------
    Common practice, no source.
    """
    found = debrief(state)
    stages = shown_stages(found.stages)

    def read(result):
        which, _, instead = result
        good = not any(item.severity >= TRACE for item in instead.damage)
        return stages, {"done": [(MOVABLE[which][0], instead.at_h, good)]}

    return Follow(ribbon_of(found, title), read)
