"""The stiffening curve: band and windows stand where the numbers say, words stay apart, rods keep their marks."""

from datetime import datetime

import numpy as np
import pytest
from picture_checks import said, unreadable

from shop_calc.lesson.pictures.set_curve import SetCurve, StiffeningCurve
from shop_calc.units import convert

START = datetime(2026, 5, 4, 8)
HOURS = np.linspace(2.0, 6.0, 41)
LIKELY_PA = convert(500.0, "psi", "Pa") * (HOURS / 4.0) ** 7
WINDOWS = tuple(
    (name, convert(opens, "psi", "Pa"), convert(closes, "psi", "Pa"))
    for name, opens, closes in (("sides off", 10, 40), ("first steel", 60, 150), ("stop", 1000, 1000))
)
READINGS = ((2.5, convert(20.0, "psi", "Pa"), True), (3.5, convert(200.0, "psi", "Pa"), False))


def made(readings=(), **more):
    return StiffeningCurve(SetCurve(HOURS, 0.5 * LIKELY_PA, LIKELY_PA, 2 * LIKELY_PA, WINDOWS, readings), START, **more)


def test_the_line_is_the_middle_and_the_band_its_ends():
    picture = made()
    assert picture.line.get_ydata() == pytest.approx(LIKELY_PA)
    corners = picture.band.get_xy()
    assert corners[:41, 1] == pytest.approx(0.5 * LIKELY_PA)
    assert corners[41:82, 1] == pytest.approx(2 * LIKELY_PA[::-1])


def test_a_window_is_a_stripe_and_a_single_resistance_a_line():
    picture = made()
    _, opens, closes = WINDOWS[1]
    shapes = [patch for patch in picture.axes.patches if hasattr(patch, "get_height")]
    stripes = [shape for shape in shapes if shape.get_y() == pytest.approx(opens)]
    assert len(stripes) == 1 and stripes[0].get_height() == pytest.approx(closes - opens)
    heights = [list(line.get_ydata()) for line in picture.axes.lines]
    assert heights.count([WINDOWS[2][1]] * 2) == 1


def test_each_rod_has_its_own_mark_at_what_it_read():
    picture = made(READINGS)
    assert list(picture.thick.get_data()[0]) == [2.5] and list(picture.thin.get_data()[0]) == [3.5]
    assert picture.thick.get_marker() != picture.thin.get_marker()
    assert "Your 1/4 in rod at 10:30: 20 psi" in picture.alt and "Your 1/8 in rod at 11:30: 200 psi" in picture.alt


def test_the_words_say_when_a_window_opens():
    # 500 psi (t/4 h)^7: 60 psi at 2.956 h, 10:57, between points 6 minutes apart; twice as stiff 2.677 h, half 3.264 h
    alt = made().alt
    assert "First steel, 60 psi (414 kPa) to 150 psi (1.03 MPa): reached about 10:57" in alt
    assert "on nine days of ten 10:41 to 11:16" in alt


def test_words_stay_on_the_sheet_and_apart_and_no_power_law_shows_in_the_soft_stage():
    for picture in (made(), made(READINGS), made(title="A cup " * 40)):
        assert unreadable(picture.figure) == []
        assert {"psi", "kPa", "stop"} <= set(said(picture.figure))
        assert picture.axes.get_ylim()[0] > convert(5.0, "psi", "Pa")
