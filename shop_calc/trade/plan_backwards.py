"""The backward question for a whole job: water in, mix temperature, and the water or ice that makes it."""

from datetime import datetime, timedelta

from shop_calc.trade.batching.water import plan_water
from shop_calc.trade.job_temperatures import temperatures_of
from shop_calc.trade.timeline.backwards import COLDEST_MIX_C, work_backwards


def backwards_lines(plan, event, by):
    """Answer "it must be done by then" for a planned job, down to the water.

    Parameters
    ----------
    plan : Plan
        The plan as it stands [SI].
    event : str
        A key of timeline.backwards.WORDS [-].
    by : datetime
        The clock time [-].

    Returns
    -------
    tuple of str
        The answer, a sentence a line [-].

    Raises
    ------
    ValueError
        When the event is unknown or the time is more than two days away.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> print(backwards_lines(plan, "strip", datetime(2026, 5, 4, 10, 0))[-1])
    For that mix: Warm the mixing water to 82.6 °F (28.1 °C).

    References
    ----------
    As timeline.backwards and batching.water.
    """
    inputs = plan.day.samples.inputs
    found = work_backwards(inputs, event, by)
    lines = list(found.answer)
    first_h = inputs.room.from_h[0]
    if found.latest_start_h is not None and found.latest_start_h < first_h:
        said = f"{inputs.water_in + timedelta(hours=first_h):%H:%M}"
        lines.insert(2, f"Before {said} no air was given; that of {said} was taken: give it in a [[room]] of its own.")
    wanted_c = found.mix_temp_c
    if wanted_c is not None and wanted_c > COLDEST_MIX_C:
        water = plan_water(plan.mix, temperatures_of(plan.job), wanted_c, face_alone=plan.batch.face_alone)
        lines.append(f"For that mix: {water.words}")
    return tuple(lines)


def next_clock(plan, text):
    """Turn a clock time such as 18:00 into the next such moment after the first water.

    Parameters
    ----------
    plan : Plan
        The plan [SI].
    text : str
        Hours and minutes of the day, 24 hours [-].

    Returns
    -------
    datetime
        That time on the day of the pour, or on the day after where it is past [-].

    Raises
    ------
    ValueError
        When the text is no time of the day.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> str(next_clock(make_plan(read_job(demo_job("garden_bench_top"))), "18:00"))
    '2026-05-04 18:00:00'

    References
    ----------
    Common practice, no source.
    """
    try:
        when = datetime.strptime(text.strip(), "%H:%M")
    except ValueError:
        raise ValueError(f"time: {text[:40]!r} given; it must be hours and minutes of the day, as in 18:00") from None
    start = plan.day.water_in
    moment = start.replace(hour=when.hour, minute=when.minute, second=0, microsecond=0)
    return moment if moment > start else moment + timedelta(days=1)
