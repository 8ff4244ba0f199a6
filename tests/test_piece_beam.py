"""The piece as a beam: worked counters, integrals, cut-outs, dropped edges, balance."""

import math

import numpy as np
import pytest
from demo_plans import demo_plans
from scipy.integrate import quad

from shop_calc.trade.after.piece_beam import edge_stress_pa, flat_stress_pa, piece_beam
from shop_calc.trade.shape.outline import circle, place, polygon, rectangle
from shop_calc.trade.shape.piece import Cutout, DropEdge, build_piece

PSI, LB, IN, FT = 6894.757293168361, 0.45359237, 0.0254, 0.3048
LB_FT3 = LB / FT**3


def strip(length_in, width_in, thickness_in, **more):
    return build_piece(rectangle(length_in * IN, width_in * IN), thickness_in * IN, **more)


@pytest.mark.parametrize(("thickness", "flat"), [(0.75, 800), (1, 600), (1.5, 400), (2, 300)])
def test_eight_feet_carried_flat_and_on_edge(thickness, flat):
    # Derived: 0.75 g L^2/t, 8 ft x 25 in at 150 lb/ft3; on edge 24 psi whatever the thickness.
    beam = piece_beam(strip(96, 25, thickness), 150 * LB_FT3)
    assert flat_stress_pa(beam, 0.0) / PSI == pytest.approx(flat, abs=0.5)
    assert edge_stress_pa(beam) / PSI == pytest.approx(24, abs=0.5)


def test_best_hold_and_the_middle_of_the_worked_counter():
    # Derived: 96 x 25.5 x 1.5 in: 68.6 psi at 0.2071 L, on edge 23.5 by the ends and 4.0 at 0.2071 L.
    beam = piece_beam(strip(96, 25.5, 1.5), 150 * LB_FT3)
    assert flat_stress_pa(beam, (2**0.5 - 1) / 2) / PSI == pytest.approx(68.6, abs=0.1)
    assert edge_stress_pa(beam) / PSI == pytest.approx(23.5, abs=0.1)
    assert edge_stress_pa(beam, (2**0.5 - 1) / 2) / PSI == pytest.approx(4.0, abs=0.1)


def test_a_patio_top_would_break_by_its_ends():
    # 5 x 5 ft x 3/4 in: 312 psi static, 625 with a jolt, on edge about 4 psi.
    beam = piece_beam(strip(60, 60, 0.75), 150 * LB_FT3)
    assert flat_stress_pa(beam, 0.0) / PSI == pytest.approx(312.5, abs=0.5)
    assert edge_stress_pa(beam) / PSI == pytest.approx(3.9, abs=0.1)


def test_a_round_top_is_the_integral_over_its_chords():
    radius, thick, rho, g = 0.45, 0.038, 2300.0, 9.80665
    beam = piece_beam(build_piece(circle(2 * radius), thick), rho, cuts=960)
    # Held at the ends of a diameter: M = W/2 r - integral of chord weight times arm, worst at the middle.
    total = rho * thick * math.pi * radius**2
    arm = quad(lambda x: 2 * math.sqrt(radius**2 - x**2) * x, 0, radius)[0] * rho * thick
    moment = g * (total / 2 * radius - arm)
    assert flat_stress_pa(beam, 0.0) == pytest.approx(6 * moment / (2 * radius * thick**2), rel=2e-3)


def test_an_opening_takes_its_width_out_of_the_section():
    sink = Cutout(place(rectangle(20 * IN, 15 * IN), (48 * IN, 12.5 * IN)), name="sink")
    whole, cut = strip(96, 25, 1.5), strip(96, 25, 1.5, cutouts=[sink])
    rho = 150 * LB_FT3
    beam = piece_beam(cut, rho)
    # By hand, psi, lb, in: line load without the sink 150/1728*1.5*25, the sink's weight missing in the middle.
    w, gone = 150 / 1728 * 1.5 * 25, 150 / 1728 * 1.5 * 15
    reaction = (w * 96 - gone * 20) / 2
    moment = reaction * 48 - w * 48**2 / 2 + gone * 10 * 5
    assert flat_stress_pa(beam, 0.0) / PSI == pytest.approx(6 * moment / (10 * 1.5**2), rel=1e-3)
    assert flat_stress_pa(beam, 0.0) > 1.9 * flat_stress_pa(piece_beam(whole, rho), 0.0)
    assert edge_stress_pa(beam) > edge_stress_pa(piece_beam(whole, rho))


def test_mass_on_the_cuts_is_the_mass_of_the_piece():
    for plan in demo_plans():
        beam = plan.handling.beam
        mass = np.trapezoid(beam.line_kg_m, beam.x_m)
        assert mass == pytest.approx(plan.handling.density_kg_m3 * plan.piece.volume_m3, rel=2e-3)


def test_a_dropped_edge_weighs_and_its_tip_is_pulled_harder():
    # inches, 20 x 1.5 and a return 2 x 1.5 below it: its weight is 1.1 times as much. Section: middle at (30 0.75 + 3 2.25)/33
    # = 0.88636 down, 303/33 = 9.18182 across; I_zz 12.3239, I_yy 1221.91, I_yz -36.818; pull at the tip, z 2.11364 and
    # y -7.18182: (1221.91 2.11364 - 36.818 7.18182)/(1221.91 12.3239 - 36.818^2) = 0.169175; of a plate 6/(20 1.5^2) = 0.133333
    plain = strip(60, 20, 1.5, exposed=True)
    dropped = strip(60, 20, 1.5, exposed=True, drop=DropEdge("front", 3 * IN, 2 * IN))
    one, two = (flat_stress_pa(piece_beam(piece, 2300.0), 0.0) for piece in (plain, dropped))
    assert two / one == pytest.approx(1.1 * 0.169175 / 0.133333, rel=1e-3)


def test_it_does_not_matter_how_the_piece_lies_on_the_paper():
    along, across = (piece_beam(strip(*sizes, 1.5), 2300.0) for sizes in ((70, 20), (20, 70)))
    assert flat_stress_pa(along, 0.0) == pytest.approx(flat_stress_pa(across, 0.0), rel=1e-9)
    turn = math.radians(30)
    corners = [(x * math.cos(turn) - y * math.sin(turn) + 1, x * math.sin(turn) + y * math.cos(turn) + 1)
               for x, y in ((0, 0), (70 * IN, 0), (70 * IN, 20 * IN), (0, 20 * IN))]  # fmt: skip
    slanted = piece_beam(build_piece(polygon(corners), 1.5 * IN), 2300.0)
    assert flat_stress_pa(slanted, 0.0) == pytest.approx(flat_stress_pa(along, 0.0), rel=1e-4)


def test_the_beam_is_in_balance():
    sink = Cutout(place(rectangle(0.5, 0.3), (0.6, 0.3)), name="sink")
    beam = piece_beam(build_piece(rectangle(2.0, 0.6), 0.04, cutouts=[sink]), 2300.0)
    for ratio in (0.0, 0.1, 0.2071, 0.3):
        moment = beam.moment_n_m(ratio)
        assert abs(moment[-1]) < 1e-6 * np.max(np.abs(moment)) and abs(moment[0]) < 1e-9


def test_thicker_is_less_stress_and_longer_is_more():
    rho = 2300.0
    stresses = [flat_stress_pa(piece_beam(strip(60, 15, t), rho), 0.0) for t in (0.75, 1, 1.5, 2)]
    assert stresses == sorted(stresses, reverse=True)
    stresses = [flat_stress_pa(piece_beam(strip(length, 15, 1.5), rho), 0.0) for length in (40, 60, 80)]
    assert stresses == sorted(stresses)
