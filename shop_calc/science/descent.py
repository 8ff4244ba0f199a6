"""The lowest place of a smooth bowl of a few dimensions whose slope is known."""

import numpy as np

_GIVES, _STEEPER = 1e-4, 0.9  # a step must lower the height by this share of what its slope promises, and flatten the slope
_MOST_STEPS, _MOST_TRIES = 200, 30


def lowest(of, start, near_enough, about=None):
    """Go down from a place until the ground is level.

    Not for bowls with kinks, nor for places with walls: it finds the bottom that lies downhill of its start.

    Parameters
    ----------
    of : callable
        Gives the height of a place and its slope, an array of shape (n,) [-].
    start : array of shape (n,)
        Where to begin [-].
    near_enough : float
        Level is where no part of the slope is larger [-].
    about : array of shape (n, n), optional
        A guess of the inverse of the second derivatives; symmetric, positive definite [-].

    Returns
    -------
    array of shape (n,)
        The lowest place [-].

    Examples
    --------
    >>> bowl = lambda at: ((at[0] - 1.0) ** 2 + 3.0 * at[1] ** 2, np.array([2.0 * (at[0] - 1.0), 6.0 * at[1]]))
    >>> [f"{part:.5f}" for part in lowest(bowl, np.array([4.0, 2.0]), 1e-9) + 0.0]
    ['1.00000', '0.00000']

    Notes
    -----
    Quasi-Newton after Broyden, Fletcher, Goldfarb and Shanno with steps that fulfil Wolfe's conditions, found by halving and
    doubling. Heights that are no numbers count as walls. Written out, as loading a package for it takes longer than all the
    fits of a log.

    References
    ----------
    From memory of Nocedal and Wright, Numerical Optimization, 2nd ed. 2006, algorithm 6.1 and section 3.1.
    """
    place = np.array(start, dtype=float)
    height, slope = of(place)
    inverse, given = (np.eye(len(place)), False) if about is None else (np.array(about, dtype=float), True)
    for _ in range(_MOST_STEPS):
        if not np.max(np.abs(slope), initial=0.0) > near_enough:
            break
        way = -inverse @ slope
        if not slope @ way < 0.0:  # rounding has bent the guess
            inverse, way = np.eye(len(place)), -slope
        first = 1.0 if given else min(1.0, 1.0 / np.linalg.norm(slope))
        reached = _step(of, place, height, slope, way, first)
        if reached is None:
            break
        after, lower, flatter = reached
        moved, turned = after - place, flatter - slope
        bend = moved @ turned
        if bend > 1e-12 * np.linalg.norm(moved) * np.linalg.norm(turned):
            if not given:
                inverse = inverse * (bend / (turned @ turned))  # the first step tells how wide the bowl is
            keep = np.eye(len(place)) - np.outer(moved, turned) / bend
            inverse = keep @ inverse @ keep.T + np.outer(moved, moved) / bend
        given, place, height, slope = True, after, lower, flatter
    return place


def _step(of, place, height, slope, way, length):
    """A step along a way that goes down enough and far enough; None when there is none."""
    fall, shortest, longest, best = slope @ way, 0.0, np.inf, None
    for _ in range(_MOST_TRIES):
        there = place + length * way
        lower, flatter = of(there)
        if not lower <= height + _GIVES * length * fall:
            longest = length
        else:
            best = (there, lower, flatter)
            if flatter @ way >= _STEEPER * fall:
                return best
            shortest = length
        length = 2.0 * length if longest == np.inf else 0.5 * (shortest + longest)
    return best
