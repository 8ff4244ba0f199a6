"""Loose and rodded bulk: stone by its bulk volume, voids between grains, swelling of damp sand."""

import numpy as np

from shop_calc.science.absolute_volume import WATER_DENSITY_KG_M3, solid_volume_m3
from shop_calc.science.checks import require


def coarse_mass_from_bulk_kg(bulk_fraction, dry_rodded_density_kg_m3, total_volume_m3):
    """Mass of stone from its bulk volume, dry-rodded, in a unit of mix.

    Not for sand: a table of bulk fractions is made for coarse aggregate.

    Parameters
    ----------
    bulk_fraction : float or array
        Dry-rodded bulk volume of the stone as a share of the volume of the mix [-].
    dry_rodded_density_kg_m3 : float or array
        Bulk density of the dry-rodded stone [kg/m3].
    total_volume_m3 : float or array
        Volume of the mix [m3].

    Returns
    -------
    float or array
        Oven-dry mass of the stone [kg].

    Raises
    ------
    ValueError
        When the share is not between 0 and 1, or a density or volume is negative.

    Notes
    -----
    Arithmetic. The fraction itself comes from a table of the design method, by size of stone and sand.

    Examples
    --------
    >>> round(coarse_mass_from_bulk_kg(0.63, 1633.9, 0.7645549), 4)
    786.9999

    References
    ----------
    US Navy Engineering Aid training manual NAVEDTRA 14070/14071, ch. 17: coarse aggregate.
    """
    share = require("bulk fraction of the stone", bulk_fraction, 0, 1)
    density = require("dry-rodded density", dry_rodded_density_kg_m3, 0, unit="kg/m3", low_open=True)
    return share * density * require("volume of the mix", total_volume_m3, 0, unit="m3")


def void_fraction(dry_rodded_density_kg_m3, relative_density, water_density_kg_m3=WATER_DENSITY_KG_M3):
    """Share of air between the grains of dry-rodded stone or sand.

    Not for a heap poured loosely or damp sand: both hold more air.

    Parameters
    ----------
    dry_rodded_density_kg_m3 : float or array
        Bulk density of the dry-rodded stone [kg/m3].
    relative_density : float or array
        Relative density of its grains, oven-dry [-].
    water_density_kg_m3 : float
        Density of water that the relative density refers to [kg/m3].

    Returns
    -------
    float or array
        Voids as a share of the bulk volume [-].

    Raises
    ------
    ValueError
        When the bulk is said to be denser than its grains.

    Notes
    -----
    1 - rho_bulk / (rd rho_w), the form of ASTM C29.

    Examples
    --------
    >>> round(void_fraction(1633.9, 2.60), 6)
    0.371295

    References
    ----------
    From memory of ASTM C29/C29M, calculation of void content.
    """
    bulk = require("dry-rodded density", dry_rodded_density_kg_m3, 0, unit="kg/m3", low_open=True)
    grain = 1.0 / solid_volume_m3(1.0, relative_density, water_density_kg_m3)
    if np.any(bulk > grain):
        raise ValueError(
            f"dry-rodded density: {float(np.max(bulk)):g} kg/m3 given; "
            f"it must be at most {float(np.min(grain)):g} kg/m3, the density of the grains"
        )
    return 1.0 - bulk / grain


def bulking_fraction(moist_height_m, flooded_height_m):
    """How much damp sand has swollen, from the jar test.

    Not for stone, nor for sand of another moisture: test the sand that is being measured.

    Parameters
    ----------
    moist_height_m : float or array
        Height of the damp sand in a straight jar, tipped in loosely [m].
    flooded_height_m : float or array
        Height of the same sand after flooding and settling [m].

    Returns
    -------
    float or array
        Swelling as a share of the flooded volume [-].

    Raises
    ------
    ValueError
        When the damp sand stands lower than the flooded sand.

    Notes
    -----
    Water films hold the grains of damp sand apart; flooded, it takes the volume of dry sand.

    Examples
    --------
    >>> round(bulking_fraction(0.1913, 0.1532), 6)
    0.248695

    References
    ----------
    Common practice, no source.
    """
    flooded = require("height of the flooded sand", flooded_height_m, 0, unit="m", low_open=True)
    moist = require("height of the damp sand", moist_height_m, 0, unit="m")
    if np.any(moist < flooded):
        raise ValueError(
            f"height of the damp sand: {float(np.min(moist)):g} m given; "
            f"it must be at least {float(np.max(flooded)):g} m, the height after flooding"
        )
    return moist / flooded - 1.0


def volume_shortfall_fraction(bulking_fraction):
    """Sand missing when damp, swollen sand is measured by volume.

    Not needed by anyone who weighs: then see `moisture.batch_mass_kg`.

    Parameters
    ----------
    bulking_fraction : float or array
        Swelling as a share of the flooded volume [-].

    Returns
    -------
    float or array
        Sand missing as a share of the sand wanted [-].

    Raises
    ------
    ValueError
        When the swelling is negative.

    Notes
    -----
    1 - 1 / (1 + bulking).

    Examples
    --------
    >>> round(volume_shortfall_fraction(0.248695), 6)
    0.199164

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    swelling = require("bulking", bulking_fraction, 0)
    return swelling / (1.0 + swelling)
