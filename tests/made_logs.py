"""Logs made from the model, with known mortar and known scatter: for tests and for the invented logs in data/logs."""

from dataclasses import dataclass
from datetime import datetime, timedelta

import numpy as np

from shop_calc import defaults
from shop_calc.trade.logbook.shop_log import Event
from shop_calc.trade.timeline.set_clock import resistance_at_pa, run_clock, steady, time_at_resistance_h

CUES = {"strip": "strip_pr_low", "first_steel": "first_steel_pr_low", "last_steel": "last_steel_pr_low"}


@dataclass(frozen=True)
class Mortar:
    """The truth behind a made log."""

    initial_set_h: float = 3.4
    exponent: float = 7.0
    activation_energy_j_mol: float = 36_000.0


@dataclass(frozen=True)
class OneDay:
    """What run_clock asks of a day, with one mortar in it."""

    initial_set_h: np.ndarray
    exponent: np.ndarray
    activation_energy_j_mol: np.ndarray
    room_error_k: float = 0.0
    evaporation_factor: float = 1.0
    free_water_kg_m2: float = 0.25
    h_bottom_w_m2_k: float = 4.0


def clocks(rng, mortar, mix_c, air_c, humidity, thickness_m=0.0381):
    """The clock of every pour, each with an initial set of its own."""
    count = len(mix_c)
    sets = mortar.initial_set_h * np.exp(defaults.si("pour_scatter") * rng.normal(size=count))
    days = OneDay(sets, np.full(count, mortar.exponent), np.full(count, mortar.activation_energy_j_mol))
    return run_clock(np.asarray(mix_c), thickness_m, steady(air_c, humidity, np.zeros(count)), days=days)


def pour_rows(rng, pour_id, start, recipe, clock, number, mix_c, air_c, humidity, *, layer="face", every_h=0.5,
              cues=tuple(CUES), rods=0):  # fmt: skip
    """Rows of one pour: water, room, looks every half hour at each cue until it is seen, and rod readings."""
    at = lambda hour: start + timedelta(minutes=round(hour * 60))  # noqa: E731
    rows = [
        Event(pour_id, start, "water_in", recipe=recipe, mix_temp_c=round(float(mix_c), 1)),
        Event(pour_id, start, "room", air_temp_c=round(float(air_c), 1), rh_fraction=round(float(humidity), 2),
              wind_m_s=0.0),
    ]  # fmt: skip
    def age(pa):
        return float(time_at_resistance_h(clock, pa)[number])

    first = rng.uniform(1.0, 1.0 + every_h)
    for stage in cues:
        eye = np.exp(defaults.si("cue_scatter") * rng.normal())
        true_h = age(defaults.si(CUES[stage]) * eye)
        looks = first + every_h * np.arange(60)
        from_h = age(defaults.si(CUES[stage]) / 8)
        for hour in looks[looks > from_h]:
            there = "seen" if hour >= true_h else "not yet"
            rows.append(Event(pour_id, at(hour), "check", layer, cue=f"{stage} {there}"))
            if hour >= true_h:
                break
    if rods:
        hours = np.linspace(age(defaults.si("strip_pr_low") * 1.2), age(defaults.si("last_steel_pr_high")), rods)
        for hour in hours:
            pa = resistance_at_pa(clock, hour)[number] * np.exp(defaults.si("rod_scatter") * rng.normal())
            if pa > defaults.si("power_law_from"):
                rows.append(Event(pour_id, at(hour), "check", layer, resistance_pa=float(round(pa, -3))))
    return sorted(rows, key=lambda row: row.time)


def made_log(rng, mortar, pours, *, recipe="made mortar", layer="face", mix_c=(13.0, 20.0), air_c=(12.0, 28.0), rods=0,
             cues=tuple(CUES), start=datetime(2026, 3, 2, 8)):  # fmt: skip
    """A log of some pours, a week apart."""
    mix, air = rng.uniform(*mix_c, pours), rng.uniform(*air_c, pours)
    humidity = rng.uniform(0.35, 0.7, pours)
    clock = clocks(rng, mortar, mix, air, humidity)
    rows = []
    for number in range(pours):
        rows += pour_rows(
            rng, f"pour {number + 1}", start + timedelta(days=7 * number), recipe, clock, number, mix[number],
            air[number], humidity[number], layer=layer, cues=cues, rods=rods,
        )  # fmt: skip
    return tuple(rows)
