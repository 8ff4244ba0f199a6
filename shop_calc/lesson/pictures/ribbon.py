"""The ribbon of the day: one lane a stage, on the clock, with what to hold and what to look for.

The same drawing in the lessons, on the sheet, in the log and in the practice pour.
"""

from matplotlib.patches import Rectangle

from shop_calc.lesson.pictures.base import HATCHES, INK, PAPER, QUIET, ROLES, Picture
from shop_calc.lesson.pictures.lettering import NAME, PLAIN, TITLE, place, shorten, width_in, wrap
from shop_calc.lesson.pictures.ribbon_key import BAND_SHARE, BAR_SHARE, DARK_LANE, TINTS, draw_key, draw_second_key
from shop_calc.lesson.pictures.ribbon_words import ribbon_of_the_day_alt as _alt
from shop_calc.lesson.pictures.ribbon_words import room_words, water_words
from shop_calc.lesson.pictures.scales import LANE, clock, clock_axis, day_name, moment, span_of

WIDTH_IN, LANE_IN, THIN_IN, LINE_IN, APART_IN = 9.0, 0.34, 0.27, 0.185, 0.11
TIME_IN, NAME_IN, CHART_IN, EDGE_IN = 0.14, 1.42, 3.34, 0.14  # where the columns start; margin on the right
TOP_IN, BELOW_IN = 0.46, 0.86  # title; clock and key
GAP_IN = 0.07


def reach_h(stages):
    """Ends of a clock that holds all stages, with room for the first time beside its band.

    Parameters
    ----------
    stages : sequence
        Objects with look_from_h, over_by_h and deadline_h [h].

    Returns
    -------
    tuple of float
        From and to, hours after the first water [h].

    Examples
    --------
    >>> from types import SimpleNamespace as S
    >>> low, high = reach_h([S(look_from_h=0.3, over_by_h=5.2, deadline_h=None)])
    >>> round(low, 5), round(high, 5)
    (-0.65446, 5.91396)
    """
    first = min([0.0, *(stage.look_from_h for stage in stages)])
    last = max([first + 0.5, *(max(stage.over_by_h, stage.deadline_h or 0.0) for stage in stages)])
    per_in = (last - first) / (WIDTH_IN - CHART_IN - EDGE_IN - 1.15)
    return first - 0.55 * per_in, last + 0.60 * per_in


class RibbonOfTheDay(Picture):
    """The day as lanes; built once for a list of stages, then moved in place.

    Parameters
    ----------
    stages : sequence
        Objects with key, title, layer ("base", "face" or "both"), tool, cue, look_from_h, likely_from_h,
        likely_to_h, over_by_h and deadline_h (None where there is none) [h].
    water_in : datetime
        When the first water meets the powder [-].
    load_offsets_h : sequence of float
        Water-in time of each load after the first [h].
    room : object, optional
        from_h, air_temp_c, rh_fraction and wind_m_s, one entry a change [h, degC, -, m/s].
    dark_h : sequence of (float, float)
        Hours without daylight [h].
    between_h : (float, float), optional
        Ends of the clock; fixed for the life of the picture [h].
    title : str
        One line over the picture [-].
    """

    kind = "tall"
    foot_in = 0.0  # room under the bars of a lane, for marks

    def __init__(self, stages, water_in, load_offsets_h=(0.0,), room=None, dark_h=(), between_h=None, title=""):
        self.water_in, self.loads_h = water_in, tuple(load_offsets_h)
        self.room, self.dark_h, self.title = room, tuple(dark_h), title
        self.from_h, self.to_h = between_h or reach_h(stages)
        self.stages = list(stages)
        super().__init__()
        self.update(stages)

    # ---- built once

    def build(self, axes):
        """Lanes, clock, words that stay."""
        head = THIN_IN * (2 if self.room is not None else 1) + 0.08
        tall = [LANE_IN + self.foot_in + LINE_IN * _lines(stage) + APART_IN for stage in self.stages]
        body = head + sum(tall)
        height = TOP_IN + body + BELOW_IN
        figure = self.figure
        figure.set_size_inches(WIDTH_IN, height)
        wide = WIDTH_IN - CHART_IN - EDGE_IN
        axes.set_position([CHART_IN / WIDTH_IN, BELOW_IN / height, wide / WIDTH_IN, body / height])
        axes.set_ylim(0, body)
        hours = clock_axis(axes, self.water_in, self.from_h, self.to_h, most=9)
        axes.set_yticks([])
        axes.grid(False)
        axes.spines[["left", "bottom"]].set_visible(False)
        axes.tick_params(axis="x", length=0, pad=5)
        self.per_h = wide / (self.to_h - self.from_h)
        middles = [body - head - sum(tall[:row]) - LANE_IN / 2 for row in range(len(tall))]
        thin = [body - THIN_IN * 0.5]
        if self.room is not None:
            thin.append(body - THIN_IN * 1.5)
        for middle in middles:
            self._lane(axes, middle - self.foot_in / 2, LANE_IN + self.foot_in)
        for middle in thin:
            self._lane(axes, middle, THIN_IN - 0.04)
        for place_h in hours:
            axes.axvline(place_h, 0, 1, color=PAPER, lw=1.6, zorder=1.5)
        when = day_name(moment(self.water_in, 0.0))
        title = shorten(self.title or "The day", 8.6 - width_in(when, NAME), TITLE, "bold")
        place(figure, TIME_IN, height - 0.24, title, size=TITLE, weight="bold")
        place(figure, WIDTH_IN - EDGE_IN, height - 0.24, when, size=NAME, ha="right")
        self._mix_lane(axes, thin[-1] + BELOW_IN)
        if self.room is not None:
            self._room_lane(axes, thin[0] + BELOW_IN)
        self._rows = [self._row(axes, middle, _lines(s)) for middle, s in zip(middles, self.stages, strict=True)]
        place(figure, TIME_IN, BELOW_IN - 0.18, "likely window", color=QUIET)
        dark = any(a < self.to_h and b > self.from_h for a, b in self.dark_h)
        draw_key(figure, CHART_IN, LANE_IN, dark)
        self._plan_key, self._look_key = draw_second_key(figure, TIME_IN)

    def _lane(self, axes, middle, tall):
        axes.add_artist(Rectangle((self.from_h, middle - tall / 2), self.to_h - self.from_h, tall, fc=LANE, ec="none"))
        for dark_from_h, dark_to_h in self.dark_h:
            left, right = max(dark_from_h, self.from_h), min(dark_to_h, self.to_h)
            if right > left:
                axes.add_artist(Rectangle((left, middle - tall / 2), right - left, tall, fc=DARK_LANE, ec="none"))

    def _x_in(self, hours_h):
        return CHART_IN + (hours_h - self.from_h) * self.per_h

    def _mix_lane(self, axes, y_in):
        loads = self.loads_h
        first, name = clock(self.water_in, 0.0), "Water in" if len(loads) == 1 else f"Water in, {len(loads)} loads"
        place(self.figure, TIME_IN, y_in, first, size=NAME, weight="bold")
        place(self.figure, NAME_IN, y_in, name, size=NAME, weight="bold")
        axes.plot(
            loads, [y_in - BELOW_IN] * len(loads), ls="none", marker="v", ms=9, mfc=ROLES["base"], mec=INK, mew=0.8
        )
        start = self._x_in(max(loads)) + 0.14
        words = water_words(self.water_in, loads)
        place(self.figure, start, y_in, shorten(words, WIDTH_IN - EDGE_IN - start, PLAIN), color=QUIET)

    def _room_lane(self, axes, y_in):
        place(self.figure, NAME_IN, y_in, "Room", size=NAME, weight="bold")
        starts = [max(hours_h, self.from_h) for hours_h in self.room.from_h]
        for number, (start, nexts) in enumerate(zip(starts, [*starts[1:], self.to_h], strict=True)):
            if start >= self.to_h:
                continue
            room_in = (min(nexts, self.to_h) - start) * self.per_h - 0.12
            words = next((w for w in room_words(self.room, number) if width_in(w) <= room_in), "")
            place(self.figure, self._x_in(start) + 0.07, y_in, words, color=INK)
            if start > self.from_h:
                axes.plot([start, start], [y_in - BELOW_IN - 0.115, y_in - BELOW_IN + 0.115], color=INK, lw=1.6)

    def _row(self, axes, middle, lines):
        """Every artist of one stage, out of the way until `update` places it."""
        y_in, half = middle + BELOW_IN, LANE_IN * BAR_SHARE / 2
        row = {"middle": middle, "lines": lines}
        band = LANE_IN * BAND_SHARE
        row["band"] = axes.add_artist(Rectangle((0, middle - band / 2), 0, band, ec=QUIET, lw=0.8, zorder=3))
        row["upper"] = axes.add_artist(Rectangle((0, middle), 0, half, ec=PAPER, lw=0, zorder=4))
        row["lower"] = axes.add_artist(Rectangle((0, middle - half), 0, half, ec=PAPER, lw=0, zorder=4))
        row["edge"] = axes.add_artist(Rectangle((0, middle - half), 0, 2 * half, fc="none", ec=INK, lw=1.0, zorder=5))
        row["before"] = axes.add_artist(
            Rectangle((0, middle + half + 0.01), 0, 0.05, fc=PAPER, ec=INK, lw=0.8, zorder=4, visible=False)
        )
        row["deadline"] = axes.add_artist(
            Rectangle((0, middle - LANE_IN / 2), 0, LANE_IN, fc=ROLES["stop"], ec=INK, lw=0.8, zorder=6)
        )
        (row["not_yet"],) = axes.plot([], [], ls="none", marker="o", ms=9, mfc=PAPER, mec=INK, mew=1.6, zorder=7)
        (row["there"],) = axes.plot([], [], ls="none", marker="o", ms=9, mfc=INK, mec=PAPER, mew=1.2, zorder=7)
        figure = self.figure
        row["time"] = place(figure, TIME_IN, y_in, size=NAME, weight="bold")
        row["name"] = place(figure, NAME_IN, y_in, size=NAME, weight="bold")
        below = y_in - LANE_IN / 2 - self.foot_in - 0.19
        row["tool"] = place(figure, NAME_IN, below, va="baseline")
        row["cue"] = place(figure, NAME_IN, below - LINE_IN * (lines - 1), va="baseline", color=QUIET)
        row["look"] = place(figure, 0, y_in, ha="right", size=PLAIN)
        row["over"] = place(figure, 0, y_in, size=PLAIN)
        return row

    # ---- moved

    def update(self, stages, system="both", *, first=None, seen=()):
        """Move every lane to new times.

        Parameters
        ----------
        stages : sequence
            As many stages as the picture was built for [h].
        system : str
            "us", "si" or "both", for the words [-].
        first : sequence, optional
            The plan before the looks: drawn thin over the re-planned one, which is hatched [h].
        seen : sequence of (str, float, bool)
            Looks: stage key, hours after the first water, and whether the cue was there [-, h, -].

        Raises
        ------
        ValueError
            When the number of stages is not the one the picture was built for.
        """
        stages = list(stages)
        if len(stages) != len(self._rows):
            raise ValueError(f"stages: {len(stages)} given; this ribbon was built for {len(self._rows)}")
        before = {stage.key: stage for stage in first or ()}
        for artists, wanted in ((self._plan_key, bool(before)), (self._look_key, bool(seen))):
            for artist in artists:
                artist.set_visible(wanted)
        for row, stage in zip(self._rows, stages, strict=True):
            looks = [(at_h, there) for key, at_h, there in seen if key == stage.key]
            self._move(row, stage, before.get(stage.key), looks)
        self.stages = stages
        given = (self.water_in, self.loads_h, self.room, self.dark_h, system)
        self.alt = _alt(stages, *given, first=first, seen=seen, title=self.title)

    def _move(self, row, stage, before, looks):
        look, over = stage.look_from_h, stage.over_by_h
        row["band"].set(x=look, width=over - look, facecolor=TINTS["base" if stage.layer == "base" else "face"])
        likely = {"x": stage.likely_from_h, "width": stage.likely_to_h - stage.likely_from_h}
        upper, lower = {"face": ("face", "face"), "base": ("base", "base")}.get(stage.layer, ("face", "base"))
        row["upper"].set(facecolor=ROLES[upper], hatch=HATCHES[upper], **likely)
        row["lower"].set(facecolor=ROLES[lower], hatch=HATCHES[lower], **likely)
        row["edge"].set(hatch="///" if before is not None else "", **likely)
        row["before"].set_visible(before is not None)
        if before is not None:
            row["before"].set(x=before.likely_from_h, width=before.likely_to_h - before.likely_from_h)
        row["deadline"].set_visible(stage.deadline_h is not None)
        last = over
        if stage.deadline_h is not None:
            row["deadline"].set(x=stage.deadline_h - 0.03 / self.per_h, width=0.06 / self.per_h)
            last = max(over, stage.deadline_h)
        for name, wanted in (("not_yet", False), ("there", True)):
            at = [at_h for at_h, there in looks if there is wanted]
            row[name].set_data(at, [row["middle"]] * len(at))
        marks = [at_h for at_h, _ in looks]
        radius_h = 0.07 / self.per_h
        self._write(
            row, stage, min([look, *(at - radius_h for at in marks)]), max([last, *(at + radius_h for at in marks)])
        )

    def _write(self, row, stage, first_h, last_h):
        """Times at the ends of the band; tool and cue below."""
        start = self.water_in
        row["time"].set_text(span_of(start, stage.likely_from_h, stage.likely_to_h))
        row["name"].set_text(wrap(stage.title, CHART_IN - NAME_IN - 0.12, 2, NAME, "bold"))
        look, over = clock(start, stage.look_from_h), clock(start, stage.over_by_h)
        if stage.deadline_h is not None:  # the sharper of the two; the band itself shows the other
            over = f"not after {clock(start, stage.deadline_h)}"
        left, right = self._x_in(first_h) - GAP_IN, self._x_in(last_h) + GAP_IN
        both = f"from {look}, {'' if stage.deadline_h is not None else 'by '}{over}"
        if left - width_in(look) < CHART_IN:  # no room on this side: both on the other
            look, over = "", both
        elif right + width_in(over) > WIDTH_IN - EDGE_IN:
            look, over = (both if left - width_in(both) >= CHART_IN else look), ""
        row["look"].set(x=left / WIDTH_IN, text=look)
        row["over"].set(x=right / WIDTH_IN, text=over)
        self._write_below(row, stage)

    @staticmethod
    def _write_below(row, stage):
        """Tool and cue: on one line if they fit, else the cue under the tool."""
        room_in = WIDTH_IN - NAME_IN - EDGE_IN
        tool = shorten(stage.tool, room_in if row["lines"] > 1 else room_in / 2)
        start = width_in(tool) + 2 * GAP_IN if row["lines"] == 1 and tool else 0.0
        row["tool"].set_text(tool)
        row["cue"].set(x=(NAME_IN + start) / WIDTH_IN, text=shorten(stage.cue, room_in - start))


def _lines(stage):
    """How many lines tool and cue of a stage need."""
    return 1 if width_in(stage.tool) + 2 * GAP_IN + width_in(stage.cue) <= WIDTH_IN - NAME_IN - EDGE_IN else 2
