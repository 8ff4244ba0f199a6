"""People on a piece with dropped edges: its weight and the pull on a tip count, its depth never helps."""

import numpy as np
import pytest

from shop_calc.trade.after import supports
from shop_calc.trade.after.drop_pull import overhang_pull, span_pull, strip_pull
from shop_calc.trade.shape.outline import place, rectangle
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
    pulled = strip_pull(thin, next(strip for strip in strips_beside_cutouts(thin) if strip.beside == "front edge"))[1]
    assert pulled == pytest.approx(0.92511 / 0.53333, rel=1e-4)
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
