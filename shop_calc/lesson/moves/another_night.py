"""Lesson 06: the block that carries a top of another length and thickness after another night."""

from dataclasses import dataclass, replace
from functools import cache

from shop_calc import defaults, units
from shop_calc.lesson.moves.strip_move import carry_view, ways_of, when
from shop_calc.lesson.pictures.carry_ways import CarryView
from shop_calc.lesson.pictures.follow import Follow
from shop_calc.trade.after.carrying import ways_to_carry
from shop_calc.trade.after.moving import plan_lift, team_words
from shop_calc.trade.after.piece_beam import piece_beam
from shop_calc.trade.after.strength_of_morning import piece_hardening
from shop_calc.trade.curing.cure import first_night
from shop_calc.trade.shape.outline import rectangle
from shop_calc.trade.shape.piece import build_piece
from shop_calc.trade.timeline.drying import face_clock
from shop_calc.trade.timeline.room import Room, room_at
from shop_calc.units import show


@dataclass(frozen=True, eq=False)
class Moved:
    """What the sliders make of the piece.

    Parameters
    ----------
    view : CarryView
        For the picture [-].
    carries : tuple of Carry
        Ways to carry [as their fields].
    morning_pa : float
        Strength counted in the morning [Pa].
    aci_age_h, reference_c : float
        Equivalent age in the morning, and at which temperature [h, °C].
    lift : Lift
        Mass and people [kg].

    Examples
    --------
    >>> Moved(None, (), 4e6, 17.7, 23.0, None).aci_age_h
    17.7

    References
    ----------
    As its parts.
    """

    view: CarryView
    carries: tuple
    morning_pa: float
    aci_age_h: float
    reference_c: float
    lift: object


def mover(plan):
    """Give the model of the block: a strip of the planned width, another night, another strength.

    Parameters
    ----------
    plan : Plan
        The planned job [-].

    Returns
    -------
    callable
        `model(length_m, thickness_m, night_c, strength_28_pa)`, gives a Moved [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> same = mover(plan)(1.52400, 0.0381, 16.6666666666667, plan.handling.strength.counted_pa)
    >>> f"{same.aci_age_h:.4f}" == f"{plan.handling.morning.aci_age_h:.4f}"
    True

    Notes
    -----
    The day stays as planned, and so does the cover; the night is the air from the first change after the tools stop
    until the morning. A thinner piece follows the air a little faster than is counted here.

    References
    ----------
    As shop_calc.trade.after.strength_of_morning and shop_calc.trade.after.carrying.
    """
    width_m, day = plan.handling.beam.across_m, plan.day
    morning_h = plan.cure.until_h

    @cache
    def hardening_of(night_c):
        return night_hardening(plan, night_c)

    def model(length_m, thickness_m, night_c, strength_28_pa):
        piece = build_piece(rectangle(length_m, width_m), thickness_m)
        beam = piece_beam(piece, plan.handling.density_kg_m3)
        hardening = hardening_of(night_c)
        carries = ways_to_carry(beam, hardening, strength_28_pa, morning_h)
        morning_pa = hardening.ratio_at(morning_h) * strength_28_pa
        view = carry_view(
            day, carries, (length_m, width_m, thickness_m), morning_pa, strength_28_pa, morning_h
        )
        mass_kg = plan.handling.density_kg_m3 * length_m * width_m * thickness_m
        lift = plan_lift(mass_kg, length_m * width_m, plan.handling.lift.people)
        return Moved(
            view, carries, morning_pa, hardening.ages_at(morning_h)[0], defaults.si("strength_reference_temp"), lift
        )

    return model


def night_hardening(plan, night_c):
    """Follow the piece through its day as planned and through a night of another temperature.

    Not for frost: what has frozen young is lost.

    Parameters
    ----------
    plan : Plan
        The planned job [-].
    night_c : float
        Air from the first change after the tools stop until the morning [°C].

    Returns
    -------
    Hardening
        Ages and shares at every hour [h, -].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> night_hardening(plan, 5.0).ratio_at(24.0) < plan.handling.hardening.ratio_at(24.0)
    True

    References
    ----------
    As shop_calc.trade.curing.cure and shop_calc.trade.after.strength_of_morning.
    """
    day, cure, layers, mix = plan.day, plan.cure, plan.layers, plan.mix
    inputs = day.samples.inputs
    other = replace(day, samples=replace(day.samples, inputs=replace(inputs, room=_night(inputs.room, cure, night_c))))
    water = mix.total_water_kg / mix.mortar_m3
    piece_water = water * (layers.face_m3 + mix.phi * layers.core_m3) / layers.top_area_m2
    night = first_night(other, face_clock(day), layers.face_thickness_m, water, piece_water)
    return piece_hardening(other, night, cure.pick, plan.handling.cement)


def _night(room, cure, night_c):
    """The room with another night; from the morning on it is as planned."""
    rows = list(zip(room.from_h, room.air_temp_c, room.rh_fraction, room.wind_m_s, strict=True))
    starts = [row[0] for row in rows if cure.from_h < row[0] < cure.until_h]
    start = starts[0] if starts else cure.from_h
    there = tuple(float(value) for value in room_at(room, start))
    later = tuple(float(value) for value in room_at(room, cure.until_h))
    kept = [row for row in rows if row[0] < start]
    after = [row for row in rows if row[0] > cure.until_h]
    return Room(*zip(*kept, (start, night_c, *there[1:]), (cure.until_h, *later), *after, strict=True))


def moved_words(day):
    """Give the words of the block.

    Parameters
    ----------
    day : Day
        The day, for its clock [h].

    Returns
    -------
    callable
        `words(moved, system)`, gives three lines [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> moved = mover(plan)(1.52400, 0.0381, 16.6666666666667, plan.handling.strength.counted_pa)
    >>> print(moved_words(plan.day)(moved, "us").splitlines()[0])
    Flat by the ends: not in 28 days. A fifth in: from Tue 08:00.

    References
    ----------
    Common practice, no source.
    """

    def words(moved, system="both"):
        ways = {way.key: way for way in moved.carries}
        ends, fifth = (when(day, ways[key].earliest_h) for key in ("ends", "fifth"))
        needed = show(ways["ends"].needed_strength_pa, "pressure", system)
        if ways["ends"].needed_strength_pa > units.convert(defaults.get("strength_28d").maximum, "psi", "Pa"):
            needed += ", which no such concrete has,"
        age = f"{moved.aci_age_h:.1f} h at {show(moved.reference_c, 'temperature', system)}"
        lift = moved.lift
        lines = [
            f"Flat by the ends: {ends}. A fifth in: {fifth}.",
            f"By the ends it needs {needed} in compression; in the morning {show(moved.morning_pa, 'pressure', system)} "
            f"can be counted on, at an age of {age}.",
            f"It weighs {show(lift.mass_kg, 'mass', system)}; {team_words(lift, system)}.",
        ]
        return "\n".join(lines)

    return words


def moving_ways(plan, title=""):
    """Give the picture of the block.

    Parameters
    ----------
    plan : Plan
        The planned job [-].
    title : str
        One line over the picture [-].

    Returns
    -------
    Follow
        Takes a Moved [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> moving_ways(make_plan(read_job(demo_job("garden_bench_top"))), "A top").alt[:5]
    'A top'

    References
    ----------
    As `carry_view`.
    """
    return Follow(ways_of(plan, title), lambda moved: moved.view)
