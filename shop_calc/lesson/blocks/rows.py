"""One row of a block: a slider with a box to type the same value into, or a list to choose from."""

import html
import math

import ipywidgets as w

from shop_calc import defaults
from shop_calc.lesson.blocks import scale
from shop_calc.lesson.blocks.look import pages
from shop_calc.lesson.page import sign

_FIRST = "158px"  # every label ends on one line
_BOX = "252px"


def slider(key, name=None, *, label=None, value=None, low=None, high=None, unit=None, step_us=None, step_si=None):
    """Describe a slider, from the table of defaults or outright.

    Not for a choice between words: that is `choice`.

    Parameters
    ----------
    key : str
        Name of the model's argument, with its SI suffix [-].
    name : str, optional
        Name in the table of defaults; label, default, range and unit come from there [-].
    label : str, optional
        Label without unit [-].
    value, low, high : float, optional
        Default and ends; without `name` all are needed [unit].
    unit : str, optional
        Unit of value, low and high; with `name`, the unit of the table unless all three are given anew [-].
    step_us, step_si : float, optional
        Step in the US and in the SI unit shown [shown unit].

    Returns
    -------
    SliderRow
        Goes into a `Block` [-].

    Raises
    ------
    ValueError
        When the table has no such name, a number is missing, or the default lies outside the range.

    Examples
    --------
    >>> slider("thickness_m", "slab_thickness", label="Thickness").value
    0.0381

    References
    ----------
    Common practice, no source.
    """
    if name is not None:
        row = defaults.get(name)
        if unit not in (None, row.unit) and None in (value, low, high):
            raise ValueError(f"slider {key}: unit {unit!r} given; then value, low and high must be given too")
        label = label or row.label
        unit = unit or row.unit
        value = row.value if value is None else value
        low = next((end for end in (low, row.low, row.minimum) if end is not None), None)
        high = next((end for end in (high, row.high, row.maximum) if end is not None), None)
    if None in (label, value, low, high, unit):
        raise ValueError(f"slider {key}: label, value, low, high and unit are needed where the table gives none")
    if not low <= value <= high:
        raise ValueError(f"slider {key}: {value:g} {unit} given; must be between {low:g} and {high:g} {unit}")
    inside = scale.units_of(unit)[0]
    ends = (scale.convert(number, unit, inside) for number in (value, low, high))
    return SliderRow(key, label, *ends, unit, step_us, step_si)


def choice(key, label, options, value=None):
    """Describe a list of words to choose from.

    Parameters
    ----------
    key : str
        Name of the model's argument [-].
    label : str
        Label [-].
    options : sequence of str, or of (shown, value)
        What can be chosen [-].
    value : optional
        What stands there first; the first option if not given [-].

    Returns
    -------
    ChoiceRow
        Goes into a `Block` [-].

    Examples
    --------
    >>> choice("cover", "Cover", [("damp fabric", "damp"), ("none", "open")]).value
    'damp'

    References
    ----------
    Common practice, no source.
    """
    return ChoiceRow(key, label, options, value)


class ChoiceRow(w.HBox):
    """A drop-down list with its name."""

    def __init__(self, key, label, options, value):
        self.key, self.label = key, label
        self.box = w.Dropdown(
            options=options,
            description=label,
            style={"description_width": _FIRST},
            layout={"width": "430px", "max_width": "100%"},
        )
        self.default = self.box.value if value is None else value
        self.box.value = self.default
        self.changed = lambda: None
        super().__init__([self.box])
        self.add_class("shop-row")
        self.box.observe(lambda _: self.changed(), "value")

    @property
    def value(self):
        return self.box.value

    @value.setter
    def value(self, value):
        self.box.value = value

    @property
    def ends(self):
        """Every value that it can take."""
        return tuple(self.box._options_values)

    def show(self, system):
        """Words do not change with the units."""

    def plain(self):
        return f"{self.label} {self.box.label}"


class SliderRow(w.HBox):
    """A slider and a box with one value between them, held in SI."""

    def __init__(self, key, label, value, low, high, unit, step_us=None, step_si=None):
        self.key, self.label, self.default = key, label, value
        self._inside, us, si = scale.units_of(unit)
        grids = (scale.grid(low, high, self._inside, *pair) for pair in ((us, step_us), (si, step_si)))
        self._grids = dict(zip(("us", "si"), grids, strict=True))
        self._si, self._moving, self._system = value, False, None
        self.ends = (low, high)  # in SI; the knob's own ends are round numbers just inside
        self.changed = lambda: None
        self.box = w.BoundedFloatText(style={"description_width": _FIRST}, layout={"width": _BOX})
        self._low, self._high, self._beside = pages(3)
        for end, name in ((self._low, "shop-low"), (self._high, "shop-high"), (self._beside, "shop-beside")):
            end.add_class(name)
        self.knob, self._travel = None, w.HBox()
        self._travel.add_class("shop-travel")
        super().__init__([self.box, self._beside, self._travel], layout=self._travel.layout)
        self.add_class("shop-row")
        self.show("both")
        self.box.observe(self._typed, "value")

    @property
    def grid(self):
        """Unit, ends and step as shown now."""
        return self._grids["si" if self._system == "si" else "us"]

    @property
    def value(self):
        """The value in SI."""
        return self._si

    @value.setter
    def value(self, value):
        low, high = self.ends
        if not low <= value <= high:
            raise ValueError(f"{self.label}: {value:g} {self._inside} given; must be between {low:g} and {high:g}")
        self._si = float(value)
        self._place()
        self.changed()

    def show(self, system):
        """Turn label, ends and numbers to another system; the value stays."""
        if system == self._system:
            return
        self._system = system
        g, unit, ends = self.grid, sign(self.grid.unit), self._typed_ends()
        self._moving = True
        try:
            with self.box.hold_sync(), self.box.hold_trait_notifications():
                self.box.step, self.box.min, self.box.max, self.box.value = g.step, *ends, self._number()
        finally:
            self._moving = False
        self.box.description = f"{self.label} ({unit})" if unit else self.label
        self._low.value, self._high.value = (html.escape(f"{end:g}") for end in (g.low, g.high))
        self._new_knob()
        self._place()

    def _new_knob(self):
        """A knob for these ends: one whose ends are changed under it reports a place of its own."""
        old, g = self.knob, self.grid
        self.knob = w.FloatSlider(
            value=self._nearest(self._number()),
            min=g.low,
            max=g.high,
            step=g.step,
            readout=False,
            layout={"flex": "1 1 120px", "width": "auto", "min_width": "90px"},
        )
        self.knob.observe(self._dragged, "value")
        self._travel.children = (self._low, self.knob, self._high)
        if old is not None:
            old.unobserve_all()
            old.close()

    def _number(self):
        """The value as the box shows it."""
        return round(scale.convert(self._si, self._inside, self.grid.unit), self.grid.decimals)

    def _typed_ends(self):
        """Ends of the box: the valid range itself, to the decimals shown."""
        g, power = self.grid, 10.0**self.grid.decimals
        low, high = (scale.convert(end, self._inside, g.unit) for end in self.ends)
        return math.ceil(low * power - 1e-6) / power, math.floor(high * power + 1e-6) / power

    def _place(self):
        """Put knob and box where the SI value is, without being told of it again."""
        number = self._number()
        self._moving = True
        try:
            self.box.value = number
            self.knob.value = self._nearest(number)
        finally:
            self._moving = False
        self._beside.value = html.escape(self._other())

    def _nearest(self, number):
        """The step of the knob nearest to a number: off its steps it would report another value back."""
        g = self.grid
        return round(min(max(g.low + round((number - g.low) / g.step) * g.step, g.low), g.high), 9)

    def _other(self):
        us, si = self._grids["us"], self._grids["si"]
        if self._system != "both" or us.unit == si.unit:
            return ""
        number = scale.convert(self._si, self._inside, si.unit) + 1e-9  # halves go up, as a person rounds
        return f"{number:.{max(si.decimals - 1, 0)}f} {sign(si.unit)}"

    def _dragged(self, change):
        # the page may send the knob's own place back; that must not round what was typed
        if abs(change["new"] - self._nearest(self._number())) > 1e-3 * self.grid.step:
            self._typed(change)

    def _typed(self, change):
        if self._moving:
            return
        low, high = self.ends
        self.value = min(max(scale.convert(change["new"], self.grid.unit, self._inside), low), high)

    def plain(self):
        number = f"{self.box.value:g} {sign(self.grid.unit)}".strip()
        beside = self._other()
        return f"{self.label} {number}" + (f" ({beside})" if beside else "")
