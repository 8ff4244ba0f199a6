"""Many what-ifs in one call give what many calls give."""

import numpy as np
import pytest

from shop_calc.trade.timeline.what_if import EVENTS, middle_times_h

RNG = np.random.default_rng(3)
CASES = tuple(
    RNG.uniform(low, high, 40) for low, high in ((8, 26), (4, 38), (0.15, 0.95), (0.0, 6.0), (0.015, 0.08))
)


def test_array_and_single_calls_agree_to_1e9():
    together = middle_times_h(*CASES)
    for index in range(0, 40, 7):
        alone = middle_times_h(*(column[index] for column in CASES))
        for event in EVENTS:
            assert together[event][index] == pytest.approx(float(alone[event]), abs=1e-9)


def test_events_come_in_order():
    times = middle_times_h(*CASES)
    rows = np.array([times[event] for event in EVENTS])
    assert (np.diff(rows, axis=0) > 0).all()


def test_shapes_broadcast():
    times = middle_times_h(np.linspace(10, 20, 3)[:, None], np.linspace(10, 30, 4), 0.5, 0.0, 0.0381, ("strip",))
    assert times["strip"].shape == (3, 4)


def test_unknown_events_are_named():
    with pytest.raises(ValueError, match="event: 'polish' given"):
        middle_times_h(16.0, 21.0, 0.5, 0.0, 0.0381, ("polish",))
