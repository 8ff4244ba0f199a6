"""What is said of pieces that are no plain strip, and of pieces too large to be moved as one."""

from shop_calc import defaults
from shop_calc.trade.advice import Advice
from shop_calc.trade.after.piece_beam import worst_place
from shop_calc.units import show

TWISTING = ("L", "U")
SHEET_M = 2.4384  # practice: boards are sold 8 ft long
_TIP_RATIO = 1.01  # less is rounding of the cuts


def frame_advice(handling, piece):
    """Say when a piece needs a board or frame under all of it.

    Parameters
    ----------
    handling : Handling
        The numbers [as its fields].
    piece : Piece
        The piece [m].

    Returns
    -------
    tuple of Advice
        One line for an L, a U and whatever has dropped edges [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("large_l_four_loads")))
    >>> frame_advice(plan.handling, plan.piece)[0].text
    'Carry it on a stiff board or frame under all of it.'

    References
    ----------
    Derived: elementary beam theory; that it twists is judgement.
    """
    if piece.outline.shape not in TWISTING and not piece.drop:
        return ()
    text = "Carry it on a stiff board or frame under all of it."
    reason = "A piece that is no plain strip twists when it is lifted; the stresses named leave that out."
    if piece.drop:
        hangs = show(piece.depth_m - piece.thickness_m, "length")
        text = f"Carry it on a stiff board or frame under all of it, packed up {hangs} under the thin part."
        stress, place_m, plain = worst_place(handling.beam, 0.0)
        reason += " A dropped edge is not counted as help."
        if stress > _TIP_RATIO * plain:
            reason += (
                f" Its tip is counted where it is pulled harder: held flat by the ends it has {show(stress, 'pressure')} at "
                f"{show(place_m, 'length')} from one end, a plate of that weight {show(plain, 'pressure')}."
            )
    return (Advice("act", "move", text, reason, "judgement", "ours; beam theory"),)


def seam_advice(handling, piece):
    """Say when a piece should rather be cast in two.

    Not a design of the seam: joint, filling and fixing are for whoever sets the piece.

    Parameters
    ----------
    handling : Handling
        The numbers [as its fields].
    piece : Piece
        The piece [m].

    Returns
    -------
    tuple of Advice
        One line or none: to do where it is long and heavy or weak, else to know [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("counter_worked_example")))
    >>> [line.level for line in seam_advice(plan.handling, plan.piece)]
    ['note']

    Notes
    -----
    Long is longer than a board. Heavy is beyond the lifting index at which hands are no way at all for the people there.
    Weak is what bends too much in the morning when it is held flat in the kindest way without a board. Half as long, a
    plain strip bends with a quarter of its own weight.

    References
    ----------
    Judgement; derived: elementary beam theory.
    """
    lift, fifth, length = handling.lift, handling.carry("fifth"), handling.beam.length_m
    long = length > SHEET_M * (1 + 1e-9)
    heavy = lift.index_ratio > defaults.si("lifting_index_high")
    weak = fifth.earliest_h is None or fifth.earliest_h > handling.morning.hour_h + 1e-9
    if not long and not (heavy and weak):
        return ()
    reasons = [f"As one it is {show(length, 'length')} long and weighs {show(lift.mass_kg, 'mass')}."]
    if long:
        reasons.append(
            f"Boards are {show(SHEET_M, 'length')} long: base board, frame and the way to its place need more than that."
        )
    if heavy:
        who = "One person bears" if lift.people == 1 else f"{lift.people} people bear"
        may = "one may lift" if lift.people == 1 else "they may lift together"
        reasons.append(f"{who} {lift.index_ratio:.1f} times what {may}.")
    if weak:
        reasons.append(
            f"Held flat a good fifth in it is pulled with {show(fifth.stress_pa, 'pressure')}, and has not the strength for "
            "that in the morning."
        )
    if piece.outline.shape in TWISTING:
        where = "at the inside corner"
        reasons.append("Straight legs are lighter and do not twist.")
    else:
        where = "near the middle, over a support and clear of openings"
        half = f"Each half weighs about {show(lift.mass_kg / 2, 'mass')}"
        reasons.append(f"{half} and bends with a quarter of that." if weak else f"{half}.")
    return (
        Advice(
            "act" if long and (heavy or weak) else "note", "form",
            f"Think of casting it in two with a seam {where}: both parts from one mix, on one day, each end of the seam faced "
            "and supported.",
            " ".join(reasons), "judgement", "ours; half as long is a quarter of the bending by beam theory",
        ),
    )  # fmt: skip
