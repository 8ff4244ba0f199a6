"""The slider block: driven to every end, in every system, and when things go wrong."""

import re

import ipywidgets as w
import pytest

from shop_calc import defaults, units
from shop_calc.lesson.blocks import Block, UnitSwitch, choice, scale, slider
from shop_calc.lesson.pictures.base import Picture

LONG = " ".join(["The whole line is kept, however long it is."] * 6)


class Mass(Picture):
    def build(self, axes):
        axes.set(xlim=(0, 1), ylim=(0, 1))
        (self.line,) = axes.plot([0, 1], [0, 0])

    def update(self, result, system="both"):
        self.line.set_ydata([0, result / 400])
        self.alt = f"A line up to {units.show(result, 'mass', system)}."


def mass_kg(length_m, thickness_m, air_c=21.0, cover="open"):
    if cover == "refused":
        raise ValueError("cover: <b>nothing</b> holds it")
    if cover == "fault":
        raise ZeroDivisionError("a fault <i>of</i> ours")
    return length_m * 0.4 * thickness_m * 2300.0


def said(result, system):
    return f"It weighs {units.show(result, 'mass', system)}.\n{LONG}"


def make(switch=None, picture=True):
    rows = [
        slider("length_m", "piece_length", label="Length"),
        slider("thickness_m", "slab_thickness", label="Thickness"),
        slider("air_c", "air_temp", label="Air"),
        choice("cover", "Cover", ["open", "damp fabric", "refused", "fault"]),
    ]
    return Block(mass_kg, said, rows, picture=Mass() if picture else None, title="Weight", units=switch)


@pytest.mark.parametrize("system", ["us", "si", "both"])
def test_every_slider_reaches_both_ends_and_the_words_follow(system):
    block = make(UnitSwitch(system))
    for key in ("length_m", "thickness_m", "air_c"):
        row = block.rows[key]
        for end in row.ends:
            block.set(**{key: end})
            assert block.values[key] == end
            assert block.text == said(mass_kg(**block.values), system).strip()
            assert block.alt == f"A line up to {units.show(block.result, 'mass', system)}."
        for end in (row.knob.min, row.knob.max):
            row.knob.value = end
            assert row.box.value == pytest.approx(end)
            assert row.ends[0] - 1e-12 <= block.values[key] <= row.ends[1] + 1e-12
        block.reset()


def banded(name):
    row = defaults.get(name)
    low, high = (row.low, row.high) if row.low is not None else (row.minimum, row.maximum)
    return low is not None and high is not None and low < high and low <= row.value <= high


@pytest.mark.parametrize("name", list(filter(banded, sorted(defaults.table()))))
def test_every_default_with_a_band_makes_a_slider_in_both_systems(name):
    row = defaults.get(name)
    made = slider("value", name)
    for system in ("us", "si", "both"):
        made.show(system)
        assert made.value == pytest.approx(
            float(scale.convert(row.value, row.unit, scale.units_of(row.unit)[0]))
        )
        assert made.knob.min < made.knob.max and made.knob.min <= made.knob.value <= made.knob.max
        assert 12 <= (made.knob.max - made.knob.min) / made.knob.step <= 400
        low_si, high_si = made.ends
        for end in (made.knob.min, made.knob.max):
            inside = scale.convert(end, made.grid.unit, scale.units_of(row.unit)[0])
            assert low_si - 1e-9 * abs(low_si) <= inside <= high_si + 1e-9 * abs(high_si)


def test_a_default_in_the_box_is_the_table_s_value_in_shop_units():
    row = make().rows["length_m"]
    assert (row.box.value, row.box.description) == (60.0, "Length (in)")
    row.show("si")
    assert (row.box.value, row.box.description) == (1524.0, "Length (mm)")


def test_knob_and_box_move_each_other():
    block = make()
    row = block.rows["length_m"]
    row.knob.value = 72.0
    assert row.box.value == 72.0 and block.values["length_m"] == pytest.approx(72 * 0.0254)
    row.box.value = 48.0
    assert row.knob.value == 48.0 and block.values["length_m"] == pytest.approx(48 * 0.0254)


def test_a_typed_value_between_two_steps_is_kept_exactly():
    block = make()
    row = block.rows["length_m"]
    row.box.value = 61.4375
    assert block.values["length_m"] == pytest.approx(61.4375 * 0.0254, abs=1e-12)
    assert row.box.value == 61.4375 and row.knob.value in (61.0, 62.0)
    row._dragged({"new": row.knob.value})  # the page sends the knob's own place back
    assert block.values["length_m"] == pytest.approx(61.4375 * 0.0254, abs=1e-12)


def test_turning_the_units_keeps_every_value_and_turns_labels_ranges_entries_and_words():
    switch = UnitSwitch()
    blocks = [make(switch), make(switch)]
    before = [block.values for block in blocks]
    for system, label, part in (
        ("si", "Length (mm)", "kg"),
        ("us", "Length (in)", "lb"),
        ("both", "Length (in)", "lb"),
    ):
        switch.system = system
        for block, values in zip(blocks, before, strict=True):
            assert block.values == values
            assert block.rows["length_m"].box.description == label
            assert part in block.text.splitlines()[0] and part in block.alt
            assert ("(" in block.text.splitlines()[0]) == (system == "both")
    assert "1524 mm" in blocks[0].rows["length_m"]._beside.value


def test_the_button_turns_the_switch():
    switch = UnitSwitch("us")
    block = make(switch)
    switch.control.value = "si"
    assert switch.system == "si" and "kg" in block.text


def test_reset_brings_every_row_back_in_any_system():
    block = make()
    block.set(length_m=1.0, thickness_m=0.05, cover="damp fabric")
    block.units.system = "si"
    block.reset_button.click()
    assert block.values == {"length_m": 1.524, "thickness_m": 0.0381, "air_c": 21.0, "cover": "open"}


def test_an_impossible_setting_is_a_readable_line_and_the_last_picture_stays():
    block = make()
    picture, alt, result = block._shown.value, block.alt, block.result
    block.rows["cover"].value = "refused"
    assert 'role="alert"' in block._words.value
    assert "&lt;b&gt;nothing&lt;/b&gt;" in block._words.value and "<b>" not in block._words.value
    assert (block._shown.value, block.alt, block.result) == (picture, alt, result)
    assert "Not possible: cover: <b>nothing</b> holds it" in block.plain()
    block.rows["cover"].value = "damp fabric"
    assert 'role="status"' in block._words.value and 'aria-live="polite"' in block._words.value


def test_any_other_exception_is_shown_and_raised_so_that_the_cell_fails():
    block = make()
    with pytest.raises(ZeroDivisionError):
        block.rows["cover"].value = "fault"
    assert "ZeroDivisionError" in block._words.value and "<i>" not in block._words.value


def test_a_fault_at_the_first_drawing_fails_the_cell():
    with pytest.raises(KeyError):
        Block(lambda: {}["x"], lambda result, system: "", [])


def test_the_stored_text_is_whole():
    block = make()
    text = block._repr_mimebundle_()["text/plain"]
    assert LONG in text and text == block.plain()
    assert "Length 60 in (1524 mm)" in text and "Cover open" in text and block.alt in text
    assert "application/vnd.jupyter.widget-view+json" in block._repr_mimebundle_()


def test_every_entry_has_a_name_and_the_picture_has_alt_text():
    block = make()
    for row in block.rows.values():
        assert isinstance(row.box, (w.BoundedFloatText, w.Dropdown)) and row.box.description.startswith(
            row.label
        )
    assert re.search(r'<img alt="A line up to [^"]+"', block._shown.value)
    assert block.units.control.description == "Units" and block.reset_button.description == "Reset"


def test_words_and_picture_keep_their_room():
    block = make()
    assert "min-height:49px" in block._words.value and "aspect-ratio:900/450" in block._shown.value
    block.rows["cover"].value = "refused"
    assert "min-height:49px" in block._words.value


def test_a_block_without_picture_has_words_only():
    block = make(picture=False)
    assert block._shown.value == "" and "Picture" not in block.plain()


@pytest.mark.parametrize(
    ("arguments", "part"),
    [
        ({"label": "L", "value": 5, "low": 1, "high": 4, "unit": "mm"}, "must be between 1 and 4 mm"),
        ({"label": "L", "value": 5, "low": 1, "unit": "mm"}, "are needed"),
        ({"name": "slab_thickness", "unit": "in"}, "must be given too"),
        ({"name": "no_such_name"}, "no such name"),
    ],
)
def test_a_wrong_slider_is_refused_by_name(arguments, part):
    with pytest.raises(ValueError, match=part):
        slider("x_m", **arguments)


def test_a_fifth_slider_is_refused():
    rows = [slider(f"x{k}_m", label="x", value=1, low=0, high=2, unit="m") for k in range(5)]
    with pytest.raises(ValueError, match="at most four"):
        Block(lambda **values: 0, lambda result, system: "", rows)


def test_set_refuses_what_the_block_does_not_have_or_a_value_out_of_range():
    block = make()
    with pytest.raises(ValueError, match="depth_m"):
        block.set(depth_m=1.0)
    with pytest.raises(ValueError, match="Length: 99 m given"):
        block.set(length_m=99.0)


def test_a_table_range_may_be_given_anew_in_another_unit():
    row = slider("length_m", "piece_length", label="Length", value=6, low=2, high=10, unit="ft")
    assert row.value == pytest.approx(1.8288) and row.box.description == "Length (ft)"
