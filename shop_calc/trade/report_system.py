"""A plan whose sentences speak one system of units, for a print that was asked for in one."""

from dataclasses import replace

from shop_calc.units import one_system


def in_one_system(plan, system):
    """Bring the sentences of a plan down to one system; its numbers stay as they are.

    Parameters
    ----------
    plan : Plan
        The plan [SI].
    system : str
        us, si or both [-].

    Returns
    -------
    Plan
        The same plan; with "both" the very same [SI].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> in_one_system(plan, "us").batch.water.words, in_one_system(plan, "si").batch.water.words
    ('Chill the mixing water to 41.3 °F.', 'Chill the mixing water to 5.2 °C.')

    References
    ----------
    Common practice, no source.
    """
    if system == "both":
        return plan

    def spoken(item, *fields):
        return replace(item, **{name: one_system(getattr(item, name), system) for name in fields})

    batch, finish = plan.batch, plan.finish
    return replace(
        plan,
        advice=tuple(spoken(line, "text", "reason") for line in plan.advice),
        form=replace(plan.form, rows=tuple(spoken(row, "note") for row in plan.form.rows)),
        batch=replace(
            batch, water=spoken(batch.water, "words"), order=tuple(spoken(step, "text", "caution") for step in batch.order)
        ),
        cure=spoken(plan.cure, "reason", "after"),
        finish=replace(finish, steps=tuple(spoken(step, "work", "cue", "safety") for step in finish.steps)),
    )
