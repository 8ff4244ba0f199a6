"""The practice pour on the page: pictures follow the numbers and tell nothing hidden, buttons and calls do the same."""

import re

import pytest
from matplotlib.colors import to_hex

from shop_calc.lesson.blocks.pour_bench import PourBench
from shop_calc.lesson.moves import practice_pour as pours
from shop_calc.lesson.pictures.at_the_bench import MARKS_M, SCALE, TOP_IN, AtTheBench, BenchView
from shop_calc.lesson.pictures.pour_ribbon import PourRibbon
from shop_calc.lesson.pictures.ribbon_key import TINTS
from shop_calc.science.setting import age_at_resistance_h
from shop_calc.trade.rehearsal.acts import act
from shop_calc.trade.rehearsal.bench import begin
from shop_calc.trade.rehearsal.debrief import debrief
from shop_calc.trade.rehearsal.policies import by_cues, by_the_clock, work_through
from shop_calc.trade.rehearsal.pooled import pool
from shop_calc.trade.rehearsal.replay import play
from shop_calc.trade.rehearsal.signs import look
from shop_calc.trade.rehearsal.words import ACTS
from shop_calc.units import show

PSI = 6894.757293168361


@pytest.fixture(scope="module")
def good():
    return work_through(begin("mild 7", "mild"), by_cues)


@pytest.fixture(scope="module")
def hasty():
    return work_through(begin("cold shop 23", "cold shop"), by_the_clock)


def drawn_depth_in(picture):
    return TOP_IN - min(y for _, y in picture.hole.get_xy())


# ---- the section and the thumb


@pytest.mark.parametrize("depth_m", [0.0005, 0.002, *MARKS_M])
def test_a_print_is_drawn_to_scale(depth_m):
    picture = AtTheBench()
    picture.update(BenchView(True, 4, 4, "open", print_m=depth_m))
    assert drawn_depth_in(picture) == pytest.approx(depth_m / 0.0254 * SCALE, rel=1e-6)
    assert picture.hole.get_visible() and show(depth_m, "length") in picture.alt


def test_what_nobody_looked_at_is_not_shown():
    picture = AtTheBench()
    picture.update(BenchView(True, 4, 4, "open"))
    assert not picture.hole.get_visible() and "No thumb" in picture.alt
    assert not any(word in picture.alt for word in ("shines", "dull", "nudged"))
    assert len(picture.shine.get_xdata()) == 0


def test_sides_covers_and_shine_are_drawn_and_said():
    picture = AtTheBench()
    said = set()
    for on in (4, 2, 0):
        picture.update(BenchView(True, on, 4, "open", "wet"))
        assert picture.form[0].get_visible() == (on > 0) and picture.form[1].get_visible() == (on == 4)
        assert len(picture.shine.get_xdata()) > 0
    for cover in ("open", "fabric", "plastic", "tent", "mist", "membrane"):
        picture.update(BenchView(True, 0, 4, cover))
        said.add(picture.alt)
        assert (len(picture.lid.get_xdata()) > 0) == (cover not in ("open", "mist"))
    assert len(said) == 6


def test_the_view_holds_only_looks_of_this_very_moment():
    state = play(begin("mild 7", "mild"), "look edge; look thumb")
    view = pours.bench_view(state)
    assert view.leans is True and view.print_m == look(state, "thumb").print_m
    later = pours.bench_view(act(state, "wait 5"))
    assert later.leans is None and later.print_m is None and later.sheen == ""


def test_a_dry_skin_is_in_the_view_only_when_the_thumb_found_it():
    left = (play(begin(f"gust {k}", "hot and windy"), "wait 15; wait 5; spread; float; step away") for k in range(20))
    crusted = next(state for state in left if state.crusted)
    assert not pours.bench_view(crusted).skin and pours.bench_view(act(crusted, "look thumb")).skin


# ---- the ribbon


def test_the_ribbon_shows_true_windows_the_plan_and_every_decision(hasty):
    found = debrief(hasty)
    picture = pours.pour_ribbon(hasty, "Cold")
    rows = {stage.key: row for stage, row in zip(picture.stages, picture._rows, strict=True)}
    for stage in found.stages:
        if stage.key in rows:
            bar = rows[stage.key]["edge"]
            assert bar.get_x() == pytest.approx(stage.likely_from_h)
            assert bar.get_width() == pytest.approx(stage.likely_to_h - stage.likely_from_h)
    for stage in found.planned:
        if stage.key in rows:
            assert rows[stage.key]["before"].get_x() == pytest.approx(stage.likely_from_h)
    shown = sum(len(artist.get_xdata()) for artist in picture._marks.values())
    assert shown == sum(key in rows for key, _, _ in found.marks)
    assert len(picture._marks[False].get_xdata()) == sum(not good for key, _, good in found.marks if key in rows) > 0
    assert "and it shows" in picture.alt and picture.alt.startswith("Cold.")


def test_the_words_of_a_plan_are_gone_and_those_of_a_past_day_stand_there(good):
    texts = [a.get_text() for a in pours.pour_ribbon(good).figure.artists if hasattr(a, "get_text") and a.get_visible()]
    assert {"as it was", "the plan", "done", "done, and it shows"} <= set(texts)
    assert not any(text.startswith(("look from", "likely", "first plan")) for text in texts)


def test_no_sample_of_a_band_is_left_under_the_acts_in_the_key(good):
    shown = [a.get_facecolor() for a in pours.pour_ribbon(good).figure.patches if a.get_visible()]
    shown += [a.get_facecolor() for a in pours.pour_ribbon(good).figure.artists
              if a.get_visible() and hasattr(a, "get_facecolor")]  # fmt: skip
    assert not {to_hex(colour).upper() for colour in shown} & set(TINTS.values())


def test_marks_of_a_class_are_spread_over_their_lane():
    done = [("strip", 2.5, True)] * 12
    places = PourRibbon._places(done)
    assert len(set(places)) == 12 and max(places) - min(places) < 0.4
    assert len(set(PourRibbon._places(done[:2]))) == 1


# ---- moves


def test_half_hours_and_hidden_day_are_tables_of_the_look_back(hasty, good):
    rows = pours.half_hours(hasty).rows
    assert any("sagging" in row[2] for row in rows) and all(re.fullmatch(r"\d\d:\d\d", row[0]) for row in rows)
    assert all(row[2] == "no harm" for row in pours.half_hours(good).rows)
    assert pours.hidden_day(hasty).rows[-2][2] == "a door stayed open"


def test_the_moved_act_meets_harm_on_either_side(good):
    model, words = pours.mover(good), pours.mover_words(good)
    steel = {later: model("the first steel", later / 60) for later in (-60, 0, 60)}
    assert "closed skin" in words(steel[-60]) and words(steel[0]).endswith("no harm.") and "hollows" in words(steel[60])
    picture = pours.moving_mark(good, "Moved")
    picture.update(steel[-60])
    assert list(picture.picture._marks[False].get_xdata()) == pytest.approx([steel[-60][2].at_h])
    picture.update(steel[0])
    assert len(picture.picture._marks[False].get_xdata()) == 0 and len(picture.picture._marks[True].get_xdata()) == 1
    for which in pours.MOVABLE:
        for later in (-1.0, -0.25, 0.0, 0.25, 1.0):
            assert words(model(which, later))


def test_an_act_never_done_cannot_be_moved():
    with pytest.raises(ValueError, match="not done in this pour"):
        pours.mover(play(begin("oak", "mild"), "step away; spread; leave"))("the last steel", 0.1)


def test_the_sum_at_the_bench_is_the_power_law_at_one_temperature():
    age_20, age_60 = (age_at_resistance_h(psi * PSI, 3.4, 7.0) for psi in (20, 60))
    assert pours.later_at_bench_h(age_20, 3.0) == pytest.approx(age_60)


def test_ways_of_working_stand_in_the_order_that_the_trade_expects():
    rows = {row[0]: int(row[1].split()[0]) for row in pours.ways_of_working(10).rows}
    assert rows["by the cues"] >= rows["by the cues, every half hour"] > rows["by the clock on the wall"]
    assert rows["bare plastic overnight"] == rows["water on the face"] == 0


def test_a_class_is_counted_and_drawn():
    together = pool("plum 4", pours.invented_class("plum 4"))
    picture = pours.class_ribbon(together)
    marks = sum(len(artist.get_xdata()) for artist in picture._marks.values())
    assert together.count == 12 and marks == sum(map(len, together.hours_h.values()))
    assert pours.class_words(together).text.startswith("12 pieces")


# ---- the bench with its buttons


def test_a_button_does_what_the_call_does():
    one, other = PourBench("mild 7", "mild"), PourBench("mild 7", "mild")
    for word in ("look bucket", "stir", "wait 15", "look edge", "spread", "screed", "float", "look thumb"):
        one.buttons[word].click()
        said = other.do(word)
        assert said.text.endswith(one.state.diary[-1].said or ".")
    assert one.state.diary == other.state.diary and one.plain() == other.plain()


def test_every_button_has_a_name_of_its_own_and_every_act_a_button():
    bench = PourBench("mild 7", "mild")
    names = [button.description for button in bench.buttons.values()]
    assert set(bench.buttons) == set(ACTS) and len(set(names)) == len(names) and all(names)
    assert bench.again_button.description not in names


def test_every_button_can_be_pressed_at_every_moment():
    bench = PourBench("mild 7", "mild")
    for word in (*ACTS, *ACTS):
        bench.buttons[word].click()
        assert bench.picture.alt and 'role="status"' in bench._words.value


def test_an_unknown_word_leaves_the_pour_as_it_was():
    bench = PourBench("mild 7", "mild")
    bench.do("wait 15")
    with pytest.raises(ValueError, match="act: 'dance'"):
        bench.do("wait 5; dance")
    assert bench.state.hour_h == pytest.approx(bench.start.hour_h + 0.25)


def test_the_morning_tells_the_account_and_begin_again_takes_it_back():
    bench = PourBench("mild 7", "mild")
    bench.do("step away; spread; leave")
    assert "In the morning this shows" in bench._after.value and "<table" in bench._after.value
    assert bench.buttons["steel"].disabled and not bench.again_button.disabled
    bench.again_button.click()
    assert bench._after.value == "" and bench.state is bench.start and not bench.buttons["steel"].disabled
    assert "leave" in PourBench("mild 7", "mild").plain() and bench.diary == ""


def test_nothing_typed_reaches_the_page_unescaped():
    bench = PourBench("<b>oak</b>", "mild", title="<i>mine</i>")
    page = "".join(child.value for child in bench.children if hasattr(child, "value"))
    assert "<b>oak" not in page and "<i>mine" not in page and "&lt;b&gt;oak" in page


def test_the_bench_in_words_says_nothing_hidden():
    bench = PourBench("cold shop 23", "cold shop")
    text = bench.plain()
    assert "door" not in text and "initial set" not in text.lower() and "psi" not in text
