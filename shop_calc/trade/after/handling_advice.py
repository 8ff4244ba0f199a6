"""What is said about moving a piece and about what carries it."""

from shop_calc.science import maturity, strength
from shop_calc.trade.advice import Advice
from shop_calc.trade.after.frame_and_seam import frame_advice, seam_advice
from shop_calc.trade.after.moving import density_advice, lift_advice
from shop_calc.trade.after.quarter_hour import not_before
from shop_calc.trade.after.stress_words import no_concrete
from shop_calc.trade.after.support_advice import support_advice
from shop_calc.units import show

SHORT_NIGHT_H = 8.0  # judgement: less than that from the last steel to the morning, as after a pour in the evening
FULL_NIGHT_H = 12.0  # judgement
_FACTORS = "beam theory; jolt 2.0 and scatter 1.5 are our judgement; rupture of ACI 318-19 19.2.3, from memory"


def _clock(day, hour_h):
    return f"{not_before(day, hour_h):%a %d %b %H:%M}"


def _carry_lines(handling, day):
    ready, late = [], []
    for carry in handling.carries:
        soon = carry.earliest_h is not None and carry.earliest_h <= handling.morning.hour_h + 1e-9
        (ready if soon else late).append(carry)
    counted = show(handling.strength.counted_pa, "pressure")
    morning = handling.morning
    if ready:
        ways = "; ".join(carry.title[0].lower() + carry.title[1:] for carry in ready)
        yield Advice(
            "act", "move", f"Move it only from {_clock(day, morning.hour_h)} on, and only so: {ways}.",
            f"By then it has about {show(morning.low_pa, 'pressure')} to {show(morning.high_pa, 'pressure')}; "
            f"counted is {counted} at 28 days.", "derived", _FACTORS,
        )  # fmt: skip
    stop_h = day.stage("stop").likely_from_h
    if (rest_h := morning.hour_h - stop_h) < SHORT_NIGHT_H:
        yield Advice(
            "act", "move", f"Better leave it where it lies until {_clock(day, stop_h + FULL_NIGHT_H)}.",
            f"The morning comes {show(rest_h, 'duration')} after the last steel; so young, a strength by formula is a "
            "guess, and an edge that breaks off does not come back.", "judgement", "ours",
        )  # fmt: skip
    for carry in late:
        when = "not at all" if carry.earliest_h is None else f"not before {_clock(day, carry.earliest_h)}"
        beyond = no_concrete(carry.needed_strength_pa)
        needs = "more than any concrete has" if beyond else show(carry.needed_strength_pa, "pressure")
        yield Advice(
            "act", "move", f"{carry.title}: {when}.",
            f"That pulls {carry.tension} with {show(carry.stress_pa, 'pressure')}; with jolt and scatter it needs "
            f"{show(carry.needed_rupture_pa, 'pressure')} in bending, {needs} in compression, and is counted with "
            f"{counted} at 28 days.", "derived", _FACTORS,
        )  # fmt: skip


def handling_advice(handling, day, piece):
    """Say how a piece is moved and what must carry it.

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
        In the order of the work [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> lines = handling_advice(plan.handling, plan.day, plan.piece)
    >>> from shop_calc.trade.after.carrying import FALL_LINE
    >>> all(FALL_LINE in line.text for line in lines if "on edge" in line.text.lower())
    True

    References
    ----------
    Marks and sources stand in each Advice.
    """
    lines = [*_carry_lines(handling, day)]
    lines += frame_advice(handling, piece)
    lines += support_advice(handling, day, piece)
    lines += lift_advice(handling.lift)
    lines += seam_advice(handling, piece)
    lines += density_advice(handling.density_kg_m3)
    lines.append(
        Advice(
            "note", "move", "Do not count on fibre or on steel in the middle of the thickness: neither holds a bent "
            "piece.",
            "Steel at mid-depth lies where nothing is pulled; it belongs near the face in tension, the underside in "
            "a span and the top over a support, and a piece that is turned over sees both. Neither is counted here.",
            "derived", "beam theory; small fibre doses control cracks only",
        )
    )  # fmt: skip
    lines.append(
        Advice(
            "note", "move", "That it is no longer warm does not mean that it is cured.",
            "A thin piece hardly ever feels warm. It hardens by age and temperature: so far it is as old as "
            f"{handling.morning.aci_age_h:.0f} h at {handling.morning.aci_reference_c:g} °C, of the 672 h to its "
            "rated strength.", "derived", "ASTM C1074 form",
        )
    )  # fmt: skip
    if not handling.strength.tested:
        low, likely, high = (
            show(value, "pressure")
            for value in (handling.strength.low_pa, handling.strength.likely_pa, handling.strength.high_pa)
        )
        lines.append(
            Advice(
                "note", "move", "Test the mix and give strength_28d: until then the low end is counted.",
                f"Taken are {low} to {high}, likely {likely}; nobody has tested this mix.", "judgement",
                "row strength_28d of data/defaults.csv",
            )
        )  # fmt: skip
    lines.append(
        Advice(
            "note", "move", "Take strength and stress as extrapolated: the curves come from ordinary concrete.",
            "They were not fitted to thin pieces with polymer and fibre, nor to a piece that dries out: kept open it "
            f"gains less.{_too_young(handling.morning)}", "derived", "ranges of ACI 209R-92 and EN 1992-1-1:2004",
        )
    )  # fmt: skip
    lines += _odd_temperatures(handling.hardening, handling.morning.hour_h)
    return tuple(lines)


def _too_young(morning):
    """The curves that start at a later age than the morning's; none of them ends within 28 days."""
    rows = (
        ("ACI 209", morning.aci_age_h, strength.ACI_VALID_AGE_H[0]),
        ("EN 1992", morning.en_age_h, strength.EN_VALID_AGE_H[0]),
    )
    told = [f"{age:.0f} h old by {name}, which starts at {start:.0f} h" for name, age, start in rows if age < start]
    return f" In the morning it is {', and '.join(told)}." if told else ""


def _odd_temperatures(hardening, until_h):
    """What is said where the piece was colder or warmer, up to the morning, than a rule of maturity is good for."""
    temps = hardening.temp_c[hardening.time_h <= until_h + 1e-9]
    cold, hot = float(temps.min()), float(temps.max())
    rules = (
        ("the temperature-time factor", maturity.SAUL_VALID_TEMP_C, "Saul 1951, from memory"),
        ("the age of EN 1992", maturity.EN_VALID_TEMP_C, "EN 1992-1-1:2004 B.1(3)"),
    )
    left = [rule for rule in rules if cold < rule[1][0] or hot > rule[1][1]]
    if left:
        spans = "; ".join(f"{name} is good from {show(low, 'temperature')} to {show(high, 'temperature')}"
                          for name, (low, high), _ in left)  # fmt: skip
        yield Advice(
            "note", "move", f"Take {' and '.join(name for name, _, _ in left)} of this night as rough.",
            f"Up to the morning the piece has {show(cold, 'temperature')} to {show(hot, 'temperature')}: {spans}.", "memory",
            "; ".join(source for _, _, source in left),
        )  # fmt: skip
