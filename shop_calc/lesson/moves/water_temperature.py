"""Lesson 03: the mortar of the bench top between warm powder and cold water, and a cup of sand and water."""

from dataclasses import dataclass, replace
from functools import cache

from shop_calc import defaults
from shop_calc.lesson.pictures.follow import Follow
from shop_calc.lesson.pictures.from_plan import heat_of_mortar
from shop_calc.lesson.pictures.heat import HeatAreas, HeatBalance
from shop_calc.lesson.table import table
from shop_calc.science.checks import require
from shop_calc.science.heat_balance import mix_temp_c
from shop_calc.trade.batching.mix_heat import MixHeat
from shop_calc.trade.batching.water import temps
from shop_calc.trade.jobs.job import demo_job, read_job
from shop_calc.trade.plan import make_plan
from shop_calc.units import show

# Judgement: the warmth that a thin cup gives off, as so much water at room temperature; low, likely, high.
CUP_KG = (0.0, 0.010, 0.030)
THERMOMETER_K = 0.5  # judgement: a kitchen thermometer
HAND_WARM_C = 35.0  # judgement: from here on water is called hot


@dataclass(frozen=True)
class Warmth:
    """A mortar, what it comes to, and what its water would have to be.

    Parameters
    ----------
    balance : HeatBalance
        Parts, temperature of the mortar, wanted temperature [as its fields].
    water_c : float
        Mixing water as set [°C].
    needed_water_c : float
        Temperature that liquid water alone would need, whether there is such water or not [°C].
    ice_share : float
        Ice among the mixing water [-].
    degrees_of_water : float
        Degrees of mixing water for one degree of mortar [-].

    Examples
    --------
    >>> round(warmth(21.1111, 15.0000, 0.0, 15.5556).needed_water_c, 3)
    5.192

    References
    ----------
    From memory of ACI 305R, temperature of freshly mixed concrete.
    """

    balance: HeatBalance
    water_c: float
    needed_water_c: float
    ice_share: float
    degrees_of_water: float


@cache
def _bench():
    plan = make_plan(read_job(demo_job("garden_bench_top")))
    return plan.mix, plan.batch.mortar_m3 / plan.mix.mortar_m3


def warmth(powder_c, water_c, ice_share, wanted_c):
    """Work out the mortar of the bench top.

    Parameters
    ----------
    powder_c : float
        Powder, sand and liquids as they stand in the shop [°C].
    water_c : float
        Mixing water [°C].
    ice_share : float
        Share of the mixing water that goes in as ice [-].
    wanted_c : float
        Wanted temperature of the mortar [°C].

    Returns
    -------
    Warmth
        What comes out [-].

    Raises
    ------
    ValueError
        When there is more ice than the mortar can melt.

    Examples
    --------
    >>> round(warmth(21.1111, 15.0000, 0.0, 15.5556).balance.mix_temp_c, 4)
    18.9784

    References
    ----------
    From memory of ACI 305R, temperature of freshly mixed concrete.
    """
    mix, binder_kg = _bench()
    at = temps(powder_c)
    balance = heat_of_mortar(mix, at, water_c, wanted_c, ice_share, binder_kg)
    if ice_share > 0 and balance.mix_temp_c <= 0:
        raise ValueError(f"ice: {show(ice_share, 'fraction')} of the water given; the mortar cannot melt so much")
    heat = MixHeat(mix, at)
    return Warmth(balance, water_c, heat.water_for_c(wanted_c), ice_share, dict(heat.degrees_for_one())["water"])


def warmth_words(result, system="both"):
    """Say where the mortar comes out, and what the water would have to be.

    Parameters
    ----------
    result : Warmth
        From `warmth` [-].
    system : str
        "us", "si" or "both" [-].

    Returns
    -------
    str
        Two or three lines [-].

    Examples
    --------
    >>> print(warmth_words(warmth(21.1111, 15.0000, 0.0, 15.5556), "us"))
    The mortar comes out at 66.2 °F, 6.2 °F warmer than wanted.
    Without ice the water would have to be 41.3 °F. One degree of mortar takes 2.9 of water.

    References
    ----------
    Common practice, no source.
    """
    mix_c, wanted = result.balance.mix_temp_c, result.balance.wanted_temp_c
    temp = lambda value: show(value, "temperature", system)  # noqa: E731
    off = show(abs(mix_c - wanted), "temperature_difference", system)
    near = abs(mix_c - wanted) < 0.25
    where = "as wanted" if near else f"{off} {'warmer' if mix_c > wanted else 'colder'} than wanted"
    lines = [f"The mortar comes out at {temp(mix_c)}, {where}.", _water_words(result, temp)]
    if result.ice_share > defaults.si("ice_unreliable"):
        lines.append("More than half of the water is ice: it rarely all melts in time. Cool the powder instead.")
    elif result.ice_share > defaults.si("ice_warn"):
        lines.append("More than a fifth of the water is ice: crush it, and mix until the last of it is gone.")
    elif result.water_c > HAND_WARM_C:
        lines.append("Hot water onto the sand first, cement last: it never meets cement alone.")
    return "\n".join(lines)


def _water_words(result, temp):
    needed = result.needed_water_c
    if needed < 0:
        return f"Without ice the water would have to be {temp(needed)}: there is no such water."
    degrees = f"One degree of mortar takes {result.degrees_of_water:.1f} of water."
    if needed > defaults.si("water_hot_limit"):
        return f"The water would have to be {temp(needed)}, too hot for cement. Warm the powder instead."
    the = "The" if needed > HAND_WARM_C else "Without ice the"  # nobody asks for ice in hot water
    return f"{the} water would have to be {temp(needed)}. {degrees}"


def warmth_picture(*start):
    """Build the picture of the block.

    Parameters
    ----------
    *start : float
        What `warmth` takes, in its order [-].

    Returns
    -------
    Follow
        A picture that follows what `warmth` gives [-].

    Examples
    --------
    >>> warmth_picture(21.1, 15.0, 0.0, 15.6).alt[:33]
    'Heat balance of the mix as areas.'

    References
    ----------
    Common practice, no source.
    """
    return Follow(HeatAreas(warmth(*start).balance, (0.0, 40.0)), lambda result: result.balance)


def _as_stored(plan):
    """The balance of a planned batch with water from the tap, and nothing but what the job says."""
    binder_kg = plan.batch.mortar_m3 / plan.mix.mortar_m3
    lies = plan.job.materials
    at = temps(
        lies["powder_temp"],
        sand_c=lies["sand_temp"],
        stone_c=lies["stone_temp"],
        liquids_c=max(lies["liquids_temp"], 0.0),
        tap_water_c=lies["water_temp"],
    )
    wanted = plan.batch.water.wanted_mix_temp_c
    return heat_of_mortar(plan.mix, at, at.tap_water_c, wanted, 0.0, binder_kg)


def parts_table(plan):
    """List what goes into the mortar of a plan, as the heat balance sees it.

    Parameters
    ----------
    plan : Plan
        A planned job whose powder, sand and liquids stand at one temperature [-].

    Returns
    -------
    Table
        Name, mass, temperature [-].

    Examples
    --------
    >>> parts_table(make_plan(read_job(demo_job("garden_bench_top")))).rows[0]
    ('powder', '36 lb (16.3 kg)', '70 °F (21.1 °C)')

    References
    ----------
    Common practice, no source.
    """
    parts = [part for part in _as_stored(plan).parts if part.mass_kg > 0]
    rows = [(part.name, show(part.mass_kg, "mass"), show(part.temp_c, "temperature")) for part in parts]
    return table(("what", "mass", "as it stands"), rows)


def balance_picture(plan):
    """Draw the balance of a plan with water from the tap.

    Parameters
    ----------
    plan : Plan
        A planned job [-].

    Returns
    -------
    HeatAreas
        The picture [-].

    Examples
    --------
    >>> balance_picture(make_plan(read_job(demo_job("garden_bench_top")))).alt[:33]
    'Heat balance of the mix as areas.'

    References
    ----------
    Common practice, no source.
    """
    balance = _as_stored(plan)
    there = tuple(part for part in balance.parts if part.mass_kg > 0)
    return HeatAreas(replace(balance, parts=there), (11.0, 24.0))


def cup_band_c(sand_kg, sand_c, water_kg, water_c):
    """Predict a cup of dry sand with cold water stirred in.

    Parameters
    ----------
    sand_kg, water_kg : float
        Dry sand, and water without ice [kg].
    sand_c, water_c : float
        Their temperatures; the cup has that of the sand [°C].

    Returns
    -------
    tuple of float
        Low, likely, high [°C].

    Raises
    ------
    ValueError
        When there is no sand or no water.

    Notes
    -----
    The band is what a thin cup gives off, as 0 to 30 g of water at its temperature, and a thermometer read to
    0.5 °C; both are judgement.

    Examples
    --------
    >>> [round(value, 4) for value in cup_band_c(0.453592, 21.1111, 0.226796, 4.44444)]
    [9.037, 9.8809, 11.0108]

    References
    ----------
    From memory of ACI 305R, temperature of freshly mixed concrete.
    """
    for name, mass in (("sand", sand_kg), ("water", water_kg)):
        require(name, mass, 0, unit="kg", low_open=True)
    low, likely, high = (
        float(mix_temp_c([sand_kg], [sand_c], [water_kg, cup_kg], [water_c, sand_c])) for cup_kg in CUP_KG
    )
    low, high = sorted((low, high))
    return low - THERMOMETER_K, likely, high + THERMOMETER_K
