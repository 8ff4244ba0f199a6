"""Lesson 07: how far a top bows as it dries, and a strip of paper that does the same in a minute."""

from dataclasses import dataclass

from shop_calc import defaults
from shop_calc.lesson.pictures.bow_shape import BowedTop, BowShape, BowState
from shop_calc.trade.after.bow import bow_level
from shop_calc.trade.after.bow_advice import too_dry
from shop_calc.trade.after.bow_bands import bow_bands
from shop_calc.units import show

LONGEST_M = 2.4384  # end of the slider: 96 in
SHEET_M, SHEET_SPREAD = 0.0001, 0.15  # copy paper: judgement
SWELLING = (0.005, 0.01, 0.02)  # across the grain, wet against dry: from memory of paper handbooks


@dataclass(frozen=True)
class Drying:
    """A top and its two bows.

    Parameters
    ----------
    shape : BowShape
        What the picture shows [m].
    en_strain, aci_strain : float
        Shrinkage of the base in the end by both codes [-].
    rh_fraction : float
        Air in which it stands [-].

    Examples
    --------
    >>> dried(0.0381, 1.5709, 0.45000, 0.62608).shape.thickness_m
    0.0381

    References
    ----------
    As trade.after.bow.
    """

    shape: BowShape
    en_strain: float
    aci_strain: float
    rh_fraction: float


def dried(thickness_m, length_m, rh_fraction, phi, recipe=None):
    """Let a top of two layers dry.

    Parameters
    ----------
    thickness_m, length_m : float
        Thickness, and length or diagonal along which it bows [m].
    rh_fraction : float
        Air in which it stands [-].
    phi : float
        Mortar share of the base [-].
    recipe : dict or None
        What ACI 209 asks of the base, see trade.after.curling; a common base when left out [as named].

    Returns
    -------
    Drying
        Both bows with their bands [m].

    Raises
    ------
    ValueError
        When the face is as thick as the piece, or an entry is impossible.

    Examples
    --------
    >>> round(1000 * dried(0.0381, 1.5709, 0.45, 0.62608).shape.states[1].likely_m, 2)
    6.77

    References
    ----------
    As trade.after.bow; the face is that of data/defaults.csv.
    """
    face_m = defaults.si("face_thickness")
    (en, aci, _, _), both, top = bow_bands(thickness_m, face_m, length_m, phi, rh_fraction=rh_fraction, recipe=recipe)
    states = (BowState("both faces dry alike", *both), BowState("only the top dries", *top))
    return Drying(BowShape(length_m, thickness_m, face_m, states), en, aci, rh_fraction)


def bow_words(result, system="both"):
    """Say how far the ends come up, and what the codes say of the shrinkage.

    Parameters
    ----------
    result : Drying
        The top [m].
    system : str
        "us", "si" or "both" [-].

    Returns
    -------
    str
        Two lines, and a third where the air is drier than the codes know [-].

    Examples
    --------
    >>> print(bow_words(dried(0.0381, 1.5709, 0.45, 0.62608), "si"))
    Both faces dry: 4.86 mm. Only the top dry: 6.77 mm, a high bow.
    The base shrinks by 564 (EN 1992) or 1022 (ACI 209) millionths; the face by more, for it has no stone.

    References
    ----------
    As trade.after.bow.
    """
    both, top = result.shape.states
    stone = both.likely_m > 0  # without any, base and face are one mortar, and nothing bows
    face = "the face by more, for it has no stone" if stone else "the face by as much: neither has stone"
    return (
        f"Both faces dry: {show(both.likely_m, 'length', system)}. Only the top dry: "
        f"{show(top.likely_m, 'length', system)}, a {bow_level(top.likely_m)} bow.\n"
        f"The base shrinks by {1e6 * result.en_strain:.0f} (EN 1992) or {1e6 * result.aci_strain:.0f} (ACI 209) "
        f"millionths; {face}."
        + "".join(f"\nTake it as a guess: {words}." for words in too_dry(result.rh_fraction))
    )


class DryingTop(BowedTop):
    """The picture of the lesson, read from a `Drying`.

    Parameters
    ----------
    result : Drying
        What to show first [m].
    title : str
        One line over it [-].
    """

    def __init__(self, result, title="How far the ends come up"):
        super().__init__(result.shape, longest_m=LONGEST_M, title=title)

    def update(self, result, system="both"):
        """Move the strips; takes a `Drying` as well as its shape."""
        super().update(getattr(result, "shape", result), system)


def paper_roll_band():
    """Predict the diameter of the roll that a strip of copy paper makes when one face is wet.

    Returns
    -------
    tuple of float
        Low, likely and high diameter [m].

    Examples
    --------
    >>> tuple(round(1000 * d, 1) for d in paper_roll_band())
    (8.5, 20.0, 46.0)

    Notes
    -----
    One face wider than the other by s bends a sheet of thickness h to a radius of h / s: the same curvature as for
    concrete, s / h, with another s and another h.

    References
    ----------
    Derived: plane sections. Swelling of paper across its grain: from memory of paper handbooks.
    """
    low, likely, high = SWELLING
    return (
        2.0 * SHEET_M * (1.0 - SHEET_SPREAD) / high,
        2.0 * SHEET_M / likely,
        2.0 * SHEET_M * (1.0 + SHEET_SPREAD) / low,
    )
