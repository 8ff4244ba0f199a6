"""The ribbon of the day shows the times it is given, what was seen and what changed."""

from datetime import datetime

import pytest
from matplotlib.colors import to_rgb
from matplotlib.transforms import Bbox
from picture_checks import said, words_drawn

from shop_calc.lesson.pictures import demo
from shop_calc.lesson.pictures.base import PAPER
from shop_calc.lesson.pictures.predicted_seen import PredictedSeen, SeenRow
from shop_calc.lesson.pictures.ribbon import RibbonOfTheDay, reach_h
from shop_calc.lesson.pictures.ribbon_words import ribbon_of_the_day_alt
from shop_calc.lesson.pictures.scales import LANE, clock, clock_ticks

START = datetime(2026, 5, 4, 8)


def test_ribbon_bars_are_the_given_windows():
    picture = RibbonOfTheDay(demo.STAGES, START, (0.0, 1 / 3), demo.ROOM)
    for row, stage in zip(picture._rows, demo.STAGES, strict=True):
        band, bar = row["band"], row["edge"]
        assert band.get_x() == stage.look_from_h
        assert band.get_x() + band.get_width() == pytest.approx(stage.over_by_h)
        assert bar.get_x() == stage.likely_from_h
        assert bar.get_x() + bar.get_width() == pytest.approx(stage.likely_to_h)
        assert row["deadline"].get_visible() == (stage.deadline_h is not None)
        if stage.deadline_h is not None:
            middle = row["deadline"].get_x() + row["deadline"].get_width() / 2
            assert middle == pytest.approx(stage.deadline_h)


def test_ribbon_says_every_stage_with_its_tool_and_its_times():
    picture = RibbonOfTheDay(demo.STAGES, START, (0.0, 1 / 3, 2 / 3), demo.ROOM, title="Bench top")
    words = " ".join(said(picture.figure)).replace("\n", " ")
    for stage in demo.STAGES:
        for text in (stage.title, stage.tool, stage.cue):
            assert text in words
        span = f"{clock(START, stage.likely_from_h)}–{clock(START, stage.likely_to_h)}"
        assert span in words and span in picture.alt
        assert f"look from {clock(START, stage.look_from_h)}" in picture.alt
        assert f"over by {clock(START, stage.over_by_h)}" in picture.alt
        assert f"Tool: {stage.tool}. Cue: {stage.cue}." in picture.alt
    assert "not after 09:33" in words and "not after 09:33" in picture.alt
    assert "08:00, 08:20, 08:40" in words and "08:00, 08:20 and 08:40" in picture.alt
    assert "69.8 °F (21 °C), 50 % humidity, still" in words and "69.8 °F (21 °C)" in picture.alt


def test_ribbon_marks_the_water_of_every_load():
    picture = RibbonOfTheDay(demo.STAGES, START, (0.0, 0.4, 0.9))
    marks = [line for line in picture.axes.get_lines() if line.get_marker() == "v"]
    assert len(marks) == 1
    assert list(marks[0].get_xdata()) == [0.0, 0.4, 0.9]


def test_ribbon_uses_both_fills_where_both_layers_decide():
    picture = RibbonOfTheDay(demo.STAGES, START)
    for row, stage in zip(picture._rows, demo.STAGES, strict=True):
        same = row["upper"].get_facecolor() == row["lower"].get_facecolor()
        assert same == (stage.layer != "both")
        assert ("." in (row["lower"].get_hatch() or "")) == (stage.layer in ("base", "both"))


def test_a_replanned_ribbon_keeps_the_first_plan_and_the_looks():
    picture = RibbonOfTheDay(demo.STAGES, START)
    hidden = [artist.get_visible() for artist in picture._plan_key + picture._look_key]
    looks = [("strip", 2.25, False), ("strip", 2.75, True)]
    picture.update(demo.LATER, first=demo.STAGES, seen=looks)
    for row, first, later in zip(picture._rows, demo.STAGES, demo.LATER, strict=True):
        assert (row["before"].get_x(), row["edge"].get_x()) == (first.likely_from_h, later.likely_from_h)
        assert row["edge"].get_hatch() == "///"
    strip = picture._rows[4]
    assert list(strip["not_yet"].get_xdata()) == [2.25] and list(strip["there"].get_xdata()) == [2.75]
    assert not any(hidden) and all(a.get_visible() for a in picture._plan_key + picture._look_key)
    assert "Seen at 10:15, Sides off, patch the edges: not yet." in picture.alt
    assert "Seen at 10:45, Sides off, patch the edges: the cue was there." in picture.alt
    assert "first plan 10:23–10:53" in picture.alt
    picture.update(demo.STAGES)  # and back
    assert picture._rows[4]["edge"].get_hatch() in ("", None) and not picture._rows[4]["before"].get_visible()


def test_ribbon_darkens_the_dark_hours_only():
    picture = RibbonOfTheDay(demo.STAGES, START, dark_h=[(-9.0, -2.0), (5.0, 30.0)])
    dark = [p for p in picture.axes.patches if p.get_facecolor()[:3] == pytest.approx((0.765, 0.788, 0.82), abs=0.002)]
    assert dark and all(p.get_x() == 5.0 for p in dark)
    assert all(p.get_x() + p.get_width() == pytest.approx(picture.to_h) for p in dark)


def test_ribbon_clock_names_hours_on_both_clocks_and_the_next_day():
    places, labels = clock_ticks(START, -1.0, 30.0)
    assert labels[:2] == ["09:00\n9 am", "12:00\nnoon"] and "00:00\nTue 5 May" in labels  # every third hour fits
    assert places[:2] == [1.0, 4.0]
    half_past = clock_ticks(datetime(2026, 5, 4, 7, 30), 0.0, 3.0)
    assert half_past == ([0.5, 1.5, 2.5], ["08:00\n8 am", "09:00\n9 am", "10:00\n10 am"])


def test_ribbon_reach_holds_every_band():
    low, high = reach_h(demo.STAGES)
    assert low < 0 and high > max(stage.over_by_h for stage in demo.STAGES)


def test_the_ribbon_says_what_its_words_say():
    args = (demo.STAGES, START, (0.0,), demo.ROOM)
    assert ribbon_of_the_day_alt(*args) == RibbonOfTheDay(*args).alt


@pytest.mark.parametrize("to_h", [5.98, 6.05, 6.5, 7.0])
def test_every_line_of_the_grid_has_its_hour_under_it(to_h):
    seen = [SeenRow("first steel", (2.4, 3.0, 3.9))]
    for picture in (
        RibbonOfTheDay(demo.STAGES, START, between_h=(-0.95, to_h)),
        PredictedSeen(seen, (-0.95, to_h), "", START),
        PredictedSeen(seen, (0.05, to_h)),
    ):
        lines = [line.get_xdata()[0] for line in picture.axes.lines if line.get_color() == PAPER and len(line.get_xdata())]
        assert lines == list(picture.axes.get_xticks()) and all(t.get_text() for t in picture.axes.get_xticklabels())


@pytest.mark.parametrize("name", ["the practice pour", "a class on one code"])
def test_marks_of_a_pour_stay_in_their_lane_and_off_the_words(name):
    picture = demo.pictures()[name]
    words = [box for _, box in words_drawn(picture.figure)]
    lanes = [patch.get_window_extent() for patch in picture.axes.patches if patch.get_facecolor()[:3] == to_rgb(LANE)]
    bars = [row["edge"].get_window_extent() for row in picture._rows]
    count = 0
    for marks in picture._marks.values():
        half = marks.get_markersize() / 144 * picture.figure.dpi  # a marker's size is across, in points
        for x, y in picture.axes.transData.transform(list(zip(*marks.get_data(), strict=True))):
            count += 1
            mark = Bbox.from_extents(x - half, y - half, x + half, y + half)
            assert any(lane.y0 <= mark.y0 + 1 and mark.y1 - 1 <= lane.y1 for lane in lanes)
            assert not any(mark.overlaps(box) for box in words)
            assert name != "the practice pour" or not any(mark.overlaps(bar) for bar in bars)
    assert count == (48 if name == "a class on one code" else 4)
