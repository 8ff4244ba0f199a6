"""The plan: from a checked job to everything the day needs, in one call."""

from dataclasses import dataclass

from shop_calc import defaults
from shop_calc.science import slab_heat
from shop_calc.trade.advice import LEVELS, Advice
from shop_calc.trade.after.bow import Bow
from shop_calc.trade.after.cost import Cost
from shop_calc.trade.after.finish import Finish
from shop_calc.trade.after.handling import Handling, slow_binder
from shop_calc.trade.after.join import after_the_trowel
from shop_calc.trade.batching import mixer as vessels
from shop_calc.trade.batching.bag_count import bag_advice
from shop_calc.trade.batching.batch import Batch, build_batch
from shop_calc.trade.curing import cure as cover
from shop_calc.trade.jobs.job import Job
from shop_calc.trade.jobs.job_fields import OPTIONAL_SIZES, SIZES
from shop_calc.trade.jobs.temperatures import temperatures_of
from shop_calc.trade.logbook.log_plan import LogUse, find_log, log_advice, use_log, with_log
from shop_calc.trade.mortar.amounts import stone_ratio
from shop_calc.trade.mortar.mix import Mix, build_mix
from shop_calc.trade.mortar.recipe import recipe
from shop_calc.trade.mortar.recipe_file import recipe_from_table
from shop_calc.trade.mortar.recipe_types import Recipe
from shop_calc.trade.plan_advice import air_advice, form_advice
from shop_calc.trade.problems import Collector
from shop_calc.trade.shape.form import Form, build_form
from shop_calc.trade.shape.layers import Layers, split_layers
from shop_calc.trade.shape.outline import build_outline, place
from shop_calc.trade.shape.piece import Cutout, DropEdge, Piece, build_piece
from shop_calc.trade.shape.piece_advice import piece_advice
from shop_calc.trade.timeline.day import Day, DayInputs, plan_day
from shop_calc.trade.timeline.day_working import day_working, night_working
from shop_calc.trade.timeline.drying import Drying, face_clock, face_drying
from shop_calc.trade.timeline.room import Room


@dataclass(frozen=True)
class Plan:
    """Everything that follows from a job.

    Parameters
    ----------
    job : Job
        What was asked [SI].
    piece : Piece
        Outline, thickness, exposed edges, openings [m].
    layers : Layers
        The two volumes [m3].
    form : Form
        Cut list and what the form bears [m].
    mix : Mix
        Mortar and base by the kilogram [kg].
    batch : Batch
        Masses, loads, water [kg].
    day : Day
        Stages with three times each [h].
    drying : Drying
        What the air takes from the face [kg/m2/h].
    cure : Cure
        Covers for the first night [as its fields].
    handling : Handling
        Strength, moving, supports, lifting [as its fields].
    bow : Bow
        Shrinkage and curl [m].
    finish : Finish
        Polishing and sealing [as its fields].
    cost : Cost
        Packs and money, as far as the job has prices [currency].
    advice : tuple of Advice
        All warnings, the gravest first [-].
    working : tuple of Step
        How every number came about [-].
    log : LogUse or None
        The shop log that the day stands on; None when it stands on the defaults [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> make_plan(read_job(demo_job("garden_bench_top"))).cure.pick
    'open'

    References
    ----------
    Common practice, no source.
    """

    job: Job
    piece: Piece
    layers: Layers
    form: Form
    mix: Mix
    batch: Batch
    day: Day
    drying: Drying
    cure: cover.Cure
    handling: Handling
    bow: Bow
    finish: Finish
    cost: Cost
    advice: tuple
    working: tuple
    log: LogUse | None = None


def make_plan(job, log=None):
    """Plan a job: piece, form, mix, batch, day, drying, cure, handling, bow, finish, cost.

    Parameters
    ----------
    job : Job
        A checked job [SI].
    log : ShopLog or str or path-like, optional
        A shop log, or its file; the one that the job file names if left out [-].

    Returns
    -------
    Plan
        Everything that follows [SI].

    Raises
    ------
    Problems
        With one line for each thing that does not fit together.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> plan = make_plan(read_job(demo_job("counter_worked_example")))
    >>> f"{plan.batch.set_aside_kg / 0.45359237:.2f}"
    '57.94'

    Notes
    -----
    The worked example by hand stands in data/published/worked_job.csv.

    References
    ----------
    Common practice, no source, for the order of the steps.
    """
    found = Collector()
    piece = layers = mix = batch = None
    with found.catch("piece"):
        piece = _piece(job)
        layers = split_layers(piece, job.layers["face"])
    with found.catch("mix"):
        mix = _mix(job)
    if layers is not None and mix is not None:
        with found.catch("batch"):
            batch = _batch(job, layers, mix)
    found.raise_if_any()
    form = build_form(piece, density_kg_m3=mix.base_density_kg_m3)
    use, log_lines = None, ()
    with found.catch("log"):
        use = _log(job, log, mix, layers)
    with found.catch("day"):
        inputs = day_inputs(job, layers, batch)
        day = plan_day(inputs)
        if use is not None:
            by_defaults, day = day, plan_day(with_log(inputs, use))
            log_lines = log_advice(use, by_defaults, day)
    found.raise_if_any()
    face_water_kg_m3 = mix.total_water_kg / mix.mortar_m3
    clock = face_clock(day)
    drying = face_drying(day, clock, layers.face_thickness_m, face_water_kg_m3)
    piece_water_kg_m2 = face_water_kg_m3 * (layers.face_m3 + mix.phi * layers.core_m3) / layers.top_area_m2
    cure = cover.first_night(
        day, clock, layers.face_thickness_m, face_water_kg_m3, piece_water_kg_m2,
        polymer_share=mix.polymer_solids_share, silica_fume=mix.has_silica_fume,
        moist_days=cover.moist_cure_days(False, slow_binder(mix)),
    )  # fmt: skip
    after = after_the_trowel(job, piece, layers, mix, batch, day, cure)
    lines = [
        *piece_advice(piece, layers, mix.largest_stone_m), *form_advice(), *mix.advice, *batch.advice,
        *bag_advice(_recipe(job), batch), *log_lines, *_day_advice(day),
        *air_advice(day.samples.inputs.room), *drying.advice, *cure.advice, *_use_advice(job),
        *(line for part in after for line in part.advice),
    ]  # fmt: skip
    advice = tuple(sorted(dict.fromkeys(lines), key=lambda line: LEVELS.index(line.level)))
    working = (
        *layers.working, *form.working, *mix.working, *batch.working, *day_working(day), *night_working(drying, cure),
        *(step for part in after for step in part.working),
    )  # fmt: skip
    return Plan(job, piece, layers, form, mix, batch, day, drying, cure, *after, advice, working, use)


def _log(job, log, mix, layers):
    found = find_log(job, log)
    return None if found is None else use_log(found[1], mix.recipe_name, layers.thickness_m, found[0])


def _sizes(row, outline):
    optional = (size for size in OPTIONAL_SIZES.get(outline, ()) if row[size] is not None)
    return {f"{size}_m": row[size] for size in (*SIZES[outline], *optional)}


def _piece(job):
    entries = job.piece
    outline = build_outline(entries["outline"], **_sizes(entries, entries["outline"]))
    cutouts = []
    for row in job.cutouts:
        hole = place(build_outline(row["shape"], **_sizes(row, row["shape"])), row["at"])
        cutouts.append(Cutout(hole, row["exposed"], row["name"]))
    drop = job.drop
    exposed = {"all": True, "none": ()}.get(entries["exposed"], entries["exposed"])
    return build_piece(
        outline,
        entries["thickness"],
        exposed,
        tuple(cutouts),
        DropEdge(drop["edge"], drop["depth"], drop["width"]) if drop else (),
        entries["use"],
    )


def _recipe(job):
    given = job.mix["recipe"]
    return recipe(given, "mix.recipe") if isinstance(given, str) else recipe_from_table(given, "mix.recipe")


def _mix(job):
    materials, found, chosen = job.materials, Collector(), _recipe(job)
    ratios = {}
    for name in ("stone", "coarse_sand"):
        text = job.mix[name]
        with found.catch(f"mix.{name}"):
            ratios[f"{name}_ratio"] = stone_ratio(0 if text == "0" else text, chosen, f"mix.{name}")
    found.raise_if_any()
    return build_mix(
        chosen,
        **ratios,
        stone=job.mix["stone_material"],
        coarse_sand=job.mix["sand_material"],
        stone_moisture_fraction=materials["stone_moisture"],
        coarse_sand_moisture_fraction=materials["coarse_sand_moisture"],
        sand_moisture_fraction=materials["fine_sand_moisture"] if isinstance(chosen, Recipe) else None,
        stone_void_fraction=job.mix["void_content"],
    )


def _batch(job, layers, mix):
    entries = job.mixer
    rated = entries["vessel"] == "drum" and entries["rated"] is not None and "mixer.usable" in job.assumed
    vessel = vessels.mixer(
        entries["vessel"],
        usable_m3=None if rated else entries["usable"],
        rated_m3=entries["rated"] if rated else None,
        drum_share=entries["drum_share"],
        load_interval_h=entries["minutes_per_load"],
        rest_h=None if "mixer.rest" in job.assumed else entries["rest"],
        power_w=entries["power"],
    )
    return build_batch(
        layers,
        mix,
        face_allowance_fraction=job.layers["face_allowance"],
        base_allowance_fraction=job.layers["base_allowance"],
        vessel=vessel,
        temperatures=temperatures_of(job),
        wanted_mix_temp_c=job.day["wanted_mix_temp"],
        hands=job.day["hands"],
        held_back_fraction=job.mix["held_back"],
    )


def day_inputs(job, layers, batch):
    """Collect what the day depends on.

    Parameters
    ----------
    job : Job
        The job [SI].
    layers : Layers
        The two layers [m].
    batch : Batch
        Loads and mix temperatures [as its fields].

    Returns
    -------
    DayInputs
        Ready for plan_day [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> day_inputs(plan.job, plan.layers, plan.batch).hands
    2.0

    References
    ----------
    Common practice, no source.
    """
    start = job.day["water_in"]
    room = Room(
        tuple((row["from"] - start).total_seconds() / 3600.0 for row in job.rooms),
        tuple(row["air"] for row in job.rooms),
        tuple(row["humidity"] for row in job.rooms),
        tuple(row["wind"] for row in job.rooms),
    )
    return DayInputs(
        start,
        room,
        batch.water.mix_temp_c,
        layers.thickness_m,
        layers.base_depth_m,
        layers.top_area_m2,
        tuple(load.water_in_offset_h for load in batch.loads if load.base_m3 > 0) or (0.0,),
        max(load.water_in_offset_h for load in batch.loads if load.face_m3 > 0),
        job.mixer["minutes_per_load"] * 60.0,
        job.day["hands"],
        batch.water.base_temp_c,
    )


def _day_advice(day):
    lines = []
    for key in day.crowded:
        stage = day.stage(key)
        lines.append(
            Advice(
                "act", key, f"{stage.title}: the mortar is ready before the hands are. More hands, a cooler mix or a "
                "smaller piece.",
                "The work before it takes longer than the mortar waits.", "derived",
                "hours of work in data/defaults.csv against the set clock",
            )
        )  # fmt: skip
    face = day.stage("face")
    if face.deadline_h < face.likely_from_h:
        lines.append(
            Advice(
                "stop", "face", "The base is too stiff when the face is ready for it: mix the base in fewer loads, "
                "faster, with more hands, or cooler.",
                f"The face can go on {face.likely_from_h:.1f} h after the first water; the base takes it until "
                f"{face.deadline_h:.1f} h.", "judgement", "layer gap of data/defaults.csv",
            )
        )  # fmt: skip
    last = day.clock(day.stage("last_steel").likely_to_h)
    if last.hour >= 21 or last.date() != day.water_in.date():
        lines.append(
            Advice(
                "act", "last_steel", "The last passes fall into the night: start earlier, warm the room or the mix.",
                f"Last steel is likely until {last:%a %H:%M}.", "derived", "the plan of the day",
            )
        )  # fmt: skip
    if any(temp <= 0 for temp in day.samples.inputs.room.air_temp_c):
        lines.append(
            Advice(
                "stop", "day", "Do not pour into frost; keep the piece from freezing until it has 500 psi and a day more.",
                "Fresh concrete freezes a little below 0 °C and can lose half its strength; the skin peels.",
                "unnamed", "cold-weather guidance",
            )
        )  # fmt: skip
    inputs = day.samples.inputs
    top_w_m2_k = slab_heat.convection_w_m2_k(max(inputs.room.wind_m_s)) + defaults.si("h_radiation")
    thick = float(slab_heat.biot_number(top_w_m2_k, inputs.thickness_m, defaults.si("slab_conductivity")))
    if thick > slab_heat.THIN_BIOT_NUMBER:
        lines.append(
            Advice(
                "note",
                "day",
                "Feel the middle as well as the top: so thick a piece in this air is not of one temperature.",
                f"Biot number {thick:.2f}, above {slab_heat.THIN_BIOT_NUMBER:g}: the plan reckons with one temperature "
                "for the whole thickness, the top follows the air faster and the middle more slowly.",
                "derived",
                "heat balance of a slab; the limit is judgement",
            )
        )
    if max(day.samples.inputs.room.air_temp_c) > 30:
        lines.append(
            Advice(
                "note", "day", "Above 30 °C (86 °F) the clock is rough: look earlier and more often.",
                "Sources disagree by 20 to 30 % both ways on how fast mortar sets in heat.", "read",
                "course table CE 584 against heat of hydration of one portland cement",
            )
        )  # fmt: skip
    return lines


def _use_advice(job):
    if job.piece["use"] == "top" or job.piece["use"] == "table":
        return ()
    words = {"seat": "a seat that people drop onto", "wall-hung": "a piece that hangs on a wall"}[job.piece["use"]]
    return (
        Advice(
            "act", "use", f"This is {words}: have supports, fixings and steel checked by someone licensed for it.",
            "The plan sizes no reinforcement. Local code and licensed practice decide.", "practice",
            "common practice, no source",
        ),
    )  # fmt: skip
