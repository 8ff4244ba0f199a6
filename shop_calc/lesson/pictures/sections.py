"""The two layers of a piece: plan with the top of the face lifted off, and a cut across it.

The plan is to scale. The cut is to scale across; its thickness is drawn larger by a factor that is stated.
"""

from dataclasses import dataclass

from matplotlib.collections import LineCollection
from matplotlib.patches import PathPatch, Rectangle
from matplotlib.path import Path
from shapely import affinity
from shapely.geometry import LineString, Point, box
from shapely.geometry.polygon import orient

from shop_calc.lesson.pictures.base import HATCHES, INK, PAPER, QUIET, ROLES, Picture
from shop_calc.lesson.pictures.lettering import NAME, PLAIN, TITLE, place, width_in
from shop_calc.lesson.pictures.plan_labels import outward, place_labels
from shop_calc.lesson.pictures.sections_words import edge_wordings, sections_alt
from shop_calc.units import show

WIDTH_IN, HEIGHT_IN = 9.0, 6.0
PLAN = (1.95, 2.86, 7.05, 4.92)  # where the plan may lie: left, low, right, top
SHEET = (0.08, 2.36, 8.92, 5.52)  # where its words may lie
CUT = (1.75, 0.62, 6.15, 1.62)  # where the cut may lie
WALL_IN = 0.09  # strokes behind an edge that stands against a wall
TINTS = {"face": "#F6DDAA", "base": "#A9CDE6"}
SCALES = (1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10)


@dataclass(frozen=True)
class PiecePlan:
    """What is drawn: shapes in metres, front edge along y = 0.

    Parameters
    ----------
    outline : shapely Polygon
        The piece from above, cut-outs as holes [m].
    core : shapely Polygon
        The base from above, inside the face of exposed edges [m].
    thickness_m, face_m : float
        Thickness of the piece and of the face [m].
    edges : sequence
        Outer edges, each (name, coords) or an object with name and coords [m].
    exposed : set of str
        Names of the edges that are faced; the others stand against a wall [-].
    holes : sequence of (str, bool)
        Name of each cut-out, in the order of the holes, and whether its edge is faced [-].
    cut_x_m : float, optional
        Where the cut is taken, by default through the middle of the length [m].

    Examples
    --------
    >>> from shapely.geometry import box
    >>> PiecePlan(box(0, 0, 1.5, 0.4), box(0, 0, 1.5, 0.4), 0.038, 0.006, (), frozenset()).thickness_m
    0.038
    """

    outline: object
    core: object
    thickness_m: float
    face_m: float
    edges: tuple
    exposed: frozenset
    holes: tuple = ()
    cut_x_m: float | None = None

    @property
    def cut_m(self):
        """Where the cut is taken [m]."""
        low, _, high, _ = self.outline.bounds
        return (low + high) / 2 if self.cut_x_m is None else self.cut_x_m

    @property
    def named_edges(self):
        """Edges as (name, coords)."""
        return [edge if isinstance(edge, tuple) else (edge.name, edge.coords) for edge in self.edges]


def _path(shape):
    parts = [shape] if shape.geom_type == "Polygon" else list(getattr(shape, "geoms", ()))
    parts = [orient(part) for part in parts if not part.is_empty]  # holes turn the other way, or they are filled
    rings = [ring for part in parts for ring in (part.exterior, *part.interiors)]
    paths = [Path(list(ring.coords), closed=True) for ring in rings]
    return Path.make_compound_path(*paths) if paths else Path([(0, 0)])


def _pieces(line):
    lines = [line] if line.geom_type == "LineString" else [p for p in line.geoms if p.geom_type == "LineString"]
    return [sorted(y for _, y in (part.coords[0], part.coords[-1])) for part in lines if part.length > 1e-6]


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
        most = (CUT[3] - CUT[1]) / ((most_thickness_m or plan.thickness_m) * self.cut_in_per_m)
        self.exaggeration = max([scale for scale in SCALES if scale <= most * (1 + 1e-9)], default=most)
        super().__init__()
        self.update(plan)

    def build(self, axes):
        """One sheet in inches; every shape and word once."""
        figure = self.figure
        figure.set_size_inches(WIDTH_IN, HEIGHT_IN)
        axes.set_position([0, 0, 1, 1])
        axes.set(xlim=(0, WIDTH_IN), ylim=(0, HEIGHT_IN))
        axes.set_axis_off()
        place(figure, 0.14, HEIGHT_IN - 0.24, self.title, size=TITLE, weight="bold")
        place(figure, WIDTH_IN - 0.14, HEIGHT_IN - 0.24, "plan to scale, top of the face lifted off", ha="right", color=QUIET)
        empty = Path([(0, 0)])
        patch = lambda **look: axes.add_patch(PathPatch(empty, **look))  # noqa: E731
        self.body = patch(fc=TINTS["face"], ec=INK, lw=1.0, zorder=2)
        self.core = patch(fc=TINTS["base"], ec="none", zorder=3)
        self.rims = axes.add_collection(LineCollection([], colors=INK, linewidths=5.0, capstyle="projecting", zorder=4))
        self.faced = axes.add_collection(LineCollection([], colors=ROLES["face"], linewidths=3.2, capstyle="projecting", zorder=5))
        self.walls = axes.add_collection(LineCollection([], colors=INK, linewidths=1.0, zorder=4))
        (self.cut_line,) = axes.plot([], [], color=INK, lw=1.2, ls=(0, (7, 3, 1.5, 3)), zorder=6)
        self._ends = [place(figure, 0, 0, "A", size=NAME, weight="bold", ha="center") for _ in range(2)]
        self._edge_words = [place(figure, 0, 0) for _ in range(self._count)]
        self._hole_words = [place(figure, 0, 0, ha="center", zorder=7) for _ in range(4)]
        self._cut_words(axes, patch)

    def _cut_words(self, axes, patch):
        figure = self.figure
        axes.add_patch(Rectangle((0.14, 2.26), WIDTH_IN - 0.28, 0.012, fc="#D5D9DE", ec="none"))
        place(figure, 0.14, 2.06, "Cut A–A", size=NAME, weight="bold")
        times = f"{self.exaggeration:g} times as large" if self.exaggeration != 1 else "to scale"
        place(figure, WIDTH_IN - 0.14, 2.06, f"across to scale, thickness drawn {times}", ha="right", color=QUIET)
        self.cut_face = patch(fc=ROLES["face"], ec=INK, lw=1.2, zorder=3)
        self.cut_base = patch(fc=ROLES["base"], ec=PAPER, lw=0, hatch=HATCHES["base"], zorder=4)
        self.cut_rim = patch(fc="none", ec=INK, lw=1.0, zorder=5)
        self.board = axes.add_patch(Rectangle((0, 0), 0, 0.09, fc="#C3C9D1", ec="none", zorder=2))
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
        self.body.set_path(_path(outline))
        self.core.set_path(_path(self._on_sheet(plan.core, plan)))
        faced, strokes, wanted = [], [], []
        for name, coords in plan.named_edges:
            line = self._on_sheet(LineString(coords), plan)
            (faced.append(list(line.coords)) if name in plan.exposed else strokes.extend(_wall(line, outline)))
            wanted.append((list(line.coords), edge_wordings(name, coords, name in plan.exposed, system)))
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
            self._name_hole(words, ring, hole[0], self._on_sheet(Point(plan.cut_m, 0), plan).x)

    @staticmethod
    def _name_hole(words, ring, name, cut_in):
        left, low, right, top = ring.bounds
        wide = width_in(name) + 0.1
        inside = wide < right - left and top - low > 0.25
        x, y = (left + right) / 2, (low + top) / 2 if inside else low - 0.15
        if not inside and abs(x - cut_in) < wide / 2:  # beside the line of the cut, not on it
            x = cut_in - wide / 2
        words.set(x=x / WIDTH_IN, y=y / HEIGHT_IN, text=name)

    def _mark_cut(self, plan, outline):
        x = self._on_sheet(Point(plan.cut_m, 0), plan).x
        low, high = outline.bounds[1] - 0.16, outline.bounds[3] + 0.16
        solid = _pieces(LineString([(x, low), (x, high)]).intersection(outline))
        spans = [(low, low + 0.12), *solid, (high - 0.12, high)]  # no line over an opening: nothing is cut there
        self.cut_line.set_data([x, x, float("nan")] * len(spans), [y for a, b in spans for y in (a, b, float("nan"))])
        for words, y in zip(self._ends, (low, high), strict=True):
            words.set(x=(x + 0.12) / WIDTH_IN, y=y / HEIGHT_IN)
        return [box(x - 0.03, y - 0.12, x + 0.2, y + 0.12) for y in (low, high)]

    def _draw_cut(self, plan, system):
        low_x, low_y, high_x, high_y = plan.outline.bounds
        line = LineString([(plan.cut_m, low_y - 1), (plan.cut_m, high_y + 1)])
        scale, tall = self.cut_in_per_m, self.cut_in_per_m * self.exaggeration
        start = (CUT[0] + CUT[2]) / 2 - scale * (low_y + high_y) / 2
        floor = CUT[1]
        top = floor + plan.thickness_m * tall
        step = top - plan.face_m * tall
        whole = [(start + scale * a, start + scale * b) for a, b in _pieces(line.intersection(plan.outline))]
        base = [(start + scale * a, start + scale * b) for a, b in _pieces(line.intersection(plan.core))]
        self.cut_face.set_path(_boxes(whole, floor, top))
        self.cut_rim.set_path(_boxes(base, floor, step))
        self.cut_base.set_path(_boxes(base, floor, step))
        left, right = start + scale * low_y, start + scale * high_y
        self.board.set(x=left - 0.12, y=floor - 0.1, width=right - left + 0.24)
        at = left - 0.2
        reach = right + 0.16
        self.sizes.set_segments([
            [(at, floor), (at, top)], [(at - 0.05, floor), (at + 0.05, floor)], [(at - 0.05, top), (at + 0.05, top)],
            [(right, (step + top) / 2), (reach, (step + top) / 2)], [(right - 0.2, (floor + step) / 2), (reach, (floor + step) / 2)],
        ])  # fmt: skip
        size = lambda metres: show(metres, "length", system)  # noqa: E731
        put = lambda words, x, y, text: words.set(x=x / WIDTH_IN, y=y / HEIGHT_IN, text=text)  # noqa: E731
        put(self._whole, at - 0.1, (floor + top) / 2, f"whole\n{size(plan.thickness_m).replace(' (', chr(10) + '(')}")
        put(self._face, reach + 0.06, max((step + top) / 2, (floor + step) / 2 + 0.2), f"face {size(plan.face_m)}")
        put(self._base, reach + 0.06, (floor + step) / 2, f"base {size(plan.thickness_m - plan.face_m)}")
        self._name_sides(plan, line, (left, right), floor, system)

    def _name_sides(self, plan, line, ends_in, floor, system):
        low_y, high_y = plan.outline.bounds[1], plan.outline.bounds[3]
        for words, y, x in zip(self._sides, (low_y, high_y), ends_in, strict=True):
            spot = Point(plan.cut_m, y)
            near = min(plan.named_edges, key=lambda edge: LineString(edge[1]).distance(spot), default=None)
            text = f"{near[0]}, {'faced' if near[0] in plan.exposed else 'wall'}" if near else ""
            words.set(x=x / WIDTH_IN, y=(floor - 0.24) / HEIGHT_IN, text=text)
        self._across.set(
            x=sum(ends_in) / 2 / WIDTH_IN, y=(floor - 0.46) / HEIGHT_IN, text=f"{show(high_y - low_y, 'length', system)} across"
        )


def _boxes(spans, low, top):
    rings = [Path([(a, low), (b, low), (b, top), (a, top), (a, low)], closed=True) for a, b in spans]
    return Path.make_compound_path(*rings) if rings else Path([(0, 0)])


def _wall(line, outline):
    """The edge itself and short strokes outside it, as a wall is drawn on paper."""
    strokes = [list(line.coords)]
    for number in range(max(int(line.length / 0.13), 1)):
        spot = line.interpolate((number + 0.5) / max(int(line.length / 0.13), 1), normalized=True)
        near = line.interpolate(min(line.project(spot) + 0.01, line.length))
        back = line.interpolate(max(line.project(spot) - 0.01, 0.0))
        _, _, out_x, out_y = outward([(back.x, back.y), (near.x, near.y)], outline)
        along_x, along_y = -out_y, out_x
        end = (spot.x + WALL_IN * (out_x + along_x * 0.7), spot.y + WALL_IN * (out_y + along_y * 0.7))
        strokes.append([(spot.x, spot.y), end])
    return strokes


def layer_sections(plan, system="both", title="Two layers"):
    """Plan and cut as a figure.

    Parameters
    ----------
    plan : PiecePlan
        What to show [as its fields].
    system : str
        "us", "si" or "both" [-].
    title : str
        One line over the picture [-].

    Returns
    -------
    Figure
        The picture [-].
    """
    picture = LayerSections(plan, title=title)
    picture.update(plan, system)
    return picture.figure


def layer_sections_alt(plan, system="both"):
    """Plan and cut in words; see `sections_words.sections_alt`."""
    return LayerSections(plan).alt if system == "both" else sections_alt(plan, system)
