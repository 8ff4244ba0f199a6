"""The first page: the bench by weight, and the whole line of a plan on one page."""

from dataclasses import dataclass
from math import ceil

from shop_calc import units
from shop_calc.lesson.table import table
from shop_calc.science.lifting import LOAD_CONSTANT_KG
from shop_calc.trade.shape.form import mass_on_table_kg
from shop_calc.trade.shape.plain_volumes import slab_volume_m3
from shop_calc.units import show

BENCH_WIDTH_M = 0.381  # invented: 15 in, as the bench that runs through the lessons
LIMIT_KG = LOAD_CONSTANT_KG


@dataclass(frozen=True)
class Plank:
    """A bench top on the scale.

    Parameters
    ----------
    mass_kg : float
        Its mass while fresh [kg].
    mass_kg_m2 : float
        The same per area of top [kg/m2].

    Examples
    --------
    >>> Plank(51.0, 90.0).lifts
    2.2046226218487757

    References
    ----------
    NIOSH 94-110 for the limit.
    """

    mass_kg: float
    mass_kg_m2: float

    @property
    def lifts(self):
        """How many times the most that one person should lift."""
        return self.mass_kg / LIMIT_KG


def weigh_plank(length_m, thickness_m, width_m=BENCH_WIDTH_M):
    """Weigh a bench top of plain concrete.

    Not the weight of a planned piece: a plan knows its own mix.

    Parameters
    ----------
    length_m, thickness_m, width_m : float
        Sizes [m].

    Returns
    -------
    Plank
        Its mass [kg].

    Raises
    ------
    ValueError
        When a size is not positive.

    Examples
    --------
    >>> round(weigh_plank(1.52400, 0.038100).mass_kg, 3)
    53.16

    References
    ----------
    Common practice, no source: 150 lb/ft3.
    """
    mass = mass_on_table_kg(slab_volume_m3(length_m, width_m, thickness_m))
    return Plank(mass, mass / (length_m * width_m))


def plank_words(result, system="both"):
    """Say what a bench top weighs.

    Parameters
    ----------
    result : Plank
        From `weigh_plank` [-].
    system : str
        "us", "si" or "both" [-].

    Returns
    -------
    str
        Two lines [-].

    Examples
    --------
    >>> print(plank_words(weigh_plank(1.524, 0.0381), "us"))
    It weighs 117 lb.
    That is 18.8 lb/ft² of top, and in all 2.3 times what one person may lift.
    >>> print(plank_words(weigh_plank(0.6096, 0.0381), "us"))
    It weighs 46.9 lb.
    That is 18.8 lb/ft² of top, and in all no more than what one person may lift.

    References
    ----------
    NIOSH 94-110 for the limit.
    """
    times = f"{units.plain_number(result.lifts, 2)} times" if result.lifts > 1 else "no more than"
    return (
        f"It weighs {show(result.mass_kg, 'mass', system)}.\n"
        f"That is {show(result.mass_kg_m2, 'areal_mass', system)} of top, and in all {times} what one person may lift."
    )


def whole_line(plan, system="both"):
    """Set the whole job on one page: what goes in, what comes out, which lesson takes it apart.

    Parameters
    ----------
    plan : Plan
        A plan [-].
    system : str
        "us", "si" or "both" [-].

    Returns
    -------
    Table
        One row an arrow of the line [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> whole_line(make_plan(read_job(demo_job("garden_bench_top")))).rows[0][2]
    '01'

    References
    ----------
    Common practice, no source, for the order of the steps.
    """
    layers, batch, day = plan.layers, plan.batch, plan.day
    say = lambda value, kind: show(value, kind, system)  # noqa: E731
    clock = lambda key: f"{day.clock(day.stage(key).likely_from_h):%H:%M}"  # noqa: E731
    cover = next(each.title for each in plan.cure.choices if each.key == plan.cure.pick)
    left, front, right, back = layers.plan.bounds
    sides = f"{say(right - left, 'length')} by {say(back - front, 'length')}, {say(layers.thickness_m, 'length')} thick"
    rows = (
        (f"a tape measure: {sides}",
         f"face {say(layers.face_m3, 'volume')}, base {say(layers.core_m3, 'volume')}", "01"),
        ("a recipe and a scale", f"{say(batch.total_kg, 'mass')} to weigh; {say(batch.on_scale_kg, 'mass')} of mortar "
         "set aside for the face", "02"),
        (f"a thermometer: powder {say(plan.job.materials['powder_temp'], 'temperature')}",
         f"water at {say(batch.water.water_temp_c, 'temperature')} for a mortar at "
         f"{say(batch.water.mix_temp_c, 'temperature')}", "03"),
        (f"the room: {say(plan.job.rooms[0]['air'], 'temperature')}, water in at {day.water_in:%H:%M}",
         f"sides off about {clock('strip')}, first steel about {clock('first_steel')}: look, and let the cue decide",
         "04"),
        ("the night: how cold, how dry", f"{cover[0].lower()}{cover[1:]}, or why another cover is better", "05"),
        ("its age and its supports", f"{_first_move(plan, say)}; and who has to check its legs", "06"),
        ("one side drying before the other", f"a bow of about {say(plan.bow.two_layer.likely_m, 'length')}, "
         "and how to keep it flat", "07"),
        ("its strength and how dry it is",
         f"polish after {say(ceil(plan.finish.polish_from_h), 'duration')}, seal after "
         f"{say(plan.finish.seal_from_h, 'duration')}; {plan.cost.currency}{plan.cost.pro_rata:.0f} of material at "
         "invented prices", "08"),
        ("all of that", "one job file, one sheet for the wall", "09"),
        ("what you saw on the day", "a shop log, and a clock set to your own mix", "10"),
        ("an invented day", "a whole pour without a bag opened", "11"),
    )  # fmt: skip
    return table(("you have", "you get", "lesson"), rows)


def _first_move(plan, say):
    ways = [way for way in plan.handling.carries if way.earliest_h is not None]
    if not ways:
        return "no way to carry it by hand yet"
    first = min(ways, key=lambda way: way.earliest_h)
    how = f"{first.title[0].lower()}{first.title[1:]}"
    return f"off its board after {say(first.earliest_h, 'duration')} at the earliest, {how}"
