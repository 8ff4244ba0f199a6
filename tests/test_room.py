"""The room: each row holds from its time on."""

import numpy as np
import pytest

from shop_calc.trade.timeline.room import Room, room_at, room_steps, shifted, steady_room

DAY = Room((0.0, 3.0, 9.0), (18.0, 25.0, 12.0), (0.5, 0.3, 0.7), (0.0, 2.0, 0.0))


def test_each_row_holds_from_its_time_on_and_the_first_before_it_too():
    hours = [-5.0, 0.0, 2.99, 3.0, 8.9, 9.0, 40.0]
    assert room_at(DAY, hours)[0].tolist() == [18.0, 18.0, 18.0, 25.0, 25.0, 12.0, 12.0]
    assert room_at(DAY, 3.0)[1] == 0.3


def test_steps_take_the_air_in_the_middle_of_the_step():
    temp, _, wind = room_steps(DAY, 2.0, 1800.0, 4)
    assert temp.tolist() == [18.0, 18.0, 25.0, 25.0]
    assert wind.tolist() == [0.0, 0.0, 2.0, 2.0]


def test_steps_for_several_starts_stand_side_by_side():
    temp = room_steps(DAY, np.array([[0.0], [2.5]]), 1800.0, 2)[0]
    assert temp.shape == (2, 2, 1)
    assert temp[:, 1, 0].tolist() == [18.0, 25.0]


def test_a_later_water_meets_the_same_air_on_the_clock():
    later = shifted(DAY, 1.25)
    for hour in (0.0, 1.7, 1.8, 7.9):
        assert room_at(later, hour)[0] == room_at(DAY, hour + 1.25)[0]


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"from_h": (0.0, 3.0, 3.0)}, "must start after"),
        ({"air_temp_c": (18.0, 95.0, 12.0)}, "air temperature: 95 °C given"),
        ({"rh_fraction": (0.5, 50.0, 0.7)}, "humidity: 50 given"),
        ({"wind_m_s": (0.0, -1.0, 0.0)}, "wind: -1 m/s given"),
    ],
)
def test_impossible_air_is_refused(change, words):
    entries = {"from_h": DAY.from_h, "air_temp_c": DAY.air_temp_c, "rh_fraction": DAY.rh_fraction,
               "wind_m_s": DAY.wind_m_s} | change  # fmt: skip
    with pytest.raises(ValueError, match=words):
        Room(**entries)


def test_a_room_without_rows_is_refused():
    with pytest.raises(ValueError, match="at least one"):
        Room((), (), (), ())


def test_a_steady_room_is_steady():
    assert room_at(steady_room(21.0, 0.5, 0.0), [0.0, 100.0])[0].tolist() == [21.0, 21.0]
