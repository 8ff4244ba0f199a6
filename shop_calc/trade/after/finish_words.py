"""The words of the finish: kinds of sealer, steps, cautions. Kinds only, no products."""

from dataclasses import dataclass

DUST = (
    "Silica dust scars lungs for good: grind and sand wet, or with a shroud and a vacuum made for it, and a "
    "respirator; keep others out. Legal limits in the air: 50 µg/m³ over a shift, care from 25."
)
WET_POWER = (
    "Wet power tools only on a circuit with a ground-fault interrupter (GFCI), cables off the floor; hearing and "
    "eye protection."
)
SLURRY = (
    "The slurry of young concrete is caustic and its burns come late: waterproof gloves, apron and boots, change "
    "wet clothes at once, wash skin, rinse eyes 20 minutes and get help. Let no slurry into drains."
)
FUMES = (
    "Solvents and fumes: read the label and the safety sheet, open doors, no flame or spark, the respirator it "
    "names, gloves; children and pets out until it is dry."
)
RAGS = "Rags with oil or wax take fire by themselves: spread them flat outdoors or drown them in a lidded tin of water."
LIFTING = (
    "Lift with care and enough people; fingers out from under; a slab on edge falls: two people, in a frame, never "
    "left leaning."
)


@dataclass(frozen=True)
class SealerKind:
    """One kind of sealer.

    Parameters
    ----------
    key, title : str
        Short name and name [-].
    row : str
        Row of the defaults table with its waiting age [-].
    film : bool
        True when it builds a film, of which solids and thickness give the area [-].
    dry : bool
        True when the pores have to be dry first [-].
    works : str
        How it works and what it wants [-].
    damp : str
        What goes wrong on damp concrete [-].
    safety : str
        The caution that belongs to it [-].

    Examples
    --------
    >>> SEALERS["film"].dry
    True

    References
    ----------
    Common practice, no source.
    """

    key: str
    title: str
    row: str
    film: bool
    dry: bool
    works: str
    damp: str
    safety: str


SEALERS = {
    row.key: row
    for row in (
        SealerKind(
            "reactive", "reactive sealer or hardener", "seal_wait_reactive", False, False,
            "reacts with new paste in the pores and hardens it; no film, stains and acids still mark it",
            "on a wet surface it is diluted and dries white on top", FUMES,
        ),
        SealerKind(
            "penetrating", "penetrating water repellent", "seal_wait_penetrating", False, True,
            "lines dry pores and sheds water; no film, acids still etch it",
            "water in the pores keeps it out, and it beads on top only", FUMES,
        ),
        SealerKind(
            "film", "film-forming sealer", "seal_wait_film", True, True,
            "a thin skin that keeps stains off; it scratches, and hot pots mark it",
            "moisture under it turns it white and lifts it", FUMES,
        ),
        SealerKind(
            "oil", "oil or wax", "seal_wait_oil", False, True,
            "fills the pores at the surface; warm look, to be renewed",
            "it stays sticky and goes cloudy", f"{FUMES} {RAGS}",
        ),
    )
}  # fmt: skip
SEALER_CHOICES = ("none", *SEALERS)

ETCH = (
    "A dull spot from lemon, vinegar or wine is dissolved paste and no stain: hone it, 400 and then 800 grit, wet, "
    "and seal again. Trivets under pots, wipe acids at once."
)
HAZE = "White haze under a film is moisture: wait and dry before you seal, there is no cure but taking the film off."
