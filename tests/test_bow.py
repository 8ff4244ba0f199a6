"""Shrinkage and curl: two codes side by side, bows against hand sums and beams, and what is said about them."""


import numpy as np
import pytest
from demo_plans import NAMES, bench, demo_plan
from structuralcodes.codes import ec2_2004
from working_eval import check_working

from shop_calc import defaults
from shop_calc.trade.after import curling
from shop_calc.trade.after.bow import base_recipe, bow_level, plan_bow
from shop_calc.trade.shape.layers import rectangle_layers

IN, FT = 0.0254, 0.3048


@pytest.fixture(params=NAMES)
def plan(request):
    return demo_plan(request.param)


def test_the_base_shrinks_as_a_reference_package_says():
    # fib structuralcodes, EN 1992-1-1: fck 26.5, RH 50 %, notional size the thickness, from 1 day on.
    en, _, en_28, _ = curling.base_shrinkage(0.0381, 0.5, 34.5e6)
    base = ec2_2004.eps_cd_0(ec2_2004.alpha_ds1("N"), ec2_2004.alpha_ds2("N"), 34.5, ec2_2004.beta_RH(50))
    dry = ec2_2004.k_h(38.1) * base
    own = ec2_2004.eps_ca_inf(26.5)
    assert en == pytest.approx(dry + own, rel=1e-3)
    pace = ec2_2004.beta_ds(28, 1, 38.1)
    assert en_28 == pytest.approx(pace * dry + ec2_2004.beta_as(28) * own, rel=1e-3)


def test_drier_air_and_weaker_mix_shrink_more():
    for which in (0, 1):
        by_air = [float(curling.base_shrinkage(0.038, rh, 34.5e6)[which]) for rh in (0.9, 0.7, 0.5, 0.3)]
        assert by_air == sorted(by_air)
    drying = [float(curling.base_shrinkage(0.038, 0.5, fc)[0]) for fc in (60e6, 40e6, 25e6)]
    assert drying == sorted(drying)
    thin = [float(curling.base_shrinkage(t, 0.5, 34.5e6)[1]) for t in (0.15, 0.08, 0.03)]
    assert thin == sorted(thin)


def test_base_over_face_is_phi_to_the_n(plan):
    # Pickett's form: phi 0.631 and n 1.2, 1.5, 1.7 give 0.575, 0.501, 0.457.
    bow = plan.bow
    assert bow.restraint_ratio == pytest.approx(plan.mix.phi**1.5)
    assert bow.restraint_low_ratio == pytest.approx(plan.mix.phi**1.7)
    assert bow.restraint_high_ratio == pytest.approx(plan.mix.phi**1.2)
    assert bow.base_strain == pytest.approx(bow.face_strain * bow.restraint_ratio)
    assert bow.base_strain == pytest.approx((bow.en_strain + bow.aci_strain) / 2)


def test_two_layers_by_laminate_theory():
    # Free strain in the upper layer; force and moment nil: solved here as two linear equations.
    face, base, phi, n, strain, length = 0.006, 0.032, 0.65, 1.5, 600e-6, 1.5
    e1, e2 = defaults.si("modulus_face"), defaults.si("modulus_base")
    difference = strain * (phi**-n - 1)
    edges = ((0.0, base, e2, 0.0), (base, base + face, e1, difference))
    a = sum(e * (z1 - z0) for z0, z1, e, _ in edges)
    b = sum(e * (z1**2 - z0**2) / 2 for z0, z1, e, _ in edges)
    d = sum(e * (z1**3 - z0**3) / 3 for z0, z1, e, _ in edges)
    force = sum(e * s * (z1 - z0) for z0, z1, e, s in edges)
    moment = sum(e * s * (z1**2 - z0**2) / 2 for z0, z1, e, s in edges)
    kappa = np.linalg.solve([[a, b], [b, d]], [force, moment])[1]
    assert curling.two_layer_bow_m(strain, phi, n, face, base, length) == pytest.approx(kappa * length**2 / 8, rel=1e-9)


def test_without_stone_nothing_pulls_unlike():
    assert curling.two_layer_bow_m(600e-6, 1.0, 1.5, 0.006, 0.032, 1.5) == pytest.approx(0, abs=1e-15)
    plain = bench(mix__stone="0", mix__coarse_sand="0")
    assert plain.bow.two_layer.likely_m == pytest.approx(0, abs=1e-15)
    assert plain.bow.two_layer.low_m == plain.bow.two_layer.high_m == plain.bow.two_layer.likely_m
    assert plain.bow.one_face.likely_m > 0


def test_a_patio_top_that_curled():
    # 5 x 5 ft, 3/4 in, 300 millionths between top and bottom: 0.36 in over 85 in; 0.18 in at 1-1/2 in.
    for thick, bow in ((0.75, 0.36), (1.5, 0.18)):
        free = curling.one_face_bow_m(300e-6, 0.0, thick * IN, 85 * IN, share=1.0)
        assert free / IN == pytest.approx(bow, abs=0.005)
        assert bow_level(free) == "high"
    layers = rectangle_layers(5 * FT, 5 * FT, 0.75 * IN, 0.25 * IN)
    top = plan_bow(layers, demo_plan("garden_bench_top").mix, 2280.0)
    assert top.one_face.level == "high" and top.diagonal_m / IN == pytest.approx(84.85, abs=0.01)
    said = " ".join(line.text + line.reason for line in top.advice)
    assert "Dry both faces alike" in said and "Never carry a curled top flat" in said and "not ruined" in said


def test_thicker_and_shorter_bow_less_and_drier_more():
    thick = np.linspace(0.019, 0.07, 30)
    layers, drying = curling.bow_map_m(thick, 0.5, 1.5, 0.00635, 0.63)
    assert np.all(np.diff(layers) < 0) and np.all(np.diff(drying) < 0)
    rh = np.linspace(0.2, 0.95, 30)
    layers, drying = curling.bow_map_m(0.0381, rh, 1.5, 0.00635, 0.63)
    assert np.all(np.diff(layers) < 0) and np.all(np.diff(drying) < 0)
    short, long = (curling.bow_map_m(0.0381, 0.5, size, 0.00635, 0.63)[1] for size in (1.0, 2.0))
    assert long == pytest.approx(4 * short, rel=1e-9)


def test_a_map_of_many_points_is_the_plan_at_its_own_point():
    plan = demo_plan("garden_bench_top")
    thick, rh = np.linspace(0.02, 0.07, 100)[:, None], np.linspace(0.2, 0.9, 100)[None, :]
    layers, drying = curling.bow_map_m(thick, rh, plan.bow.diagonal_m, 0.00635, plan.mix.phi)
    assert layers.shape == drying.shape == (100, 100)
    fc = defaults.si("strength_28d")
    at = curling.bow_map_m(0.0381, plan.bow.rh_fraction, plan.bow.diagonal_m, 0.00635, plan.mix.phi, fc,
                           base_recipe(plan.mix))  # fmt: skip
    assert at[0] == pytest.approx(plan.bow.two_layer.likely_m) and at[1] == pytest.approx(plan.bow.one_face.likely_m)
    with pytest.raises(ValueError, match="base under the face"):
        curling.bow_map_m(0.005, 0.5, 1.5, 0.00635, 0.63)


def test_bands_hold_the_likely_and_weight_flattens(plan):
    for bowing in (plan.bow.two_layer, plan.bow.one_face):
        assert 0 < bowing.low_m < bowing.likely_m < bowing.high_m
        assert 0 <= bowing.lying_m < bowing.likely_m
        assert bowing.level == bow_level(bowing.likely_m)


def test_a_long_thin_piece_is_pressed_flatter_than_a_short_one():
    mix = demo_plan("garden_bench_top").mix
    shares = []
    for length in (0.6, 1.5, 3.0):
        top = plan_bow(rectangle_layers(length, 0.4, 0.03, 0.00635), mix, 2280.0)
        shares.append(top.two_layer.lying_m / top.two_layer.likely_m)
    assert shares == sorted(shares, reverse=True)


def test_diagonal_of_a_round_top_is_its_diameter():
    assert demo_plan("round_table_cold_shop").bow.diagonal_m == pytest.approx(0.9, rel=1e-3)


def test_levels():
    assert [bow_level(size) for size in (0.0, 0.0015, 0.0016, 0.0031, 0.0032, 0.02)] == [
        "low", "low", "moderate", "moderate", "high", "high",
    ]  # fmt: skip


def test_limits_say_extrapolated_for_thin_polymer_fibre_mixes(plan):
    said = " ".join(line.text + " " + line.reason for line in plan.bow.advice)
    assert "extrapolated" in said and "polymer and fibre" in said and "EN 1992" in said and "ACI 209" in said
    assert "scatters by 30 %" in said and "both faces alike" in said


def test_air_drier_than_the_codes_is_named():
    dry, mild = bench(place__humidity=20), bench(place__humidity=50)
    assert any("air of 20 % (EN 1992 starts at 40 %, ACI 209 at 40 %)" in line.reason for line in dry.bow.advice)
    assert not any("starts at 40 %" in line.reason for line in mild.bow.advice)
    assert dry.bow.one_face.likely_m > mild.bow.one_face.likely_m
    with pytest.raises(ValueError, match="humidity"):
        bench(place__humidity=140)


def test_a_high_bow_speaks_to_whoever_carries_it():
    assert any("never carry a curled top flat" in line.text for line in demo_plan("garden_bench_top").handling.advice)


def test_the_working_gives_its_own_values(plan):
    assert check_working(plan.bow.working) >= 6
