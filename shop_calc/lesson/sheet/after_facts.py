"""What the sheet says of the time after the trowel: cover, carry, polish, seal; and what is still to be done first."""

from shop_calc.lesson.sheet.printed import clean, date
from shop_calc.trade.after.moving import lift_advice
from shop_calc.trade.after.quarter_hour import not_before
from shop_calc.units import show

# Where a line of advice is read: beside the day, beside the mixer, or after the trowel.
_MIXING = ("mix", "batch", "water")
_AFTER = ("cure", "move", "bow", "polish", "seal", "cost")


def after_facts(plan):
    """Print what happens from the last pass to the sealed piece, with dates.

    Parameters
    ----------
    plan : Plan
        The plan [SI].

    Returns
    -------
    dict
        "cover", "carries" and "steps" as strings [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> facts = after_facts(make_plan(read_job(demo_job("garden_bench_top"))))
    >>> facts["carries"][-1]["when"]
    'Not at all'

    References
    ----------
    Common practice, no source.
    """
    cure, day = plan.cure, plan.day
    finish = plan.finish
    return {
        "cover": cure.picked.title,
        "cover_work": "" if cure.picked.work == "none" else cure.picked.work,
        "cover_from": _stamp(day.clock(cure.from_h)),
        "cover_until": _stamp(day.clock(cure.until_h)),
        "heat": cure.heat,
        "after": _sentence(cure.after.removeprefix("From the morning: ")),
        "move_cue": next(step.cue for step in finish.steps if step.key == "move"),
        "carries": _carries(plan),
        "steps": [
            {
                "key": step.key, "title": step.title, "work": _work(finish, step), "cue": step.cue,
                "when": "when it comes" if step.from_h is None else _from(day, step.from_h),
            }
            for step in finish.steps if step.key != "move"
        ],
    }  # fmt: skip


def _carries(plan):
    """Ways of carrying by the hour from which they are free, the earliest first, those that never are at the end."""
    ways = {}
    for carry in plan.handling.carries:
        when = "" if carry.earliest_h is None else _from(plan.day, carry.earliest_h)
        ways.setdefault((carry.earliest_h is None, carry.earliest_h or 0.0, when), []).append(carry.title)
    return [
        {"when": when or "Not at all", "ways": "; ".join(title[0].lower() + title[1:] for title in ways[key])}
        for key in sorted(ways) for when in key[2:]
    ]  # fmt: skip


def _work(finish, step):
    """What a step takes, in fewer words than the plan has room for."""
    if step.key == "polish":
        way = "wet" if finish.choice.wet else "dry, under a shroud with a vacuum"
        return f"{way}, grits {', '.join(str(grit) for grit in finish.grits)}"
    if step.key == "check":
        hours = show(finish.sheet_h, "duration")
        return f"tape a clear sheet onto the face for {hours} or more, weigh the piece two days running"
    if step.key == "seal":
        return f"{finish.coats:.0f} thin coats, {show(finish.sealer_both_m3, 'liquid')} for both faces and the edges"
    return step.work


def _sentence(text):
    return text[:1].upper() + text[1:]


def _stamp(when):
    return f"{date(when)} {when:%H:%M}"


def _from(day, hour_h):
    return _stamp(not_before(day, hour_h))


def advice_facts(plan):
    """Sort the grave lines of the plan to the place where they are read.

    Lines on carrying that the table of carrying already says, time by time, are left out.

    Parameters
    ----------
    plan : Plan
        The plan [SI].

    Returns
    -------
    dict of str to list of str
        "stop" with its reasons, and "day", "mix", "after" [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> advice_facts(make_plan(read_job(demo_job("garden_bench_top"))))["stop"]
    []

    References
    ----------
    Common practice, no source.
    """
    found = {"stop": [], "day": [], "mix": [], "after": []}
    for line in plan.advice:
        if line.level == "note" or said_by_the_table(plan, line):
            continue
        place = "mix" if line.where in _MIXING else "after" if line.where in _AFTER else "day"
        found["stop" if line.level == "stop" else place].append(clean(line.text))
    return found


def said_by_the_table(plan, line):
    """Whether a line of advice only repeats what stands in the table of carrying or beside the mass.

    Parameters
    ----------
    plan : Plan
        The plan [SI].
    line : Advice
        A line of it [-].

    Returns
    -------
    bool
        True when the sheet says it elsewhere [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> sum(said_by_the_table(plan, line) for line in plan.advice)
    3

    References
    ----------
    Common practice, no source.
    """
    if line.where != "move":
        return False
    table = line.text.startswith("Move it only from ") or any(
        line.text.startswith(f"{carry.title}: not ") for carry in plan.handling.carries
    )
    return table or line.text == lift_advice(plan.handling.lift)[0].text
