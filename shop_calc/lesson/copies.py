"""Copy lessons and data out of the package, never over what a student wrote."""

import hashlib
import json
import os
from dataclasses import dataclass
from pathlib import Path

from shop_calc import defaults

RECORD = ".delivered.json"  # what was delivered last time, so that an edit can be told from an old copy
_SKIPPED = {"__pycache__", ".ipynb_checkpoints"}


@dataclass(frozen=True)
class Copied:
    """What happened to each file, by its path in the folder.

    Parameters
    ----------
    new : tuple of str
        Written for the first time [-].
    renewed : tuple of str
        Replaced, because the old copy was as delivered [-].
    kept : tuple of str
        Left alone, because somebody has edited it [-].
    same : tuple of str
        Already as it should be [-].

    Examples
    --------
    >>> Copied(("a.ipynb",), (), (), ()).words()
    '1 new, 0 renewed, 0 kept as you edited them, 0 unchanged'

    References
    ----------
    Common practice, no source.
    """

    new: tuple
    renewed: tuple
    kept: tuple
    same: tuple

    def words(self):
        """Say it in one line."""
        return (
            f"{len(self.new)} new, {len(self.renewed)} renewed, {len(self.kept)} kept as you edited them, "
            f"{len(self.same)} unchanged"
        )


def lessons_folder():
    """Find the lessons: those of the checkout, or the copy inside an installed wheel.

    Returns
    -------
    pathlib.Path
        The folder [-].

    Examples
    --------
    >>> lessons_folder().is_dir()
    True

    References
    ----------
    Common practice, no source.
    """
    data = defaults.data_folder()
    return data.parent / ("workbooks" if data.name == "data" else "_workbooks")


def copy_lessons(folder):
    """Copy all lessons and the data into a folder.

    Parameters
    ----------
    folder : str or path-like
        Where they shall be; it is made when it is not there [-].

    Returns
    -------
    Copied
        What happened to each file [-].

    Raises
    ------
    ValueError
        When the folder is a file, is the package's own, or cannot be written.

    Examples
    --------
    >>> import tempfile
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     first, second = copy_lessons(folder), copy_lessons(folder)
    >>> len(first.new) == len(second.same) > 10
    True

    Notes
    -----
    Lessons go into the folder, data into `data` below it. A file that a student has edited is never touched; one that
    is as it was delivered is renewed.

    References
    ----------
    Common practice, no source.
    """
    folder = Path(folder).expanduser()
    sources = {"": lessons_folder(), "data": defaults.data_folder()}
    if folder.exists() and not folder.is_dir():
        raise ValueError(f"folder: {folder} given; that is a file, it must be a folder")
    resolved = folder.resolve()
    if any(resolved == home.resolve() or home.resolve() in resolved.parents for home in sources.values()):
        raise ValueError(f"folder: {folder} given; that is where the lessons come from, it must be another one")
    try:
        folder.mkdir(parents=True, exist_ok=True)
        return _copy_all(folder, sources)
    except OSError as error:
        raise ValueError(f"folder: {folder} given; it cannot be written ({error.strerror})") from None


def _copy_all(folder, sources):
    delivered = _record(folder)
    happened = {"new": [], "renewed": [], "kept": [], "same": []}
    for below, home in sources.items():
        for source in sorted(path for path in home.rglob("*") if path.is_file()):
            inside = source.relative_to(home)
            if _SKIPPED & set(inside.parts) or source.name.startswith("."):
                continue
            name = (Path(below) / inside).as_posix()
            content = source.read_bytes()
            digest = hashlib.sha256(content).hexdigest()
            target = folder / name
            if target.exists():
                present = hashlib.sha256(target.read_bytes()).hexdigest()
                if present == digest:
                    happened["same"].append(name)
                    delivered[name] = digest
                    continue
                if present != delivered.get(name):
                    happened["kept"].append(name)
                    continue
                happened["renewed"].append(name)
            else:
                happened["new"].append(name)
            _write(target, content)
            delivered[name] = digest
    _write(folder / RECORD, json.dumps(delivered, indent=1, sort_keys=True).encode())
    return Copied(*(tuple(happened[word]) for word in ("new", "renewed", "kept", "same")))


def _record(folder):
    try:
        record = json.loads((folder / RECORD).read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}  # no record: every file that differs counts as edited
    return record if isinstance(record, dict) else {}


def _write(target, content):
    """Whole or not at all: a crash leaves the old file."""
    target.parent.mkdir(parents=True, exist_ok=True)
    part = target.with_name(target.name + ".part")
    part.write_bytes(content)
    os.replace(part, target)
