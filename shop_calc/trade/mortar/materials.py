"""The materials a mix is made of, read from data/materials.csv."""

import csv
import difflib
from dataclasses import dataclass
from functools import cache

from shop_calc.defaults import data_folder
from shop_calc.science.absolute_volume import RELATIVE_DENSITY_HIGHEST, RELATIVE_DENSITY_LOWEST, WATER_DENSITY_KG_M3

KINDS = (
    "cementitious",
    "pozzolan",
    "aggregate",
    "polymer liquid",
    "polymer powder",
    "liquid admixture",
    "powder admixture",
    "pigment",
    "fibre",
    "water",
)
BINDER_KINDS = ("cementitious", "pozzolan")
POLYMER_KINDS = ("polymer liquid", "polymer powder")
LIQUID_KINDS = ("polymer liquid", "liquid admixture", "water")


@dataclass(frozen=True)
class Material:
    """One material.

    Parameters
    ----------
    name : str
        Name as the recipes write it [-].
    kind : str
        One of `KINDS` [-].
    role : str
        What it is beyond its kind, for example "white cement", "slag", "retarder"; may be empty [-].
    relative_density : float
        Oven-dry for an aggregate; of the liquid as it comes for a liquid [-].
    absorption_fraction : float
        Water in the pores of a saturated aggregate, on oven-dry mass; 0 for everything else [-].
    solids_fraction : float
        Share of a liquid, by mass, that is not water; 1 for everything dry [-].
    solids_relative_density : float
        Relative density of the solids of a liquid; the same as `relative_density` for everything dry [-].
    largest_particle_m : float or None
        Size of its largest particle where that matters [m].
    low, high : float or None
        Range that the relative density is met in [-].
    mark, source : str
        Origin of the relative density [-].

    Raises
    ------
    ValueError
        When the kind is unknown or a number is not possible.

    Examples
    --------
    >>> material("white portland cement").relative_density
    3.15

    References
    ----------
    Common practice, no source.
    """

    name: str
    kind: str
    role: str = ""
    relative_density: float = 1.0
    absorption_fraction: float = 0.0
    solids_fraction: float = 1.0
    solids_relative_density: float = 0.0
    largest_particle_m: float | None = None
    low: float | None = None
    high: float | None = None
    mark: str = "given"
    source: str = "as given with the job"

    def __post_init__(self):
        if self.kind not in KINDS:
            raise ValueError(
                f"kind of {self.name}: {self.kind!r} given; it must be one of {', '.join(KINDS)}"
            )
        if not self.solids_relative_density:
            object.__setattr__(self, "solids_relative_density", self.relative_density)
        for words, given in (("", self.relative_density), ("the solids of ", self.solids_relative_density)):
            if not RELATIVE_DENSITY_LOWEST <= given <= RELATIVE_DENSITY_HIGHEST:
                raise ValueError(
                    f"relative density of {words}{self.name}: {given:g} given; "
                    "it must be at least 0.01 and at most 25 (a density in kg/m3 divided by 1000)"
                )
        if not 0 <= self.absorption_fraction < 1:
            raise ValueError(
                f"absorption of {self.name}: {self.absorption_fraction:g} given; "
                "it must be at least 0 and less than 100 %"
            )
        if not 0 <= self.solids_fraction <= 1:
            raise ValueError(f"solids of {self.name}: {self.solids_fraction:g} given; it must be 0 to 100 %")

    @property
    def is_cement(self):
        """True for portland cement of any colour, the basis of "percent of cement"."""
        return self.kind == "cementitious" and self.role != "slag"

    @property
    def is_liquid(self):
        """True where a volume can be poured and a share of the mass is water."""
        return self.kind in LIQUID_KINDS

    @property
    def density_kg_m3(self):
        """Density of the material as it comes, without the air between grains [kg/m3]."""
        return self.relative_density * WATER_DENSITY_KG_M3


@cache
def materials():
    """Read the table of materials once.

    Returns
    -------
    dict of str to Material
        All materials by name, in the order of the table [-].

    Examples
    --------
    >>> materials()["fine silica sand"].absorption_fraction
    0.005

    References
    ----------
    Common practice, no source.
    """
    with open(data_folder() / "materials.csv", newline="", encoding="utf-8") as file:
        rows = [_material(row) for row in csv.DictReader(file)]
    return {row.name: row for row in rows}


def material(name, entry="material"):
    """Look one material up by its name.

    Parameters
    ----------
    name : str
        Name in the table; capitals and spaces around it do not matter [-].
    entry : str
        The entry as the message will call it [-].

    Returns
    -------
    Material
        The material [-].

    Raises
    ------
    ValueError
        When the table has no such name; the message lists the nearest ones.

    Examples
    --------
    >>> material("Portland cement").kind
    'cementitious'

    References
    ----------
    Common practice, no source.
    """
    wanted = " ".join(str(name).split())
    known = materials()
    if wanted in known:
        return known[wanted]
    by_case = {each.casefold(): each for each in known}
    if wanted.casefold() in by_case:
        return known[by_case[wanted.casefold()]]
    near = difflib.get_close_matches(wanted.casefold(), by_case, n=3, cutoff=0.6)
    words = set(wanted.casefold().split())
    near += [low for low in by_case if words & set(low.split()) and low not in near]
    hint = "; ".join(by_case[low] for low in near[:5]) or "; ".join(known)
    raise ValueError(
        f"{entry}: {wanted!r} given; the table of materials has no such name. Near it: {hint}. "
        "A material of your own needs its kind and relative density"
    )


def _material(row):
    def number(key, fallback=None):
        return float(row[key]) if row[key] else fallback

    particle_mm = number("largest_particle_mm")
    return Material(
        name=row["material"],
        kind=row["kind"],
        role=row["role"],
        relative_density=number("relative_density"),
        absorption_fraction=number("absorption_fraction", 0.0),
        solids_fraction=number("solids_fraction", 1.0),
        solids_relative_density=number("solids_relative_density", 0.0),
        largest_particle_m=None if particle_mm is None else particle_mm / 1000.0,
        low=number("low"),
        high=number("high"),
        mark=row["mark"],
        source=row["source"],
    )
