"""The small print: what was assumed, how sure it is, and where the numbers come from."""

from shop_calc import defaults
from shop_calc.lesson.sheet.printed import clean
from shop_calc.lesson.sheet.words import MARKS
from shop_calc.trade.jobs.job_fields import FIELDS
from shop_calc.units import plain_number, show

# Parts of a job whose open entries change what is weighed or when; those of the finish stand at their step.
_SECTIONS = ("layers", "mix", "materials", "mixer", "day", "room")
# Rows of the table that move the day most; they are named whether or not the job gave them.
_KEY_ROWS = ("set_time_initial", "activation_energy", "first_steel_pr_low")


def source_facts(plan):
    """Print assumptions and sources, each with its mark.

    Parameters
    ----------
    plan : Plan
        The plan [SI].

    Returns
    -------
    dict
        "assumed" and "key" lines, and "sources" by mark [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> [row["mark"] for row in source_facts(make_plan(read_job(demo_job("garden_bench_top"))))["sources"]][:2]
    ['read', 'memory']

    References
    ----------
    Marks: DEVELOPERS.md.
    """
    return {
        "assumed": _assumed(plan.job),
        "key": [_row(defaults.get(name), plan.log) for name in _KEY_ROWS],
        "log": _log(plan.log),
        "recipe": {"name": clean(plan.mix.recipe_name), "mark": plan.mix.mark},
        "ratio": f"{plan.mix.w_cm:.3f}" if plan.mix.w_cm_high - plan.mix.w_cm_low <= 0.005 else
        f"{plan.mix.w_cm_low:.2f} to {plan.mix.w_cm_high:.2f}",
        "phi": plain_number(plan.mix.phi, 3),
        "strength": show(plan.handling.strength.counted_pa, "pressure"),
        "sources": _sources(plan.working),
    }  # fmt: skip


def _row(row, log):
    """A row of the table with its band, or what the shop's own log makes of it."""
    unit = "" if row.unit == "-" else f" {row.unit}"
    low, value, high, mark = row.low, row.value, row.high, row.mark
    part = None if log is None else next((part for part in (log.face, log.base) if part.pour_count), None)
    if part is not None and row.name in part.bands:
        scale = row.value / defaults.si(row.name)  # the bands are in SI, the row is in its own unit
        low, value, high = (bound * scale for bound in part.bands[row.name])
        mark = "your log"
    band = "" if low is None else f", {plain_number(low)} to {plain_number(high)}"
    return f"{row.label}: {plain_number(value)}{unit}{band} ({mark})"


def _log(log):
    """Which log the clock goes by, and on how many pours it stands; empty when on none."""
    if log is None or log.inputs_bands == (None, None):
        return None
    pours = max(log.face.pour_count, log.base.pour_count)
    return {"name": clean(log.name), "pours": f"{pours} {'pour' if pours == 1 else 'pours'}"}


def _assumed(job):
    """Entries that were left out of the job and got a number from the table."""
    lines = []
    for section in _SECTIONS:
        for field in FIELDS[section]:
            if f"{section}.{field.name}" not in job.assumed or not field.row:
                continue
            if field.name in _unused(job):
                continue
            row = defaults.get(field.row)
            lines.append(f"{row.label} {_plain(row)} ({row.mark})")
    return list(dict.fromkeys(lines))


def _unused(job):
    """Entries of the mixer that this job does not need: a drum goes by its rated volume, all else by what it holds."""
    rated = job.mixer["vessel"] == "drum" and job.mixer["rated"] is not None
    return ("usable",) if rated else ("drum_share",)


def _plain(row):
    if row.unit == "fraction":
        return show(row.value, "fraction")
    if row.unit == "C":
        return show(row.value, "temperature")
    return f"{plain_number(row.value)} {row.unit}".strip(" -")


def _sources(working):
    """What was read and what was recalled, by name; the rest only counted, its sources stand in the plan."""
    named, count = {"read": {}, "memory": {}}, {}
    for step in working:
        count[step.mark] = count.get(step.mark, 0) + 1
        for source in step.source.split("; ") if step.mark in named else ():
            named[step.mark][source.removeprefix("from memory of ").removesuffix(", from memory")] = None
    return [
        {"mark": mark, "count": str(count[mark]), "sources": "; ".join(_longest(named.get(mark, ())))}
        for mark, _ in MARKS
        if mark in count
    ]


def _longest(sources):
    """Leave out a source that another one names with its section."""
    return [one for one in sources if not any(other != one and other.startswith(f"{one},") for other in sources)]
