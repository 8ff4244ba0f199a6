"""The second half of the printed plan: strength, moving, supports, bow, polish, seal, cost."""

from shop_calc.trade.after.moving import team_words
from shop_calc.trade.after.quarter_hour import not_before
from shop_calc.trade.after.stress_words import no_concrete, stress
from shop_calc.trade.report_parts import columns, heading, percent, wrap
from shop_calc.units import show

AFTER = ("move", "bow", "polish", "seal", "cost")  # advice that is for the days after the pour


def after_the_night(plan, system):
    """Write what follows the first night.

    Parameters
    ----------
    plan : Plan
        The plan [SI].
    system : str
        us, si or both [-].

    Returns
    -------
    str
        The parts, a blank line between them [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> after_the_night(plan, "us").splitlines()[0]
    'Strength and moving'

    References
    ----------
    Common practice, no source.
    """
    parts = (
        _moving(plan, system),
        _supports(plan, system),
        _bow(plan, system),
        _finish(plan, system),
        _cost(plan, system),
    )
    return "\n\n".join(part for part in parts if part)


def _when(day, hour_h):
    return f"{not_before(day, hour_h):%a %d %b %H:%M}"


def _moving(plan, system):
    handling, day = plan.handling, plan.day
    rows = [("earliest", "stress", "strength it needs", "way to carry")]
    for carry in handling.carries:
        when = "not at all" if carry.earliest_h is None else _when(day, carry.earliest_h)
        beyond = no_concrete(carry.needed_strength_pa)
        needs = "more than any has" if beyond else stress(carry.needed_strength_pa, system)
        rows.append((when, stress(carry.stress_pa, system), needs, carry.title))
    lift = handling.lift
    mass = (
        f"The piece weighs {show(lift.mass_kg, 'mass', system)}, {show(lift.mass_kg_m2, 'areal_mass', system)}; "
        f"{team_words(lift, system)}."
    )
    return (
        heading("Strength and moving")
        + wrap(handling.morning.words(system))
        + "\n\n"
        + columns(rows)
        + "\n"
        + wrap(mass)
    )


def _supports(plan, system):
    checks = [*plan.handling.supports, *plan.handling.legs]
    if not checks:
        return ""
    rows = [("where", "stress", "may bear", "")]
    for check in checks:
        size = f", {show(check.size_m, 'length', system)}" if check.holds else ""  # no length that fails is printed
        pulls = [(f"{check.where}{size}", check.stress_pa)]
        if check.lean_pa is not None:
            pulls = [
                (f"{check.where}{size}: itself", check.own_pa),
                ("  and a person leaning", check.own_pa + check.lean_pa),
                ("  or kneeling down slowly", check.stress_pa),
                ("  or dropping onto a knee", check.own_pa + check.drop_pa),
            ]
        for where, pull in pulls:
            too_much = "does not hold" if check.lean_pa is None else "too much"
            holds = "holds" if pull <= check.limit_pa else too_much
            rows.append((where, stress(pull, system), stress(check.limit_pa, system), holds))
    return heading("What it may stand on") + columns(rows)


def _bow(plan, system):
    bow = plan.bow
    rows = [("", "likely", "between", "level")]
    for words, bowing in (("both faces dry alike", bow.two_layer), ("only the top dries", bow.one_face)):
        between = f"{show(bowing.low_m, 'length', system)} and {show(bowing.high_m, 'length', system)}"
        rows.append((words, show(bowing.likely_m, "length", system), between, bowing.level))
    air = f"In air of {percent(bow.rh_fraction)}, over its longest line of {show(bow.diagonal_m, 'length', system)}."
    return heading("How far it may bow") + columns(rows) + "\n" + wrap(air)


def _finish(plan, system):
    lines = []
    for step in plan.finish.steps:
        when = "later" if step.from_h is None else _when(plan.day, step.from_h)
        lines += [wrap(f"{when}: {step.work}"), wrap(f"cue: {step.cue}", 4)]
        if step.safety:
            lines.append(wrap(f"! {step.safety}", 4))
    return heading("Polish and seal") + "\n".join(lines)


def _cost(plan, system):
    cost = plan.cost
    if not cost.lines:
        return ""
    rows = [("what", "packs", "cash", "used of it")]
    for line in cost.lines:
        rows.append((line.what, f"{line.count}", cost.money(line.cash), cost.money(line.pro_rata)))
    area = plan.layers.top_area_m2
    per = "m²" if system == "si" else "ft²"
    scale = 1.0 if system == "si" else 0.3048**2
    whole = "in all, of what has a price" if cost.unpriced else "in all"
    rows.append((whole, "", cost.money(cost.cash), cost.money(cost.pro_rata)))
    rows.append((f"for one {per}", "", cost.money(cost.cash_m2 * scale), cost.money(cost.pro_rata_m2 * scale)))
    return heading(f"Cost of {show(area, 'area', system)}") + columns(rows)
