"""Advice that belongs to no single step: boards of the form, air outside the charts, the day as a whole, what it is for."""

import numpy as np

from shop_calc import defaults
from shop_calc.science import build_up, setting, slab_heat
from shop_calc.science.evaporation import VALID_TEMP_C, VALID_WIND_M_S
from shop_calc.trade.advice import Advice
from shop_calc.units import show

LATE_SHARE = 0.2  # judgement: one possible day in five is worth a board at hand


def form_advice():
    """Ask for a look at the coating of the form boards.

    Returns
    -------
    tuple of Advice
        One note, for every job [-].

    Examples
    --------
    >>> form_advice()[0].where
    'form'

    References
    ----------
    Common practice, no source.
    """
    return (
        Advice(
            "note", "form", "Look over the coated boards: seal every pinhole, scratch and sawn edge, and let it dry.",
            "Sugar that water draws out of bare wood can keep the face from setting at that spot.", "practice",
            "common practice, no source",
        ),
    )  # fmt: skip


def air_advice(room):
    """Say where the room lies outside the charts of evaporation.

    Parameters
    ----------
    room : Room
        Air over the day [SI].

    Returns
    -------
    tuple of Advice
        One note, or nothing [-].

    Examples
    --------
    >>> from shop_calc.trade.timeline.room import steady_room
    >>> air_advice(steady_room(21.0, 0.5, 0.0)), len(air_advice(steady_room(21.0, 0.5, 15.0)))
    ((), 1)

    References
    ----------
    Range of the charts of Menzel 1954, from memory.
    """
    (calm, windy), (cold, hot) = VALID_WIND_M_S, VALID_TEMP_C
    beyond = [f"wind {show(wind, 'speed')}" for wind in room.wind_m_s if not calm <= wind <= windy]
    beyond += [f"air {show(temp, 'temperature')}" for temp in room.air_temp_c if not cold <= temp <= hot]
    if not beyond:
        return ()
    return (
        Advice(
            "note", "float", "Take what the air takes from the face as a guess: this room lies outside the charts.",
            f"{', '.join(dict.fromkeys(beyond))}; the formula was drawn for winds up to {show(windy, 'speed')} and air of "
            f"{show(cold, 'temperature')} to {show(hot, 'temperature')}.", "memory", "range of the charts of Menzel 1954",
        ),
    )  # fmt: skip


def day_advice(day):
    """Say what the day as a whole asks for: hands, hours, frost, heat, thickness.

    Parameters
    ----------
    day : Day
        The planned day [h].


    Returns
    -------
    list of Advice
        Lines in the order of the day [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> [line.where for line in day_advice(make_plan(read_job(demo_job("sink_top_hot_day"))).day)]
    ['day']

    References
    ----------
    As each line says.
    """
    lines = []
    for key in day.crowded:
        stage = day.stage(key)
        lines.append(
            Advice(
                "act", key, f"{stage.title}: the mortar is ready before the hands are. More hands, a cooler mix or a "
                "smaller piece.",
                "The work before it takes longer than the mortar waits.", "derived",
                "hours of work in data/defaults.csv against the set clock",
            )
        )  # fmt: skip
    lines += _face_in_time(day)
    last = day.clock(day.stage("last_steel").likely_to_h)
    if last.hour >= 21 or last.date() != day.water_in.date():
        lines.append(
            Advice(
                "act", "last_steel", "The last passes fall into the night: start earlier, warm the room or the mix.",
                f"Last steel is likely until {last:%a %H:%M}.", "derived", "the plan of the day",
            )
        )  # fmt: skip
    if any(temp <= 0 for temp in day.samples.inputs.room.air_temp_c):
        lines.append(
            Advice(
                "stop", "day", "Do not pour into frost; keep the piece from freezing until it has 500 psi and a day more.",
                "Fresh concrete freezes a little below 0 °C and can lose half its strength; the skin peels.",
                "unnamed", "cold-weather guidance",
            )
        )  # fmt: skip
    inputs = day.samples.inputs
    top_w_m2_k = slab_heat.convection_w_m2_k(max(inputs.room.wind_m_s)) + defaults.si("h_radiation")
    thick = float(slab_heat.biot_number(top_w_m2_k, inputs.thickness_m, defaults.si("slab_conductivity")))
    if thick > slab_heat.THIN_BIOT_NUMBER:
        lines.append(
            Advice(
                "note",
                "day",
                "Feel the middle as well as the top: so thick a piece in this air is not of one temperature.",
                f"Biot number {thick:.2f}, above {slab_heat.THIN_BIOT_NUMBER:g}: the plan reckons with one temperature "
                "for the whole thickness, the top follows the air faster and the middle more slowly.",
                "derived",
                "heat balance of a slab; the limit is judgement",
            )
        )
    lines += [*_deep_base(inputs.standing_m), *_cold_clock(inputs.room)]
    if max(inputs.room.air_temp_c) > setting.VALID_TEMP_C[1]:
        lines.append(
            Advice(
                "note", "day", "Above 30 °C (86 °F) the clock is rough: look earlier and more often.",
                "Sources disagree by 20 to 30 % both ways on how fast mortar sets in heat.", "read",
                "course table CE 584 against heat of hydration of one portland cement",
            )
        )  # fmt: skip
    return lines


def _face_in_time(day):
    """What is said where the base stops taking the face before it carries it."""
    face, samples = day.stage("face"), day.samples
    hangs = samples.inputs.drop_m > 0.0
    reason = (
        f"The face can go on {face.likely_from_h:.1f} h after the first water; the base takes it until "
        f"{face.deadline_h:.1f} h."
    )
    late = float(np.sum(day.weight * (samples.open_h["face"] > samples.deadline_h["face"])) / np.sum(day.weight))
    if face.deadline_h < face.likely_from_h:
        words = (
            "The base of the dropped edge does not stand by itself before the face has to be on: a shallower drop, a "
            "stiffer base, or a thin board that holds it back and comes out as the face goes on."
            if hangs else
            "The base is too stiff when the face is ready for it: mix the base in fewer loads, faster, with more hands, or "
            "cooler."
        )  # fmt: skip
        yield Advice("stop", "face", words, reason, "judgement", "layer gap of data/defaults.csv")
    elif late >= LATE_SHARE:
        deep = "the dropped edge" if hangs else "so thick a piece"
        yield Advice(
            "act", "face", f"The base of {deep} may not stand by itself before the face has to be on: mix it stiff, and have a "
            "thin board ready that holds it back and comes out as the face goes on.",
            f"So on {late:.0%} of the days that the plan thinks possible. {reason}", "judgement",
            "layer gap of data/defaults.csv; growth of the yield stress at rest",
        )  # fmt: skip


def _deep_base(depth_m):
    """What is said where the straight growth at rest would be carried on for too long."""
    demand_pa = build_up.edge_demand_pa(
        depth_m, defaults.si("slab_density"), safety_factor=defaults.si("edge_safety_factor")
    )
    rest_s = float(
        build_up.rest_to_stress_linear_s(demand_pa, defaults.si("yield_stress_start"), defaults.si("build_up_rate"))
    )
    if rest_s > build_up.VALID_REST_S[1]:
        yield Advice(
            "note", "face", "So deep a base may need longer to stand than the plan says: nudge the form and go by that.",
            f"Growing evenly it stands after {rest_s / 3600.0:.1f} h of rest; a mix grows ever more slowly, and more than "
            f"{build_up.VALID_REST_S[1] / 3600.0:.0f} h is not to be counted so.", "judgement",
            "ours, by a measured yield stress at rest; growth from memory of Roussel 2006",
        )  # fmt: skip


def _cold_clock(room):
    """What is said where the air is colder than the activation energies were taken for."""
    cold = setting.VALID_TEMP_C[0]
    if min(room.air_temp_c) < cold:
        yield Advice(
            "note", "day", f"Below {show(cold, 'temperature')} the clock is rough: the cue can come hours later.",
            f"The room falls to {show(min(room.air_temp_c), 'temperature')}; how fast mortar sets in the cold is carried on "
            "from warmer mixes.", "judgement", "ours; activation energies of data/defaults.csv",
        )  # fmt: skip


def use_advice(job):
    """Say who has to check a piece that carries people or hangs.

    Parameters
    ----------
    job : Job
        A checked job [SI].


    Returns
    -------
    tuple of Advice
        One line, or none [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> use_advice(read_job(demo_job("garden_bench_top")))[0].level
    'act'

    References
    ----------
    Common practice, no source.
    """
    if job.piece["use"] == "top" or job.piece["use"] == "table":
        return ()
    words = {"seat": "a seat that people drop onto", "wall-hung": "a piece that hangs on a wall"}[job.piece["use"]]
    return (
        Advice(
            "act", "use", f"This is {words}: have supports, fixings and steel checked by someone licensed for it.",
            "The plan sizes no reinforcement. Local code and licensed practice decide.", "practice",
            "common practice, no source",
        ),
    )  # fmt: skip
