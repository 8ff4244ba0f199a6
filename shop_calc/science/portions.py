"""Portions of a volume: what a vessel takes, how many whole units fill it, how far it spreads."""

import numpy as np

from shop_calc.science.checks import require

# A quotient that is whole up to binary rounding is whole: 4.2 ft3 in bags of 0.6 is 7, not 8.
WHOLE_COUNT_SLACK = 1e-9


def usable_volume_m3(rated_volume_m3, usable_share):
    """Part of a mixer or bucket that can really be filled for mixing.

    Not for the struck volume: a drum rated by its batch needs a share of 1.

    Parameters
    ----------
    rated_volume_m3 : float or array
        Volume of the vessel to the brim [m3].
    usable_share : float or array
        Share that mixes without spilling [-].

    Returns
    -------
    float or array
        Largest batch [m3].

    Raises
    ------
    ValueError
        When the volume is negative or the share is not more than 0 and at most 1.

    Notes
    -----
    Drums take 0.4 to 0.7 of their volume (common practice).

    Examples
    --------
    >>> round(usable_volume_m3(0.169901, 0.583), 7)
    0.0990523

    References
    ----------
    Common practice, no source.
    """
    return require("rated volume", rated_volume_m3, 0, unit="m3") * _usable(usable_share)


def rated_volume_m3(batch_volume_m3, usable_share):
    """Vessel needed to mix a batch in one load.

    Not a reason to overfill: two equal loads beat one that spills.

    Parameters
    ----------
    batch_volume_m3 : float or array
        Volume of the batch [m3].
    usable_share : float or array
        Share of the vessel that mixes without spilling [-].

    Returns
    -------
    float or array
        Volume of the vessel to the brim [m3].

    Raises
    ------
    ValueError
        When the volume is negative or the share is not more than 0 and at most 1.

    Notes
    -----
    Inverse of `usable_volume_m3`.

    Examples
    --------
    >>> round(rated_volume_m3(0.0683285, 0.5), 6)
    0.136657

    References
    ----------
    Common practice, no source.
    """
    return require("volume of the batch", batch_volume_m3, 0, unit="m3") / _usable(usable_share)


def whole_units_count(volume_m3, unit_yield_m3):
    """Whole bags, packs or loads of known yield that fill a volume.

    Not by the mass on the label over the density of wet mix: a label counts dry powder only.

    Parameters
    ----------
    volume_m3 : float or array
        Volume needed, allowance included [m3].
    unit_yield_m3 : float or array
        Volume that one unit makes [m3].

    Returns
    -------
    float or array
        Number of whole units, rounded up [-].

    Raises
    ------
    ValueError
        When the volume is negative or the yield is not more than 0.

    Notes
    -----
    A quotient within one part in 1e9 of a whole number counts as that number: binary rounding buys no bag.

    Examples
    --------
    >>> whole_units_count(0.2354829, 0.0169901)
    14.0

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    needed = require("volume needed", volume_m3, 0, unit="m3")
    each = require("yield of one unit", unit_yield_m3, 0, unit="m3", low_open=True)
    count = np.ceil(needed / each * (1.0 - WHOLE_COUNT_SLACK))
    return count if np.ndim(count) else float(count)


def coverage_m2(volume_m3, thickness_m):
    """Area that a volume covers at an even thickness.

    Not for a form with edges wrapped by the face layer: work from the layers' own volumes.

    Parameters
    ----------
    volume_m3 : float or array
        Volume at hand [m3].
    thickness_m : float or array
        Even thickness [m].

    Returns
    -------
    float or array
        Area covered [m2].

    Raises
    ------
    ValueError
        When the volume is negative or the thickness is not more than 0.

    Notes
    -----
    Geometry, nothing added for waste.

    Examples
    --------
    >>> round(coverage_m2(0.0169901, 0.0381), 6)
    0.445934

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    volume = require("volume", volume_m3, 0, unit="m3")
    return volume / require("thickness", thickness_m, 0, unit="m", low_open=True)


def _usable(usable_share):
    return require("usable share of the vessel", usable_share, 0, 1, low_open=True)
