"""How much two or three people may lift together: less than the sum of what each may lift alone."""

import numpy as np

from shop_calc.science.checks import require
from shop_calc.science.lifting import lifting_index

TEAM_SHARE = {1: 1.0, 2: 2.0 / 3.0, 3: 1.0 / 2.0}  # HSE L23 as quoted: share of the sum of the members (read)
LARGEST_TEAM = max(TEAM_SHARE)


def team_limit_kg(single_limits_kg):
    """What two or three people may lift together.

    For people of like height and strength with room and a hold for each. Not for more than three: use a cart,
    a frame or a hoist.

    Parameters
    ----------
    single_limits_kg : array (n,)
        What each may lift alone [kg].

    Returns
    -------
    float
        Limit of the team [kg].

    Raises
    ------
    ValueError
        When there are more than three, or none.

    Notes
    -----
    Two thirds of the sum for two, half of the sum for three.

    Examples
    --------
    >>> round(float(team_limit_kg([20.0, 20.0])), 4)
    26.6667

    References
    ----------
    HSE L23, guidance on the Manual Handling Operations Regulations 1992, as quoted.
    """
    limits = np.atleast_1d(require("what each may lift", single_limits_kg, 0, unit="kg"))
    if limits.size not in TEAM_SHARE:
        raise ValueError(f"people lifting: {limits.size} given; the rule is for 1, 2 or 3")
    return TEAM_SHARE[limits.size] * np.sum(limits)


def team_share(people):
    """Share of what each may lift alone that still counts in a team.

    Parameters
    ----------
    people : float
        How many lift together; the rule is for up to three, beyond them its last share is the most there can be [-].

    Returns
    -------
    float
        1 for one, two thirds for two, half for three and more [-].

    Raises
    ------
    ValueError
        When there is nobody.

    Examples
    --------
    >>> f"{team_share(2):.5f} {team_share(5):.5f}"
    '0.66667 0.50000'

    References
    ----------
    HSE L23, guidance on the Manual Handling Operations Regulations 1992, as quoted.
    """
    return TEAM_SHARE[min(int(require("people lifting", people, 1)), LARGEST_TEAM)]


def team_index(load_kg, limit_kg, people):
    """What each of a team bears over what each may lift in it: above 1 it is too much for the team.

    For people who may lift alike and bear alike. For more than three it is at least that much.

    Parameters
    ----------
    load_kg : float or array
        What they lift together [kg].
    limit_kg : float or array
        Recommended weight limit of one of them alone [kg].
    people : float
        How many lift together [-].

    Returns
    -------
    float or array
        Lifting index; that of one person for one, infinite where the limit is 0 [-].

    Raises
    ------
    ValueError
        When a mass is negative or there is nobody.

    Notes
    -----
    The equation has no index for teams. Dividing by the share of the team joins it with the rule for teams, which is
    ours: two bear three halves of what they would by counting heads.

    Examples
    --------
    >>> f"{team_index(50.0, 13.0, 2):.5f}"
    '2.88462'

    References
    ----------
    NIOSH Publication 94-110 (1994), section 1.4; HSE L23 as quoted; joining them is our judgement.
    """
    share = team_share(people)
    return lifting_index(np.asarray(load_kg) / int(people), share * np.asarray(require("weight limit", limit_kg, 0, unit="kg")))


def people_needed(load_kg, limit_kg):
    """Fewest people of a team who may lift a load.

    Not for carrying it, nor for people of unlike strength.

    Parameters
    ----------
    load_kg, limit_kg : float
        The load, and what one may lift alone [kg].

    Returns
    -------
    int or None
        One, two or three; None when three may not [-].

    Raises
    ------
    ValueError
        When a mass is negative.

    Examples
    --------
    >>> people_needed(26.0, 20.0)
    2

    References
    ----------
    HSE L23 as quoted, by `team_limit_kg`.
    """
    load = require("load", load_kg, 0, unit="kg")
    teams = range(1, LARGEST_TEAM + 1)
    return next((n for n in teams if load <= team_limit_kg([limit_kg] * n) * (1 + 1e-9)), None)
