"""Lesson 02: the mortar of the bench top stretched with stone, its weigh sheet, and sand in a measuring jug."""

from functools import cache

from shop_calc import defaults
from shop_calc.lesson.pictures.follow import Follow
from shop_calc.lesson.pictures.weighing import WeighBars, WeighRow
from shop_calc.lesson.table import table
from shop_calc.science.absolute_volume import solid_volume_m3
from shop_calc.science.checks import require
from shop_calc.trade.batching.batch import build_batch
from shop_calc.trade.batching.mixer import mixer
from shop_calc.trade.jobs.job import demo_job, read_job
from shop_calc.trade.mortar.materials import material
from shop_calc.trade.mortar.mix import build_mix
from shop_calc.trade.mortar.recipe import recipe
from shop_calc.trade.shape.layers import rectangle_layers
from shop_calc.units import show

ROWS = (
    ("powder and pigment", ("cementitious", "pozzolan", "pigment"), ()),
    ("fine sand", ("aggregate",), ("coarse sand", "stone 3/8 in")),
    ("water", ("water",), ("water for the stone",)),
    ("polymer and reducer", ("polymer liquid", "liquid admixture"), ()),
)  # name of the row, kinds in it, names that are not
STONE = ("coarse sand", "stone 3/8 in", "water for the stone")  # rows of their own, there or not
STAGES = {"mix": "into the mortar", "base": "then to the rest", "face": "into the face share"}
JUG_M3 = 10e-6  # judgement: a kitchen jug is read to 10 mL
TRAPPED = 0.05  # judgement: air that stays between the grains unless they are stirred, of the volume of the sand


@cache
def _job():
    return read_job(demo_job("garden_bench_top"))


@cache
def bench_layers():
    """Give the two layers of the bench top, as lesson 01 left them.

    Returns
    -------
    Layers
        Its layers [-].

    Examples
    --------
    >>> round(1e3 * bench_layers().face_m3, 5)
    4.45011

    References
    ----------
    Invented for the demonstration.
    """
    piece, face_m = _job().piece, _job().layers["face"]
    return rectangle_layers(piece["length"], piece["width"], piece["thickness"], face_m)


def stretch(stone_ratio, coarse_sand_ratio, stone_moisture_fraction, face_allowance_fraction):
    """Make the batch of the bench top with other stone.

    Parameters
    ----------
    stone_ratio, coarse_sand_ratio : float
        Oven-dry stone and coarse sand for one part of binder by mass [-].
    stone_moisture_fraction : float
        Moisture of the stone, on oven-dry mass [-].
    face_allowance_fraction : float
        Extra face mortar [-].

    Returns
    -------
    (Mix, Batch)
        The mix for one kilogram of binder, and the whole batch [-].

    Raises
    ------
    ValueError
        When the mortar no longer fills the gaps between the stones.

    Examples
    --------
    >>> mix, batch = stretch(1.2000, 0.6000, 0.0, 0.25)
    >>> round(batch.set_aside_kg, 5)
    11.79378

    References
    ----------
    Absolute volumes; see `science.absolute_volume`.
    """
    mix = build_mix(
        recipe("demo mortar"),
        stone_ratio=stone_ratio,
        coarse_sand_ratio=coarse_sand_ratio,
        stone_moisture_fraction=stone_moisture_fraction,
    )
    layers, vessel = bench_layers(), mixer(usable_m3=_job().mixer["usable"])
    return mix, build_batch(layers, mix, face_allowance_fraction=face_allowance_fraction, vessel=vessel)


def stretch_words(result, system="both"):
    """Say what to set aside, how far the mortar is stretched and what the stone does with water.

    Parameters
    ----------
    result : (Mix, Batch)
        From `stretch` [-].
    system : str
        "us", "si" or "both" [-].

    Returns
    -------
    str
        Three or four lines [-].

    Examples
    --------
    >>> print(stretch_words(stretch(0.0, 0.0, 0.0, 0.25), "us").splitlines()[0])
    Set aside 26 lb for the face: 23.1 % of the mortar.

    References
    ----------
    Common practice, no source.
    """
    mix, batch = result
    mass = lambda kg: show(kg, "mass", system)  # noqa: E731
    share = show(batch.set_aside_fraction, "fraction")
    cement = batch.ingredient("portland cement").total_kg
    lines = [
        f"Set aside {mass(batch.on_scale_kg)} for the face: {share} of the mortar.",
        f"Mortar to make: {show(batch.mortar_m3, 'volume', system)} with {mass(cement)} of cement; "
        f"phi is {mix.phi:.3f}.",
        _water_words(mix, batch, mass),
    ]
    warn = defaults.si("phi_warn")
    if mix.phi < warn:
        lines.append(f"Harsh: phi is below {warn:.2f}, and so little mortar leaves holes between the stones.")
    return "\n".join(lines)


def _water_words(mix, batch, mass):
    water = mix.stone_water_kg * batch.base_m3 / mix.base_m3
    if not mix.base_lines:
        return "No stone: face and base are the same mortar."
    who = "The coarse sand" if all(line.name == "coarse sand" for line in mix.base_lines) else "The stone"
    if water > 1e-9:
        return f"{who} drinks {mass(water)}; left out, w/cm falls to {mix.w_cm_stone_left_dry:.3f}."
    if water < -1e-9:
        return f"{who} brings {mass(-water)}; not held out, w/cm rises to {mix.w_cm_stone_left_wet:.3f}."
    return f"{who} neither drinks nor brings water."


def stretch_rows(batch):
    """Give what the weigh bars draw, the rows of the stone always among them.

    Parameters
    ----------
    batch : Batch
        The batch [kg].

    Returns
    -------
    list of WeighRow
        One a line, the sum last [kg].

    Examples
    --------
    >>> rows = stretch_rows(stretch(0.0, 0.0, 0.0, 0.25)[1])
    >>> [row.name for row in rows][-4:]
    ['coarse sand', 'stone 3/8 in', 'water for the stone', 'together']

    References
    ----------
    Common practice, no source.
    """
    rows = []
    for name, kinds, others in ROWS:
        inside = [item for item in batch.ingredients if item.kind in kinds and item.name not in others]
        rows.append(WeighRow(name, sum(item.base_kg for item in inside), sum(item.face_kg for item in inside)))
    extra = {item.name: item.base_kg for item in batch.ingredients if item.name in STONE}
    rows += [WeighRow(name, extra.get(name, 0.0)) for name in STONE]
    together = WeighRow("together", sum(row.base_kg for row in rows), sum(row.face_kg for row in rows), total=True)
    return [*rows, together]


def stretch_bars(*start):
    """Build the weigh bars of the block, wide enough for the ends of its sliders.

    Parameters
    ----------
    *start : float
        What `stretch` takes, in its order [-].

    Returns
    -------
    Follow
        A picture that follows what `stretch` gives [-].

    Examples
    --------
    >>> stretch_bars(1.2, 0.6, 0.0, 0.25).alt[:33]
    'Garden bench top, fibre left out,'

    References
    ----------
    Common practice, no source.
    """
    rows = stretch_rows(stretch(*start)[1])
    bars = WeighBars(rows, "Garden bench top, fibre left out", most_base_kg=22.0, most_face_kg=6.0)
    return Follow(bars, lambda result: stretch_rows(result[1]))


def weigh_sheet(load, system="both"):
    """Write one load as it hangs beside the scale.

    Parameters
    ----------
    load : Load
        One load of a batch [kg].
    system : str
        "us", "si" or "both" [-].

    Returns
    -------
    Table
        When it goes in, what, how much; the face share between mortar and stone [-].

    Examples
    --------
    >>> sheet = weigh_sheet(stretch(1.2000, 0.6000, 0.0, 0.25)[1].loads[-1], "us")
    >>> [row for row in sheet.rows if row[1] == "face share"]
    [('set aside, covered', 'face share', '26 lb')]

    References
    ----------
    Common practice, no source, for the order.
    """
    mass = lambda kg: show(kg, "mass", system)  # noqa: E731
    rows = []
    for stage, words in STAGES.items():
        if stage == "base" and load.set_aside_kg > 0:
            rows.append(("set aside, covered", "face share", mass(load.set_aside_kg)))
        for line in load.stage(stage):
            rows.append((words, line.ingredient, mass(line.first_kg)))
            if line.held_back_kg > 0:
                name = f"{line.ingredient}, only if it still does not move"
                rows.append(("held back", name, mass(line.held_back_kg)))
    return table(("when", "what", "on the scale"), rows)


def jug_band_m3(water_m3, sand_kg):
    """Predict where water stands in a jug once dry sand is stirred in.

    Parameters
    ----------
    water_m3 : float
        Water in the jug before [m3].
    sand_kg : float
        Dry sand [kg].

    Returns
    -------
    tuple of float
        Low, likely, high [m3].

    Raises
    ------
    ValueError
        When there is too little water to drown the sand, or no sand.

    Notes
    -----
    Low: the densest sand of the table of materials. High: the lightest, with 5 % of its volume in trapped air.
    Both with a jug read to 10 mL. The last two are judgement.

    Examples
    --------
    >>> [round(1e6 * value, 3) for value in jug_band_m3(0.000355, 0.4536)]
    [514.964, 526.247, 548.267]

    References
    ----------
    Absolute volume; see `science.absolute_volume`.
    """
    sand = material("fine silica sand")
    water = require("water in the jug", water_m3, 0, unit="m3", low_open=True)
    mass = require("dry sand", sand_kg, 0, unit="kg", low_open=True)
    least, likely, most = (float(solid_volume_m3(mass, rd)) for rd in (sand.high, sand.relative_density, sand.low))
    if water < likely:
        raise ValueError(
            f"water in the jug: {show(water, 'liquid')} given; it must be at least {show(likely, 'liquid')} "
            "to drown the sand"
        )
    return water + least - JUG_M3, water + likely, water + most * (1 + TRAPPED) + JUG_M3
