"""The first night: every way to cover the piece side by side, and the one that fits this room."""

from dataclasses import dataclass
from datetime import timedelta

import numpy as np

from shop_calc import defaults, units
from shop_calc.science import slab_heat
from shop_calc.science.layer_water import water_share_lost
from shop_calc.trade.advice import Advice
from shop_calc.trade.curing.covers import CHOICES, COVERS, CureChoice
from shop_calc.trade.curing.cure_rules import moist_cure_days, pick_cover
from shop_calc.trade.timeline.drying import moving_air, rates_of_a_wet_face
from shop_calc.trade.timeline.room import room_at, room_steps
from shop_calc.trade.timeline.set_clock import age_at_h, at_h

__all__ = ["CHOICES", "Cure", "CureChoice", "first_night", "moist_cure_days", "pick_cover"]

# ASTM C309 allows a membrane this loss in 72 h, as read in an NCHRP synthesis.
MEMBRANE_LOSS_KG_M2 = 0.55
MEMBRANE_HOURS = 72.0
NIGHT_STEP_S = 900.0  # at most: a covered piece changes slowly
_OPEN, _WET, _CLOSED = range(3)
_COLUMN = {"open": _OPEN, "mist": _WET}  # every other cover keeps the air out
_ALWAYS_WET_KG_M2 = 1e3
COLDEST_CURING_WATER_C = 5.0  # judgement: on a cold slab the rule would allow ice


@dataclass(frozen=True)
class Cure:
    """The night and what is recommended for it.

    Parameters
    ----------
    from_h, until_h : float
        From the stop to the morning, hours after the first water [h].
    choices : tuple of CureChoice
        All ways, in a fixed order [-].
    pick : str
        Key of the recommended way [-].
    heat : bool
        True when the air is too cold for any cover alone [-].
    reason : str
        Why this one, with the numbers [-].
    after : str
        What to do from the morning on [-].
    mean_demand_kg_m2_h, peak_demand_kg_m2_h : float
        Evaporation demand of the night on an open face [kg/m2/h].
    coldest_c, hottest_c : float
        Air of the night [°C].
    driest_fraction : float
        Lowest humidity of the night [-].
    advice : tuple of Advice
        Objections and cautions [-].
    before : SlabHistory
        The middle day from the face's own water to the stop and a little beyond [as its fields].
    after_stop : SlabHistory
        The night from the stop on in three columns: open, kept wet, closed [as its fields].

    Examples
    --------
    >>> "open" in CHOICES and "plastic" in CHOICES
    True

    References
    ----------
    UFGS 03300A, 03301A, 03700 as read; design values in data/defaults.csv.
    """

    from_h: float
    until_h: float
    choices: tuple
    pick: str
    heat: bool
    reason: str
    after: str
    mean_demand_kg_m2_h: float
    peak_demand_kg_m2_h: float
    coldest_c: float
    hottest_c: float
    driest_fraction: float
    advice: tuple
    before: slab_heat.SlabHistory
    after_stop: slab_heat.SlabHistory

    def night(self, key):
        """Hours after the first water, and temperatures, of the night under one cover."""
        column = _COLUMN.get(self.choice(key).key, _CLOSED)
        return self.from_h + self.after_stop.time_h, self.after_stop.temp_c[:, column]

    def choice(self, key):
        """Look one way up; ValueError lists the keys when it is unknown."""
        for choice in self.choices:
            if choice.key == key:
                return choice
        raise ValueError(f"cover: {key!r} given; it must be one of {', '.join(c.key for c in self.choices)}")

    @property
    def picked(self):
        """The recommended way."""
        return self.choice(self.pick)


def first_night(
    day, clock, face_thickness_m, face_water_kg_m3, piece_water_kg_m2, *, polymer_share=0.0, silica_fume=False,
    moist_days=7,
):  # fmt: skip
    """Compare all covers for the night after the pour and recommend one.

    Parameters
    ----------
    day : Day
        The day [h].
    clock : SetClock
        The face on the middle day, see drying.face_clock [as its fields].
    face_thickness_m : float
        Thickness of the face [m].
    face_water_kg_m3 : float
        Water in the fresh face [kg/m3].
    piece_water_kg_m2 : float
        Water of both layers under a square metre of top [kg/m2].
    polymer_share : float
        Polymer solids over binder [-].
    silica_fume : bool
        True when the binder has silica fume [-].
    moist_days : int
        Days of moist curing for this binder, see moist_cure_days [-].

    Returns
    -------
    Cure
        All ways with their numbers, the recommended one and why [as its fields].

    Examples
    --------
    >>> pick_cover(0.10, 0.12, 18.0, 21.0, 0.5, False)[0]
    'open'

    Notes
    -----
    The night runs from the stop of the tools to eight in the morning, at least four hours. Water lost by an open
    face falls once it has dried; the bound beside it is that of a face that stays wet.

    References
    ----------
    ASTM C309 limit for the membrane; the other losses are bounds, see each choice.
    """
    inputs = day.samples.inputs
    from_h = day.stage("stop").likely_from_h
    until_h = _morning_h(day, from_h)
    own_h = from_h - inputs.face_load_h
    start_c = float(at_h(clock.history.time_h, clock.history.temp_c, own_h))
    start_age_h = float(age_at_h(clock, own_h))
    hours = until_h - from_h
    count = int(np.ceil(hours * 3600.0 / NIGHT_STEP_S))
    step_s = hours * 3600.0 / count  # so that the last step ends in the morning
    air_c, rh_fraction, wind_m_s = room_steps(inputs.room, from_h, step_s, count)
    energy_j_mol = inputs.middle_day().activation_energy_j_mol
    night = _night(start_c, inputs.thickness_m, (air_c, rh_fraction, moving_air(wind_m_s)), step_s, energy_j_mol)
    times_h, demand = rates_of_a_wet_face(from_h + night.time_h, night.temp_c[:, _OPEN], inputs.room, until_h)
    in_force_c, in_force_fraction, _ = room_at(inputs.room, times_h)
    lost = {
        "open": float(night.water_lost_kg_m2[-1, _OPEN]),
        "membrane": MEMBRANE_LOSS_KG_M2 * hours / MEMBRANE_HOURS,
    }
    bound = lost | {"open": min(float(night.demand_kg_m2[-1, _OPEN]), piece_water_kg_m2)}
    choices = tuple(
        CureChoice(
            key, title, lost.get(key, 0.0), bound.get(key, 0.0),
            float(water_share_lost(lost.get(key, 0.0), face_thickness_m, face_water_kg_m3)),
            surface, work, sealing,
            start_age_h + float(night.equivalent_age_h[-1, _COLUMN.get(key, _CLOSED)]),
            float(night.temp_c[-1, _COLUMN.get(key, _CLOSED)]),
        )
        for key, (title, surface, work, sealing) in COVERS.items()
    )  # fmt: skip
    mean, peak = float(night.demand_kg_m2[-1, _OPEN]) / hours, float(demand.max())
    coldest, hottest = float(in_force_c.min()), float(in_force_c.max())
    driest = float(in_force_fraction.min())
    pick, heat, reason = pick_cover(mean, peak, coldest, hottest, driest, silica_fume)
    if polymer_share >= defaults.si("polymer_air_cure"):
        after = (
            f"From the morning: polymer at {100 * polymer_share:.0f} % of the binder cures in air above "
            f"{units.show(13.0, 'temperature')}; {'keep it open' if pick == 'open' else 'uncover it'} and keep it warm."
        )
    else:
        after = f"From the morning: keep it moist for {moist_days} days, or until it is polished."
    return Cure(
        from_h, until_h, choices, pick, heat, reason, after, mean, peak, coldest, hottest, driest,
        _advice(pick, heat, choices, start_c), clock.history, night,
    )  # fmt: skip


def _morning_h(day, from_h):
    """The first look next day: the morning hour of the table, but at least four hours after the stop."""
    stop = day.clock(from_h)
    morning = stop.replace(hour=int(defaults.si("morning_hour")), minute=0, second=0)
    while morning < stop + timedelta(hours=4):
        morning += timedelta(days=1)
    return (morning - day.water_in).total_seconds() / 3600.0


def _night(start_c, thickness_m, air, step_s, activation_energy_j_mol):
    """The slab through the night in three columns: open and drying, kept wet, closed."""
    return slab_heat.slab_history(
        start_c, thickness_m, *(column[:, np.newaxis] for column in air),
        step_s=step_s,
        activation_energy_j_mol=activation_energy_j_mol,
        density_kg_m3=defaults.si("slab_density"),
        heat_capacity_j_kg_k=defaults.si("slab_heat_capacity"),
        h_bottom_w_m2_k=defaults.si("h_bottom"),
        h_radiation_w_m2_k=defaults.si("h_radiation"),
        free_water_kg_m2=np.array([defaults.si("free_water"), _ALWAYS_WET_KG_M2, defaults.si("free_water")]),
        evaporating=np.broadcast_to([True, True, False], (len(air[0]), 3)),
        reference_temp_c=defaults.si("reference_temp"),
    )  # fmt: skip


def _advice(pick, heat, choices, surface_c):
    by_key = {choice.key: choice for choice in choices}
    lines = []
    if pick == "open":
        lines.append(
            Advice(
                "note", "cure", "An open face trades strength for an unmarked surface; if strength matters more, cover it.",
                f"By the morning it loses about {units.show(by_key['open'].water_lost_kg_m2, 'areal_mass')}, as much as "
                f"{100 * by_key['open'].lost_share:.0f} % of the face's water. Standards cure moist.",
                "read", "UFGS 03300A and 03301A against common practice of the trade",
            )
        )  # fmt: skip
    if pick == "fabric":
        coldest = max(surface_c - defaults.si("curing_water_drop"), COLDEST_CURING_WATER_C)
        lines.append(
            Advice(
                "act", "cure", "Wet the fabric with water from the shop, not from the hose.",
                f"Curing water colder than {units.show(coldest, 'temperature')} can craze a surface at "
                f"{units.show(surface_c, 'temperature')}.", "read", "UFGS 03700",
            )
        )  # fmt: skip
    if heat:
        lines.append(
            Advice(
                "act", "cure", "Vent every burning heater and engine to the outside, and never sleep beside one.",
                "Carbon monoxide kills; carbon dioxide from a flame makes a fresh face soft and chalky.",
                "unnamed", "concrete texts on unvented heaters; general safety practice",
            )
        )  # fmt: skip
    lines.append(
        Advice(
            "note", "cure", "Never lay bare plastic on the trowelled face.",
            "Where it touches it is dark, where it bridges it is light, and that may never fade.",
            "read", "PCA EB001 text on curing with plastic",
        )
    )  # fmt: skip
    return tuple(lines)
