"""Ingredients of a mix for one kilogram of its basis, with the water in each told apart."""

from dataclasses import dataclass

from shop_calc.science import moisture, ssd_basis, water_ratio


@dataclass(frozen=True)
class MixLine:
    """One ingredient, for one kilogram of binder or of bag.

    Parameters
    ----------
    name, kind, role : str
        As in `Material` [-].
    mass_kg : float
        Mass on the scale today, moisture and the water of a liquid included [kg].
    dry_kg : float
        Mass without any water: oven-dry, or the solids of a liquid [kg].
    water_kg : float
        Water in it: moisture of an aggregate, water of a liquid [kg].
    absorbed_kg : float
        Water that its pores hold once saturated [kg].
    moisture_fraction, absorption_fraction : float
        Moisture today and absorption, on oven-dry mass [-].
    solids_fraction : float
        Share of a liquid that is not water [-].
    volume_mass_kg : float
        Mass that `relative_density` refers to: oven-dry, saturated surface-dry or solids [kg].
    relative_density : float
        Relative density for the absolute volume [-].
    largest_particle_m : float or None
        Largest particle [m].

    Examples
    --------
    >>> from shop_calc.trade.mortar.materials import material
    >>> f"{aggregate_line(material('stone 3/8 in'), 1.2, 'oven-dry', 0.0).free_water_kg:.5f}"
    '-0.01200'

    References
    ----------
    Common practice, no source.
    """

    name: str
    kind: str
    role: str
    mass_kg: float
    dry_kg: float
    water_kg: float
    absorbed_kg: float
    moisture_fraction: float
    absorption_fraction: float
    solids_fraction: float
    volume_mass_kg: float
    relative_density: float
    largest_particle_m: float | None

    @property
    def free_water_kg(self):
        """Water that an aggregate brings to the mix, below 0 when it drinks [kg]."""
        return self.dry_kg * (self.moisture_fraction - self.absorption_fraction)

    @property
    def liquid_water_kg(self):
        """Water inside a liquid [kg]."""
        return 0.0 if self.kind == "aggregate" else self.water_kg


def aggregate_line(material, given_kg, state, moisture_fraction, own_density=False):
    """Make the line of an aggregate from the mass a recipe gives and the moisture of the heap.

    Parameters
    ----------
    material : Material
        Which aggregate [-].
    given_kg : float
        Mass in the state the recipe gives [kg].
    state : str
        "oven-dry" or "saturated surface-dry" [-].
    moisture_fraction : float or None
        Moisture today on oven-dry mass; None when it comes in the state of the recipe [-].
    own_density : bool
        True when the relative density of `material` belongs to `state` and not to oven-dry grains [-].

    Returns
    -------
    MixLine
        The line [kg].

    Raises
    ------
    ValueError
        When the moisture is not at least 0 and less than 1.

    Notes
    -----
    The grains keep their volume whatever they drink.

    Examples
    --------
    >>> from shop_calc.trade.mortar.materials import material
    >>> line = aggregate_line(material("coarse sand"), 1.0, "oven-dry", 0.03)
    >>> f"{line.mass_kg:.5f} {line.free_water_kg:.5f}"
    '1.03000 0.02500'

    References
    ----------
    Conservation of mass; definitions of moisture and absorption from memory of ASTM C566, C127 and C128.
    """
    absorption = material.absorption_fraction
    saturated = state == "saturated surface-dry"
    dry = float(ssd_basis.oven_dry_from_ssd_kg(given_kg, absorption)) if saturated else float(given_kg)
    if moisture_fraction is None:
        moisture_fraction = absorption if saturated else 0.0
    mass = float(moisture.batch_mass_kg(dry, moisture_fraction))
    return MixLine(
        material.name,
        "aggregate",
        material.role,
        mass,
        dry,
        mass - dry,
        dry * absorption,
        float(moisture_fraction),
        absorption,
        1.0,
        given_kg if own_density else dry,
        material.relative_density,
        material.largest_particle_m,
    )


def plain_line(material, mass_kg):
    """Make the line of anything that is not an aggregate.

    Parameters
    ----------
    material : Material
        Which material [-].
    mass_kg : float
        Mass as it comes [kg].

    Returns
    -------
    MixLine
        The line [kg].

    Examples
    --------
    >>> from shop_calc.trade.mortar.materials import material
    >>> f"{plain_line(material('acrylic dispersion 50 %'), 0.10000).water_kg:.5f}"
    '0.05000'

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    water = (
        float(water_ratio.water_in_liquid_kg(mass_kg, material.solids_fraction))
        if material.is_liquid
        else 0.0
    )
    dry = mass_kg - water
    return MixLine(
        material.name,
        material.kind,
        material.role,
        mass_kg,
        dry,
        water,
        0.0,
        0.0,
        0.0,
        material.solids_fraction,
        dry,
        material.solids_relative_density,
        material.largest_particle_m,
    )
