"""Temperatures of what goes into the mixer, as a job gives them."""

from shop_calc.trade.batching.water import temps


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
