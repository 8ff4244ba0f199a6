"""What to buy: packs, and bags by what they make."""

import pytest

from shop_calc.trade.batching.shopping import bags, packs
from shop_calc.trade.shape.layers import rectangle_layers
from shop_calc.units import convert

FT3, LB, IN = convert(1.0, "ft3", "m3"), convert(1.0, "lb", "kg"), 0.0254


def test_packs_are_rounded_up_and_their_rest_is_shown():
    made = packs(69.55 * LB, 94 * LB)
    assert (made.count, made.exact_count) == (1, pytest.approx(0.7399, abs=1e-4))
    assert made.left_over_kg == pytest.approx(24.45 * LB)
    assert packs(94 * LB, 94 * LB).count == 1 and packs(0.0, 1.0).count == 0
    with pytest.raises(ValueError, match="mass of a pack"):
        packs(1.0, 0.0)


def test_bags_are_counted_by_what_they_make():
    # Ring pi(5^2 - 4.5^2) 5 ft: by yield 249 bags; label weight over wet weight buys 271, 9 % too many
    made = bags(74.61 * FT3, 0.30 * FT3, bag_kg=40 * LB, wet_density_kg_m3=convert(145.0, "lb/ft3", "kg/m3"))
    assert (made.count, made.count_by_weight) == (249, 271)
    assert made.count_by_weight / made.count == pytest.approx(1.09, abs=0.005)
    # 2 x 5 ft x 1.5 in is 1.25 ft3 and not 15, 180 or 2,160: 3 bags with 10 %
    patio = rectangle_layers(60 * IN, 24 * IN, 1.5 * IN, 0.25 * IN)
    assert patio.total_m3 / FT3 == pytest.approx(1.25)
    assert bags(patio.total_m3, 0.60 * FT3, 0.10).count == 3
