"""The rule for tops that nobody is meant to sit on: leaning on them, kneeling down slowly, and dropping onto a knee."""

from dataclasses import dataclass

import numpy as np

from shop_calc import defaults
from shop_calc.science import bending, plate
from shop_calc.science.loads import GRAVITY_M_S2
from shop_calc.trade.after.seat_rule import SEAT_WIDTH_M, SITTING_DOWN

SEATED_M = 0.3048  # judgement: 12 in square under whoever sits
TWIST_SHARE = 0.7  # judgement: a load at its corner twists a narrow piece; plate elements in the tests
BOTH_RAILS, BACK_RAIL, NO_RAIL = "front and back", "back", "none"


@dataclass(frozen=True)
class UseStresses:
    """What one place of a top is pulled with, its own weight apart.

    Parameters
    ----------
    own_pa : float
        Its own weight [Pa].
    lean_pa, kneel_pa, drop_pa : float
        A person leaning with a hand, kneeling down slowly, dropping onto a knee or jumping down [Pa].
    ratio : float
        Moment per width over the load, at the worst spot [-].

    Examples
    --------
    >>> UseStresses(6e4, 4e5, 1.3e6, 2e6, 0.22).ratio
    0.22

    References
    ----------
    Derived: theory of plates and beams.
    """

    own_pa: float
    lean_pa: float
    kneel_pa: float
    drop_pa: float
    ratio: float


def use_loads_kg():
    """Loads of the three questions that a top is asked.

    Returns
    -------
    tuple of float
        A hand that leans, a person who kneels down slowly, one who drops onto a knee [kg].

    Examples
    --------
    >>> ["{:.0f}".format(load / 0.45359237) for load in use_loads_kg()]
    ['100', '325', '500']

    Notes
    -----
    One person of 250 lb on one knee. Climbing a step presses with up to 1.6 times the weight (a steep stair, force
    plates); slowly and with the hands on something 1.3 is ours. A stair tread has to bear 300 lb on 2 in square by
    code, a little less than that. A weight let go at the very touch presses with exactly twice itself.

    References
    ----------
    Rows rail_load, seat_load and kneel_factor of data/defaults.csv, judgement; Gait Posture 21 (2005) 24-38, summary,
    and IRC Table R301.5 as adopted in WAC 51-51-0301, both read.
    """
    person = defaults.si("seat_load")
    return defaults.si("rail_load"), defaults.si("kneel_factor") * person, SITTING_DOWN * person


def _stresses(own_pa, ratio, thickness_m):
    pull = 6.0 * GRAVITY_M_S2 * ratio / thickness_m**2
    return UseStresses(own_pa, *(load * pull for load in use_loads_kg()), ratio)


def span_use(span_m, width_m, thickness_m, density_kg_m3, rails=NO_RAIL):
    """Stresses of a top between two supports, at the worst spot of mid-span.

    It gives no safe span. Not for a seat, which has a rule of its own, nor for a strip beside an opening.

    Parameters
    ----------
    span_m, width_m : float
        Distance between the supports, which reach under all of the width [m].
    thickness_m : float
        Thickness [m].
    density_kg_m3 : float
        Density [kg/m3].
    rails : str
        Which edges along the span lie on a rail: front and back, back, or none [-].

    Returns
    -------
    UseStresses
        At the middle when both edges are carried, else at the free edge [Pa].

    Raises
    ------
    ValueError
        When a size is not positive.

    Examples
    --------
    >>> top = span_use(0.6096, 0.635, 0.0381, 2322.68, "front and back")
    >>> ["{:.2f}".format(stress / 6894.757) for stress in (top.own_pa, top.lean_pa, top.kneel_pa, top.drop_pa)]
    ['9.17', '58.08', '188.75', '290.38']

    References
    ----------
    Derived: theory of plates; the loads are judgement, `use_loads_kg`.
    """
    both = rails == BOTH_RAILS
    hand = defaults.si("knee_width")
    along, across = min(hand, span_m), min(hand, width_m)
    place = width_m / 2 if both else across / 2
    look = np.array([place] if both else [0.0, place])
    held = (both, rails in (BOTH_RAILS, BACK_RAIL))
    person = float(np.max(plate.patch_moment_ratio(span_m, width_m, along, across, place, look, *held)))
    whole = float(np.max(plate.patch_moment_ratio(span_m, width_m, span_m, width_m, width_m / 2, look, *held)))
    own = 6.0 * GRAVITY_M_S2 * density_kg_m3 * span_m * width_m * whole / thickness_m
    return _stresses(own, person, thickness_m)


def overhang_use(overhang_m, edge_m, thickness_m, density_kg_m3):
    """Stresses of a top over the support of an overhang, with the load on its corner.

    It gives no safe overhang. Not for a seat, nor for a piece whose other end can lift.

    Parameters
    ----------
    overhang_m : float
        Length beyond the support [m].
    edge_m, thickness_m : float
        Length of the edge that overhangs, and thickness [m].
    density_kg_m3 : float
        Density [kg/m3].

    Returns
    -------
    UseStresses
        Over the support, above [Pa].

    Raises
    ------
    ValueError
        When a size is not positive.

    Examples
    --------
    >>> bar = overhang_use(0.254, 0.635, 0.0381, 2322.68)
    >>> ["{:.2f}".format(stress / 6894.757) for stress in (bar.own_pa, bar.lean_pa, bar.kneel_pa, bar.drop_pa)]
    ['16.78', '213.33', '693.33', '1066.67']

    Notes
    -----
    A load on a corner is shared by a width as long as the overhang, and in a narrow piece by seven tenths of its edge.
    Plate elements, the piece going on behind its support, give from 31 % less (6 in) to 4 % more (15 in); at the middle
    of a long edge the width is twice as much or more.

    References
    ----------
    Derived: elementary beam theory; the width is judgement, checked by elements in the tests.
    """
    hand = defaults.si("knee_width")
    beyond = min(hand, overhang_m)
    arm = beyond / hand * (overhang_m - beyond / 2.0)
    shared = min(max(overhang_m, hand), TWIST_SHARE * edge_m)
    own = float(bending.cantilever_stress_pa(overhang_m, edge_m, thickness_m, density_kg_m3))
    return _stresses(own, arm / shared, thickness_m)


def railed_seat_stress_pa(span_m, width_m, thickness_m, density_kg_m3):
    """Stress of a seat carried all round that people sit on: its own, and theirs.

    For a seat on a box whose front and back rail touch it; without both rails it is a span like any other.

    Parameters
    ----------
    span_m, width_m : float
        Distance between the ends of the box, and between its rails [m].
    thickness_m : float
        Thickness [m].
    density_kg_m3 : float
        Density [kg/m3].

    Returns
    -------
    tuple of float
        Own weight, and people with sitting down [Pa].

    Raises
    ------
    ValueError
        When a size is not positive.

    Examples
    --------
    >>> own, people = railed_seat_stress_pa(1.2192, 0.4572, 0.0381, 2322.68)
    >>> f"{people / 6894.757:.2f}"
    '165.76'

    Notes
    -----
    One person at the middle, one more for every 24 in to each side while there is room, each on 12 in square, all
    sitting down at once.

    References
    ----------
    Derived: theory of plates; seat_load of data/defaults.csv, judgement.
    """
    along, across = min(SEATED_M, span_m), min(SEATED_M, width_m)
    room = (span_m - along) / 2.0
    places = SEAT_WIDTH_M * np.arange(1, int(room / SEAT_WIDTH_M + 1e-9) + 1)

    def ratio(size_along, size_across, off=0.0):
        return plate.patch_moment_ratio(
            span_m, width_m, size_along, size_across, width_m / 2, width_m / 2, True, True, off
        )

    people = ratio(along, across) + sum(2.0 * ratio(along, across, off) for off in places)
    pull = 6.0 * GRAVITY_M_S2 / thickness_m**2
    own = pull * density_kg_m3 * thickness_m * span_m * width_m * ratio(span_m, width_m)
    return own, pull * SITTING_DOWN * defaults.si("seat_load") * people
