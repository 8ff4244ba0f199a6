"""Lesson 10: the next pour, planned with the log and without it."""

from dataclasses import replace
from datetime import datetime
from functools import lru_cache

from shop_calc.lesson.moves.shop_log import minutes
from shop_calc.lesson.moves.stiffening import CLOCK_ENDS_H, SAME_H, moved_stages
from shop_calc.lesson.pictures.follow import Follow
from shop_calc.lesson.pictures.from_plan import ribbon_of
from shop_calc.lesson.pictures.ribbon import RibbonOfTheDay
from shop_calc.trade.logbook.calibrate import fitted_bands
from shop_calc.trade.timeline.day import plan_day
from shop_calc.trade.timeline.room import steady_room
from shop_calc.units import show

NEXT = datetime(2026, 11, 21, 8)  # invented: a Saturday in a cold shop


def before_after(before, after, title=""):
    """Draw a day planned with a log, with the plan that knew nothing drawn thin above it.

    Parameters
    ----------
    before, after : Day
        The day on the defaults, and with the log [h].
    title : str
        One line over the picture [-].

    Returns
    -------
    RibbonOfTheDay
        The picture [h].

    Examples
    --------
    >>> from shop_calc.lesson.moves.shop_log import example
    >>> day = example()[0]
    >>> before_after(day, day, "A top").alt[:5]
    'A top'

    References
    ----------
    Common practice, no source.
    """
    ribbon = ribbon_of(before, title=title)
    ribbon.update(after.stages, first=before.stages)
    return ribbon


def next_pour(day, log, recipe):
    """Give the model of the block: the next pour, with the first so many pours of the log.

    Parameters
    ----------
    day : Day
        A planned day [h].
    log : ShopLog
        A log of several pours [as its fields].
    recipe : str
        Recipe [-].

    Returns
    -------
    callable
        `model(pour_count, mix_temp_c, air_temp_c)`, gives two days: with the log, and without [h].

    Examples
    --------
    >>> from shop_calc.lesson.moves.shop_log import example
    >>> day, pour = example()
    >>> with_log, without = next_pour(day, (pour,), "demo mortar")(0, 12.0, 12.0)
    >>> with_log.stages == without.stages
    True

    Notes
    -----
    With no pour the bands are those of the defaults, to the last digit.

    References
    ----------
    As shop_calc.trade.logbook.calibrate.
    """
    pours = tuple(getattr(log, "pours", log))
    bands = [fitted_bands(pours[:count], recipe) for count in range(len(pours) + 1)]

    @lru_cache(maxsize=2)
    def without(mix_temp_c, air_temp_c):
        return plan_day(
            replace(
                day.samples.inputs.mixed_at(mix_temp_c), water_in=NEXT, room=steady_room(air_temp_c, 0.5, 0.0),
                bands=None, base_bands=None,
            )
        )

    def model(pour_count, mix_temp_c, air_temp_c):
        count = min(max(round(pour_count), 0), len(pours))
        plain = without(mix_temp_c, air_temp_c)
        return (plain if count == 0 else plan_day(replace(plain.samples.inputs, bands=bands[count]))), plain

    return model


def next_words(days, system="both"):
    """Give the words of the block.

    Parameters
    ----------
    days : (Day, Day)
        With the log, and without [h].
    system : str
        "us", "si" or "both" [-].

    Returns
    -------
    str
        Two lines [-].

    Examples
    --------
    >>> from shop_calc.lesson.moves.shop_log import example
    >>> day, pour = example()
    >>> print(next_words(next_pour(day, (pour,), "demo mortar")(0, 16.0, 21.0)).splitlines()[0])
    First steel likely from 11:02: no pour counted, exactly the defaults.

    References
    ----------
    Common practice, no source.
    """
    after, before = days
    new, old = (one.stage("first_steel") for one in days)
    shift = new.likely_from_h - old.likely_from_h
    if after is before:
        how = "no pour counted, exactly the defaults"
    elif abs(shift) < SAME_H:
        how = "as without the log"
    else:
        how = f"{show(abs(shift), 'duration')} {'later' if shift > 0 else 'earlier'} than without the log"
    wide = [minutes(stage.over_by_h - stage.look_from_h) for stage in (new, old)]
    return (
        f"First steel likely from {after.clock(new.likely_from_h):%H:%M}: {how}.\n"
        f"Look from {after.clock(new.look_from_h):%H:%M}, over by {after.clock(new.over_by_h):%H:%M}: "
        f"{wide[0]} wide, without the log {wide[1]}."
    )


def next_ribbon(day, title=""):
    """Give the picture of the block: the day with the log, the day without it drawn thin.

    Parameters
    ----------
    day : Day
        A planned day [h].
    title : str
        One line over the picture [-].

    Returns
    -------
    Follow
        Takes two days [-].

    Examples
    --------
    >>> from shop_calc.lesson.moves.shop_log import example
    >>> next_ribbon(example()[0], "A top").alt[:5]
    'A top'

    References
    ----------
    Common practice, no source.
    """
    ends = (CLOCK_ENDS_H[0], 11.5)
    ribbon = RibbonOfTheDay(moved_stages(day), NEXT, day.load_offsets_h, between_h=ends, title=title)
    return Follow(ribbon, lambda days: (moved_stages(days[0]), {"first": moved_stages(days[1])}))
