"""Pictures of a practice pour, to look at. All numbers here are invented."""

from dataclasses import replace
from datetime import datetime
from types import SimpleNamespace

from shop_calc.lesson.pictures.at_the_bench import AtTheBench, BenchView
from shop_calc.lesson.pictures.pour_ribbon import PourRibbon

WATER_IN = datetime(2026, 5, 4, 8)
ROOM = SimpleNamespace(from_h=(0.0, 4.0), air_temp_c=(19.0, 23.0), rh_fraction=(0.55, 0.45), wind_m_s=(0.0, 1.0))
SEEN = (("strip", 2.6, False), ("strip", 2.75, True), ("first_steel", 3.1, False))
DONE = (("face", 0.7, True), ("strip", 2.8, True), ("first_steel", 3.2, False), ("last_steel", 4.4, True))
CLASS = tuple(
    (key, middle + 0.10 * ((5 * number * number) % 12 - 5.5), number % 5 > 0)
    for key, middle in (("face", 0.9), ("strip", 2.9), ("first_steel", 3.5), ("last_steel", 4.3))
    for number in range(12)
)
KEPT = ("face", "strip", "first_steel", "last_steel", "stop")
VIEW = BenchView(True, 2, 4, "open", "fading", False, 0.00635)


def _bench(**changes):
    picture = AtTheBench()
    picture.update(replace(VIEW, **changes))
    return picture


def _ribbon(stages, title, **shown):
    kept, true = [stage for stage in stages if stage.key in KEPT], _later(stages)
    picture = PourRibbon(true, kept, WATER_IN, ROOM, title)
    picture.update(true, **shown)
    return picture


def _later(stages):
    return [
        replace(s, look_from_h=s.likely_from_h + 0.25, likely_from_h=s.likely_from_h + 0.25,
                likely_to_h=s.likely_to_h + 0.35, over_by_h=s.likely_to_h + 0.35, deadline_h=None)
        for s in stages if s.key in KEPT
    ]  # fmt: skip


def pour_updates(stages):
    """What each picture of a practice pour takes, by name.

    Parameters
    ----------
    stages : sequence
        Stages of a day with invented times; dataclasses [h].

    Returns
    -------
    dict of str to callable
        Each gives the numbers [-].

    Examples
    --------
    >>> pour_updates(())["at the bench"]().sides_on
    2

    References
    ----------
    Invented.
    """
    bench, ribbon = ("at the bench", "a crust at the bench"), ("the practice pour", "a class on one code")
    return {**{name: lambda: VIEW for name in bench}, **{name: lambda: _later(stages) for name in ribbon}}


def pour_pictures(stages):
    """Pictures of a practice pour, by name.

    Parameters
    ----------
    stages : sequence
        Stages of a day with invented times; dataclasses [h].

    Returns
    -------
    dict of str to callable
        Each builds its picture [-].

    Examples
    --------
    >>> sorted(pour_pictures(()))[0]
    'a class on one code'

    References
    ----------
    Invented.
    """
    return {
        "at the bench": _bench,
        "a crust at the bench": lambda: _bench(sides_on=4, cover="tent", sheen="dull", print_m=0.0089, skin=True),
        "the practice pour": lambda: _ribbon(stages, "A practice pour (invented)", seen=SEEN, done=DONE),
        "a class on one code": lambda: _ribbon(stages, "One code, a class (invented)", done=CLASS),
    }
