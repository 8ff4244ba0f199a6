"""Polishing and sealing: from when, through which grits, how the moisture is checked, how much sealer."""

from dataclasses import dataclass, replace

from shop_calc import defaults
from shop_calc.science.checks import require
from shop_calc.science.loads import spread_rate_m2_m3
from shop_calc.trade.after.finish_advice import finish_advice
from shop_calc.trade.after.finish_steps import finish_steps
from shop_calc.trade.after.finish_words import SEALER_CHOICES, SEALERS
from shop_calc.trade.after.finish_working import finish_working
from shop_calc.trade.after.polish_seal import FINE_GRIT, fibre_showing, grit_steps, sealer_volume_m3
from shop_calc.trade.shape.drops import edge_below_m2


@dataclass(frozen=True)
class FinishChoice:
    """How a piece will be finished, as far as the job says; None takes the table.

    Parameters
    ----------
    polish_depth_m : float or None
        Depth that grinding and polishing take off [m].
    first_grit, last_grit : int
        First and last grit [-].
    sealer : str
        none, or a kind of finish_words.SEALERS [-].
    solids_fraction, film_m, coverage_m2_m3 : float or None
        From the label: solids by volume, dry film of a coat, area of one coat [-, m, m2/m3].
    coats : float or None
        Coats [-].
    wet : bool
        Whether it is polished wet [-].

    Examples
    --------
    >>> FinishChoice().sealer
    'penetrating'

    References
    ----------
    Common practice, no source.
    """

    polish_depth_m: float | None = None
    first_grit: int = 200
    last_grit: int = 800
    sealer: str = "penetrating"
    solids_fraction: float | None = None
    film_m: float | None = None
    coverage_m2_m3: float | None = None
    coats: float | None = None
    wet: bool = True

    def __post_init__(self):
        if self.sealer not in SEALER_CHOICES:
            raise ValueError(f"sealer: {self.sealer!r} given; it must be one of {', '.join(SEALER_CHOICES)}")


@dataclass(frozen=True)
class Finish:
    """Polishing and sealing of one piece.

    Parameters
    ----------
    choice : FinishChoice
        What was asked [as its fields].
    depth_m : float
        Depth that polishing takes off [m].
    grits : tuple of int
        Grits in order, each about twice the one before; empty when nothing is polished [-].
    polish_strength_pa : float
        Strength from which these grits tear nothing out [Pa].
    polish_from_h : float or None
        First hour for it, the morning at the earliest; None when it is not there within 28 days [h].
    fibre : str
        none, safe, some, worst or hidden [-].
    seal_from_h, seal_low_h, seal_high_h : float or None
        Usual age for that sealer after the first water, and the span that is quoted; None without sealer [h].
    sheet_h : float
        How long the taped sheet lies before it is read [h].
    area_m2, both_m2 : float
        Area of top and exposed edges, and with the underside [m2].
    coverage_m2_m3 : float or None
        Area that a volume covers in one coat [m2/m3].
    coats : float
        Coats [-].
    sealer_m3, sealer_both_m3 : float
        Sealer for all coats, waste included: top and edges, and with the underside [m3].
    steps : tuple of FinishStep
        What to do in which order, each with its caution [-].
    advice : tuple of Advice
        What to do and to know [-].
    working : tuple of Step
        How each number came about [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> make_plan(read_job(demo_job("garden_bench_top"))).finish.grits
    (200, 400, 800)

    References
    ----------
    ASTM D4263 for the sheet; ages are common practice, rows of data/defaults.csv.
    """

    choice: FinishChoice
    depth_m: float
    grits: tuple
    polish_strength_pa: float
    polish_from_h: float | None
    fibre: str
    seal_from_h: float | None
    seal_low_h: float | None
    seal_high_h: float | None
    sheet_h: float
    area_m2: float
    both_m2: float
    coverage_m2_m3: float | None
    coats: float
    sealer_m3: float
    sealer_both_m3: float
    steps: tuple = ()
    advice: tuple = ()
    working: tuple = ()


def faced_area_m2(piece):
    """Area of the top and of all exposed edges, those of cut-outs and the ends of dropped edges included.

    Parameters
    ----------
    piece : Piece
        A checked piece [m].

    Returns
    -------
    float
        Area [m2].

    Examples
    --------
    >>> from shop_calc.trade.shape.outline import rectangle
    >>> from shop_calc.trade.shape.piece import build_piece
    >>> f"{faced_area_m2(build_piece(rectangle(1.524, 0.381), 0.0381, True)):.6f}"
    '0.725805'

    References
    ----------
    Derived: geometry.
    """
    return piece.area_m2 + piece.exposed_length_m * piece.thickness_m + edge_below_m2(piece)


def plan_finish(piece, layers, mix, handling, day, cure, choice=None):
    """Plan polishing and sealing.

    Not a promise: the ages are habits, the taped sheet and the scale decide.

    Parameters
    ----------
    piece : Piece
        The piece [m].
    layers : Layers
        Its layers [m].
    mix : Mix
        The mix, for its fibre [kg].
    handling : Handling
        Strength with the hours [h, Pa].
    day : Day
        The day, for the clock [h].
    cure : Cure
        The night, for what its cover means to a sealer [-].
    choice : FinishChoice or None
        What is wanted; the table when left out [as its fields].

    Returns
    -------
    Finish
        Times, grits, amounts, steps, advice and working [as its fields].

    Raises
    ------
    ValueError
        When an entry is impossible.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> plan.finish.polish_from_h > plan.cure.until_h
    True

    Notes
    -----
    Polishing goes by the likely strength: nobody is hurt when a grain comes out, and a corner of the underside
    shows it.

    References
    ----------
    As the class.
    """
    choice = FinishChoice() if choice is None else choice
    depth = defaults.si("polish_depth") if choice.polish_depth_m is None else choice.polish_depth_m
    require("polish depth", depth, 0, layers.thickness_m, unit="m")
    grits = grit_steps(choice.first_grit, choice.last_grit) if depth > 0 else ()
    strength = defaults.si("polish_strength_fine" if choice.first_grit >= FINE_GRIT else "polish_strength_coarse")
    polish_h = None
    if grits:
        hour = handling.hardening.hour_at(min(strength / handling.strength.likely_pa, 1.0))
        polish_h = None if hour is None else max(hour, handling.morning.hour_h)
    kind = SEALERS.get(choice.sealer)
    water_h = day.samples.inputs.face_load_h
    ages = (None,) * 3
    if kind is not None:
        low, usual, high = defaults.si_band(kind.row)
        ages = tuple(water_h + age for age in (usual, low, high))
    area = faced_area_m2(piece)
    coverage = coats = volume = None
    if kind is not None:
        coverage, coats = _coverage(choice, kind), _given(choice.coats, "sealer_coats")
        volume = [sealer_volume_m3(size, coverage, coats) for size in (area, area + piece.area_m2)]
    finish = Finish(
        choice, depth, grits, strength, polish_h, fibre_showing(depth, bool(mix.face_fibres)), *ages,
        defaults.si("sheet_hours"), area, area + piece.area_m2, coverage, coats or 0.0, *(volume or (0.0, 0.0)),
    )  # fmt: skip
    return replace(
        finish,
        steps=finish_steps(finish, handling),
        advice=finish_advice(finish, layers, mix, cure, min(piece.outline.box_m)),
        working=finish_working(finish, handling),
    )


def _given(value, row):
    return defaults.si(row) if value is None else value


def _coverage(choice, kind):
    if choice.coverage_m2_m3 is not None or not kind.film:
        return _given(choice.coverage_m2_m3, "sealer_coverage")
    solids, film = _given(choice.solids_fraction, "sealer_solids"), _given(choice.film_m, "sealer_film")
    return float(spread_rate_m2_m3(solids, film))
