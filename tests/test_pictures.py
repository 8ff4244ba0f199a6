"""Pictures show the numbers they are given: extents of bars, data of lines, words, alt text."""

from dataclasses import replace
from datetime import datetime
from types import SimpleNamespace

import numpy as np
import pytest
from picture_checks import said
from shapely.geometry import Point, Polygon

from shop_calc.lesson.pictures import demo
from shop_calc.lesson.pictures.cloud import MARKS, FiftyDays, OpeningTimes, dot_times_h, fifty_days_alt
from shop_calc.lesson.pictures.curing import CoverChoices, cover_choices_alt
from shop_calc.lesson.pictures.evaporation import DryingSheet, drying_sheet_alt
from shop_calc.lesson.pictures.follow import Follow
from shop_calc.lesson.pictures.heat import HeatAreas, HeatBalance, HeatPart, heat_areas_alt
from shop_calc.lesson.pictures.ribbon import RibbonOfTheDay
from shop_calc.lesson.pictures.sections import LayerSections, layer_sections_alt
from shop_calc.lesson.pictures.slab import MortarTemperature, mortar_temperature_alt
from shop_calc.lesson.pictures.weighing import WeighBars, WeighRow, weigh_bars_alt
from shop_calc.lesson.pictures.what_if import WhatIfMap, what_if_alt
from shop_calc.units import show

START = datetime(2026, 5, 4, 8)


# ---- weigh bars, heat


def test_weigh_bars_are_as_long_as_the_masses_on_one_scale():
    picture = WeighBars(demo.ROWS)
    for panel, which in zip(picture.panels, ("base_kg", "face_kg"), strict=True):
        for (bar, *_), row in zip(panel, demo.ROWS, strict=True):
            assert bar.get_width() == (0.0 if row.total else getattr(row, which))
    first, second = (panel[0][0].axes for panel in picture.panels)
    per_in = [(a.get_xlim()[1] - a.get_xlim()[0]) / (a.get_position().width * 9.0) for a in (first, second)]
    assert per_in[0] == pytest.approx(per_in[1])  # a pound is as long in the base as in the face


def test_weigh_bars_say_every_mass_in_both_systems():
    figure, alt = WeighBars(demo.ROWS).figure, weigh_bars_alt(demo.ROWS)
    words = said(figure)
    for row in demo.ROWS:
        for mass in (row.base_kg, row.face_kg):
            if mass > 0:
                assert show(mass, "mass") in words and show(mass, "mass") in alt
    assert "none into the face share" in alt


def test_heat_areas_balance_about_the_mix_line():
    # a mix temperature is the one about which heat given equals heat taken
    parts = (HeatPart("sand", 60.0, 24.0, 0.6), HeatPart("water", 8.0, 4.0, 0.4, "water"))
    mix = sum(part.temp_c * part.heat_share for part in parts)
    picture = HeatAreas(HeatBalance(parts, mix, 15.0))
    areas = {True: 0.0, False: 0.0}
    for shapes in picture._parts:
        block = shapes["block"]
        areas[block.get_y() >= mix - 1e-9] += block.get_width() * block.get_height()
    assert areas[True] == pytest.approx(areas[False])
    assert picture.mix_line.get_ydata()[0] == pytest.approx(16.0)
    assert picture.wanted_line.get_ydata()[0] == 15.0


def test_heat_areas_say_shares_and_temperatures():
    words, alt = " ".join(said(HeatAreas(demo.HEAT).figure)), heat_areas_alt(demo.HEAT)
    for part in demo.HEAT.parts:
        assert show(part.temp_c, "temperature") in words and show(part.temp_c, "temperature") in alt
        assert show(part.mass_kg, "mass") in words
    assert "the mix, 54 °F (12.2 °C)" in words
    assert "4↓" in words  # the ice leaves the picture and says so
    assert "takes heat" in alt and "gives heat" in alt


# ---- two layers


def test_plan_is_to_scale_and_the_cut_states_its_exaggeration():
    plan = demo._bench()
    picture = LayerSections(plan)
    box = picture.body.get_path().get_extents()
    assert box.width / box.height == pytest.approx(1.524 / 0.381)
    cut, base = picture.cut_face.get_path().get_extents(), picture.cut_base.get_path().get_extents()
    stretched = (cut.height / plan.thickness_m) / (cut.width / 0.381)
    assert stretched == pytest.approx(picture.exaggeration)
    assert any(f"thickness drawn {picture.exaggeration:g} times as large" in text for text in said(picture.figure))
    assert f"{picture.exaggeration:g} times as large" in picture.alt
    assert (cut.y1 - base.y1) / cut.height == pytest.approx(plan.face_m / plan.thickness_m)
    # front faced, back against a wall: the base stops short of the front only
    assert (base.x0 - cut.x0) / cut.width == pytest.approx(plan.face_m / 0.381)
    assert base.x1 == pytest.approx(cut.x1)


def test_a_hole_is_open_in_the_plan():
    picture = LayerSections(demo._bench())
    path = picture.body.get_path()
    rings = [Polygon(ring) for ring in path.to_polygons()]
    assert len(rings) == 2
    outside, hole = sorted(rings, key=lambda ring: -ring.area)
    assert outside.exterior.is_ccw != hole.exterior.is_ccw  # else the hole would be painted over
    assert Point(hole.centroid).within(outside)


def test_faced_edges_and_walls_are_told_apart():
    picture = LayerSections(demo._bench())
    assert len(picture.faced.get_segments()) == 4  # three edges and the hole
    assert len(picture.walls.get_segments()) > 10  # the wall and its strokes
    words = "\n".join(said(LayerSections(demo._bench()).figure))
    for text in ("front, faced", "back, wall", "5'-0\" (1524 mm)", 'face 1/4" (6.35 mm)', "1'-3\" (381 mm) across"):
        assert text in words
    alt = layer_sections_alt(demo._bench())
    assert 'face 1/4" (6.35 mm)' in alt and "against a wall, not faced: back" in alt.lower() and "Hole:" in alt


# ---- drying, covers, temperatures, days, what if


def test_drying_fields_hold_the_rates_between_their_limits():
    shown = demo._drying()
    figure = DryingSheet(shown).figure
    fields = figure.axes[0].patches[:3]
    limits = (-np.inf, shown.watch_kg_m2_h, shown.stop_kg_m2_h, np.inf)
    for row in range(2, len(shown.wind_m_s) - 2, 7):
        for column in range(2, len(shown.rh_fraction) - 2, 7):
            rate = shown.rate_kg_m2_h[row, column]
            number = int(np.searchsorted(limits, rate, side="right")) - 1
            if min(abs(rate - limit) for limit in limits[1:3]) > 0.01:
                at = (100 * shown.rh_fraction[column], 3.6 * shown.wind_m_s[row])
                assert [field.get_path().contains_point(at) for field in fields].index(True) == number
    words, alt = " ".join(said(figure)), drying_sheet_alt(shown)
    assert "here: take care" in words and "take care" in alt
    assert "0.404 kg/m²·h" in words and "0.0827 lb/ft²·h (0.404 kg/m²·h)" in alt
    point = next(line for line in figure.axes[0].get_lines() if line.get_marker() == "o")
    assert (point.get_xdata()[0], point.get_ydata()[0]) == pytest.approx((40.0, 7.2))


@pytest.mark.parametrize(("rate", "word"), [(0.1, "easy on a face"), (0.25, "take care"), (0.5, "too dry for a face")])
def test_drying_sheet_names_the_field_of_the_point(rate, word):
    assert f": {word}" in drying_sheet_alt(replace(demo._drying(), here_rate_kg_m2_h=rate))


def test_cover_bars_are_the_water_lost_and_its_bound():
    picture = CoverChoices(demo.COVERS)
    for row, choice in zip(picture.rows, demo.COVERS.choices, strict=True):
        assert (row["bar"].get_width(), row["bound"].get_width()) == (choice.water_lost_kg_m2, choice.bound_kg_m2)
        assert row["ribbon"].get_visible() == (choice.key == "fabric")
    alt = cover_choices_alt(demo.COVERS)
    assert "What fits: Damp fabric flat, plastic over it." in alt
    assert "0.086 lb/ft² (0.42 kg/m²), at most 0.19 lb/ft² (0.92 kg/m²), 30 % of its water" in alt
    assert sum("fits this night" in text for text in said(CoverChoices(demo.COVERS).figure)) == 1


def test_mortar_lines_are_the_given_temperatures():
    day = demo._temperatures()
    figure = MortarTemperature(day, START).figure
    lines = figure.axes[0].get_lines()
    for name, line in zip(("room_c", "slab_covered_c", "slab_c", "wet_bulb_c"), lines, strict=True):
        assert np.array_equal(line.get_ydata(), getattr(day, name))
    alt = mortar_temperature_alt(replace(day, wet_bulb_c=None), START)
    assert "Mortar, open: from 60.8 °F (16 °C)" in alt and "Wet bulb" not in alt


def test_fifty_dots_split_the_days_into_equal_parts():
    days, weight = np.arange(500) / 100.0, np.full(500, 1 / 500)
    dots = dot_times_h(days, weight)
    assert len(dots) == 50
    assert np.histogram(dots, bins=5, range=(0, 5))[0].tolist() == [10] * 5
    late = dot_times_h(days, np.where(days >= 2.5, 1.0, 0.0))
    assert late.min() >= 2.5
    assert len(dot_times_h(np.array([np.nan, np.nan]), np.array([0.5, 0.5]))) == 0


def test_marks_of_the_days_stand_at_the_given_times():
    strips = [OpeningTimes("before", np.linspace(2, 4, 500), np.full(500, 1 / 500), (2.1, 3.0, 3.9))]
    picture = FiftyDays(strips, START)
    picture.update(strips, not_yet_h=2.5, there_h=3.5)
    figure = picture.figure
    at = {round(float(line.get_xdata()[0]), 6) for line in figure.axes[0].get_lines() if len(line.get_xdata())}
    assert {2.1, 3.0, 3.9, 2.5, 3.5} <= at
    assert MARKS == (0.05, 0.5, 0.95)
    assert {"10:06", "11:00", "11:54"} <= set(said(figure))
    alt = fifty_days_alt(strips, START, not_yet_h=2.5, there_h=3.5)
    assert "5 % of days open by 10:06, half by 11:00, 95 % by 11:54" in alt
    assert "Not there yet at 10:30. There at 11:30." in alt


def test_lines_of_the_map_have_the_answer_of_their_level():
    shown = demo._map()
    figure = WhatIfMap(shown, "Hours until the sides come off").figure
    segments = figure.axes[0].collections[0].get_segments()
    # the demo answer is a plain formula: put each point of each line back into it
    for segment in segments:
        hours = 2.72 * np.exp(-0.044 * (segment[:, 0] - 21)) * np.exp(-0.022 * (segment[:, 1] - 16))
        assert min(np.abs(hours - level).max() for level in shown.levels) < 0.01
    words, alt = said(figure), what_if_alt(shown, "Hours until the sides come off")
    assert {"2 h", "3 h", "4 h", "here: 2 h 43"} <= set(words)
    assert "21 °C (69.8 °F)" in alt and "cannot be reached" in alt


# ---- all of them


def test_words_of_a_person_are_never_read_as_a_formula():
    figure = WeighBars([WeighRow("sand $5 a bag, $x^2$", 10.0, 2.0)]).figure
    assert "sand $5 a bag, $x…" in said(figure) or "sand $5 a bag, $x^2$" in said(figure)


def test_a_picture_can_follow_a_result_it_does_not_know():
    shown = Follow(WeighBars(demo.ROWS), lambda result: result.rows)
    shown.update(SimpleNamespace(rows=[replace(row, base_kg=1.0) for row in demo.ROWS]), "si")
    assert "1 kg into the base" in shown.alt and shown.png()[1:4] == b"PNG"
    looked = Follow(RibbonOfTheDay(demo.STAGES, START), lambda plan: (plan, {"seen": [("strip", 2.2, True)]}))
    looked.update(demo.STAGES)
    assert "Seen at 10:12" in looked.alt
