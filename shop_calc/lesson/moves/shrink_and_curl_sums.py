"""Lesson 07: the sums behind its questions, each with its working."""

from shop_calc.science.curl import drying_bow_m, two_layer_bow_m
from shop_calc.science.shrinkage import aggregate_restraint_ratio
from shop_calc.trade.working import Step

EXPONENT = 1.5
_MILLIONTHS = 1e-6


def one_face_m(strain_count, thickness_m, length_m):
    """Bow of a plain slab whose top is shorter than its underside.

    Parameters
    ----------
    strain_count : float
        How much shorter, in millionths [-].
    thickness_m, length_m : float
        Sizes [m].

    Returns
    -------
    float
        Bow [m].

    Examples
    --------
    >>> f"{one_face_m(300.0, 0.01905, 2.159):.6g}"
    '0.00917575'

    References
    ----------
    Derived: plane sections.
    """
    return float(drying_bow_m(strain_count * _MILLIONTHS, thickness_m, length_m))


def _bow_steps(strain_count, thickness_m, length_m):
    strain = strain_count * _MILLIONTHS
    curvature = strain / thickness_m
    return (
        Step("strain", "s", "c * 1e-6", (("c", strain_count, "-"),), strain, "-", "derived", "millionths",
             "how much shorter the top is"),
        Step("curvature_per_m", "k", "s / h", (("s", strain, "-"), ("h", thickness_m, "m")), curvature, "1/m", "derived",
             "plane sections", "curvature"),
        Step("bow_m", "b", "k * L**2 / 8", (("k", curvature, "1/m"), ("L", length_m, "m")),
             one_face_m(strain_count, thickness_m, length_m), "m", "derived", "geometry of a flat arc", "bow"),
    )  # fmt: skip


def twice_as_thick(thin_m, thick_m, bow_thin_m):
    """Bow of a thicker slab with the same difference between its faces.

    Parameters
    ----------
    thin_m, thick_m : float
        Thicknesses [m].
    bow_thin_m : float
        Bow of the thin one [m].

    Returns
    -------
    float
        Bow of the thick one [m].

    Examples
    --------
    >>> twice_as_thick(0.02, 0.04, 0.01)
    0.005

    References
    ----------
    Derived: curvature is the difference over the thickness.
    """
    return bow_thin_m * thin_m / thick_m


def _thicker_steps(thin_m, thick_m, bow_thin_m):
    return (
        Step("thinner_ratio", "r", "h_1 / h_2", (("h_1", thin_m, "m"), ("h_2", thick_m, "m")), thin_m / thick_m, "-",
             "derived", "arithmetic", "thin over thick"),
        Step("bow_m", "b_2", "b_1 * r", (("b_1", bow_thin_m, "m"), ("r", thin_m / thick_m, "-")),
             twice_as_thick(thin_m, thick_m, bow_thin_m), "m", "derived", "curvature goes with one over the thickness",
             "bow of the thick one"),
    )  # fmt: skip


def _restraint_steps(mortar_share):
    return (
        Step("restraint_ratio", "r", "phi**n", (("phi", mortar_share, "-"), ("n", EXPONENT, "-")),
             base_over_face(mortar_share), "-", "memory", "form of Pickett 1956, from memory", "base over its mortar"),
    )  # fmt: skip


def _shorter_steps(length_m, strain_count):
    return (
        Step("shorter_m", "d", "L * c * 1e-6", (("L", length_m, "m"), ("c", strain_count, "-")),
             shorter_m(length_m, strain_count), "m", "derived", "definition of strain", "how much shorter"),
    )  # fmt: skip


def _layers_steps(strain_count, thickness_m, length_m):
    curvature = 1.5 * strain_count * _MILLIONTHS / thickness_m
    return (
        Step("curvature_per_m", "k", "1.5 * c * 1e-6 / h", (("c", strain_count, "-"), ("h", thickness_m, "m")), curvature,
             "1/m", "memory", "Timoshenko 1925, from memory", "curvature of two equal layers"),
        Step("bow_m", "b", "k * L**2 / 8", (("k", curvature, "1/m"), ("L", length_m, "m")),
             equal_layers_m(strain_count, thickness_m, length_m), "m", "derived", "geometry of a flat arc", "bow"),
    )  # fmt: skip


def base_over_face(mortar_share):
    """Shrinkage of a base over that of its mortar.

    Parameters
    ----------
    mortar_share : float
        Mortar share of the base [-].

    Returns
    -------
    float
        The ratio, with exponent 1.5 [-].

    Examples
    --------
    >>> f"{base_over_face(0.64000):.5f}"
    '0.51200'

    References
    ----------
    Form of Pickett 1956, from memory.
    """
    return float(aggregate_restraint_ratio(1.0 - mortar_share, EXPONENT))


def shorter_m(length_m, strain_count):
    """How much a piece gets shorter.

    Parameters
    ----------
    length_m : float
        Length [m].
    strain_count : float
        Shrinkage in millionths [-].

    Returns
    -------
    float
        How much shorter [m].

    Examples
    --------
    >>> f"{shorter_m(2.0000, 500.0):.5f}"
    '0.00100'

    References
    ----------
    Derived: definition of strain.
    """
    return length_m * strain_count * _MILLIONTHS


def equal_layers_m(strain_count, thickness_m, length_m):
    """Bow of two equally thick, equally stiff layers of which the upper shrinks more.

    Parameters
    ----------
    strain_count : float
        How much more, in millionths [-].
    thickness_m : float
        Thickness of both together [m].
    length_m : float
        Length [m].

    Returns
    -------
    float
        Bow [m].

    Examples
    --------
    >>> f"{equal_layers_m(400.0, 0.025, 2.4):.5f}"
    '0.01728'

    References
    ----------
    Timoshenko 1925, from memory.
    """
    half = thickness_m / 2.0
    return float(two_layer_bow_m(strain_count * _MILLIONTHS, half, half, 1.0, 1.0, length_m))


WORKING = {
    "one_face": _bow_steps,
    "thicker": _thicker_steps,
    "restraint": _restraint_steps,
    "patio": _bow_steps,
    "shorter": _shorter_steps,
    "equal_layers": _layers_steps,
}
