"""The whole plan as text: what to cut, weigh, mix, watch and cover, with the warnings."""

import textwrap

from shop_calc.trade.problems import plain
from shop_calc.trade.report_after import AFTER, after_the_night
from shop_calc.trade.report_parts import columns, heading, percent, wrap
from shop_calc.trade.report_system import in_one_system
from shop_calc.trade.shape.drop_words import drop_words
from shop_calc.units import show

_LEVEL_WORDS = {"stop": "DO NOT POUR LIKE THIS", "act": "DO", "note": "KNOW"}


def report(plan, system="both"):
    """Write the plan of a job as text.

    Parameters
    ----------
    plan : Plan
        The plan [SI].
    system : str
        us, si or both [-].

    Returns
    -------
    str
        Lines of at most 100 characters where names allow it [-].

    Raises
    ------
    ValueError
        When the system is none of the three.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> report(make_plan(read_job(demo_job("garden_bench_top")))).splitlines()[0]
    'Garden bench top'

    References
    ----------
    Common practice, no source.
    """
    if system not in ("us", "si", "both"):
        raise ValueError(f"units: {system!r} given; it must be us, si or both")
    plan = in_one_system(plan, system)
    parts = [
        _head(plan, system), _warnings(plan, ("stop", "act"), "Before you pour"), _piece(plan, system), _form(plan, system),
        _mix(plan, system), _water(plan, system), *(_load(plan, load, system) for load in plan.batch.loads),
        _order(plan), _day(plan), _drying(plan, system), _night(plan, system), after_the_night(plan, system),
        _warnings(plan, ("stop", "act", "note"), "After the pour", after=True), _warnings(plan, ("note",), "Good to know"),
        _foot(),
    ]  # fmt: skip
    return plain("\n\n".join(part for part in parts if part)) + "\n"


def _head(plan, system):
    clean = " ".join(plan.job.name.split())
    clean = "".join(sign for sign in clean if sign.isprintable())
    start = plan.day.water_in
    return f"{clean}\n{'=' * min(len(clean), 100)}\nFirst water {start:%A %d %B %Y, %H:%M}"


def _piece(plan, system):
    layers, batch = plan.layers, plan.batch
    rows = [
        ("thickness", show(layers.thickness_m, "length", system)),
        ("of that face", show(layers.face_thickness_m, "length", system)),
        ("base under it", show(layers.base_depth_m, "length", system)),
        ("top surface", show(layers.top_area_m2, "area", system)),
        ("exposed edges", show(layers.exposed_length_m, "length", system)),
        *(("dropped edge" if i == 0 else "", words) for i, words in enumerate(drop_words(plan.piece.drop, system))),
        ("volume", show(layers.total_m3, "volume", system)),
        ("face, base", f"{show(layers.face_m3, 'volume', system)}, {show(layers.core_m3, 'volume', system)}"),
        ("narrowest strip", f"{show(layers.narrowest_width_m, 'length', system)}, {layers.narrowest_where}"),
        ("fresh mass", show(plan.form.mass_kg, "mass", system)),
        ("mixed in all", f"{show(batch.mixed_m3, 'volume', system)}, {show(batch.total_kg, 'mass', system)}"),
    ]
    return heading("The piece") + columns(rows)


def _form(plan, system):
    form = plan.form
    rows = [
        (f"{row.count} x", row.name, f"{show(row.length_m, 'length', system)} x {show(row.width_m, 'length', system)}",
         row.note)
        for row in form.rows
    ]  # fmt: skip
    extra = (
        f"Caulk {show(form.caulk_length_m, 'length', system)}; {form.screw_count} screws, from outside. Sideways the mix "
        f"pushes with up to {show(form.pressure_pa, 'pressure', system)}."
    )
    return heading("Cut for the form") + columns(rows) + "\n" + wrap(extra)


def _mix(plan, system):
    mix, batch = plan.mix, plan.batch
    ratio = f"{mix.w_cm:.3f}"
    if mix.w_cm_high - mix.w_cm_low > 0.005:
        ratio = f"{mix.w_cm_low:.2f} to {mix.w_cm_high:.2f}, the bag does not say"
    rows = [
        ("recipe", f"{mix.recipe_name} ({mix.mark})"),
        ("water to binder", ratio),
        ("mortar share of base", f"{mix.phi:.3f} by volume"),
        ("mortar to make", f"{show(batch.mortar_m3, 'volume', system)}, {show(batch.mortar_kg, 'mass', system)}"),
        ("set aside for face", f"{show(batch.on_scale_kg, 'mass', system)}, {show(batch.face_share_m3, 'volume', system)}, "
         f"{percent(batch.set_aside_fraction, 1)} of the mortar"),
        ("mortar saved", f"{percent(batch.mortar_saved_fraction, 1)} against all mortar"),
        ("work at the mixer", f"{batch.person_h:.1f} person-hours in {len(batch.loads)} "
         + ("load" if len(batch.loads) == 1 else "loads")),
    ]  # fmt: skip
    buy = [(each.name, show(each.total_kg, "mass", system), _apart(each, system)) for each in batch.ingredients]
    return heading("The mix") + columns(rows) + "\n\n" + "In all, face and base together\n" + columns(buy)


def _apart(each, system):
    if not each.face_kg or not each.base_kg:
        return "face only" if each.face_kg else "base only"
    return f"face {show(each.face_kg, 'mass', system)}, base {show(each.base_kg, 'mass', system)}"


def _water(plan, system):
    water = plan.batch.water
    rows = [
        ("wanted mix", show(water.wanted_mix_temp_c, "temperature", system)),
        ("water", show(water.water_temp_c, "temperature", system)),
        ("ice", f"{percent(water.ice_share)} of the water" if water.ice_share else "none"),
        ("mortar comes out at", show(water.mix_temp_c, "temperature", system)),
        ("base, with its stone", show(water.base_temp_c, "temperature", system)),
        ("water and ice reach", f"{show(water.coldest_c, 'temperature', system)} to "
         f"{show(water.warmest_c, 'temperature', system)}"),
    ]  # fmt: skip
    return heading("Water today") + wrap(water.words) + "\n" + columns(rows)


_STAGE_WORDS = {"mix": "into the mortar", "base": "to the base, after setting aside", "face": "into the face share"}
_NOTHING_SET_ASIDE = {**_STAGE_WORDS, "base": "to the base"}


def _load(plan, load, system):
    start = plan.day.clock(load.water_in_offset_h)
    lines = [
        heading(f"Weigh sheet, load {load.number} of {len(plan.batch.loads)}: {load.name}, water in at {start:%H:%M}")
    ]
    for stage, words in (_STAGE_WORDS if load.face_kg > 0 else _NOTHING_SET_ASIDE).items():
        rows = []
        for line in load.stage(stage):
            mass = show(line.mass_kg, "mass", system)
            if line.held_back_kg:
                mass = f"{show(line.first_kg, 'mass', system)}, then at most {show(line.held_back_kg, 'mass', system)}"
            rows.append(("[ ]", line.ingredient, mass, line.note))
        if rows:
            lines.append(f"{words}\n{columns(rows)}\n")
        if stage == "mix" and load.face_kg > 0 and load.base_m3 > 0:
            lines.append(f"set aside for the face: {show(load.set_aside_kg, 'mass', system)}, covered\n")
    return "".join(lines).rstrip("\n")


def _order(plan):
    lines = []
    for step in plan.batch.order:
        lines.append(textwrap.fill(f"{step.number:2d}. {step.text}", 100, subsequent_indent="    "))
        if step.caution:
            lines.append(textwrap.fill(f"! {step.caution}", 100, initial_indent="    ", subsequent_indent="      "))
    return heading("Order at the mixer") + "\n".join(lines)


def _day(plan):
    day, lines = plan.day, []
    for stage in day.stages:
        likely = f"{day.clock(stage.likely_from_h):%H:%M}-{day.clock(stage.likely_to_h):%H:%M}"
        if stage.key == "stop":
            likely = f"{day.clock(stage.likely_from_h):%H:%M}      "
        over_h = stage.over_by_h if stage.deadline_h is None else min(stage.over_by_h, stage.deadline_h)
        times = f"{day.clock(stage.look_from_h):%H:%M}   {likely}   {day.clock(over_h):%H:%M}"
        tonight = plan.cure.picked.title
        does = f"{stage.title}: {stage.tool}"
        if stage.key == "stop":
            does = f"Stop: {tonight[0].lower()}{tonight[1:]}"
        elif stage.key == "base":  # its window opens with the first water
            does = f"{stage.title}, each load as it is mixed: {stage.tool}"
        lines.append(f"{times}   {does}")
        lines.append(textwrap.fill(f"cue: {stage.cue}", 100, initial_indent=" " * 30, subsequent_indent=" " * 35))
        if stage.deadline_h is not None:
            late = f"at the latest {day.clock(stage.deadline_h):%H:%M}, for then {stage.words.too_late}"
            lines.append(textwrap.fill(late, 100, initial_indent=" " * 30, subsequent_indent=" " * 35))
        if stage.words.safety:
            lines.append(textwrap.fill(f"! {stage.words.safety}", 100, initial_indent=" " * 30,
                                       subsequent_indent=" " * 32))  # fmt: skip
    table = "look    likely        over by\n" + "\n".join(lines)
    return heading("The day: the cue decides, the clock says when to look") + table


def _drying(plan, system):
    drying = plan.drying
    rows = [
        ("largest evaporation", f"{show(drying.peak_kg_m2_h, 'rate', system)} at {plan.day.clock(drying.peak_at_h):%H:%M}: "
         f"{drying.level} for a face that bleeds little"),
        ("its band", f"{show(drying.peak_low_kg_m2_h, 'rate', system)} to {show(drying.peak_high_kg_m2_h, 'rate', system)}"),
        ("lost by the last steel", f"{percent(drying.lost_share)} of the water of the face, if it lies open"),
    ]  # fmt: skip
    return heading("What the air takes") + columns(rows)


def _night(plan, system):
    cure, day, lines = plan.cure, plan.day, []
    for choice in cure.choices:
        lost = "next to none"
        if choice.water_lost_kg_m2:
            lost = f"about {show(choice.water_lost_kg_m2, 'areal_mass', system)}"
        if choice.bound_kg_m2 > 1.05 * choice.water_lost_kg_m2:
            lost += f", at most {show(choice.bound_kg_m2, 'areal_mass', system)}"
        sign = "->" if choice.key == cure.pick else "  "
        lines.append(f"{sign} {choice.title}")
        lines.append(
            wrap(
                f"water lost {lost}; by morning as old as {choice.morning_age_h:.0f} h at "
                f"{show(21.0, 'temperature', system)}; work: {choice.work}",
                6,
            )
        )
        lines.append(wrap(f"surface: {choice.surface}; sealer: {choice.sealing}", 6))
    until = f"{day.clock(cure.from_h):%a %H:%M} to {day.clock(cure.until_h):%a %H:%M}"
    return (
        heading(f"The first night, {until}")
        + wrap(f"{cure.picked.title}. {cure.reason} {cure.after}")
        + "\n\n"
        + "\n".join(lines)
    )


def _warnings(plan, levels, title, after=False):
    lines = []
    for line in plan.advice:
        if line.level in levels and (line.where in AFTER) == after:
            lines.append(textwrap.fill(f"{_LEVEL_WORDS[line.level]}: {line.text}", 100, subsequent_indent="    "))
            why = f"{line.reason} [{line.mark}: {line.source}]"
            lines.append(textwrap.fill(why, 100, initial_indent="    ", subsequent_indent="    "))
    return heading(title) + "\n".join(lines) if lines else ""


def _foot():
    return wrap(
        "Times are for looking; the cue decides. Local code and licensed practice decide on structure and safety. Any "
        "number explains itself: plan JOB.toml --why NAME."
    )
