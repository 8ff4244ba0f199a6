"""Pours as a fit needs them: what their looks say, and how old the mortar was at each look."""

from dataclasses import dataclass

import numpy as np

from shop_calc import defaults
from shop_calc.science import setting, slab_heat
from shop_calc.trade.logbook.shop_log import pour_looks
from shop_calc.trade.timeline.look_fit import gather
from shop_calc.trade.timeline.room import room_steps
from shop_calc.trade.timeline.set_clock import STEP_S

# Ages are worked out at these activation energies; in between a polynomial runs through all five, within 1e-5.
_ENERGIES_J_MOL = np.array([16_000.0, 26_000.0, 38_000.0, 50_000.0, 62_000.0])
ENERGY_UNIT_J_MOL = 10_000.0
_LEAST_H = 0.02


@dataclass(frozen=True)
class PourFacts:
    """One pour of one layer, ready for a fit.

    Parameters
    ----------
    pour : Pour
        The pour [as its fields].
    between : tuple of Between
        Cues between two looks, hours counted from the layer's own water [h].
    readings : tuple of Reading
        Rod readings and thumb prints, likewise [h].
    rows : tuple of Event
        The row of each look, by the look's number [-].
    clashes : tuple of (int, int)
        Looks that contradict each other [-].
    left_out : frozenset of int
        Looks not used for that [-].
    time_h : ndarray of shape (steps,)
        Hours since the layer's own water [h].
    temp_c : ndarray of shape (steps,)
        Temperature of the mortar [°C].

    Examples
    --------
    >>> PourFacts(None, (), (), (), (), frozenset(), np.zeros(1), np.zeros(1)).mean_temp_c
    0.0

    References
    ----------
    Common practice, no source.
    """

    pour: object
    between: tuple
    readings: tuple
    rows: tuple
    clashes: tuple
    left_out: frozenset
    time_h: np.ndarray
    temp_c: np.ndarray

    @property
    def mean_temp_c(self):
        """Mean temperature of the mortar up to its last look [°C]."""
        return float(self.temp_c.mean())

    def age_h(self, time_h, activation_energy_j_mol):
        """Equivalent age at given hours [h]."""
        ages = setting.equivalent_age_h(self.time_h, self.temp_c, activation_energy_j_mol)
        return np.interp(time_h, self.time_h, ages)

    def time_at_age_h(self, age_h, activation_energy_j_mol):
        """Hours at which an equivalent age is reached; beyond the last look at its last pace [h]."""
        ages = setting.equivalent_age_h(self.time_h, self.temp_c, activation_energy_j_mol)
        pace = (ages[-1] - ages[-2]) / (self.time_h[-1] - self.time_h[-2])
        beyond = np.maximum(np.asarray(age_h) - ages[-1], 0.0) / pace
        return np.interp(age_h, ages, self.time_h) + beyond


def pour_facts(pours, layer, thickness_m):
    """Work out temperatures and evidence of the pours of one layer.

    Parameters
    ----------
    pours : sequence of Pour
        Pours of one recipe [as its fields].
    layer : str
        "face" or "base" [-].
    thickness_m : float
        Thickness of the pieces, and of the side cups, of pours whose rows do not say it [m].

    Returns
    -------
    tuple of (PourFacts, ...) and tuple of (str, str)
        Pours that can be used, and the names of those that cannot with the reason [-].

    Examples
    --------
    >>> pour_facts((), "face", 0.0381)
    ((), ())

    Notes
    -----
    The slab's own heat balance on the day of the defaults; where the surface temperature was read, the balance is
    shifted to go through the readings, straight in between.

    References
    ----------
    shop_calc.science.slab_heat.
    """
    usable, left_out = [], []
    for pour in pours:
        looks = [(look, row) for look, row in pour_looks(pour, layer) if look.stage != "face"]
        room, mix_c = pour.room(), pour.mix_temp_c(layer)
        start_h = pour.start_h(layer)
        hours = [look.at - start_h for look, _ in looks]
        kept = [(look, row, hour) for (look, row), hour in zip(looks, hours, strict=True) if hour > _LEAST_H]
        if not kept:
            reason = f"no look at its {layer}"
        elif mix_c is None:
            reason = "no mix temperature"
        elif room is None:
            reason = "no air temperature"
        else:
            usable.append((pour, room, mix_c, start_h, kept))
            continue
        left_out.append((pour.pour_id, reason))
    if not usable:
        return (), tuple(left_out)
    return tuple(_facts(usable, layer, thickness_m)), tuple(left_out)


def _facts(usable, layer, thickness_m):
    longest_h = max(hour for *_, kept in usable for _, _, hour in kept)
    count = int(np.ceil(longest_h * 3600.0 / STEP_S)) + 1
    airs = [room_steps(room, start_h, STEP_S, count) for _, room, _, start_h, _ in usable]
    air, humidity, wind = (np.stack([columns[axis] for columns in airs], axis=1) for axis in range(3))
    thick_m = np.array([thickness_m if pour.thickness_m is None else pour.thickness_m for pour, *_ in usable])
    history = slab_heat.slab_history(
        np.array([mix_c for _, _, mix_c, _, _ in usable]), thick_m, air, humidity, wind, step_s=STEP_S,
        activation_energy_j_mol=defaults.si("activation_energy"), density_kg_m3=defaults.si("slab_density"),
        heat_capacity_j_kg_k=defaults.si("slab_heat_capacity"), h_bottom_w_m2_k=defaults.si("h_bottom"),
        h_radiation_w_m2_k=defaults.si("h_radiation"), free_water_kg_m2=defaults.si("free_water"),
    )  # fmt: skip
    for column, (pour, _, _, start_h, kept) in enumerate(usable):
        temp_c = history.temp_c[:, column]
        read = [(hour - start_h, value) for hour, value in pour.surface(layer) if hour - start_h > _LEAST_H]
        if read:
            at, values = (np.array(part) for part in zip(*read, strict=True))
            shift = values - np.interp(at, history.time_h, temp_c)
            temp_c = temp_c + np.interp(history.time_h, np.concatenate(([0.0], at)), np.concatenate(([0.0], shift)))
        last = int(np.ceil(max(hour for _, _, hour in kept) * 3600.0 / STEP_S)) + 1
        evidence = gather([look for look, _, _ in kept], [hour for _, _, hour in kept])
        yield PourFacts(
            pour, evidence.between, evidence.readings, tuple(row for _, row, _ in kept), evidence.clashes,
            evidence.left_out, history.time_h[: last + 1], temp_c[: last + 1],
        )  # fmt: skip


def log_age_curves(facts, times_h):
    """Give the logarithm of equivalent age as a polynomial in activation energy.

    Parameters
    ----------
    facts : PourFacts
        The pour [as its fields].
    times_h : sequence of float
        Hours since the layer's own water [h].

    Returns
    -------
    ndarray of shape (5, times)
        Coefficients, constant first, of powers of `energy_place` [-].

    Examples
    --------
    >>> facts = PourFacts(None, (), (), (), (), (), np.array([0.0, 1.0, 2.0]), np.full(3, 21.0))
    >>> np.exp(log_age_curves(facts, [1.5])[0]).round(5)
    array([1.5])

    References
    ----------
    Derived; equivalent age in the form of ASTM C1074.
    """
    ages = np.array([facts.age_h(times_h, energy) for energy in _ENERGIES_J_MOL])
    powers = np.vander(energy_place(_ENERGIES_J_MOL), increasing=True)
    return np.linalg.solve(powers, np.log(np.maximum(ages, 1e-6)))


def energy_place(activation_energy_j_mol):
    """Place of an activation energy on the axis of `log_age_curves`.

    Parameters
    ----------
    activation_energy_j_mol : float or array
        Activation energy [J/mol].

    Returns
    -------
    float or array
        Tens of kJ from the default [-].

    Examples
    --------
    >>> energy_place(36000.0)
    0.0

    References
    ----------
    Derived.
    """
    return (activation_energy_j_mol - defaults.si("activation_energy")) / ENERGY_UNIT_J_MOL
