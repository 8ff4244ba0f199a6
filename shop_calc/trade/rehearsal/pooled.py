"""A class that played the same code: everybody's decisions side by side."""

from dataclasses import dataclass
from datetime import datetime

from shop_calc.trade.rehearsal.bench import begin
from shop_calc.trade.rehearsal.debrief import Debrief, debrief
from shop_calc.trade.rehearsal.replay import play
from shop_calc.trade.rehearsal.state import State
from shop_calc.trade.timeline.room import Room

STAGES = ("face", "strip", "first_steel", "last_steel", "stop")


@dataclass(frozen=True, eq=False)
class Pooled:
    """What a class did with one code.

    Parameters
    ----------
    water_in : datetime
        Clock time of the first water [-].
    room : Room
        The room as it came [as its fields].
    stages : tuple of Stage
        The stages as they really were, on the piece of the first learner [h].
    planned : tuple of Stage
        The stages as the plan on the wall had them [h].
    hours_h : dict of str to tuple of (float, bool)
        For each stage, when everybody did it and whether nothing of it can be seen [h, -].
    never : dict of str to int
        For each stage, how many never did it [-].
    shows : dict of str to int
        What can be seen in the morning, and on how many pieces [-].
    count : int
        Pieces [-].

    Examples
    --------
    >>> pool("oak", ["step away; spread; leave", "leave"], weather="mild").count
    2

    References
    ----------
    Common practice, no source.
    """

    water_in: datetime
    room: Room
    stages: tuple
    planned: tuple
    hours_h: dict
    never: dict
    shows: dict
    count: int


def pool(code, diaries, weather=None, plan=None):
    """Lay the diaries of a class side by side.

    Parameters
    ----------
    code : str or Pour
        The code that everybody had [-].
    diaries : sequence of str or State
        One a learner: the line that `diary_text` gives, or the pour itself [-].
    weather : str, optional
        As for `begin` [-].
    plan : Plan, optional
        As for `begin` [as its fields].

    Returns
    -------
    Pooled
        Without names [as its fields].

    Raises
    ------
    ValueError
        When there is no diary, or a line that cannot be read; the message says which.

    Examples
    --------
    >>> sorted(pool("oak", ["step away; spread; steel; leave"], weather="mild").shows)[:2]
    ['air', 'form edge']

    References
    ----------
    Common practice, no source.
    """
    if not diaries:
        raise ValueError("diaries: none given; there must be at least one")
    start = begin(code, weather, plan)
    ends = []
    for number, diary in enumerate(diaries, 1):
        try:
            ends.append(debrief(diary if isinstance(diary, State) else play(start, diary)))
        except ValueError as error:
            raise ValueError(f"diary {number}: {error}") from None
    hours = {stage: tuple(filter(None, (_first(end, stage) for end in ends))) for stage in STAGES}
    never = {stage: len(ends) - len(found) for stage, found in hours.items()}
    shows = {}
    for end in ends:
        for item in end.damage:
            shows[item.key] = shows.get(item.key, 0) + 1
    shows = dict(sorted(shows.items(), key=lambda row: -row[1]))
    pour = ends[0].state.pour
    return Pooled(pour.water_in, pour.room, ends[0].stages, ends[0].planned, hours, never, shows, len(ends))


def _first(end: Debrief, stage):
    """When this learner first did what the stage asks for, and whether nothing of it can be seen."""
    wanted = {"face": "spread", "strip": "strip", "stop": "leave"}.get(stage, "steel")
    for row in end.decisions:
        if row.stage == stage and row.word == wanted:
            return row.at_h, row.good
    return None
