"""Slips in a job file that were passed over, or answered in words that did not help."""

import tomllib

import pytest

from shop_calc.trade.job_parts import piece_of
from shop_calc.trade.jobs.job import check_job, demo_job
from shop_calc.trade.plan import make_plan
from shop_calc.trade.problems import Problems


def changed(**changes):
    job = tomllib.loads(demo_job("garden_bench_top").read_text(encoding="utf-8"))
    for place, value in changes.items():
        part, _, entry = place.partition("__")
        job.setdefault(part, {})[entry] = value
    return job


@pytest.mark.parametrize("given", ["0.45", "1 1/5", "0,45", 0.45, True])
def test_stone_without_a_basis_is_asked_of_what_and_not_for_a_mass(given):
    with pytest.raises(Problems) as caught:
        check_job(changed(mix__stone=given))
    assert 'it must say of what, as in "1.2 kg per kg binder"' in str(caught.value) and "2 lb 3 oz" not in str(caught.value)


def test_stone_in_percent_is_still_read():
    assert check_job(changed(mix__stone="120 % of binder")).mix["stone"] == "120 % of binder"


@pytest.mark.parametrize("entry", ["rated", "drum_share"])
def test_a_rating_of_a_bucket_is_refused_and_not_passed_over(entry):
    value = {"rated": "3 ft3", "drum_share": "50 %"}[entry]
    for vessel in ("bucket and paddle", "tub by hand"):
        with pytest.raises(Problems, match=f"mixer.{entry}: .*only a drum has that, for {vessel} give usable"):
            check_job(changed(mixer__vessel=vessel, **{f"mixer__{entry}": value}))
    assert check_job(changed(mixer__vessel="drum", **{f"mixer__{entry}": value}))


def test_a_span_too_long_is_said_in_the_units_of_the_shop():
    with pytest.raises(ValueError) as caught:
        make_plan(check_job(changed(place__on="legs", place__span="6 ft")))
    assert "6'-0\" (1829 mm) given; it must be at most the length of the piece, 5'-0\" (1524 mm)" in str(caught.value)


@pytest.mark.parametrize(
    ("place", "words"),
    [
        ({"overhang": "16 in", "overhang_at": "side"}, "at most the width of the piece, over whose side it hangs, 1'-3\""),
        ({"span": "50 in", "overhang": "11 in"}, "what the span of 4'-2\" (1270 mm) leaves of the length of the piece, 10\""),
        ({"overhang": "61 in"}, "at most the length of the piece, 5'-0\" (1524 mm)"),
    ],
)
def test_an_overhang_that_the_piece_has_no_room_for_is_refused(place, words):
    with pytest.raises(ValueError) as caught:
        make_plan(check_job(changed(place__on="legs", **{f"place__{key}": value for key, value in place.items()})))
    assert "overhang: " in str(caught.value) and words in str(caught.value)


def test_an_overhang_that_just_fits_is_taken():
    for place in ({"overhang": "15 in", "overhang_at": "side", "span": "60 in"}, {"span": "50 in", "overhang": "10 in"}):
        entries = changed(place__on="legs", **{f"place__{key}": value for key, value in place.items()})
        assert [check.key for check in make_plan(check_job(entries)).handling.supports] == ["span", "overhang"]


def test_a_cut_out_that_cannot_be_is_named():
    hole = {"name": "sink", "shape": "rectangle", "length": "10 in", "width": "8 in", "corner_radius": "6 in",
            "at": ["30 in", "7 in"]}  # fmt: skip
    with pytest.raises(ValueError, match="cut-out 'sink': corner radius: "):
        piece_of(check_job(changed(piece__cutout=[hole])))
