"""Every picture with numbers to look at. All numbers here are invented; none comes from a model or a pour."""

from dataclasses import dataclass
from datetime import datetime
from itertools import pairwise
from types import SimpleNamespace

import numpy as np
from shapely.geometry import Point, Polygon, box

from shop_calc.lesson.pictures.bow_shape import BowedTop, BowShape, BowState
from shop_calc.lesson.pictures.cloud import FiftyDays, OpeningTimes
from shop_calc.lesson.pictures.cost_bars import CostBars, CostRow
from shop_calc.lesson.pictures.curing import CoverChoices
from shop_calc.lesson.pictures.demo_bench import BENCH
from shop_calc.lesson.pictures.demo_log import LOG
from shop_calc.lesson.pictures.demo_pour import pour_pictures
from shop_calc.lesson.pictures.demo_strength import STRENGTH
from shop_calc.lesson.pictures.demo_volumes import VOLUMES
from shop_calc.lesson.pictures.evaporation import DryingSheet, EvaporationMap
from shop_calc.lesson.pictures.heat import HeatAreas, HeatBalance, HeatPart
from shop_calc.lesson.pictures.ribbon import RibbonOfTheDay
from shop_calc.lesson.pictures.sections import LayerSections, PiecePlan
from shop_calc.lesson.pictures.slab import MortarTemperature, SlabDay
from shop_calc.lesson.pictures.weighing import WeighBars, WeighRow
from shop_calc.lesson.pictures.what_if import Side, WhatIf, WhatIfMap

WATER_IN = datetime(2026, 5, 4, 8, 0)
LOADS_H = (0.0, 1 / 3, 2 / 3)


@dataclass(frozen=True)
class DemoStage:
    """A stage with invented times."""

    key: str
    title: str
    layer: str
    tool: str
    cue: str
    look_from_h: float
    likely_from_h: float
    likely_to_h: float
    over_by_h: float
    deadline_h: float | None = None


# fmt: off
STAGES = (
    DemoStage("base", "Pack the base", "base", "gloved hands, tamper",
              "packed into the corners, one face thickness short of every exposed edge and of the top",
              0.1, 0.15, 0.40, 0.5),
    DemoStage("face", "Face onto the base", "base", "flexible blade",
              "the base stays where it is when the form is nudged", 0.50, 0.65, 0.95, 1.2, 1.55),
    DemoStage("float", "Screed, first float", "face", "straight board, wood or magnesium float",
              "at once, before the sheen goes", 0.95, 1.05, 1.35, 1.6),
    DemoStage("look", "Look every half hour, float again", "face", "wood or magnesium float",
              "it tightens under the float; dull alone means nothing, press below the skin", 1.35, 1.5, 2.3, 2.6),
    DemoStage("strip", "Sides off, patch the edges", "both", "screwdriver, margin trowel, edging trowel",
              "a thumb sinks in a quarter inch and the hole stays; the edge keeps its shape", 2.1, 2.38, 2.89, 3.4),
    DemoStage("first_steel", "First steel", "face", "steel trowel, blade flat",
              "a thumb barely marks it and no paste comes off on the thumb", 2.7, 3.05, 3.6, 4.1),
    DemoStage("last_steel", "Last steel", "face", "steel trowel, blade a little raised, light passes",
              "a hard sheen follows the blade", 3.5, 3.9, 4.5, 5.0),
    DemoStage("stop", "Stop, cover", "face", "cover", "the blade rings and leaves dark marks", 4.3, 4.7, 5.2, 5.9),
)
LATER = tuple(
    DemoStage(s.key, s.title, s.layer, s.tool, s.cue, s.look_from_h + d, s.likely_from_h + d + 0.1,
              s.likely_to_h + d - 0.05, s.over_by_h + d - 0.15, s.deadline_h)
    for s, d in zip(STAGES, (0, 0, 0, 0.1, 0.2, 0.3, 0.4, 0.5), strict=True)
)
# fmt: on
ROOM = SimpleNamespace(from_h=(0.0, 5.0), air_temp_c=(21.0, 18.0), rh_fraction=(0.50, 0.60), wind_m_s=(0.0, 1.0))
COVERS = SimpleNamespace(
    pick="fabric",
    choices=tuple(
        SimpleNamespace(
            key=key, title=title, water_lost_kg_m2=lost, bound_kg_m2=2.2 * lost, lost_share=lost / 1.4, surface=surface,
            work=work, sealing=sealing, morning_age_h=age,
        )
        for key, title, lost, surface, work, sealing, age in (
            ("open", "Leave it open", 0.42, "nothing touches it: the most even colour; an open surface gains less "
             "strength and can dust", "none", "dries towards sealing at once", 11.4),
            ("fabric", "Damp fabric flat, plastic over it", 0.02,
             "even while every inch touches; a dry or lifted spot shows",
             "wet it, lay it without a wrinkle, weigh the edges down", "waits until it has dried again", 12.0),
            ("plastic", "Bare plastic on the face", 0.03, "puddles, blotches and wrinkle marks", "little",
             "blotches show through clear sealers", 12.0),
            ("tent", "Plastic held off the face", 0.12, "drops from the inside mark it where they fall",
             "battens or a frame, edges closed", "waits until it has dried again", 11.9),
            ("mist", "Misting", 0.20, "even only while it never dries in between: crazing if it does",
             "every quarter hour until bedtime, then another cover", "waits until it has dried again", 11.2),
            ("membrane", "Curing compound", 0.13, "even if sprayed evenly; colour can change",
             "spray once when the sheen has gone", "most do not bond until it is ground off", 11.6),
        )
    ),
)  # fmt: skip
ROWS = (
    WeighRow("cement", 23.2, 8.3), WeighRow("pozzolan", 5.8, 2.1), WeighRow("fine sand", 29.0, 10.4),
    WeighRow("water, chilled", 8.0, 2.9), WeighRow("polymer liquid", 2.9, 1.04), WeighRow("water reducer", 0.17, 0.06),
    WeighRow("pigment", 0.87, 0.31), WeighRow("coarse sand", 17.1), WeighRow("stone", 34.2),
    WeighRow("fine fibre", 0.0, 0.12), WeighRow("together", 121.2, 25.2, total=True),
)  # fmt: skip
HEAT = HeatBalance(
    (
        HeatPart("powder, fine sand", 72.0, 21.0, 0.38),
        HeatPart("coarse sand, stone", 51.0, 21.0, 0.27),
        HeatPart("chilled water", 9.0, 4.0, 0.22, "water"),
        HeatPart("ice", 2.0, -80.0, 0.05, "ice"),
        HeatPart("polymer, reducer", 4.1, 21.0, 0.08, "water"),
    ),
    12.2,
    16.0,
)


def _bench():
    t, hole = 0.00635, Point(1.20, 0.19).buffer(0.0175)
    outline = Polygon(box(0, 0, 1.524, 0.381).exterior, [hole.exterior])
    core = box(t, t, 1.524 - t, 0.381).difference(hole.buffer(t))
    corners = [(0, 0), (1.524, 0), (1.524, 0.381), (0, 0.381), (0, 0)]
    edges = tuple(zip(("front", "right", "back", "left"), pairwise(corners), strict=True))
    return PiecePlan(outline, core, 0.0381, t, edges, frozenset({"front", "right", "left"}), (("hole", True),))


def _drying():
    humid, wind = np.linspace(0.1, 1.0, 37), np.linspace(0.0, 11.0, 45)
    rate = 0.9 * (1.05 - humid[None, :]) * (0.25 + 0.22 * wind[:, None])
    return EvaporationMap(humid, wind, rate, 0.25, 0.5, 0.40, 2.0, 0.404, 26.0, 24.0, (0.242, 0.565))


def _temperatures():
    time = np.linspace(0.0, 8.0, 97)
    covered = 21 - 5 * np.exp(-time / 1.6)
    bare = covered - 2.6 * (1 - np.exp(-time / 0.8)) * np.exp(-time / 7)
    early = time < 5
    return SlabDay(time, bare, covered, np.where(early, 21.0, 18.0), np.where(early, 14.5, 13.0))


def _openings():
    days = 2.62 * np.exp(0.14 * np.sqrt(2) * _erf_like(np.linspace(-0.995, 0.995, 500)))
    plain, held = np.full(500, 1 / 500), np.where((days > 2.25) & (days < 2.75), 1.0, 0.0)
    held /= held.sum()
    return [OpeningTimes(name, days, w, tuple(np.interp((0.05, 0.5, 0.95), np.cumsum(w), days)))
            for name, w in (("before the look", plain), ("after it", held))]  # fmt: skip


def _erf_like(share):
    return np.arctanh(share) / 1.6  # bell-shaped enough for a picture


def _map():
    room, mix = np.linspace(5, 35, 31), np.linspace(10, 26, 17)
    hours = 2.72 * np.exp(-0.044 * (room[None, :] - 21)) * np.exp(-0.022 * (mix[:, None] - 16))
    hours[hours > 5.4] = np.nan
    return WhatIf(
        Side(room, "room", "C", "F", "°C", "°F"), Side(mix, "mix", "C", "F", "°C", "°F"), hours,
        (2.0, 2.5, 3.0, 4.0, 5.0),
        lambda h: f"{int(h)} h {round(h % 1 * 60):02d}" if round(h % 1 * 60) else f"{h:.0f} h", (21.0, 16.0, 2.72),
    )  # fmt: skip


def _ribbon_after_looks():
    title = "After two looks (invented)"
    picture = RibbonOfTheDay(STAGES, WATER_IN, LOADS_H, ROOM, [(6.0, 21.5)], (-0.8, 8.0), title)
    picture.update(LATER, first=STAGES, seen=[("strip", 2.25, False), ("strip", 2.75, True)])
    return picture


def _fifty_days():
    picture = FiftyDays(_openings(), WATER_IN, title="Sides off: when it opens, on fifty days like today")
    picture.update(_openings(), not_yet_h=2.25, there_h=2.75)
    return picture


BOWED = BowShape(
    1.571, 0.0381, 0.00635,
    (BowState("both faces dry alike", 0.0023, 0.0050, 0.0088), BowState("only the top dries", 0.0025, 0.0070, 0.0147)),
)  # fmt: skip

COSTS = (
    CostRow("sealer", 38.0, 28.9, 0.00023, "liquid"), CostRow("form board", 28.0, 28.0, 0.0, "number"),
    CostRow("cement", 18.5, 5.2, 30.6, "mass"), CostRow("a pigment with a long name", 11.0, 10.9, 0.004, "mass"),
)  # fmt: skip

# In the order of the lessons.
BUILD = {
    "two layers": lambda: LayerSections(_bench(), title="Garden bench top (invented)"),
    **VOLUMES,
    "weigh bars": lambda: WeighBars(ROWS, "The whole batch (invented)"),
    "heat of the mix": lambda: HeatAreas(HEAT, (0.0, 30.0)),
    "ribbon of the day": lambda: RibbonOfTheDay(
        STAGES, WATER_IN, LOADS_H, ROOM, [(12.5, 21.5)], title="Garden bench top (invented)"
    ),
    "ribbon after looks": _ribbon_after_looks,
    "fifty days": _fifty_days,
    "mortar temperature": lambda: MortarTemperature(_temperatures(), WATER_IN),
    "drying of the face": lambda: DryingSheet(_drying()),
    "covers for the night": lambda: CoverChoices(COVERS),
    **STRENGTH,
    **BENCH,
    **LOG,
    **pour_pictures(STAGES),
    "bowed top": lambda: BowedTop(BOWED, longest_m=2.0),
    "what the packs cost": lambda: CostBars(COSTS, "${:,.2f}".format),
    "what if": lambda: WhatIfMap(
        _map(), "Hours from water in until the sides come off", "lines of equal time; hatched: cannot be reached"
    ),
}


def pictures():
    """Every picture once, each with its name.

    Returns
    -------
    dict of str to Picture
        In the order of the lessons; all numbers invented [-].

    Examples
    --------
    >>> "ribbon of the day" in pictures()
    True
    """
    return {name: build() for name, build in BUILD.items()}
