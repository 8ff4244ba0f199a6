"""Lesson 11: the thumb at the bench, in numbers."""

from math import pi

from shop_calc import defaults
from shop_calc.science.loads import GRAVITY_M_S2

QUARTER_INCH_M = 0.00635  # by definition of the inch


def later_at_bench_h(seen_h, ratio, exponent=None):
    """Say when the face will have grown so many times stiffer, on a bench that stays as warm as it is.

    Not for a room that changes: then look, and do not reckon.

    Parameters
    ----------
    seen_h : float
        When the softer sign was seen, hours after the water of the face [h].
    ratio : float
        How many times the resistance has to grow [-].
    exponent : float, optional
        Exponent of the set curve; that of the table if left out [-].

    Returns
    -------
    float
        Hours after the water of the face [h].

    Examples
    --------
    >>> f"{later_at_bench_h(2.5, 3.0):.4f}"
    '2.9248'

    References
    ----------
    Power law of ASTM C403/C403M, at one temperature.
    """
    power = defaults.get("set_exponent").value if exponent is None else exponent
    return seen_h * ratio ** (1.0 / power)


def thumb_force_band_kg(thumb_radius_m=0.010):
    """Reckon how hard a thumb presses, from the print that it leaves.

    Parameters
    ----------
    thumb_radius_m : float
        Radius of the ball of the thumb; half its width [m].

    Returns
    -------
    tuple of float
        Low, likely and high reading of a scale under the thumb [kg].

    Examples
    --------
    >>> [f"{mass:.3f}" for mass in thumb_force_band_kg()]
    ['1.914', '3.829', '7.658']

    Notes
    -----
    A ball of radius r sunk by d touches a circle of pi (2 r d - d2); a quarter inch deep, at the resistance of the
    table with its band.

    References
    ----------
    Derived from the cues of data/defaults.csv; judgement.
    """
    depth = QUARTER_INCH_M
    area_m2 = pi * (2.0 * thumb_radius_m * depth - depth**2)
    row = defaults.si_band("thumb_print_pr")
    return tuple(pa * area_m2 / GRAVITY_M_S2 for pa in row)
