"""Temperatures of what goes into the mixer, as a job gives them or leaves them out."""

from dataclasses import replace

from shop_calc.trade.advice import Advice
from shop_calc.trade.batching.water import plan_water, temps
from shop_calc.trade.timeline.room import room_at
from shop_calc.units import show

ROOM_APART_K = 3.0  # judgement: so far from the air, powder that nobody measured moves the water by several degrees


def temperatures_of(job):
    """Collect them for the water plan.

    Parameters
    ----------
    job : Job
        A checked job [SI].

    Returns
    -------
    Temps
        Powder, sand, stone, liquids and tap water [°C].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> round(temperatures_of(read_job(demo_job("garden_bench_top"))).powder_c, 2)
    21.11

    References
    ----------
    Common practice, no source.
    """
    materials = job.materials
    return temps(
        materials["powder_temp"],
        sand_c=materials["sand_temp"],
        stone_c=materials["stone_temp"],
        liquids_c=max(materials["liquids_temp"], 0.0),  # frozen admixtures are thrown away, not used
        tap_water_c=materials["water_temp"],
    )


def stored_advice(job, mix, batch, room):
    """Say that powder nobody measured was counted warmer or colder than the shop, and which water it would take.

    Parameters
    ----------
    job : Job
        A checked job [SI].
    mix : Mix
        Its mix [SI].
    batch : Batch
        Its batch, with the water as planned [SI].
    room : Room
        The air of the day [SI].

    Returns
    -------
    tuple of Advice
        One line, or nothing where powder was measured or the shop is as warm [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> stored_advice(plan.job, plan.mix, plan.batch, plan.day.samples.inputs.room)
    ()

    References
    ----------
    Derived: heat balance of the mix; the limit is judgement.
    """
    counted, air = job.materials["powder_temp"], float(room_at(room, 0.0)[0])
    if "materials.powder_temp" not in job.assumed or abs(air - counted) <= ROOM_APART_K:
        return ()
    guessed = {name: air for name in ("powder_temp", "sand_temp", "stone_temp", "liquids_temp")
               if f"materials.{name}" in job.assumed}  # fmt: skip
    as_the_shop = temperatures_of(replace(job, materials={**job.materials, **guessed}))
    instead = plan_water(mix, as_the_shop, batch.water.wanted_mix_temp_c, face_alone=batch.face_alone)
    return (
        Advice(
            "act", "water", f"Measure powder, sand and stone and give powder_temp: nobody did, {show(counted, 'temperature')} "
            f"is counted, and the shop has {show(air, 'temperature')}.",
            f"If they lie in that air: {instead.words}", "derived", "heat balance of this mix",
        ),
    )  # fmt: skip
