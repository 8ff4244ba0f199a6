"""Pictures stay readable: words on the sheet and apart, type large enough, grey prints, nothing piles up."""

from dataclasses import replace
from datetime import datetime
from itertools import pairwise
from types import SimpleNamespace

import numpy as np
import pytest
from matplotlib.artist import Artist
from matplotlib.collections import Collection
from matplotlib.colors import to_rgb
from picture_checks import unreadable, words_drawn

from shop_calc.lesson.pictures import demo
from shop_calc.lesson.pictures.base import HATCHES, PAPER, ROLES, png_bytes
from shop_calc.lesson.pictures.cloud import FiftyDays
from shop_calc.lesson.pictures.colour_sight import MATRICES, contrast, luminance, seen_as
from shop_calc.lesson.pictures.curing import CoverChoices
from shop_calc.lesson.pictures.demo_bench import BENCH_UPDATES
from shop_calc.lesson.pictures.demo_log import LOG_UPDATES
from shop_calc.lesson.pictures.demo_pour import pour_updates
from shop_calc.lesson.pictures.demo_strength import STRENGTH_UPDATES
from shop_calc.lesson.pictures.demo_volumes import MIX, SHARES, VOLUMES_UPDATES
from shop_calc.lesson.pictures.evaporation import FIELDS, DryingSheet
from shop_calc.lesson.pictures.gallery import page_html, page_png, write_page
from shop_calc.lesson.pictures.heat import FILLS, HATCH, HeatAreas
from shop_calc.lesson.pictures.lettering import LEAST
from shop_calc.lesson.pictures.one_mix import OneMixInVessels
from shop_calc.lesson.pictures.ribbon import TINTS, RibbonOfTheDay
from shop_calc.lesson.pictures.sections import LayerSections, PiecePlan
from shop_calc.lesson.pictures.slab import LINES, MARKS, MortarTemperature
from shop_calc.lesson.pictures.weighing import WeighBars
from shop_calc.trade.shape import outline

START = datetime(2026, 5, 4, 8)
NAMES = tuple(demo.BUILD)
LONG = " and a good many further words that nobody would put on a sheet of paper in any shop"


def _long_ribbon():
    stages = [replace(s, title=s.title + LONG, tool=s.tool + LONG, cue=f"{s.cue}; {LONG}") for s in demo.STAGES]
    night = replace(stages[-1], key="lift", look_from_h=22.0, likely_from_h=23.0, likely_to_h=27.0, over_by_h=29.5)
    hours = tuple(range(0, 28, 4))
    room = SimpleNamespace(from_h=hours, air_temp_c=(21.5,) * 7, rh_fraction=(0.555,) * 7, wind_m_s=(1.0,) * 7)
    loads = tuple(n / 3 for n in range(9))
    return RibbonOfTheDay([*stages, night], START, loads, room, [(12.0, 21.5)], title="A top" + LONG)


def _short_ribbon():
    quick = [
        replace(s, look_from_h=s.look_from_h / 3, likely_from_h=s.likely_from_h / 3, likely_to_h=s.likely_to_h / 3,
                over_by_h=s.over_by_h / 3, deadline_h=None) for s in demo.STAGES
    ]  # fmt: skip
    return RibbonOfTheDay(quick, datetime(2026, 5, 4, 18))


def _seen_ribbon():
    picture = RibbonOfTheDay(demo.STAGES, START, room=demo.ROOM)
    looks = [(s.key, s.likely_from_h, n % 2 == 0) for n, s in enumerate(demo.STAGES)]
    picture.update(demo.LATER, first=demo.STAGES, seen=looks)
    return picture


def _heavy_bars():
    return WeighBars(
        [replace(r, name=r.name + LONG, base_kg=40 * r.base_kg, face_kg=40 * r.face_kg) for r in demo.ROWS]
    )


def _faceless_bars():
    return WeighBars([replace(r, base_kg=1.01 * r.base_kg, face_kg=0.0) for r in demo.ROWS])


def _mix_of(aside_m3, face_m3):
    return OneMixInVessels(replace(MIX, face_share_m3=aside_m3, face_m3=face_m3), "A mix" + LONG)


def _hot_mix(temp_c):
    parts = tuple(replace(p, name=p.name + LONG, mass_kg=10 * p.mass_kg) for p in demo.HEAT.parts)
    return HeatAreas(replace(demo.HEAT, parts=parts, mix_temp_c=temp_c))


def _plan(shape):
    plan = PiecePlan(
        shape.polygon, shape.polygon.buffer(-0.006), 0.038, 0.006, shape.edges, frozenset(shape.edge_names[::2])
    )
    return LayerSections(plan, title="A piece")


def _dry_corner(humid, wind, rate):
    here = {"here_rh_fraction": humid, "here_wind_m_s": wind, "here_rate_kg_m2_h": rate}
    return DryingSheet(replace(demo._drying(), air_temp_c=38.333, surface_temp_c=37.777, **here))


def _flat_day(apart_k):
    day = demo._temperatures()
    flat = np.full_like(day.slab_c, 20.0)
    moved = {"slab_covered_c": flat, "room_c": flat + apart_k, "wet_bulb_c": flat - 2 * apart_k}
    return MortarTemperature(replace(day, slab_c=flat - apart_k, **moved), START)


def _days(factor):
    strips = [
        replace(
            s,
            name=s.name + " that was never made",
            open_h=factor * s.open_h,
            marks_h=tuple(factor * m for m in s.marks_h),
        )
        for s in demo._openings()
    ]
    return FiftyDays(strips, START, title="Sides off" + LONG)


def _wordy_covers():
    more = [
        SimpleNamespace(**{
            **vars(c), "title": c.title + " of some kind", "surface": f"{c.surface} " * 3, "work": f"{c.work} " * 4,
            "sealing": f"{c.sealing} " * 3, "bound_kg_m2": 3.337 * c.bound_kg_m2,
        }) for c in demo.COVERS.choices
    ]  # fmt: skip
    return CoverChoices(SimpleNamespace(pick=("open", "fabric"), choices=more))


EXTREMES = {
    "ribbon of nine stages, thirty hours, long names": _long_ribbon,
    "ribbon of two hours": _short_ribbon,
    "ribbon with a look on every lane": _seen_ribbon,
    "mix with hardly any face": lambda: _mix_of(0.002, 0.0018),
    "mix that is mostly face": lambda: _mix_of(0.0165, 0.0150),
    "bars of tonnes": _heavy_bars,
    "bars without a face": _faceless_bars,
    "mix at the bottom of the scale": lambda: _hot_mix(0.0),
    "mix beyond the scale": lambda: _hot_mix(60.0),
    "square plan": lambda: _plan(outline.rectangle(1.2, 1.2)),
    "long plan": lambda: _plan(outline.rectangle(6.0, 0.4)),
    "small plan": lambda: _plan(outline.rectangle(0.3, 0.3)),
    "L plan": lambda: _plan(outline.l_shape(2.0, 1.5, 1.3, 0.9)),
    "U plan": lambda: _plan(outline.u_shape(2.4, 1.8, 1.2, 1.2, 0.6)),
    "round plan": lambda: _plan(outline.circle(0.9)),
    "racetrack plan": lambda: _plan(outline.racetrack(2.4, 0.8)),
    "dry corner": lambda: _dry_corner(0.1, 11.0, 3.17),
    "damp corner": lambda: _dry_corner(1.0, 0.0, 0.0),
    "four lines on one": lambda: _flat_day(0.0),
    "four lines far apart": lambda: _flat_day(15.0),
    "days of a whole night": lambda: _days(8.0),
    "days of minutes": lambda: _days(0.1),
    "covers with many words": _wordy_covers,
}


@pytest.fixture(scope="module")
def as_built():
    """Every picture once, for tests that only look."""
    return demo.pictures()


@pytest.mark.parametrize("name", NAMES)
def test_words_of_every_picture_are_on_the_sheet_apart_and_large_enough(name, as_built):
    figure = as_built[name].figure
    assert unreadable(figure) == []
    assert min(text.get_fontsize() for text, _ in words_drawn(figure)) >= LEAST


@pytest.mark.parametrize("name", EXTREMES)
def test_words_stay_on_the_sheet_and_apart_at_the_extremes(name):
    figure = EXTREMES[name]().figure
    assert unreadable(figure) == []


def test_type_printed_on_paper_is_never_below_nine_points(as_built):
    # a sheet prints a picture nine inches wide at 190 mm
    assert LEAST * (190 / 25.4) / 9.0 >= 9.0
    assert all(picture.figure.get_size_inches()[0] == 9.0 for picture in as_built.values())


UPDATES = {
    "two layers": (lambda: demo._bench(), {}),
    "weigh bars": (lambda: demo.ROWS, {}),
    "heat of the mix": (lambda: demo.HEAT, {}),
    "ribbon of the day": (lambda: demo.LATER, {"first": demo.STAGES, "seen": [("strip", 2.2, True)]}),
    "ribbon after looks": (lambda: demo.STAGES, {}),
    "fifty days": (lambda: demo._openings(), {"not_yet_h": 2.0}),
    "mortar temperature": (lambda: demo._temperatures(), {}),
    "drying of the face": (lambda: demo._drying(), {}),
    "covers for the night": (lambda: demo.COVERS, {}),
    "what if": (lambda: demo._map(), {}),
    "bowed top": (lambda: demo.BOWED, {}),
    "what the packs cost": (lambda: demo.COSTS, {}),
    **{name: (read, {}) for name, read in (LOG_UPDATES | VOLUMES_UPDATES).items()},
    **{name: (read, {}) for name, read in (STRENGTH_UPDATES | BENCH_UPDATES | pour_updates(demo.STAGES)).items()},
}


@pytest.mark.parametrize("name", NAMES)
def test_an_update_moves_artists_and_never_adds_one(name):
    picture = demo.BUILD[name]()
    read, more = UPDATES[name]

    def count():
        artists = picture.figure.findobj(Artist)
        return len(artists), sum(len(a.get_paths()) for a in artists if isinstance(a, Collection))

    picture.update(read(), "si", **more)
    limits = [(axes.get_xlim(), axes.get_ylim()) for axes in picture.figure.axes]
    first, size, alt = count(), png_bytes(picture.figure)[16:24], picture.alt
    for system in ("us", "both", "si"):
        picture.update(read(), system, **more)
        picture.png()
    assert count() == first
    assert png_bytes(picture.figure)[16:24] == size  # width and height in the PNG head
    assert [(axes.get_xlim(), axes.get_ylim()) for axes in picture.figure.axes] == limits
    assert picture.alt == alt


@pytest.mark.parametrize("name", NAMES)
def test_pictures_speak_one_system_or_both(name):
    picture = demo.BUILD[name]()
    read, more = UPDATES[name]
    said = {}
    for system in ("us", "si", "both"):
        picture.update(read(), system, **more)
        said[system] = picture.alt
        assert said[system].endswith(".")
        assert len(said[system]) > 60
    if name not in ("fifty days", "what if", "predicted and seen"):  # clock times, and axes that always show both
        assert len({*said.values()}) == 3
        assert "°C" not in said["us"] and " kg" not in said["us"] and " mm" not in said["us"]
        assert "°F" not in said["si"] and " lb" not in said["si"] and '"' not in said["si"]


FEWER = {
    "two layers": lambda: replace(demo._bench(), edges=demo._bench().edges[:2]),
    "the share of face": lambda: SHARES[:2],
    "weigh bars": lambda: demo.ROWS[:3],
    "heat of the mix": lambda: replace(demo.HEAT, parts=demo.HEAT.parts[:2]),
    "ribbon of the day": lambda: demo.STAGES[:2],
    "ribbon after looks": lambda: demo.STAGES[:2],
    "fifty days": lambda: demo._openings()[:1],
    "covers for the night": lambda: SimpleNamespace(pick="open", choices=demo.COVERS.choices[:2]),
    "what if": lambda: replace(demo._map(), levels=(2.0,)),
}


@pytest.mark.parametrize("name", FEWER)
def test_an_update_of_another_length_is_refused(name):
    with pytest.raises(ValueError, match="given"):
        demo.BUILD[name]().update(FEWER[name]())


def _differ(first, second, hatches=("", ""), least=1.4):
    return hatches[0] != hatches[1] or contrast(to_rgb(first), to_rgb(second)) >= least


def test_fills_that_touch_differ_in_a_grey_print():
    assert _differ(ROLES["face"], ROLES["base"], (HATCHES["face"], HATCHES["base"]))
    assert contrast(to_rgb(ROLES["face"]), to_rgb(ROLES["base"])) >= 1.9  # even before the dots
    for layer in ("face", "base"):
        assert _differ(TINTS[layer], ROLES[layer])
    assert _differ(FILLS["solid"], FILLS["water"], (HATCH["solid"], HATCH["water"]))
    assert _differ(FILLS["water"], FILLS["ice"], (HATCH["water"], HATCH["ice"]))
    greys = [float(luminance(to_rgb(fill))) for _, fill, _ in FIELDS]
    assert greys == sorted(greys, reverse=True)
    for (_, fill, hatch), (_, other, other_hatch) in pairwise(FIELDS):
        assert hatch != other_hatch
        assert contrast(to_rgb(fill), to_rgb(other)) >= 1.3


def test_lines_that_share_axes_differ_by_dash_or_mark():
    looks = [(look["ls"], MARKS.get(name, "")) for name, (_, look) in LINES.items()]
    assert len(looks) == len({str(look) for look in looks})


def test_colour_blind_matrices_keep_grey_grey_and_confuse_red_with_green():
    # property of the published matrices: each row sums to one, so that white stays white
    for matrix in MATRICES.values():
        assert matrix.sum(axis=1) == pytest.approx(1.0, abs=2e-6)
    red, green = np.array([0.8, 0.25, 0.0]), np.array([0.35, 0.5, 0.0])
    for sight in MATRICES:
        assert np.abs(seen_as(red, sight) - seen_as(green, sight)).max() < np.abs(red - green).max()
    for sight in MATRICES:  # the two layers stay apart in both
        assert np.abs(seen_as(to_rgb(ROLES["face"]), sight) - seen_as(to_rgb(ROLES["base"]), sight)).max() > 0.4


def test_one_page_shows_every_picture_four_times_with_its_words(tmp_path):
    shown = {name: demo.BUILD[name]() for name in ("fifty days", "weigh bars")}
    page = page_html(shown)
    assert page.count("<img ") == 8 and page.count("alt=") == 8
    assert "protanopia" in page and "deuteranopia" in page and "invented" in page
    assert "Cement: 51.1 lb (23.2 kg) into the base" in page
    assert page_png(shown)[1:4] == b"PNG"
    with pytest.raises(ValueError, match=r"\.html or \.png"):
        write_page(tmp_path / "page.pdf")


def test_paper_is_white_where_nothing_is_drawn(as_built):
    from io import BytesIO

    from matplotlib.image import imread

    for picture in as_built.values():
        assert imread(BytesIO(picture.png()))[2, 2, :3] == pytest.approx(to_rgb(PAPER))
