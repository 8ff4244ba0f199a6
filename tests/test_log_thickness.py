"""Thin and thick pieces in one log: each pour is aged at its own thickness."""

from dataclasses import replace
from datetime import datetime, timedelta

import numpy as np
import pytest
from made_logs import Mortar, clocks, pour_rows

from shop_calc import defaults
from shop_calc.science import slab_heat
from shop_calc.trade.logbook.calibrate import calibrate, fitted_bands
from shop_calc.trade.logbook.log_ages import pour_facts
from shop_calc.trade.logbook.shop_log import Event, append_events, gather_pours, read_log

START = datetime(2026, 3, 2, 8)
THICK_M = (0.019, 0.064, 0.019, 0.064)  # 3/4 in and 2 1/2 in
TRUE_H = 3.0  # initial set of the made mortar, at 21 °C


def cold_shop(written):
    """Four pours of one mortar in a cold shop, thin and thick by turns, mixed at 21 °C in air of 8 °C."""
    rng, rows, count = np.random.default_rng(5), [], len(THICK_M)
    for number, thick_m in enumerate(THICK_M):
        clock = clocks(np.random.default_rng(9), Mortar(TRUE_H), [21.0] * count, np.full(count, 8.0), 0.6, thick_m)
        made = pour_rows(rng, f"pour {number}", START + timedelta(days=number), "made", clock, 0, 21.0, 8.0, 0.6, rods=6)
        rows += [replace(made[0], thickness_m=thick_m if written else None), *made[1:]]
    return gather_pours(rows)


def test_a_thin_piece_has_cooled_further_than_a_thick_one_at_the_same_hour():
    facts, _ = pour_facts(cold_shop(written=True), "face", 0.0381)
    thin, thick = (float(np.interp(2.0, one.time_h, one.temp_c)) for one in facts[:2])
    assert thin < thick - 2.0  # °C: 19 mm follows air of 8 °C three times as fast as 64 mm
    same, _ = pour_facts(cold_shop(written=False), "face", 0.0381)
    assert np.interp(2.0, same[0].time_h, same[0].temp_c) == np.interp(2.0, same[1].time_h, same[1].temp_c)


def test_the_mortar_of_a_pour_is_as_warm_as_the_heat_balance_has_it_at_just_its_thickness():
    facts, _ = pour_facts(cold_shop(written=True), "face", 0.0381)
    for one, thick_m in zip(facts, THICK_M, strict=True):
        slab = slab_heat.slab_history(
            21.0, thick_m, 8.0, 0.6, 0.0, step_s=300.0, step_count=36, activation_energy_j_mol=36_000.0,
            density_kg_m3=defaults.si("slab_density"), heat_capacity_j_kg_k=defaults.si("slab_heat_capacity"),
            h_bottom_w_m2_k=defaults.si("h_bottom"), h_radiation_w_m2_k=defaults.si("h_radiation"),
        )  # fmt: skip
        wanted = np.interp(1.0, slab.time_h, slab.temp_c)
        assert np.interp(1.0, one.time_h, one.temp_c) == pytest.approx(wanted, abs=0.01)  # 2 % of the thickness are 0.1 °C


def test_the_written_thickness_goes_before_the_one_that_is_handed_over():
    pours = cold_shop(written=True)
    assert calibrate(pours, "made").bands == calibrate(pours, "made", thickness_m=0.2).bands
    bare = gather_pours([replace(event, thickness_m=None) for pour in pours[:1] for event in pour.events])
    own = fitted_bands(pours[:1], "made")
    assert fitted_bands(bare, "made", thickness_m=THICK_M[0]) == own != fitted_bands(bare, "made")


def test_with_the_thickness_written_the_pours_agree_and_the_mortar_comes_back():
    with_it, without = (calibrate(cold_shop(written), "made") for written in (True, False))
    assert with_it.miss_left_out_h < 0.6 * without.miss_left_out_h
    miss_h = [abs(fit.bands["set_time_initial"][1] - TRUE_H) for fit in (with_it, without)]
    assert miss_h[0] < 0.15  # the pours' own scatter is 5 %


def test_the_column_is_read_and_written_in_millimetres(tmp_path):
    path = tmp_path / "log.csv"
    append_events(path, Event("bench", START, "water_in", recipe="made", mix_temp_c=16.0, thickness_m=0.0381))
    assert ",38.1," in path.read_text() and read_log(path).pours[0].thickness_m == pytest.approx(0.0381, abs=0)
    path.write_text(path.read_text().replace(",38.1,", ",1.5,"))  # inches, or metres
    (problem,) = read_log(path).problems
    assert str(problem) == "line 2, thickness_mm: '1.5' given; it must be from 5 to 500 mm"


def test_a_log_without_the_column_stays_as_it_was(tmp_path):
    path = tmp_path / "old.csv"
    path.write_text("pour_id,time_iso,event,recipe\nbench,2026-05-04T08:00,water_in,made\n")
    with pytest.raises(ValueError, match=r"thickness_mm: '38.1' given; the log old.csv has no such column, leave it out"):
        append_events(path, Event("bench", START, "check", thickness_m=0.0381))
    assert read_log(path).pours[0].thickness_m is None and len(read_log(path).events) == 1
    assert defaults.si("slab_thickness") == pytest.approx(0.0381)  # 1 1/2 in stands in for it
