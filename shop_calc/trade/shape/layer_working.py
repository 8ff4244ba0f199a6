"""The working of the two layer volumes, line by line."""

import math

from shop_calc.trade.shape.bands import inside_out
from shop_calc.trade.shape.drop_words import listed
from shop_calc.trade.working import Step

_GEOMETRY = ("derived", "geometry")


def _step(name, symbol, formula, inputs, value, unit, words, origin=_GEOMETRY):
    return Step(name, symbol, formula, tuple(inputs), float(value), unit, *origin, words)


def _given(name, symbol, value, words):
    return _step(name, symbol, "by measuring", (), value, "m", words, ("given", "the job"))


def _square_corners(piece):
    """(outer, inner) corners between exposed edges; None when one is round or meets another askew."""
    outer = inner = 0
    rings = [(piece.outline.edges, piece.exposed)]
    rings += [(inside_out(cutout.outline.edges), cutout.exposed) for cutout in piece.cutouts]
    for edges, exposed in rings:
        if not exposed:
            continue
        if not all(edge.straight for edge in edges):
            return None
        for first, second in zip(edges, (*edges[1:], edges[0]), strict=True):
            (ax, ay), (bx, by) = first.coords
            (cx, cy), (dx, dy) = second.coords
            square = abs((bx - ax) * (dx - cx) + (by - ay) * (dy - cy)) <= 1e-12 * first.length_m * second.length_m
            if not square and (first.name in exposed or second.name in exposed):
                return None
            if first.name in exposed and second.name in exposed:
                left_turn = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx) > 0
                outer, inner = outer + left_turn, inner + (not left_turn)
    return outer, inner


def _area_steps(piece):
    parts = [("outline", "A_0", piece.outline, "area inside the outer outline")]
    for i, cutout in enumerate(piece.cutouts, 1):
        parts.append((f"cutout_{i}", f"A_{i}", cutout.outline, f"area of cut-out {cutout.name!r}"))
    steps = []
    for name, symbol, outline, words in parts:
        inputs = [(letter, value, "m") for letter, value in outline.sizes]
        steps.append(_step(f"{name}_area_m2", symbol, outline.area_formula, inputs, outline.area_m2, "m2", words))
    terms = [(step.symbol, step.value, "m2") for step in steps]
    formula = " - ".join(symbol for symbol, _, _ in terms)
    words = "area of the top, cut-outs taken away"
    return [*steps, _step("top_area_m2", "A", formula, terms, piece.area_m2, "m2", words)]


def _core_area_step(piece, face_m, core_area_m2, area_m2, length_m):
    words = "area of the base seen from above"
    corners = _square_corners(piece)
    if corners is not None:
        outer, inner = corners
        closed = area_m2 - face_m * length_m + (outer - inner) * face_m**2
        # Where bands of edges shorter than the face overlap, the short formula counts twice.
        if math.isclose(closed, core_area_m2, rel_tol=1e-11):
            inputs = (("A", area_m2, "m2"), ("t", face_m, "m"), ("P", length_m, "m"), ("c_out", outer, "-"),
                      ("c_in", inner, "-"))  # fmt: skip
            formula = "A - t * P + (c_out - c_in) * t ** 2"
            return _step("core_area_m2", "A_core", formula, inputs, core_area_m2, "m2", words)
    inputs = (("A", area_m2, "m2"), ("t", face_m, "m"))
    formula = "by taking the mitred band of width t along the exposed edges off the plan"
    return _step("core_area_m2", "A_core", formula, inputs, core_area_m2, "m2", words)


def layer_working(piece, face_m, core_area_m2, drops):
    """Work the volumes of face and base out, keeping every line.

    Not a check of the entries: `split_layers` does that.

    Parameters
    ----------
    piece : Piece
        A checked piece [-].
    face_m : float
        Thickness of the face [m].
    core_area_m2 : float
        Area of the base seen from above [m2].
    drops : sequence of (DropEdges, area, core area)
        Each dropped region with its area and the part of it that is base [m2].

    Returns
    -------
    tuple of Step
        Ends with total_volume_m3, core_volume_m3, face_volume_m3 and face_share [-].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.piece import build_piece
    >>> tile = build_piece(rectangle(0.30000, 0.30000), 0.040000)
    >>> round(layer_working(tile, 0.010000, 0.090000, [])[-2].value, 7)
    0.0009

    References
    ----------
    Derived: geometry.
    """
    thick, length = piece.thickness_m, piece.exposed_length_m
    steps = [
        _given("thickness_m", "T", thick, "thickness of the piece"),
        _given("face_thickness_m", "t", face_m, "thickness of the face"),
        *_area_steps(piece),
    ]
    area = steps[-1].value
    steps.append(_step("exposed_length_m", "P", "by adding up the exposed edges", (), length, "m",
                       "length of the exposed edges"))  # fmt: skip
    steps.append(_core_area_step(piece, face_m, core_area_m2, area, length))
    top_inputs = [("A", area, "m2"), ("T", thick, "m")]
    core_inputs = [("A_core", core_area_m2, "m2"), ("T", thick, "m"), ("t", face_m, "m")]
    total, core = area * thick, core_area_m2 * (thick - face_m)
    total_formula, core_formula = "A * T", "A_core * (T - t)"
    for i, (group, region, core_region) in enumerate(drops, 1):
        deep = group[0].depth_m
        words = f"dropped edge {listed(drop.edge for drop in group)}: "
        by = "by taking the strip of its return width along the edge"
        by += ", without what a deeper drop has" if i > 1 else ""
        steps += [
            _given(f"drop_{i}_depth_m", f"D_{i}", deep, words + "depth"),
            _step(f"drop_{i}_area_m2", f"B_{i}", by, (), region, "m2", words + "area seen from below"),
            _step(f"drop_{i}_core_area_m2", f"K_{i}", "by taking the face band off that strip",
                  (("t", face_m, "m"),), core_region, "m2", words + "base in it seen from below"),
        ]  # fmt: skip
        total += region * (deep - thick)
        core += core_region * (deep - thick)
        total_formula += f" + B_{i} * (D_{i} - T)"
        core_formula += f" + K_{i} * (D_{i} - T)"
        top_inputs += [(f"B_{i}", region, "m2"), (f"D_{i}", deep, "m")]
        core_inputs += [(f"K_{i}", core_region, "m2"), (f"D_{i}", deep, "m")]
    face = total - core
    both = (("V", total, "m3"), ("V_core", core, "m3"))
    return (
        *steps,
        _step("total_volume_m3", "V", total_formula, top_inputs, total, "m3", "volume of the piece"),
        _step("core_volume_m3", "V_core", core_formula, core_inputs, core, "m3", "volume of the base"),
        _step("face_volume_m3", "V_face", "V - V_core", both, face, "m3", "volume of the face"),
        _step("face_share", "s", "V_face / V", (("V_face", face, "m3"), both[0]), face / total, "-",
              "share of the volume that is face"),
    )  # fmt: skip
