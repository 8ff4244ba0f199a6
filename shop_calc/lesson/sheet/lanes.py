"""The ribbon of the day for paper: one lane a stage, all on one clock, black and hatched instead of coloured."""

from shop_calc.lesson.sheet.drawing import BASE_FILL, INK, LANE, PAPER, box, number, svg, text, type_width

LANE_TALL, BAR_TALL, BAND_TALL = 22.0, 16.0, 6.0
TIME, GAP = 12.0, 4.0  # type on the lane, and how far it stays from the band


class Clock:
    """The hours of the day laid out on a lane: the same for every row, so that the eye runs straight down.

    Parameters
    ----------
    from_h, to_h : float
        Ends, hours after the first water [h].
    width : float
        Of the lane [px].
    spare : float
        Left free at both ends for a time beside its band [px].
    """

    def __init__(self, from_h, to_h, width, spare=0.0):
        self.from_h, self.to_h, self.width, self.spare = from_h, to_h, width, spare

    def x(self, hour_h):
        """Place of an hour [px]."""
        share = (hour_h - self.from_h) / (self.to_h - self.from_h)
        return self.spare + min(max(share, 0.0), 1.0) * (self.width - 2 * self.spare)


def lane(clock, stage, ticks_h, times, words):
    """Draw one stage on its lane: thin from look to over, thick where it is likely, a bar where it is too late.

    Parameters
    ----------
    clock : Clock
        Where the hours lie [px].
    stage : Stage
        Its times and its layer [h].
    ticks_h : sequence of float
        Full hours [h].
    times : tuple of (str, str)
        What stands at the beginning and at the end of the band [-].
    words : str
        The same in words [-].

    Returns
    -------
    str
        SVG [-].

    Examples
    --------
    >>> from shop_calc.trade.timeline.stages import STAGES, Stage
    >>> stage = Stage(STAGES["strip"], 2.0, 2.4, 2.9, 3.4)
    >>> "10:00" in lane(Clock(0.0, 6.0, 240.0), stage, (1.0, 2.0), ("10:00", "11:24"), "strip")
    True

    References
    ----------
    Common practice, no source.
    """
    middle, half = LANE_TALL / 2, BAR_TALL / 2
    parts = [box(0, 0, clock.width, LANE_TALL, LANE)]
    parts += [box(clock.x(hour) - 0.75, 0, 1.5, LANE_TALL, PAPER) for hour in ticks_h]
    look, over = clock.x(stage.look_from_h), clock.x(stage.over_by_h)
    start, end = clock.x(stage.likely_from_h), clock.x(stage.likely_to_h)
    parts.append(box(look, middle - BAND_TALL / 2, over - look, BAND_TALL, PAPER, INK, 1, ' class="band"'))
    end = max(end, start + 3.0)  # a moment still has to be seen
    upper, lower = {"face": (INK, INK), "base": (BASE_FILL, BASE_FILL)}.get(stage.layer, (INK, BASE_FILL))
    parts.append(box(start, middle - half, end - start, half, upper))
    parts.append(box(start, middle, end - start, half, lower))
    parts.append(box(start, middle - half, end - start, BAR_TALL, "none", INK, 1.2, ' class="likely"'))
    last = max(over, end)
    if stage.deadline_h is not None:
        at = clock.x(stage.deadline_h)
        last = max(last, at + 6)
        parts.append(box(at - 2, 0, 4, LANE_TALL, INK, PAPER, 1, ' class="deadline"'))
        parts.append(box(at - 6, 0, 12, 3, INK))
    parts += _ends(clock, look, last, times, None if stage.deadline_h is None else max(clock.x(stage.deadline_h), end))
    return svg(clock.width, LANE_TALL, "".join(parts), words, "lane")


def _ends(clock, first, last, times, marked):
    """The times at both ends of a band; where one has no room, both stand on the other side, a deadline behind its mark."""
    before, after = times
    y, sharp = LANE_TALL / 2 + 4.3, marked is not None
    if first - GAP - type_width(before, TIME) < 0:
        before, after = "", f"{before}–{after}" if not sharp else f"{before}, {after}"
    parts, wide = [], type_width(after, TIME, sharp)
    if last + GAP + wide > clock.width and sharp:
        # what ruins the piece is never cut off: on a patch of its own, over the band
        last = min(marked + 6, clock.width - 2 * GAP - wide)
        parts.append(box(last + GAP / 2, 1, wide + GAP, LANE_TALL - 2, LANE, LANE, 0, ' class="patch"'))
    elif last + GAP + wide > clock.width and before:
        before, after = f"{before}–{after}", ""
    parts += [text(first - GAP, y, before, TIME, False, "end")] if before else []
    return parts + ([text(last + GAP, y, after, TIME, sharp)] if after else [])


def hours(clock, ticks, loads_h):
    """Draw the clock over the lanes, with a mark for the water of every load.

    Parameters
    ----------
    clock : Clock
        Where the hours lie [px].
    ticks : sequence of (float, str)
        Full hours and their names [h].
    loads_h : sequence of float
        When each load meets water [h].

    Returns
    -------
    str
        SVG [-].

    Examples
    --------
    >>> hours(Clock(0.0, 6.0, 240.0, 30.0), [(1.0, "9")], (0.0,)).count("<text")
    1

    References
    ----------
    Common practice, no source.
    """
    parts = []
    for hour, name in ticks:
        x = clock.x(hour)
        anchor = "start" if x < 8 else "end" if x > clock.width - 8 else "middle"
        parts.append(text(x, 11, name, 13, True, anchor))
        parts.append(box(x - 0.5, 15, 1, 5, INK))
    for hour in loads_h:
        x = min(max(clock.x(hour), 4.5), clock.width - 4.5)
        parts.append(f'<path d="M{number(x - 4.5)} 15H{number(x + 4.5)}L{number(x)} 22Z" fill="{INK}"/>')
    return svg(clock.width, 22, "".join(parts), "", "hours")
