"""The ruler of the stages: from the hour at which one was seen, the windows of the next."""

from dataclasses import dataclass

import numpy as np

from shop_calc import defaults
from shop_calc.trade.timeline.day import Day, read_day
from shop_calc.trade.timeline.look import CUES, not_yet, seen
from shop_calc.trade.timeline.looks import replan
from shop_calc.trade.timeline.stages import ORDER, STAGES


@dataclass(frozen=True)
class RulerRow:
    """One line of the ruler: if it was seen then, the next comes so.

    Parameters
    ----------
    seen_h : float
        When the first cue was seen, hours after the first water [h].
    look_from_h, likely_h, over_by_h : float
        The next stage: look from, likely from, over by [h].

    Examples
    --------
    >>> RulerRow(2.5, 2.9, 3.1, 3.7).likely_h
    3.1

    References
    ----------
    Common practice, no source.
    """

    seen_h: float
    look_from_h: float
    likely_h: float
    over_by_h: float


def ruler(samples, stage_seen="strip", stage_next="first_steel", step_h=0.25):
    """List when the next stage comes for every hour at which a cue may be seen.

    Parameters
    ----------
    samples : DaySamples or Day
        The day [h].
    stage_seen : str
        Stage whose cue is seen, a key of look.CUES [-].
    stage_next : str
        The later stage that is asked for [-].
    step_h : float
        From one line to the next [h].

    Returns
    -------
    tuple of RulerRow
        From the first line inside the window of the seen stage to the last [h].

    Raises
    ------
    ValueError
        When a stage has no cue, or the next one does not come later.

    Examples
    --------
    >>> from datetime import datetime
    >>> from shop_calc.trade.timeline.day import DayInputs, plan_day
    >>> from shop_calc.trade.timeline.room import steady_room
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> [row.seen_h for row in ruler(plan_day(inputs))][:3]
    [2.0, 2.25, 2.5]

    Notes
    -----
    Each line supposes that the cue was not there one look earlier (look_interval of data/defaults.csv).

    References
    ----------
    As `replan`.
    """
    if stage_seen not in CUES or stage_next not in CUES:
        raise ValueError(f"stage: {stage_seen!r}, {stage_next!r} given; both must be of {', '.join(CUES)}")
    if ORDER.index(stage_next) <= ORDER.index(stage_seen):
        raise ValueError(
            f"stage: {STAGES[stage_next].title!r} given; it must come after {STAGES[stage_seen].title!r}"
        )
    day = samples if isinstance(samples, Day) else read_day(samples)
    first_h, _, last_h = replan(day, ()).opening_before_h[stage_seen]
    gap_h = defaults.si("look_interval")
    rows = []
    for number in range(int(np.ceil(first_h / step_h - 1e-9)), int(np.floor(last_h / step_h + 1e-9)) + 1):
        at = number * step_h
        stage = replan(day, (not_yet(max(at - gap_h, 0.0), stage_seen), seen(at, stage_seen))).day.stage(stage_next)
        rows.append(RulerRow(at, stage.look_from_h, stage.likely_from_h, stage.over_by_h))
    return tuple(rows)
