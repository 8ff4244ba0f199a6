"""A practice pour: what is known before it, and the clocks, the air and the mortar that nobody at the bench can see."""

from dataclasses import dataclass
from datetime import timedelta
from functools import cached_property
from math import floor

from shop_calc.science import setting
from shop_calc.trade.plan import Plan
from shop_calc.trade.timeline.cloud import Cloud
from shop_calc.trade.timeline.day import DayInputs, plan_day
from shop_calc.trade.timeline.room import Room

GRID_H = 1.0 / 12.0  # five minutes, the step of the set clock


@dataclass(frozen=True, eq=False)
class Pour:
    """A practice pour: what is known before it, and what is hidden.

    Parameters
    ----------
    code : str
        The code it was drawn from [-].
    weather : str
        Kind of day, or "as planned" for the room of an own job [-].
    plan : Plan
        The job that is rehearsed [as its fields].
    told : DayInputs
        What the plan on the wall was made with [as its fields].
    room : Room
        The room as its thermometer will show it, surprises included [as its fields].
    surprise : str
        What nobody foresaw; empty on most days [-].
    false_set : bool
        True when the face share stiffens falsely in its bucket [-].
    hidden : Cloud
        The one day that it really is, fields of shape (1,) [as its fields].
    ages_h : dict of (str, bool) to tuple of float
        Equivalent age of "base" and "face" lying open (True) or covered (False), every GRID_H from the first water
        [h].
    rate_kg_m2_h, demand_kg_m2, red_kg_m2, temp_c : tuple of float
        What the air takes from a wet face, its sum, the part of the sum above the red limit, and the temperature of
        the open face, every GRID_H [kg/m2/h, kg/m2, kg/m2, °C].

    Examples
    --------
    >>> from shop_calc.trade.rehearsal.truth import draw_pour
    >>> draw_pour("oak").code
    'oak'

    References
    ----------
    Set clock, early clock and evaporation: as the plan of the day.
    """

    code: str
    weather: str
    plan: Plan
    told: DayInputs
    room: Room
    surprise: str
    false_set: bool
    hidden: Cloud
    ages_h: dict
    rate_kg_m2_h: tuple
    demand_kg_m2: tuple
    red_kg_m2: tuple
    temp_c: tuple

    @cached_property
    def wall(self):
        """The plan of the day on the wall: made from what is known, not from the truth."""
        return plan_day(self.told)

    @property
    def water_in(self):
        """Clock time of the first water."""
        return self.told.water_in

    @property
    def starts_h(self):
        """When the base is packed and the rehearsal begins [h]."""
        return self.told.base_loads_h[-1] + self.told.minutes_per_load / 60.0

    @cached_property
    def sides(self):
        """The sides of the form, short ones first, as they come off."""
        edges = sorted(self.plan.piece.outline.edges, key=lambda edge: (round(edge.length_m, 4), edge.name))
        return tuple(edge.name for edge in edges)

    @cached_property
    def set_of_face(self):
        """Initial set and exponent of the mortar [h, -]."""
        return float(self.hidden.initial_set_h[0]), float(self.hidden.exponent[0])

    @cached_property
    def build_up(self):
        """Yield stress after working, and its growth at rest [Pa, Pa/s]."""
        return float(self.hidden.yield_start_pa[0]), float(self.hidden.build_up_pa_s[0])

    @cached_property
    def free_water_kg_m2(self):
        """Water lost before the surface of this mortar dries [kg/m2]."""
        return float(self.hidden.free_water_kg_m2[0])

    @cached_property
    def face_water_kg_m3(self):
        """Water in the fresh face [kg/m3]."""
        return self.plan.mix.total_water_kg / self.plan.mix.mortar_m3

    def clock(self, hour_h):
        """Hours after the first water as a datetime, to the minute."""
        return self.water_in + timedelta(minutes=floor(hour_h * 60.0 + 0.5))

    def age_between_h(self, layer, from_h, to_h, covered):
        """Equivalent hours that a layer ages between two hours."""
        history = self.ages_h[layer, not covered]
        return read_at(history, to_h) - read_at(history, from_h)

    def resistance_pa(self, age_h):
        """Penetration resistance at an equivalent age [Pa]."""
        initial_h, exponent = self.set_of_face
        return setting.INITIAL_SET_PA * (max(age_h, 0.0) / initial_h) ** exponent

    def age_at_h(self, resistance_pa):
        """Equivalent age at a penetration resistance [h]."""
        initial_h, exponent = self.set_of_face
        return initial_h * (resistance_pa / setting.INITIAL_SET_PA) ** (1.0 / exponent)


def read_at(history, hour_h):
    """Read a history at one hour; after its end its last step is carried on.

    Parameters
    ----------
    history : sequence of float
        Values every GRID_H from the first water [any unit].
    hour_h : float
        Hours after the first water [h].

    Returns
    -------
    float
        Between two steps straight [unit of the history].

    Examples
    --------
    >>> read_at((0.0, 1.0, 3.0), 1.5 / 12), read_at((0.0, 1.0, 3.0), 3.0 / 12)
    (2.0, 5.0)

    References
    ----------
    Derived: linear interpolation.
    """
    place = max(hour_h, 0.0) / GRID_H
    low = min(int(place), len(history) - 2)
    return history[low] + (place - low) * (history[low + 1] - history[low])
