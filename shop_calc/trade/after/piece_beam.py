"""A piece as a beam: how wide it is, what it weighs and how it bends at every cut across its length."""

from dataclasses import dataclass

import numpy as np
import shapely

from shop_calc.science.bending import BEST_SUPPORT_RATIO
from shop_calc.science.checks import require
from shop_calc.science.loads import GRAVITY_M_S2
from shop_calc.trade.after.beam_section import ring_edges, section_moduli_m3, strips_at, width_moments

CUTS = 96  # judgement: plain strips are exact with any number, a round top within 0.1 %
MANY_CORNERS = 40  # an outline with more is round: its corners need no cut of their own
_SIDE_M = 1e-6  # cuts on both sides of a place where the width jumps


@dataclass(frozen=True, eq=False)
class Beam:
    """A piece cut across its length.

    Parameters
    ----------
    x_m : ndarray of shape (n,)
        Places of the cuts from the left end [m].
    width_m : ndarray of shape (n,)
        Material on each cut, openings left out [m].
    line_kg_m : ndarray of shape (n,)
        Mass per length there, dropped edges included [kg/m].
    length_m, across_m : float
        Longer and shorter side of the box round the piece [m].
    thickness_m : float
        Thickness away from dropped edges [m].
    sag_modulus_m3, hog_modulus_m3 : ndarray of shape (n,)
        Section modulus of each cut where it sags and where it hogs, see `section_moduli_m3` [m3].
    openings : tuple of (left, right, strips)
        Each cut-out along the length, and the (low, high) of every strip of material beside it [m].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.piece import build_piece
    >>> round(piece_beam(build_piece(rectangle(1.524, 0.381), 0.0381), 2300.0).across_m, 6)
    0.381

    References
    ----------
    Derived: geometry.
    """

    x_m: np.ndarray
    width_m: np.ndarray
    line_kg_m: np.ndarray
    length_m: float
    across_m: float
    thickness_m: float
    sag_modulus_m3: np.ndarray
    hog_modulus_m3: np.ndarray
    openings: tuple

    def moment_n_m(self, support_ratio):
        """Bending moment of its own weight at every cut, held at that share of the length from each end."""
        first, second = support_ratio * self.length_m, (1.0 - support_ratio) * self.length_m
        left, right = self._supports(first, second)
        own = _running(self.x_m, _running(self.x_m, self.line_kg_m))
        held = left * np.maximum(self.x_m - first, 0.0) + right * np.maximum(self.x_m - second, 0.0)
        return GRAVITY_M_S2 * (held - own)

    def shear_n(self, support_ratio):
        """Shear of its own weight at every cut."""
        first, second = support_ratio * self.length_m, (1.0 - support_ratio) * self.length_m
        left, right = self._supports(first, second)
        own = _running(self.x_m, self.line_kg_m)
        return GRAVITY_M_S2 * (left * (self.x_m > first) + right * (self.x_m > second) - own)

    def _supports(self, first, second):
        mass = _running(self.x_m, self.line_kg_m)
        total = mass[-1]
        middle = self.x_m[-1] - _running(self.x_m, mass)[-1] / total
        right = total * (middle - first) / (second - first)
        return total - right, right


def _running(x, y):
    return np.concatenate(([0.0], np.cumsum(np.diff(x) * (y[1:] + y[:-1]) / 2.0)))


def _turn(piece):
    """Which way to turn the piece so that its length lies along x: quarter turns are exact."""
    if piece.outline.shape == "polygon":
        box = shapely.get_coordinates(shapely.minimum_rotated_rectangle(piece.outline.polygon))
        sides = np.diff(box, axis=0)[:2]
        longer = sides[np.argmax(np.hypot(*sides.T))]
        return -np.arctan2(longer[1], longer[0])
    left, front, right, back = piece.outline.polygon.bounds
    return np.pi / 2 if back - front > right - left else 0.0


def piece_beam(piece, density_kg_m3, cuts=CUTS, across=False):
    """Cut a piece across its length.

    Not for pieces of which the weight lies far off the line between the two holds: an L twists too.

    Parameters
    ----------
    piece : Piece
        A checked piece [m].
    density_kg_m3 : float
        Density as it lies [kg/m3].
    cuts : int
        Even cuts; corners and openings get their own besides [-].
    across : bool
        True for the piece as a beam from front to back, so that its length becomes its width [-].

    Returns
    -------
    Beam
        Widths and masses at every cut [m, kg/m].

    Raises
    ------
    ValueError
        When the density is not positive.

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import circle
    >>> from shop_calc.trade.shape.piece import build_piece
    >>> beam = piece_beam(build_piece(circle(0.9), 0.038), 2300.0)
    >>> f"{beam.width_m.max():.3f}"
    '0.900'

    References
    ----------
    Derived: geometry.
    """
    density = require("density", density_kg_m3, 0, unit="kg/m3", low_open=True)
    turn = _turn(piece) + (np.pi / 2 if across else 0.0)
    spin = np.array([[np.cos(turn), -np.sin(turn)], [np.sin(turn), np.cos(turn)]]).round(15)
    edges = ring_edges(piece.plan) @ spin.T
    low = edges.reshape(-1, 2).min(axis=0)
    edges = edges - low
    length, across_m = (float(size) for size in edges.reshape(-1, 2).max(axis=0))
    places = [np.linspace(0.0, length, cuts + 1), [BEST_SUPPORT_RATIO * length, (1 - BEST_SUPPORT_RATIO) * length]]
    holes = []
    for cutout in piece.cutouts:
        points = shapely.get_coordinates(cutout.outline.polygon) @ spin.T - low
        holes.append((float(points[:, 0].min()), float(points[:, 0].max())))
        places.append([sum(holes[-1]) / 2])
    ribs = [
        (ring_edges(part) @ spin.T - low, drops[0].depth_m)
        for drops, region in piece.drop_regions
        for part in shapely.get_parts(region)
        if part.geom_type == "Polygon" and not part.is_empty
    ]
    jumps = edges[:, 0, 0] if len(edges) <= MANY_CORNERS else np.array(holes, dtype=float).reshape(-1)
    jumps = np.concatenate([jumps, *(rib[:, 0, 0] for rib, _ in ribs)])
    places += [jumps - _SIDE_M, jumps + _SIDE_M, [_SIDE_M, length - _SIDE_M]]
    x = np.unique(np.clip(np.concatenate(places), 0.0, length))
    inside = np.clip(x, _SIDE_M / 2, length - _SIDE_M / 2)  # the very ends have a width too
    (width,) = width_moments(edges, inside)
    line = width * piece.thickness_m
    for rib, deep in ribs:
        line = line + width_moments(rib, inside)[0] * (deep - piece.thickness_m)
    moduli = section_moduli_m3(edges, ribs, piece.thickness_m, inside)
    openings = tuple((left, right, strips_at(edges, (left + right) / 2)) for left, right in holes)
    return Beam(x, width, density * line, length, across_m, piece.thickness_m, *moduli, openings)


def flat_stress_pa(beam, support_ratio):
    """Largest tension of a piece carried flat, openings taken out of the section.

    Static: carrying jolts it. Steel and fibre are not credited, and a dropped edge only where it makes matters worse.

    Parameters
    ----------
    beam : Beam
        The piece [m, kg/m].
    support_ratio : float
        How far each hold is in from its end, as a share of the length [-].

    Returns
    -------
    float
        Largest tension [Pa].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.piece import build_piece
    >>> strip = piece_beam(build_piece(rectangle(2.4384, 0.635), 0.0381), 2402.769)
    >>> f"{flat_stress_pa(strip, 0.0):.5g}"
    '2.7579e+06'

    Notes
    -----
    6 M/(b t^2) at every cut, b what is left of the width there; for a plain strip that is 0.75 g L^2/t by the ends.
    With dropped edges the lower modulus of `section_moduli_m3`: the tip of a narrow return hangs far from the middle
    of the section, and cracks first where the piece sags.

    References
    ----------
    Derived: elementary beam theory.
    """
    return worst_place(beam, support_ratio)[0]


def worst_place(beam, support_ratio):
    """Largest tension of a piece carried flat, and where it is.

    Parameters
    ----------
    beam : Beam
        The piece [m, kg/m].
    support_ratio : float
        How far each hold is in from its end, as a share of the length [-].

    Returns
    -------
    tuple of float
        Tension, place from the left end, and the tension there of the same weight on a plate without drops [Pa, m, Pa].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.piece import build_piece
    >>> place_m = worst_place(piece_beam(build_piece(rectangle(2.4384, 0.635), 0.0381), 2402.769), 0.0)[1]
    >>> f"{place_m:.4f}"
    '1.2192'

    References
    ----------
    Derived: elementary beam theory.
    """
    moment = beam.moment_n_m(support_ratio)
    modulus = np.where(moment > 0, beam.sag_modulus_m3, beam.hog_modulus_m3)
    there = beam.width_m > 1e-4
    plain = 6.0 * np.abs(moment[there]) / (beam.width_m[there] * beam.thickness_m**2)
    stress = np.abs(moment[there]) / modulus[there]
    worst = int(np.argmax(stress))
    return float(stress[worst]), float(beam.x_m[there][worst]), float(plain[worst])


def edge_stress_pa(beam, support_ratio=0.0):
    """Largest tension of a piece carried on edge, held at two places.

    Static. What stands on edge falls: two people, a frame, never left leaning.

    Parameters
    ----------
    beam : Beam
        The piece [m, kg/m].
    support_ratio : float
        How far each hold is in from its end, as a share of the length [-].

    Returns
    -------
    float
        Largest tension [Pa].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.piece import build_piece
    >>> strip = piece_beam(build_piece(rectangle(2.4384, 0.635), 0.0381), 2402.769)
    >>> f"{edge_stress_pa(strip):.5g}"
    '1.6547e+05'

    Notes
    -----
    6 M/(t b^2), the width now being the depth. Beside an opening the strips bend as the two chords of a frame
    without diagonals: each takes the shear by the cube of its depth over half the length of the opening. Both
    stresses are added, which is more than there is.

    References
    ----------
    Derived: elementary beam theory.
    """
    moment, shear = np.abs(beam.moment_n_m(support_ratio)), np.abs(beam.shear_n(support_ratio))
    thick, there = beam.thickness_m, beam.width_m > 1e-4
    for left, right, _ in beam.openings:
        there = there & ((beam.x_m < left) | (beam.x_m > right))
    worst = float(np.max(6.0 * moment[there] / (thick * beam.width_m[there] ** 2), initial=0.0))
    for left, right, strips in beam.openings:
        inside = (beam.x_m >= left) & (beam.x_m <= right)
        low, high = np.array(strips).T
        depth, middle = high - low, (high + low) / 2.0
        centre = np.sum(depth * middle) / np.sum(depth)
        inertia = thick * np.sum(depth**3 / 12.0 + depth * (middle - centre) ** 2)
        skin = max(np.max(high) - centre, centre - np.min(low))
        chord = np.max(shear[inside]) * depth**3 / np.sum(depth**3) * (right - left) / 2.0
        whole = np.max(moment[inside]) * skin / inertia
        worst = max(worst, float(whole + np.max(6.0 * chord / (thick * depth**2))))
    return worst
