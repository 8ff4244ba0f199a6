"""Dropped edges in words, those alike in one phrase."""

from shop_calc.units import show


def drop_words(drops, system="both"):
    """Say which edges drop, how deep and how wide, those alike in one phrase.

    Parameters
    ----------
    drops : sequence of DropEdge
        Checked [m].
    system : str
        "us", "si" or "both" [-].

    Returns
    -------
    tuple of str
        A phrase for each depth and width, deepest first [-].

    Examples
    --------
    >>> from shop_calc.trade.shape.drops import DropEdge
    >>> ends = [DropEdge(name, 0.0762, 0.0508) for name in ("front", "right", "left")]
    >>> drop_words(ends, "us")
    ('front, right and left to 3", returning 2"',)

    References
    ----------
    Common practice, no source.
    """
    phrases = []
    for depth, width in dict.fromkeys((drop.depth_m, drop.width_m) for drop in drops):
        names = listed(drop.edge for drop in drops if (drop.depth_m, drop.width_m) == (depth, width))
        phrases.append(f"{names} to {show(depth, 'length', system)}, returning {show(width, 'length', system)}")
    return tuple(phrases)


def listed(names):
    """Join names as one says them.

    Parameters
    ----------
    names : iterable of str
        One or more [-].

    Returns
    -------
    str
        With "and" before the last [-].

    Examples
    --------
    >>> listed(["front"]), listed(["front", "right", "left"])
    ('front', 'front, right and left')

    References
    ----------
    Common practice, no source.
    """
    *most, last = names
    return f"{', '.join(most)} and {last}" if most else last
