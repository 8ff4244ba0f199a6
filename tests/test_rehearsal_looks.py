"""What a look says changes at the resistance, the dryness or the rate that is named, not before: each limit from both sides."""

from dataclasses import replace

import pytest
from practice_pieces import PSI, a_pour, piece

from shop_calc import units
from shop_calc.trade.rehearsal.signs import look, print_depth_m

FIRM = {"yield_start_pa": 1e5}  # bears any edge from the first: only the late clock speaks
FIVE_MIN_H = 5.0 / 60.0


def cue(sign, **fields):
    return look(piece(a_pour(**FIRM), **fields), sign).cue


# rows strip_pr_low 10, strip_pr_high 40, first_steel_pr_low 60 [psi]
@pytest.mark.parametrize(("psi", "said"), [
    (9.99, "leans"), (10.01, "keeps"), (39.9, "keeps"), (40.1, "firm"), (59.9, "firm"), (60.1, "stiff"), (900, "stiff"),
])  # fmt: skip
def test_an_edge_leans_keeps_its_shape_and_is_stiff(psi, said):
    assert cue("edge", psi=psi) == said


def test_an_edge_that_is_too_weak_leans_and_the_softer_layer_decides():
    assert look(piece(a_pour(yield_start_pa=0.0, build_up_pa_s=0.0), psi=9.99), "edge").cue == "leans"
    assert cue("edge", psi=30, base_psi=9) == "leans" and cue("edge", psi=9, base_psi=30) == "leans"


def test_an_edge_that_leans_is_said_with_all_its_height():
    # 1 1/2 in, and with a dropped edge 1 in more
    pour = a_pour(**FIRM)
    for drop_m, high in ((0.0, "1 1/2"), (0.0254, "2 1/2")):
        told = replace(pour.told, drop_m=drop_m)
        assert f'the edge, {high}" (' in look(piece(replace(pour, told=told), psi=9.0), "edge").words


@pytest.mark.parametrize(("psi", "said"), [(59.9, "stays"), (60.1, "too stiff")])  # row layer_gap_pr
def test_a_base_takes_the_face_until_it_takes_no_thumb_print(psi, said):
    assert cue("edge", psi=psi, face_on_h=None, settled_h=None) == said


# row last_steel_pr_low 250 [psi]; dull from free_water, half of it is half the way: judgement
@pytest.mark.parametrize(("psi", "passes", "share_lost", "said"), [
    (100, (), 0.0, "wet"), (100, (), 0.495, "wet"), (100, (), 0.505, "fading"), (100, (), 0.995, "fading"),
    (100, (), 1.005, "dull"), (100, (), 3.0, "dull"),
    (249.9, (100,), 2.0, "dull"), (250.1, (100,), 2.0, "hard"), (250.1, (), 2.0, "dull"),
    (400, (249.9,), 2.0, "hard"), (400, (250.1,), 2.0, "polished"), (400, (100, 300), 2.0, "polished"),
])  # fmt: skip
def test_the_sheen_is_that_of_water_until_the_blade_brings_its_own(psi, passes, share_lost, said):
    steel = tuple((2.0 + 0.1 * number, met * PSI) for number, met in enumerate(passes))
    assert cue("sheen", psi=psi, steel=steel, skin_kg_m2=share_lost * 0.25) == said


# power_law_from 10 psi; a 1/8 in rod meets 5 kg on the scale at 5 x 9.80665 N / 7.917e-6 m2 = 898 psi
@pytest.mark.parametrize(("psi", "said"), [(9.99, "soft"), (10.01, "read"), (890, "read"), (905, "beyond")])
def test_the_rod_is_read_between_its_own_weight_and_the_end_of_the_scale(psi, said):
    found = look(piece(psi=psi), "rod")
    assert found.cue == said
    assert found.resistance_pa == (pytest.approx(psi * PSI) if said == "read" else None)


@pytest.mark.parametrize(("psi", "words"), [(39.5, '1/8" (3.22 mm)'), (41, 'less than 1/8" (3.1 mm)')])
def test_a_print_of_an_eighth_of_an_inch_is_where_the_rule_ends(psi, words):
    """A quarter inch at 20 psi (thumb_print_pr), depth times resistance the same for all: an eighth at 40 psi."""
    said = look(piece(psi=psi), "thumb").words
    assert words in said and said.count("less than") == words.count("less than")
    assert print_depth_m(psi * PSI) == pytest.approx(0.00635 * 20 / psi)


@pytest.mark.parametrize(("resistance_pa", "depth_m"), [(0.0, 0.0127), (253 * PSI, 0.000502), (255 * PSI, 0.0)])
def test_a_print_is_never_deeper_or_fainter_than_what_says_anything(resistance_pa, depth_m):
    """Rows print_deepest 12.7 mm and print_faintest 0.5 mm: 0.00635 m x 20 psi / 0.0005 m = 254 psi."""
    assert print_depth_m(resistance_pa) == pytest.approx(depth_m, rel=1e-3)


@pytest.mark.parametrize(("steps", "kg_m2_h"), [
    (0.0, 0.1), (0.49, 0.1), (0.51, 0.3), (1.49, 0.3), (1.494, 0.3), (1.51, 0.6), (2.2, 0.6), (40.0, 0.6),
])  # fmt: skip
def test_the_air_is_reckoned_at_the_nearest_five_minutes_and_after_the_last_as_there(steps, kg_m2_h):
    pour = replace(a_pour(), rate_kg_m2_h=(0.1, 0.3, 0.6))
    found = look(piece(pour, hour_h=steps * FIVE_MIN_H), "air")
    assert f"about {units.show(kg_m2_h, 'rate')}," in found.words
    assert found.cue == {0.1: "green", 0.3: "amber", 0.6: "red"}[kg_m2_h]  # face_amber 0.25, face_red 0.5


def test_the_air_is_told_as_anybody_can_reckon_it_without_the_factor_of_the_day():
    pour = replace(a_pour(evaporation_factor=2.0), rate_kg_m2_h=(0.6, 0.6))
    found = look(piece(pour), "air")
    assert found.cue == "amber" and units.show(0.3, "rate") in found.words
