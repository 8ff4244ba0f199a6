"""Weigh sheets: what goes on the scale for one load, in the order it goes in."""

from dataclasses import dataclass

STAGES = ("mix", "base", "face")
# water and colour first, then what floats in it, then the powder; the reducer in small doses at the end
_ORDER = {
    "water": 0,
    "ice": 1,
    "pigment": 2,
    "polymer liquid": 3,
    "polymer powder": 4,
    "powder admixture": 4,
    "bag": 5,
    "cementitious": 5,
    "pozzolan": 6,
    "aggregate": 7,
    "fibre": 8,
    "liquid admixture": 9,
}


@dataclass(frozen=True)
class WeighLine:
    """One line of a weigh sheet.

    Parameters
    ----------
    ingredient : str
        What it is [-].
    kind : str
        Kind of the material; "water", "ice" or "bag" too [-].
    stage : str
        "mix" into the mortar, "base" with the stone, "face" into the face share [-].
    mass_kg : float
        All of it that belongs to this load [kg].
    held_back_kg : float
        Part of that kept back, and added only if the mix needs it [kg].
    note : str
        A word beside the line; may be empty [-].

    Examples
    --------
    >>> f"{WeighLine('water', 'water', 'mix', 4.1734, 0.4173).first_kg:.4f}"
    '3.7561'

    References
    ----------
    Common practice, no source.
    """

    ingredient: str
    kind: str
    stage: str
    mass_kg: float
    held_back_kg: float = 0.0
    note: str = ""

    @property
    def first_kg(self):
        """Mass that goes in at once [kg]."""
        return self.mass_kg - self.held_back_kg


@dataclass(frozen=True)
class Load:
    """One load: its volumes, what to set aside, its weigh sheet and when its water goes in.

    Parameters
    ----------
    number : int
        From 1, in the order they are mixed [-].
    name : str
        "base 1", "base 2 and face" and the like [-].
    water_in_offset_h : float
        Time of its water after the first load's water [h].
    mortar_m3, mortar_kg : float
        Mortar mixed in it, before any stone [m3, kg].
    face_m3, face_kg : float
        Of that, the face share [m3, kg].
    set_aside_kg : float
        Reading of the scale when the face share is taken out; less than `face_kg` only where wet stone made
        the mortar drier and the face gets its water back [kg].
    base_m3, base_kg : float
        Base mix that the rest becomes [m3, kg].
    fullest_m3 : float
        Largest volume that is in the vessel at once [m3].
    lines : tuple of WeighLine
        The weigh sheet [kg].

    Examples
    --------
    >>> line = WeighLine("water", "water", "mix", 4.1734, 0.4173)
    >>> load = Load(1, "face", 0.0, 0.0133, 28.2, 0.0133, 28.2, 28.2, 0.0, 0.0, 0.0133, (line,))
    >>> load.mixed_kg
    4.1734

    References
    ----------
    Common practice, no source.
    """

    number: int
    name: str
    water_in_offset_h: float
    mortar_m3: float
    mortar_kg: float
    face_m3: float
    face_kg: float
    set_aside_kg: float
    base_m3: float
    base_kg: float
    fullest_m3: float
    lines: tuple

    @property
    def heaviest_kg(self):
        """Largest mass that is in the vessel at once [kg]."""
        return max(self.mortar_kg, self.base_kg)

    @property
    def mixed_kg(self):
        """Everything on its weigh sheet [kg]."""
        return sum(line.mass_kg for line in self.lines)

    def stage(self, name):
        """The lines of one stage: "mix", "base" or "face"."""
        return tuple(line for line in self.lines if line.stage == name)


def weigh_load(mix, portion, number, *, load_interval_h, ice_share, held_back_fraction):
    """Write the weigh sheet of one load.

    Not for a second load of another size: every load has its own sheet.

    Parameters
    ----------
    mix : Mix
        The mix [-].
    portion : Portion
        Mortar and face share of the load [m3].
    number : int
        Its number, from 1 [-].
    load_interval_h : float
        Time from one load's water to the next [h].
    ice_share : float
        Share of the mixing water that goes in as ice [-].
    held_back_fraction : float
        Share of the mixing water kept back at first [-].

    Returns
    -------
    Load
        The load [kg].

    Raises
    ------
    ValueError
        When the stone is so wet that no mixing water is left.

    Notes
    -----
    Water on wet stone is held out of the mixing water. In the load that gives the face its share, the mortar
    is then mixed a little drier, and the face share gets back exactly what it lacks, so that both layers keep
    the ratio of the recipe.

    Examples
    --------
    >>> from shop_calc.trade.batching.loads import Portion
    >>> from shop_calc.trade.mortar.mix import build_mix
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> mix = build_mix(recipe("demo mortar"), stone_ratio=1.2, coarse_sand_ratio=0.6)
    >>> portion = Portion("base and face", 0.0448680, 0.0123963)
    >>> load = weigh_load(mix, portion, 1, load_interval_h=0.3333, ice_share=0.0, held_back_fraction=0.1)
    >>> f"{load.set_aside_kg:.3f}"
    '26.282'

    References
    ----------
    Conservation of mass; common practice, no source, for the order and the water held back.
    """
    basis_kg = portion.mortar_m3 / mix.mortar_m3
    face_basis = portion.face_m3 / mix.mortar_m3
    base_basis = basis_kg - face_basis
    share_of_base = base_basis / basis_kg
    stone_water = mix.stone_water_kg * base_basis if share_of_base > 1e-12 else 0.0
    wet = max(-stone_water, 0.0)
    held_out = wet / share_of_base if wet else 0.0  # so that the base part of the mortar lacks exactly `wet`
    back_to_face = held_out - wet
    mixing_water = basis_kg * mix.added_water_kg - held_out
    if mixing_water < 0:
        raise ValueError(
            f"moisture of the stone: it brings {wet:.3g} kg to the load {portion.name!r}, which has "
            f"{basis_kg * mix.added_water_kg:.3g} kg of mixing water; it must bring less: let the stone dry"
        )
    lines = [*_mortar_lines(mix, basis_kg), *_water_lines(mixing_water, ice_share, held_back_fraction)]
    lines.sort(key=lambda line: _ORDER.get(line.kind, 8))
    face_kg = portion.face_m3 * mix.mortar_density_kg_m3
    base_kg = base_basis * mix.base_kg
    lines += _base_lines(mix, base_basis, max(stone_water, 0.0), base_kg)
    lines += _face_lines(mix, face_kg, back_to_face)
    base_m3 = base_basis * mix.base_m3
    return Load(
        number=number,
        name=portion.name,
        water_in_offset_h=(number - 1) * load_interval_h,
        mortar_m3=portion.mortar_m3,
        mortar_kg=basis_kg * mix.mortar_kg,
        face_m3=portion.face_m3,
        face_kg=face_kg,
        set_aside_kg=face_kg - back_to_face,
        base_m3=base_m3,
        base_kg=base_kg,
        fullest_m3=max(portion.mortar_m3, base_m3),
        lines=tuple(lines),
    )


def _mortar_lines(mix, basis_kg):
    for line in mix.lines:
        yield WeighLine(line.name, line.kind, "mix", basis_kg * line.mass_kg)


def _water_lines(water_kg, ice_share, held_back_fraction):
    ice = water_kg * ice_share
    liquid = water_kg - ice
    yield WeighLine(
        "water",
        "water",
        "mix",
        liquid,
        min(water_kg * held_back_fraction, liquid),
        "the rest only if it needs it",
    )
    if ice > 0:
        yield WeighLine("ice", "ice", "mix", ice, 0.0, "crushed; counts as water")


def _base_lines(mix, base_basis, stone_water_kg, base_kg):
    if base_basis <= 0:
        return
    for line in mix.base_lines:
        yield WeighLine(line.name, line.kind, "base", base_basis * line.mass_kg)
    if stone_water_kg > 0:
        yield WeighLine(
            "water for the stone", "water", "base", stone_water_kg, 0.0, "what dry stone and sand drink"
        )
    for fibre in mix.base_fibres:
        yield WeighLine(
            fibre.name, "fibre", "base", base_kg * fibre.per_layer_kg, 0.0, "if it is still too loose"
        )


def _face_lines(mix, face_kg, back_to_face_kg):
    if face_kg <= 0:
        return
    if back_to_face_kg > 0:
        yield WeighLine(
            "water back to the face", "water", "face", back_to_face_kg, 0.0, "what was held out for wet stone"
        )
    for fibre in mix.face_fibres:
        yield WeighLine(fibre.name, "fibre", "face", face_kg * fibre.per_layer_kg, 0.0, "after setting aside")
