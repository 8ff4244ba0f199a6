"""Pictures of strength and carrying show the numbers they are given, to scale, at the ends of every slider too."""

from dataclasses import replace
from datetime import datetime
from itertools import combinations

import numpy as np
import pytest
from picture_checks import off_the_sheet, said, unreadable

from shop_calc.lesson.pictures import demo_strength
from shop_calc.lesson.pictures.carry_ways import MOST_PA, CarryWays, carry_ways_alt
from shop_calc.lesson.pictures.first_days import StrengthOfFirstDays, first_days_alt
from shop_calc.lesson.pictures.open_mixes import OFF, StrengthOfMixes, open_mixes_alt
from shop_calc.trade.after.carrying import FALL_LINE
from shop_calc.units import convert, show

START = datetime(2026, 5, 4, 8)
CARRIED, DAYS, MIXES = demo_strength.CARRIED, demo_strength.first_days_numbers(), demo_strength.mixes_numbers()


# ---- ways to carry


def test_bars_are_as_long_as_the_stresses_and_stop_at_the_end_of_the_scale():
    picture = CarryWays(CARRIED)
    for parts, lane in zip(picture.lanes, CARRIED.lanes, strict=True):
        assert (parts["own"].get_width(), parts["needed"].get_width()) == (lane.stress_pa, lane.needed_pa)
        for name, value in (("morning", CARRIED.morning_pa), ("final", CARRIED.final_pa)):
            assert parts["marks"][name][1].get_xdata()[0] == value
    heavy = replace(CARRIED, lanes=(*CARRIED.lanes[:3], replace(CARRIED.lanes[3], needed_pa=20e6)))
    picture.update(heavy)
    assert picture.lanes[3]["needed"].get_width() == MOST_PA
    assert any(text.endswith("→") for text in said(picture.figure))


def test_drawings_are_to_scale_flat_and_on_edge():
    picture = CarryWays(CARRIED)
    sizes = {lane.title: (parts["piece"].get_width(), parts["piece"].get_height())
             for parts, lane in zip(picture.lanes, CARRIED.lanes, strict=True)}  # fmt: skip
    for title, (long, deep) in sizes.items():
        depth_m = CARRIED.width_m if title.startswith("On edge") else CARRIED.thickness_m
        assert deep / long == pytest.approx(depth_m / CARRIED.length_m)
    axes = picture.drawn  # an inch of the picture is one unit of these axes, both ways
    left, right = axes.get_xlim()
    low, high = axes.get_ylim()
    box, (wide, tall) = axes.get_position(), picture.figure.get_size_inches()
    assert (right - left) / (box.width * wide) == pytest.approx((high - low) / (box.height * tall))


def test_holds_stand_under_the_places_that_the_lane_names():
    picture = CarryWays(CARRIED)
    parts, lane = picture.lanes[2], CARRIED.lanes[2]
    left, long = parts["piece"].get_x(), parts["piece"].get_width()
    places = [(hold.get_xy()[0, 0] - left) / long for hold in parts["holds"]]
    assert places == pytest.approx([lane.hold_ratio, 1 - lane.hold_ratio])
    assert all(hold.get_xy()[0, 1] == pytest.approx(parts["piece"].get_y()) for hold in parts["holds"])
    assert not any(hold.get_visible() for hold in picture.lanes[0]["holds"]) and picture.lanes[0]["board"].get_visible()


def test_the_pulled_face_is_below_by_the_ends_and_both_a_fifth_in():
    picture = CarryWays(CARRIED)

    def sides(row):
        piece = picture.lanes[row]["piece"]
        middle = piece.get_y() + piece.get_height() / 2
        return sorted(line.get_ydata()[0] > middle for line in picture.lanes[row]["pulls"] if len(line.get_xdata()))

    # moment of a beam: positive in the middle, negative over a hold with an overhang
    assert [sides(row) for row in range(4)] == [[], [False], [False, True, True], [False]]


def test_on_edge_is_never_shown_or_said_without_the_fall_line():
    for system in ("us", "si", "both"):
        picture, alt = CarryWays(CARRIED), carry_ways_alt(CARRIED, system)
        picture.update(CARRIED, system)
        words = " ".join(text.replace("\n", " ") for text in said(picture.figure))
        assert FALL_LINE in words and FALL_LINE in alt
        assert "✗ not in 28 days" in words and "✓ from Tue 08:00" in words
        assert show(CARRIED.lanes[3].stress_pa, "pressure", system) in words


@pytest.mark.parametrize("length_m", [0.5, 1.2, 2.4384, 4.0])
@pytest.mark.parametrize("thickness_m", [0.019, 0.0762])
def test_words_of_the_ways_stay_on_the_sheet_at_the_extremes(length_m, thickness_m):
    later = "from Sun 17 May, after 12.7 days"
    lanes = tuple(replace(lane, stress_pa=123.4e6, needed_pa=370.1e6, when=later) for lane in CARRIED.lanes)
    view = replace(CARRIED, length_m=length_m, thickness_m=thickness_m, width_m=0.64, lanes=lanes, morning_pa=0.0)
    figure = CarryWays(view).figure
    assert unreadable(figure) == []


def test_another_number_of_ways_or_needs_is_refused():
    with pytest.raises(ValueError, match="2 given"):
        CarryWays(CARRIED).update(replace(CARRIED, lanes=CARRIED.lanes[:2]))
    with pytest.raises(ValueError, match="1 given"):
        StrengthOfFirstDays(DAYS, START).update(replace(DAYS, needs=DAYS.needs[:1]))


# ---- first days


def test_lines_of_the_first_days_are_the_given_curves_on_one_clock():
    picture = StrengthOfFirstDays(DAYS, START)
    for line, curve in ((picture.aci, DAYS.aci_pa), (picture.en, DAYS.en_pa), (picture.piece, DAYS.piece_c),
                        (picture.air, DAYS.air_c)):  # fmt: skip
        assert np.array_equal(line.get_ydata(), curve, equal_nan=True)
        assert np.array_equal(line.get_xdata(), DAYS.time_h)
    assert picture.axes.get_xlim() == picture.warm.get_xlim() == (0.0, 72.0)
    assert picture.dot.get_ydata()[0] == DAYS.morning_strength_pa() == pytest.approx(min(
        np.interp(24.0, DAYS.time_h, curve) for curve in (DAYS.aci_pa, DAYS.en_pa)))  # fmt: skip
    assert [line.get_ydata()[0] for line, _ in picture.needs] == [value for _, value in DAYS.needs]


def test_both_scales_of_the_strength_say_the_same():
    picture = StrengthOfFirstDays(DAYS, START)
    picture.figure.canvas.draw()
    other = next(a for a in picture.figure.axes if a is not picture.axes and a.get_ylim() == picture.axes.get_ylim())
    for axes, unit in ((picture.axes, "psi"), (other, "MPa")):
        for place, label in zip(axes.get_yticks(), axes.get_yticklabels(), strict=True):
            assert place == pytest.approx(convert(float(label.get_text()), unit, "Pa"))


def test_the_alt_text_of_the_first_days_says_when_each_strength_is_there():
    alt, words = first_days_alt(DAYS, START), said(StrengthOfFirstDays(DAYS, START).figure)
    lower = DAYS.lower_pa
    for name, value in DAYS.needs:
        there = np.flatnonzero(np.nan_to_num(lower) >= value)
        assert (f"Needed {name}: {show(value, 'pressure')}, not in these days" in alt) == (there.size == 0)
        assert name in words
    assert "Tue 08:00" in words and "by the lower of the two" in " ".join(words)


@pytest.mark.parametrize("shift_k", [-25.0, 0.0, 18.0])
def test_words_of_the_first_days_stay_apart(shift_k):
    needs = (("on edge", 1e3), ("a fifth in, and a good deal more", 8e6), ("by the ends", 9e8))
    shown = replace(DAYS, piece_c=DAYS.piece_c + shift_k, air_c=DAYS.piece_c, needs=needs)
    figure = StrengthOfFirstDays(shown, datetime(2026, 5, 4, 17, 45)).figure
    assert unreadable(figure) == []


# ---- open mixes


def test_dots_are_the_measured_values_and_what_is_left_over_is_in_percent():
    picture = StrengthOfMixes(MIXES)
    assert np.array_equal(picture.mixes.get_ydata(), MIXES.strength_pa)
    assert np.array_equal(picture.others.get_xdata(), MIXES.other_water)
    assert np.array_equal(picture.ratios.get_ydata(), MIXES.ratio)
    assert picture.water_off.get_ydata() == pytest.approx(100 * MIXES.water_off)
    far = replace(MIXES, aci_off=np.full_like(MIXES.aci_off, 5.0))
    picture.update(far)
    assert np.all(picture.aci_off.get_ydata() < OFF[1])  # stands at the edge and is not lost


def test_the_alt_text_of_the_mixes_counts_and_averages():
    alt = open_mixes_alt(MIXES)
    assert f"{MIXES.mix_count} mixes" in alt and "At 7 d: 10 mixes" in alt
    seven = MIXES.age_d == 7
    assert f"on average {100 * MIXES.ratio[seven].mean():.0f} % of 28 days" in alt
    assert off_the_sheet(StrengthOfMixes(MIXES).figure) == []


# ---- one-colour prints


def test_lines_and_fills_that_meet_differ_without_colour():
    carry, days, mixes = CarryWays(CARRIED), StrengthOfFirstDays(DAYS, START), StrengthOfMixes(MIXES)
    parts = carry.lanes[0]
    assert parts["own"].get_hatch() != parts["needed"].get_hatch()
    lines = [parts["marks"][name][1] for name in ("morning", "final")]
    groups = (lines, (days.aci, days.en, days.needs[0][0]), (mixes.aci, mixes.en))
    for group in groups:
        for one, other in combinations(group, 2):
            assert one._dash_pattern != other._dash_pattern
    assert mixes.aci_off.get_marker() != mixes.en_off.get_marker()
    assert mixes.others.get_markerfacecolor() == "none" != mixes.mixes.get_markerfacecolor()
