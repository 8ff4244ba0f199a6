"""The shop log inside a plan: which log, what it changes, and what is said of it."""

from dataclasses import dataclass, replace
from pathlib import Path

from shop_calc.trade.advice import Advice
from shop_calc.trade.logbook.calibrate import Calibration, calibrate
from shop_calc.trade.logbook.shop_log import ShopLog, read_log

_SHOWN = 3  # bad rows told one by one
PRACTICE = "practice pour"  # how the note of a rehearsed pour's first row begins


@dataclass(frozen=True)
class LogUse:
    """What a log gives to one plan.

    Parameters
    ----------
    name : str
        Name of the file, or "the shop log" [-].
    log : ShopLog
        The log as it was read [as its fields].
    face, base : Calibration
        What it says of each layer [as its fields].
    rehearsed_count : int
        Practice pours in it, which are left out [-].

    Examples
    --------
    >>> use_log(ShopLog((), (), (), ()), "demo mortar", 0.0381).inputs_bands
    (None, None)

    References
    ----------
    Common practice, no source.
    """

    name: str
    log: ShopLog
    face: Calibration
    base: Calibration
    rehearsed_count: int = 0

    @property
    def inputs_bands(self):
        """Bands of the day and of its base, as DayInputs takes them; a layer without looks goes with the other [SI]."""
        face, base = (part.bands if part.pour_count else None for part in (self.face, self.base))
        if face is None or base is None:
            return face or base, None
        return face, base

    @property
    def base_initial_set_h(self):
        """Initial set of the base as the log has it; None where it has no look to go by [h]."""
        face, base = self.inputs_bands
        bands = base or face
        return None if bands is None else bands["set_time_initial"][1]


def find_log(job, log=None):
    """Find the log of a job: the one given, or the one its file names.

    Parameters
    ----------
    job : Job
        The job; its file may name a log below its own folder [-].
    log : ShopLog or str or path-like, optional
        A log, or the file of one, given on the command line [-].

    Returns
    -------
    (str, ShopLog) or None
        Name and log; None when there is none [-].

    Raises
    ------
    ValueError
        When the file is not there, cannot be read, or does not lie below the folder of the job.

    Examples
    --------
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> find_log(read_job(demo_job("garden_bench_top"))) is None
    True

    References
    ----------
    Form of the job file: data/README.md.
    """
    if isinstance(log, ShopLog):
        return "the shop log", log
    if log is not None:
        return Path(log).name, read_log(log)
    given = job.log["file"]
    if given is None:
        return None
    if job.folder is None:
        raise ValueError(f"log.file: {given!r} given; the job was not read from a file, so give the log itself")
    folder = Path(job.folder).resolve()
    path = (folder / given).resolve()
    if not path.is_relative_to(folder):
        raise ValueError(f"log.file: {given!r} given; it must lie below the folder of the job file")
    if not path.is_file():
        raise ValueError(f"log.file: {given!r} given; there is no such file below the folder of the job file")
    return path.name, read_log(path)


def use_log(log, recipe, thickness_m, name="the shop log"):
    """Fit a log for one plan.

    Parameters
    ----------
    log : ShopLog
        The log [as its fields].
    recipe : str
        Name of the recipe of the job [-].
    thickness_m : float
        Thickness of the piece [m].
    name : str
        What to call the log [-].

    Returns
    -------
    LogUse
        What it says of both layers [as its fields].

    Examples
    --------
    >>> from shop_calc import defaults
    >>> log = read_log(defaults.data_folder() / "logs" / "first_pour.csv")
    >>> use_log(log, "demo mortar", 0.0381).face.pour_count
    1

    References
    ----------
    As shop_calc.trade.logbook.calibrate.
    """
    rehearsed = {pour.pour_id for pour in log.pours if pour.events[0].note.startswith(PRACTICE)}
    if rehearsed:  # the model's own pours would teach the model itself
        log = replace(
            log,
            events=tuple(event for event in log.events if event.pour_id not in rehearsed),
            pours=tuple(pour for pour in log.pours if pour.pour_id not in rehearsed),
        )
    face, base = (calibrate(log, recipe, layer, thickness_m=thickness_m) for layer in ("face", "base"))
    return LogUse(name, log, face, base, len(rehearsed))


def with_log(inputs, use):
    """Give the inputs of a day the bands of a log.

    Parameters
    ----------
    inputs : DayInputs
        Inputs on the defaults [as its fields].
    use : LogUse
        What the log says [as its fields].

    Returns
    -------
    DayInputs
        The same with the log's bands [as its fields].

    Examples
    --------
    >>> from shop_calc.trade.timeline.day import DayInputs
    >>> from shop_calc.trade.timeline.room import steady_room
    >>> from datetime import datetime
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> with_log(inputs, use_log(ShopLog((), (), (), ()), "demo mortar", 0.0381)).bands is None
    True

    References
    ----------
    Common practice, no source.
    """
    bands, base_bands = use.inputs_bands
    return replace(inputs, bands=bands, base_bands=base_bands)


def log_advice(use, before, after):
    """Say what a log changed, and what is wrong with it.

    Parameters
    ----------
    use : LogUse
        What the log says [as its fields].
    before, after : Day
        The day on the defaults, and with the log [h].

    Returns
    -------
    tuple of Advice
        What changed, and rows to mend [-].

    Examples
    --------
    >>> from datetime import datetime
    >>> from shop_calc import defaults
    >>> from shop_calc.trade.timeline.day import DayInputs, plan_day
    >>> from shop_calc.trade.timeline.room import steady_room
    >>> inputs = DayInputs(datetime(2026, 5, 4, 8), steady_room(21.0, 0.5, 0.0), 16.0, 0.0381, 0.03175, 0.58)
    >>> use = use_log(read_log(defaults.data_folder() / "logs" / "first_pour.csv"), "demo mortar", 0.0381, "log.csv")
    >>> log_advice(use, plan_day(inputs), plan_day(with_log(inputs, use)))[0].text
    'log.csv: 1 pour of demo mortar. First steel likely from 10:47; by the defaults 11:02.'

    References
    ----------
    Common practice, no source.
    """
    if not use.face.pour_count and not use.base.pour_count:
        lines = [
            Advice(
                "note", "log", f"{use.name}: no look at {use.face.recipe} to go by; the plan stands on its defaults.",
                _reasons(use), "derived", "the shop log",
            )
        ]  # fmt: skip
    else:
        lines = [_changed(use, before, after)]
    if use.rehearsed_count:
        lines.append(
            Advice(
                "note", "log", f"{use.name}: {_count(use.rehearsed_count, 'practice pour')} left out.",
                "A rehearsed pour comes from this model: it can teach nothing about mortar.", "derived",
                "note of its first row",
            )
        )  # fmt: skip
    if use.log.problems:
        lines.append(
            Advice(
                "act", "log", f"{use.name}: {_count(len(use.log.problems), 'cell')} to mend; those rows are not used.",
                _some(use.log.problems), "derived", "form of the shop log in data/README.md",
            )
        )  # fmt: skip
    misfits = (*use.face.misfits, *use.base.misfits)
    if misfits:
        lines.append(
            Advice(
                "act", "log", f"{use.name}: {_count(len(misfits), 'row')} that hardly fit the others; check them.",
                _some(misfits), "derived", "fit of the shop log",
            )
        )  # fmt: skip
    return tuple(lines)


def _changed(use, before, after):
    old, new = (day.stage("first_steel") for day in (before, after))
    pours = max(use.face.pour_count, use.base.pour_count)
    lent = ""
    if not (use.face.pour_count and use.base.pour_count):
        has, lacks = ("face", "base") if use.face.pour_count else ("base", "face")
        lent = f" The {lacks} has no looks of its own and goes with the {has}."
    said = use.face if use.face.pour_count else use.base
    return Advice(
        "note", "log",
        f"{use.name}: {_count(pours, 'pour')} of {said.recipe}. First steel likely from "
        f"{after.clock(new.likely_from_h):%H:%M}; by the defaults {before.clock(old.likely_from_h):%H:%M}.",
        f"Window from look to over {(new.over_by_h - new.look_from_h) * 60:.0f} min, by the defaults "
        f"{(old.over_by_h - old.look_from_h) * 60:.0f}. {said.trust}{lent}", "derived", "fit of the shop log",
    )  # fmt: skip


def _reasons(use):
    left = "; ".join(f"{name}: {reason}" for name, reason in use.face.left_out[:_SHOWN])
    return left or f"No pour in it has the recipe {use.face.recipe!r} on its first row."


def _count(number, word):
    return f"{number} {word}{'' if number == 1 else 's'}"


def _some(lines):
    more = f"; and {len(lines) - _SHOWN} more" if len(lines) > _SHOWN else ""
    return "; ".join(str(line) for line in lines[:_SHOWN]) + more
