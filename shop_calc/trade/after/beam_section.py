"""The section of a piece on a cut across it: material, moments, and how far a dropped edge is pulled."""

import numpy as np
import shapely


def ring_edges(polygon):
    """Edges of a polygon, outside anticlockwise and holes clockwise.

    Parameters
    ----------
    polygon : shapely Polygon
        Seen from above [m].

    Returns
    -------
    ndarray of shape (n, 2, 2)
        Start and end of each edge [m].

    Examples
    --------
    >>> from shapely.geometry import box
    >>> ring_edges(box(0, 0, 2, 1)).shape
    (4, 2, 2)

    References
    ----------
    Derived: geometry.
    """
    rings = []
    for number, ring in enumerate((polygon.exterior, *polygon.interiors)):
        points = shapely.get_coordinates(ring)
        turned = np.sum(points[:-1, 0] * points[1:, 1] - points[1:, 0] * points[:-1, 1]) > 0
        points = points if turned == (number == 0) else points[::-1]
        rings.append(np.stack((points[:-1], points[1:]), axis=1))
    return np.concatenate(rings)


def _crossings(edges, x):
    """Height at which each edge crosses each cut, and the way it runs there: 1 to the right, -1 to the left, 0 not."""
    (x0, y0), (x1, y1) = edges[:, 0].T, edges[:, 1].T
    run = x1 - x0
    crossed = (np.minimum(x0, x1) <= x[:, np.newaxis]) & (x[:, np.newaxis] < np.maximum(x0, x1))
    slope = np.divide(y1 - y0, run, out=np.zeros_like(run), where=run != 0)
    return y0 + (x[:, np.newaxis] - x0) * slope, np.where(crossed, np.sign(run), 0.0)


def width_moments(edges, x, orders=(0,)):
    """Integrals of y to a power over the material on each cut; the one of order 0 is the width.

    Parameters
    ----------
    edges : ndarray of shape (n, 2, 2)
        As `ring_edges` gives them [m].
    x : ndarray of shape (cuts,)
        Places of the cuts [m].
    orders : tuple of int
        Powers of y [-].

    Returns
    -------
    list of ndarray of shape (cuts,)
        One for each order [m, m2, m3].

    Examples
    --------
    >>> from shapely.geometry import box
    >>> [f"{float(part[0]):.4f}" for part in width_moments(ring_edges(box(0, 1, 2, 3)), np.array([1.0]), (0, 1, 2))]
    ['2.0000', '4.0000', '8.6667']

    Notes
    -----
    Lower edges run to the right, upper ones to the left.

    References
    ----------
    Derived: geometry.
    """
    height, way = _crossings(edges, x)
    return [-np.sum(way * height ** (order + 1), axis=1) / (order + 1) for order in orders]


def strips_at(edges, x):
    """List the strips of material on one cut.

    Parameters
    ----------
    edges : ndarray of shape (n, 2, 2)
        As `ring_edges` gives them [m].
    x : float
        Place of the cut [m].

    Returns
    -------
    tuple of (low, high)
        From the lowest up [m].

    Examples
    --------
    >>> from shapely.geometry import box
    >>> strips_at(ring_edges(box(0, 1, 2, 3)), 1.0)
    ((1.0, 3.0),)

    References
    ----------
    Derived: geometry.
    """
    height, way = _crossings(edges, np.array([x]))
    heights = np.sort(height[way != 0])
    return tuple((float(low), float(high)) for low, high in heights.reshape(-1, 2))


def _extent(edges, x):
    height, way = _crossings(edges, x)
    low = np.min(np.where(way != 0, height, np.inf), axis=1)
    return low, np.max(np.where(way != 0, height, -np.inf), axis=1)


def section_moduli_m3(plan, ribs, thickness_m, x):
    """Section modulus of every cut, for a piece that sags and for one that hogs.

    A dropped edge never counts as help: where the section with its drops is the stronger one, the plate without them
    is taken. Where its tip hangs so far from the middle of the section that it is pulled harder than the plate, that
    counts.

    Parameters
    ----------
    plan : ndarray of shape (n, 2, 2)
        Edges of the whole piece, as `ring_edges` gives them [m].
    ribs : sequence of (ndarray, float)
        Edges and depth, top to bottom, of each part that is deeper [m].
    thickness_m : float
        Thickness of the rest [m].
    x : ndarray of shape (cuts,)
        Places of the cuts [m].

    Returns
    -------
    tuple of ndarray of shape (cuts,)
        Sagging, with its underside pulled, and hogging; 0 where there is nothing [m3].

    Examples
    --------
    >>> from shapely.geometry import box
    >>> plan = ring_edges(box(0, 0, 2.0, 0.6))
    >>> rib = (ring_edges(box(0, 0, 2.0, 0.012)), 0.08)
    >>> sag, hog = section_moduli_m3(plan, [rib], 0.04, np.array([1.0]))
    >>> plain = 0.6 * 0.04**2 / 6
    >>> f"{float(sag[0]) / plain:.4f} {float(hog[0]) / plain:.4f}"
    '0.4348 1.0000'

    Notes
    -----
    Bending of a section that is not symmetric: M (I_yy z - I_yz y)/(I_yy I_zz - I_yz^2) at its corners.

    References
    ----------
    Derived: elementary beam theory.
    """
    (width,) = width_moments(plan, x)
    plain = width * thickness_m**2 / 6.0
    if not ribs:
        return plain, plain
    sums = np.zeros((6, len(x)))
    corners = []
    for edges, top, bottom in ((plan, 0.0, thickness_m), *((edges, thickness_m, deep) for edges, deep in ribs)):
        m0, m1, m2 = width_moments(edges, x, (0, 1, 2))
        one, two, three = ((bottom**power - top**power) / power for power in (1, 2, 3))
        sums += np.array([m0 * one, m1 * one, m0 * two, m2 * one, m0 * three, m1 * two])
        low, high = _extent(edges, x)
        corners += [(y, z) for y in (low, high) for z in (top, bottom)]
    area, first_y, first_z, i_yy, i_zz, i_yz = sums
    solid = area > 0.0
    with np.errstate(divide="ignore", invalid="ignore"):
        mid_y, mid_z = first_y / area, first_z / area
        i_yy, i_zz, i_yz = i_yy - area * mid_y**2, i_zz - area * mid_z**2, i_yz - area * mid_y * mid_z
        whole = i_yy * i_zz - i_yz**2
        pulls = [(i_yy * (z - mid_z) - i_yz * (y - mid_y)) / whole for y, z in corners]
        pulls = np.where(np.isfinite(pulls), pulls, 0.0)
        sag, hog = (1.0 / np.max(pulled, axis=0) for pulled in (pulls, -pulls))
    return tuple(np.where(solid, np.minimum(plain, side), 0.0) for side in (sag, hog))
