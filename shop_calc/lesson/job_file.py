"""Jobs of the student's own: kept in their folder as job files, and found again."""

import re
import unicodedata

from shop_calc.lesson.progress import work_folder
from shop_calc.lesson.sheet.save import write_whole
from shop_calc.trade.jobs.job_text import job_text

LONGEST_FILE_NAME = 60  # characters; every system takes that many
_TAKEN = re.compile(r"con|prn|aux|nul|com\d|lpt\d")  # names that one system keeps for its devices


def file_name(name):
    """Make the name of a file from the name of a job.

    Parameters
    ----------
    name : str
        What the piece is called [-].

    Returns
    -------
    str
        Small letters, digits and underscores, ending in .toml [-].

    Examples
    --------
    >>> file_name("Garden bench, café 2"), file_name("../.."), file_name("con")
    ('garden_bench_cafe_2.toml', 'job.toml', 'con_job.toml')

    References
    ----------
    Common practice, no source.
    """
    plain = unicodedata.normalize("NFKD", str(name)).encode("ascii", "ignore").decode("ascii").lower()
    stem = re.sub(r"[^a-z0-9]+", "_", plain).strip("_")[:LONGEST_FILE_NAME].strip("_") or "job"
    return f"{stem}_job.toml" if _TAKEN.fullmatch(stem) else f"{stem}.toml"


def save_job(entries, *, replace=False):
    """Keep a job in the student's folder: whole or not at all, and never over another file without being told.

    Parameters
    ----------
    entries : mapping
        Sections and entries as typed, like `Job.entries` [as typed].
    replace : bool
        True to write over a file that is there [-].

    Returns
    -------
    pathlib.Path
        The file, named after the job, in the folder of `shop_calc.lesson.progress.work_folder` [-].

    Raises
    ------
    ValueError
        When the job is none, the file is there, or it cannot be written; then no file has changed.

    Examples
    --------
    >>> import os, tempfile
    >>> from unittest.mock import patch
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> job = read_job(demo_job("garden_bench_top"))
    >>> with tempfile.TemporaryDirectory() as folder, patch.dict(os.environ, {"SHOP_CALC_WORK": folder}):
    ...     read_job(save_job(job.entries)).entries == job.entries
    True

    References
    ----------
    Form of the file: data/README.md.
    """
    text = job_text(entries)
    try:
        folder = work_folder()
        folder.mkdir(parents=True, exist_ok=True)
    except (OSError, RuntimeError) as error:
        raise ValueError(f"job file: your folder cannot be made ({error}); nothing was written") from error
    path = folder / file_name(entries["name"])
    if path.exists() and not replace:
        raise ValueError(f"job file: {path} is there already and was left as it is")
    return write_whole(path, text.encode("utf-8"), replace=replace, what="job file")


def own_jobs():
    """List the job files in the student's folder.

    Returns
    -------
    dict of str to pathlib.Path
        Files by short name; empty when there are none or the folder cannot be read [-].

    Examples
    --------
    >>> import os
    >>> from unittest.mock import patch
    >>> with patch.dict(os.environ, {"SHOP_CALC_WORK": "/no/such/folder"}):
    ...     own_jobs()
    {}

    References
    ----------
    Common practice, no source.
    """
    try:
        return {path.stem: path for path in sorted(work_folder().glob("*.toml")) if path.is_file()}
    except (OSError, RuntimeError):
        return {}
