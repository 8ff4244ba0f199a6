"""What is said about people on a piece: a seat must carry them, a top may in three steps, a strip may be leaned on."""

from shop_calc import defaults
from shop_calc.science import strength_laws
from shop_calc.trade.advice import Advice
from shop_calc.trade.after.carrying import ROUND
from shop_calc.trade.after.quarter_hour import not_before
from shop_calc.trade.after.stress_words import stress as said
from shop_calc.trade.after.supports import NOT_BEYOND, NOT_ENOUGH, check_supports
from shop_calc.trade.after.use_rule import BACK_RAIL, BOTH_RAILS, use_loads_kg
from shop_calc.units import show

SEAT_RULE = "our rule: 250 lb for every 24 in at the worst spot, doubled for sitting down, against rupture over 1.5"
USE_RULE = (
    "our rule: a hand of 100 lb; one person of 250 lb on a knee, 1.3 times for kneeling down slowly, twice for dropping; "
    "on 4 in square at the worst spot, theory of plates, against rupture over 1.5"
)
_LEAN_RULE = "our rule: 100 lb at the middle of the strip, its ends free to turn, against rupture over 1.5"


def support_advice(handling, day, piece):
    """Say what people may do on a piece, and what has to carry it.

    "stop" is kept for what is wrong to pour: a seat that does not carry people as it is to stand, and a top that its own
    weight and somebody leaning bring to all the strength counted. A limit of use is something to act on.

    Parameters
    ----------
    handling : Handling
        The numbers [as its fields].
    day : Day
        The day, for the clock [h].
    piece : Piece
        The piece [m].

    Returns
    -------
    tuple of Advice
        The gravest first [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> [line.level for line in support_advice(plan.handling, plan.day, plan.piece)]
    ['act']

    References
    ----------
    Marks and sources stand in each Advice.
    """
    spans = [check for check in handling.supports if check.key != "rail"]
    lines = [*_seats(handling, spans)]
    for check in spans:
        if check.lean_pa is not None:
            lines += _use(check, handling, day, piece)
    lines += _strips(handling)
    lines += _stone(spans)
    if spans:
        lines += [*_bedding(handling, piece), *_tipping(handling, piece, spans)]
    if piece.use == "wall-hung":
        lines.append(
            Advice(
                "note", "place", "If people are to sit on it, give use = \"seat\": then it is checked for them.",
                "What hangs on a wall and is no seat is checked for a hand and a careful knee only.", "judgement", "ours",
            )
        )  # fmt: skip
    if handling.stand.on == "wall" and piece.use != "wall-hung":
        lines.append(
            Advice(
                "act", "place", "What hangs on a wall: brackets, fixings and the wall are for someone licensed for it.",
                "The plan sizes none of them. Local code and licensed practice decide.",
            )
        )  # fmt: skip
    if not spans and not handling.legs and handling.stand.on in ("not said", "legs", "cabinet"):
        lines.append(
            Advice(
                "note", "place", "Give span, overhang and rails under [place] to have them checked; until then nothing is "
                "known of them.", "A top that is safe on a cabinet can break over an open span or an overhang.",
            )
        )  # fmt: skip
    return tuple(lines)


def _seats(handling, spans):
    for check in spans:
        if check.lean_pa is None and not check.holds:
            yield Advice(
                "stop", "place", f"{_capital(check.where)} it must not be sat or knelt on: "
                f"{NOT_BEYOND if check.key == 'overhang' else NOT_ENOUGH}.",
                stresses_said(check) + _unsaid_rails(check, handling), "judgement", SEAT_RULE,
            )  # fmt: skip
    if any(not check.holds for check in handling.legs):
        worst = max(handling.legs, key=lambda check: check.use_ratio)
        yield Advice(
            "act", "place", f"As a seat it must not stand on two legs alone: {NOT_ENOUGH}.",
            "Nobody has said what carries it; even where two legs help most, " + stresses_said(worst, first=False),
            "judgement", SEAT_RULE,
        )  # fmt: skip


def _unsaid_rails(check, handling):
    if check.key != "span" or handling.rails == BOTH_RAILS:
        return ""
    return " Where it lies on a front and a back rail, say rails = \"front and back\": then it is carried all round."


def _use(check, handling, day, piece):
    """One top between or beyond its supports: the step it is on, with its numbers and what would mend it."""
    beyond, step = check.key == "overhang", check.step
    remedy = NOT_BEYOND if beyond else NOT_ENOUGH
    where, apart = _capital(check.where), " away from its openings" if piece.cutouts else ""
    drop_pa = check.own_pa + check.drop_pa
    reason = (
        f"Its own weight pulls it with {said(check.own_pa)}. With a person {_spot(check, handling, piece)}: leaning "
        f"{said(check.own_pa + check.lean_pa)}, kneeling down slowly {said(check.stress_pa)}, dropping onto a knee "
        f"{said(drop_pa)}. At 28 days it may have {said(check.limit_pa)}; kneeling is {check.use_ratio:.2f} times that."
    )
    mends = [f"{mend.words} ({said(mend.stress_pa)})" for mend in check.mends]
    mended = f" Kneeling would be all right with {', or '.join(mends)}." if mends else ""
    if step == "stop":
        level, text = "stop", f"it may break when somebody leans on it: {remedy}."
    elif step == "lean":
        level, text = "act", f"it needs support before anybody so much as leans on it: {remedy}."
    elif step == "nobody":
        ways = ["brackets or a frame under it"] * beyond + [mend.words for mend in check.mends]
        change = " or ".join(ways) or "support under all of it"
        level, text = "act", f"nobody sits, kneels or stands on it; only {change} would change that."
    else:
        level = "note"
        text = f"one person may kneel down on it slowly{apart}, from {_from(check.stress_pa, handling, day)} on"
        text += "; nobody drops onto it or jumps down from it." if step == "care" else "."
        mended = "" if step == "care" else f" It bears a drop from {_from(drop_pa, handling, day)} on."
    yield Advice(level, "place", f"{where} {text}", reason + mended, "judgement", USE_RULE)


def _spot(check, handling, piece):
    """Where the worst spot is that a person was put on."""
    if check.key == "overhang":
        return "at its edge" if piece.outline.shape in ROUND else "on its corner"
    return "in the middle" if handling.rails == BOTH_RAILS else "at its free edge"


def _from(stress_pa, handling, day):
    """From when the counted strength is there for a stress, with its scatter."""
    wanted_pa = strength_laws.strength_for_rupture_pa(stress_pa * defaults.si("flexure_scatter"))
    hour = handling.hardening.hour_at(float(wanted_pa) / handling.strength.counted_pa)
    if hour is None:
        return "28 days"
    return f"{not_before(day, max(hour, handling.morning.hour_h)):%a %d %b}"


def _strips(handling):
    weak = [check for check in handling.supports if check.key == "rail" and not check.holds]
    if weak:
        worst = max(weak, key=lambda check: check.use_ratio)
        leaning = "a person leaning at its middle"
        words = f"Support the strip {worst.where} from below before anybody leans on it."
        reason = stresses_said(worst, leaning)
        if len(weak) > 1:
            places = "; ".join(check.where for check in weak)
            words = f"Support these strips from below before anybody leans on them: {places}."
            reason = f"The worst, {worst.where}: {stresses_said(worst, leaning, first=False)}"
        if handling.stand.on == "cabinet":
            reason += " The rail of the cabinet does it where the strip lies on it without a gap."
        yield Advice("act", "place", words, reason, "judgement", _LEAN_RULE)
    lean, kneel, _ = use_loads_kg()
    bare = [check for check in handling.supports if check.key == "rail" and check.holds
            and check.own_pa + check.people_pa * kneel / lean > check.limit_pa]  # fmt: skip
    if bare:
        worst = max(bare, key=lambda check: check.use_ratio)
        stress = worst.own_pa + worst.people_pa * kneel / lean
        places = "; ".join(check.where for check in bare)
        yield Advice(
            "act", "place", f"Nobody sits, kneels or stands on the strip {places}.",
            f"Leaning it holds, with {show(worst.stress_pa, 'pressure')}; a person who kneels down slowly makes "
            f"{show(stress, 'pressure')} of it{f' {worst.where}' if len(bare) > 1 else ''}, and it may have "
            f"{show(worst.limit_pa, 'pressure')}.", "judgement", USE_RULE,
        )  # fmt: skip


def _stone(spans):
    for check in spans:
        if check.beyond_stone and check.step not in ("stop", "lean"):
            yield Advice(
                "act", "place", f"{_capital(check.where)} it is longer than the guide for natural stone goes: have it "
                "looked at.", "Stone is no concrete, and what the guide allows is no proof for concrete.", "read",
                "Dimension Stone Design Manual, as quoted",
            )  # fmt: skip


def _bedding(handling, piece):
    """The checks count on supports that touch; on a cabinet, on rails that may be missing."""
    stand, span = handling.stand, handling.stand.span_m
    text = "Shim it until it touches its supports all along, under all of its width."
    reason = "The numbers count on that; a top that rides on one hard point breaks over it."
    if span and handling.rails == BOTH_RAILS:
        text = "Shim it until it touches both sides and the front and back rail of what it stands on."
    if span and handling.rails == BOTH_RAILS and piece.use != "seat":
        bare = check_supports(piece, handling.density_kg_m3, handling.strength.counted_pa, span, rails=BACK_RAIL)[0]
        stress, limit = bare.stress_pa, bare.limit_pa
        if stress > limit:
            text += " A bay without a front rail, as over a dishwasher, gets one." if stand.on == "cabinet" else ""
            reason = (
                "The numbers count on that. With no rail in front a person kneeling at the free edge would pull it with "
                f"{show(stress, 'pressure')}, and it may have {show(limit, 'pressure')}: say rails = \"back\" or \"none\" "
                "where it is so."
            )
    yield Advice("act", "place", text, reason, "practice", "common practice, no source")


def _tipping(handling, piece, spans):
    """A loose piece turns over its support when the end is loaded; the load of a seat is a person, else a hand."""
    for check in spans:
        if check.key != "overhang":
            continue
        seat = check.lean_pa is None
        size = piece.outline.box_m
        reach = (min(size) if handling.stand.overhang_at == "side" else max(size)) / 2.0 - check.size_m
        load = defaults.si("seat_load") if seat else defaults.si("rail_load")
        lifts = max(handling.lift.mass_kg * reach / check.size_m, 0.0)
        if load > lifts:
            people = "a person sitting on the end" if seat else "somebody leaning on the end"
            yield Advice(
                "act", "place", f"Fix it down to what carries it: {people} of the overhang tips a loose piece.",
                f"{show(lifts, 'mass')} on the end of the overhang lifts the other end; counted are {show(load, 'mass')}.",
                "derived", "lever; the load is our judgement",
            )  # fmt: skip


def _capital(words):
    return words[0].upper() + words[1:]


def stresses_said(check, people="people, sitting down included,", first=True):
    """Write both stresses of one place and what it may have.

    Parameters
    ----------
    check : SupportCheck
        The place [Pa].
    people : str
        Who loads it, in words [-].
    first : bool
        Whether a sentence begins with it [-].

    Returns
    -------
    str
        One sentence [-].

    Examples
    --------
    >>> from shop_calc.trade.after.supports import SupportCheck
    >>> stresses_said(SupportCheck("span", "between", 0.9, 1e6, 4e6, 2e6, True), "a person")[:44]
    'Its own weight bends it with 145 psi (1 MPa)'

    References
    ----------
    Common practice, no source.
    """
    words = (
        f"its own weight bends it with {show(check.own_pa, 'pressure')}, {people} with "
        f"{show(check.people_pa, 'pressure')}: {show(check.stress_pa, 'pressure')} in all, of which it may have "
        f"{show(check.limit_pa, 'pressure')}."
    )
    return _capital(words) if first else words
