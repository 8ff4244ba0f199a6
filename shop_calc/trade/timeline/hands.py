"""How long the work of the hands takes: placing, spreading, floating, trowelling."""

from shop_calc import defaults
from shop_calc.science import checks


def step_h(area_m2, minutes_per_m2, hands):
    """Time of one step over the whole surface.

    Parameters
    ----------
    area_m2 : float
        Surface to work [m2].
    minutes_per_m2 : float
        Minutes for one square metre and one pair of hands [min/m2].
    hands : float
        People who work on it at once [-].

    Returns
    -------
    float
        Time, never less than the shortest step of the table [h].

    Raises
    ------
    ValueError
        When nobody works or the area is not positive.

    Examples
    --------
    >>> f"{step_h(1.5, 20.0, 2.0):.5f}"
    '0.25000'

    References
    ----------
    Derived; the minutes are a judgement, see data/defaults.csv.
    """
    checks.require("hands", hands, 1, unit="people")
    checks.require("surface", area_m2, 0, unit="m2", low_open=True)
    least_h = defaults.get("least_step_minutes").value / 60.0
    return max(area_m2 * minutes_per_m2 / 60.0 / hands, least_h)


def work_hours(area_m2, load_count, minutes_per_load, looks):
    """Person-hours at the mixer and at the trowel, waiting not counted.

    Parameters
    ----------
    area_m2 : float
        Top surface [m2].
    load_count : int
        Loads mixed [-].
    minutes_per_load : float
        Minutes from one load's water to the next [min].
    looks : int
        Looks and re-floats before the sides come off [-].

    Returns
    -------
    float
        Work of one person [h].

    Examples
    --------
    >>> f"{work_hours(0.58, 1, 20.0, 3):.5f}"
    '1.71300'

    Notes
    -----
    Loads, spreading the face, screed and first float, one float a look, four passes of steel, and a quarter hour
    to strip, plus the same again to patch the edges.

    References
    ----------
    Derived; the minutes are a judgement, see data/defaults.csv.
    """
    per_area = {
        name: defaults.get(name).value
        for name in ("face_minutes_per_area", "float_minutes_per_area", "trowel_minutes_per_area")
    }
    mixing_min = load_count * minutes_per_load
    surface_min = area_m2 * (
        per_area["face_minutes_per_area"]
        + per_area["float_minutes_per_area"]
        + (looks + 4) * per_area["trowel_minutes_per_area"]
    )
    return (mixing_min + surface_min + 30.0) / 60.0


def person_hours(plan):
    """Add up the work of a plan, waiting not counted.

    Parameters
    ----------
    plan : Plan
        A plan [as its fields].

    Returns
    -------
    float
        Work of one person [h].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> f"{person_hours(make_plan(read_job(demo_job('garden_bench_top')))):.5f}"
    '1.71398'

    References
    ----------
    As `work_hours`; a look every half hour until the sides come off.
    """
    look = plan.day.stage("look")
    looks = max(round((look.likely_to_h - look.likely_from_h) / 0.5), 1)
    minutes = 60.0 * plan.job.mixer["minutes_per_load"]
    return float(work_hours(plan.layers.top_area_m2, len(plan.batch.loads), minutes, looks))
