"""Bending of a flat plate on two opposite supports under a load on a patch: how wide a strip really helps.

A load that stands on one spot does not bend the whole width of a piece alike, and least of all at an edge that nothing
carries. Elastic theory of thin plates, uncracked; steel and fibre are never credited.
"""

import numpy as np

from shop_calc.science.checks import require

CONCRETE_POISSON_RATIO = 0.2  # uncracked concrete, from memory of EN 1992-1-1:2004 3.1.3(4)
_TERMS = 2.0 * np.arange(200) + 1.0  # even ones are nought at mid-span; a patch of a hundredth of the span within 0.5 %


def patch_moment_ratio(
    span_m, width_m, patch_along_m, patch_across_m, across_m, look_m, front_held=False, back_held=False,
    off_middle_m=0.0, poisson_ratio=CONCRETE_POISSON_RATIO,
):  # fmt: skip
    """Moment per width at the middle of a span, over the load on a patch that makes it.

    Not under a patch as small as the thickness: thin-plate theory then gives too much. Not for a corner that can lift.

    Parameters
    ----------
    span_m, width_m : float
        Distance between the two supports, on which the plate can turn, and width along them [m].
    patch_along_m, patch_across_m : float
        Size of the patch along the span and along the width [m].
    across_m : float
        Middle of the patch from the front edge [m].
    look_m : float or array
        Where the moment is asked for, from the front edge; always at mid-span [m].
    front_held, back_held : bool
        Whether the edges along the span lie on a rail, on which they can turn; free when not [-].
    off_middle_m : float
        Middle of the patch from mid-span [m].
    poisson_ratio : float
        Poisson's ratio [-].

    Returns
    -------
    float or array
        The larger of the moments along and across the span, per width, over the load [-].

    Raises
    ------
    ValueError
        When a size is not positive, or the patch does not lie on the plate.

    Notes
    -----
    Sum of half sine waves along the span, each an exact solution across the width (Levy). Six times the ratio, times
    the load, over the thickness squared is the stress. The width of a strip that would be bent as much is a quarter
    of the span over the ratio.

    Examples
    --------
    >>> f"{patch_moment_ratio(0.6096, 0.635, 0.1016, 0.1016, 0.3175, 0.3175, True, True):.5f}"
    '0.21778'

    References
    ----------
    Derived: thin-plate theory. Held against elements and a beam in the tests, and against Roark and Timoshenko, from memory.
    """
    span = require("span", span_m, 0, unit="m", low_open=True)
    width = require("width", width_m, 0, unit="m", low_open=True)
    along = require("size of the patch along the span", patch_along_m, 0, span * (1 + 1e-9), unit="m", low_open=True)
    across = require("size of the patch across", patch_across_m, 0, width * (1 + 1e-9), unit="m", low_open=True)
    slack = 1e-9 * (span + width)
    place = require("place of the patch", across_m, across / 2 - slack, width - across / 2 + slack, unit="m")
    reach = (span - along) / 2 + slack
    off = require("distance of the patch from mid-span", off_middle_m, -reach, reach, unit="m")
    nu = require("Poisson's ratio", poisson_ratio, 0, 0.5)
    wave = _TERMS * np.pi / span
    load = 4.0 * np.sin(wave * (span / 2 + off)) * np.sin(wave * along / 2) / (span * along * across * wave)
    sides = (place - across / 2, place + across / 2)

    def at(y):  # deflection times stiffness of every wave and its second derivative
        own, edges = _patch(wave, y, sides), _edges(wave, y, width)
        return [load * one + np.sum(share * each, axis=0) for one, each in zip(own[::2], edges[::2], strict=True)]

    share = _edge_shares(wave, load, sides, width, (front_held, back_held), nu)
    middle = np.sin(wave * span / 2)
    look = np.atleast_1d(require("place of the moment", look_m, -slack, width + slack, unit="m"))
    found = []
    for y in look:
        bent, second = at(y)
        found.append(max(np.sum((wave**2 * bent - nu * second) * middle), np.sum((nu * wave**2 * bent - second) * middle)))
    return np.array(found) if np.ndim(look_m) else float(found[0])


def _edge_shares(wave, load, sides, width, held, nu):
    """How much of each of the four edge waves makes both edges held or free: (4, waves)."""
    left, right = [], []
    for edge, carried in zip((0.0, width), held, strict=True):
        own, edges = _patch(wave, edge, sides), _edges(wave, edge, width)
        if carried:
            rows = ((1.0, 0.0, 0.0, 0.0), (0.0, 0.0, 1.0, 0.0))
        else:  # no moment, and no shear with the change of the twist
            rows = ((-nu * wave**2, 0.0, 1.0, 0.0), (0.0, (nu - 2.0) * wave**2, 0.0, 1.0))
        for row in rows:
            left.append(sum(factor * each for factor, each in zip(row, edges, strict=True)))
            right.append(-load * sum(factor * each for factor, each in zip(row, own, strict=True)))
    matrix, wanted = np.moveaxis(np.stack(left), 2, 0), np.stack(right).T[..., np.newaxis]
    scale = np.abs(matrix).max(axis=2, keepdims=True)
    return np.linalg.solve(matrix / scale, wanted / scale)[..., 0].T


def _patch(wave, y, sides):
    """The infinitely wide plate under a unit patch: deflection times stiffness and its first three derivatives."""
    total = [0.0, 0.0, 0.0, 0.0]
    for sign, side in zip((1.0, -1.0), sides, strict=True):
        far, turn = wave * abs(y - side), np.sign(y - side)
        fade = np.exp(-far)
        steps = (turn * (2.0 - (2.0 + far) * fade) / wave**4, (1.0 + far) * fade / wave**3,
                 -turn * far * fade / wave**2, (far - 1.0) * fade / wave)  # fmt: skip
        total = [one + sign * step / 4.0 for one, step in zip(total, steps, strict=True)]
    return total


def _edges(wave, y, width):
    """The four waves that fade from the edges, and their first three derivatives: each (4, waves)."""
    near, far = wave * y, wave * (width - y)
    front, back = np.exp(-near), np.exp(-far)
    return (
        np.stack((front, near * front, back, far * back)),
        wave * np.stack((-front, (1.0 - near) * front, back, (far - 1.0) * back)),
        wave**2 * np.stack((front, (near - 2.0) * front, back, (far - 2.0) * back)),
        wave**3 * np.stack((-front, (3.0 - near) * front, back, (far - 3.0) * back)),
    )
