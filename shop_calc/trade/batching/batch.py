"""The batch: all masses for both layers, the face share, the loads with their weigh sheets, the water."""

from dataclasses import dataclass, replace

from shop_calc import defaults
from shop_calc.science.checks import require
from shop_calc.trade.batching.batch_advice import batch_advice, refuse_face
from shop_calc.trade.batching.batch_working import batch_working
from shop_calc.trade.batching.ingredients import ingredients_of
from shop_calc.trade.batching.layer_mix import base_to_make_m3, face_share_m3, mortar_saved_fraction, mortar_to_make_m3
from shop_calc.trade.batching.loads import face_alone, split_loads
from shop_calc.trade.batching.mixer import mixer
from shop_calc.trade.batching.order import order_of_addition
from shop_calc.trade.batching.water import WaterPlan, plan_water, temps
from shop_calc.trade.batching.weigh import weigh_load


@dataclass(frozen=True)
class Batch:
    """Everything that is weighed and mixed for one piece.

    Parameters
    ----------
    face_m3, core_m3 : float
        Volumes of the two layers in place [m3].
    face_allowance_fraction, base_allowance_fraction : float
        Extra of each [-].
    face_share_m3, base_m3 : float
        Face mortar and base mix to make, extra included [m3].
    mortar_m3, mortar_kg : float
        Mortar to mix for both [m3, kg].
    set_aside_kg : float
        Face share, with the water of the recipe; the scale may show less, see `on_scale_kg` [kg].
    set_aside_fraction : float
        Face share of all mortar [-].
    base_kg : float
        Mass of the base mix [kg].
    mixed_m3, mixed_kg : float
        Face share and base together, fibre not counted [m3, kg].
    fibre_kg : float
        Fibres of both layers [kg].
    mortar_saved_fraction : float
        Mortar saved against making all of it from mortar [-].
    ingredients : tuple of Ingredient
        All masses, face and base apart [kg].
    loads : tuple of Load
        The loads in order [-].
    loads_why : str
        Why they are split so [-].
    water : WaterPlan
        Temperature of the water, ice, what comes out [-].
    order : tuple of Addition
        Order of addition [-].
    hands : float
        People at work [-].
    mixing_h : float
        Time from the first water until the last load is done [h].
    person_h : float
        That time for all hands [h].
    advice : tuple of Advice
        Warnings and notes of batch and water, the gravest first; those of the mix stand in the mix [-].
    working : tuple of Step
        How each number came about [-].

    Examples
    --------
    >>> from types import SimpleNamespace
    >>> from shop_calc.trade.mortar.mix import build_mix
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> layers = SimpleNamespace(face_m3=0.0107790, core_m3=0.0493943, face_thickness_m=0.00635)
    >>> batch = build_batch(layers, build_mix(recipe("demo mortar"), stone_ratio=1.2, coarse_sand_ratio=0.6))
    >>> f"{batch.ingredient('water for the stone').base_kg:.5f}"
    '0.42807'

    References
    ----------
    Arithmetic on absolute volumes; common practice, no source, for the allowances.
    """

    face_m3: float
    core_m3: float
    face_allowance_fraction: float
    base_allowance_fraction: float
    face_share_m3: float
    base_m3: float
    mortar_m3: float
    mortar_kg: float
    set_aside_kg: float
    set_aside_fraction: float
    base_kg: float
    mixed_m3: float
    mixed_kg: float
    fibre_kg: float
    mortar_saved_fraction: float
    ingredients: tuple
    loads: tuple
    loads_why: str
    water: WaterPlan
    order: tuple
    hands: float
    mixing_h: float
    person_h: float
    advice: tuple = ()
    working: tuple = ()

    @property
    def face_extra_m3(self):
        """Face mortar beyond the face in place: screeding, edges, the patch cup [m3]."""
        return self.face_share_m3 - self.face_m3

    @property
    def on_scale_kg(self):
        """What the scale shows in all for the face share: less than `set_aside_kg` where water is held out for wet stone."""
        return sum(load.set_aside_kg for load in self.loads)

    @property
    def back_to_face_kg(self):
        """Water that the face share gets back after setting aside; 0 where none was held out for wet stone."""
        lines = (line for load in self.loads for line in load.lines if line.stage == "face" and line.kind == "water")
        return sum(line.mass_kg for line in lines)

    @property
    def face_alone(self):
        """Whether the face is mixed in loads of its own."""
        return face_alone(self.loads)

    @property
    def base_extra_m3(self):
        """Base mix beyond the base in place [m3]."""
        return self.base_m3 - self.core_m3

    @property
    def total_kg(self):
        """Everything on all weigh sheets, fibre included [kg]."""
        return self.mixed_kg + self.fibre_kg

    @property
    def first_water_to_last_h(self):
        """Time from the first load's water to the last load's water [h]."""
        return self.loads[-1].water_in_offset_h

    def ingredient(self, name):
        """One ingredient by name, or a ValueError that lists them."""
        for each in self.ingredients:
            if each.name == name:
                return each
        raise ValueError(
            f"ingredient: {name!r} given; there are {', '.join(each.name for each in self.ingredients)}"
        )


def build_batch(
    layers,
    mix,
    *,
    face_allowance_fraction=None,
    base_allowance_fraction=None,
    vessel=None,
    temperatures=None,
    wanted_mix_temp_c=None,
    hands=None,
    held_back_fraction=None,
    initial_set_h=None,
):
    """Work out all masses, loads and the water for one piece.

    Not for a second mix in the same piece: both layers come from one mortar, so that neither draws water from
    the other.

    Parameters
    ----------
    layers : Layers
        The two layers; anything with `face_m3`, `core_m3` and `face_thickness_m` [-].
    mix : Mix
        The mix [-].
    face_allowance_fraction, base_allowance_fraction : float or None
        Extra face mortar, patch cup inside it, and extra base mix; None for the defaults [-].
    vessel : Mixer or None
        What it is mixed in; None for a bucket and paddle [-].
    temperatures : Temps or None
        What lies in the shop; None for the defaults [°C].
    wanted_mix_temp_c : float or None
        Wanted temperature of the mortar; None for the default [°C].
    hands : float or None
        People at work; None for the default [-].
    held_back_fraction : float or None
        Mixing water kept back at first; None for the default [-].
    initial_set_h : float or None
        Initial set of the base as the shop log has it; None for the default [h].

    Returns
    -------
    Batch
        The batch [-].

    Raises
    ------
    ValueError
        When the mix is too coarse for the face, an entry is out of its range, or there is nothing to mix.

    Notes
    -----
    Mortar to make = V_face (1 + w_face) + phi V_core (1 + w_base). Fibre is a line of its own and its volume,
    some tenths of a percent, is not taken off the mortar.

    Examples
    --------
    >>> from types import SimpleNamespace
    >>> from shop_calc.trade.mortar.mix import build_mix
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> layers = SimpleNamespace(face_m3=0.0107790, core_m3=0.0493943, face_thickness_m=0.00635)
    >>> mix = build_mix(recipe("demo mortar"), stone_ratio=1.2, coarse_sand_ratio=0.6)
    >>> f"{build_batch(layers, mix, face_allowance_fraction=0.15).set_aside_kg:.3f}"
    '26.281'

    References
    ----------
    Arithmetic on absolute volumes; common practice, no source, for the allowances.
    """
    refuse_face(mix, layers.face_thickness_m)
    face_extra = _entry("face_allowance", "face allowance", face_allowance_fraction)
    base_extra = _entry("base_allowance", "base allowance", base_allowance_fraction)
    held_back = _entry("held_back_water", "water held back", held_back_fraction)
    people = _entry("hands", "people at work", hands)
    vessel = mixer() if vessel is None else vessel
    temperatures = temps() if temperatures is None else temperatures
    face = float(face_share_m3(layers.face_m3, face_extra))
    base = float(base_to_make_m3(layers.core_m3, base_extra))
    mortar = float(mortar_to_make_m3(layers.face_m3, layers.core_m3, mix.phi, face_extra, base_extra))
    portions, why = split_loads(face, base, mix.phi, vessel.usable_m3)
    water = plan_water(mix, temperatures, wanted_mix_temp_c, face_alone=face_alone(portions))
    loads = tuple(
        weigh_load(
            mix,
            portion,
            number,
            load_interval_h=vessel.load_interval_h,
            ice_share=water.ice_share,
            held_back_fraction=held_back,
        )
        for number, portion in enumerate(portions, 1)
    )
    density = mix.mortar_density_kg_m3
    base_kg = base * mix.base_density_kg_m3
    mixing_h = len(loads) * vessel.load_interval_h
    batch = Batch(
        face_m3=layers.face_m3,
        core_m3=layers.core_m3,
        face_allowance_fraction=face_extra,
        base_allowance_fraction=base_extra,
        face_share_m3=face,
        base_m3=base,
        mortar_m3=mortar,
        mortar_kg=mortar * density,
        set_aside_kg=face * density,
        set_aside_fraction=face / mortar,
        base_kg=base_kg,
        mixed_m3=face + base,
        mixed_kg=face * density + base_kg,
        fibre_kg=face * density * sum(fibre.per_layer_kg for fibre in mix.face_fibres)
        + base_kg * sum(fibre.per_layer_kg for fibre in mix.base_fibres),
        mortar_saved_fraction=float(mortar_saved_fraction(mortar, face + base)),
        ingredients=ingredients_of(mix, face, base),
        loads=loads,
        loads_why=why,
        water=water,
        order=order_of_addition(mix, water, vessel.rest_h, face_alone=face_alone(portions)),
        hands=people,
        mixing_h=mixing_h,
        person_h=mixing_h * people,
    )
    return replace(batch, advice=batch_advice(batch, mix, vessel, initial_set_h), working=batch_working(batch, mix, vessel))


def _entry(row_name, words, given):
    row = defaults.get(row_name)
    if given is None:
        return row.value
    return require(words, given, row.minimum, row.maximum)
