"""Lesson 11: what a ribbon of a practice pour shows."""

from shop_calc.lesson.pictures.pour_ribbon import PourRibbon

# Stages that a person decides on.
SHOWN = ("face", "strip", "first_steel", "last_steel", "stop")


def shown_stages(stages):
    """Keep the stages that a person decides on.

    Parameters
    ----------
    stages : sequence of Stage
        Stages of a day or of the truth [h].

    Returns
    -------
    list of Stage
        Those that the ribbon shows [h].

    Examples
    --------
    >>> shown_stages(())
    []

    References
    ----------
    Common practice, no source.
    """
    return [stage for stage in stages if stage.key in SHOWN]


def ribbon_of(found, title):
    """Build the ribbon of one pour, the truth over the plan.

    Parameters
    ----------
    found : Debrief
        The pour looked back at [as its fields].
    title : str
        One line over it [-].

    Returns
    -------
    PourRibbon
        The picture [-].

    Examples
    --------
    >>> ribbon_of.__name__
    'ribbon_of'

    References
    ----------
    Common practice, no source.
    """
    pour = found.state.pour
    return PourRibbon(shown_stages(found.stages), shown_stages(found.planned), pour.water_in, pour.room, title)
