"""Lesson 04: the signs of the day, the day at another start, and the ribbon moved by mortar and room."""

from dataclasses import replace

from shop_calc.lesson.moves.rod_cup import clock_time
from shop_calc.lesson.pictures.follow import Follow
from shop_calc.lesson.pictures.ribbon import RibbonOfTheDay
from shop_calc.lesson.practice import Said
from shop_calc.lesson.table import table
from shop_calc.trade.timeline.backwards import work_backwards
from shop_calc.trade.timeline.day import plan_day
from shop_calc.trade.timeline.room import steady_room
from shop_calc.units import show

CLOCK_ENDS_H = (-0.9, 9.5)  # holds the slowest day that the sliders can make
MOVED = ("face", "strip", "first_steel", "last_steel", "stop")  # what mortar and room move
SAME_H = 1.5 / 60.0  # judgement: what moves less than that is said not to move


def start_at(inputs, hour):
    """Put the first water at another hour; the air keeps to the clock on the wall.

    Parameters
    ----------
    inputs : DayInputs
        The day as planned [as its fields].
    hour : str
        Clock time of the same day, "10:00" [-].

    Returns
    -------
    DayInputs
        The day from that start [as its fields].

    Raises
    ------
    ValueError
        When the clock time cannot be read.

    Examples
    --------
    >>> from datetime import datetime
    >>> from shop_calc.trade.timeline.day import DayInputs
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> start_at(inputs, "10:00").room.from_h
    (-2.0,)

    References
    ----------
    Common practice, no source.
    """
    return inputs.started_at(clock_time(inputs.water_in, hour))


def by_then(day, event, by, start=None):
    """Ask what it takes to have a stage by a clock time.

    Parameters
    ----------
    day : Day
        A planned day [h].
    event : str
        A key of `shop_calc.trade.timeline.backwards.WORDS` [-].
    by : str
        Clock time by which it must have come, "12:00" [-].
    start : str, optional
        Clock time of the first water; as planned if left out [-].

    Returns
    -------
    Backwards
        Start, mix temperature and the answer in words [as its fields].

    Raises
    ------
    ValueError
        When a clock time cannot be read or the event is unknown.

    Examples
    --------
    >>> from datetime import datetime
    >>> from shop_calc.trade.timeline.day import DayInputs
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> by_then(plan_day(inputs), "strip", by="12:00").latest_start_h > 1.5
    True

    References
    ----------
    As shop_calc.trade.timeline.backwards.
    """
    inputs = day.samples.inputs if start is None else start_at(day.samples.inputs, start)
    return work_backwards(inputs, event, clock_time(inputs.water_in, by))


def cue_table(day, keys=("face", "look", "strip", "first_steel", "last_steel", "stop")):
    """Set the signs of the day side by side, with what goes wrong at either end.

    Parameters
    ----------
    day : Day
        A planned day [h].
    keys : sequence of str
        Keys of stages [-].

    Returns
    -------
    Table
        A row a stage [-].

    Examples
    --------
    >>> from datetime import datetime
    >>> from shop_calc.trade.timeline.day import DayInputs
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> cue_table(plan_day(inputs), ("stop",)).rows[0][1]
    'the blade rings and leaves dark marks'

    References
    ----------
    Common practice, no source.
    """
    rows = [(s.title, s.cue, s.words.too_early, s.words.too_late) for s in map(day.stage, keys)]
    return table(("what", "the sign", "too early", "too late"), rows)


def mover(day):
    """Give the model of the block: the day of the bench top with another mortar and another room.

    Parameters
    ----------
    day : Day
        The planned day [h].

    Returns
    -------
    callable
        `model(mix_temp_c, air_temp_c, rh_fraction, wind_m_s)`, gives a Day [h].

    Examples
    --------
    >>> from datetime import datetime
    >>> from shop_calc.trade.timeline.day import DayInputs
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> warm = mover(plan_day(inputs))(24.0, 30.0, 0.5, 0.0)
    >>> warm.stage("strip").likely_from_h < plan_day(inputs).stage("strip").likely_from_h
    True

    Notes
    -----
    The stone stays as warm as it lies, so that the base follows the mortar by less than a degree for a degree: the hours
    are those of a plan with this mortar in this room.

    References
    ----------
    As shop_calc.trade.timeline.day.
    """
    inputs = day.samples.inputs

    def model(mix_temp_c, air_temp_c, rh_fraction, wind_m_s):
        return plan_day(replace(inputs.mixed_at(mix_temp_c), room=steady_room(air_temp_c, rh_fraction, wind_m_s)))

    return model


def moved_words(planned):
    """Give the words of the block, beside the day as planned.

    Parameters
    ----------
    planned : Day
        The planned day [h].

    Returns
    -------
    callable
        `words(day, system)`, gives three lines [-].

    Examples
    --------
    >>> from datetime import datetime
    >>> from shop_calc.trade.timeline.day import DayInputs
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> day = plan_day(inputs)
    >>> print(moved_words(day)(day, "both").splitlines()[0])
    First steel likely from 11:02, as planned; look from 10:14.

    References
    ----------
    Common practice, no source.
    """
    first_h = planned.stage("first_steel").likely_from_h

    def words(day, system="both"):
        clock = lambda hour: f"{day.clock(hour):%H:%M}"  # noqa: E731
        first, last, stop = (day.stage(key) for key in ("first_steel", "last_steel", "stop"))
        shift = first.likely_from_h - first_h
        how = "as planned"
        if abs(shift) > SAME_H:
            how = f"{show(abs(shift), 'duration')} {'later' if shift > 0 else 'earlier'} than planned"
        lines = [
            f"First steel likely from {clock(first.likely_from_h)}, {how}; look from {clock(first.look_from_h)}.",
            f"Sides off {clock(day.stage('strip').likely_from_h)}; last steel {clock(last.likely_from_h)} to "
            f"{clock(last.likely_to_h)}; stop {clock(stop.likely_from_h)}.",
        ]
        if day.crowded:
            names = ", ".join(day.stage(key).title.lower() for key in day.crowded)
            lines.append(f"The mortar is ready before the hands are: {names}.")
        return "\n".join(lines)

    return words


def moving_ribbon(planned, title=""):
    """Give the picture of the block: the ribbon of the day over the plan drawn thin.

    Parameters
    ----------
    planned : Day
        The planned day [h].
    title : str
        One line over the picture [-].

    Returns
    -------
    Follow
        Takes a Day [-].

    Examples
    --------
    >>> from datetime import datetime
    >>> from shop_calc.trade.timeline.day import DayInputs
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> moving_ribbon(plan_day(inputs), "A top").alt[:5]
    'A top'

    References
    ----------
    Common practice, no source.
    """
    stages = moved_stages(planned)
    ribbon = RibbonOfTheDay(stages, planned.water_in, planned.load_offsets_h, between_h=CLOCK_ENDS_H, title=title)
    return Follow(ribbon, lambda day: (moved_stages(day), {"first": stages}))


def moved_stages(day):
    """Pick the stages that mortar and room move.

    Parameters
    ----------
    day : Day
        A planned day [h].

    Returns
    -------
    list of Stage
        In order [h].

    Examples
    --------
    >>> from datetime import datetime
    >>> from shop_calc.trade.timeline.day import DayInputs
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> [stage.key for stage in moved_stages(plan_day(inputs))][:2]
    ['face', 'strip']

    References
    ----------
    Common practice, no source.
    """
    return [day.stage(key) for key in MOVED]


def last_stages(day):
    """Say when the steel and every tool end, as the night takes it over.

    Parameters
    ----------
    day : Day
        A planned day [h].

    Returns
    -------
    Said
        Two lines [-].

    Examples
    --------
    >>> from datetime import datetime
    >>> from shop_calc.trade.timeline.day import DayInputs
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> last_stages(plan_day(inputs))
    Last steel: likely 11:42 to 12:05, look from 10:45.
    Stop: likely 12:32, look from 11:21, over by 13:41.

    References
    ----------
    As shop_calc.trade.timeline.day.
    """
    clock = lambda hour: f"{day.clock(hour):%H:%M}"  # noqa: E731
    last, stop = day.stage("last_steel"), day.stage("stop")
    return Said(
        f"Last steel: likely {clock(last.likely_from_h)} to {clock(last.likely_to_h)}, "
        f"look from {clock(last.look_from_h)}.\n"
        f"Stop: likely {clock(stop.likely_from_h)}, look from {clock(stop.look_from_h)}, "
        f"over by {clock(stop.over_by_h)}."
    )
