"""Two layers: how much of a piece is face and how much is base."""

from dataclasses import dataclass

import shapely
from shapely.geometry import Polygon

from shop_calc.science.checks import require
from shop_calc.trade.shape.bands import band, inside_out
from shop_calc.trade.shape.drops import SNAP_M
from shop_calc.trade.shape.layer_working import layer_working
from shop_calc.trade.shape.outline import rectangle
from shop_calc.trade.shape.piece import build_piece
from shop_calc.trade.shape.plan_parts import refuse
from shop_calc.trade.shape.strips import narrowest_strip
from shop_calc.units import show

_CRUMB_M2 = 1e-8  # smaller parts of a plan are rounding, not material


@dataclass(frozen=True)
class Layers:
    """The two volumes of a piece and what they follow from.

    Parameters
    ----------
    total_m3, core_m3, face_m3 : float
        Volume of the piece, of the base inside it, of the face on it [m3].
    top_area_m2 : float
        Area of the top, cut-outs taken away [m2].
    core_area_m2 : float
        Area of the base seen from above [m2].
    exposed_length_m : float
        Length of all exposed edges, cut-outs included [m].
    thickness_m, face_thickness_m, base_depth_m : float
        Of the piece, of the face, of the base under the face [m].
    narrowest_width_m : float
        Width of the narrowest strip of the piece; what limits the face thickness [m].
    narrowest_where : str
        Where that strip is [-].
    form_width_m : float
        Narrowest width between form sides: of that strip, or the return of a dropped edge [m].
    drop_m : float
        How far the deepest dropped edge hangs below the rest; 0 without one [m].
    plan, core_plan : shapely Polygon
        The piece and the base, seen from above [m].
    working : tuple of Step
        How the volumes came about [-].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> piece = build_piece(rectangle(2.43840, 0.64770), 0.0381, {"front", "left", "right"})
    >>> round(split_layers(piece, 0.00635).face_share, 6)
    0.179134

    References
    ----------
    Derived: geometry.
    """

    total_m3: float
    core_m3: float
    face_m3: float
    top_area_m2: float
    core_area_m2: float
    exposed_length_m: float
    thickness_m: float
    face_thickness_m: float
    base_depth_m: float
    narrowest_width_m: float
    narrowest_where: str
    form_width_m: float
    drop_m: float
    plan: Polygon
    core_plan: Polygon
    working: tuple

    @property
    def face_share(self):
        """Share of the volume that is face."""
        return self.face_m3 / self.total_m3

    @property
    def face_plan(self):
        """The band of face along the exposed edges, seen from above."""
        return self.plan.difference(self.core_plan)


def _face_band(piece, face_m):
    parts = [band(piece.outline.edges, piece.exposed, face_m)] if piece.exposed else []
    parts += [
        band(inside_out(cutout.outline.edges), cutout.exposed, face_m) for cutout in piece.cutouts if cutout.exposed
    ]
    return shapely.union_all(parts) if len(parts) > 1 else (parts[0] if parts else Polygon())


def _core(piece, face_band, face_m):
    core = piece.plan if face_band.is_empty else piece.plan.difference(face_band)
    parts = [part for part in shapely.get_parts(core) if part.area > _CRUMB_M2]
    if not parts:
        raise refuse("face thickness", face_m, "less; the face of the edges leaves no base between them")
    if len(parts) > 1:
        raise refuse("face thickness", face_m, f"less; the face of the edges cuts the base into {len(parts)} parts")
    return parts[0]


def _check_face(piece, face_m, narrow_m, where):
    if face_m >= piece.thickness_m:
        raise refuse("face thickness", face_m, f"less than the thickness, {show(piece.thickness_m, 'length')}")
    if face_m >= narrow_m / 2:
        rule = f"less than half of the narrowest strip, {show(narrow_m / 2, 'length')} ({where})"
        raise refuse("face thickness", face_m, rule)
    for drop in piece.drop:
        if face_m >= drop.width_m:
            rule = f"less than the return width of dropped edge {drop.edge!r}, {show(drop.width_m, 'length')}"
            raise refuse("face thickness", face_m, rule)


def split_layers(piece, face_thickness_m):
    """Split a piece into face and base.

    Face lies on the whole top and runs down every exposed edge, cut-out edges included; nothing against
    walls.

    Parameters
    ----------
    piece : Piece
        A checked piece [-].
    face_thickness_m : float
        Thickness of the face on top and edges [m].

    Returns
    -------
    Layers
        Volumes, plans and working [-].

    Raises
    ------
    ValueError
        When the face is as thick as the piece, as half its narrowest strip or as the return of a dropped
        edge, or when the faces of the edges meet, so that the base would fall apart.

    Notes
    -----
    base = (plan less the mitred band along exposed edges) x (thickness less face). A dropped edge adds its
    return width x (depth less thickness) along it; where two returns meet, the corner is counted once, as deep as
    the deeper one. There the face is on its outside, and on its ends where the edge round the corner is exposed
    too; the inside of the return and its underside are base: they lie against the form, are not trowelled and are
    not seen. The outside face runs down to the board, so its own thickness shows from below.

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> piece = build_piece(rectangle(2.43840, 0.64770), 0.0381, {"front", "left", "right"})
    >>> round(split_layers(piece, 0.00635).face_m3, 8)
    0.0107791

    References
    ----------
    Derived: geometry. What of a dropped edge is faced is common practice, no source.
    """
    face = float(require("face thickness", face_thickness_m, 0, unit="m", low_open=True))
    narrow, where = narrowest_strip(piece)
    _check_face(piece, face, narrow, where)
    face_band = _face_band(piece, face)
    core = _core(piece, face_band, face)
    drops = []
    for group, region in piece.drop_regions:
        core_region = shapely.difference(region, face_band, grid_size=SNAP_M)
        drops.append((group, region.area, core_region.area))
    working = layer_working(piece, face, core.area, drops)
    values = {step.name: step.value for step in working}
    return Layers(
        total_m3=values["total_volume_m3"],
        core_m3=values["core_volume_m3"],
        face_m3=values["face_volume_m3"],
        top_area_m2=piece.area_m2,
        core_area_m2=core.area,
        exposed_length_m=piece.exposed_length_m,
        thickness_m=piece.thickness_m,
        face_thickness_m=face,
        base_depth_m=piece.thickness_m - face,
        narrowest_width_m=narrow,
        narrowest_where=where,
        form_width_m=min([narrow, *(drop.width_m for drop in piece.drop)]),
        drop_m=piece.depth_m - piece.thickness_m,
        plan=piece.plan,
        core_plan=core,
        working=working,
    )


def rectangle_layers(length_m, width_m, thickness_m, face_thickness_m, front=1, right=1, back=1, left=1):
    """Split a plain rectangle into face and base; a short way for one number.

    Not for pieces with cut-outs or dropped edges: build the piece and use `split_layers`.

    Parameters
    ----------
    length_m, width_m, thickness_m : float
        Left to right, front to back, top to bottom [m].
    face_thickness_m : float
        Thickness of the face [m].
    front, right, back, left : bool or int
        Whether that edge is exposed: 1 or 0 [-].

    Returns
    -------
    Layers
        Volumes, plans and working [-].

    Raises
    ------
    ValueError
        As `build_piece` and `split_layers`.

    Examples
    --------
    >>> round(rectangle_layers(2.43840, 0.64770, 0.0381, 0.00635, back=0).core_m3, 8)
    0.0493942

    References
    ----------
    Derived: geometry.
    """
    flags = {"front": front, "right": right, "back": back, "left": left}
    exposed = {name for name, flag in flags.items() if flag}
    return split_layers(build_piece(rectangle(length_m, width_m), thickness_m, exposed), face_thickness_m)
