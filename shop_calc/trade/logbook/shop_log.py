"""The shop log: rows of one file gathered into pours, each with its room, its water and its looks."""

from dataclasses import dataclass
from datetime import datetime

from shop_calc import defaults
from shop_calc.trade.logbook.log_fields import COLUMNS, Event, LogProblem
from shop_calc.trade.logbook.log_read import parse_log, read_rows
from shop_calc.trade.logbook.log_write import append_events
from shop_calc.trade.timeline.look import not_yet, rod_reading, seen, thumb_print
from shop_calc.trade.timeline.room import Room

__all__ = ["COLUMNS", "Event", "LogProblem", "Pour", "ShopLog", "append_events", "parse_log", "pour_looks", "read_log"]

_AIR = {"air_temp_c": "air_temp", "rh_fraction": "humidity", "wind_m_s": "wind"}


@dataclass(frozen=True)
class Pour:
    """One pour of the log.

    Parameters
    ----------
    pour_id : str
        Its name in the log [-].
    recipe : str
        The recipe, as first written on one of its rows; empty when it never is [-].
    water_in : datetime
        First water, the zero of its hours [-].
    events : tuple of Event
        Its rows in order of time [as its fields].
    hours : tuple of float
        Hours of the rows after the first water [h].

    Examples
    --------
    >>> start = datetime(2026, 5, 4, 8)
    >>> events = (Event("b", start, "water_in"), Event("b", start.replace(minute=30), "water_in", "face"))
    >>> gather_pours(events)[0].start_h("face")
    0.5

    References
    ----------
    Common practice, no source.
    """

    pour_id: str
    recipe: str
    water_in: datetime
    events: tuple
    hours: tuple

    def start_h(self, layer):
        """When water met the cement of a layer: the base with its first load, the face with the load named so [h]."""
        found = [
            hour
            for event, hour in zip(self.events, self.hours, strict=True)
            if event.event == "water_in" and event.layer == layer
        ]
        if not found:
            return 0.0
        return found[-1] if layer == "face" else found[0]

    def mix_temp_c(self, layer):
        """Temperature of the mix of a layer, or of the mix if only that was written; None when neither was [°C]."""
        rows = [event for event in self.events if event.mix_temp_c is not None]
        own = [event for event in rows if event.layer == layer] or [event for event in rows if not event.layer]
        return (own or rows)[0].mix_temp_c if rows else None

    @property
    def thickness_m(self):
        """Thickness of the piece and its side cup, as first written; None when it never was [m]."""
        return next((event.thickness_m for event in self.events if event.thickness_m is not None), None)

    def surface(self, layer):
        """Hours and temperatures of the surface as they were read, rising in time [h, °C]."""
        return tuple(
            (hour, event.surface_temp_c)
            for event, hour in zip(self.events, self.hours, strict=True)
            if event.surface_temp_c is not None and event.layer in ("", layer)
        )

    def room(self):
        """The room over the day, or None when no air temperature was written; what is left out stays as it was."""
        last = {name: defaults.si(row) for name, row in _AIR.items()}
        if all(event.air_temp_c is None for event in self.events):
            return None
        rows = {}
        for event, hour in zip(self.events, self.hours, strict=True):
            given = {name: getattr(event, name) for name in _AIR if getattr(event, name) is not None}
            if given:
                last = {**last, **given}
                if rows or "air_temp_c" in given:
                    rows[hour] = last
        columns = ([values[name] for values in rows.values()] for name in _AIR)
        return Room(tuple(rows), *(tuple(column) for column in columns))


@dataclass(frozen=True)
class ShopLog:
    """A log as it was read.

    Parameters
    ----------
    events : tuple of Event
        The good rows, as they stand in the file [as its fields].
    problems : tuple of LogProblem
        Rows that are not used, and why [-].
    remarks : tuple of LogProblem
        What is worth a look, though the row is used [-].
    pours : tuple of Pour
        The pours in the order of their first rows [as its fields].

    Examples
    --------
    >>> ShopLog((), (), (), ()).pours
    ()

    References
    ----------
    Common practice, no source.
    """

    events: tuple
    problems: tuple
    remarks: tuple
    pours: tuple


def read_log(path):
    """Read a shop log.

    Parameters
    ----------
    path : str or path-like
        The CSV file [-].

    Returns
    -------
    ShopLog
        Rows, what is wrong with the others, and the pours [as its fields].

    Raises
    ------
    ValueError
        When there is no such file or it cannot be read at all; a bad row never raises.

    Examples
    --------
    >>> len(read_log(defaults.data_folder() / "logs" / "first_pour.csv").pours)
    1

    References
    ----------
    Form of the file: data/README.md.
    """
    rows = read_rows(path)
    return ShopLog(rows.events, rows.problems, rows.remarks, gather_pours(rows.events))


def gather_pours(events):
    """Gather rows into pours.

    Parameters
    ----------
    events : sequence of Event
        Rows; the first of each pour is its water_in [as its fields].

    Returns
    -------
    tuple of Pour
        In the order of their first rows [as its fields].

    Examples
    --------
    >>> gather_pours((Event("bench", datetime(2026, 5, 4, 8), "water_in", recipe="demo mortar"),))[0].recipe
    'demo mortar'

    References
    ----------
    Common practice, no source.
    """
    by_name = {}
    for event in events:
        by_name.setdefault(event.pour_id, []).append(event)
    pours = []
    for name, rows in by_name.items():
        water_in = rows[0].time
        rows = sorted(rows, key=lambda event: event.time)
        hours = tuple((event.time - water_in).total_seconds() / 3600.0 for event in rows)
        recipe = next((event.recipe for event in rows if event.recipe), "")
        pours.append(Pour(name, recipe, water_in, tuple(rows), hours))
    return tuple(pours)


def pour_looks(pour, layer=None):
    """Give the looks of a pour, ready for re-planning or for a fit.

    Parameters
    ----------
    pour : Pour
        The pour [as its fields].
    layer : str, optional
        Only looks at this layer; a look without a layer is one at the face [-].

    Returns
    -------
    tuple of (Look, Event)
        Each look with the row that it stands in [-].

    Examples
    --------
    >>> start = datetime(2026, 5, 4, 8)
    >>> events = (Event("b", start, "water_in"), Event("b", start.replace(hour=10), "check", cue="strip seen"))
    >>> pour_looks(gather_pours(events)[0])[0][0].at
    2.0

    References
    ----------
    Common practice, no source.
    """
    found = []
    for event, hour in zip(pour.events, pour.hours, strict=True):
        if layer is not None and (event.layer or "face") != layer:
            continue
        found.extend((look, event) for look in _looks(event, hour, layer))
    return tuple(found)


def _looks(event, hour, layer):
    looks = []
    where = event.layer or (layer or "")
    if event.cue:
        stage, _, there = event.cue.partition(" ")
        looks.append((seen if there == "seen" else not_yet)(hour, stage, where))
    if event.resistance_pa is not None:
        looks.append(rod_reading(hour, event.resistance_pa, where or "face"))
    if event.depth_m is not None:
        looks.append(thumb_print(hour, event.depth_m, where or "face"))
    return looks
