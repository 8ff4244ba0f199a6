"""A plate of rectangular elements with cubic shapes both ways (Bogner, Fox and Schmit): another road to its moments."""

import numpy as np
import scipy.sparse as sparse
from scipy.sparse.linalg import spsolve

POINTS, WEIGHTS = ((values + shift) / 2.0 for values, shift in zip(np.polynomial.legendre.leggauss(4), (1.0, 0.0), strict=True))


def _cubic(s, size):
    value = [1 - 3 * s**2 + 2 * s**3, size * (s - 2 * s**2 + s**3), 3 * s**2 - 2 * s**3, size * (s**3 - s**2)]
    slope = [(6 * s**2 - 6 * s) / size, 1 - 4 * s + 3 * s**2, (6 * s - 6 * s**2) / size, 3 * s**2 - 2 * s]
    bend = [(12 * s - 6) / size**2, (6 * s - 4) / size, (6 - 12 * s) / size**2, (6 * s - 2) / size]
    return np.array(value), np.array(slope), np.array(bend)


def moments_over_load(length, width, counts, patch, held, lines=(), poisson=0.2):
    """Moments per width over the load on a patch, as a function of the place.

    `held` names edges that are carried and can turn ("x0", "x1", "y0", "y1"), `lines` are the columns of nodes that lie on a
    support; x runs along the length. The patch is (x from, x to, y from, y to).
    """
    across, deep = counts
    step_x, step_y = length / across, width / deep

    def node(i, j):
        return 4 * (i * (deep + 1) + j)

    def unknowns(i, j):
        return np.array([node(i + a // 2, j + b // 2) + 2 * (a % 2) + b % 2 for a in range(4) for b in range(4)])

    stiff = np.zeros((16, 16))
    for a, weight_a in zip(POINTS, WEIGHTS, strict=True):
        x = _cubic(a, step_x)
        for b, weight_b in zip(POINTS, WEIGHTS, strict=True):
            y = _cubic(b, step_y)
            xx, yy, xy = (np.outer(x[n], y[m]).ravel() for n, m in ((2, 0), (0, 2), (1, 1)))
            cross = np.outer(xx, yy)
            energy = np.outer(xx, xx) + np.outer(yy, yy) + poisson * (cross + cross.T) + 2 * (1 - poisson) * np.outer(xy, xy)
            stiff += weight_a * weight_b * step_x * step_y * energy
    force = np.zeros(4 * (across + 1) * (deep + 1))
    all_unknowns = np.array([unknowns(i, j) for i in range(across) for j in range(deep)])
    pressure = 1.0 / ((patch[1] - patch[0]) * (patch[3] - patch[2]))
    for number, places in enumerate(all_unknowns):
        i, j = divmod(number, deep)
        left, right = max(patch[0], i * step_x), min(patch[1], (i + 1) * step_x)
        low, high = max(patch[2], j * step_y), min(patch[3], (j + 1) * step_y)
        if right > left and high > low:
            for a, weight_a in zip(POINTS, WEIGHTS, strict=True):
                x = _cubic((left + (right - left) * a) / step_x - i, step_x)[0]
                for b, weight_b in zip(POINTS, WEIGHTS, strict=True):
                    y = _cubic((low + (high - low) * b) / step_y - j, step_y)[0]
                    share = weight_a * weight_b * (right - left) * (high - low) * pressure
                    force[places] += share * np.outer(x, y).ravel()
    size = len(all_unknowns)
    matrix = sparse.csr_matrix((np.tile(stiff.ravel(), size), (np.repeat(all_unknowns, 16, axis=1).ravel(),
                                                               np.tile(all_unknowns, 16).ravel())))  # fmt: skip
    fixed = {node(i, j) + n for i in lines for j in range(deep + 1) for n in (0, 1)}
    for edge in held:
        if edge[0] == "x":
            fixed |= {node(across * int(edge[1]), j) + n for j in range(deep + 1) for n in (0, 1)}
        else:
            fixed |= {node(i, deep * int(edge[1])) + n for i in range(across + 1) for n in (0, 2)}
    free = np.array(sorted(set(range(len(force))) - fixed))
    bent = np.zeros(len(force))
    bent[free] = spsolve(matrix[free][:, free].tocsc(), force[free])

    def at(x, y):
        """Moments along the length and along the width, and the largest there is at that place."""
        i, j = min(int(x / step_x), across - 1), min(int(y / step_y), deep - 1)
        shape_x, shape_y = _cubic(x / step_x - i, step_x), _cubic(y / step_y - j, step_y)
        here = bent[unknowns(i, j)]
        xx, yy, xy = (np.outer(shape_x[n], shape_y[m]).ravel() @ here for n, m in ((2, 0), (0, 2), (1, 1)))
        along, wide, twist = -xx - poisson * yy, -yy - poisson * xx, -(1 - poisson) * xy
        mean, radius = (along + wide) / 2, np.hypot((along - wide) / 2, twist)
        return along, wide, max(abs(mean - radius), abs(mean + radius))

    return at
