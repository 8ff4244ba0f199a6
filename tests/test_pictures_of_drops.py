"""Plan, cut and sketch of a piece with several dropped edges: every return is drawn where it is, and said in words."""

import re

import pytest
from matplotlib.path import Path
from shapely.geometry import LineString, Polygon

from shop_calc.lesson.pictures.from_plan import piece_plan
from shop_calc.lesson.pictures.plan_paths import inner_borders
from shop_calc.lesson.pictures.sections import LayerSections
from shop_calc.lesson.sheet import sketch as drawn
from shop_calc.trade.shape.drops import DropEdge
from shop_calc.trade.shape.layers import split_layers
from shop_calc.trade.shape.outline import l_shape, rectangle
from shop_calc.trade.shape.piece import build_piece

IN = 0.0254
DROPS = [DropEdge("front", 4 * IN, 2 * IN), DropEdge("left", 3 * IN, 3 * IN), DropEdge("right", 3 * IN, 3 * IN)]
TOP = build_piece(rectangle(60 * IN, 15 * IN), 1.5 * IN, {"front", "left", "right"}, drop=DROPS)
PLAN = piece_plan(TOP, split_layers(TOP, 0.25 * IN))


def area_of(path):
    rings = [Polygon(ring) for ring in path.to_polygons()]
    return sum(ring.area for ring in rings)


def test_the_cut_hangs_down_where_the_front_drops():
    picture = LayerSections(PLAN)
    across, down = picture.cut_in_per_m, picture.cut_in_per_m * picture.exaggeration
    # 15 x 1.5 in and below it 2 x 2.5; base 14.75 x 1.25 and 1.75 x 2.5: the back is a wall
    assert area_of(picture.cut_face.get_path()) / (across * down) / IN**2 == pytest.approx(15 * 1.5 + 2 * 2.5)
    assert area_of(picture.cut_base.get_path()) / (across * down) / IN**2 == pytest.approx(14.75 * 1.25 + 1.75 * 2.5)
    assert picture.filler.get_height() / down / IN == pytest.approx(2.5)
    assert picture._whole.get_text().startswith('edge\n4"')
    assert picture.exaggeration in (0.25, 0.5, 0.75, 1)


def test_every_return_ends_at_a_dashed_line():
    lines = inner_borders(PLAN, lambda line: line)
    # the front's 60, and behind it the 15 - 2 of each end; what they share is drawn once
    assert sum(LineString(line).length for line in lines) / IN == pytest.approx(60 + 2 * 13, rel=1e-6)
    assert len(LayerSections(PLAN).returns.get_segments()) == len(lines)


def test_the_alt_text_names_every_drop():
    alt = LayerSections(PLAN).alt
    assert 'Dropped to 4" (102 mm), returning 2" (50.8 mm) under it: front.' in alt
    assert 'Dropped to 3" (76.2 mm), returning 3" (76.2 mm) under it: right and left.' in alt


def test_without_a_drop_nothing_is_dashed_and_the_board_lies_under_it_all():
    flat = build_piece(rectangle(60 * IN, 15 * IN), 1.5 * IN, True)
    picture = LayerSections(piece_plan(flat, split_layers(flat, 0.25 * IN)))
    assert picture.returns.get_segments() == [] and picture.filler.get_height() == 0 and "Dropped" not in picture.alt
    assert isinstance(picture.cut_base.get_path(), Path)


def test_the_sketch_on_the_sheet_draws_and_says_every_drop():
    words = drawn.sketch_words(TOP)
    assert words.endswith('dropped (dashed): front to 4" (102 mm), returning 2" (50.8 mm); right and left to 3" (76.2 mm), '
                          'returning 3" (76.2 mm).')  # fmt: skip
    assert drawn.sketch(TOP).count("stroke-dasharray") == 3


@pytest.mark.parametrize("outline", [rectangle(60 * IN, 15 * IN), l_shape(126 * IN, 96 * IN, 100.5 * IN, 70.5 * IN)])
def test_names_on_the_sketch_stay_off_the_dashed_lines(outline):
    piece = build_piece(outline, 1.5 * IN, True, drop=DropEdge("front", 3 * IN, 3 * IN))
    paper = drawn._Paper(piece)
    (at,) = [float(y) for y in re.findall(r'y="([\d.]+)"[^>]*>front<', drawn.sketch(piece))]
    dashed = paper.spot((0.0, 3 * IN))[1]
    assert at < dashed  # the foot of the type stands above the line, which lies above the front
