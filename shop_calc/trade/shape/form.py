"""The form: sides, base board, knock-outs, caulk, screws, push of the fresh mix, load on the table."""

import math
from dataclasses import dataclass

from shop_calc.science.checks import require
from shop_calc.science.loads import GRAVITY_M_S2, liquid_head_pa, liquid_head_push_kg_m
from shop_calc.trade.shape.form_parts import (
    BOARD_M,
    FRESH_DENSITY_KG_M3,
    CutRow,
    mass_on_table_kg,
    side_height_m,
    slab_thickness_m,
)
from shop_calc.trade.shape.form_returns import filler_rows, return_faces
from shop_calc.trade.shape.form_sides import form_sides
from shop_calc.trade.working import Step
from shop_calc.units import show

__all__ = ["CutRow", "Form", "build_form", "mass_on_table_kg", "side_height_m", "slab_thickness_m"]

STRIP_M = 0.003175  # practice: 1/8 in hardboard or plastic bends round a table end
SCREW_SPACING_M = 0.2032  # practice: 8 in
CORNER_SCREWS = 2  # practice: at each corner where two boards meet
BASE_MARGIN_M = 0.0508  # practice: 2 in of base board outside sides that stand on it
TAPER_M = 0.0015875  # practice: a knock-out is 1/16 in wider at the top, all round
_PRACTICE = ("practice", "common practice, no source")


@dataclass(frozen=True)
class Form:
    """What is cut, bought and borne for one piece.

    Parameters
    ----------
    rows : tuple of CutRow
        Cut list: sides, base board, filler boards and faces of returns, knock-outs [-].
    side_height_m : float
        Height of every side [m].
    depth_m : float
        Greatest depth of the mix [m].
    caulk_length_m : float
        Length of all corners to be sealed [m].
    screw_count : int
        Screws through the sides, from outside [-].
    pressure_pa : float
        Largest sideways pressure, at the bottom [Pa].
    push_kg_m : float
        Total sideways push, as the weight it equals per length of side [kg/m].
    mass_kg : float
        Mass of the fresh piece on the table, without the form [kg].
    density_kg_m3 : float
        Density of what pushes on the sides [kg/m3].
    working : tuple of Step
        How the numbers came about [-].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.piece import build_piece
    >>> round(build_form(build_piece(rectangle(1.524, 0.381), 0.050800)).side_height_m, 6)
    0.06985

    References
    ----------
    Common practice, no source.
    """

    rows: tuple
    side_height_m: float
    depth_m: float
    caulk_length_m: float
    screw_count: int
    pressure_pa: float
    push_kg_m: float
    mass_kg: float
    density_kg_m3: float
    working: tuple


def _side_rows(sides, height_m, board_m, strip_m):
    alike = {}
    for side in sides:
        alike.setdefault((side.flexible, round(side.length_m, 7), side.note), []).append(side.edge)
    return [
        CutRow(
            f"{'strip' if flexible else 'side'}: {', '.join(names)}",
            len(names),
            length,
            height_m,
            strip_m if flexible else board_m,
            note,
        )
        for (flexible, length, note), names in alike.items()
    ]


def _base_row(piece, base_m, board_m, sides_lap_base):
    length, width = piece.outline.box_m
    if not sides_lap_base:
        margin = 2.0 * (board_m + BASE_MARGIN_M)
        note = f"the sides stand on it; {show(BASE_MARGIN_M, 'length')} left outside them"
    else:
        margin = 0.0
        plain = piece.outline.shape == "rectangle"
        note = "exactly the size of the piece" if plain else "cut to the outline of the piece"
        note += ": the sides lap its edge"
    return CutRow("base board", 1, length + margin, width + margin, base_m, f"{note}; coated, level, no twist")


def _corners(outline):
    """What a cut-out's two sizes leave out of its shape."""
    radius = dict(outline.sizes).get("r")
    if outline.shape == "rectangle":
        return f"corners rounded to {show(radius, 'length')}; " if radius else ""
    return {"circle": "round; ", "racetrack": "both ends round; "}.get(outline.shape, "cut to its outline; ")


def _knock_out_rows(piece):
    note = f"size at the bottom; {show(TAPER_M, 'length')} wider all round at the top, to lift out; wrapped"
    return [
        CutRow(f"knock-out {cut.name}", 1, *cut.outline.box_m, piece.thickness_m, _corners(cut.outline) + note)
        for cut in piece.cutouts
    ]


def _caulk_step(piece, strip_m):
    holes = math.fsum(cutout.outline.perimeter_m for cutout in piece.cutouts)
    filler = math.fsum(face.along_mix_m for face in return_faces(piece, strip_m))
    around, corners = piece.outline.perimeter_m, len(piece.outline.edges)
    inputs = (
        ("P_0", around, "m"),
        ("n_0", corners, "-"),
        ("D", piece.depth_m, "m"),
        ("P_h", holes, "m"),
        ("P_f", filler, "m"),
    )
    length = around + corners * piece.depth_m + holes + filler
    words = "caulk: round the bottom, up each joint of the sides, round knock-outs and filler boards"
    formula = "P_0 + n_0 * D + P_h + P_f"
    return Step("caulk_length_m", "L_c", formula, inputs, length, "m", "derived", "geometry", words)


def _screw_step(sides, spacing_m):
    rows = sum(max(2, math.ceil(side.length_m / spacing_m - 1e-9) + 1) for side in sides)
    bent = [side.flexible for side in sides]
    corners = sum(not (a or b) for a, b in zip(bent, bent[1:] + bent[:1], strict=True)) if len(bent) > 1 else 0
    inputs = (("n_s", rows, "-"), ("n_c", corners, "-"), ("k", CORNER_SCREWS, "-"))
    words = "screws from outside: a row along each side, and more where two boards meet"
    count = rows + corners * CORNER_SCREWS
    return Step("screw_count", "n", "n_s + n_c * k", inputs, count, "-", *_PRACTICE, words)


def _load_steps(depth_m, volume_m3, density_kg_m3, mean_density_kg_m3):
    pressure, push = liquid_head_pa(depth_m, density_kg_m3), liquid_head_push_kg_m(depth_m, density_kg_m3)
    mass = mass_on_table_kg(volume_m3, mean_density_kg_m3)
    rho, deep = ("rho", density_kg_m3, "kg/m3"), ("D", depth_m, "m")
    mean = ("rho_m", mean_density_kg_m3, "kg/m3")
    gravity, volume = ("g", GRAVITY_M_S2, "m/s2"), ("V", volume_m3, "m3")
    head = ("read", "ACI 347 as explained by M.K. Hurd: full liquid head")
    derived = ("derived", "geometry")
    at_bottom = "largest sideways pressure, at the bottom"
    total = "total sideways push as a weight per length of side; it acts a third of the depth up"
    return (
        Step("form_pressure_pa", "p", "rho * g * D", (rho, gravity, deep), pressure, "Pa", *head, at_bottom),
        Step("form_push_kg_m", "q", "rho * D ** 2 / 2", (rho, deep), push, "kg/m", *derived, total),
        Step(
            "mass_on_table_kg",
            "m",
            "V * rho_m",
            (volume, mean),
            mass,
            "kg",
            *derived,
            "fresh piece on the table",
        ),
    )


def build_form(
    piece,
    base_board_m=BOARD_M,
    side_board_m=BOARD_M,
    density_kg_m3=FRESH_DENSITY_KG_M3,
    sides_lap_base=True,
    strip_m=STRIP_M,
    screw_spacing_m=SCREW_SPACING_M,
    mean_density_kg_m3=None,
):
    """Work out the form of a piece.

    Not for tall thin forms filled in steps, nor for forms that people walk on: such formwork is designed.

    Parameters
    ----------
    piece : Piece
        A checked piece [-].
    base_board_m, side_board_m : float
        Thickness of the board under the piece and of the sides [m].
    density_kg_m3 : float
        Density of the heavier fresh mix, which pushes on the sides [kg/m3].
    sides_lap_base : bool
        True for sides screwed to the edge of the base board, False for sides that stand on it [-].
    strip_m : float
        Thickness of a strip bent round curves, and of those that close returns [m].
    screw_spacing_m : float
        Greatest distance between screws along a side [m].
    mean_density_kg_m3 : float or None
        Density of the whole piece, both layers; that of the heavier mix when left out [kg/m3].

    Returns
    -------
    Form
        Cut list, caulk, screws, push, mass and working [-].

    Raises
    ------
    ValueError
        When a thickness, the spacing or the density is not positive.

    Notes
    -----
    Corner laps and bent strips: see `form_sides`. With dropped edges all sides are as high as the deepest drop, and
    filler boards carry the thin part, see `form_returns`; each is listed with the size to saw, clear of the returns.
    A knock-out has the drawn size at its bottom, where the opening is tightest.

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.piece import build_piece
    >>> form = build_form(build_piece(rectangle(1.52400, 0.38100), 0.0381))
    >>> [(row.name, row.count, round(row.length_m, 4)) for row in form.rows[:2]]
    [('side: front, back', 2, 1.524), ('side: right, left', 2, 0.4191)]

    References
    ----------
    ACI 347 as explained by M.K. Hurd for the push (full liquid head); the rest common practice, no source.
    """
    base = float(require("base board", base_board_m, 0, unit="m", low_open=True))
    board = float(require("side board", side_board_m, 0, unit="m", low_open=True))
    strip = float(require("bent strip", strip_m, 0, unit="m", low_open=True))
    spacing = float(require("screw spacing", screw_spacing_m, 0, unit="m", low_open=True))
    density = float(require("density", density_kg_m3, 0, unit="kg/m3", low_open=True))
    mean = density if mean_density_kg_m3 is None else mean_density_kg_m3
    mean = float(require("mean density", mean, 0, unit="kg/m3", low_open=True))
    lap = base if sides_lap_base else 0.0
    height = side_height_m(piece.depth_m, lap)
    words = "height of every side; b is the base board where the sides lap it"
    inputs = (("D", piece.depth_m, "m"), ("b", lap, "m"))
    height_step = Step("side_height_m", "H", "D + b", inputs, height, "m", "derived", "geometry", words)
    sides = form_sides(piece.outline, board, strip)
    caulk, screws = _caulk_step(piece, strip), _screw_step(sides, spacing)
    pressure, push, mass = _load_steps(piece.depth_m, piece.volume_m3, density, mean)
    return Form(
        rows=(
            *_side_rows(sides, height, board, strip),
            _base_row(piece, base, board, sides_lap_base),
            *filler_rows(piece, strip),
            *_knock_out_rows(piece),
        ),
        side_height_m=height,
        depth_m=piece.depth_m,
        caulk_length_m=caulk.value,
        screw_count=int(screws.value),
        pressure_pa=pressure.value,
        push_kg_m=push.value,
        mass_kg=mass.value,
        density_kg_m3=density,
        working=(height_step, *(side.working for side in sides), caulk, screws, pressure, push, mass),
    )
