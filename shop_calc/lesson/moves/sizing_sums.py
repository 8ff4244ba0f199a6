"""Sums of lesson 01: the answers of its questions and their working, line by line."""

from math import pi

from shop_calc.trade.shape.form import side_height_m, slab_thickness_m
from shop_calc.trade.shape.layers import rectangle_layers
from shop_calc.trade.shape.plain_volumes import face_volume_m3, racetrack_volume_m3, slab_volume_m3
from shop_calc.trade.working import Step

_INCH_M = 0.0254
TOPS = {"a tile, 12 by 12 in": (12, 12), "the bench top, 60 by 15 in": (60, 15), "a sheet, 96 by 48 in": (96, 48)}


def counter_face_m3(length_m, width_m, thickness_m, face_m, ends):
    """Face of a counter with its back against a wall.

    Parameters
    ----------
    length_m, width_m, thickness_m, face_m : float
        Sizes of the counter and thickness of its face [m].
    ends : int
        How many ends show [-].

    Returns
    -------
    float
        Volume of face [m3].

    Examples
    --------
    >>> round(counter_face_m3(2.43840, 0.64770, 0.0381, 0.00635, 2), 7)
    0.0107791

    References
    ----------
    Derived: geometry.
    """
    exposed = length_m + ends * width_m
    return face_volume_m3(length_m * width_m, thickness_m, face_m, exposed, ends)


def counter_steps(length_m, width_m, thickness_m, face_m, ends):
    """Show how the face of a counter is worked out.

    Parameters
    ----------
    length_m, width_m, thickness_m, face_m : float
        Sizes of the counter and thickness of its face [m].
    ends : int
        How many ends show [-].

    Returns
    -------
    tuple of Step
        The last one is the answer [-].

    Examples
    --------
    >>> round(float(counter_steps(2.43840, 0.64770, 0.0381, 0.00635, 2)[-1].value), 6)
    0.010779

    References
    ----------
    Derived: geometry.
    """
    whole = length_m * width_m * thickness_m
    face = counter_face_m3(length_m, width_m, thickness_m, face_m, ends)
    sizes = (("L", length_m, "m"), ("W", width_m, "m"), ("T", thickness_m, "m"))
    base_in = (*sizes, ("t", face_m, "m"), ("n", float(ends), "-"))
    return (
        _step("whole_m3", "V", "L * W * T", sizes, whole, "m3", "the whole counter"),
        _step("base_m3", "V_base", "(L - n * t) * (W - t) * (T - t)", base_in, whole - face, "m3",
              "the base, one face thickness short of each edge that shows, and of the top"),
        _step("face_m3", "V_face", "V - V_base", (("V", whole, "m3"), ("V_base", whole - face, "m3")), face, "m3",
              "what is left is face"),
    )  # fmt: skip


def _step(name, symbol, formula, inputs, value, unit, words):
    return Step(name, symbol, formula, tuple(inputs), float(value), unit, "derived", "geometry", words)


def box_steps(length_m, width_m, thickness_m):
    """Show how a plain slab is worked out.

    Parameters
    ----------
    length_m, width_m, thickness_m : float
        Sizes [m].

    Returns
    -------
    tuple of Step
        The last one is the answer [-].

    Examples
    --------
    >>> round(float(box_steps(1.5240, 0.60960, 0.0381)[-1].value), 6)
    0.035396

    References
    ----------
    Derived: geometry.
    """
    sizes = (("L", length_m, "m"), ("W", width_m, "m"), ("T", thickness_m, "m"))
    volume = slab_volume_m3(length_m, width_m, thickness_m)
    return (_step("volume_m3", "V", "L * W * T", sizes, volume, "m3", "length times width times thickness"),)


def racetrack_steps(length_m, width_m, thickness_m):
    """Show how a racetrack is worked out.

    Parameters
    ----------
    length_m, width_m, thickness_m : float
        Sizes, the length over all [m].

    Returns
    -------
    tuple of Step
        The last one is the answer [-].

    Examples
    --------
    >>> round(float(racetrack_steps(2.43840, 0.81280, 0.0508)[-1].value), 6)
    0.09348

    References
    ----------
    Derived: geometry.
    """
    middle, ends = (length_m - width_m) * width_m, pi * width_m**2 / 4
    both = (("L", length_m, "m"), ("W", width_m, "m"))
    parts = (("A_1", middle, "m2"), ("A_2", ends, "m2"), ("T", thickness_m, "m"))
    volume = racetrack_volume_m3(length_m, width_m, thickness_m)
    return (
        _step("middle_m2", "A_1", "(L - W) * W", both, middle, "m2", "the rectangle between the round ends"),
        _step("ends_m2", "A_2", "pi * (W / 2) ** 2", both[1:], ends, "m2",
              "both round ends together: one circle, its radius half the width"),
        _step("volume_m3", "V", "(A_1 + A_2) * T", parts, volume, "m3", "area times thickness"),
    )  # fmt: skip


def lapped_side_m(thickness_m, board_m):
    """Height of a form side that laps the base board.

    Parameters
    ----------
    thickness_m, board_m : float
        Of the piece and of the base board [m].

    Returns
    -------
    float
        Height [m].

    Examples
    --------
    >>> round(lapped_side_m(0.050800, 0.01905), 6)
    0.06985

    References
    ----------
    Derived: geometry.
    """
    return side_height_m(thickness_m, board_m)


def side_steps(thickness_m, board_m):
    """Show how the height of a side is worked out.

    Parameters
    ----------
    thickness_m, board_m : float
        Of the piece and of the base board [m].

    Returns
    -------
    tuple of Step
        The last one is the answer [-].

    Examples
    --------
    >>> round(float(side_steps(0.050800, 0.01905)[-1].value), 6)
    0.06985

    References
    ----------
    Derived: geometry.
    """
    inputs = (("T", thickness_m, "m"), ("b", board_m, "m"))
    height = lapped_side_m(thickness_m, board_m)
    return (_step("height_m", "H", "T + b", inputs, height, "m", "the piece and the edge of the base board"),)


def sink_volume_m3(length_m, width_m, thickness_m, sink_length_m, sink_width_m):
    """Volume of a counter with a sink opening.

    Parameters
    ----------
    length_m, width_m, thickness_m, sink_length_m, sink_width_m : float
        Sizes of counter and opening [m].

    Returns
    -------
    float
        Volume [m3].

    Examples
    --------
    >>> round(sink_volume_m3(2.1336, 0.66040, 0.0635, 0.7493, 0.4445), 8)
    0.06832381

    References
    ----------
    Derived: geometry.
    """
    return slab_volume_m3(length_m, width_m, thickness_m, sink_length_m * sink_width_m)


def sink_steps(length_m, width_m, thickness_m, sink_length_m, sink_width_m):
    """Show how a counter with an opening is worked out.

    Parameters
    ----------
    length_m, width_m, thickness_m, sink_length_m, sink_width_m : float
        Sizes of counter and opening [m].

    Returns
    -------
    tuple of Step
        The last one is the answer [-].

    Examples
    --------
    >>> round(float(sink_steps(2.1336, 0.66040, 0.0635, 0.7493, 0.4445)[-1].value), 6)
    0.068324

    References
    ----------
    Derived: geometry.
    """
    outer, hole = length_m * width_m, sink_length_m * sink_width_m
    sizes = (("L", length_m, "m"), ("W", width_m, "m"))
    cut = (("l", sink_length_m, "m"), ("w", sink_width_m, "m"))
    parts = (("A_0", outer, "m2"), ("A_1", hole, "m2"), ("T", thickness_m, "m"))
    return (
        _step("outline_m2", "A_0", "L * W", sizes, outer, "m2", "area inside the outline"),
        _step("sink_m2", "A_1", "l * w", cut, hole, "m2", "area of the opening"),
        _step("volume_m3", "V", "(A_0 - A_1) * T", parts, (outer - hole) * thickness_m, "m3",
              "the area that is left, times the thickness"),
    )  # fmt: skip


def ripped_volume_m3(side_m, height_m, board_m):
    """Volume of a square slab in a form whose sides were ripped to a height and lap the base board.

    Parameters
    ----------
    side_m, height_m, board_m : float
        Side of the square, height of the form sides, thickness of the base board [m].

    Returns
    -------
    float
        Volume [m3].

    Examples
    --------
    >>> round(ripped_volume_m3(0.91440, 0.0635, 0.01905), 8)
    0.03716586

    References
    ----------
    Derived: geometry.
    """
    return slab_volume_m3(side_m, side_m, slab_thickness_m(height_m, board_m))


def ripped_steps(side_m, height_m, board_m):
    """Show how a slab in ripped sides is worked out.

    Parameters
    ----------
    side_m, height_m, board_m : float
        Side of the square, height of the form sides, thickness of the base board [m].

    Returns
    -------
    tuple of Step
        The last one is the answer [-].

    Examples
    --------
    >>> round(float(ripped_steps(0.91440, 0.0635, 0.01905)[-1].value), 6)
    0.037166

    References
    ----------
    Derived: geometry.
    """
    thick = slab_thickness_m(height_m, board_m)
    inputs = (("H", height_m, "m"), ("b", board_m, "m"))
    sizes = (("s", side_m, "m"), ("T", thick, "m"))
    volume = ripped_volume_m3(side_m, height_m, board_m)
    return (
        _step("thickness_m", "T", "H - b", inputs, thick, "m", "what the sides leave above the base board"),
        _step("volume_m3", "V", "s * s * T", sizes, volume, "m3", "side times side times thickness"),
    )


def tops_by_face_share():
    """Order three tops by their share of face, largest share first.

    All 1-1/2 in thick with 1/4 in of face on the top and on four edges.

    Returns
    -------
    tuple of str
        Names of the tops [-].

    Examples
    --------
    >>> tops_by_face_share()[0]
    'a tile, 12 by 12 in'

    References
    ----------
    Derived: geometry.
    """
    sizes = (1.5 * _INCH_M, 0.25 * _INCH_M)
    share = {name: rectangle_layers(a * _INCH_M, b * _INCH_M, *sizes).face_share for name, (a, b) in TOPS.items()}
    return tuple(sorted(share, key=share.get, reverse=True))
