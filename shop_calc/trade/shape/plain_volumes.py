"""Volumes by plain arithmetic, for right angles and round ends: what the drawn piece is checked against.

These take numbers or arrays and know nothing of outlines; a job is computed by `layers.split_layers`.
"""

import numpy as np

from shop_calc.science.checks import require


def _positive(name, value, unit="m"):
    return require(name, value, 0, unit=unit, low_open=True)


def slab_volume_m3(length_m, width_m, thickness_m, cutout_area_m2=0.0, allowance_fraction=0.0):
    """Volume of a rectangular slab, less cut-outs, with an allowance.

    Parameters
    ----------
    length_m, width_m, thickness_m : float or array
        Sizes [m].
    cutout_area_m2 : float or array
        Area of all openings [m2].
    allowance_fraction : float or array
        Extra for waste, 0.05 for 5 % [-].

    Returns
    -------
    float or array
        Volume [m3].

    Raises
    ------
    ValueError
        When a size is not positive, or the cut-outs are as large as the slab.

    Examples
    --------
    >>> round(slab_volume_m3(2.1336, 0.66040, 0.0635, 0.33306385), 8)
    0.06832381

    References
    ----------
    Derived: geometry.
    """
    area = _positive("length", length_m) * _positive("width", width_m)
    area = area - require("area of the cut-outs", cutout_area_m2, 0, unit="m2")
    extra = 1.0 + require("allowance", allowance_fraction, 0)
    if np.any(np.asarray(area) <= 0):
        raise ValueError("area of the cut-outs: it must be less than the area of the slab")
    return area * _positive("thickness", thickness_m) * extra


def racetrack_area_m2(length_m, width_m):
    """Area of a racetrack: a rectangle with two half-round ends.

    Parameters
    ----------
    length_m : float or array
        Over all, ends included [m].
    width_m : float or array
        Width, the diameter of the ends [m].

    Returns
    -------
    float or array
        Area [m2].

    Raises
    ------
    ValueError
        When a size is not positive, or the length less than the width.

    Examples
    --------
    >>> float(round(racetrack_area_m2(2.43840, 0.81280), 6))
    1.840156

    References
    ----------
    Derived: geometry.
    """
    length, width = _positive("length", length_m), _positive("width", width_m)
    if np.any(np.asarray(length) < np.asarray(width)):
        raise ValueError("length: it must be at least the width; a racetrack is longer than wide")
    return (length - width) * width + np.pi * width**2 / 4


def racetrack_volume_m3(length_m, width_m, thickness_m):
    """Volume of a racetrack top.

    Parameters
    ----------
    length_m, width_m : float or array
        As in `racetrack_area_m2` [m].
    thickness_m : float or array
        Thickness [m].

    Returns
    -------
    float or array
        Volume [m3].

    Raises
    ------
    ValueError
        When a size is not positive, or the length less than the width.

    Examples
    --------
    >>> float(round(racetrack_volume_m3(2.43840, 0.81280, 0.050800), 7))
    0.0934799

    References
    ----------
    Derived: geometry.
    """
    return racetrack_area_m2(length_m, width_m) * _positive("thickness", thickness_m)


def band_area_m2(face_thickness_m, exposed_length_m, outer_corner_count=0, inner_corner_count=0):
    """Area, seen from above, of the band of face along exposed edges that meet at right angles.

    Not for round or slanting edges, nor for edges shorter than the face is thick.

    Parameters
    ----------
    face_thickness_m : float or array
        Thickness of the face [m].
    exposed_length_m : float or array
        Length of the exposed edges [m].
    outer_corner_count, inner_corner_count : int or array
        Corners where two exposed edges meet: outer ones, where the bands share a square, and inner ones (an
        L, a cut-out), where a square is added [-].

    Returns
    -------
    float or array
        Area [m2].

    Raises
    ------
    ValueError
        When an entry is negative.

    Examples
    --------
    >>> band_area_m2(1.0000, 40.000, 5, 1)
    36.0

    References
    ----------
    Derived: geometry.
    """
    face = require("face thickness", face_thickness_m, 0, unit="m")
    length = require("exposed length", exposed_length_m, 0, unit="m")
    corners = require("outer corners", outer_corner_count, 0) - require("inner corners", inner_corner_count, 0)
    return face * length - corners * face**2


def edge_face_volume_m3(thickness_m, face_thickness_m, exposed_length_m, outer_corner_count=0, inner_corner_count=0):
    """Volume of face on exposed edges, below the face of the top.

    As `band_area_m2`.

    Parameters
    ----------
    thickness_m, face_thickness_m : float or array
        Of the piece and of the face [m].
    exposed_length_m : float or array
        Length of the exposed edges [m].
    outer_corner_count, inner_corner_count : int or array
        As in `band_area_m2` [-].

    Returns
    -------
    float or array
        Volume [m3].

    Raises
    ------
    ValueError
        When an entry is negative or the face as thick as the piece.

    Examples
    --------
    >>> round(edge_face_volume_m3(1.5000, 0.25000, 92.000, 0, 4), 4)
    29.0625

    References
    ----------
    Derived: geometry.
    """
    depth = _positive("thickness", thickness_m) - require("face thickness", face_thickness_m, 0, unit="m")
    if np.any(np.asarray(depth) <= 0):
        raise ValueError("face thickness: it must be less than the thickness of the piece")
    return band_area_m2(face_thickness_m, exposed_length_m, outer_corner_count, inner_corner_count) * depth


def face_volume_m3(
    area_m2, thickness_m, face_thickness_m, exposed_length_m, outer_corner_count=0, inner_corner_count=0
):
    """Volume of face on the top and on exposed edges that meet at right angles.

    As `band_area_m2`.

    Parameters
    ----------
    area_m2 : float or array
        Area of the top, cut-outs taken away [m2].
    thickness_m, face_thickness_m : float or array
        Of the piece and of the face [m].
    exposed_length_m : float or array
        Length of the exposed edges [m].
    outer_corner_count, inner_corner_count : int or array
        As in `band_area_m2` [-].

    Returns
    -------
    float or array
        Volume [m3].

    Raises
    ------
    ValueError
        When an entry is negative or the face as thick as the piece.

    Examples
    --------
    >>> round(face_volume_m3(2448.0, 1.5000, 0.25000, 147.00, 2, 0), 5)
    657.78125

    References
    ----------
    Derived: t A + t P (T - t) - (c_out - c_in) t^2 (T - t).
    """
    top = require("area of the top", area_m2, 0, unit="m2", low_open=True) * face_thickness_m
    edges = edge_face_volume_m3(thickness_m, face_thickness_m, exposed_length_m, outer_corner_count, inner_corner_count)
    return top + edges


def round_hole_face_volume_m3(diameter_m, thickness_m, face_thickness_m):
    """Volume of face round an exposed round hole, below the face of the top.

    Parameters
    ----------
    diameter_m : float or array
        Diameter of the finished hole [m].
    thickness_m, face_thickness_m : float or array
        Of the piece and of the face [m].

    Returns
    -------
    float or array
        Volume [m3].

    Raises
    ------
    ValueError
        When an entry is not positive or the face as thick as the piece.

    Examples
    --------
    >>> float(round(round_hole_face_volume_m3(1.3750, 1.5000, 0.25000), 6))
    1.59534

    References
    ----------
    Derived: pi t (d + t) (T - t).
    """
    face = _positive("face thickness", face_thickness_m)
    depth = _positive("thickness", thickness_m) - face
    if np.any(np.asarray(depth) <= 0):
        raise ValueError("face thickness: it must be less than the thickness of the piece")
    return np.pi * face * (_positive("diameter", diameter_m) + face) * depth
