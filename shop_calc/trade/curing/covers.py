"""The ways to cover a piece for its first night: what each does to the surface, its work, what a sealer makes of it."""

from dataclasses import dataclass

COVERS = {
    # key: title, what it does to the surface, work, what it means for a sealer
    "open": (
        "Leave it open",
        "no cover touches it: the most even colour; published curing practice objects, because an open surface "
        "gains less strength and can dust",
        "none",
        "dries towards sealing at once",
    ),
    "fabric": (
        "Damp fabric flat, plastic over it",
        "even while every inch touches; a dry or lifted spot shows",
        "wet it, lay it without a wrinkle, plastic over, weigh the edges down",
        "the sealer waits until it has dried again",
    ),
    "plastic": (
        "Bare plastic on the face",
        "puddles, blotches and wrinkle marks on an exposed trowelled face",
        "little",
        "blotches show through clear sealers",
    ),
    "tent": (
        "Plastic held off the face",
        "drops from the inside mark it where they fall; a draught dries it",
        "battens or a frame, edges closed",
        "the sealer waits until it has dried again",
    ),
    "mist": (
        "Misting",
        "even only while it never dries in between: crazing if it does",
        "every quarter hour until bedtime, and then another cover",
        "the sealer waits until it has dried again",
    ),
    "membrane": (
        "Curing compound",
        "even if sprayed evenly; colour can change",
        "spray once when the sheen has gone",
        "most sealers do not bond until it is ground off",
    ),
}


@dataclass(frozen=True)
class CureChoice:
    """One way to get through the night.

    Parameters
    ----------
    key, title : str
        Short name and name [-].
    water_lost_kg_m2 : float
        Water lost by the morning, falling once the surface dries [kg/m2].
    bound_kg_m2 : float
        What it cannot exceed: a surface wet all night, or all water of the piece [kg/m2].
    lost_share : float
        That loss over the water of the face [-].
    surface, work, sealing : str
        What it does to the surface, what it costs in work, what it means for a sealer [-].
    morning_age_h : float
        Equivalent age at 21 °C in the morning [h].
    morning_temp_c : float
        Temperature of the piece in the morning [°C].

    Examples
    --------
    >>> CureChoice("open", "Leave it open", 0.4, 1.1, 0.3, "", "none", "", 12.0, 18.0).work
    'none'

    References
    ----------
    Common practice, no source.
    """

    key: str
    title: str
    water_lost_kg_m2: float
    bound_kg_m2: float
    lost_share: float
    surface: str
    work: str
    sealing: str
    morning_age_h: float
    morning_temp_c: float


CHOICES = tuple(COVERS)
