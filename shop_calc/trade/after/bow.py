"""Shrinkage and curl: how much a two-layer piece bows because its face shrinks more, or dries first."""

from dataclasses import dataclass, replace
from types import MappingProxyType

import numpy as np
import shapely

from shop_calc import defaults
from shop_calc.science import curl_weight, shrinkage
from shop_calc.science.checks import require
from shop_calc.trade.after.bow_advice import bow_advice
from shop_calc.trade.after.bow_bands import bow_bands
from shop_calc.trade.after.bow_working import bow_working
from shop_calc.trade.after.curling import COMMON_BASE

LEVELS = ("low", "moderate", "high")


@dataclass(frozen=True)
class Bowing:
    """A bow with its band.

    Parameters
    ----------
    low_m, likely_m, high_m : float
        Free bow over the diagonal, without weight: ends up is positive [m].
    lying_m : float
        Height of the ends over a flat bed for the likely one, its weight counted [m].
    level : str
        low, moderate or high, by what one would measure without weight [-].

    Examples
    --------
    >>> Bowing(0.001, 0.002, 0.003, 0.001, "moderate").level
    'moderate'

    References
    ----------
    Levels are judgement: rows bow_seen and bow_high of data/defaults.csv.
    """

    low_m: float
    likely_m: float
    high_m: float
    lying_m: float
    level: str


@dataclass(frozen=True)
class Bow:
    """Shrinkage of both layers and the bows that can come of it.

    Parameters
    ----------
    rh_fraction : float
        Air in which it will stand [-].
    strength_28d_pa : float
        Strength that EN 1992 was told [Pa].
    cement_class : str
        Cement that EN 1992 was told, R, N or S [-].
    recipe : mapping of str to float
        What ACI 209 was told of the base [as named].
    diagonal_m : float
        Longest line across the piece [m].
    en_strain, aci_strain : float
        Shrinkage of the base in the end, by EN 1992-1-1 and by ACI 209 [-].
    en_28d_strain, aci_28d_strain : float
        The same 28 days after the pour [-].
    restraint_ratio, restraint_low_ratio, restraint_high_ratio : float
        Shrinkage of the base over that of the face, phi^n, and its ends [-].
    face_strain, base_strain : float
        Likely shrinkage in the end: the mean of the two codes for the base [-].
    two_layer : Bowing
        Both faces dry alike and the face shrinks more: an upper bound, creep takes part of it back [m].
    one_face : Bowing
        Only the top dries: comes and goes with moisture [m].
    sag_m : float
        What its own weight takes from a dome on end supports [m].
    advice : tuple of Advice
        What to do about it [-].
    working : tuple of Step
        How each number came about [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> make_plan(read_job(demo_job("garden_bench_top"))).bow.two_layer.level
    'high'

    References
    ----------
    EN 1992-1-1:2004, 3.1.4(6); ACI 209R-92, from memory; Pickett 1956, from memory; Timoshenko 1925, from memory.
    """

    rh_fraction: float
    strength_28d_pa: float
    cement_class: str
    recipe: MappingProxyType
    diagonal_m: float
    en_strain: float
    aci_strain: float
    en_28d_strain: float
    aci_28d_strain: float
    restraint_ratio: float
    restraint_low_ratio: float
    restraint_high_ratio: float
    face_strain: float
    base_strain: float
    two_layer: Bowing
    one_face: Bowing
    sag_m: float
    advice: tuple = ()
    working: tuple = ()


def bow_level(bow_m):
    """Call a bow low, moderate or high.

    Parameters
    ----------
    bow_m : float
        Bow without weight [m].

    Returns
    -------
    str
        One of LEVELS [-].

    Examples
    --------
    >>> bow_level(0.0092)
    'high'

    References
    ----------
    Rows bow_seen and bow_high of data/defaults.csv, judgement.
    """
    limits = (defaults.si("bow_seen"), defaults.si("bow_high"))
    return LEVELS[sum(abs(bow_m) >= limit for limit in limits)]


def base_recipe(mix):
    """What ACI 209 asks of a base, from the mix.

    Parameters
    ----------
    mix : Mix
        The mix [kg].

    Returns
    -------
    dict
        fine_aggregate_fraction, cement_kg_m3 and air_fraction; nothing of a bag, whose sand nobody knows [as named].

    Examples
    --------
    >>> from shop_calc.trade.mortar.mix import build_mix
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> row = base_recipe(build_mix(recipe("demo mortar"), stone_ratio=1.2, coarse_sand_ratio=0.6))
    >>> f"{row['fine_aggregate_fraction']:.3f} {row['cement_kg_m3']:.1f}"
    '0.571 550.2'

    References
    ----------
    Derived: conservation of mass.
    """
    sand = sum(line.dry_kg for line in mix.lines if line.kind == "aggregate")
    if not sand:
        return {}
    stone = sum(line.dry_kg for line in mix.base_lines if line.role == "stone")
    total = sand + sum(line.dry_kg for line in mix.base_lines)
    return {
        "fine_aggregate_fraction": 1.0 - stone / total,
        "cement_kg_m3": mix.binder_share[1] / mix.base_m3,
        "air_fraction": mix.air_fraction * mix.phi,
    }


def plan_bow(layers, mix, density_kg_m3, *, rh_fraction=None, strength_28d_pa=None, cement="normal"):
    """Say how much a piece may bow where it will stand.

    Not for a piece screwed or glued down: held flat it is stressed instead, and may crack.

    Parameters
    ----------
    layers : Layers
        The two layers [m].
    mix : Mix
        Mortar and base [kg].
    density_kg_m3 : float
        Density of the piece [kg/m3].
    rh_fraction : float or None
        Air in which it will stand; that of the table when left out [-].
    strength_28d_pa : float or None
        Likely strength at 28 days; that of the table when left out [Pa].
    cement : str
        rapid, normal or slow [-].

    Returns
    -------
    Bow
        Shrinkage and bows with their bands, advice and working [as its fields].

    Raises
    ------
    ValueError
        When an entry is impossible.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> bow = plan_bow(plan.layers, plan.mix, 2280.0)
    >>> bow.two_layer.low_m < bow.two_layer.likely_m < bow.two_layer.high_m
    True

    References
    ----------
    As `bow_bands`; self-weight as `science.curl_weight`.
    """
    rh = defaults.si("humidity") if rh_fraction is None else require("humidity", rh_fraction, 0, 1)
    fc = defaults.si("strength_28d") if strength_28d_pa is None else strength_28d_pa
    en_class = {"rapid": "R", "normal": "N", "slow": "S"}[cement]
    thick, face = layers.thickness_m, layers.face_thickness_m
    diagonal = _longest_m(layers.plan)
    recipe = base_recipe(mix) or None
    sizes, both_dry, top_dry = bow_bands(
        thick, face, diagonal, mix.phi, rh_fraction=rh, strength_28d_pa=fc, cement_class=en_class, recipe=recipe
    )
    en, aci, en_28, aci_28 = sizes
    likely = (en + aci) / 2.0
    ratios = shrinkage.aggregate_restraint_ratio(1.0 - mix.phi, np.array(defaults.si_band("pickett_n")))
    slab = (diagonal, thick, defaults.si("modulus_base"), density_kg_m3)
    lying = curl_weight.dish_lift_m(8.0 * np.array([both_dry[1], top_dry[1]]) / diagonal**2, *slab)
    bow = Bow(
        rh, fc, en_class, MappingProxyType(recipe or COMMON_BASE), diagonal, en, aci, en_28, aci_28,
        float(ratios[1]), float(ratios[2]), float(ratios[0]), likely / float(ratios[1]), likely,
        Bowing(*both_dry, float(lying[0]), bow_level(both_dry[1])),
        Bowing(*top_dry, float(lying[1]), bow_level(top_dry[1])),
        float(curl_weight.self_weight_sag_m(*slab)),
    )  # fmt: skip
    return replace(bow, advice=bow_advice(bow, layers, mix), working=bow_working(bow, layers, mix))


def _longest_m(plan):
    corners = shapely.get_coordinates(plan.convex_hull)
    return float(np.max(np.hypot(*(corners[:, np.newaxis] - corners).transpose(2, 0, 1))))
