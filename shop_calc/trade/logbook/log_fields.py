"""The columns of the shop log, and one row of it."""

from dataclasses import dataclass, field
from datetime import datetime

EVENTS = ("water_in", "placed", "room", "check", "action")
LAYERS = ("face", "base")
COLUMNS = (
    "pour_id", "time_iso", "event", "layer", "recipe", "mix_temp_c", "air_temp_c", "rh_fraction", "wind_m_s",
    "surface_temp_c", "cue", "pr_kpa", "print_mm", "thickness_mm", "note",
)  # fmt: skip
REQUIRED = ("pour_id", "time_iso", "event")

# Number columns: field of Event, lowest, highest, factor from the file to the field, unit and hint for messages.
NUMBERS = {
    "mix_temp_c": ("mix_temp_c", 0.0, 40.0, 1.0, "°C"),
    "air_temp_c": ("air_temp_c", -5.0, 50.0, 1.0, "°C"),
    "rh_fraction": ("rh_fraction", 0.0, 1.0, 1.0, "(50 % is 0.5)"),
    "wind_m_s": ("wind_m_s", 0.0, 17.0, 1.0, "m/s"),
    "surface_temp_c": ("surface_temp_c", -5.0, 60.0, 1.0, "°C"),
    "pr_kpa": ("resistance_pa", 0.0, 60_000.0, 1000.0, "kPa"),
    "print_mm": ("depth_m", 0.0, 100.0, 0.001, "mm"),
    "thickness_mm": ("thickness_m", 5.0, 500.0, 0.001, "mm"),
}


@dataclass(frozen=True)
class Event:
    """One row of the log.

    Parameters
    ----------
    pour_id : str
        Which pour; the same words on all its rows [-].
    time : datetime
        The clock on the wall; with its offset from UTC where the clocks change in the night [-].
    event : str
        water_in, placed, room, check or action [-].
    layer : str
        face, base, or empty when it concerns both [-].
    recipe : str
        Name of the recipe; at least on the first row of a pour [-].
    mix_temp_c : float or None
        Temperature of the mix when it leaves the mixer [°C].
    air_temp_c, rh_fraction, wind_m_s : float or None
        The room [°C, -, m/s].
    surface_temp_c : float or None
        Temperature of the surface [°C].
    cue : str
        A stage and whether its cue was there: "strip seen", "first_steel not yet" [-].
    resistance_pa : float or None
        Rod reading; kPa in the file [Pa].
    depth_m : float or None
        Depth of the thumb print; mm in the file [m].
    thickness_m : float or None
        Thickness of the piece, and of its side cup; mm in the file [m].
    note : str
        Anything in words, on one line [-].
    line : int
        Line of the file it was read from; 0 for a row not yet written [-].

    Examples
    --------
    >>> Event("bench 1", datetime(2026, 5, 4, 8), "water_in", recipe="demo mortar", mix_temp_c=16.0).layer
    ''

    References
    ----------
    Common practice, no source.
    """

    pour_id: str
    time: datetime
    event: str
    layer: str = ""
    recipe: str = ""
    mix_temp_c: float | None = None
    air_temp_c: float | None = None
    rh_fraction: float | None = None
    wind_m_s: float | None = None
    surface_temp_c: float | None = None
    cue: str = ""
    resistance_pa: float | None = None
    depth_m: float | None = None
    thickness_m: float | None = None
    note: str = ""
    line: int = field(default=0, compare=False)


@dataclass(frozen=True)
class LogProblem:
    """What is wrong with one cell, or with one row.

    Parameters
    ----------
    line : int
        Line of the file, counted from 1 [-].
    column : str
        Name of the column, "row" when the whole row is meant [-].
    reason : str
        What was given and what it must be [-].

    Examples
    --------
    >>> str(LogProblem(7, "pr_kpa", "'soft' given; it must be a number"))
    "line 7, pr_kpa: 'soft' given; it must be a number"

    References
    ----------
    Common practice, no source.
    """

    line: int
    column: str
    reason: str

    def __str__(self):
        return f"line {self.line}, {self.column}: {self.reason}"
