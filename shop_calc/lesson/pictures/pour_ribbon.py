"""The ribbon of a practice pour: the day as it really was, the plan drawn thin over it, what was seen and done."""

from matplotlib.lines import Line2D

from shop_calc.lesson.pictures.base import INK, QUIET, ROLES
from shop_calc.lesson.pictures.lettering import listing, place, width_in
from shop_calc.lesson.pictures.ribbon import CHART_IN, LANE_IN, WIDTH_IN, RibbonOfTheDay
from shop_calc.lesson.pictures.ribbon_key import KEY_IN
from shop_calc.lesson.pictures.ribbon_words import room_words
from shop_calc.lesson.pictures.scales import clock, span_of

_SAID = {"likely window": "as it was", "likely: face": "face", "likely: base": "base", "first plan": "the plan"}
_SIGNS = {True: ("^", ROLES["good"], "done"), False: ("X", ROLES["stop"], "done, and it shows")}
FEW = 16  # more marks than a single pour has: a class
SPREAD = 0.70  # share of the lane over which the marks of a class are spread
FOOT_IN = 0.16  # room under the bars for marks: they touch neither a bar nor the line of the cue


class PourRibbon(RibbonOfTheDay):
    """The ribbon of the day with a mark for every act; windows are true ones.

    Parameters
    ----------
    stages : sequence
        The stages as they really were [h].
    planned : sequence
        The stages as the plan on the wall had them [h].
    water_in : datetime
        When the first water meets the powder [-].
    room : object, optional
        The room as it came [h, degC, -, m/s].
    title : str
        One line over the picture [-].
    """

    foot_in = FOOT_IN

    def __init__(self, stages, planned, water_in, room=None, title="", load_offsets_h=(0.0,)):
        self.planned = list(planned)
        both = [*stages, *self.planned]
        between = (min(-0.6, *(s.look_from_h for s in both)) - 0.1, max(s.likely_to_h for s in both) + 0.9)
        super().__init__(stages, water_in, load_offsets_h, room, (), between, title)

    def build(self, axes):
        """The ribbon, with its words for a day that is over, and the marks."""
        super().build(axes)
        self._reword()
        self._marks = {}
        for good, (marker, colour, _) in _SIGNS.items():
            look = {"ls": "none", "marker": marker, "ms": 12, "mfc": colour, "mec": INK, "mew": 1.0, "zorder": 9}
            (self._marks[good],) = axes.plot([], [], clip_on=False, **look)

    def _reword(self):
        """Other words for the same signs; the band of a plan has no place here, acts have."""
        artists = list(self.figure.artists)
        for number, artist in enumerate(artists):
            text = getattr(artist, "get_text", lambda: "")()
            if text in _SAID:
                artist.set_text(_SAID[text])
            if text.startswith("look from"):
                for gone in artists[number - 2 : number + 1]:  # the words and a sample of each layer's band
                    gone.set_visible(False)
        x_in = CHART_IN
        width, height = self.figure.get_size_inches()
        for marker, colour, words in _SIGNS.values():
            look = {"marker": marker, "ms": 10, "mfc": colour, "mec": INK, "mew": 1.0, "ls": "none"}
            dot = Line2D([(x_in + 0.07) / width], [KEY_IN / height], transform=self.figure.transFigure, **look)
            self.figure.add_artist(dot)
            place(self.figure, x_in + 0.2, KEY_IN, words, color=QUIET)
            x_in += 0.2 + width_in(words) + 0.18
        self._move_key(x_in)

    def _move_key(self, x_in):
        """The two samples of the layers go behind the acts."""
        width = WIDTH_IN
        artists = list(self.figure.artists)
        starts = {}
        for number, artist in enumerate(artists):
            text = getattr(artist, "get_text", lambda: "")()
            if text in ("face", "base"):
                boxes = artists[number - (1 if text == "face" else 2) : number]
                starts[text] = (boxes, artist)
        for boxes, words in starts.values():
            for box in boxes:
                box.set_x(x_in / width)
            words.set_x((x_in + 0.28) / width)
            x_in += 0.28 + width_in(words.get_text()) + 0.2

    def update(self, stages, system="both", *, first=None, seen=(), done=()):
        """Move windows, looks and acts.

        Parameters
        ----------
        stages : sequence
            The stages as they really were [h].
        system : str
            "us", "si" or "both", for the words [-].
        first : sequence, optional
            Another plan than the one it was built with [h].
        seen : sequence of (str, float, bool)
            Looks: stage key, hours after the first water, and whether the cue was there [-, h, -].
        done : sequence of (str, float, bool)
            Acts: stage key, hours after the first water, and whether nothing of it shows [-, h, -].
        """
        super().update(stages, system, first=first or self.planned, seen=seen)
        for row in self._rows:
            row["edge"].set_hatch("")  # nothing is re-planned here
        middles = {stage.key: row["middle"] for stage, row in zip(self.stages, self._rows, strict=True)}
        done = [(key, at_h, good) for key, at_h, good in done if key in middles]
        places = self._places(done)
        for good, artist in self._marks.items():
            artist.set_markersize(12 if len(done) < FEW else 8)
            mine = [k for k, mark in enumerate(done) if mark[2] is good]
            artist.set_data([done[k][1] for k in mine], [middles[done[k][0]] + places[k] for k in mine])
        self.alt = self._alt_text(done, system)

    def _write(self, row, stage, first_h, last_h):
        """The times stand at the left; the ends of the bar stay free for the marks."""
        super()._write(row, stage, first_h, last_h)
        row["look"].set_text("")
        row["over"].set_text("")

    @staticmethod
    def _places(done):
        """Marks stand on the foot of their lane; the many of a class spread over all of it."""
        count = {}
        for key, _, _ in done:
            count[key] = count.get(key, 0) + 1
        seen, places = {}, []
        for key, _, _ in done:
            number = seen.get(key, 0)
            seen[key] = number + 1
            many = count[key]
            spread = SPREAD * (LANE_IN + FOOT_IN) * ((number * 7 % many) / max(many - 1, 1) - 0.5)
            places.append(-LANE_IN / 2 - FOOT_IN + 0.09 if many < 4 else spread - FOOT_IN / 2)
        return places

    def _alt_text(self, done, system):
        words = [self.title + "." if self.title else "A practice pour."]
        if self.room is not None:
            rows = (
                f"from {clock(self.water_in, hours_h)} {room_words(self.room, number, system)[0]}"
                for number, hours_h in enumerate(self.room.from_h)
            )
            words.append(f"Room {listing(rows)}.")
        words.append("Windows as they really were:")
        plan = {stage.key: stage for stage in self.planned}
        for stage in self.stages:
            line = f"{stage.title} {span_of(self.water_in, stage.likely_from_h, stage.likely_to_h)}"
            if stage.key in plan:
                was = plan[stage.key]
                line += f" (plan {span_of(self.water_in, was.likely_from_h, was.likely_to_h)})"
            mine = [(at_h, good) for key, at_h, good in done if key == stage.key]
            if mine:
                acts = (f"{clock(self.water_in, at)}{'' if good else ', and it shows'}" for at, good in sorted(mine))
                line += f", done {listing(acts)}"
            words.append(f"{line}.")
        return " ".join(words)
