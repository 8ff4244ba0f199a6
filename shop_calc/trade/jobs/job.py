"""The job file: read from disk or from text, and the demo jobs that come with the package."""

import tomllib
from dataclasses import replace
from pathlib import Path

from shop_calc import defaults
from shop_calc.trade.jobs.job_check import Job, check_job
from shop_calc.trade.jobs.toml_slips import toml_words
from shop_calc.trade.problems import Collector

__all__ = ["Job", "check_job", "demo_job", "demo_jobs", "parse_job", "read_job"]

LARGEST_FILE = 200_000  # bytes; the longest job of ours has 2,000


def demo_jobs():
    """List the demo jobs that come with the workbook; all of them invented.

    Returns
    -------
    dict of str to pathlib.Path
        Files by short name [-].

    Examples
    --------
    >>> "garden_bench_top" in demo_jobs()
    True

    References
    ----------
    Common practice, no source.
    """
    return {path.stem: path for path in sorted((defaults.data_folder() / "jobs").glob("*.toml"))}


def demo_job(name):
    """Find one demo job.

    Parameters
    ----------
    name : str
        Short name, the file name without its ending [-].

    Returns
    -------
    pathlib.Path
        The file [-].

    Raises
    ------
    ValueError
        When there is no such job; the message lists them.

    Examples
    --------
    >>> demo_job("garden_bench_top").name
    'garden_bench_top.toml'

    References
    ----------
    Common practice, no source.
    """
    jobs = demo_jobs()
    if name not in jobs:
        raise ValueError(f"demo job: {name!r} given; it must be one of {', '.join(jobs)}")
    return jobs[name]


def read_job(path):
    """Read a job file.

    Parameters
    ----------
    path : str or path-like
        The TOML file [-].

    Returns
    -------
    Job
        The checked job [SI].

    Raises
    ------
    Problems
        With one line for each entry that is missing, unknown, unreadable or out of range.

    Examples
    --------
    >>> read_job(demo_job("garden_bench_top")).name
    'Garden bench top'

    References
    ----------
    Form of the file: data/README.md. TOML 1.0.
    """
    path = Path(path)
    found = Collector()
    try:
        if path.exists() and not (path.is_file() or path.is_dir()):
            found.say(f"job file: {path} given; that is a device or a pipe, it must be a .toml file")
            found.raise_if_any()
        if path.stat().st_size > LARGEST_FILE:
            found.add(str(path.name), f"{path.stat().st_size:,} bytes", f"at most {LARGEST_FILE:,} bytes, a job file")
            found.raise_if_any()
        text = path.read_text(encoding="utf-8-sig")
    except FileNotFoundError:
        found.say(f"job file: {path} given; there is no such file")
    except IsADirectoryError:
        found.say(f"job file: {path} given; that is a folder, it must be a .toml file")
    except UnicodeDecodeError:
        found.say(f"job file: {path.name} given; it must be plain text saved as UTF-8")
    except OSError as error:
        found.say(f"job file: {path} given; it cannot be read ({error.strerror})")
    found.raise_if_any()
    return replace(parse_job(text), folder=path.parent)


def parse_job(text):
    """Read a job from TOML text.

    Parameters
    ----------
    text : str
        The text of a job file [-].

    Returns
    -------
    Job
        The checked job [SI].

    Raises
    ------
    Problems
        With one line for each problem.

    Examples
    --------
    >>> parse_job(demo_job("garden_bench_top").read_text(encoding="utf-8")).day["hands"]
    2.0

    References
    ----------
    Form of the file: data/README.md. TOML 1.0.
    """
    found = Collector()
    try:
        entries = tomllib.loads(text)
    except (tomllib.TOMLDecodeError, RecursionError, ValueError) as error:
        found.say(toml_words(error, text))
        found.raise_if_any()
    return check_job(entries)
