"""Copy lessons and data out of the package, never over what a student wrote."""

import hashlib
import json
import os
import secrets
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


def named_folder(folder):
    """Find the folder that a person named for files of ours.

    Parameters
    ----------
    folder : str or path-like
        As typed; ~ is the home [-].

    Returns
    -------
    pathlib.Path
        The folder; it need not exist [-].

    Raises
    ------
    ValueError
        When nothing is named, the name cannot be one, or it is that of a file.

    Examples
    --------
    >>> named_folder("course").name
    'course'

    References
    ----------
    Common practice, no source.
    """
    if not str(folder).strip():
        raise ValueError("folder: nothing given; it must be the name of a folder")
    try:
        path = Path(folder).expanduser()
        is_file = path.stat() and not path.is_dir()
    except FileNotFoundError:
        return path
    except (OSError, RuntimeError, ValueError) as error:  # too long, below a file, nobody's home, a sign that no name has
        why = getattr(error, "strerror", None) or str(error)
        raise ValueError(f"folder: {str(folder)[:200]} given; it cannot be written ({why})") from None
    if is_file:
        raise ValueError(f"folder: {folder} given; that is a file, it must be a folder")
    return path


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
    folder = named_folder(folder)
    sources = {"": lessons_folder(), "data": defaults.data_folder()}
    resolved = folder.resolve()
    if any(resolved == home.resolve() or home.resolve() in resolved.parents for home in sources.values()):
        raise ValueError(f"folder: {folder} given; that is where the lessons come from, it must be another one")
    try:
        folder.mkdir(parents=True, exist_ok=True)
        return _copy_all(folder, sources)
    except OSError as error:
        raise ValueError(f"folder: {folder} given; it cannot be written ({error.strerror})") from None


def _copy_all(folder, sources):
    delivered, inside_of = _record(folder), folder.resolve()
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
            if target.is_symlink() or inside_of not in target.resolve().parents:  # a link of theirs leads somewhere else
                happened["kept"].append(name)
                continue
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
            put_whole(target, content)
            delivered[name] = digest
    put_whole(folder / RECORD, json.dumps(delivered, indent=1, sort_keys=True).encode())
    return Copied(*(tuple(happened[word]) for word in ("new", "renewed", "kept", "same")))


def _record(folder):
    try:
        record = json.loads((folder / RECORD).read_text(encoding="utf-8"))
    except (OSError, ValueError, RecursionError):
        return {}  # no record: every file that differs counts as edited
    return record if isinstance(record, dict) else {}


def put_whole(path, content):
    """Write a file whole or not at all, over what is there: a crash leaves the old one.

    Not for the one file that a person names: see `shop_calc.lesson.sheet.save.write_whole`.

    Parameters
    ----------
    path : pathlib.Path
        The file; a link of that name is replaced and not followed [-].
    content : bytes
        What goes into it [-].

    Raises
    ------
    OSError
        When it cannot be written; then nothing is left behind.

    Examples
    --------
    >>> import tempfile
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     put_whole(Path(folder) / "below" / "a.txt", b"whole")
    ...     [path.name for path in Path(folder).rglob("*")]
    ['below', 'a.txt']

    References
    ----------
    POSIX rename: a reader sees the old file or the new one, never half of one.
    """
    path.parent.mkdir(parents=True, exist_ok=True)
    part = path.with_name(f".{path.name[:80]}.{secrets.token_hex(4)}.part")
    try:
        with open(part, "xb") as file:  # never through something that lies there already
            file.write(content)
        os.replace(part, path)
    finally:
        part.unlink(missing_ok=True)
