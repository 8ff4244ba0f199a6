"""Lesson 06 at the bench: strands of dry pasta broken over two gaps, for load times span and for scatter."""

import numpy as np

from shop_calc.lesson.bench import typed
from shop_calc.lesson.pictures.over_band import BenchNumber, OverBand
from shop_calc.lesson.said import Said
from shop_calc.units import parse

# Judgement: single strands lie within a third or so of their mean; the mean of five, of both gaps, within a quarter.
BAND = 1.25
SCALE = (1.0, 4.0)


def strand_band(wide="6 in", narrow="3 in"):
    """Say how many times as much a strand carries over the narrow gap as over the wide one.

    Parameters
    ----------
    wide, narrow : str
        The two gaps, as people write them [-].

    Returns
    -------
    tuple of float
        Low, likely and high [-].

    Raises
    ------
    ValueError
        When a gap cannot be read or the narrow one is not the smaller.

    Examples
    --------
    >>> strand_band("6 in", "3 in")
    (1.6, 2.0, 2.5)

    References
    ----------
    Derived: a load at the middle bends with load times span; the band is judgement.
    """
    wide_m, narrow_m = (parse(gap, "length", entry=name) for gap, name in ((wide, "wide gap"), (narrow, "narrow gap")))
    if not 0 < narrow_m < wide_m:
        raise ValueError(f"gaps: {wide!r} and {narrow!r} given; the narrow one must be the smaller")
    ratio = round(float(wide_m / narrow_m), 9)
    return ratio / BAND, ratio, ratio * BAND


def strands(wide_loads=(), narrow_loads=(), wide="6 in", narrow="3 in", caption="Yours over the band."):
    """Lay the loads at which strands broke over the forecast; nothing that is typed stops the lesson.

    Parameters
    ----------
    wide_loads, narrow_loads : sequence of float or str
        What hung on each strand when it broke, in grams or with its unit [g].
    wide, narrow : str
        The two gaps [-].
    caption : str
        A sentence on what to see while nothing is measured [-].

    Returns
    -------
    Still or Said
        The picture, or what cannot be read [-].

    Examples
    --------
    >>> strands([70, 80, 75, "2.5 oz"], [150, "a lot"])
    This cannot be read: ...
    >>> print(strands([70, 80, 90], [150, 170, 160]).caption)
    Strongest over weakest: 1.29 over the wide gap, 1.13 over the narrow one.

    References
    ----------
    Derived: a load at the middle bends with load times span; the band is judgement.
    """
    try:
        band = strand_band(wide, narrow)
        first, second = (_masses(loads) for loads in (wide_loads, narrow_loads))
    except (ValueError, TypeError) as error:
        return Said(f"This cannot be read: {error}")
    measured = second.mean() / first.mean() if first.size and second.size else None
    said = [f"{loads.max() / loads.min():.2f} over the {name}" for loads, name in
            ((first, "wide gap"), (second, "narrow one")) if loads.size > 1]  # fmt: skip
    caption = f"Strongest over weakest: {', '.join(said)}." if said else caption
    title = "A strand over half the gap carries so many times as much"
    return BenchNumber(OverBand(*band, measured), "number", SCALE, title).still(caption)


def _masses(loads):
    if isinstance(loads, (str, int, float)):
        loads = [loads]
    found = [typed(load, "mass", "g") for load in loads]
    masses = np.array([mass for mass in found if mass is not None], dtype=float)
    if np.any(masses <= 0):
        raise ValueError("load: nothing or less given; it must be above 0 g")
    return masses
