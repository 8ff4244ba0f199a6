"""One switch for US, SI or both, which any number of blocks follow."""

import ipywidgets as w
import traitlets as t


class UnitSwitch(t.HasTraits):
    """The units in which a page speaks.

    Blocks given the same switch turn together. It changes only what is shown: values stay SI inside.

    Parameters
    ----------
    system : str
        "us", "si" or "both"; in "both" the entries are typed in US units and the SI value stands beside [-].

    Examples
    --------
    >>> units = UnitSwitch("si")
    >>> units.control.value
    'si'
    """

    system = t.Enum(("us", "si", "both"), default_value="both")

    def __init__(self, system="both"):
        super().__init__(system=system)
        self.control = w.ToggleButtons(
            options=[("US", "us"), ("SI", "si"), ("both", "both")],
            value=system,
            description="Units",
            tooltips=["feet, inches, pounds, °F", "metres, kilograms, °C", "US entries with SI beside"],
            style={"button_width": "auto", "description_width": "auto"},
        )
        self.control.add_class("shop-switch")
        t.link((self, "system"), (self.control, "value"))
