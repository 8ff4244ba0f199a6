"""How much mortar and base mix two layers need, and how much of it is set aside for the face."""

from shop_calc.science import portions
from shop_calc.science.checks import require


def face_share_m3(face_m3, face_allowance_fraction):
    """Mortar to set aside for the face.

    Not the volume of the face in place: the allowance is for screeding, edges and the patch cup.

    Parameters
    ----------
    face_m3 : float or array
        Volume of the face layer [m3].
    face_allowance_fraction : float or array
        Extra face mortar as a share of it [-].

    Returns
    -------
    float or array
        Volume to set aside [m3].

    Raises
    ------
    ValueError
        When a number is negative or the allowance is above 1.

    Examples
    --------
    >>> round(face_share_m3(0.0107790, 0.15), 8)
    0.01239585

    References
    ----------
    Common practice, no source, for the allowance.
    """
    face = require("volume of the face", face_m3, 0, unit="m3")
    return face * (1.0 + require("face allowance", face_allowance_fraction, 0, 1))


def base_to_make_m3(core_m3, base_allowance_fraction):
    """Base mix to make.

    Not the mortar in it: see `mortar_to_make_m3`.

    Parameters
    ----------
    core_m3 : float or array
        Volume of the base layer [m3].
    base_allowance_fraction : float or array
        Extra base mix as a share of it [-].

    Returns
    -------
    float or array
        Volume of base mix [m3].

    Raises
    ------
    ValueError
        When a number is negative or the allowance is above 1.

    Examples
    --------
    >>> round(base_to_make_m3(0.0493943, 0.05), 8)
    0.05186402

    References
    ----------
    Common practice, no source, for the allowance.
    """
    core = require("volume of the base", core_m3, 0, unit="m3")
    return core * (1.0 + require("base allowance", base_allowance_fraction, 0, 1))


def mortar_to_make_m3(face_m3, core_m3, phi, face_allowance_fraction, base_allowance_fraction):
    """Mortar for both layers.

    Not the volume of concrete: stone and coarse sand fill the rest of the base.

    Parameters
    ----------
    face_m3, core_m3 : float or array
        Volumes of the face and of the base [m3].
    phi : float or array
        Share of mortar in the base [-].
    face_allowance_fraction, base_allowance_fraction : float or array
        Extra face mortar and extra base mix [-].

    Returns
    -------
    float or array
        Mortar to mix [m3].

    Raises
    ------
    ValueError
        When a volume is negative, phi is not more than 0 and at most 1, or an allowance is not 0 to 1.

    Notes
    -----
    V_face (1 + w_face) + phi V_core (1 + w_base).

    Examples
    --------
    >>> round(mortar_to_make_m3(0.0107790, 0.0493943, 0.62608, 0.15, 0.05), 7)
    0.0448669

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    share = require("phi, mortar share of the base", phi, 0, 1, low_open=True)
    base = base_to_make_m3(core_m3, base_allowance_fraction)
    return face_share_m3(face_m3, face_allowance_fraction) + share * base


def set_aside_kg(face_m3, face_allowance_fraction, mortar_density_kg_m3):
    """Mass of mortar to set aside for the face, for the scale.

    Not after the fibre is in it.

    Parameters
    ----------
    face_m3 : float or array
        Volume of the face layer [m3].
    face_allowance_fraction : float or array
        Extra face mortar as a share of it [-].
    mortar_density_kg_m3 : float or array
        Density of the mortar with its air [kg/m3].

    Returns
    -------
    float or array
        Mass on the scale [kg].

    Raises
    ------
    ValueError
        When a number is negative or the density is not more than 0.

    Examples
    --------
    >>> round(set_aside_kg(0.0107790, 0.15, 2120.17), 4)
    26.2813

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    density = require("density of the mortar", mortar_density_kg_m3, 0, unit="kg/m3", low_open=True)
    return face_share_m3(face_m3, face_allowance_fraction) * density


def mortar_saved_fraction(mortar_m3, mixed_volume_m3):
    """Mortar saved by stretching the base, against making all of it from mortar.

    Parameters
    ----------
    mortar_m3 : float or array
        Mortar mixed [m3].
    mixed_volume_m3 : float or array
        Volume of face share and base together [m3].

    Returns
    -------
    float or array
        Share of mortar saved [-].

    Raises
    ------
    ValueError
        When nothing is mixed or there is more mortar than mix.

    Examples
    --------
    >>> round(mortar_saved_fraction(0.0448669, 0.0642599), 6)
    0.30179

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    mixed = require("volume mixed", mixed_volume_m3, 0, unit="m3", low_open=True)
    share = require("mortar", mortar_m3, 0, unit="m3") / mixed
    return 1.0 - require("mortar as a share of the mix", share, 0, 1 + portions.WHOLE_COUNT_SLACK)
