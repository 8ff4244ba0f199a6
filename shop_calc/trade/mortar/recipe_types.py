"""What a recipe is: parts by mass of materials, or a pre-blended bag and what its label says."""

from dataclasses import dataclass

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
    >>> from shop_calc.trade.mortar.recipe import recipe
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
    >>> from shop_calc.trade.mortar.recipe import recipe
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
    >>> from shop_calc.trade.mortar.recipe import recipe
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
