"""Grits, fibre at the surface, constant mass and the amount of sealer: the arithmetic of the finish."""

from shop_calc import defaults
from shop_calc.science.checks import require

# Grits that pads and papers are sold in, each about twice the one before: common practice, no source.
GRITS = (50, 100, 200, 400, 800, 1500, 3000)
FINE_GRIT = 200  # judgement: from here on pads polish and no longer cut sand
FIBRE_WORDS = {
    "none": "no fibre in the face to show",
    "safe": "so shallow that fibre stays under the skin",
    "some": "fibre begins to show",
    "worst": "fibre shows most: fuzz and lines",
    "hidden": "deep enough that sand and stone carry the eye",
}


def grit_steps(first_grit, last_grit):
    """Grits from the first to the last, each about twice the one before.

    Not a leap of more than two and a half: scratches of the coarser grit stay.

    Parameters
    ----------
    first_grit, last_grit : float
        First and last grit; the nearest that is sold is taken [-].

    Returns
    -------
    tuple of int
        Grits in order [-].

    Raises
    ------
    ValueError
        When a grit is outside 30 to 3000, or the last is coarser than the first.

    Examples
    --------
    >>> grit_steps(50, 800)
    (50, 100, 200, 400, 800)

    References
    ----------
    Common practice, no source.
    """
    first, last = require("first grit", first_grit, 30, 3000), require("last grit", last_grit, 30, 3000)
    low, high = (min(range(len(GRITS)), key=lambda i: abs(GRITS[i] - grit) / GRITS[i]) for grit in (first, last))
    if high < low:
        raise ValueError(f"last grit: {last_grit:g} given; it must be as fine as the first, {first_grit:g}, or finer")
    return GRITS[low : high + 1]


def fibre_showing(depth_m, has_fibre=True):
    """How much fibre of the face shows after polishing so deep.

    Parameters
    ----------
    depth_m : float
        Depth that polishing takes off [m].
    has_fibre : bool
        Whether there is fibre in the face [-].

    Returns
    -------
    str
        A key of FIBRE_WORDS [-].

    Raises
    ------
    ValueError
        When the depth is negative.

    Examples
    --------
    >>> [fibre_showing(inches * 0.0254) for inches in (1 / 128, 1 / 40, 1 / 20, 1 / 10)]
    ['safe', 'some', 'worst', 'hidden']

    References
    ----------
    Common practice, no source: under 1/64 in safe, 1/32 to 1/16 in the worst, deeper hides it again.
    """
    depth = require("polish depth", depth_m, 0, unit="m")
    if not has_fibre:
        return "none"
    limits = [defaults.si(name) for name in ("fibre_safe_depth", "fibre_worst_from", "fibre_worst_to")]
    return ("safe", "some", "worst", "hidden")[sum(depth > limit * (1 + 1e-9) for limit in limits)]


def dry_enough(earlier_kg, later_kg, hours_h):
    """Whether a piece that is weighed twice has come to constant mass.

    Not over less than half a day: the scale does not see it. Wipe it dry before weighing.

    Parameters
    ----------
    earlier_kg, later_kg : float
        The two weighings [kg].
    hours_h : float
        Time between them [h].

    Returns
    -------
    bool
        True when it loses no more in a day than the table allows [-].

    Raises
    ------
    ValueError
        When a mass is not positive or the time is under 12 hours.

    Examples
    --------
    >>> dry_enough(52.10, 52.06, 24.0), dry_enough(52.10, 51.90, 24.0)
    (True, False)

    References
    ----------
    Row constant_mass of data/defaults.csv, judgement.
    """
    first = require("first weighing", earlier_kg, 0, unit="kg", low_open=True)
    second = require("second weighing", later_kg, 0, unit="kg", low_open=True)
    hours = require("time between the weighings", hours_h, 12, unit="h")
    return bool((first - second) / first * 24.0 / hours <= defaults.si("constant_mass"))


def sealer_volume_m3(area_m2, coverage_m2_m3, coats, waste_fraction=None):
    """Volume of sealer for an area.

    Parameters
    ----------
    area_m2 : float
        Area [m2].
    coverage_m2_m3 : float
        Area that a volume covers in one coat [m2/m3].
    coats : float
        Coats [-].
    waste_fraction : float or None
        Extra; that of the table when left out [-].

    Returns
    -------
    float
        Volume [m3].

    Raises
    ------
    ValueError
        When a number is not positive.

    Examples
    --------
    >>> f"{sealer_volume_m3(0.75, 4000.0, 2, 0.10) * 1e6:.2f}"
    '412.50'

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    waste = defaults.si("sealer_waste") if waste_fraction is None else require("waste", waste_fraction, 0, 1)
    area = require("area", area_m2, 0, unit="m2")
    rate = require("coverage", coverage_m2_m3, 0, unit="m2/m3", low_open=True)
    return area / rate * require("coats", coats, 0, low_open=True) * (1.0 + waste)
