"""How numbers and names stand on the sheet: both systems, clock times, dates, clean names."""

import unicodedata

from shop_calc.units import show

_DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
_MONTHS = ("January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
           "December")  # fmt: skip


def both(value, kind):
    """Print a quantity in both systems, apart, so that the first can stand larger.

    Parameters
    ----------
    value : float
        The quantity [SI unit of the kind].
    kind : str
        A kind of units.KINDS [-].

    Returns
    -------
    dict of str to str
        "us" and "si" [-].

    Examples
    --------
    >>> both(0.0381, "length")
    {'us': '1 1/2"', 'si': '38.1 mm'}

    References
    ----------
    Common practice, no source.
    """
    return {"us": show(value, kind, "us"), "si": show(value, kind, "si")}


def clock(day, hour_h):
    """Print an hour of the day as clock time, with the weekday when it is not that of the first water.

    Parameters
    ----------
    day : Day
        The day [h].
    hour_h : float
        Hours after the first water [h].

    Returns
    -------
    str
        24-hour clock [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> day = make_plan(read_job(demo_job("garden_bench_top"))).day
    >>> clock(day, 2.5), clock(day, 17.0)
    ('10:30', 'Tue 01:00')

    References
    ----------
    Common practice, no source.
    """
    when = day.clock(hour_h)
    other = "" if when.date() == day.water_in.date() else f"{weekday(when)[:3]} "
    return f"{other}{when:%H:%M}"


def span(day, from_h, to_h):
    """Print a window of the clock; one time where both ends are the same minute.

    Parameters
    ----------
    day : Day
        The day [h].
    from_h, to_h : float
        Ends, hours after the first water [h].

    Returns
    -------
    str
        Two times with a dash, or one [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> span(make_plan(read_job(demo_job("garden_bench_top"))).day, 1.0, 1.5)
    '09:00–09:30'

    References
    ----------
    Common practice, no source.
    """
    start, end = clock(day, from_h), clock(day, to_h)
    return start if start == end else f"{start}–{end}"


def weekday(when):
    """Name of the day, the same on every machine.

    Parameters
    ----------
    when : datetime
        A date [-].

    Returns
    -------
    str
        In English [-].

    Examples
    --------
    >>> from datetime import datetime
    >>> weekday(datetime(2026, 5, 4))
    'Monday'

    References
    ----------
    Common practice, no source.
    """
    return _DAYS[when.weekday()]


def date(when, long=False):
    """Print a date.

    Parameters
    ----------
    when : datetime
        A date [-].
    long : bool
        With full names and the year [-].

    Returns
    -------
    str
        The date [-].

    Examples
    --------
    >>> from datetime import datetime
    >>> date(datetime(2026, 5, 4)), date(datetime(2026, 5, 4), True)
    ('Mon 4 May', 'Monday 4 May 2026')

    References
    ----------
    Common practice, no source.
    """
    month = _MONTHS[when.month - 1]
    if long:
        return f"{weekday(when)} {when.day} {month} {when.year}"
    return f"{weekday(when)[:3]} {when.day} {month[:3]}"


def clean(name):
    """Make a name fit for one line: no control signs, no line breaks.

    Not a protection of the page: the template escapes whatever it is given.

    Parameters
    ----------
    name : str
        As a person typed it [-].

    Returns
    -------
    str
        The same without signs that no paper shows [-].

    Examples
    --------
    >>> clean("bench\\n top\\x07")
    'bench top'

    References
    ----------
    Unicode general categories Cc and Cs.
    """
    kept = "".join(sign if unicodedata.category(sign) not in ("Cc", "Cs") else " " for sign in str(name))
    return " ".join(kept.split())
