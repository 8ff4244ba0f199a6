"""Clock times of the days after, rounded up to a quarter hour."""

from datetime import timedelta

QUARTER_S = 900  # judgement: nobody plans a morning finer


def not_before(day, hour_h):
    """Clock time from which something may be done, the next full quarter hour.

    Parameters
    ----------
    day : Day
        The day [h].
    hour_h : float
        Hours after the first water [h].

    Returns
    -------
    datetime
        Never earlier than the hour given [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> day = make_plan(read_job(demo_job("garden_bench_top"))).day
    >>> str(not_before(day, 24.01))
    '2026-05-05 08:15:00'

    References
    ----------
    Common practice, no source.
    """
    quarters = -int(-(hour_h * 3600.0 - 1e-3) // QUARTER_S)
    start = day.water_in
    past = (start - start.replace(minute=0, second=0, microsecond=0)).total_seconds() % QUARTER_S
    when = start + timedelta(seconds=quarters * QUARTER_S - past)
    return when if (when - start).total_seconds() >= hour_h * 3600.0 - 1e-3 else when + timedelta(seconds=QUARTER_S)
