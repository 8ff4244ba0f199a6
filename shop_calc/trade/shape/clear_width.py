"""The narrowest strip of a freely drawn outline."""

import math

import numpy as np
import shapely

FACING_DEG = 30.0  # judgement: two edges bound a strip when they are within this of parallel
OVERLAP_SHARE = 0.5  # judgement: what is shorter than half its width is no strip
_SLACK_M = 1e-7  # a connector may lie on the boundary itself


def _feet(points, starts, ends):
    """Nearest point of each segment to each point, pair by pair."""
    along = ends - starts
    share = np.einsum("ij,ij->i", points - starts, along) / np.einsum("ij,ij->i", along, along)
    return starts + np.clip(share, 0.0, 1.0)[:, None] * along


def _facing_connectors(starts, ends, along):
    """Connectors between the ends of one edge and another that runs back beside it."""
    i, j = np.triu_indices(len(starts), k=1)
    keep = np.einsum("ij,ij->i", along[i], along[j]) < -math.cos(math.radians(FACING_DEG))
    i, j = i[keep], j[keep]
    # The other edge must lie on the side of the material: the two sides of a notch face each other through air.
    inward = np.column_stack((-along[i, 1], along[i, 0]))
    ahead = np.einsum("ij,ij->i", starts[j] + ends[j] - 2.0 * starts[i], inward) > _SLACK_M
    i, j = i[ahead], j[ahead]
    first = np.einsum("ij,ij->i", ends[j] - starts[i], along[i])
    last = np.einsum("ij,ij->i", starts[j] - starts[i], along[i])
    overlap = np.minimum(last, np.linalg.norm(ends[i] - starts[i], axis=1)) - np.maximum(first, 0.0)
    tails = np.stack((starts[j], ends[j], starts[i], ends[i]))
    heads = np.stack([
        *(_feet(points, starts[i], ends[i]) for points in (starts[j], ends[j])),
        *(_feet(points, starts[j], ends[j]) for points in (starts[i], ends[i])),
    ])  # fmt: skip
    reach = np.linalg.norm(tails - heads, axis=2).min(axis=0)
    counts = overlap >= OVERLAP_SHARE * reach
    return tails[:, counts].reshape(-1, 2), heads[:, counts].reshape(-1, 2)


def _neck_connectors(starts, ends, along):
    """Connectors from an inner corner to what lies opposite."""
    before = np.roll(along, 1, axis=0)
    turn = before[:, 0] * along[:, 1] - before[:, 1] * along[:, 0]
    corners = np.flatnonzero(turn < -1e-9)
    i, j = np.repeat(corners, len(starts)), np.tile(np.arange(len(starts)), len(corners))
    tails, heads = starts[i], _feet(starts[i], starts[j], ends[j])
    chord = heads - tails
    # A connector is a width only if walking along either edge of the corner makes it longer.
    free = np.einsum("ij,ij->i", chord, along[i]) <= _SLACK_M
    free &= np.einsum("ij,ij->i", chord, before[i]) >= -_SLACK_M
    return tails[free], heads[free]


def clear_width_m(points, material):
    """Width of the narrowest strip along a ring of straight edges.

    Not for rings of many short chords: use the known width of a circle or racetrack.

    Parameters
    ----------
    points : array, shape (n, 2)
        Corners of the ring in order, the material on the left hand [m].
    material : shapely geometry
        Where the material is; a strip counts only if it is all material [m].

    Returns
    -------
    float
        Width; infinite where no two edges face each other [m].

    Notes
    -----
    Two kinds of strip: between two edges within 30 degrees of parallel that face each other, measured where
    they come closest; and between an inner corner and an edge or another inner corner, where the connector
    cannot be made shorter by sliding along. Cut-off corners and the tips of sharp corners are not strips.

    Examples
    --------
    >>> from shapely.geometry import Polygon
    >>> corners = [(0, 0), (8, 0), (8, 1), (0, 2)]
    >>> clear_width_m(np.array(corners, float), Polygon(corners))
    1.0

    References
    ----------
    Derived: geometry; what counts as a strip is our judgement.
    """
    starts = np.asarray(points, dtype=float)
    ends = np.roll(starts, -1, axis=0)
    along = (ends - starts) / np.linalg.norm(ends - starts, axis=1)[:, None]
    facing, neck = _facing_connectors(starts, ends, along), _neck_connectors(starts, ends, along)
    tails, heads = np.concatenate((facing[0], neck[0])), np.concatenate((facing[1], neck[1]))
    sizes = np.linalg.norm(tails - heads, axis=1)
    room = material.buffer(_SLACK_M, join_style="mitre")
    shapely.prepare(room)
    for k in np.argsort(sizes, kind="stable"):
        if sizes[k] > _SLACK_M and room.covers(shapely.linestrings([tails[k], heads[k]])):
            return float(sizes[k])
    return math.inf
