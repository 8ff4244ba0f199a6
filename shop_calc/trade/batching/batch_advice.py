"""What a batch is refused for, and what it is warned about."""

from shop_calc import defaults
from shop_calc.science import heat_balance, lifting, teams
from shop_calc.trade.advice import Advice
from shop_calc.units import show

WHERE = "batch"
FACE_PARTICLES = 3.0  # judgement: the face is at least three of its largest particles thick
ONE_PERSON_KG = lifting.LOAD_CONSTANT_KG  # read: NIOSH lifting equation, load constant 51 lb for the best of lifts
LONG_MIXING_H = 3.0  # judgement: one person's mixing before arms and light give out


def refuse_face(mix, face_thickness_m):
    """Refuse a mortar whose particles are too coarse for the face.

    Parameters
    ----------
    mix : Mix
        The mix [-].
    face_thickness_m : float
        Thickness of the face [m].

    Raises
    ------
    ValueError
        When the largest particle is more than a third of the face.

    Examples
    --------
    >>> from shop_calc.trade.mortar.mix import build_mix
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> refuse_face(build_mix(recipe("demo counter bag")), 0.0063500)

    References
    ----------
    Judgement, after ACI 318-19 26.4.2.1, a third of the depth of a slab.
    """
    largest = mix.largest_particle_m
    if largest is not None and largest > face_thickness_m / FACE_PARTICLES * (1 + 1e-9):
        raise ValueError(
            f"{mix.recipe_name}: largest particle {show(largest, 'length')} given; it must be at most "
            f"{show(face_thickness_m / FACE_PARTICLES, 'length')}, a third of the face of "
            f"{show(face_thickness_m, 'length')}. It cannot make this face"
        )


def batch_advice(batch, mix, vessel, initial_set_h=None):
    """Say what needs care at the mixer.

    Parameters
    ----------
    batch : Batch
        The batch [-].
    mix : Mix
        The mix [-].
    vessel : Mixer
        The mixer [-].
    initial_set_h : float or None
        Initial set of the base at 21 °C as the shop log has it; that of the table if left out [h].

    Returns
    -------
    tuple of Advice
        Warnings and notes, those of the water among them, the gravest first [-].

    Examples
    --------
    >>> from types import SimpleNamespace
    >>> from shop_calc.trade.batching.batch import build_batch
    >>> from shop_calc.trade.mortar.mix import build_mix
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> layers = SimpleNamespace(face_m3=0.010779, core_m3=1.76980, face_thickness_m=0.00635)
    >>> batch = build_batch(layers, build_mix(recipe("demo mortar")))
    >>> batch.advice[0].level
    'stop'

    References
    ----------
    Marks and sources stand in each Advice.
    """
    found = [
        *_time(batch, initial_set_h),
        *_particles(mix),
        *_loads(batch, vessel),
        *_lifting(batch),
        *_mixer_heat(batch, mix, vessel),
        *batch.water.advice,
    ]
    order = {"stop": 0, "act": 1, "note": 2}
    return tuple(sorted(found, key=lambda each: order[each.level]))


def _hours(hours):
    return f"{hours:.1f} h" if hours >= 1 else f"{60 * hours:.0f} min"


def _time(batch, initial_set_h):
    row = defaults.get("set_time_initial")
    mark, source = (row.mark, row.source) if initial_set_h is None else ("derived", "fit of the shop log")
    gap, setting = defaults.si("layer_gap"), defaults.si("set_time_initial") if initial_set_h is None else initial_set_h
    count = len(batch.loads)
    if batch.mixing_h > setting:
        yield Advice(
            "stop",
            WHERE,
            "Do not pour it like this: a larger mixer, more hands on more mixers, or a planned joint.",
            f"{count} loads take {_hours(batch.mixing_h)}; the first has set after about {_hours(setting)} "
            "at 21 °C "
            "(70 °F), and sooner when it is warmer. Later loads meet it in a cold joint.",
            mark,
            source,
        )
    elif batch.mixing_h > gap + 1e-9:
        row = defaults.get("layer_gap")
        yield Advice(
            "act",
            WHERE,
            "Get a larger vessel or a second mixer; place each load wet against the last and work it in.",
            f"{count} loads take {_hours(batch.mixing_h)}; after {_hours(gap)} at 21 °C (70 °F) fresh mix "
            "no longer "
            "knits with what lies there.",
            row.mark,
            row.source,
        )
    if batch.mixing_h > LONG_MIXING_H:
        yield Advice(
            "act",
            WHERE,
            "Start early and plan light and a second person; never thin the mix because arms are tired.",
            f"Mixing alone keeps {batch.hands:.0f} at it for {_hours(batch.mixing_h)}; floats and steel "
            "come after it.",
            "judgement",
            "ours",
        )


def _particles(mix):
    if mix.largest_particle_m is None:
        yield Advice(
            "act",
            WHERE,
            "Sieve a handful: nothing in the face may be larger than a third of its thickness.",
            f"{mix.recipe_name} does not say how large its largest particle is.",
            "judgement",
            "ours",
        )


def _loads(batch, vessel):
    if len(batch.loads) > 1:
        need = show(max(batch.mixed_m3, batch.mortar_m3), "volume")
        need_drum = show(max(batch.base_m3, batch.mortar_m3) / defaults.si("drum_share"), "volume")
        row = defaults.get("drum_share")
        yield Advice(
            "note",
            WHERE,
            "Weigh every load alike; each has its own sheet and its own clock.",
            f"{batch.loads_why} The vessel takes {show(vessel.usable_m3, 'volume')} and the whole is "
            f"{need}; in one "
            f"load it would take a drum rated {need_drum}.",
            row.mark,
            row.source,
        )


def _lifting(batch):
    heaviest = max(load.heaviest_kg for load in batch.loads)
    if heaviest > ONE_PERSON_KG:
        people = teams.people_needed(heaviest, ONE_PERSON_KG)
        team = ", or take two people" if people == 2 else ", or take three people" if people == 3 else ""
        together = " and ".join(
            f"{show(teams.team_limit_kg([ONE_PERSON_KG] * count), 'mass')} that of {words}"
            for count, words in ((2, "two together"), (3, "three"))
        )
        yield Advice(
            "note",
            WHERE,
            f"Do not lift the full vessel: scoop it out or tip it{team}.",
            f"It holds up to {show(heaviest, 'mass')}; one person's limit in the best of lifts is "
            f"{show(ONE_PERSON_KG, 'mass')}, {together}.",
            "read",
            "NIOSH lifting equation (1991), load constant; HSE L23 as quoted for teams",
        )


def _mixer_heat(batch, mix, vessel):
    if not vessel.power_w:
        return
    basis_kg = max(load.mortar_m3 for load in batch.loads) / mix.mortar_m3
    time_s = 3600.0 * (vessel.load_interval_h - vessel.rest_h)
    capacity = batch.water.water_equivalent_kg * basis_kg
    rise = float(heat_balance.mixer_heat_rise_k(vessel.power_w, time_s, capacity))
    yield Advice(
        "note",
        WHERE,
        "Stop the mixer as soon as the mix is even.",
        f"All its power for {_hours(time_s / 3600)} would warm a load by "
        f"{show(rise, 'temperature_difference')} at the "
        "very most.",
        "derived",
        "energy balance; an upper bound",
    )
