"""The record of a mix: what `mix.build_mix` returns."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Fibre:
    """Fibre that goes into one layer after the layers are apart.

    Parameters
    ----------
    name : str
        Which fibre [-].
    per_layer_kg : float
        Mass for one kilogram of the layer before the fibre [-].
    density_kg_m3 : float
        Density of the fibre itself [kg/m3].
    text : str
        The dose as it was written [-].

    Examples
    --------
    >>> Fibre("PVA fibre", 0.00056, 1299.4, "0.1 % of volume").per_layer_kg
    0.00056

    References
    ----------
    Common practice, no source.
    """

    name: str
    per_layer_kg: float
    density_kg_m3: float
    text: str


@dataclass(frozen=True)
class Mix:
    """A mortar, and the base it is stretched to, for one kilogram of its basis.

    Parameters
    ----------
    recipe_name : str
        Which recipe or bag [-].
    basis : str
        "binder" for a recipe by parts, "bag" for the dry mass of a pre-blended bag [-].
    lines : tuple of MixLine
        Ingredients of the mortar but for the added water [kg per kg of basis].
    base_lines : tuple of MixLine
        Coarse sand and stone that stretch it [kg per kg of basis].
    added_water_kg : float
        Water from the tap, ice included, for the mortar [kg per kg of basis].
    free_water_kg : float
        Water that the recipe's sand brings, below 0 when it drinks [kg per kg of basis].
    liquid_water_kg : float
        Water inside polymer and admixtures [kg per kg of basis].
    absorbed_water_kg : float
        Water in the pores of the recipe's sand: no water of the mix [kg per kg of basis].
    total_water_kg : float
        Added, free and liquid-borne water [kg per kg of basis].
    w_cm, w_cm_low, w_cm_high : float
        Water-cementitious ratio; low and high differ for a bag whose cement is not known [-].
    binder_share : tuple of float
        Low, likely and high mass of binder in one kilogram of the basis [-].
    cement_share : tuple of float
        The same for cement [-].
    air_fraction : float
        Air in the mortar; 0 for a bag, whose yield already has it [-].
    mortar_kg : float
        Mass of mortar [kg per kg of basis].
    mortar_m3 : float
        Volume of mortar with its air: its yield [m3 per kg of basis].
    absolute_m3 : float
        Its volume without air [m3 per kg of basis].
    stone_water_kg : float
        Water that goes in with coarse sand and stone; below 0, water they bring that is held out [kg per kg
        of basis].
    base_kg : float
        Mass of the stretched mix, its stone saturated [kg per kg of basis].
    base_m3 : float
        Its volume, the extended volume [m3 per kg of basis].
    phi : float
        Share of mortar in the base, by volume [-].
    void_fraction : float
        Voids between the dry-rodded stones, which the mortar must more than fill [-].
    w_cm_stone_left_dry : float
        Ratio that remains when the water for dry stone is forgotten [-].
    w_cm_stone_left_wet : float
        Ratio of the base when the water on wet stone is not held out; the same as `w_cm` for dry stone [-].
    polymer_solids_share : float
        Polymer solids of the binder, likely value [-].
    pigment_share : tuple of float
        Pigment of the binder: low, likely, high [-].
    has_silica_fume, is_white, is_pigmented : bool
        What curing and cleaning need to know [-].
    largest_particle_m : float or None
        Largest particle of the mortar, None when unknown [m].
    largest_stone_m : float or None
        Largest stone of the base, None without stone [m].
    face_fibres, base_fibres : tuple of Fibre
        Fibres of each layer [-].
    origin, mark : str
        Where the recipe comes from [-].
    advice : tuple of Advice
        Warnings and notes [-].
    working : tuple of Step
        How each number came about [-].

    Examples
    --------
    >>> from shop_calc.trade.mortar.mix import build_mix
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> f"{build_mix(recipe('demo mortar')).mortar_density_kg_m3:.3f}"
    '2120.178'

    References
    ----------
    Absolute volumes; see `science.absolute_volume`.
    """

    recipe_name: str
    basis: str
    lines: tuple
    base_lines: tuple
    added_water_kg: float
    free_water_kg: float
    liquid_water_kg: float
    absorbed_water_kg: float
    total_water_kg: float
    w_cm: float
    w_cm_low: float
    w_cm_high: float
    binder_share: tuple
    cement_share: tuple
    air_fraction: float
    mortar_kg: float
    mortar_m3: float
    absolute_m3: float
    stone_water_kg: float
    base_kg: float
    base_m3: float
    phi: float
    void_fraction: float
    w_cm_stone_left_dry: float
    w_cm_stone_left_wet: float
    polymer_solids_share: float
    pigment_share: tuple
    has_silica_fume: bool
    is_white: bool
    is_pigmented: bool
    largest_particle_m: float | None
    largest_stone_m: float | None
    face_fibres: tuple
    base_fibres: tuple
    origin: str
    mark: str
    advice: tuple = ()
    working: tuple = ()

    @property
    def mortar_density_kg_m3(self):
        """Density of the mortar with its air [kg/m3]."""
        return self.mortar_kg / self.mortar_m3

    @property
    def air_free_density_kg_m3(self):
        """Density of the mortar without air; the same as with it for a bag of unknown air [kg/m3]."""
        return self.mortar_kg / self.absolute_m3

    @property
    def base_density_kg_m3(self):
        """Density of the stretched mix [kg/m3]."""
        return self.base_kg / self.base_m3

    def mass_kg(self, name):
        """Mass of one ingredient of mortar and base on the scale [kg per kg of basis]."""
        return sum(line.mass_kg for line in (*self.lines, *self.base_lines) if line.name == name)
