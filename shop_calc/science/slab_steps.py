"""The stepping behind `slab_heat`: many slabs at once, few passes over memory.

The linear exchange with the air is integrated exactly over a step (it is an exponential), the evaporation by
the midpoint rule, the drying of the surface exactly for the water that left. What depends on the room alone
is worked out only when the room changes. Temperatures are carried as `T + OFFSET_C`, in which the vapour
pressure needs one division and one exponential.
"""

import numpy as np

from shop_calc.science.moist_air import BASE_PA, LATENT_HEAT_J_KG, OFFSET_C, PSYCHROMETRIC_PA_K, SLOPE
from shop_calc.science.setting import GAS_CONSTANT_J_MOL_K, KELVIN

# 610 exp(17.3 T/(237.3 + T)) is the same as 610 exp(17.3) exp(-17.3*237.3/(237.3 + T)).
_SATURATION_PA = BASE_PA * np.exp(SLOPE)
_DECAY = np.asarray(-SLOPE * OFFSET_C)
# Arrays without axes: numpy combines them with a row faster than Python numbers.
_ZERO, _ONE, _TO_KELVIN = np.asarray(0.0), np.asarray(1.0), np.asarray(KELVIN - OFFSET_C)

# The temperature moves fastest just after placing: the first steps are cut finer. Set by trial against
# solve_ivp.
_FIRST_PARTS_S = (60.0, 75.0, 100.0, 150.0)
LONGEST_PART_S = 300.0


def march(slab, room, steps, step_s, longest_part_s=LONGEST_PART_S):
    """Step the slab and its equivalent age through the room.

    Parameters
    ----------
    slab : Slab
        What stays the same [mixed].
    room : Room
        What changes [mixed].
    steps : int
        Number of steps [-].
    step_s : float
        Length of a step [s].
    longest_part_s : float
        A step is cut into parts of at most so long; above LONGEST_PART_S the first steps are not cut finer, for a
        slab that was placed long ago [s].

    Returns
    -------
    tuple of three arrays, shape (steps + 1, ...)
        Temperature [°C], equivalent age since the start [h], and the water a surface staying wet would have
        lost [kg/m2].

    Examples
    --------
    >>> from shop_calc.science.slab_inputs import Room, Slab
    >>> slab = Slab(16.0, 85725.0, 9.7, 0.25, 1.0, 36000.0, 21.0)
    >>> temp, age, demand = march(slab, Room.checked(21.0, 0.5, 0.0, True), 12, 300.0)
    >>> f"{temp[-1]:.6g} {age[-1]:.6g} {demand[-1]:.6g}"
    '17.0096 0.798689 0.0512174'

    References
    ----------
    Derived: exponential integrator with a midpoint stage; trapezoids of the rate in the form of ASTM C1074.
    """
    shape = np.broadcast_shapes(slab.shape, room.shape())
    work = shape or (1,)  # numpy writes into arrays of one element faster than into scalars
    temp, age, demand = (np.empty((steps + 1, *work)) for _ in range(3))
    temp[0], age[0], demand[0] = slab.start_c + OFFSET_C, 0.0, 0.0
    (air, humidity, rate, share), new_air, new_wind = room.rows(steps)
    clock, surface, terms = _Clock(slab), _Surface(slab, work), _Terms(slab)
    last_pace, pace = clock.pace(temp[0], np.empty(work)), np.empty(work)
    parts = 0
    for i in range(steps):
        wanted = _part_count(i, step_s, longest_part_s)
        if new_wind[i] or wanted != parts:
            terms.set_wind(rate[i], share[i], step_s / wanted)
        if new_wind[i] or new_air[i] or wanted != parts:
            terms.set_air(air[i], humidity[i])
        parts, half_part_h = wanted, np.asarray(step_s / wanted / 7200)
        row, reached, aged = temp[i], demand[i], age[i]
        for _ in range(parts):
            surface.advance(row, temp[i + 1], reached, demand[i + 1], terms)
            row, reached = temp[i + 1], demand[i + 1]
            clock.pace(row, pace)
            np.add(last_pace, pace, out=last_pace)
            np.multiply(last_pace, half_part_h, out=last_pace)
            aged = np.add(aged, last_pace, out=age[i + 1])
            last_pace, pace = pace, last_pace
    temp -= OFFSET_C
    return tuple(history.reshape((steps + 1, *shape)) for history in (temp, age, demand))


def _part_count(step, step_s, longest_part_s):
    """Number of parts that step number `step` is cut into.

    It depends on nothing but the clock, so that a slab gets the same numbers alone and among a thousand
    others.
    """
    just_placed = longest_part_s <= LONGEST_PART_S and step < len(_FIRST_PARTS_S)
    longest = _FIRST_PARTS_S[step] if just_placed else longest_part_s
    return int(np.ceil(step_s / longest - 1e-9))


class _Clock:
    """The rate of `setting.rate_factor`, with everything that does not change taken out of the loop."""

    def __init__(self, slab):
        self.slope = _lean(-slab.activation_energy_j_mol / GAS_CONSTANT_J_MOL_K)
        self.level = _lean(-self.slope / (slab.reference_c + KELVIN))

    def pace(self, temp, out):
        """Equivalent hours to the hour at `temp`, written into `out`."""
        np.add(temp, _TO_KELVIN, out=out)
        np.divide(self.slope, out, out=out)
        np.add(out, self.level, out=out)
        return np.exp(out, out=out)


class _Terms:
    """All that a part of a step needs to know of its room.

    keep, keep_half: share of the difference to the air left after the part, and after half of it; pull,
    pull_half: what the air adds in that time; vapour: pressure of the vapour in the air over _SATURATION_PA;
    wet: kg/m2 lost for a difference of one _SATURATION_PA; chill, chill_half: K lost for each kg/m2
    evaporated.
    """

    def __init__(self, slab):
        self.slab = slab

    def set_wind(self, loss_kg_m2_h_pa, open_share, part_s):
        """Take over the wind, the cover and the length of a part; `set_air` must follow."""
        film = PSYCHROMETRIC_PA_K * LATENT_HEAT_J_KG * loss_kg_m2_h_pa / 3600
        exchange = film + self.slab.fixed_exchange_w_m2_k
        self.gone_half = -np.expm1(exchange * (-0.5 * part_s) / self.slab.storage_j_m2_k)
        self.gone = self.gone_half * (2.0 - self.gone_half)
        self.keep, self.keep_half = _lean(1.0 - self.gone), _lean(1.0 - self.gone_half)
        per_kg = LATENT_HEAT_J_KG / (exchange * part_s)
        self.chill, self.chill_half = _lean(per_kg * self.gone), _lean(per_kg * self.gone_half)
        wet = loss_kg_m2_h_pa * (_SATURATION_PA * part_s / 3600) * self.slab.evaporation_factor * open_share
        self.wet, self.wet_any = _lean(wet), bool(np.any(wet))

    def set_air(self, air_c, humidity):
        """Take over the air."""
        air = air_c + OFFSET_C
        self.pull, self.pull_half = _lean(air * self.gone), _lean(air * self.gone_half)
        self.vapour = _lean(humidity * np.exp(_DECAY / air))


class _Surface:
    """The surface that dries: its free water, and room to calculate in."""

    def __init__(self, slab, work):
        self.free, self.least = _lean(slab.free_water_kg_m2), np.min(slab.free_water_kg_m2)
        self.loss, self.middle, self.lost, self.lost_before, self.spread = (np.empty(work) for _ in range(5))
        self.drying = False

    def advance(self, before, after, demand_before, demand, terms):
        """One part of a step, from the rows `before` to `after` and `demand`, which may be the same rows."""
        if not terms.wet_any:
            np.multiply(before, terms.keep, out=after)
            np.add(after, terms.pull, out=after)
            demand[...] = demand_before
            return
        loss, middle = self.loss, self.middle
        _potential_loss(before, terms, loss)
        if self.drying:
            np.divide(loss, self.spread, out=loss)
        np.multiply(before, terms.keep_half, out=middle)
        np.add(middle, terms.pull_half, out=middle)
        np.multiply(loss, terms.chill_half, out=loss)
        np.subtract(middle, loss, out=middle)
        _potential_loss(middle, terms, loss)
        np.add(demand_before, loss, out=demand)
        if not self.drying and demand.max() > self.least:
            self.drying, self.lost = True, demand - loss
        if self.drying:
            self._dry(demand)
        np.multiply(loss, terms.chill, out=loss)
        np.multiply(before, terms.keep, out=after)
        np.add(after, terms.pull, out=after)
        np.subtract(after, loss, out=after)

    def _dry(self, demand):
        """Turn the loss of a wet surface into that of the drying one: w0 (1 + ln(demand/w0)) beyond w0."""
        self.lost, self.lost_before = self.lost_before, self.lost
        np.divide(demand, self.free, out=self.spread)
        np.maximum(self.spread, _ONE, out=self.spread)  # this is 1/f
        np.log(self.spread, out=self.lost)
        np.multiply(self.lost, self.free, out=self.lost)
        np.minimum(demand, self.free, out=self.middle)
        np.add(self.lost, self.middle, out=self.lost)
        np.subtract(self.lost, self.lost_before, out=self.loss)


def _lean(term):
    """One number as an array without axes, which numpy combines with a row faster."""
    return np.asarray(term).reshape(()) if np.size(term) == 1 else term


def _potential_loss(temp, terms, out):
    """Water a wet surface at `temp` loses in a step, never negative, written into `out`."""
    np.divide(_DECAY, temp, out=out)
    np.exp(out, out=out)
    np.subtract(out, terms.vapour, out=out)
    np.maximum(out, _ZERO, out=out)
    np.multiply(out, terms.wet, out=out)
