"""Handling: strength by the morning, ways to carry, supports that people load, and the lift itself."""

from dataclasses import dataclass, replace

from shop_calc.science.checks import require
from shop_calc.trade.after.carrying import ways_to_carry
from shop_calc.trade.after.handling_advice import handling_advice
from shop_calc.trade.after.handling_working import handling_working
from shop_calc.trade.after.morning import mornings
from shop_calc.trade.after.moving import Lift, plan_lift
from shop_calc.trade.after.piece_beam import Beam, piece_beam
from shop_calc.trade.after.strength_of_morning import Hardening, Strength28, strength_28
from shop_calc.trade.after.supports import best_legs, check_supports
from shop_calc.trade.after.use_rule import BOTH_RAILS, NO_RAIL
from shop_calc.trade.jobs.job_fields import OVERHANGS, RAILS, STANDS_ON


@dataclass(frozen=True)
class Stand:
    """Where a piece will stand, as far as the job says.

    Parameters
    ----------
    on : str
        One of job_fields.STANDS_ON [-].
    span_m : float or None
        Between its supports, along its length [m].
    overhang_m : float or None
        Beyond its supports [m].
    overhang_at : str
        "ends", so that the shorter side hangs over, or "side", the longer one [-].
    rails : str or None
        One of job_fields.RAILS, which edges along the span lie on a rail; None when nobody has said [-].

    Examples
    --------
    >>> Stand().on
    'not said'
    >>> Stand("cabinet").rails_for("top"), Stand("cabinet").rails_for("seat"), Stand("legs").rails_for("top")
    ('front and back', 'none', 'none')

    References
    ----------
    Common practice, no source.
    """

    on: str = "not said"
    span_m: float | None = None
    overhang_m: float | None = None
    overhang_at: str = "ends"
    rails: str | None = None

    def __post_init__(self):
        for name, value, allowed in (
            ("on", self.on, STANDS_ON), ("overhang_at", self.overhang_at, OVERHANGS), ("rails", self.rails, (None, *RAILS)),
        ):  # fmt: skip
            if value not in allowed:
                words = ", ".join(word for word in allowed if word)
                raise ValueError(f"{name}: {value!r} given; it must be one of {words}")

    def rails_for(self, use):
        """The rails to count on: as said; a cabinet has both where nobody said, but not for a seat, which has to say so."""
        assumed = BOTH_RAILS if self.on == "cabinet" and use != "seat" else NO_RAIL
        return self.rails or assumed


@dataclass(frozen=True, eq=False)
class Handling:
    """What happens to a piece between the last pass and its place.

    Parameters
    ----------
    strength : Strength28
        Strength at 28 days and its band [Pa].
    cement : str
        rapid, normal or slow [-].
    mornings : tuple of Morning
        The piece in the morning under every cover [as their fields].
    cover : str
        The recommended cover; the rest is reckoned with it [-].
    hardening : Hardening
        Strength with the hours under that cover [h, -].
    beam : Beam
        The piece cut across its length [m, kg/m].
    density_kg_m3 : float
        Density of the whole piece, both layers [kg/m3].
    carries : tuple of Carry
        Ways to carry it, the kindest first [as their fields].
    stand : Stand
        What the job says about its supports [m].
    rails : str
        The rails that the checks count on [-].
    supports : tuple of SupportCheck
        Spans, overhangs and strips that people load [Pa].
    legs : tuple of SupportCheck
        For a seat without a word about supports: two legs in the best place [Pa].
    lift : Lift
        Mass and people [kg].
    advice : tuple of Advice
        What to do and to know [-].
    working : tuple of Step
        How each number came about [-].

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> plan_handling(plan.day, plan.cure, plan.piece, plan.layers, plan.mix).carry("ends").earliest_h is None
    True

    References
    ----------
    As its parts.
    """

    strength: Strength28
    cement: str
    mornings: tuple
    cover: str
    hardening: Hardening
    beam: Beam
    density_kg_m3: float
    carries: tuple
    stand: Stand
    rails: str
    supports: tuple
    legs: tuple
    lift: Lift
    advice: tuple = ()
    working: tuple = ()

    @property
    def morning(self):
        """The piece in the morning under the recommended cover."""
        return next(row for row in self.mornings if row.key == self.cover)

    def carry(self, key):
        """Look one way of carrying up; ValueError lists the keys when it is unknown."""
        for row in self.carries:
            if row.key == key:
                return row
        raise ValueError(f"way to carry: {key!r} given; it must be one of {', '.join(c.key for c in self.carries)}")


def slow_binder(mix):
    """Whether ash, slag and other pozzolans are more than a quarter of the binder.

    Not for cements blended at the works: say "slow" in the job.

    Parameters
    ----------
    mix : Mix
        The mix [kg].

    Returns
    -------
    bool
        True for a slow binder; False for a bag, whose cement nobody knows [-].

    Examples
    --------
    >>> from shop_calc.trade.mortar.mix import build_mix
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> slow_binder(build_mix(recipe("demo mortar")))
    False

    References
    ----------
    A quarter as in UFGS 03301A for the length of moist curing; carried over to strength by our judgement.
    """
    slow = sum(line.mass_kg for line in mix.lines if line.kind == "pozzolan" or line.role == "slag")
    fume = sum(line.mass_kg for line in mix.lines if line.role == "silica fume")  # quick, not slow
    return slow - fume > 0.25 * mix.binder_share[1] * (1 + 1e-9)


def piece_density_kg_m3(layers, mix):
    """Density of the whole piece, face and base by their volumes.

    Parameters
    ----------
    layers : Layers
        The two volumes [m3].
    mix : Mix
        Mortar and base [kg].

    Returns
    -------
    float
        Density as it comes from the form, fibre left out [kg/m3].

    Examples
    --------
    >>> from shop_calc.trade.shape.layers import rectangle_layers
    >>> from shop_calc.trade.mortar.mix import build_mix
    >>> from shop_calc.trade.mortar.recipe import recipe
    >>> piece = rectangle_layers(1.524, 0.381, 0.0381, 0.00635)
    >>> f"{piece_density_kg_m3(piece, build_mix(recipe('demo mortar'), stone_ratio=1.2, coarse_sand_ratio=0.6)):.1f}"
    '2284.7'

    References
    ----------
    Derived: conservation of mass.
    """
    mass = layers.face_m3 * mix.mortar_density_kg_m3 + layers.core_m3 * mix.base_density_kg_m3
    return mass / layers.total_m3


def plan_handling(
    day, cure, piece, layers, mix, *, people=2, strength_28d_pa=None, cement=None, stand=None, density_kg_m3=None
):
    """Plan how a piece is moved and what carries it.

    Not a design: it sizes no steel and no support. Structure, wall-hung and backed seats belong to an engineer and
    to local code.

    Parameters
    ----------
    day : Day
        The day [h].
    cure : Cure
        The night [as its fields].
    piece : Piece
        The piece [m].
    layers : Layers
        Its two volumes [m3].
    mix : Mix
        Mortar and base [kg].
    people : float
        People at hand [-].
    strength_28d_pa : float or None
        Tested strength at 28 days [Pa].
    cement : str or None
        rapid, normal or slow; by the binder when left out [-].
    stand : Stand or None
        Where it will stand [m].
    density_kg_m3 : float or None
        Density when it was weighed; of the mix when left out [kg/m3].

    Returns
    -------
    Handling
        Everything with advice and working [as its fields].

    Raises
    ------
    ValueError
        When an entry is impossible; the message names it.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> handling = plan_handling(plan.day, plan.cure, plan.piece, plan.layers, plan.mix)
    >>> [check.holds for check in handling.legs]
    [False, False]

    References
    ----------
    As its parts.
    """
    at_28 = strength_28(strength_28d_pa)
    cement = cement or ("slow" if slow_binder(mix) else "normal")
    stand = Stand() if stand is None else stand
    density = piece_density_kg_m3(layers, mix) if density_kg_m3 is None else density_kg_m3
    require("density", density, 0, unit="kg/m3", low_open=True)
    covers, hardening = mornings(day, cure, at_28, cement)
    beam = piece_beam(piece, density)
    longer = max(piece.outline.box_m) if stand.overhang_at == "side" else None
    on_all = stand.on == "continuous"
    rails = stand.rails_for(piece.use)
    checks = check_supports(
        piece, density, at_28.counted_pa, None if on_all else stand.span_m, stand.overhang_m, longer, rails
    )
    unknown_seat = piece.use == "seat" and not on_all and stand.span_m is None and stand.overhang_m is None
    handling = Handling(
        at_28,
        cement,
        covers,
        cure.pick,
        hardening,
        beam,
        density,
        ways_to_carry(beam, hardening, at_28.counted_pa, cure.until_h, piece.outline.shape),
        stand,
        rails,
        checks,
        best_legs(piece, density, at_28.counted_pa) if unknown_seat else (),
        plan_lift(density * layers.total_m3, layers.top_area_m2, people),
    )
    return replace(
        handling, advice=handling_advice(handling, day, piece), working=handling_working(handling, piece)
    )
