"""The two layers of a piece: plan with the top of the face lifted off, and a cut across it.

The plan is to scale. The cut is to scale across; its thickness is drawn larger by a factor that is stated.
"""

from matplotlib.collections import LineCollection
from matplotlib.patches import PathPatch, Rectangle
from matplotlib.path import Path
from shapely import affinity
from shapely.geometry import LineString, Point, box

from shop_calc.lesson.pictures.areas import whole_page
from shop_calc.lesson.pictures.base import HATCHES, INK, PAPER, QUIET, ROLES, Picture
from shop_calc.lesson.pictures.lettering import NAME, TITLE, place, width_in
from shop_calc.lesson.pictures.piece_plan import PiecePlan
from shop_calc.lesson.pictures.plan_labels import extent, place_labels
from shop_calc.lesson.pictures.plan_paths import blocks, inner_borders, path_of, spans_of, wall_strokes
from shop_calc.lesson.pictures.sections_words import edge_wordings, sections_alt
from shop_calc.units import show

WIDTH_IN, HEIGHT_IN = 9.0, 6.0
PLAN = (1.95, 2.98, 7.05, 4.84)  # where the plan may lie: left, low, right, top
SHEET = (0.08, 2.36, 8.92, 5.52)  # where its words may lie
CUT = (1.75, 0.62, 6.15, 1.62)  # where the cut may lie
TINTS = {"face": "#F6DDAA", "base": "#A9CDE6"}
SCALES = (0.25, 0.5, 0.75, 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10)


class LayerSections(Picture):
    """Plan and cut of a piece; scales are fixed when it is built, then shapes move in place.

    Parameters
    ----------
    plan : PiecePlan
        What to show first [as its fields].
    reach_m : (float, float), optional
        Greatest length and width that will be shown; fixes the scales [m].
    most_thickness_m : float, optional
        Greatest thickness that will be shown [m].
    title : str
        One line over the picture [-].
    """

    kind = "tall"

    def __init__(self, plan, reach_m=None, most_thickness_m=None, title="Two layers"):
        low_x, low_y, high_x, high_y = plan.outline.bounds
        reach = reach_m or (high_x - low_x, high_y - low_y)
        left, low, right, top = PLAN
        self.title, self._count = title, len(plan.edges)
        self.plan_in_per_m = min((right - left) / reach[0], (top - low) / reach[1])
        self.cut_in_per_m = (CUT[2] - CUT[0]) / reach[1]
        most = (CUT[3] - CUT[1]) / ((most_thickness_m or plan.deepest_m) * self.cut_in_per_m)
        self.exaggeration = max([scale for scale in SCALES if scale <= most * (1 + 1e-9)], default=most)
        super().__init__()
        self.update(plan)

    def build(self, axes):
        """One sheet in inches; every shape and word once."""
        figure = self.figure
        whole_page(axes, WIDTH_IN, HEIGHT_IN)
        place(figure, 0.14, HEIGHT_IN - 0.24, self.title, size=TITLE, weight="bold")
        place(
            figure,
            WIDTH_IN - 0.14,
            HEIGHT_IN - 0.24,
            "plan to scale, top of the face lifted off",
            ha="right",
            color=QUIET,
        )
        empty = Path([(0, 0)])
        patch = lambda **look: axes.add_artist(PathPatch(empty, **look))  # noqa: E731
        self.body = patch(fc=TINTS["face"], ec=INK, lw=1.0, zorder=2)
        self.core = patch(fc=TINTS["base"], ec="none", zorder=3)
        self.rims = axes.add_collection(LineCollection([], colors=INK, linewidths=5.0, capstyle="projecting", zorder=4))
        self.faced = axes.add_collection(
            LineCollection([], colors=ROLES["face"], linewidths=3.2, capstyle="projecting", zorder=5)
        )
        self.walls = axes.add_collection(LineCollection([], colors=INK, linewidths=1.0, zorder=4))
        self.returns = axes.add_collection(LineCollection([], colors=INK, linewidths=1.1, linestyles=[(0, (4, 2.5))], zorder=4))
        (self.cut_line,) = axes.plot([], [], color=INK, lw=1.2, ls=(0, (7, 3, 1.5, 3)), zorder=6)
        self._ends = [place(figure, 0, 0, "A", size=NAME, weight="bold", ha="center") for _ in range(2)]
        self._edge_words = [place(figure, 0, 0) for _ in range(self._count)]
        self._hole_words = [place(figure, 0, 0, ha="center", zorder=7) for _ in range(4)]
        self._base_word = place(figure, 0, 0, ha="center", zorder=7)
        self._cut_words(axes, patch)

    def _cut_words(self, axes, patch):
        figure = self.figure
        axes.add_artist(Rectangle((0.14, 2.26), WIDTH_IN - 0.28, 0.012, fc="#D5D9DE", ec="none"))
        place(figure, 0.14, 2.06, "Cut A–A", size=NAME, weight="bold")
        times = f"{self.exaggeration:g} times as large" if self.exaggeration != 1 else "to scale"
        place(figure, WIDTH_IN - 0.14, 2.06, f"across to scale, thickness drawn {times}", ha="right", color=QUIET)
        self.cut_face = patch(fc=ROLES["face"], ec=INK, lw=1.2, zorder=3)
        self.cut_base = patch(fc=ROLES["base"], ec=PAPER, lw=0, hatch=HATCHES["base"], zorder=4)
        self.cut_rim = patch(fc="none", ec=INK, lw=1.0, zorder=5)
        self.board = axes.add_artist(Rectangle((0, 0), 0, 0.09, fc="#C3C9D1", ec="none", zorder=2))
        self.filler = axes.add_artist(Rectangle((0, 0), 0, 0, fc="#DDE2E8", ec="#8A929C", lw=0.8, zorder=1.9))
        self.sizes = axes.add_collection(LineCollection([], colors=INK, linewidths=1.0, zorder=6))
        self._whole = place(figure, 0, 0, ha="right")
        self._face = place(figure, 0, 0, weight="bold")
        self._base = place(figure, 0, 0, weight="bold")
        self._sides = [place(figure, 0, 0, ha=ha) for ha in ("left", "right")]
        self._across = place(figure, 0, 0, ha="center")

    # ---- moved

    def update(self, plan, system="both"):
        """Move every shape to another piece.

        Parameters
        ----------
        plan : PiecePlan
            With as many edges as the picture was built for [as its fields].
        system : str
            "us", "si" or "both" [-].

        Raises
        ------
        ValueError
            When the number of edges is not the one the picture was built for.
        """
        if len(plan.edges) != self._count:
            raise ValueError(f"edges: {len(plan.edges)} given; this picture was built for {self._count}")
        self._draw_plan(plan, system)
        self._draw_cut(plan, system)
        self.plan = plan
        self.alt = sections_alt(plan, system, self.exaggeration)

    def _on_sheet(self, shape, plan):
        low_x, low_y, high_x, high_y = plan.outline.bounds
        scale = self.plan_in_per_m
        mid_x, mid_y = (PLAN[0] + PLAN[2]) / 2, (PLAN[1] + PLAN[3]) / 2
        at_x, at_y = mid_x - scale * (low_x + high_x) / 2, mid_y - scale * (low_y + high_y) / 2
        return affinity.affine_transform(shape, [scale, 0, 0, scale, at_x, at_y])

    def _draw_plan(self, plan, system):
        outline = self._on_sheet(plan.outline, plan)
        self.body.set_path(path_of(outline))
        self.core.set_path(path_of(self._on_sheet(plan.core, plan)))
        self.returns.set_segments(inner_borders(plan, lambda line: self._on_sheet(line, plan)))
        faced, strokes, wanted = [], [], []
        for name, coords, length_m in plan.named_edges:
            line = self._on_sheet(LineString(coords), plan)
            (faced.append(list(line.coords)) if name in plan.exposed else strokes.extend(wall_strokes(line, outline)))
            wanted.append((list(line.coords), edge_wordings(name, length_m, name in plan.exposed, system)))
        holes = list(outline.interiors)
        faced += [list(ring.coords) for ring, (_, is_faced) in zip(holes, plan.holes, strict=False) if is_faced]
        self.rims.set_segments(faced)
        self.faced.set_segments(faced)
        self.walls.set_segments(strokes)
        marks = self._mark_cut(plan, outline)
        for words, label in zip(self._edge_words, place_labels(wanted, outline, SHEET, marks), strict=True):
            words.set(x=label.x_in / WIDTH_IN, y=label.y_in / HEIGHT_IN, ha=label.ha, text=label.text)
        for words in self._hole_words:
            words.set_text("")
        for words, ring, hole in zip(self._hole_words, holes, plan.holes, strict=False):
            self._name_hole(words, ring, hole[0], self._on_sheet(Point(plan.cut_m, 0), plan).x, outline)
        self._name_base(self._on_sheet(plan.core, plan), self._on_sheet(Point(plan.cut_m, 0), plan).x)

    @staticmethod
    def _name_hole(words, ring, name, cut_in, solid):
        """In the hole if it fits, else beside it where there is piece and no line; else only in the alt text."""
        left, low, right, top = ring.bounds
        x, y, wide = (left + right) / 2, (low + top) / 2, width_in(name)
        free = solid.difference(box(cut_in - 0.05, low - 9, cut_in + 0.05, top + 9)).buffer(-0.03)
        spots = [
            (x, low - 0.14, "center"),
            (x, top + 0.14, "center"),
            (left - 0.08, y, "right"),
            (right + 0.08, y, "left"),
        ]
        if wide + 0.1 < right - left and top - low > 0.25:
            found = (x, y, "center")
        else:
            found = next((spot for spot in spots if free.contains(extent(*spot, name))), None)
        x, y, ha = found or (x, y, "center")
        words.set(x=x / WIDTH_IN, y=y / HEIGHT_IN, ha=ha, text=name if found else "")

    def _name_base(self, core, cut_in):
        """On the base where it is free of the cut, of holes and their names; else the cut below names it alone."""
        left, low, right, top = core.bounds
        free = core.difference(box(cut_in - 0.05, low, cut_in + 0.05, top))
        for words in self._hole_words:
            if words.get_text():
                (x, y), ha = words.get_position(), words.get_ha()
                free = free.difference(extent(x * WIDTH_IN, y * HEIGHT_IN, ha, words.get_text()))
        spots = [(left + share * (right - left), (low + top) / 2) for share in (0.25, 0.75, 0.12, 0.88)]
        found = next((spot for spot in spots if free.contains(extent(*spot, "center", "base"))), None)
        x, y = found or spots[0]
        self._base_word.set(x=x / WIDTH_IN, y=y / HEIGHT_IN, text="base" if found else "")

    def _mark_cut(self, plan, outline):
        x = self._on_sheet(Point(plan.cut_m, 0), plan).x
        low, high = outline.bounds[1] - 0.16, outline.bounds[3] + 0.16
        solid = spans_of(LineString([(x, low), (x, high)]).intersection(outline))
        spans = [(low, low + 0.12), *solid, (high - 0.12, high)]  # no line over an opening: nothing is cut there
        self.cut_line.set_data([x, x, float("nan")] * len(spans), [y for a, b in spans for y in (a, b, float("nan"))])
        for words, y in zip(self._ends, (low, high), strict=True):
            words.set(x=(x + 0.12) / WIDTH_IN, y=y / HEIGHT_IN)
        return [box(x - 0.03, y - 0.12, x + 0.2, y + 0.12) for y in (low, high)]

    def _draw_cut(self, plan, system):
        _, low_y, _, high_y = plan.outline.bounds
        line = LineString([(plan.cut_m, low_y - 1), (plan.cut_m, high_y + 1)])
        scale, tall = self.cut_in_per_m, self.cut_in_per_m * self.exaggeration
        start = (CUT[0] + CUT[2]) / 2 - scale * (low_y + high_y) / 2
        floor = CUT[1] + (plan.deepest_m - plan.thickness_m) * tall
        top = floor + plan.thickness_m * tall
        step = top - plan.face_m * tall
        solid, depths = line.intersection(plan.outline), [(plan.outline, floor)]
        depths += [(region, top - depth_m * tall) for _, depth_m, _, region in plan.drops]
        parts = [(line.intersection(shape), low) for shape, low in depths]
        place_y = lambda y: start + scale * y  # noqa: E731
        self.cut_face.set_path(path_of(blocks(parts, top, place_y)))
        base = path_of(blocks([(part.intersection(plan.core), low) for part, low in parts], step, place_y))
        self.cut_rim.set_path(base)
        self.cut_base.set_path(base)
        ends_m = [y for span in spans_of(solid) for y in span] or [low_y, high_y]
        left, right = start + scale * min(ends_m), start + scale * max(ends_m)
        self.board.set(x=left - 0.12, y=CUT[1] - 0.1, width=right - left + 0.24)
        self.filler.set(x=left, y=CUT[1], width=right - left, height=floor - CUT[1])
        edge_m = next((depth for _, depth, _, region in plan.drops if region.distance(Point(plan.cut_m, min(ends_m))) < 1e-6),
                      plan.thickness_m)  # fmt: skip
        foot, words = top - edge_m * tall, "whole" if edge_m == plan.thickness_m else "edge"
        at = left - 0.2
        reach = right + 0.16
        self.sizes.set_segments([
            [(at, foot), (at, top)], [(at - 0.05, foot), (at + 0.05, foot)], [(at - 0.05, top), (at + 0.05, top)],
            [(right, (step + top) / 2), (reach, (step + top) / 2)],
            [(right - 0.2, (floor + step) / 2), (reach, (floor + step) / 2)],
        ])  # fmt: skip
        size = lambda metres: show(metres, "length", system)  # noqa: E731
        put = lambda words, x, y, text: words.set(x=x / WIDTH_IN, y=y / HEIGHT_IN, text=text)  # noqa: E731
        put(self._whole, at - 0.1, (foot + top) / 2, f"{words}\n{size(edge_m).replace(' (', chr(10) + '(')}")
        put(self._face, reach + 0.06, max((step + top) / 2, (floor + step) / 2 + 0.2), f"face {size(plan.face_m)}")
        put(self._base, reach + 0.06, (floor + step) / 2, f"base {size(plan.thickness_m - plan.face_m)}")
        self._name_sides(plan, (min(ends_m), max(ends_m)), (left, right), CUT[1], system)

    def _name_sides(self, plan, ends_m, ends_in, floor, system):
        texts = []
        for y in ends_m:
            spot = Point(plan.cut_m, y)
            near = min(plan.named_edges, key=lambda edge: LineString(edge[1]).distance(spot), default=None)
            texts.append(f"{near[0]}, {'faced' if near[0] in plan.exposed else 'wall'}" if near else "")
        roomy = sum(width_in(text) for text in texts) + 0.2 < ends_in[1] - ends_in[0]
        middle = sum(ends_in) / 2
        places = ends_in if roomy else (middle - 0.1, middle + 0.1)
        for words, text, x, ha in zip(self._sides, texts, places, ("left", "right"), strict=True):
            side = ha if roomy else {"left": "right", "right": "left"}[ha]
            words.set(x=x / WIDTH_IN, y=(floor - 0.24) / HEIGHT_IN, text=text, ha=side)
        self._across.set(
            x=middle / WIDTH_IN,
            y=(floor - 0.46) / HEIGHT_IN,
            text=f"{show(ends_m[1] - ends_m[0], 'length', system)} across",
        )


def layer_sections_alt(plan, system="both"):
    """Plan and cut in words.

    Parameters
    ----------
    plan : PiecePlan
        What is shown [as its fields].
    system : str
        "us", "si" or "both" [-].

    Returns
    -------
    str
        Alt text [-].
    """
    return sections_alt(plan, system, LayerSections(plan).exaggeration)


__all__ = ["LayerSections", "PiecePlan", "layer_sections_alt"]
