"""What a piece weighs in all, per area and per person, and whether hands are the way to move it."""

from dataclasses import dataclass

from shop_calc import defaults
from shop_calc.science import lifting, loads, teams
from shop_calc.science.checks import require
from shop_calc.trade.advice import Advice
from shop_calc.units import show

TEAM_WORDS = {2: "two thirds", 3: "half"}


@dataclass(frozen=True)
class Lift:
    """A piece and the people who lift it.

    Parameters
    ----------
    mass_kg, mass_kg_m2 : float
        Mass in all and per area of top [kg, kg/m2].
    people : int
        People at hand [-].
    each_kg : float
        What each bears when all bear alike [kg].
    limit_kg : float
        Recommended weight limit of one person for this lift [kg].
    share_ratio, share_kg : float
        Share of that limit that counts in a team of so many, and each one's limit in it [-, kg].
    index_ratio : float
        What each bears over each one's limit in the team; above 1 it is too much for them [-].
    team_kg : float or None
        What so many people may lift together; None for more than three [kg].
    people_needed : int or None
        Fewest of up to three people whose team limit is enough; None when none is [-].

    Examples
    --------
    >>> plan_lift(10.0, 0.58, 2).people_needed
    1

    References
    ----------
    NIOSH 94-110; HSE L23 as quoted.
    """

    mass_kg: float
    mass_kg_m2: float
    people: int
    each_kg: float
    limit_kg: float
    share_ratio: float
    share_kg: float
    index_ratio: float
    team_kg: float | None
    people_needed: int | None

    @property
    def within(self):
        """Whether the people at hand may lift it."""
        return self.team_kg is not None and self.mass_kg <= self.team_kg * (1 + 1e-9)


def plan_lift(mass_kg, area_m2, people, *, reach_m=None, height_m=None, travel_m=None):
    """Compare a piece with what people may lift.

    For setting it down from a bench with room and a hold for everybody. Not for carrying it over a distance, stairs,
    or a slab on edge: the lifting equation leaves those out.

    Parameters
    ----------
    mass_kg : float
        Mass of the piece [kg].
    area_m2 : float
        Area of its top [m2].
    people : float
        People at hand [-].
    reach_m, height_m, travel_m : float or None
        Reach, height of the hands and height of the lift; those of the table when left out [m].

    Returns
    -------
    Lift
        Loads and limits [kg].

    Raises
    ------
    ValueError
        When a number is not positive.

    Examples
    --------
    >>> f"{plan_lift(52.0, 0.58, 2).index_ratio:.4f}"
    '2.9892'

    Notes
    -----
    Grip "poor", a slab without handles. A team may lift less than the sum of its members, two thirds of it for two and
    half for three and, at most, for more; the index counts that in, `teams.team_index`.

    References
    ----------
    NIOSH 94-110; HSE L23 as quoted; reach and heights are judgement, data/defaults.csv.
    """
    mass = require("mass of the piece", mass_kg, 0, unit="kg", low_open=True)
    area = require("area of the top", area_m2, 0, unit="m2", low_open=True)
    count = int(require("people at hand", people, 1))
    limit = lifting.weight_limit(
        defaults.si("lift_reach") if reach_m is None else reach_m,
        defaults.si("lift_height") if height_m is None else height_m,
        defaults.si("lift_travel") if travel_m is None else travel_m,
    ).limit_kg
    share = teams.team_share(count)
    return Lift(
        mass,
        mass / area,
        count,
        mass / count,
        float(limit),
        share,
        float(share * limit),
        float(teams.team_index(mass, limit, count)),
        float(teams.team_limit_kg([limit] * count)) if count <= teams.LARGEST_TEAM else None,
        teams.people_needed(mass, limit),
    )


def team_words(lift, system="both"):
    """Say what each bears and what each may, the team counted in, and the index that comes of it.

    Parameters
    ----------
    lift : Lift
        The piece and the people [kg].
    system : str
        us, si or both [-].

    Returns
    -------
    str
        Without a full stop [-].

    Examples
    --------
    >>> team_words(plan_lift(52.0, 0.58, 2), "us")
    '57.3 lb for each of 2, who in a team may lift 19.2 lb each: lifting index 3.0'
    >>> team_words(plan_lift(52.0, 0.58, 1), "us")
    '115 lb for one to lift, who may lift 28.8 lb: lifting index 4.0'

    References
    ----------
    As `plan_lift`.
    """
    each, may = show(lift.each_kg, "mass", system), show(lift.share_kg, "mass", system)
    index = f"lifting index {lift.index_ratio:.1f}"
    if lift.people == 1:
        return f"{each} for one to lift, who may lift {may}: {index}"
    if lift.people > teams.LARGEST_TEAM:
        index = f"{index} at least, for the rule ends at {teams.LARGEST_TEAM} people"
    return f"{each} for each of {lift.people}, who in a team may lift {may} each: {index}"


def lift_advice(lift):
    """Say how to move a piece of this mass.

    Parameters
    ----------
    lift : Lift
        The piece and the people [kg].

    Returns
    -------
    tuple of Advice
        One line about the lift and one about what stands below it, where it is heavy [-].

    Examples
    --------
    >>> [line.level for line in lift_advice(plan_lift(52.0, 0.58, 2))]
    ['act']

    References
    ----------
    NIOSH 94-110; HSE L23 as quoted; the threshold of a heavy piece is judgement.
    """
    alone, count = f"One person may lift {show(lift.limit_kg, 'mass')} like this", min(lift.people, teams.LARGEST_TEAM)
    if lift.people > 1:
        alone += f", in a team {TEAM_WORDS[count]} of it"
    together = "" if lift.team_kg is None or lift.people == 1 else f" Together they may lift {show(lift.team_kg, 'mass')}."
    reason = (
        f"It weighs {show(lift.mass_kg, 'mass')}, {show(lift.mass_kg_m2, 'areal_mass')}. {alone}. That is "
        f"{team_words(lift)}.{together} The equation is for a lift on the spot, not for carrying."
    )
    origin = ("read", "NIOSH 94-110; HSE L23 as quoted for teams")
    if lift.within:
        lines = [Advice("note", "move", "Lift it together, on a word, with a hold for everybody.", reason, *origin)]
    elif lift.people_needed is not None:
        words = f"Take {lift.people_needed} people to lift it, on a word, or a cart."
        lines = [Advice("act", "move", words, reason, *origin)]
    elif lift.index_ratio <= defaults.si("lifting_index_high"):
        words = (
            "Do not lift it by hand alone: a cart level with the bench, a lifting frame, a hoist, or a smaller piece."
        )
        lines = [Advice("act", "move", words, reason, *origin)]
    else:
        words = "Hands are no way to lift this: a hoist, a lifting frame on wheels, or smaller pieces."
        lines = [Advice("act", "move", words, reason, *origin)]
    if lift.mass_kg >= defaults.si("heavy_piece"):
        lines.append(
            Advice(
                "act", "place", "Before the pour see that what stands below can carry it, and the floor below that: "
                "legs and their fixings; cabinet sides of plywood of 3/4 in or more under every edge, adjustable "
                "plastic legs taken out.",
                f"{show(lift.mass_kg, 'mass')} stands on it for good; check before it is cast, most of all in place.",
            )
        )  # fmt: skip
    return tuple(lines)


def density_advice(density_kg_m3, what="the piece"):
    """Question a density, or a claimed weight, that no sand and cement can have.

    Parameters
    ----------
    density_kg_m3 : float
        Density, or what a claimed weight per area amounts to [kg/m3].
    what : str
        What it is said of [-].

    Returns
    -------
    tuple of Advice
        One line when it is questioned, else none [-].

    Raises
    ------
    ValueError
        When the density is not positive.

    Examples
    --------
    >>> claimed = loads.implied_density_kg_m3(12 * 4.882428, 0.01905)
    >>> len(density_advice(claimed, "a 3/4 in top of 12 lb/ft2"))
    1

    References
    ----------
    110 to 155 lb/ft3 is our judgement.
    """
    density = float(require("density", density_kg_m3, 0, unit="kg/m3", low_open=True))
    low, high = loads.CEMENT_MIX_DENSITY_KG_M3
    if low <= density <= high:
        return ()
    return (
        Advice(
            "act", "move", f"Weigh {what} again: this is not what a mix of sand and cement weighs.",
            f"{show(density, 'density')} given; such mixes weigh {show(low, 'density')} to {show(high, 'density')}.",
            "judgement", "ours",
        ),
    )  # fmt: skip
