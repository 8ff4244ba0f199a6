"""Every ingredient of the whole job, face and base apart."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Ingredient:
    """One ingredient of the whole job.

    Parameters
    ----------
    name, kind : str
        What it is [-].
    face_kg : float
        Of it in the face share [kg].
    base_kg : float
        Of it in the base [kg].

    Examples
    --------
    >>> f"{Ingredient('portland cement', 'cementitious', 8.7155, 22.8302).total_kg:.4f}"
    '31.5457'

    References
    ----------
    Common practice, no source.
    """

    name: str
    kind: str
    face_kg: float
    base_kg: float

    @property
    def total_kg(self):
        """Face and base together [kg]."""
        return self.face_kg + self.base_kg


def ingredients_of(mix, face_m3, base_m3):
    """List every ingredient of the whole job, face and base apart.

    Parameters
    ----------
    mix : Mix
        The mix [-].
    face_m3 : float
        Face mortar to make [m3].
    base_m3 : float
        Base mix to make [m3].

    Returns
    -------
    tuple of Ingredient
        The masses [kg].

    Examples
    --------
    >>> from shop_calc.trade.mortar.mix import build_mix
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> f"{ingredients_of(build_mix(recipe('demo mortar')), 0.012396, 0.0)[0].face_kg:.4f}"
    '8.7155'

    References
    ----------
    Arithmetic, anyone can repeat it.
    """
    face_basis, base_basis = face_m3 / mix.mortar_m3, base_m3 / mix.base_m3
    face_kg, base_kg = face_basis * mix.mortar_kg, base_basis * mix.base_kg
    rows = {}

    def put(name, kind, face, base):
        if face or base:
            had = rows.get(name, Ingredient(name, kind, 0.0, 0.0))
            rows[name] = Ingredient(name, kind, had.face_kg + face, had.base_kg + base)

    for line in mix.lines:
        put(line.name, line.kind, face_basis * line.mass_kg, base_basis * line.mass_kg)
    wet = min(mix.stone_water_kg, 0.0)  # water on wet stone is held out of the mixing water of the base
    put("water", "water", face_basis * mix.added_water_kg, base_basis * (mix.added_water_kg + wet))
    for line in mix.base_lines:
        put(line.name, line.kind, 0.0, base_basis * line.mass_kg)
    put("water for the stone", "water", 0.0, base_basis * max(mix.stone_water_kg, 0.0))
    for fibre in mix.face_fibres:
        put(fibre.name, "fibre", face_kg * fibre.per_layer_kg, 0.0)
    for fibre in mix.base_fibres:
        put(fibre.name, "fibre", 0.0, base_kg * fibre.per_layer_kg)
    return tuple(rows.values())
