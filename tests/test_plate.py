"""Moments of a plate under a patch: elements of another kind, a beam, closed forms, and how wide a strip helps."""

import numpy as np
import pytest
from plate_elements import moments_over_load

from shop_calc.science.loads import GRAVITY_M_S2
from shop_calc.science.plate import patch_moment_ratio
from shop_calc.trade.after import use_rule

IN, FT, LB = 0.0254, 0.3048, 0.45359237


@pytest.mark.parametrize(
    ("front", "back", "across"), [(True, True, 12.5), (False, True, 2.0), (False, False, 2.0), (False, True, 9.0)]
)
def test_a_patch_bends_a_top_as_plate_elements_say(front, back, across):
    # 24 in of span, 25 in wide, a knee of 4 in square; elements of one inch
    held = ["x0", "x1", *(["y0"] if front else []), *(["y1"] if back else [])]
    elements = moments_over_load(24, 25, (24, 25), (10, 14, across - 2, across + 2), held)
    along, wide, _ = elements(12, across)
    ours = patch_moment_ratio(24 * IN, 25 * IN, 4 * IN, 4 * IN, across * IN, across * IN, front, back)
    assert ours == pytest.approx(max(along, wide), rel=0.01)
    if not front:
        edge = patch_moment_ratio(24 * IN, 25 * IN, 4 * IN, 4 * IN, across * IN, 0.0, front, back)
        assert edge == pytest.approx(elements(12, 0)[0], rel=0.01)


def test_a_patch_off_the_middle_by_elements_and_by_what_two_of_them_do():
    elements = moments_over_load(48, 18, (48, 18), (30, 42, 3, 15), ["x0", "x1", "y0", "y1"])
    ours = patch_moment_ratio(48 * IN, 18 * IN, 12 * IN, 12 * IN, 9 * IN, 9 * IN, True, True, 12 * IN)
    assert ours == pytest.approx(max(elements(24, 9)[:2]), rel=0.01)
    other = patch_moment_ratio(48 * IN, 18 * IN, 12 * IN, 12 * IN, 9 * IN, 9 * IN, True, True, -12 * IN)
    assert other == pytest.approx(ours, rel=1e-9)


def test_without_cross_strain_a_narrow_strip_is_a_beam():
    # P L/4 under a load spread over u of the span is P (L/4 - u/8); over the width b
    for patch in (0.02, 0.3, 1.0):
        ours = patch_moment_ratio(1.0, 0.1, patch, 0.1, 0.05, np.array([0.0, 0.05, 0.1]), poisson_ratio=0.0)
        assert ours == pytest.approx((0.25 - patch / 8) / 0.1, rel=1e-4)


@pytest.mark.parametrize(("width", "beta"), [(1.0, 0.435), (1.2, 0.650), (1.4, 0.789), (2.0, 0.958), (30.0, 1.000)])
def test_a_small_patch_in_the_middle_by_the_closed_form(width, beta):
    # Roark, plates, all edges held, from memory: m = P/(4 pi) ((1 + nu) ln(2 b/(pi r)) + beta), b the shorter side.
    # A square of side u bends as a circle of the same mean logarithm of distance, r = 0.5615 u (derived: ln r less 1/2
    # for a circle, ln u less 1.0774 for a square).
    side = 0.04
    r = 0.5615 * side
    ours = patch_moment_ratio(1.0, width, side, side, width / 2, width / 2, True, True, poisson_ratio=0.3)
    assert ours == pytest.approx((1.3 * np.log(2 / np.pi / r) + beta) / (4 * np.pi), rel=0.006)


def test_the_width_that_helps_grows_with_the_span_and_is_less_than_half_at_a_free_edge():
    # span/4 over the ratio. By a rule for slabs that span one way, load width and 0.6 of the span far from an edge, 0.3 of
    # the span towards the slab at one (BS 8110-1, from memory; the same in building regulations of 1964, read).
    spans = np.array([18, 24, 30, 36])
    inside = [s / 4 / patch_moment_ratio(s * IN, 96 * IN, 4 * IN, 4 * IN, 48 * IN, 48 * IN) for s in spans]
    edge = [s / 4 / patch_moment_ratio(s * IN, 96 * IN, 4 * IN, 4 * IN, 2 * IN, 0.0) for s in spans]
    assert np.all(np.diff(inside) > 0) and np.all(np.diff(edge) > 0)
    assert np.all(np.array(edge) < 0.5 * np.array(inside))
    assert np.array(edge) == pytest.approx(4 + 0.3 * spans, rel=0.05)
    assert np.all(inside >= 4 + 0.6 * spans) and np.all(inside <= 1.35 * (4 + 0.6 * spans))  # the rule is the careful one


def test_rails_help_and_more_span_does_not():
    def ratio(span_in, *held):
        return patch_moment_ratio(span_in * IN, 25 * IN, 4 * IN, 4 * IN, 2 * IN, 2 * IN, *held)

    for span in (12, 24, 36, 60):
        assert ratio(span, True, True) < ratio(span, False, True) <= ratio(span, False, False)
    assert ratio(24, False, False) < ratio(36, False, False)


@pytest.mark.parametrize("change", [{"span_m": 0.0}, {"width_m": -1.0}, {"across_m": 0.01}, {"look_m": 0.9},
                                    {"patch_along_m": 0.7}, {"off_middle_m": 0.3}, {"poisson_ratio": 0.6}])  # fmt: skip
def test_what_cannot_be_is_refused(change):
    given = {"span_m": 0.6, "width_m": 0.6, "patch_along_m": 0.1, "patch_across_m": 0.1, "across_m": 0.3, "look_m": 0.3}
    with pytest.raises(ValueError, match="given"):
        patch_moment_ratio(**{**given, **change})


@pytest.mark.parametrize(
    ("name", "least", "most", "words"),
    [
        ("patch_along_m", 0.001, 0.6, "size of the patch along"), ("patch_across_m", 0.001, 0.5, "size of the patch across"),
        ("across_m", 0.05, 0.45, "place of the patch"), ("look_m", 0.0, 0.5, "place of the moment"),
        ("off_middle_m", -0.25, 0.25, "distance of the patch"), ("poisson_ratio", 0.0, 0.5, "Poisson"),
    ],
)  # fmt: skip
def test_a_patch_may_reach_the_edges_and_go_no_thousandth_beyond(name, least, most, words):
    # 0.6 m of span, 0.5 m wide, a patch of 0.1 m square in the middle
    given = {"span_m": 0.6, "width_m": 0.5, "patch_along_m": 0.1, "patch_across_m": 0.1, "across_m": 0.25, "look_m": 0.25}
    for value in (least, most, (1 - 1e-12) * most):
        assert patch_moment_ratio(**{**given, name: value}) > 0
    for value in (1.001 * most, least - 0.001 * most - 0.001 * (least == 0.001)):
        with pytest.raises(ValueError, match=f"{words}.* given"):
            patch_moment_ratio(**{**given, name: value})


@pytest.mark.parametrize("width_in", [15, 25, 96])
@pytest.mark.parametrize("overhang_in", [6, 10, 12, 15])
def test_a_knee_on_the_corner_of_an_overhang_by_plate_elements(overhang_in, width_in):
    # The piece goes on for 36 in behind its support and is held down there. Elements of an inch, which are what a thickness
    # of 1 1/2 in can tell apart; largest moment in any direction within 3 in of the support.
    length = 36 + overhang_in
    deep = min(width_in, 32)  # a longer edge changes little at its corner
    at = moments_over_load(length, deep, (length, deep), (length - 4, length, 0, 4), ["x0"], lines=(36,))
    near = [at(x, y)[2] for x in np.linspace(33, 39, 13) for y in np.linspace(0, min(deep, 12), 13)]
    use = use_rule.overhang_use(overhang_in * IN, width_in * IN, 1.5 * IN, 2300.0)
    assert 0.96 * max(near) <= use.ratio <= 1.47 * max(near)


def double_series(span, width, along, across, off):
    """Navier's double sine series for a plate held all round, from memory: the larger moment at its middle over the load."""
    m, n = np.arange(1.0, 301.0)[:, np.newaxis] * np.pi / span, np.arange(1.0, 301.0, 2.0) * np.pi / width
    load = np.sin(m * (span / 2 + off)) * np.sin(m * along / 2) / m * np.sin(n * width / 2) * np.sin(n * across / 2) / n
    bent = 16 * load / (span * width * along * across) / (m**2 + n**2) ** 2 * np.sin(m * span / 2) * np.sin(n * width / 2)
    return max(np.sum(bent * (m**2 + 0.2 * n**2)), np.sum(bent * (n**2 + 0.2 * m**2)))


@pytest.mark.parametrize(("span", "people"), [(48, 1), (59, 1), (60, 3), (73, 3), (108, 5)])
def test_on_a_box_sit_as_many_as_there_is_room_for_each_with_what_it_does_to_the_middle(span, people):
    # 12 in each, 24 in apart, one in the middle: 60 in are 12 and twice 24, 108 in two more; 500 lb each, sitting down; the
    # stress is 6 m/t^2
    places = [24 * IN * (k - people // 2) for k in range(people)]
    ratio = sum(double_series(span * IN, 18 * IN, 12 * IN, 12 * IN, off) for off in places)
    own, stress = use_rule.railed_seat_stress_pa(span * IN, 18 * IN, 1.5 * IN, 145 * LB / FT**3)
    assert stress == pytest.approx(6 * 500 * LB * GRAVITY_M_S2 * ratio / (1.5 * IN) ** 2, rel=1e-5)
    weight = 145 / 1728 * span * 18 * 1.5 * LB * GRAVITY_M_S2  # all over the plate
    all_over = double_series(span * IN, 18 * IN, span * IN, 18 * IN, 0)
    assert own == pytest.approx(6 * weight * all_over / (1.5 * IN) ** 2, rel=1e-5)
