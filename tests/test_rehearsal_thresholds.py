"""Harm begins at the limit that is named, on its own side, and is plain to see where that is said: each limit from both sides.

The pressures are rows of data/defaults.csv, said beside each line. How bad: 0 at the limit, a quarter where it becomes plain to
see, and as much again for the same ratio further on (damage.past; judgement).
"""

from dataclasses import replace

import pytest
from practice_pieces import LEAST, PSI, a_pour, piece, worst

from shop_calc.trade.rehearsal import harm, harm_of_water
from shop_calc.trade.rehearsal.bench import begin, let_pass
from shop_calc.trade.rehearsal.damage import BAD, TRACE

FIRM = {"yield_start_pa": 1e5, "initial_set_h": 1.0}  # bears any edge from the first and sets within the hour
SLOW = {"initial_set_h": 40.0}  # a mix that is soft all day: only the early clock and the hours speak
OFF = {"face_on_h": None, "settled_h": None}


def base(pour, **fields):
    """Only the base on the bench, long at rest."""
    return piece(pour, **({"psi": 2.0} | OFF | fields))


BY_PRESSURE = [  # what is done, its harm, the limit and where it is plain to see [psi], the piece
    ("spread", "lumps", 10, 20, OFF | {"base_psi": 2}),  # strip_pr_low and double it, judgement
    ("spread", "cold joint", 60, 150, OFF),  # layer_gap_pr, first_steel_pr_high
    ("screed", "torn", 10, 40, {}),  # strip_pr_low, strip_pr_high
    ("float", "torn", 150, 250, {}),  # first_steel_pr_high, last_steel_pr_low
    ("strip", "sag", 10, 7, {}),  # strip_pr_low, three tenths short: judgement
    ("patch", "patch", 40, 60, {}),  # strip_pr_high, layer_gap_pr
    ("steel", "air", 60, 40, {}),  # first_steel_pr_low, strip_pr_high
    ("steel", "crust", 60, 40, {"skin_kg_m2": 0.375}),  # the same under a skin that lost half more than free_water
    ("steel", "hollows", 150, 250, {}),  # first_steel_pr_high, last_steel_pr_low
    ("steel", "dark", 500, (500 * 1000) ** 0.5, {}),  # last_steel_pr_high, halfway by ratio to stop_pr
    *((f"cover {key}", "printed", 60, 40, {}) for key in ("fabric", "plastic", "membrane")),  # as steel
]


def done(word, state):
    if word.startswith("cover "):
        return harm_of_water.of_cover(state, word.removeprefix("cover "))
    return getattr(harm, f"of_{word}")(state)


@pytest.mark.parametrize(("word", "key", "limit", "plain", "fields"), BY_PRESSURE)
def test_harm_begins_at_its_resistance_and_is_plain_where_it_is_said(word, key, limit, plain, fields):
    pour, bad_side = a_pour(**FIRM), 1 if plain > limit else -1

    def severity(psi):
        return worst(done(word, piece(pour, **({"psi": psi} | fields))), key)

    assert severity(limit * (1 - bad_side * LEAST)) == 0.0
    assert 0.0 < severity(limit * (1 + bad_side * LEAST)) < 0.01
    assert severity(plain) == pytest.approx(TRACE, rel=1e-6)
    assert severity(plain * plain / limit) == pytest.approx(2 * TRACE, rel=1e-6)


def test_hollows_are_of_the_first_pass_only_and_covers_held_off_never_print():
    later = piece(psi=300, steel=((2.5, 100 * PSI),))
    assert worst(harm.of_steel(piece(psi=300)), "hollows") > TRACE and harm.of_steel(later) == ()
    assert harm_of_water.of_cover(piece(psi=5), "tent") == ()


@pytest.mark.parametrize(("psi", "stood"), [(9.9, "less than 10 psi"), (45, "45 psi")])
def test_the_reason_names_the_resistance_and_of_a_soft_face_only_that_it_is_soft(psi, stood):
    """power_law_from: below 10 psi the curve of the late clock says no more."""
    assert harm.of_steel(piece(psi=psi))[0].reason.startswith(f"The face stood at {stood} (")


@pytest.mark.parametrize(("share", "severity"), [(1.0, 0.0), (5 / 6, 0.25), (2 / 3, 0.5), (1 / 3, 1.0)])
def test_what_is_too_weak_is_plain_halfway_into_its_safety(share, severity):
    """edge_safety_factor is 1.5: two thirds of the need bear it with no safety left, five sixths are halfway."""
    need_pa = base(a_pour()).edge_pa
    mixed = harm.of_spread(base(a_pour(yield_start_pa=share * need_pa + 1e-9, build_up_pa_s=0.0)))
    assert worst(mixed, "mixed") == pytest.approx(severity, abs=1e-6)
    need_pa = piece().edge_pa
    sag = harm.of_strip(piece(a_pour(yield_start_pa=share * need_pa, build_up_pa_s=0.0), psi=9.9))
    soft_by_a_hair = 0.00704  # 1/4 ln(10/9.9) / ln(10/7)
    assert worst(sag, "sag") == pytest.approx(max(severity, soft_by_a_hair), abs=1e-4)


def test_the_reason_of_a_sagging_edge_is_the_worse_of_the_two():
    weak = harm.of_strip(piece(a_pour(yield_start_pa=450.0, build_up_pa_s=0.0), psi=9.9))[0].reason
    soft = harm.of_strip(piece(a_pour(**FIRM), psi=7))[0].reason
    assert weak.startswith("The edge bears") and soft.startswith("The softer layer stood")


@pytest.mark.parametrize(("minutes", "severity"), [(15.0, 0.0), (14.7, 0.02), (7.5, 0.5), (0.0, 1.0)])
def test_the_face_in_the_first_quarter_of_an_hour_mixes_by_the_part_that_is_missing(minutes, severity):
    """base_ready_earliest is 15 min, however much the base bears."""
    start = begin(a_pour(**FIRM))
    found = harm.of_spread(let_pass(start, minutes / 60.0))
    assert worst(found, "mixed") == pytest.approx(severity, abs=1e-9)


@pytest.mark.parametrize(("hours", "severity"), [(0.0, 0.0), (0.999, 0.0), (1.0001, 0.0), (3**0.5, 0.25), (3.0, 0.5)])
def test_the_pause_between_the_layers_counts_by_the_hour_at_21_c(hours, severity):
    """layer_gap: 60 min and, at most, 180; halfway between by ratio it is plain to see."""
    start = begin(a_pour(**SLOW))
    waited = start.having(hour_h=5.0, base_age_h=start.base_age_h + hours)
    assert worst(harm.of_spread(waited), "cold joint") == pytest.approx(severity, abs=1e-4)


def test_a_share_gone_stiff_in_its_bucket_is_bad_until_it_is_turned_over():
    stiff = base(replace(a_pour(**FIRM), false_set=True))
    assert worst(harm.of_spread(stiff), "lumps") == BAD
    assert harm.of_spread(stiff.having(stirred=True)) == ()


@pytest.mark.parametrize(
    ("lost", "severity"), [(0.0, 0.0), (0.2499, 0.0), (0.2501, 0.0002), (0.375, 0.25), (0.5625, 0.5)]
)
def test_the_board_tears_a_skin_that_has_dried_and_a_float_works_it_back(lost, severity):
    """free_water: 0.25 kg/m2 until the shine is gone; half more is plain to see."""
    skin = piece(a_pour(**FIRM), psi=5, skin_kg_m2=lost)
    torn = harm.of_screed(skin)
    assert worst(torn, "torn") == pytest.approx(severity, abs=1e-4)
    assert not torn or torn[0].reason.startswith("The skin had lost")
    assert harm.of_float(skin) == ()
    set_too = harm.of_screed(skin.having(face_age_h=skin.pour.age_at_h(200 * PSI)))
    assert set_too[0].reason.startswith("The face stood at")


# ---- water, air, plastic


@pytest.mark.parametrize(("ratio", "severity"), [(1.1 * (12 / 11) ** 3, 0.75), (1.452, 0.79769), (1.6, 1.0)])
def test_sprinkled_water_is_counted_in_the_upper_millimetre(ratio, severity):
    """A tenth more is the limit, a fifth more plain to see, so that severity is 1/4 ln(ratio / 1.1) / ln(12 / 11)."""
    pour = a_pour()
    before = (ratio - 1.0) * 0.001 * pour.face_water_kg_m3 - 0.1  # with the 0.1 kg/m2 of this flick
    found = harm_of_water.of_sprinkle(piece(pour, water_kg_m2=before))
    assert worst(found, "crazing") == pytest.approx(severity, abs=1e-4)


def test_mist_is_water_on_a_face_that_has_not_set_and_harmless_afterwards():
    """last_steel_pr_high: 500 psi."""
    assert worst(harm_of_water.of_cover(piece(psi=500 * (1 - LEAST)), "mist"), "crazing") > TRACE
    assert harm_of_water.of_cover(piece(psi=500 * (1 + LEAST)), "mist") == ()


@pytest.mark.parametrize(
    ("hours", "severity"), [(0.0, 0.0), (0.499, 0.0), (0.501, 0.0007), (0.5**0.5, 0.125), (1.0, 0.25), (2.0, 0.5)]
)
def test_bare_plastic_marks_from_half_an_hour_and_plainly_from_a_whole_one(hours, severity):
    lying = piece(psi=300, cover="plastic", cover_from_h=5.0, hour_h=5.0 + hours)
    assert worst(harm_of_water.of_uncover(lying), "blotches") == pytest.approx(severity, abs=1e-4)
    assert harm_of_water.of_uncover(lying.having(cover="tent")) == ()


@pytest.mark.parametrize(
    ("taken", "severity"), [(0.0, 0.0), (0.2499, 0.0), (0.2501, 0.0002), (0.375, 0.25), (0.5625, 0.5)]
)
def test_red_air_cracks_a_face_once_it_took_all_free_water(taken, severity):
    """free_water: 0.25 kg/m2; half more is plain to see."""
    found = harm_of_water.of_drying(piece(red_kg_m2=taken))
    assert worst(found, "cracks") == pytest.approx(severity, abs=1e-4)
