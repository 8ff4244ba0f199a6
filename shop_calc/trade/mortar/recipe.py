"""Recipes: parts by mass of materials, or a pre-blended bag; `recipe_from_table` says how a file looks."""

import difflib
import tomllib
from dataclasses import dataclass
from functools import cache

from shop_calc.defaults import data_folder
from shop_calc.trade.mortar.amounts import Amount
from shop_calc.trade.mortar.materials import BINDER_KINDS, Material

STATES = ("oven-dry", "saturated surface-dry")


@dataclass(frozen=True)
class RecipeLine:
    """One ingredient of a recipe.

    Parameters
    ----------
    material : Material
        What it is [-].
    amount : Amount
        How much, and of what that is a share [-].
    state : str
        "oven-dry" or "saturated surface-dry" for an aggregate, empty for the rest [-].
    own_density : bool
        True when the recipe gives the relative density itself; it then belongs to `state` [-].

    Examples
    --------
    >>> recipe("demo mortar").parts[2].state
    'saturated surface-dry'

    References
    ----------
    Common practice, no source.
    """

    material: Material
    amount: Amount
    state: str = ""
    own_density: bool = False


@dataclass(frozen=True)
class Recipe:
    """A mortar by parts of its materials.

    Parameters
    ----------
    name : str
        Name [-].
    parts : tuple of RecipeLine
        Binder and aggregates, all in parts by mass or all in masses [-].
    doses : tuple of RecipeLine
        Polymer, admixtures, pigment [-].
    face, base : tuple of RecipeLine
        Fibres that go into the face share, and into the base, after the two are apart [-].
    w_cm : float or None
        Water to cementitious material: added, free and inside the liquids [-].
    water : Amount or None
        Added water where the recipe gives that instead of `w_cm` [-].
    air_fraction : float
        Air as a share of the volume of the mortar [-].
    origin, mark, note : str
        Where the numbers come from, and a word on what it is [-].

    Examples
    --------
    >>> recipe("demo mortar").cement_share
    0.8

    References
    ----------
    Common practice, no source.
    """

    name: str
    parts: tuple
    doses: tuple = ()
    face: tuple = ()
    base: tuple = ()
    w_cm: float | None = None
    water: Amount | None = None
    air_fraction: float = 0.0
    origin: str = "as given with the job"
    mark: str = "given"
    note: str = ""

    @property
    def basis(self):
        """What its ratios are reckoned on."""
        return "binder"

    @property
    def cement_share(self):
        """Cement as a share of the binder [-]."""
        binder = sum(line.amount.value for line in self.parts if line.material.kind in BINDER_KINDS)
        return sum(line.amount.value for line in self.parts if line.material.is_cement) / binder


@dataclass(frozen=True)
class Bag:
    """A pre-blended bag: what its label says and what it does not.

    Parameters
    ----------
    name : str
        Name [-].
    mass_kg : float
        Dry mass on the label [kg].
    water_kg : float
        Water for one bag [kg].
    yield_m3 : float
        Volume that one bag makes [m3].
    largest_particle_m : float or None
        Largest particle, None when the label does not say [m].
    cement_share : tuple of float
        Low, likely and high share of cement in the dry mass [-].
    doses : tuple of RecipeLine
        What is added to the bag [-].
    face, base : tuple of RecipeLine
        Fibres that go into the face share, and into the base [-].
    origin, mark, note : str
        Where the numbers come from, and a word on what it is [-].

    Examples
    --------
    >>> f"{recipe('demo counter bag').mass_kg:.4f}"
    '36.2874'

    References
    ----------
    Common practice, no source, for a cement share of 12 to 20 %.
    """

    name: str
    mass_kg: float
    water_kg: float
    yield_m3: float
    largest_particle_m: float | None = None
    cement_share: tuple = (0.12, 0.16, 0.20)
    doses: tuple = ()
    face: tuple = ()
    base: tuple = ()
    origin: str = "as given with the job"
    mark: str = "given"
    note: str = ""

    @property
    def basis(self):
        """What its ratios are reckoned on."""
        return "bag"


@cache
def recipes():
    """Read every recipe of the data folder once.

    Returns
    -------
    dict of str to Recipe or Bag
        The recipes by name [-].

    Examples
    --------
    >>> recipes()["demo mortar"].w_cm
    0.33

    References
    ----------
    Invented for the demonstration.
    """
    from shop_calc.trade.mortar.recipe_file import recipe_from_table

    found = {}
    for path in sorted((data_folder() / "recipes").glob("*.toml")):
        with open(path, "rb") as file:
            each = recipe_from_table(tomllib.load(file), path.stem)
        found[each.name] = each
    return found


def recipe(name, entry="recipe"):
    """Look a recipe up by name.

    Parameters
    ----------
    name : str
        Name; capitals do not matter [-].
    entry : str
        The entry as the message will call it [-].

    Returns
    -------
    Recipe or Bag
        The recipe [-].

    Raises
    ------
    ValueError
        When there is no such recipe; the message lists those there are, the nearest first.

    Examples
    --------
    >>> recipe("Demo Mortar").air_fraction
    0.04

    References
    ----------
    Invented for the demonstration.
    """
    by_case = {each.casefold(): each for each in recipes()}
    wanted = " ".join(str(name).split()).casefold()
    if wanted in by_case:
        return recipes()[by_case[wanted]]
    near = difflib.get_close_matches(wanted, by_case, n=1, cutoff=0.5)
    ordered = [by_case[low] for low in [*near, *(each for each in by_case if each not in near)]]
    raise ValueError(
        f"{entry}: {str(name)[:40]!r} given; it must be one of {', '.join(ordered)}, or a table of parts"
    )
