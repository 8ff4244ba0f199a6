"""Spans, overhangs and strips that a person may sit, kneel or lean on: checked, and no safe span is ever given."""

from dataclasses import dataclass, replace

import numpy as np

from shop_calc import defaults
from shop_calc.science import bending
from shop_calc.trade.after.drop_pull import overhang_pull, span_pull, strip_pull
from shop_calc.trade.after.mends import overhang_mends, span_mends
from shop_calc.trade.after.seat_rule import (
    beyond_stone_guide,
    seat_limit_pa,
    seat_overhang_stress_pa,
    seat_span_stress_pa,
)
from shop_calc.trade.after.use_rule import BOTH_RAILS, NO_RAIL, overhang_use, railed_seat_stress_pa, span_use
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
        Stress of the people: of a seat, sitting down included; of a strip, of one who leans; else of one who kneels
        down slowly [Pa].
    limit_pa : float
        Rupture over the scatter of plain flexure [Pa].
    beyond_stone : bool
        True when it is longer than the guide for natural stone of that thickness [-].
    lean_pa, drop_pa : float or None
        Of a top that is no seat: stress of a person who leans, and of one who drops onto a knee [Pa].
    ratio : float or None
        Of a top that is no seat: moment per width over the load [-].
    thickness_m : float or None
        Of a top that is no seat: its thickness [m].
    mends : tuple of Mend
        Where nobody may kneel: changes after which a person may, slowly [Pa].

    Examples
    --------
    >>> SupportCheck("span", "between the legs", 0.9, 1e6, 4e6, 2.3e6, True).holds
    False
    >>> SupportCheck("span", "over the cabinet", 0.6, 1e5, 1.3e6, 2.04e6, False, 4e5, 2e6, 0.22).step
    'care'

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
    lean_pa: float | None = None
    drop_pa: float | None = None
    ratio: float | None = None
    thickness_m: float | None = None
    mends: tuple = ()

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

    @property
    def step(self):
        """What may be done there: free, care (kneel slowly), nobody (no person on it), lean (not even that), stop.

        A seat and a strip beside an opening are asked one question, so that they hold, "free", or do not: "stop" for a
        seat, "lean" for a strip. A top is one to stop for when leaning brings it to all the strength that is counted,
        with no scatter left, or its own weight alone to what it may have.
        """
        if self.lean_pa is None:
            return "free" if self.holds else "lean" if self.key == "rail" else "stop"
        rupture = self.limit_pa * defaults.si("flexure_scatter")
        if self.own_pa > self.limit_pa or self.own_pa + self.lean_pa > rupture:
            return "stop"
        if self.own_pa + self.lean_pa > self.limit_pa:
            return "lean"
        if not self.holds:
            return "nobody"
        return "care" if self.own_pa + self.drop_pa > self.limit_pa else "free"


def between_rails_m(piece, side_overhang_m=None, rails=NO_RAIL):
    """Width of a piece along its supports; with both rails the distance between these.

    Parameters
    ----------
    piece : Piece
        A checked piece [m].
    side_overhang_m : float or None
        How far it hangs over along its longer side, beyond a rail [m].
    rails : str
        Which edges along the span lie on a rail [-].

    Returns
    -------
    float
        Width, at least a tenth of the whole [m].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.piece import build_piece
    >>> f"{between_rails_m(build_piece(rectangle(2.4, 0.94), 0.0381), 0.3048, 'front and back'):.4f}"
    '0.6352'

    References
    ----------
    Derived: geometry.
    """
    width = min(min(piece.outline.box_m), piece.outline.narrowest_m)
    if rails == BOTH_RAILS and side_overhang_m:
        return max(width - side_overhang_m, 0.1 * width)
    return width


def _check_sizes(piece, span_m, overhang_m, at_side):
    """What lies on its supports and hangs over them is one piece."""
    longer, shorter = max(piece.outline.box_m), min(piece.outline.box_m)

    def refuse(name, size, words, most):
        raise ValueError(f"{name}: {show(size, 'length')} given; it must be {words}, {show(most, 'length')}")

    if span_m is not None and span_m > longer * (1 + 1e-9):
        refuse("span between the supports", span_m, "at most the length of the piece", longer)
    if overhang_m is None:
        return
    if at_side and overhang_m > shorter * (1 + 1e-9):
        refuse("overhang", overhang_m, "at most the width of the piece, over whose side it hangs", shorter)
    if overhang_m > longer * (1 + 1e-9):
        refuse("overhang", overhang_m, "at most the length of the piece", longer)
    if not at_side and span_m is not None and span_m + overhang_m > longer * (1 + 1e-9):
        words = f"at most what the span of {show(span_m, 'length')} leaves of the length of the piece"
        refuse("overhang", overhang_m, words, longer - span_m)


def check_supports(
    piece, density_kg_m3, strength_pa, span_m=None, overhang_m=None, overhang_edge_m=None, rails=NO_RAIL
):
    """Check what the job says about spans and overhangs.

    A seat by the rule for seats; any other piece by three questions: may one lean on it, kneel on it, drop onto it?
    Dropped edges count with their weight and where their tip is pulled harder than the plate, never as help.

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
    rails : str
        Which edges along the span lie on a rail: front and back, back, or none [-].

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
    shorter = min(piece.outline.box_m)
    _check_sizes(piece, span_m, overhang_m, overhang_edge_m is not None)
    limit, thick, checks = float(seat_limit_pa(strength_pa)), piece.thickness_m, []
    seat, across = piece.use == "seat", between_rails_m(piece, overhang_m if overhang_edge_m else None, rails)

    def add(key, where, size, by_rule, by_use, mends, pull):
        bridged = min(size, across) if key == "span" and rails == BOTH_RAILS else size  # carried along, it spans its depth
        stone, (heavier, harder) = beyond_stone_guide(key, bridged, thick), pull
        if seat:
            own, people = (float(stress) for stress in by_rule())
            check = SupportCheck(key, where, size, own * heavier, people * harder, limit, stone)
        else:
            use = by_use()
            check = SupportCheck(key, where, size, use.own_pa * heavier, use.kneel_pa * harder, limit, stone,
                                 use.lean_pa * harder, use.drop_pa * harder, use.ratio * harder, thick)  # fmt: skip
            if not check.holds:  # with dropped edges only what is enough with their pull as it is now
                after = (replace(mend, stress_pa=mend.stress_pa * heavier) for mend in mends())
                check = replace(check, mends=tuple(mend for mend in after if mend.stress_pa <= limit))
        checks.append(check)

    if span_m:
        size = (span_m, across, thick, density_kg_m3)
        seat_rule = railed_seat_stress_pa if rails == BOTH_RAILS else seat_span_stress_pa
        add("span", "between the supports", span_m, lambda: seat_rule(*size),
            lambda: span_use(*size, rails), lambda: span_mends(*size, rails, limit),
            span_pull(piece, span_m, rails == BOTH_RAILS))  # fmt: skip
    if overhang_m:
        size = (overhang_m, shorter if overhang_edge_m is None else overhang_edge_m, thick, density_kg_m3)
        add("overhang", "beyond the support", overhang_m, lambda: seat_overhang_stress_pa(*size),
            lambda: overhang_use(*size), lambda: overhang_mends(*size, limit),
            overhang_pull(piece, overhang_m, overhang_edge_m is not None))  # fmt: skip
    for strip in strips_beside_cutouts(piece):
        if strip.length_m >= strip.width_m:  # a shorter one is a bridge beside a small hole
            size = (strip.length_m, strip.width_m, thick, density_kg_m3)
            own = float(bending.simple_span_stress_pa(*size))
            both = float(bending.simple_span_stress_pa(*size, defaults.si("rail_load")))
            heavier, harder = strip_pull(piece, strip)
            people = (both - own) * harder
            checks.append(SupportCheck("rail", strip.where, strip.length_m, own * heavier, people, limit, False))
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
    checks = check_supports(
        replace(piece, use="seat"), density_kg_m3, strength_pa, longer * (1.0 - 2.0 * best), longer * best
    )
    return tuple(check for check in checks if check.key != "rail")
