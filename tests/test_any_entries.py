"""Outlines and recipes drawn at random, sensible, odd and impossible: each is built and adds up, or is refused in lines."""

import copy

import pytest
from case_jobs import PLAIN
from hypothesis import given, settings
from hypothesis import strategies as st

from shop_calc.trade.after.piece_beam import flat_stress_pa, piece_beam
from shop_calc.trade.job_parts import piece_of
from shop_calc.trade.jobs.job import check_job
from shop_calc.trade.jobs.job_fields import CUTOUT_SHAPES, OUTLINES, SIZES
from shop_calc.trade.mortar.mix import build_mix
from shop_calc.trade.mortar.recipe_file import recipe_from_table
from shop_calc.trade.mortar.recipe_types import Recipe
from shop_calc.trade.shape.form import build_form
from shop_calc.trade.shape.layers import split_layers
from shop_calc.trade.shape.piece_advice import piece_advice

ODD = st.sampled_from(["0 in", "-3 in", "1/16 in", "1e-9 m", "90 ft", "nan in", "3 lb", "", 7, [], None, True])
ALL = ("length", "width", "diameter", "notch_length", "notch_width", "notch_at", "corner_radius", "points")
MANY = settings(max_examples=2 * settings().max_examples)


def lines_of(error):
    lines = str(error).splitlines()
    assert lines and all(line.strip() and len(line) < 1200 for line in lines)
    assert not any(word in str(error) for word in ("Traceback", "NoneType", "object at 0x", "GEOS", "Exception"))


def size(low, high):
    return st.integers(low, high).map(lambda inches: f"{inches} in")


def corners(draw, long, wide):
    """Corners of a polygon, one or two to each side of a box; some outlines cross themselves."""
    box = [(0, 0), (long // 2, 0), (long, 0), (long, wide // 2), (long, wide), (long // 2, wide), (0, wide), (0, wide // 2)]
    kept = [corner for corner in box if draw(st.integers(0, 4))]
    moved = [(x + draw(st.integers(-wide // 2, wide // 2)), y + draw(st.integers(-wide // 3, wide // 3))) for x, y in kept]
    return [[f"{x} in", f"{y} in"] for x, y in moved]


@st.composite
def pieces(draw):
    shape, long, wide = draw(st.sampled_from(OUTLINES)), draw(st.integers(30, 110)), draw(st.integers(14, 40))
    points = corners(draw, long, wide)
    fit = {"length": f"{long} in", "width": f"{wide} in", "diameter": f"{wide} in", "notch_length": draw(size(3, long)),
           "notch_width": draw(size(3, wide)), "notch_at": draw(size(2, long)), "points": points}  # fmt: skip
    piece = {"outline": shape, "thickness": draw(st.sampled_from(["1 in", "1 1/2 in", "2 1/2 in"]))}
    piece |= {name: fit[name] for name in SIZES[shape]}
    if shape == "rectangle" and draw(st.booleans()):
        piece["corner_radius"] = draw(size(0, wide))
    if not draw(st.integers(0, 3)):  # a slip: a size that is odd, or belongs to another shape, or is missing
        piece[draw(st.sampled_from(ALL))] = draw(ODD)
    piece["exposed"] = draw(st.sampled_from(["all", "all", "none", "none", ["front"], ["no such edge"], []]))
    if not draw(st.integers(0, 2)):
        hole = {"shape": draw(st.sampled_from(CUTOUT_SHAPES)), "at": [draw(size(0, long)), draw(size(0, wide))]}
        sizes = {"length": draw(size(1, long)), "width": draw(size(1, wide)), "diameter": draw(size(1, wide))}
        piece["cutout"] = [hole | {name: sizes.get(name, points) for name in SIZES[hole["shape"]]}]
    if not draw(st.integers(0, 3)):
        edges = st.sampled_from(["front", "left", "inner back", "edge 1", ["front", "left"], ["right", "front"], [], 3])
        rows = [{"edge": draw(edges), "depth": draw(size(1, 6)), "width": draw(st.one_of(size(1, 5), size(1, wide)))}
                for _ in range(draw(st.integers(1, 3)))]  # fmt: skip
        piece["drop"] = rows[0] if len(rows) == 1 and draw(st.booleans()) else rows
    return piece


@MANY
@given(pieces())
def test_any_outline_is_split_into_two_layers_or_refused_in_lines(piece):
    entries = copy.deepcopy(PLAIN) | {"piece": piece}
    try:
        made = piece_of(check_job(entries))
        layers = split_layers(made, 0.00635)
        form = build_form(made, density_kg_m3=2300.0)
        said = piece_advice(made, layers)
    except ValueError as error:
        lines_of(error)
        return
    assert layers.face_m3 > 0 and layers.core_m3 >= 0
    assert layers.face_m3 + layers.core_m3 == pytest.approx(layers.total_m3, rel=1e-9)
    fillers = [row for row in form.rows if row.name.startswith(("filler", "return"))]
    assert form.caulk_length_m > 0 and all(row.length_m > 0 and row.width_m > 0 for row in fillers)
    assert all(line.text and line.reason for line in said)
    assert flat_stress_pa(piece_beam(made, 2300.0), 0.0) > 0


BINDERS = ["white portland cement", "slag cement", "fly ash", "silica fume", "metakaolin", "ground-glass pozzolan"]
GRAINS = ["fine silica sand", "coarse sand"]
DOSED = ["acrylic dispersion 50 %", "water reducer, liquid", "iron-oxide pigment yellow", "titanium dioxide"]
FIBRES = ["AR glass fibre", "PVA fibre", "polypropylene fibre"]
OWN = ("relative_density", "absorption", "solids", "solids_relative_density", "kind", "role", "state", "amount")
WRONG = st.one_of(st.floats(), st.text(max_size=8), st.sampled_from(["94 lb", "3 in", "-1 % of binder", None, [], {}]))


def share(draw, most, bases):
    return f"{draw(st.floats(0, most)):.3f} % {draw(st.sampled_from(bases))}"


@st.composite
def tables(draw):
    """Mostly a recipe; one time in three with a slip in it."""
    state = st.sampled_from(["oven-dry", "saturated surface-dry"])
    parts = {"portland cement": 100} | {name: draw(st.integers(1, 80)) for name in draw(st.sets(st.sampled_from(BINDERS)))}
    parts |= {name: {"amount": draw(st.integers(10, 300)), "state": draw(state)} for name in GRAINS[: draw(st.integers(1, 2))]}
    if draw(st.booleans()):
        parts["fine silica sand"]["relative_density"] = draw(st.floats(0.05, 8.0))
    doses = {name: share(draw, 6, ["of binder", "of cement"]) for name in draw(st.sets(st.sampled_from(DOSED[1:])))}
    if draw(st.booleans()):
        doses[DOSED[0]] = share(draw, 8, ["solids of binder", "liquid of binder"])
    whole = {"w_cm": draw(st.floats(0.25, 1.0)), "air": draw(st.sampled_from(["0 %", "4 %", "12 %"])), "parts": parts}
    whole |= {"doses": doses} if doses else {}
    for place in ("face", "base"):
        if draw(st.booleans()):
            whole[place] = {draw(st.sampled_from(FIBRES)): share(draw, 3, ["of total mass", "of volume", "of binder"])}
    if not draw(st.integers(0, 2)):
        place = draw(st.sampled_from(sorted(whole)))
        if not isinstance(whole[place], dict) or draw(st.booleans()):
            whole[place] = draw(WRONG)
        else:
            name = draw(st.one_of(st.sampled_from(sorted(whole[place])), st.text(max_size=8)))
            line = draw(st.one_of(WRONG, st.fixed_dictionaries({}, optional=dict.fromkeys(OWN, WRONG))))
            old = whole[place].get(name, {})
            whole[place][name] = old | line if isinstance(old, dict) and isinstance(line, dict) else line
    return whole


@MANY
@given(tables(), st.floats(0.0, 2.0))
def test_any_recipe_makes_a_mix_that_adds_up_or_is_refused_in_lines(table, stone):
    try:
        made = recipe_from_table(table)
        mix = build_mix(made, stone_ratio=stone)
    except ValueError as error:
        lines_of(error)
        return
    assert isinstance(made, Recipe) and 0 < mix.phi <= 1 and mix.mortar_kg > 0
    water_kg = mix.added_water_kg + mix.free_water_kg + mix.liquid_water_kg
    assert water_kg == pytest.approx(mix.total_water_kg, rel=1e-9)
    assert mix.mortar_density_kg_m3 == pytest.approx(mix.mortar_kg / mix.mortar_m3, rel=1e-9)
    assert 40 < mix.mortar_density_kg_m3 < 9000  # between its lightest and its densest part
