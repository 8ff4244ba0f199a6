"""The sheet inside a notebook: the same pages, without a frame and without the network."""

from shop_calc.lesson.sheet.build import sheet_body
from shop_calc.lesson.sheet.printed import both, clean, clock, date, span
from shop_calc.trade.after.quarter_hour import not_before


class Sheet:
    """A shop sheet as the last line of a cell.

    Its styles begin with its own class, so that they change nothing else on the page; where a notebook is not
    trusted and drops them, the text still reads from top to bottom.
    """

    def __init__(self, html, text):
        self.html, self.text = html, text

    def _repr_mimebundle_(self, include=None, exclude=None):
        return {"text/html": self.html, "text/plain": self.text}


def show_sheet(plan):
    """Make the sheet of a plan ready to stand as the last line of a cell.

    Not for printing: `save_sheet` writes a file that a browser prints.

    Parameters
    ----------
    plan : Plan
        The plan [SI].

    Returns
    -------
    Sheet
        Shown by the notebook; its plain text says the day in four lines [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> print(show_sheet(make_plan(read_job(demo_job("garden_bench_top")))).text.splitlines()[0])
    Shop sheet, 2 pages: Garden bench top, Monday 4 May 2026, first water 08:00.

    References
    ----------
    Common practice, no source.
    """
    return Sheet(sheet_body(plan, inline=True), sheet_text(plan))


def sheet_text(plan):
    """Say the sheet in a few lines.

    Parameters
    ----------
    plan : Plan
        The plan [SI].

    Returns
    -------
    str
        Four lines [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> print(sheet_text(make_plan(read_job(demo_job("garden_bench_top")))).splitlines()[1])
    Chill the mixing water to 41.3 °F (5.2 °C). Set aside 26 lb (11.8 kg) for the face.

    References
    ----------
    Common practice, no source.
    """
    day, stage = plan.day, plan.day.stage
    mass = both(plan.batch.on_scale_kg, "mass")
    windows = ", ".join(
        f"{stage(key).title.lower()} {span(day, stage(key).likely_from_h, stage(key).likely_to_h)}"
        for key in ("face", "strip", "first_steel", "last_steel", "stop")
    )
    first = min((carry.earliest_h for carry in plan.handling.carries if carry.earliest_h is not None), default=None)
    when = None if first is None else not_before(day, first)
    move = "not within the days planned" if when is None else f"from {date(when)} {when:%H:%M}"
    head = f"{clean(plan.job.name)}, {date(day.water_in, long=True)}, first water {clock(day, 0.0)}"
    return "\n".join(
        (
            f"Shop sheet, 2 pages: {head}.",
            f"{plan.batch.water.words} Set aside {mass['us']} ({mass['si']}) for the face.",
            f"Likely: {windows}.",
            f"Night: {plan.cure.picked.title.lower()}. Move {move}.",
        )
    )
