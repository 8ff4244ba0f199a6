"""Ages of the pours of a log: hours from the layer's own water, up to the last look, and on at the last pace."""

import math
from datetime import datetime, timedelta

import numpy as np
import pytest

from shop_calc import defaults
from shop_calc.trade.logbook.log_ages import PourFacts, energy_place, pour_facts
from shop_calc.trade.logbook.shop_log import Event, gather_pours
from shop_calc.trade.timeline.set_clock import STEP_S

START, THICK_M = datetime(2026, 5, 4, 8), 0.0381


def facts_at(temp_c, hours=(0.0, 1.0, 1.5)):
    return PourFacts(None, (), (), (), (), frozenset(), np.array(hours), np.full(len(hours), temp_c))


def pour(name, looks, *, face_water_h=None, warm=(), temp_c=21.0):
    """Rows of one pour in a room as warm as its mix; looks are (hour, cue), warm are (hour, surface temperature)."""

    def at(hour):
        return START + timedelta(hours=hour)

    rows = [
        Event(name, START, "water_in", recipe="m", mix_temp_c=temp_c),
        Event(name, START, "room", air_temp_c=temp_c),
    ]
    if face_water_h is not None:
        rows.append(Event(name, at(face_water_h), "water_in", "face", mix_temp_c=temp_c))
    rows += [Event(name, at(hour), "check", "face", cue=cue) for hour, cue in looks]
    rows += [Event(name, at(hour), "check", "face", surface_temp_c=value) for hour, value in warm]
    return rows


def facts_of(*pours):
    facts, left_out = pour_facts(gather_pours([row for rows in pours for row in rows]), "face", THICK_M)
    assert left_out == ()
    return facts


@pytest.mark.parametrize("temp_c", [10.0, 21.0, 31.0])
def test_beyond_its_last_look_mortar_ages_at_the_pace_it_had_there(temp_c):
    # at one temperature age is time by exp(E/R (1/294.15 K - 1/T)), 36 kJ/mol, 8.314 J/mol K (ASTM C1074 form)
    rate = math.exp(36_000 / 8.314462618 * (1 / 294.15 - 1 / (temp_c + 273.15)))
    facts = facts_at(temp_c)
    for hour in (0.5, 1.25, 1.5, 4.0, 12.0):
        assert facts.time_at_age_h(hour * rate, 36_000.0) == pytest.approx(hour, rel=1e-6)


def test_the_last_pace_is_that_of_the_last_step_and_not_of_the_whole_pour():
    # cold for an hour, at the reference of the clock for the last half: two hours more of age are two hours more
    facts = PourFacts(
        None, (), (), (), (), frozenset(), np.array([0.0, 1.0, 1.5, 2.0]), np.array([5.0, 21.0, 21.0, 21.0])
    )
    last = facts.age_h(2.0, 36_000.0)
    assert facts.time_at_age_h(last + 2.0, 36_000.0) == pytest.approx(4.0, rel=1e-9)


def test_hours_of_looks_are_counted_from_the_water_of_the_layer():
    # the face's own water at 09:00; looks at 11:00 and 11:30 are 2 and 2.5 h old
    (facts,) = facts_of(pour("p", [(3.0, "strip not yet"), (3.5, "strip seen")], face_water_h=1.0))
    (item,) = facts.between
    assert (item.after_h, item.before_h) == (2.0, 2.5)


def test_a_surface_that_was_read_is_met_at_its_own_hour_of_the_layer():
    # read 26 °C two hours after the face's own water, which came an hour after the first
    (facts,) = facts_of(pour("p", [(4.0, "strip seen")], face_water_h=1.0, warm=[(3.0, 26.0)]))
    assert np.interp(2.0, facts.time_h, facts.temp_c) == pytest.approx(26.0, abs=1e-9)
    assert facts.temp_c[0] == pytest.approx(21.0, abs=0.3)


def test_a_surface_read_at_the_water_itself_is_the_mix_and_shifts_nothing():
    (plain,) = facts_of(pour("p", [(3.0, "strip seen")], face_water_h=1.0))
    (early,) = facts_of(pour("p", [(3.0, "strip seen")], face_water_h=1.0, warm=[(1.01, 30.0)]))
    assert early.temp_c == pytest.approx(plain.temp_c, abs=1e-12)


def test_temperatures_end_a_step_after_the_last_look_of_each_pour():
    # a short and a long pour: the mean temperature of each is that of its own hours
    short, long = facts_of(pour("a", [(2.0, "strip seen")]), pour("b", [(9.0, "last_steel seen")]))
    step_h = STEP_S / 3600
    for facts, last_h in ((short, 2.0), (long, 9.0)):
        assert last_h <= facts.time_h[-1] <= last_h + step_h * (1 + 1e-9)
        assert len(facts.time_h) == len(facts.temp_c)


def test_a_pour_of_many_hours_is_aged_to_its_end():
    (facts,) = facts_of(pour("b", [(9.0, "last_steel seen")]))
    assert facts.time_h[-1] >= 9.0
    assert facts.age_h(9.0, defaults.si("activation_energy")) > facts.age_h(8.9, defaults.si("activation_energy"))


def test_the_axis_of_activation_energy_counts_tens_of_kilojoules_from_the_default():
    # row activation_energy: 36 kJ/mol
    assert [energy_place(value) for value in (26_000.0, 36_000.0, 46_000.0, 61_000.0)] == [-1.0, 0.0, 1.0, 2.5]


@pytest.mark.parametrize(("minutes", "used"), [(1, False), (2, True)])
def test_a_look_within_a_minute_of_the_water_is_none(minutes, used):
    rows = pour("p", [(minutes / 60, "strip not yet")])
    facts, left_out = pour_facts(gather_pours(rows), "face", THICK_M)
    assert (len(facts), len(left_out)) == ((1, 0) if used else (0, 1))
