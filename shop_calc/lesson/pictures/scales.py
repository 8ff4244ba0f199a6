"""Axes that a shop can read: the clock along the bottom, and a second unit along the other side."""

from datetime import timedelta
from math import floor

import numpy as np
from matplotlib.ticker import FixedLocator, FuncFormatter

from shop_calc.lesson.pictures.base import INK, QUIET
from shop_calc.lesson.pictures.lettering import PLAIN
from shop_calc.lesson.pictures.stamps import Stamp
from shop_calc.units import convert, plain_number

LANE = "#EDF0F3"  # the pale ground on which bars lie; round numbers are cut into it in white
_DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def moment(water_in, hours_h):
    """The date and time so many hours after the first water, to the nearest minute.

    >>> from datetime import datetime
    >>> moment(datetime(2026, 5, 4, 8), 2.51)
    datetime.datetime(2026, 5, 4, 10, 31)
    """
    return water_in + timedelta(minutes=floor(float(hours_h) * 60 + 0.5))  # as Day.clock


def clock(water_in, hours_h):
    """Clock time so many hours after the first water.

    Parameters
    ----------
    water_in : datetime
        When the first water meets the powder [-].
    hours_h : float
        Hours after it [h].

    Returns
    -------
    str
        Hours and minutes on a 24-hour clock [-].

    Examples
    --------
    >>> from datetime import datetime
    >>> clock(datetime(2026, 5, 4, 8), 2.5)
    '10:30'
    """
    return moment(water_in, hours_h).strftime("%H:%M")


def day_name(when):
    """Weekday and date, the same words on every machine.

    >>> from datetime import datetime
    >>> day_name(datetime(2026, 5, 4))
    'Mon 4 May'
    """
    return f"{_DAYS[when.weekday()]} {when.day} {_MONTHS[when.month - 1]}"


def span_of(water_in, from_h, to_h):
    """Two clock times with a dash; one where they are the same minute.

    >>> from datetime import datetime
    >>> span_of(datetime(2026, 5, 4, 8), 2.38, 2.89)
    '10:23–10:53'
    """
    start, end = clock(water_in, from_h), clock(water_in, to_h)
    return start if moment(water_in, from_h) == moment(water_in, to_h) else f"{start}–{end}"


def clock_ticks(water_in, from_h, to_h, most=11):
    """Full hours within a stretch of the day, each on both clocks.

    Parameters
    ----------
    water_in : datetime
        When the first water meets the powder [-].
    from_h, to_h : float
        Ends of the stretch, hours after the first water [h].
    most : int
        Most labels that fit [-].

    Returns
    -------
    tuple of list of float and list of str
        Positions in hours after the first water, and labels of two lines [h, -].

    Examples
    --------
    >>> from datetime import datetime
    >>> clock_ticks(datetime(2026, 5, 4, 8), 3.5, 6.2)
    ([4.0, 5.0, 6.0], ['12:00\\nnoon', '13:00\\n1 pm', '14:00\\n2 pm'])
    """
    step = next((s for s in (1, 2, 3, 4, 6, 12, 24, 48) if (to_h - from_h) / s <= most), 96)
    midnight = water_in.replace(hour=0, minute=0, second=0, microsecond=0)
    zero_h = (midnight - water_in).total_seconds() / 3600
    first = int(np.ceil((from_h - zero_h) / step - 1e-9))
    last = int(np.floor((to_h - zero_h) / step + 1e-9))
    places = [zero_h + number * step for number in range(first, last + 1)]
    return places, [_both_clocks(moment(water_in, place)) for place in places]


def _both_clocks(when):
    if when.hour == 0:
        return f"00:00\n{day_name(when)}"
    half = "noon" if when.hour == 12 else f"{when.hour % 12} {'am' if when.hour < 12 else 'pm'}"
    return f"{when:%H:%M}\n{half}"


def clock_axis(axes, water_in, from_h, to_h, most=11):
    """Give the axes a clock along the bottom, hours after the first water as data.

    Parameters
    ----------
    axes : Axes
        Where [-].
    water_in : datetime
        When the first water meets the powder [-].
    from_h, to_h : float
        Limits [h].
    most : int
        Most labels that fit [-].

    Returns
    -------
    list of float
        Where the labels stand: a line of a grid belongs there and nowhere else [h].
    """
    places, labels = clock_ticks(water_in, from_h, to_h, most)
    axes.set_xlim(from_h, to_h)
    edge = 0.03 * (to_h - from_h)  # a label closer to the end would hang over
    kept = [(at, words) for at, words in zip(places, labels, strict=True) if from_h + edge < at < to_h - edge]
    axes.set_xticks([at for at, _ in kept], [words for _, words in kept])
    axes.tick_params(axis="x", labelsize=PLAIN, length=4)
    stamp_ticks(axes.xaxis)
    return [at for at, _ in kept]


def stamp_ticks(axis):
    """Let the labels of an axis whose ticks stay be stamped instead of set anew at each redraw."""
    for label in axis.get_ticklabels():
        label.__class__ = Stamp  # a Stamp is a Text with another way to draw, and nothing else


def nice_step(span, most=7):
    """A round step that gives at most so many intervals.

    >>> nice_step(40.0), nice_step(0.9)
    (10.0, 0.2)
    """
    raw = float(span) / most
    power = 10.0 ** np.floor(np.log10(raw))
    return float(next(power * s for s in (1, 2, 5, 10) if power * s >= raw * (1 - 1e-9)))


def two_units(axes, which, marks, from_unit, to_unit):
    """Ticks that say both units, one under the other.

    Parameters
    ----------
    axes : Axes
        Axes with their final limits [-].
    which : str
        "x" or "y" [-].
    marks : sequence of float
        Where [from_unit].
    from_unit, to_unit : str
        As `units.convert` knows them [-].

    Examples
    --------
    >>> from shop_calc.lesson.pictures.base import new_figure
    >>> figure, axes = new_figure()
    >>> two_units(axes, "x", [0, 10], "kg", "lb")
    >>> [label.get_text() for label in axes.get_xticklabels()]
    ['0\\n0', '10 kg\\n22 lb']
    """
    marks = [float(mark) for mark in marks]
    labels = [
        "0\n0" if mark == 0 == convert(mark, from_unit, to_unit) else
        f"{plain_number(mark)} {from_unit}\n{plain_number(convert(mark, from_unit, to_unit), 2)} {to_unit}"
        for mark in marks
    ]  # fmt: skip
    getattr(axes, f"set_{which}ticks")(marks, labels)
    axes.tick_params(axis=which, labelsize=PLAIN)
    stamp_ticks(getattr(axes, f"{which}axis"))


def second_scale(axes, which, from_unit, to_unit, label, most=7):
    """The other unit on the far side of an axis whose limits are already set and stay.

    Parameters
    ----------
    axes : Axes
        Axes with their final limits [-].
    which : str
        "x" or "y" [-].
    from_unit, to_unit : str
        Unit of the axes and of the second scale, as `units.convert` knows them [-].
    label : str
        What stands beside the second scale [-].
    most : int
        Most intervals [-].

    Returns
    -------
    Axes
        The second axes, with round numbers of their own unit [-].

    Examples
    --------
    >>> from shop_calc.lesson.pictures.base import new_figure
    >>> figure, axes = new_figure()
    >>> _ = axes.set_ylim(0, 40)
    >>> second_scale(axes, "y", "C", "F", "°F").get_ylim()
    (np.float64(32.0), np.float64(104.0))
    """
    limits = convert(np.array(getattr(axes, f"get_{which}lim")()), from_unit, to_unit)
    other = axes.twiny() if which == "x" else axes.twinx()
    getattr(other, f"set_{which}lim")(*limits)
    low, high = sorted(limits)
    step = nice_step(high - low, most)
    places = np.arange(np.ceil(low / step - 1e-9), np.floor(high / step + 1e-9) + 1) * step
    axis = getattr(other, f"{which}axis")
    axis.set_major_locator(FixedLocator(places))
    axis.set_major_formatter(FuncFormatter(lambda value, _: plain_number(value, 3)))
    getattr(other, f"set_{which}label")(label, color=INK, size=12)
    other.grid(False)
    other.tick_params(labelsize=PLAIN, color=QUIET)
    other.patch.set_visible(False)
    for spine in other.spines.values():
        spine.set_visible(False)
    return other
