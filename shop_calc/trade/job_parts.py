"""What the entries of a job make, part by part: piece, recipe, mix, batch, and what the day depends on."""

from shop_calc.trade.batching import mixer as vessels
from shop_calc.trade.batching.batch import build_batch
from shop_calc.trade.job_temperatures import temperatures_of
from shop_calc.trade.jobs.job_fields import OPTIONAL_SIZES, SIZES
from shop_calc.trade.mortar.amounts import stone_ratio
from shop_calc.trade.mortar.mix import build_mix
from shop_calc.trade.mortar.recipe import recipe
from shop_calc.trade.mortar.recipe_file import recipe_from_table
from shop_calc.trade.mortar.recipe_types import Recipe
from shop_calc.trade.problems import Collector
from shop_calc.trade.shape.outline import build_outline, place
from shop_calc.trade.shape.piece import Cutout, DropEdge, build_piece
from shop_calc.trade.timeline.day import DayInputs
from shop_calc.trade.timeline.room import Room


def piece_of(job):
    """Build the piece of a job.

    Parameters
    ----------
    job : Job
        A checked job [SI].


    Returns
    -------
    Piece
        Outline, thickness, exposed edges, openings, all checked [m].

    Raises
    ------
    ValueError
        When entries do not fit together; the message names the first.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> job = read_job(demo_job("garden_bench_top"))
    >>> piece_of(job).exposed == {"front", "right", "back", "left"}
    True

    References
    ----------
    Common practice, no source.
    """
    entries = job.piece
    outline = build_outline(entries["outline"], **_sizes(entries, entries["outline"]))
    cutouts = []
    for row in job.cutouts:
        try:
            hole = place(build_outline(row["shape"], **_sizes(row, row["shape"])), row["at"])
        except ValueError as error:
            raise ValueError(f"cut-out {row['name']!r}: {error}") from None
        cutouts.append(Cutout(hole, row["exposed"], row["name"]))
    drops = tuple(DropEdge(edge, row["depth"], row["width"]) for row in job.drops for edge in row["edge"])
    exposed = {"all": True, "none": ()}.get(entries["exposed"], entries["exposed"])
    return build_piece(
        outline,
        entries["thickness"],
        exposed,
        tuple(cutouts),
        drops,
        entries["use"],
    )


def recipe_of(job):
    """Read the recipe that a job names or holds.

    Parameters
    ----------
    job : Job
        A checked job [SI].


    Returns
    -------
    Recipe or BagRecipe
        As its lines say [-].

    Raises
    ------
    ValueError
        When entries do not fit together; the message names the first.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> job = read_job(demo_job("garden_bench_top"))
    >>> recipe_of(job).name
    'demo mortar'

    References
    ----------
    Common practice, no source.
    """
    given = job.mix["recipe"]
    return recipe(given, "mix.recipe") if isinstance(given, str) else recipe_from_table(given, "mix.recipe")


def mix_of(job):
    """Mix the mortar and the base of a job.

    Parameters
    ----------
    job : Job
        A checked job [SI].


    Returns
    -------
    Mix
        One batch of mortar with its stone [SI].

    Raises
    ------
    ValueError
        When entries do not fit together; the message names the first.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> job = read_job(demo_job("garden_bench_top"))
    >>> f"{mix_of(job).phi:.3f}"
    '0.626'

    References
    ----------
    Common practice, no source.
    """
    materials, found, chosen = job.materials, Collector(), recipe_of(job)
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


def batch_of(job, layers, mix, initial_set_h=None):
    """Weigh out what a job takes, load by load.

    Parameters
    ----------
    job : Job
        A checked job [SI].
    layers : Layers
        The two layers [m].
    mix : Mix
        What `mix_of` gives [SI].
    initial_set_h : float or None
        Initial set of the base as the shop log has it; None for the default [h].

    Returns
    -------
    Batch
        Masses, loads, water and its temperature [SI].

    Raises
    ------
    ValueError
        When entries do not fit together; the message names the first.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.shape.layers import split_layers
    >>> job = read_job(demo_job("garden_bench_top"))
    >>> len(batch_of(job, split_layers(piece_of(job), job.layers["face"]), mix_of(job)).loads)
    1

    References
    ----------
    Common practice, no source.
    """
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
        initial_set_h=initial_set_h,
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
    >>> from shop_calc.trade.shape.layers import split_layers
    >>> job = read_job(demo_job("garden_bench_top"))
    >>> layers = split_layers(piece_of(job), job.layers["face"])
    >>> day_inputs(job, layers, batch_of(job, layers, mix_of(job))).hands
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
        base_follows=batch.water.base_follows,
        drop_m=layers.drop_m,
    )


def _sizes(row, outline):
    optional = (size for size in OPTIONAL_SIZES.get(outline, ()) if row[size] is not None)
    return {f"{size}_m": row[size] for size in (*SIZES[outline], *optional)}
