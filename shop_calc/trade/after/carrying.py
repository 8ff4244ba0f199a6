"""Ways of carrying a piece: what each bends it with, what strength that needs, and from when it is there."""

from dataclasses import dataclass

import numpy as np

from shop_calc import defaults
from shop_calc.science import bending, strength_laws
from shop_calc.science.bending import BEST_SUPPORT_RATIO
from shop_calc.trade.after.piece_beam import edge_stress_pa, flat_stress_pa

# Whoever says "on edge" says this too. It is part of the name of that way, so that no page can leave it out.
FALL_LINE = "two people, in a frame, never left leaning: a slab on edge falls"
ROUND = ("circle", "racetrack")  # they stand on their rim: held by the very tips they would have no depth there

WAYS = {
    # key: title, place of the holds as a share of the length, which face is in tension
    "board": ("Flat, on a stiff board or frame under all of it", None, "none, while the board does not bend"),
    "edge": (f"On edge ({FALL_LINE})", 0.0, "the lower edge, at the middle"),
    "fifth": ("Flat, held a good fifth of the length in from each end", BEST_SUPPORT_RATIO,
              "the upper face over the holds and the underside at the middle, alike"),
    "ends": ("Flat, held by the ends", 0.0, "the underside, at the middle"),
}  # fmt: skip


@dataclass(frozen=True)
class Carry:
    """One way of carrying a piece.

    Parameters
    ----------
    key, title : str
        Short name and name; the name of "edge" holds the fall line [-].
    stress_pa : float
        Static tension of its own weight [Pa].
    needed_rupture_pa : float
        That times the jolt of carrying and the scatter of plain flexure [Pa].
    needed_strength_pa : float
        Compressive strength that goes with it [Pa].
    margin_ratio : float
        Rupture in the morning over what is needed, 1 is just enough; infinite when nothing bends [-].
    earliest_h : float or None
        First hour it is there, the morning at the earliest; None when it is not in 28 days [h].
    tension : str
        Which face is pulled [-].

    Examples
    --------
    >>> FALL_LINE in Carry("edge", WAYS["edge"][0], 1e5, 3e5, 4e4, 6.0, 24.0, WAYS["edge"][2]).title
    True

    References
    ----------
    Derived: elementary beam theory; factors of data/defaults.csv.
    """

    key: str
    title: str
    stress_pa: float
    needed_rupture_pa: float
    needed_strength_pa: float
    margin_ratio: float
    earliest_h: float | None
    tension: str


def needed_rupture_pa(stress_pa):
    """Rupture that a static stress asks for: times the jolt of carrying, times the scatter of plain flexure.

    Not for a piece that stays where it is: a jolt is not in that.

    Parameters
    ----------
    stress_pa : float or array
        Static stress of its own weight [Pa].

    Returns
    -------
    float or array
        Needed modulus of rupture [Pa].

    Examples
    --------
    >>> needed_rupture_pa(1e6)
    3000000.0

    References
    ----------
    Rows carry_factor 2.0 and flexure_scatter 1.5 of data/defaults.csv, our judgement.
    """
    return defaults.si("carry_factor") * defaults.si("flexure_scatter") * stress_pa


def needed_strength_pa(stress_pa):
    """Compressive strength from which a piece may be carried with a static stress.

    Parameters
    ----------
    stress_pa : float or array
        Static stress of its own weight [Pa].

    Returns
    -------
    float or array
        Compressive strength [Pa].

    Raises
    ------
    ValueError
        When the stress is negative.

    Examples
    --------
    >>> f"{needed_strength_pa(1e6) / 1e6:.4f}"
    '23.2060'

    Notes
    -----
    It grows with the square of the stress: half as thick, flat by the ends, needs four times the strength.

    References
    ----------
    ACI 318-19 19.2.3, from memory; factors as `needed_rupture_pa`.
    """
    return strength_laws.strength_for_rupture_pa(needed_rupture_pa(stress_pa))


def ways_to_carry(beam, hardening, counted_28_pa, morning_h, shape="rectangle"):
    """Go through every way of carrying a piece.

    Not for a piece that has curled or cracked, and not for stairs, ladders and trucks: they jolt more.

    Parameters
    ----------
    beam : Beam
        The piece cut across its length [m, kg/m].
    hardening : Hardening
        Its strength with the hours [h, -].
    counted_28_pa : float
        Strength at 28 days to count with [Pa].
    morning_h : float
        The morning; nothing is moved before it, a practice [h].
    shape : str
        Shape word of the outline [-].

    Returns
    -------
    tuple of Carry
        From the kindest to the hardest [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.after.piece_beam import piece_beam
    >>> from shop_calc.trade.plan import make_plan
    >>> from shop_calc.trade.after.strength_of_morning import piece_hardening
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> beam = piece_beam(plan.piece, 2250.0)
    >>> ways = ways_to_carry(beam, piece_hardening(plan.day, plan.cure, "open"), 35e6, plan.cure.until_h)
    >>> [way.key for way in ways if way.earliest_h == plan.cure.until_h]
    ['board', 'edge', 'fifth']

    References
    ----------
    Derived: elementary beam theory; factors of data/defaults.csv; leaving it overnight is common practice.
    """
    rows = []
    now = float(strength_laws.rupture_modulus_pa(hardening.ratio_at(morning_h) * counted_28_pa))
    for key, (title, place, tension) in WAYS.items():
        if key == "board":
            stress = 0.0
        elif key == "edge":
            stress = edge_stress_pa(beam, BEST_SUPPORT_RATIO if shape in ROUND else place)
        else:
            stress = flat_stress_pa(beam, place)
        rupture, needed = float(needed_rupture_pa(stress)), float(needed_strength_pa(stress))
        earliest = None
        if needed < counted_28_pa * float(hardening.ratio[-1]):
            hour = hardening.hour_at(needed / counted_28_pa)
            earliest = None if hour is None else max(hour, morning_h, hardening.final_set_h)
        rows.append(Carry(key, title, stress, rupture, needed, now / rupture if rupture else np.inf, earliest, tension))
    return tuple(rows)


def carry_map_pa(length_m, thickness_m, density_kg_m3, way="ends", width_m=None):
    """Static stress of plain strips of many lengths and thicknesses, for a map.

    Not for pieces with openings or dropped edges: use `piece_beam`.

    Parameters
    ----------
    length_m, thickness_m : float or array
        Sizes, broadcast against one another [m].
    density_kg_m3 : float
        Density [kg/m3].
    way : str
        ends, fifth or edge [-].
    width_m : float or array or None
        Width, which counts only on edge [m].

    Returns
    -------
    float or array
        Static stress [Pa].

    Raises
    ------
    ValueError
        When the way is none of the three, or on edge without a width.

    Examples
    --------
    >>> f"{carry_map_pa(2.4384, 0.0381, 2402.769):.5g}"
    '2.7579e+06'

    References
    ----------
    Derived: elementary beam theory.
    """
    if way not in ("ends", "fifth", "edge"):
        raise ValueError(f"way to carry: {way!r} given; it must be ends, fifth or edge")
    if way == "edge" and width_m is None:
        raise ValueError(f"width: nothing given; on edge it must be there ({FALL_LINE})")
    depth = width_m if way == "edge" else thickness_m
    stress = bending.carried_stress_pa(length_m, depth, density_kg_m3, WAYS[way][1])
    return stress + 0.0 * thickness_m if np.ndim(thickness_m) else stress


def carry_margin_map(length_m, thickness_m, density_kg_m3, strength_pa, way="ends", width_m=None):
    """Margin of carrying plain strips: rupture over what is needed, 1 is just enough.

    Parameters
    ----------
    length_m, thickness_m : float or array
        Sizes, broadcast against one another [m].
    density_kg_m3 : float
        Density [kg/m3].
    strength_pa : float or array
        Compressive strength on that day [Pa].
    way : str
        ends, fifth or edge [-].
    width_m : float or array or None
        Width, which counts only on edge [m].

    Returns
    -------
    float or array
        Margin [-].

    Raises
    ------
    ValueError
        As `carry_map_pa`.

    Examples
    --------
    >>> f"{carry_margin_map(1.524, 0.0381, 2250.0, 5.5e6, 'fifth'):.4f}"
    '2.8127'

    References
    ----------
    As `needed_rupture_pa`.
    """
    stress = carry_map_pa(length_m, thickness_m, density_kg_m3, way, width_m)
    return strength_laws.rupture_modulus_pa(strength_pa) / needed_rupture_pa(stress)
