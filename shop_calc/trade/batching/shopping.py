"""What to buy: whole packs, what is left over, and bags by what they make and not by what they weigh."""

from dataclasses import dataclass

from shop_calc.science import portions
from shop_calc.science.checks import require


@dataclass(frozen=True)
class Packs:
    """Packs of one material.

    Parameters
    ----------
    needed_kg : float
        Mass needed [kg].
    pack_kg : float
        Mass of one pack [kg].
    count : int
        Whole packs to buy [-].
    exact_count : float
        Packs by the number, not rounded; for a share of the cost [-].
    left_over_kg : float
        What remains of the packs bought [kg].

    Examples
    --------
    >>> f"{packs(31.547, 42.638).exact_count:.5f}"
    '0.73988'

    References
    ----------
    Arithmetic, anyone can repeat it.
    """

    needed_kg: float
    pack_kg: float
    count: int
    exact_count: float
    left_over_kg: float


def packs(needed_kg, pack_kg):
    """Count packs for a mass.

    Not for bags bought by volume: see `bags`.

    Parameters
    ----------
    needed_kg : float
        Mass needed [kg].
    pack_kg : float
        Mass of one pack [kg].

    Returns
    -------
    Packs
        Count, leftover and the unrounded number [-].

    Raises
    ------
    ValueError
        When the mass is negative or the pack weighs nothing.

    Examples
    --------
    >>> packs(31.547, 42.638).count, f"{packs(31.547, 42.638).left_over_kg:.3f}"
    (1, '11.091')

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    needed = require("mass needed", needed_kg, 0, unit="kg")
    each = require("mass of a pack", pack_kg, 0, unit="kg", low_open=True)
    count = int(portions.whole_units_count(needed, each))
    return Packs(needed, each, count, needed / each, count * each - needed)


@dataclass(frozen=True)
class Bags:
    """Pre-blended bags for a volume.

    Parameters
    ----------
    volume_m3 : float
        Volume to fill, allowance included [m3].
    count : int
        Whole bags to buy [-].
    exact_count : float
        Bags by the number, not rounded [-].
    left_over_m3 : float
        Volume that the bags make beyond the need [m3].
    count_by_weight : int or None
        What the wrong count, wet weight over the label, would buy; None without the numbers for it [-].

    Examples
    --------
    >>> bags(0.1132674, 0.0169901, 0.10).count
    8

    References
    ----------
    Arithmetic, anyone can repeat it.
    """

    volume_m3: float
    count: int
    exact_count: float
    left_over_m3: float
    count_by_weight: int | None = None


def bags(volume_m3, bag_yield_m3, allowance_fraction=0.0, *, bag_kg=None, wet_density_kg_m3=None):
    """Count bags by what one bag makes.

    Not by the mass on the label: that is dry powder, and wet concrete also weighs its water.

    Parameters
    ----------
    volume_m3 : float
        Volume to fill [m3].
    bag_yield_m3 : float
        Volume that one bag makes [m3].
    allowance_fraction : float
        Extra [-].
    bag_kg : float or None
        Mass on the label, to show the wrong count beside [kg].
    wet_density_kg_m3 : float or None
        Density of the wet mix, to show the wrong count beside [kg/m3].

    Returns
    -------
    Bags
        The count, and the tally of what is left over [-].

    Raises
    ------
    ValueError
        When a number is negative or the bag makes nothing.

    Examples
    --------
    >>> bags(2.1127196, 0.0084951, bag_kg=18.1437, wet_density_kg_m3=2322.677).count
    249

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    volume = require("volume", volume_m3, 0, unit="m3") * (
        1.0 + require("allowance", allowance_fraction, 0, 1)
    )
    each = require("yield of a bag", bag_yield_m3, 0, unit="m3", low_open=True)
    count = int(portions.whole_units_count(volume, each))
    by_weight = None
    if bag_kg is not None and wet_density_kg_m3 is not None:
        wet_kg = volume * require("density of the wet mix", wet_density_kg_m3, 0, unit="kg/m3", low_open=True)
        by_weight = packs(wet_kg, bag_kg).count
    return Bags(volume, count, volume / each, count * each - volume, by_weight)
