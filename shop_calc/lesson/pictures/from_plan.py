"""From the results of the trade room to what pictures take; nothing is worked out here but sums and shares."""

import numpy as np

from shop_calc.lesson.pictures.cloud import OpeningTimes
from shop_calc.lesson.pictures.heat import HeatBalance, HeatPart
from shop_calc.lesson.pictures.one_mix import OneMix, OneMixInVessels
from shop_calc.lesson.pictures.piece_plan import PiecePlan
from shop_calc.lesson.pictures.ribbon import RibbonOfTheDay
from shop_calc.lesson.pictures.weighing import WeighRow
from shop_calc.science.heat_balance import SOLID_SPECIFIC_HEAT
from shop_calc.trade.batching.mix_heat import MixHeat
from shop_calc.trade.timeline.weighted_days import quantile

MELTS_LIKE_C = -80.0  # melting a kilogram of ice takes what warming a kilogram of water by 80 K takes


def piece_plan(piece, layers):
    """What `LayerSections` draws of a piece.

    Parameters
    ----------
    piece : Piece
        A checked piece [m].
    layers : Layers
        Its two layers [m].

    Returns
    -------
    PiecePlan
        Shapes and names [m].
    """
    holes = tuple((cutout.name, bool(cutout.exposed)) for cutout in piece.cutouts)
    sizes = (layers.thickness_m, layers.face_thickness_m)
    drops = tuple(
        (tuple(drop.edge for drop in group), group[0].depth_m, group[0].width_m, region) for group, region in piece.drop_regions
    )
    return PiecePlan(layers.plan, layers.core_plan, *sizes, piece.outline.edges, piece.exposed, holes, drops=drops)


def batch_rows(batch):
    """What `WeighBars` draws of a whole batch, with the sum as the last row.

    Parameters
    ----------
    batch : Batch
        The batch [kg].

    Returns
    -------
    list of WeighRow
        A row an ingredient [kg].
    """
    rows = [WeighRow(item.name, item.base_kg, item.face_kg) for item in batch.ingredients]
    return [*rows, _sum(rows)]


def one_mix_of(batch, title=""):
    """The way of one mix into face and base.

    Parameters
    ----------
    batch : Batch
        The batch [m3].
    title : str
        One line over the picture [-].

    Returns
    -------
    OneMixInVessels
        The picture [-].
    """
    volumes = (batch.mortar_m3, batch.face_share_m3, batch.face_m3, batch.base_m3, batch.core_m3)
    return OneMixInVessels(OneMix(*volumes), title)


def load_rows(load):
    """What `WeighBars` draws of one load: its mortar split as the face share is set aside.

    Parameters
    ----------
    load : Load
        One load [kg].

    Returns
    -------
    list of WeighRow
        A row a line of its weigh sheet, with the sum as the last one [kg].
    """
    to_face = load.face_kg / load.mortar_kg if load.mortar_kg > 0 else 0.0
    share = {"mix": to_face, "base": 0.0, "face": 1.0}
    found = {}
    for line in load.lines:
        had = found.get(line.ingredient, WeighRow(line.ingredient, 0.0, 0.0))
        face_kg = share[line.stage] * line.mass_kg
        found[line.ingredient] = WeighRow(line.ingredient, had.base_kg + line.mass_kg - face_kg, had.face_kg + face_kg)
    rows = list(found.values())
    return [*rows, _sum(rows)]


def _sum(rows):
    return WeighRow("together", sum(row.base_kg for row in rows), sum(row.face_kg for row in rows), total=True)


def heat_of_mortar(mix, at, water_temp_c, wanted_mix_temp_c, ice_share=0.0, basis_kg=1.0):
    """What `HeatAreas` draws of a mortar.

    Parameters
    ----------
    mix : Mix
        The mix [kg per kg of basis].
    at : Temps
        Temperatures of what goes in [°C].
    water_temp_c : float
        Temperature of the liquid mixing water [°C].
    wanted_mix_temp_c : float
        What is wanted [°C].
    ice_share : float
        Share of the mixing water that goes in as ice [-].
    basis_kg : float
        Basis of the whole mortar, so that masses read as weighed [kg].

    Returns
    -------
    HeatBalance
        Parts with something in them, left to right; always the same five names for the same recipe [as its fields].
    """
    heat = MixHeat(mix, at)
    ice = heat.added_kg * ice_share
    parts = [
        ("powder", heat.solids[0], heat.solid_temps[0], SOLID_SPECIFIC_HEAT, "solid"),
        ("fine sand", heat.solids[1], heat.solid_temps[1], SOLID_SPECIFIC_HEAT, "solid"),
        ("water in liquids", heat.others[0], heat.other_temps[0], 1.0, "water"),
        ("water in the sand", heat.others[1], heat.other_temps[1], 1.0, "water"),
        ("mixing water", heat.added_kg - ice, water_temp_c, 1.0, "water"),
        ("ice, melting", ice, MELTS_LIKE_C, 1.0, "ice"),
    ]
    parts = [part for part in parts if part[1] > 0 or part[0] in ("mixing water", "ice, melting")]
    rows = tuple(
        HeatPart(name, mass_kg * basis_kg, temp_c, mass_kg * like_water / heat.capacity_kg, kind)
        for name, mass_kg, temp_c, like_water, kind in parts
    )
    return HeatBalance(rows, heat.mix_c(water_temp_c, ice_share), wanted_mix_temp_c)


def ribbon_of(day, title="", dark_h=(), between_h=None):
    """The ribbon of a planned day.

    Parameters
    ----------
    day : Day
        A planned day [h].
    title : str
        One line over the picture [-].
    dark_h : sequence of (float, float)
        Hours without daylight, after the first water [h].
    between_h : (float, float), optional
        Ends of the clock [h].

    Returns
    -------
    RibbonOfTheDay
        Ready to be shown, or moved with `update(other_day.stages)` [-].
    """
    room = day.samples.inputs.room
    return RibbonOfTheDay(day.stages, day.water_in, day.load_offsets_h, room, dark_h, between_h, title)


def opening_times(day, key, name="the plan"):
    """What `FiftyDays` draws of one stage, with the weights the day has now.

    Parameters
    ----------
    day : Day
        A planned day, or one that was re-weighted after a look [h].
    key : str
        Key of the stage [-].
    name : str
        What to call it in the picture [-].

    Returns
    -------
    OpeningTimes
        One strip [h].

    Raises
    ------
    ValueError
        When the day has no such stage.
    """
    if key not in day.samples.open_h:
        raise ValueError(f"stage: {key!r} given; the day has {', '.join(day.samples.open_h)}")
    open_h = np.asarray(day.samples.open_h[key], dtype=float)
    marks = tuple(float(quantile(open_h, day.weight, share)) for share in (0.05, 0.50, 0.95))
    return OpeningTimes(name, open_h, np.asarray(day.weight), marks)
