"""Put the sheet on the disk: whole or not at all, and never over another file without being told."""

import os
import secrets
from contextlib import suppress
from pathlib import Path

from shop_calc.lesson.sheet.build import PAPERS, sheet_html
from shop_calc.lesson.sheet.printing import find_browser, print_pdf

ENDINGS = (".html", ".htm", ".pdf")


def save_sheet(plan, path, *, replace=False, paper=""):
    """Write the shop sheet of a plan to a file.

    Parameters
    ----------
    plan : Plan
        The plan [SI].
    path : str or path-like
        A name that ends in .html, or in .pdf where a browser is there to print it [-].
    replace : bool
        True to write over a file that is there [-].
    paper : str
        letter or a4; nothing leaves an HTML file to the printer and makes a PDF letter [-].

    Returns
    -------
    pathlib.Path
        Where it was written [-].

    Raises
    ------
    ValueError
        When the name, the folder, the disk or the browser does not allow it; then no file has changed.

    Examples
    --------
    >>> import tempfile
    >>> from shop_calc.trade.jobs.job import demo_job, read_job
    >>> from shop_calc.trade.plan import make_plan
    >>> plan = make_plan(read_job(demo_job("garden_bench_top")))
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     save_sheet(plan, Path(folder) / "bench.html").name
    'bench.html'

    References
    ----------
    Common practice, no source.
    """
    path = Path(path)
    ending = path.suffix.lower()
    if ending not in ENDINGS:
        raise ValueError(f"sheet: {path} given; the name must end in .html or .pdf")
    check_place(path, replace)  # before a browser is started for nothing
    if ending != ".pdf":
        return write_whole(path, sheet_html(plan, paper).encode("utf-8"), replace=replace)
    browser = find_browser()
    if browser is None:
        raise ValueError(
            f"sheet: {path} given, and no Chromium, Chrome or Edge was found to print a PDF; write "
            f"{path.with_suffix('.html').name} and print it from any browser"
        )
    page = sheet_html(plan, paper or next(iter(PAPERS)))
    return write_whole(path, print_pdf(page, browser, path.parent), replace=replace)


def check_place(path, replace=False, what="sheet"):
    """Say what is wrong with a place before anything is written there.

    Parameters
    ----------
    path : pathlib.Path
        The file [-].
    replace : bool
        True where it may be there already [-].
    what : str
        What is written, as the message names it [-].

    Raises
    ------
    ValueError
        When the folder is missing, the name is that of a folder, or the file is there.

    Examples
    --------
    >>> check_place(Path("no_such_folder/bench.html"))
    Traceback (most recent call last):
    ...
    ValueError: sheet: no_such_folder/bench.html given; there is no folder no_such_folder, make it first

    References
    ----------
    Common practice, no source.
    """
    try:
        path.lstat()
    except FileNotFoundError:
        pass
    except (OSError, ValueError) as error:  # too long, or a sign that no name has
        raise ValueError(f"{what}: {str(path)[:200]} given; there can be no such file ({_why(error)})") from None
    if path.is_dir():
        raise ValueError(f"{what}: {path} given; that is a folder, it must be a file")
    if not path.parent.is_dir():
        raise ValueError(f"{what}: {path} given; there is no folder {path.parent}, make it first")
    if path.exists() and not replace:
        raise ValueError(f"{what}: {path} is there already and was left as it is; --replace writes over it")


def write_whole(path, data, *, replace=False, what="sheet"):
    """Write a file whole or not at all: beside its place first, then moved there.

    Parameters
    ----------
    path : str or path-like
        The file [-].
    data : bytes
        What goes into it [-].
    replace : bool
        True to write over a file that is there [-].
    what : str
        What is written, as the message names it [-].

    Returns
    -------
    pathlib.Path
        The file [-].

    Raises
    ------
    ValueError
        When it cannot be written; then nothing has changed and nothing is left behind.

    Examples
    --------
    >>> import tempfile
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     write_whole(Path(folder) / "a.txt", b"whole").read_bytes()
    b'whole'

    References
    ----------
    POSIX rename: a reader sees the old file or the new one, never half of one.
    """
    path = Path(path)
    check_place(path, replace, what)
    place = Path(os.path.realpath(path))  # a link stays a link
    beside = place.with_name(f".{place.name[:80]}.{secrets.token_hex(4)}.part")
    flags = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)
    try:
        with open(os.open(beside, flags, 0o666), "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        _move(beside, place, replace)
    except FileExistsError:
        check_place(path, replace, what)  # somebody else was faster
        raise
    except OSError as error:
        raise ValueError(f"{what}: {path} was not written, {_why(error)}; nothing was changed") from error
    finally:
        with suppress(OSError):
            beside.unlink()
    return path


def _move(beside, place, replace):
    if not replace:
        with suppress(NotImplementedError, PermissionError, AttributeError):  # some disks know no links
            os.link(beside, place)  # fails when the file is there, in one step
            return
    os.replace(beside, place)


def _why(error):
    words = getattr(error, "strerror", None) or str(error) or type(error).__name__
    return {"No space left on device": "the disk is full", "Read-only file system": "the disk is read-only",
            "Permission denied": "this folder must not be written to"}.get(words, words)  # fmt: skip
