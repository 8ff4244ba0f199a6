"""Writes the invented logs of data/logs; run it once when the truth below changes: python tests/make_demo_logs.py

The mortar behind them is ours and no shop's: face 500 psi at 3.05 h, exponent 7.6; base 3.2 h and 6.8; both
36 kJ/mol; each pour 5 % of scatter; eye, rod and thumb with the scatter of data/defaults.csv.
"""

import sys
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))  # the package beside this file, whichever copy is installed

import numpy as np
from made_logs import Mortar, clocks, pour_rows

from shop_calc import defaults
from shop_calc.trade.logbook.shop_log import Event, append_events
from shop_calc.trade.timeline.set_clock import resistance_at_pa, time_at_resistance_h

FACE, BASE = Mortar(3.05, 7.6), Mortar(3.2, 6.8)
RECIPE = "demo mortar"
FOLDER = defaults.data_folder() / "logs"


def first_pour():
    """One pour in a mild room, written by a careful hand."""
    start, recipe = datetime(2026, 5, 4, 8), RECIPE
    at = lambda minutes: start + timedelta(minutes=minutes)  # noqa: E731
    note = "invented for the demonstration"
    return (
        Event("bench 1", start, "water_in", recipe=recipe, mix_temp_c=16.0, note=note),
        Event("bench 1", start, "room", air_temp_c=21.0, rh_fraction=0.5, wind_m_s=0.0),
        Event("bench 1", at(20), "placed", "base"),
        Event("bench 1", at(40), "check", "base", cue="face seen"),
        Event("bench 1", at(50), "placed", "face"),
        Event("bench 1", at(105), "check", "face", cue="strip not yet", depth_m=0.02, note="thumb goes in to the nail"),
        Event("bench 1", at(135), "check", "face", cue="strip seen", resistance_pa=110_000.0),
        Event("bench 1", at(140), "action", note="sides off, edges patched"),
        Event("bench 1", at(160), "check", "face", cue="first_steel not yet", resistance_pa=330_000.0),
        Event("bench 1", at(180), "check", "face", cue="first_steel seen", resistance_pa=700_000.0,
              surface_temp_c=17.5),
        Event("bench 1", at(205), "action", note="first steel done"),
        Event("bench 1", at(220), "check", "face", cue="last_steel seen", resistance_pa=2_300_000.0),
        Event("bench 1", at(250), "action", note="covered"),
    )  # fmt: skip


def eight_pours():
    """Eight pours of a year, face and base, two of them with rods."""
    rng = np.random.default_rng(2026)
    mix_c = np.array([12.5, 16.0, 21.0, 24.0, 25.0, 19.0, 15.0, 11.0])
    air_c = np.array([9.0, 15.0, 22.0, 30.0, 29.0, 20.0, 14.0, 8.0])
    humidity = np.array([0.55, 0.5, 0.5, 0.35, 0.4, 0.5, 0.6, 0.6])
    face, base = (clocks(rng, mortar, mix_c, air_c, humidity) for mortar in (FACE, BASE))
    rows = []
    for number in range(8):
        start = datetime(2026, 1, 17, 8) + timedelta(days=42 * number)
        pour = f"pour {number + 1}"
        looks = pour_rows(
            rng, pour, start, RECIPE, face, number, mix_c[number], air_c[number], humidity[number],
            rods=6 if number in (2, 5) else 0,
        )  # fmt: skip
        below = pour_rows(
            rng, pour, start, RECIPE, base, number, mix_c[number], air_c[number], humidity[number], layer="base",
            cues=("strip", "first_steel"),
        )  # fmt: skip
        looks[0] = replace(looks[0], note="invented for the demonstration")
        rows += sorted([*looks, *below[2:]], key=lambda row: row.time)
    return tuple(rows)


def with_slips():
    """Three pours of a hasty hand: rows that fit no other, one that contradicts others, cells that cannot be read."""
    rng = np.random.default_rng(7)
    mix_c, air_c, humidity = np.array([16.0, 18.0, 20.0]), np.array([20.0, 22.0, 24.0]), np.full(3, 0.5)
    clock = clocks(rng, FACE, mix_c, air_c, humidity)
    rows = []
    for number in range(3):
        start = datetime(2026, 6, 6 + number, 9)
        rows += pour_rows(
            rng, f"top {number + 1}", start, RECIPE, clock, number, mix_c[number], air_c[number], humidity[number],
            rods=4,
        )  # fmt: skip
    rows[0] = replace(rows[0], note="invented for the demonstration, with slips")
    second, third = datetime(2026, 6, 7, 9), datetime(2026, 6, 8, 9)
    stiff_h = round(float(time_at_resistance_h(clock, 4e6)[1]) * 12) / 12
    true_pa = float(resistance_at_pa(clock, stiff_h)[1])
    slips = (
        Event("top 2", second + timedelta(hours=stiff_h), "check", "face", resistance_pa=round(10 * true_pa, -4),
              note="one zero too many"),
        Event("top 3", third + timedelta(hours=1.5), "check", "face", cue="last_steel seen"),
        Event("top 3", third + timedelta(hours=1.75), "check", "face", cue="last_steel not yet"),
    )  # fmt: skip
    return (*rows, *slips)


BAD_LINES = """top 4,2026-06-09T09:00:00,check,face,,,,,,,strip seen,,,first row is no water_in
top 3,half past nine,check,face,,,,,,,strip seen,,,
top 3,2026-06-08T11:00:00,room,,,,24,50,0,,,,,percent where a fraction belongs
top 3,2026-06-08T11:10:00,check,face,,,,,,,hard sheen,,,
top 3,2026-06-08T11:20:00,check,face,,,,,,,,soft,,
"""


def main():
    """Write the three files."""
    for name, rows in (("first_pour", first_pour()), ("eight_pours", eight_pours()), ("log_with_slips", with_slips())):
        path = Path(FOLDER) / f"{name}.csv"
        path.unlink(missing_ok=True)
        append_events(path, rows)
    with open(FOLDER / "log_with_slips.csv", "a", encoding="utf-8", newline="") as file:
        file.write(BAD_LINES)


if __name__ == "__main__":
    main()
