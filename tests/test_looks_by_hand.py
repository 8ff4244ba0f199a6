"""Re-planning, number by number: bands, middles, effective days, the lines of the ruler, and when it asks to look again."""

from datetime import datetime

import numpy as np
import pytest

from shop_calc.trade.timeline.day import DayInputs, plan_day
from shop_calc.trade.timeline.looks import not_yet, replan, rod_reading, seen
from shop_calc.trade.timeline.room import steady_room
from shop_calc.trade.timeline.ruler import ruler

PSI = 6894.757293168361
DAY = plan_day(DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.50, 0.0), 16.0, 0.0381, 0.03175, 0.58))
PAIR = (not_yet(2.25, "strip"), seen(2.75, "strip"))


def test_bands_reach_from_the_day_of_twenty_before_to_the_day_of_twenty_after():
    result = replan(DAY, PAIR)
    opens = np.sort(DAY.samples.open_h["strip"])  # 500 days alike: 25 of them lie outside on either side
    low, middle, high = result.opening_before_h["strip"]
    assert opens[23] <= low <= opens[26] and opens[473] <= high <= opens[476] and opens[248] <= middle <= opens[251]
    assert result.band_before_h("strip") == pytest.approx(high - low)
    assert 0.2 < result.band_h("strip") < result.band_before_h("strip") < 3.0
    assert 2.25 < result.opening_after_h["strip"][1] < 2.75


def test_looks_that_cannot_both_be_leave_all_days_as_they_were():
    result = replan(DAY, (seen(2.25, "strip"), not_yet(2.75, "strip")))
    assert result.effective_days == pytest.approx(DAY.samples.days.weight.size)  # each day still counts as one
    assert result.opening_after_h == result.opening_before_h and result.day == DAY


def test_only_looks_that_fit_no_mortar_are_called_so():
    said = [line.text for line in replan(DAY, PAIR).advice]
    assert not any("do not fit one mortar" in text for text in said)
    wild = replan(DAY, tuple(rod_reading(1.0 + 0.05 * number, 4000 * PSI) for number in range(8)))
    (line,) = (line for line in wild.advice if "do not fit one mortar" in line.text)
    assert "Only 40 of the days" in line.reason


def test_the_ruler_has_every_quarter_hour_of_the_opening_and_none_beside_it():
    low, _, high = replan(DAY, PAIR).opening_before_h["strip"]
    hours = [row.seen_h for row in ruler(DAY)]
    assert np.diff(hours) == pytest.approx(0.25)
    assert low <= hours[0] < low + 0.25 and high - 0.25 < hours[-1] <= high
