"""The plan: from a checked job to everything the day needs, in one call."""

from dataclasses import dataclass

from shop_calc.trade.advice import LEVELS
from shop_calc.trade.after.bow import Bow
from shop_calc.trade.after.cost import Cost
from shop_calc.trade.after.finish import Finish
from shop_calc.trade.after.handling import Handling, piece_density_kg_m3, slow_binder
from shop_calc.trade.after.join import after_the_trowel
from shop_calc.trade.batching.bag_count import bag_advice
from shop_calc.trade.batching.batch import Batch
from shop_calc.trade.curing import cure as cover
from shop_calc.trade.job_parts import batch_of, day_inputs, mix_of, piece_of, recipe_of
from shop_calc.trade.job_temperatures import stored_advice
from shop_calc.trade.jobs.job import Job
from shop_calc.trade.logbook.log_plan import LogUse, find_log, log_advice, use_log, with_log
from shop_calc.trade.mortar.mix import Mix
from shop_calc.trade.plan_advice import air_advice, day_advice, form_advice, use_advice
from shop_calc.trade.problems import Collector
from shop_calc.trade.shape.form import Form, build_form
from shop_calc.trade.shape.layers import Layers, split_layers
from shop_calc.trade.shape.piece import Piece
from shop_calc.trade.shape.piece_advice import piece_advice
from shop_calc.trade.timeline.day import Day, plan_day
from shop_calc.trade.timeline.day_working import day_working, night_working
from shop_calc.trade.timeline.drying import Drying, face_clock, face_drying


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
    piece = layers = mix = batch = use = None
    with found.catch("piece"):
        piece = piece_of(job)
        layers = split_layers(piece, job.layers["face"])
    with found.catch("mix"):
        mix = mix_of(job)
    if layers is not None and mix is not None:
        with found.catch("log"):
            use = _log(job, log, mix, layers)
        with found.catch("batch"):
            batch = batch_of(job, layers, mix, None if use is None else use.base_initial_set_h)
    found.raise_if_any()
    form = build_form(
        piece,
        density_kg_m3=max(mix.base_density_kg_m3, mix.mortar_density_kg_m3),
        mean_density_kg_m3=piece_density_kg_m3(layers, mix),
    )
    log_lines = ()
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
        *piece_advice(piece, layers, mix.largest_stone_m), *form_advice(), *mix.advice,
        *stored_advice(job, mix, batch, day.samples.inputs.room), *batch.advice,
        *bag_advice(recipe_of(job), batch), *log_lines, *day_advice(day),
        *air_advice(day.samples.inputs.room), *drying.advice, *cure.advice, *use_advice(job),
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
