"""Spans, overhangs and strips that a person may sit, kneel or lean on: checked, and no safe span is ever given."""

from dataclasses import dataclass

import numpy as np

from shop_calc import defaults
from shop_calc.science import bending
from shop_calc.trade.after.seat_rule import (
    beyond_stone_guide,
    seat_limit_pa,
    seat_overhang_stress_pa,
    seat_span_stress_pa,
)
from shop_calc.trade.shape.strips import strips_beside_cutouts
from shop_calc.units import show

NOT_ENOUGH = "continuous support under it, closer legs, a thicker piece, or an engineer"
NOT_BEYOND = "continuous support or brackets under it, a shorter overhang, a thicker piece, or an engineer"


@dataclass(frozen=True)
class SupportCheck:
    """One place where people load the piece.

    Parameters
    ----------
    key : str
        span, overhang or rail [-].
    where : str
        Which place, in words [-].
    size_m : float
        Span, overhang or length of the strip [m].
    own_pa : float
        Stress of its own weight [Pa].
    people_pa : float
        Stress of the people, sitting down included [Pa].
    limit_pa : float
        Rupture over the scatter of plain flexure [Pa].
    beyond_stone : bool
        True when it is longer than the guide for natural stone of that thickness [-].

    Examples
    --------
    >>> SupportCheck("span", "between the legs", 0.9, 1e6, 4e6, 2.3e6, True).holds
    False

    References
    ----------
    Rule of this project, judgement; beam theory.
    """

    key: str
    where: str
    size_m: float
    own_pa: float
    people_pa: float
    limit_pa: float
    beyond_stone: bool

    @property
    def stress_pa(self):
        """Both stresses together."""
        return self.own_pa + self.people_pa

    @property
    def holds(self):
        """Whether the stress stays within the limit."""
        return self.stress_pa <= self.limit_pa

    @property
    def use_ratio(self):
        """Stress over limit, 1 is all there is."""
        return self.stress_pa / self.limit_pa


def check_supports(piece, density_kg_m3, strength_pa, span_m=None, overhang_m=None, overhang_edge_m=None):
    """Check what the job says about spans and overhangs.

    Parameters
    ----------
    piece : Piece
        A checked piece [m].
    density_kg_m3 : float
        Density [kg/m3].
    strength_pa : float
        Strength at 28 days to count with [Pa].
    span_m, overhang_m : float or None
        Span between supports and length beyond them, where there are any [m].
    overhang_edge_m : float or None
        Length of the edge that overhangs; the shorter side of the piece when left out [m].

    Returns
    -------
    tuple of SupportCheck
        One for each that was given, then one for every narrow strip beside an opening [Pa].

    Raises
    ------
    ValueError
        When span and overhangs are longer than the piece.

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.piece import build_piece
    >>> bench = build_piece(rectangle(1.524, 0.381), 0.0381, use="seat")
    >>> [check.holds for check in check_supports(bench, 2250.0, 24e6, 1.1, 0.2)]
    [False, False]

    References
    ----------
    Rule of this project, judgement; derived: elementary beam theory.
    """
    longer, shorter = max(piece.outline.box_m), min(piece.outline.box_m)
    for name, size in (("span between the supports", span_m), ("overhang", overhang_m)):
        if size is not None and size > longer * (1 + 1e-9):
            given, most = show(size, "length"), show(longer, "length")
            raise ValueError(f"{name}: {given} given; it must be at most the length of the piece, {most}")
    limit, thick, checks = float(seat_limit_pa(strength_pa)), piece.thickness_m, []

    def add(key, where, size, stresses):
        stresses = (float(stress) for stress in stresses)
        checks.append(SupportCheck(key, where, size, *stresses, limit, beyond_stone_guide(key, size, thick)))

    if span_m:
        add("span", "between the supports", span_m, seat_span_stress_pa(span_m, shorter, thick, density_kg_m3))
    if overhang_m:
        edge = shorter if overhang_edge_m is None else overhang_edge_m
        add("overhang", "beyond the support", overhang_m,
            seat_overhang_stress_pa(overhang_m, edge, thick, density_kg_m3))  # fmt: skip
    for strip in strips_beside_cutouts(piece):
        if strip.length_m >= strip.width_m:  # a shorter one is a bridge beside a small hole
            size = (strip.length_m, strip.width_m, thick, density_kg_m3)
            own = float(bending.simple_span_stress_pa(*size))
            both = float(bending.simple_span_stress_pa(*size, defaults.si("rail_load")))
            checks.append(SupportCheck("rail", strip.where, strip.length_m, own, both - own, limit, False))
    return tuple(checks)


def best_legs(piece, density_kg_m3, strength_pa):
    """Check a piece on two legs where they help most.

    For a seat of which nobody has said what carries it: what fails here fails on any two legs set alike from the ends.

    Parameters
    ----------
    piece : Piece
        A checked piece [m].
    density_kg_m3 : float
        Density [kg/m3].
    strength_pa : float
        Strength at 28 days to count with [Pa].

    Returns
    -------
    tuple of SupportCheck
        Between the legs, and beyond them [Pa].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.piece import build_piece
    >>> span, overhang = best_legs(build_piece(rectangle(1.524, 0.381), 0.0381), 2250.0, 24e6)
    >>> f"{span.use_ratio:.2f} {overhang.use_ratio:.2f}"
    '3.18 3.17'

    Notes
    -----
    Legs a sixth of the length in from the ends make one person's moment the same at the middle and at the tip; own
    weight and further people move that a little, so the place is searched.

    References
    ----------
    Derived: elementary beam theory.
    """
    longer, shorter, thick = max(piece.outline.box_m), min(piece.outline.box_m), piece.thickness_m
    inwards = np.linspace(0.02, 0.40, 381)
    span = sum(seat_span_stress_pa(longer * (1.0 - 2.0 * inwards), shorter, thick, density_kg_m3))
    overhang = sum(seat_overhang_stress_pa(longer * inwards, shorter, thick, density_kg_m3))
    best = float(inwards[np.argmin(np.maximum(span, overhang))])
    checks = check_supports(piece, density_kg_m3, strength_pa, longer * (1.0 - 2.0 * best), longer * best)
    return tuple(check for check in checks if check.key != "rail")
