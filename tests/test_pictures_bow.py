"""The bowed top: its outlines are the numbers, larger than life by the factor it names."""

import re

import numpy as np
import pytest

from shop_calc.lesson.moves.shrink_and_curl import DryingTop, bow_words, dried, paper_roll_band
from shop_calc.lesson.pictures.bow_shape import LANES_IN, LEFT_IN, RIGHT_IN, BowedTop, BowShape, BowState

STATES = (
    BowState("both faces dry alike", 0.0023, 0.0050, 0.0088),
    BowState("only the top dries", 0.0025, 0.0070, 0.0147),
)
SHAPE = BowShape(1.571, 0.0381, 0.00635, STATES)


@pytest.fixture
def picture():
    return BowedTop(SHAPE, longest_m=2.4)


def test_ends_stand_up_by_the_bow_and_thickness_is_the_thickness(picture):
    per_m = (RIGHT_IN - LEFT_IN) / picture.longest_m
    for lane, (state, times) in enumerate(((STATES[0], picture._times), (STATES[1], picture._times), (STATES[1], 1.0))):
        base = picture.bases[lane][1].get_xy()
        face = picture.faces[lane].get_xy()
        scale = per_m * times
        middle, end = base[20, 1], base[40, 1]
        assert middle == pytest.approx(LANES_IN[lane], abs=1e-9)
        assert (end - middle) / scale == pytest.approx(state.likely_m, rel=1e-6)
        assert (face[:, 1].max() - end) / scale == pytest.approx(SHAPE.thickness_m, rel=1e-6)
        assert np.ptp(base[:, 0]) / per_m == pytest.approx(SHAPE.length_m, rel=1e-6)


def test_bars_are_the_band_and_the_note_names_the_factor(picture):
    per_m = (RIGHT_IN - LEFT_IN) / picture.longest_m
    for lane, state in enumerate(STATES):
        low, high = (np.array(picture.bars[lane].get_ydata()) - LANES_IN[lane]) / per_m / picture._times
        assert (low, high) == pytest.approx((state.low_m, state.high_m))
    named = float(re.search(r"([\d.]+) times", picture._note.get_text()).group(1))
    assert named == pytest.approx(picture._times, rel=0.02)


@pytest.mark.parametrize("system", ["us", "si", "both"])
def test_alt_text_says_the_numbers(picture, system):
    picture.update(SHAPE, system)
    assert ("mm" in picture.alt) == (system != "us") and ('"' in picture.alt) == (system != "si")
    assert "Only the top dries" in picture.alt


def test_a_very_large_bow_stays_on_the_sheet(picture):
    wild = BowShape(2.4, 0.019, 0.006, (BowState("a", 0.01, 0.05, 0.2), BowState("b", 0.02, 0.30, 0.9)))
    count = len(picture.axes.get_children())
    picture.update(wild)
    assert len(picture.axes.get_children()) == count
    for faces in picture.faces:
        assert faces.get_xy()[:, 1].max() < picture.figure.get_size_inches()[1] - 0.6


def test_the_block_of_the_lesson_in_the_directions_of_the_trade():
    base = {"thickness_m": 0.0381, "length_m": 1.571, "rh_fraction": 0.45, "phi": 0.63}

    def bows(**change):
        return [state.likely_m for state in dried(**(base | change)).shape.states]

    both, top = bows()
    assert bows(length_m=3.142)[1] == pytest.approx(4 * top, rel=1e-9)  # geometry: the square of the length
    assert bows(thickness_m=0.01905)[1] > 2 * top
    assert bows(phi=1.0)[0] == pytest.approx(0.0, abs=1e-9) and bows(phi=1.0)[1] > 0
    assert bows(rh_fraction=0.8)[0] < both
    assert "high" in bow_words(dried(**base)) and isinstance(DryingTop(dried(**base)).alt, str)


def test_the_paper_roll_is_the_same_curvature():
    low, likely, high = paper_roll_band()
    assert likely == pytest.approx(2 * 0.0001 / 0.01) and low < likely < high
