"""The rule for whatever people may sit on: 250 lb for every 24 in at the worst spot, doubled for sitting down."""

import numpy as np

from shop_calc import defaults
from shop_calc.science import bending, strength_laws
from shop_calc.science.loads import GRAVITY_M_S2

SEAT_WIDTH_M = 0.6096  # 24 in: what one person takes of an edge (judgement, as the load)
SITTING_DOWN = 2.0  # judgement: a person drops the last inch
# Natural-stone guide, quoted: thickness from, span, overhang. Stone, not concrete: a caution only.
STONE_GUIDE_M = ((0.0318, 0.9144, 0.254), (0.0191, 0.6096, 0.1524))


def seat_limit_pa(strength_pa):
    """Stress that a seat may reach: rupture over the scatter of plain flexure.

    Parameters
    ----------
    strength_pa : float or array
        Compressive strength [Pa].

    Returns
    -------
    float or array
        Limit [Pa].

    Raises
    ------
    ValueError
        When the strength is negative.

    Examples
    --------
    >>> f"{seat_limit_pa(34.4738e6) / 6894.757:.3f}"
    '353.553'

    References
    ----------
    ACI 318-19 19.2.3, from memory; flexure_scatter of data/defaults.csv, judgement.
    """
    return strength_laws.rupture_modulus_pa(strength_pa) / defaults.si("flexure_scatter")


def _people(reach_m, spacing_m):
    """Sum of the distances of people, one each spacing, from the support; the first sits at `reach_m`."""
    reach = np.asarray(reach_m, dtype=float)
    count = np.floor(reach / spacing_m * (1 - 1e-12)) + 1.0
    return count * reach - spacing_m * count * (count - 1.0) / 2.0


def seat_span_stress_pa(span_m, width_m, thickness_m, density_kg_m3):
    """Stress of a span that people sit on: its own, and theirs.

    It gives no safe span: it only says what a given one is stressed with.

    Parameters
    ----------
    span_m : float or array
        Distance between the supports [m].
    width_m, thickness_m : float or array
        Width of the piece, of which 24 in at most share a person, and its thickness [m].
    density_kg_m3 : float
        Density [kg/m3].

    Returns
    -------
    tuple of float or array
        Own weight, and people with sitting down [Pa].

    Raises
    ------
    ValueError
        When a size is not positive.

    Examples
    --------
    >>> own, people = seat_span_stress_pa(1.0160, 0.381, 0.0381, 2250.0)
    >>> f"{people / 6894.757:.3f}"
    '888.889'

    Notes
    -----
    One person at the middle and one more for every 24 in to each side while there is span left, on the width that a
    person takes. Times 2 for sitting down.

    References
    ----------
    Derived: elementary beam theory; seat_load of data/defaults.csv, judgement.
    """
    share = np.minimum(width_m, SEAT_WIDTH_M)
    half = np.asarray(span_m, dtype=float) / 2.0
    arms = 2.0 * _people(half, SEAT_WIDTH_M) - half  # both sides; the one at the middle counts once
    moment = SITTING_DOWN * defaults.si("seat_load") * GRAVITY_M_S2 * arms / 2.0
    own = bending.simple_span_stress_pa(span_m, share, thickness_m, density_kg_m3)
    return own, bending.bending_stress_pa(moment, share, thickness_m)


def seat_overhang_stress_pa(overhang_m, edge_m, thickness_m, density_kg_m3):
    """Stress over the support of an overhang that people sit on: its own, and theirs.

    It gives no safe overhang. Not for a piece whose other end can lift.

    Parameters
    ----------
    overhang_m : float or array
        Length beyond the support [m].
    edge_m, thickness_m : float or array
        Length of the edge that overhangs, of which 24 in at most share a person, and thickness [m].
    density_kg_m3 : float
        Density [kg/m3].

    Returns
    -------
    tuple of float or array
        Own weight, and people with sitting down [Pa].

    Raises
    ------
    ValueError
        When a size is not positive.

    Examples
    --------
    >>> own, people = seat_overhang_stress_pa(0.254, 0.6096, 0.0381, 2402.769)
    >>> f"{own / 6894.757:.4f} {people / 6894.757:.4f}"
    '17.3611 555.5556'

    Notes
    -----
    A person on the very end, and one more for every 24 in inwards.

    References
    ----------
    Derived: elementary beam theory; seat_load of data/defaults.csv, judgement.
    """
    share = np.minimum(edge_m, SEAT_WIDTH_M)
    own = bending.cantilever_stress_pa(overhang_m, share, thickness_m, density_kg_m3)
    load = SITTING_DOWN * defaults.si("seat_load") * GRAVITY_M_S2
    moment = load * _people(overhang_m, SEAT_WIDTH_M)
    return own, bending.bending_stress_pa(moment, share, thickness_m)


def beyond_stone_guide(key, size_m, thickness_m):
    """Whether a span or overhang is longer than fabricators allow natural stone of that thickness.

    Stone is not concrete: within the guide says nothing, beyond it is a caution.

    Parameters
    ----------
    key : str
        span or overhang [-].
    size_m : float
        Its length [m].
    thickness_m : float
        Thickness of the piece [m].

    Returns
    -------
    bool
        True beyond the guide, and for every piece thinner than 3/4 in [-].

    Examples
    --------
    >>> beyond_stone_guide("overhang", 0.3048, 0.0381)
    True

    References
    ----------
    Dimension Stone Design Manual, as quoted; rows ST-N of data/published/limits.csv.
    """
    for thick, span, overhang in STONE_GUIDE_M:
        if thickness_m >= thick * (1 - 1e-2):  # 1-1/4 in is 31.75 mm, a little under the 31.8 of the guide
            return size_m > (span if key == "span" else overhang) * (1 + 1e-9)
    return True


def seat_use_map(span_m, thickness_m, width_m, density_kg_m3, strength_pa):
    """Stress over limit of spans that people sit on, for a map: above 1 the rule says no.

    It gives no safe span; a map of it is to show how steeply thickness and span tell.

    Parameters
    ----------
    span_m, thickness_m : float or array
        Span and thickness, broadcast against one another [m].
    width_m : float
        Width [m].
    density_kg_m3 : float
        Density [kg/m3].
    strength_pa : float or array
        Compressive strength to count with [Pa].

    Returns
    -------
    float or array
        Stress over limit [-].

    Raises
    ------
    ValueError
        When a size is not positive.

    Examples
    --------
    >>> f"{seat_use_map(0.6096, 0.0381, 0.6477, 2402.769, 34.4738e6):.4f}"
    '1.0135'

    References
    ----------
    As `seat_span_stress_pa`.
    """
    own, people = seat_span_stress_pa(span_m, width_m, thickness_m, density_kg_m3)
    return (own + people) / seat_limit_pa(strength_pa)
