"""The hidden day of a practice pour: the clocks, the air and the mortar that nobody at the bench can see."""

from dataclasses import dataclass, replace
from datetime import timedelta
from functools import cache, cached_property
from math import floor
from statistics import NormalDist

import numpy as np

from shop_calc import defaults
from shop_calc.science import evaporation, setting
from shop_calc.trade.jobs.job import demo_job, read_job
from shop_calc.trade.plan import Plan, make_plan
from shop_calc.trade.rehearsal.weather import (
    OTHER_MIX_SHARE,
    WEATHERS,
    draw_room,
    drawn,
    pick_weather,
    surprised,
    tidy_code,
)
from shop_calc.trade.timeline.cloud import SAMPLED, Cloud, cloud_at, middle_day
from shop_calc.trade.timeline.day import DayInputs, plan_day
from shop_calc.trade.timeline.drying import moving_air
from shop_calc.trade.timeline.room import Room, room_at
from shop_calc.trade.timeline.set_clock import run_clock

GRID_H = 1.0 / 12.0  # five minutes, the step of the set clock
LEAST_H = 8.0  # hours that the histories cover at least; beyond them their last step is carried on
FALSE_SET_SHARE = 0.2  # invented: how often the mortar stiffens falsely in its bucket
BASE_TO_AIR = 1.0 / 3.0  # share of the base's heat in stone and sand as warm as the air; demo mix, derived
DRAWN_BETWEEN = (0.02, 0.98)  # of each quantity's spread: one day in twenty-five is not rehearsed. Judgement


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

    @property
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


@cache
def demo_plan():
    """Plan the bench top that runs through the lessons.

    Returns
    -------
    Plan
        The plan; made once [as its fields].

    Examples
    --------
    >>> demo_plan().job.name
    'Garden bench top'

    References
    ----------
    Invented for the demonstration: data/jobs/garden_bench_top.toml.
    """
    return make_plan(read_job(demo_job("garden_bench_top")))


def draw_pour(code, weather=None, plan=None):
    """Draw a practice pour from a code.

    Parameters
    ----------
    code : str
        Any text; the same text gives the same day everywhere [-].
    weather : str, optional
        A key of WEATHERS; if left out drawn from the code, or the room of `plan` [-].
    plan : Plan, optional
        The job to rehearse; the bench top of the lessons if left out [as its fields].

    Returns
    -------
    Pour
        With its histories ready to be read [as its fields].

    Raises
    ------
    ValueError
        When the code is empty or the weather unknown.

    Examples
    --------
    >>> draw_pour("Oak 1", "cold shop").weather, draw_pour("oak1", "cold shop").false_set
    ('cold shop', True)

    Notes
    -----
    Hidden is one day out of the spreads from which the plan takes its 500. Histories run once, for base and face,
    open and covered; a piece that is covered for a while ages by the one history and then by the other. That lies
    between the two, and is exact for a piece that is always open or always covered.

    References
    ----------
    Spreads: data/defaults.csv. Rooms, surprises and false set: invented.
    """
    code = tidy_code(code)
    own = plan is not None and weather is None
    plan = demo_plan() if plan is None else plan
    told = plan.day.samples.inputs
    if not own:
        kind = pick_weather(code, weather)
        told = _told(code, kind, told)
    room, surprise = surprised(code, told.room)
    inverse, between = NormalDist().inv_cdf, DRAWN_BETWEEN
    rows = np.array([[inverse(drawn(code, field, *between))] for field in SAMPLED])
    hidden = cloud_at(rows, told.bands)
    false_set = drawn(code, "false set") < FALSE_SET_SHARE
    histories = _histories(told, room, hidden)
    return Pour(code, "as planned" if own else kind.name, plan, told, room, surprise, false_set, hidden, *histories)


def open_pour(plan=None):
    """Give a pour without secrets: the middle day of a plan, its room as expected.

    Not for practice: here the likely time and the truth are the same.

    Parameters
    ----------
    plan : Plan, optional
        The job; the bench top of the lessons if left out [as its fields].

    Returns
    -------
    Pour
        With its histories ready to be read [as its fields].

    Examples
    --------
    >>> open_pour().surprise
    ''

    References
    ----------
    Defaults: data/defaults.csv.
    """
    plan = demo_plan() if plan is None else plan
    told = plan.day.samples.inputs
    hidden = middle_day(told.bands)
    return Pour("open", "as planned", plan, told, told.room, "", False, hidden, *_histories(told, told.room, hidden))


def _told(code, kind, inputs):
    planned = drawn(code, "mix as planned") >= OTHER_MIX_SHARE
    mix_c = drawn(code, "mix", *(kind.mix_c if planned else kind.other_mix_c))
    room = draw_room(code, kind)
    base_c = mix_c + BASE_TO_AIR * (room.air_temp_c[0] - mix_c)
    return replace(inputs, room=room, mix_temp_c=mix_c, base_mix_temp_c=base_c)


def _histories(told, room, hidden):
    """Ages, rates and losses on one grid of hours after the first water."""
    start_h = np.array([[told.base_loads_h[0]]] * 2 + [[told.face_load_h]] * 2)
    mix_c = np.array([[told.base_temp_c]] * 2 + [[told.mix_temp_c]] * 2)
    clock = run_clock(
        mix_c, told.thickness_m, room, start_h=start_h, days=hidden, evaporating=np.array([[True], [False]] * 2),
        least_h=LEAST_H,
    )  # fmt: skip
    own_h, temps, ages = clock.history.time_h, clock.history.temp_c[..., 0], clock.history.equivalent_age_h[..., 0]
    hours = np.arange(0.0, own_h[-1] + 1e-9, GRID_H)
    on_grid = [np.interp(hours - start, own_h, column) for start, column in zip(start_h[:, 0], ages.T, strict=True)]
    rows = (("base", True), ("base", False), ("face", True), ("face", False))
    ages_h = {row: tuple(column.tolist()) for row, column in zip(rows, on_grid, strict=True)}
    temp_c = np.interp(hours - start_h[2, 0], own_h, temps[:, 2])
    air_c, rh_fraction, wind_m_s = room_at(room, hours)
    air_c = air_c + hidden.room_error_k[0]
    rate = evaporation.menzel_rate_kg_m2_h(temp_c, air_c, rh_fraction, moving_air(wind_m_s))
    rate = rate * hidden.evaporation_factor[0]
    columns = rate, _summed(rate), _summed(np.where(rate >= defaults.si("face_red"), rate, 0.0)), temp_c
    return (ages_h, *(tuple(column.tolist()) for column in columns))


def _summed(rate):
    """Trapezoids from the first water on."""
    return np.concatenate(([0.0], np.cumsum((rate[1:] + rate[:-1]) / 2.0 * GRID_H)))


def weathers():
    """List the kinds of day.

    Returns
    -------
    tuple of str
        Names for `draw_pour` [-].

    Examples
    --------
    >>> weathers()
    ('mild', 'hot and windy', 'cold shop')

    References
    ----------
    Invented for the rehearsal.
    """
    return tuple(WEATHERS)
