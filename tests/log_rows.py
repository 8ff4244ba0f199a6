"""Rows of a shop log that many tests begin with."""

from dataclasses import replace
from datetime import datetime, timedelta

from shop_calc.trade.logbook.log_fields import COLUMNS
from shop_calc.trade.logbook.shop_log import Event

START = datetime(2026, 5, 4, 8)
WATER = Event("bench", START, "water_in", recipe="demo mortar", mix_temp_c=16.5)
CHECK = Event("bench", START + timedelta(hours=2.5), "check", "face", cue="strip seen", resistance_pa=110_000.0,
              depth_m=0.0065, note="thumb, then rod")  # fmt: skip
WHOLE = ",".join(COLUMNS)
HEAD = WHOLE.replace("thickness_mm,", "")  # as logs have it in which nobody wrote a thickness
ROW = "bench,2026-05-04T08:00:00,water_in,,demo mortar,16.5,,,,,,,,"


def same(events):
    """The rows, wherever in the file they stood."""
    return [replace(event, line=0) for event in events]
