"""Strength with age against the structuralcodes package, limits, inverses and directions."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from structuralcodes.codes.ec2_2004 import _concrete_material_properties as en

from shop_calc.science import maturity, strength, strength_laws

TYPE_I = (96.0, 0.85)
DAYS = np.array([0.5, 0.75, 1.0, 3.0, 7.0, 14.0, 28.0, 91.0, 365.0])


@pytest.mark.parametrize("cement_class", ["R", "N", "S"])
def test_the_en_curve_is_that_of_the_structuralcodes_package(cement_class):
    s = strength.en_s_factor(cement_class)
    assert s == en.s_time_development(cement_class)
    assert strength.en_strength_ratio(DAYS * 24, s) == pytest.approx(en.beta_cc(DAYS, s), rel=1e-12)


def test_both_curves_start_at_nothing():
    assert strength.en_strength_ratio(0.0, 0.25) == 0.0
    assert strength.aci_strength_ratio(0.0, *TYPE_I) == 0.0


def test_both_curves_meet_their_28_days():
    # EN is 1 by its form; ACI's printed constants give 1.007 and 0.999
    assert strength.en_strength_ratio(672.0, 0.38) == pytest.approx(1.0, abs=1e-15)
    for a, b in strength.ACI_209_DAYS.values():
        assert strength.aci_strength_ratio(672.0, a * 24, b) == pytest.approx(1.0, abs=0.02)


def test_the_curves_tend_to_their_limits():
    assert strength.en_strength_ratio(1e12, 0.25) == pytest.approx(np.exp(0.25), rel=1e-4)
    assert strength.aci_strength_ratio(1e12, *TYPE_I) == pytest.approx(1 / 0.85, rel=1e-6)


@given(st.floats(1, 5000), st.floats(1.01, 3), st.sampled_from([0.20, 0.25, 0.38]))
def test_older_is_never_weaker(age_h, factor, s):
    assert strength.en_strength_ratio(age_h * factor, s) > strength.en_strength_ratio(age_h, s)
    assert strength.aci_strength_ratio(age_h * factor, *TYPE_I) > strength.aci_strength_ratio(age_h, *TYPE_I)


def test_faster_cement_is_ahead_before_28_days_and_behind_after():
    fast, slow = strength.EN_S_FACTOR["R"], strength.EN_S_FACTOR["S"]
    assert strength.en_strength_ratio(72.0, fast) > strength.en_strength_ratio(72.0, slow)
    assert strength.en_strength_ratio(2000.0, fast) < strength.en_strength_ratio(2000.0, slow)


def test_the_lower_curve_is_one_of_the_two_and_never_above_either():
    ages = DAYS * 24
    en_curve, aci_curve = strength.en_strength_ratio(ages, 0.25), strength.aci_strength_ratio(ages, *TYPE_I)
    lower = strength.lower_strength_ratio(ages, *TYPE_I, 0.25)
    assert np.array_equal(lower, np.minimum(en_curve, aci_curve))
    assert (lower < en_curve).any() and (lower < aci_curve).any(), "each of them is the lower one somewhere"


@given(st.floats(0.05, 1.0), st.sampled_from(sorted(strength.ACI_209_DAYS)), st.sampled_from("RNS"))
def test_the_age_for_a_ratio_gives_it_back(ratio, aci, cement_class):
    a, b = strength.ACI_209_DAYS[aci]
    s = strength.en_s_factor(cement_class)
    if ratio >= 1 / b:
        return
    age = strength.lower_ratio_age_h(ratio, a * 24, b, s)
    assert strength.lower_strength_ratio(age, a * 24, b, s) == pytest.approx(ratio, rel=1e-9)


def test_a_ratio_above_a_curve_is_refused():
    with pytest.raises(ValueError, match="wanted ratio"):
        strength.lower_ratio_age_h(1.2, *TYPE_I, 0.25)


def test_a_warm_night_counts_as_the_older_piece():
    at_25 = strength.en_strength_ratio_at(16.0, 25.0, 0.20)
    assert at_25 == strength.en_strength_ratio(maturity.en_adjusted_age_h(16.0, 25.0), 0.20)
    # class R, 28-day mean 50 MPa: 19.2 MPa in the morning (SG-6)
    assert 50 * at_25 == pytest.approx(19.2, abs=0.05)
    assert 50 * strength.en_strength_ratio_at([8.0, 8.0], [20.0, 10.0], 0.20) < 15


def test_the_hyperbola_is_half_way_at_its_half_time_and_nothing_before_its_start():
    half = strength_laws.hyperbolic_strength_pa(6.0 + 50.0, 60e6, 50.0, 6.0)
    assert half == pytest.approx(30e6)
    assert strength_laws.hyperbolic_strength_pa(5.0, 60e6, 50.0, 6.0) == 0.0
    assert strength_laws.hyperbolic_strength_pa(1e9, 60e6, 50.0, 6.0) == pytest.approx(60e6, rel=1e-6)


def test_the_hyperbola_and_aci_209_are_one_form():
    # t/(a + bt) is a hyperbola with limit 1/b and half time a/b
    ages = DAYS * 24
    ours = strength_laws.hyperbolic_strength_pa(ages, 1 / 0.85, 96 / 0.85, 0.0)
    assert ours == pytest.approx(strength.aci_strength_ratio(ages, *TYPE_I), rel=1e-12)


def test_rupture_modulus_is_near_the_si_rule_and_comes_back():
    for mpa in (10.0, 20.0, 40.0):
        ours = strength_laws.rupture_modulus_pa(mpa * 1e6)
        assert ours == pytest.approx(0.62 * mpa**0.5 * 1e6, rel=0.005)  # ACI 318M, from memory
        assert strength_laws.strength_for_rupture_pa(ours) == pytest.approx(mpa * 1e6, rel=1e-12)


def test_rupture_modulus_is_about_the_tensile_strength_of_the_structuralcodes_package():
    # fctm is direct tension; plain flexure lies 1.0 to 1.6 times above it for thin pieces
    for fck in (20.0, 30.0, 45.0):
        ours = strength_laws.rupture_modulus_pa(fck * 1e6) / 1e6
        assert 1.0 < ours / en.fctm(fck) < 1.6


@given(st.floats(0.2, 1.0), st.floats(0.01, 0.3))
def test_more_water_is_never_stronger(ratio, more):
    assert strength_laws.abrams_strength_pa(ratio + more) < strength_laws.abrams_strength_pa(ratio)


def test_arrays_give_what_single_calls_give():
    ages = DAYS * 24
    for curve in (
        lambda t: strength.en_strength_ratio(t, 0.25),
        lambda t: strength.aci_strength_ratio(t, *TYPE_I),
        lambda t: strength.lower_strength_ratio(t, *TYPE_I, 0.25),
        lambda t: strength_laws.hyperbolic_strength_pa(t, 60e6, 68.0, 6.0),
    ):
        assert curve(ages) == pytest.approx([curve(t) for t in ages], rel=1e-12)
    ratios = np.linspace(0.3, 0.9, 7)
    assert strength_laws.abrams_strength_pa(ratios) == pytest.approx(
        [strength_laws.abrams_strength_pa(r) for r in ratios], rel=1e-12
    )


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: strength.en_strength_ratio(-1.0, 0.25), "age"),
        (lambda: strength.en_strength_ratio(24.0, 25), "coefficient s"),
        (lambda: strength.en_s_factor("III"), "R, N or S"),
        (lambda: strength.aci_strength_ratio(24.0, 0.0, 0.85), "constant a"),
        (lambda: strength_laws.abrams_strength_pa(2.5), "water to cement"),
        (lambda: strength_laws.rupture_modulus_pa(-1.0), "strength"),
        (lambda: strength_laws.hyperbolic_strength_pa(24.0, 60e6, 0.0, 6.0), "half time"),
    ],
)
def test_an_impossible_entry_is_named(call, words):
    with pytest.raises(ValueError, match=words):
        call()


def test_an_age_is_told_only_for_a_strength_that_both_laws_reach():
    # ACI ends at 1/b of the strength at 28 days, EN 1992 at exp(s): 1/0.85 = 1.1765 and exp(0.25) = 1.2840; exp(0.10) = 1.1052
    for s_factor, inside, beyond in ((0.25, 1.17, 1.18), (0.10, 1.10, 1.11)):
        assert strength.lower_ratio_age_h(inside, 96.0, 0.85, s_factor) > 0
        with pytest.raises(ValueError, match="wanted ratio"):
            strength.lower_ratio_age_h(beyond, 96.0, 0.85, s_factor)
