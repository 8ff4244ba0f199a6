"""People on a piece with dropped edges: its weight and the pull on a tip count, its depth never helps."""

import numpy as np
import pytest

from shop_calc.trade.after import supports
from shop_calc.trade.after.drop_pull import overhang_pull, span_pull, strip_pull
from shop_calc.trade.shape.outline import l_shape, place, rectangle, u_shape
from shop_calc.trade.shape.piece import Cutout, DropEdge, build_piece
from shop_calc.trade.shape.strips import strips_beside_cutouts

RHO, IN, STRENGTH = 2300.0, 0.0254, 24e6


def top(*drops, use="top", cutouts=()):
    drops = [DropEdge(name, depth * IN, width * IN) for name, depth, width in drops]
    return build_piece(rectangle(60 * IN, 20 * IN), 1.5 * IN, True, cutouts, drops, use)


def checks(piece, *given, **more):
    return {check.key: check for check in supports.check_supports(piece, RHO, STRENGTH, *given, **more)}


def test_a_front_that_drops_pulls_a_free_span_harder():
    # section 20 x 1.5 with 2 x 1.5 below it, worked by hand in tests/test_piece_beam.py: 0.169175 against 0.133333; weight 1.1
    plain, dropped = checks(top(), 48 * IN), checks(top(("front", 3, 2)), 48 * IN)
    harder = 0.169175 / 0.133333
    assert dropped["span"].people_pa / plain["span"].people_pa == pytest.approx(harder, rel=1e-4)
    assert dropped["span"].lean_pa / plain["span"].lean_pa == pytest.approx(harder, rel=1e-4)
    assert dropped["span"].drop_pa / plain["span"].drop_pa == pytest.approx(harder, rel=1e-4)
    assert dropped["span"].ratio / plain["span"].ratio == pytest.approx(harder, rel=1e-4)
    assert dropped["span"].own_pa / plain["span"].own_pa == pytest.approx(1.1 * harder, rel=1e-4)
    # a seat by its own rule alike
    plain, dropped = checks(top(use="seat"), 48 * IN), checks(top(("front", 3, 2), use="seat"), 48 * IN)
    assert dropped["span"].stress_pa / plain["span"].stress_pa > harder


def test_on_a_front_and_a_back_rail_only_the_weight_counts():
    plain, dropped = (checks(piece, 48 * IN, rails="front and back")["span"] for piece in (top(), top(("front", 3, 2))))
    assert dropped.people_pa == pytest.approx(plain.people_pa) and dropped.own_pa / plain.own_pa == pytest.approx(1.1, rel=1e-4)


def test_ends_that_hang_outside_a_span_do_not_matter_to_it_and_weigh_on_an_overhang():
    ends = top(("left", 3, 2), ("right", 3, 2))
    assert span_pull(ends, 40 * IN) == pytest.approx((1.0, 1.0), rel=1e-6)
    # 10 in over: the plate 10 x 1.5 at 5, the end 2 x 1.5 at 9: 75 and 27
    assert overhang_pull(ends, 10 * IN) == pytest.approx((102 / 75, 1.0), rel=1e-3)
    # over the front instead, 10 in: the front is no drop; both ends lie along the way, their tips are below: no hogging pull
    own, people = overhang_pull(ends, 10 * IN, at_side=True)
    assert people == 1.0 and own == pytest.approx((60 * 1.5 + 2 * 2 * 1.5) / (60 * 1.5), rel=1e-3)


def test_a_drop_between_the_supports_counts_where_it_is():
    # in front of the opening of a U, over 20 of its 60 in: section 25 x 1.5 with 1/2 x 1.5 below its edge. In inches area
    # 37.5 + 0.75, middle at z 0.77941 and 0.24020 from that of the plate; I_zz 8.82629, I_yy 2063.481, I_yz 13.5107; pull at
    # the inner corner of its tip, z 2.22059 and y 11.75980 from the middle:
    # (2063.481 2.22059 - 13.5107 11.75980)/(2063.481 8.82629 - 13.5107^2) = 0.245323; of the plate 6/(25 1.5^2) = 0.106667
    piece = build_piece(u_shape(60 * IN, 40 * IN, 20 * IN, 15 * IN, 20 * IN), 1.5 * IN, True,
                        drop=DropEdge("inner back", 3 * IN, 0.5 * IN))  # fmt: skip
    assert span_pull(piece, 24 * IN)[1] == pytest.approx(0.245323 / 0.106667, rel=1e-4)


def test_a_drop_outside_the_supports_does_not_count_and_from_them_on_it_does():
    # in the notch of an L, 12 of its 60 in: it begins 18 in from the middle
    outline = l_shape(60 * IN, 40 * IN, 12 * IN, 20 * IN)
    piece = build_piece(outline, 1.5 * IN, True, drop=DropEdge("inner back", 3 * IN, 0.5 * IN))
    assert span_pull(piece, 35.9 * IN)[1] == 1.0 and span_pull(piece, 36.1 * IN)[1] > 1.5


def test_what_hangs_near_a_support_weighs_little_on_the_span():
    # 18 in of the left end 1.5 in deeper; supports at 10 and 50 in: 8 in of it with 4 in of arm on average, 8 4 1.5, on
    # 40 10 1.5 of the plate; the end is deep all across, so that it is not pulled harder
    own, people = span_pull(top(("left", 3, 18)), 40 * IN)
    assert people == 1.0 and own == pytest.approx(1 + 32 / 400, rel=5e-4)


def test_a_shallow_drop_pulls_the_top_of_an_overhang_a_little_harder():
    # section 20 x 1.5 with 5 x 0.1 below its front edge. In inches area 30.5, middle at z 0.763115, y 9.877049; I_zz 5.940171,
    # I_yy 1028.7056, I_yz -2.950817; pull at the upper front corner:
    # (1028.7056 0.763115 + 2.950817 9.877049)/(1028.7056 5.940171 - 2.950817^2) = 0.133427, of the plate 0.133333
    own, people = overhang_pull(top(("front", 1.6, 5)), 10 * IN)
    assert people == pytest.approx(0.133427 / 0.133333, rel=2e-5)
    assert own == pytest.approx(people * (30 + 0.5) / 30, rel=1e-4)


def test_an_overhang_of_the_front_bears_the_weight_of_its_drop():
    # 12 in over along the front, 2 in of it 1.5 in deeper: 12 x 1.5 at 6 and 2 x 1.5 at 11: 108 and 33
    own, people = overhang_pull(top(("front", 3, 2)), 12 * IN, at_side=True)
    assert (own, people) == pytest.approx((141 / 108, 1.0), rel=1e-3)
    plain, dropped = (checks(piece, None, 12 * IN, 60 * IN)["overhang"] for piece in (top(), top(("front", 3, 2))))
    assert dropped.own_pa / plain.own_pa == pytest.approx(141 / 108, rel=1e-3)
    assert dropped.people_pa == pytest.approx(plain.people_pa)


def test_a_strip_beside_a_sink_bears_its_drop():
    sink = Cutout(place(rectangle(30 * IN, 10 * IN), (30 * IN, 10 * IN)), name="sink")
    piece = top(("front", 4, 2), cutouts=[sink])
    strips = {strip.beside: strip_pull(piece, strip) for strip in strips_beside_cutouts(piece)}
    # 5 in wide: 2 x 2.5 more on 5 x 1.5; the section with its rib is the stronger one, so that only the weight counts
    assert strips["front edge"] == pytest.approx((12.5 / 7.5, 1.0)) and strips["back edge"] == (1.0, 1.0)
    # a thin rib, 1/4 in wide: in inches area 7.5 + 0.375; I_zz 2.2801, I_yy 17.6415, I_yz -1.2723; pull at its tip, z 2.17857
    # and y -2.1369 from the middle: (17.6415 2.17857 - 1.2723 2.1369)/(17.6415 2.2801 - 1.2723^2) = 0.92511; plain 0.53333
    thin = top(("front", 3, 0.25), cutouts=[sink])
    own, pulled = strip_pull(thin, next(strip for strip in strips_beside_cutouts(thin) if strip.beside == "front edge"))
    assert pulled == pytest.approx(0.92511 / 0.53333, rel=1e-4)
    assert own == pytest.approx(pulled * (7.5 + 0.375) / 7.5)
    with_drop, flat = (next(check for check in supports.check_supports(piece, RHO, STRENGTH) if "front edge" in check.where)
                       for piece in (thin, top(cutouts=[sink])))  # fmt: skip
    assert with_drop.people_pa / flat.people_pa == pytest.approx(pulled)


def test_what_would_mend_a_span_is_told_only_where_it_is_enough_with_the_drop():
    for drops in ((), (("front", 3, 2),)):
        check = checks(top(*drops), 48 * IN)["span"]
        assert not check.holds and all(mend.stress_pa <= check.limit_pa for mend in check.mends)
    assert len(checks(top(("front", 3, 0.5)), 48 * IN)["span"].mends) <= len(checks(top(), 48 * IN)["span"].mends)


def test_without_drops_nothing_changes():
    piece = top()
    assert span_pull(piece, 1.0) == overhang_pull(piece, 0.3) == (1.0, 1.0)
    assert np.isfinite(checks(piece, 40 * IN)["span"].stress_pa)
