"""Which questions were answered right, in one small file of the student's own; nothing needs it."""

import json
import os
import tempfile
from pathlib import Path

from shop_calc.lesson.banks import banked_lessons
from shop_calc.lesson.draw import clean_code
from shop_calc.lesson.said import Said
from shop_calc.lesson.table import Table

FOLDER = "SHOP_CALC_WORK"  # names the folder where what a student made is kept
FILE = "practice.json"
_FORMAT = 1
_told = set()  # folders that could not be written; said once while a lesson is open


def work_folder():
    """Find the folder where what a student made is kept.

    Returns
    -------
    pathlib.Path
        The one named by SHOP_CALC_WORK, else a folder of ours among the user's own data; it need not exist [-].

    Examples
    --------
    >>> from unittest.mock import patch
    >>> with patch.dict(os.environ, {"SHOP_CALC_WORK": "made"}):
    ...     work_folder().name
    'made'

    References
    ----------
    The library platformdirs, for where each system keeps such data.
    """
    named = os.environ.get(FOLDER, "").strip()
    if named:
        return Path(named).expanduser()
    import platformdirs  # only where nothing is named

    return platformdirs.user_data_path("shop-calc", appauthor=False)


def right_answers(code=None):
    """Read which questions were answered right.

    Parameters
    ----------
    code : str, optional
        Student code; without one those with the printed numbers [-].

    Returns
    -------
    dict of str to list of str
        Ids of questions by the name of their lesson; empty when nothing is kept or it cannot be read [-].

    Examples
    --------
    >>> from unittest.mock import patch
    >>> with patch.dict(os.environ, {"SHOP_CALC_WORK": "/no/such/folder"}):
    ...     right_answers()
    {}

    References
    ----------
    Common practice, no source.
    """
    kept = _read().get(clean_code(code), {})
    if not isinstance(kept, dict):
        return {}
    return {str(name): [id for id in ids if isinstance(id, str)] for name, ids in kept.items() if isinstance(ids, list)}


def _read():
    try:
        kept = json.loads((work_folder() / FILE).read_text(encoding="utf-8"))
        right = kept["right"]
    except (OSError, ValueError, KeyError, TypeError, RuntimeError, RecursionError):
        return {}  # no file, or one that somebody else wrote: as if nothing were kept
    return right if isinstance(right, dict) else {}


def keep(name, id, code=None):
    """Note a question as answered right.

    Parameters
    ----------
    name : str
        Name of the lesson's questions [-].
    id : str
        The question [-].
    code : str, optional
        Student code [-].

    Returns
    -------
    str
        Empty; one gentle line, the first time that it cannot be noted [-].

    Examples
    --------
    >>> from unittest.mock import patch
    >>> with tempfile.TemporaryDirectory() as folder, patch.dict(os.environ, {"SHOP_CALC_WORK": folder}):
    ...     keep("start_here", "tile"), right_answers()
    ('', {'start_here': ['tile']})

    References
    ----------
    Common practice, no source.
    """
    kept, own = right_answers(code), clean_code(code)
    if id in kept.get(name, []):
        return ""
    kept[name] = sorted({*kept.get(name, []), id})
    try:
        _write({"format": _FORMAT, "right": {**_read(), own: kept}})
    except (OSError, ValueError, RuntimeError):
        return _gently()
    return ""


def _gently():
    try:
        where = str(work_folder())
    except RuntimeError:  # nobody is at home on this machine
        where = ""
    if where in _told:
        return ""
    _told.add(where)
    return "(It could not be noted for the view of your progress; nothing else depends on that.)"


def _write(content):
    """Whole or not at all: a crash, or a second lesson that writes at the same time, leaves a file that can be read."""
    folder = work_folder()
    folder.mkdir(parents=True, exist_ok=True)
    handle, part = tempfile.mkstemp(prefix=FILE, suffix=".part", dir=folder)
    try:
        with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as file:
            json.dump(content, file, indent=1, sort_keys=True, ensure_ascii=True)
        os.replace(part, folder / FILE)
    except BaseException:
        Path(part).unlink(missing_ok=True)
        raise


def progress(code=None, folder=None):
    """Show which questions were answered right, lesson by lesson.

    Parameters
    ----------
    code : str, optional
        Student code; without one the answers with the printed numbers [-].
    folder : str or Path, optional
        Where the lessons lie; those of the package if left out [-].

    Returns
    -------
    Table or Said
        Shown by the notebook; in a fresh folder the same on every machine [-].

    Examples
    --------
    >>> from unittest.mock import patch
    >>> with patch.dict(os.environ, {"SHOP_CALC_WORK": "/no/such/folder"}):
    ...     progress()
    Nothing is kept yet. A right answer in a lesson is noted, and shows here.

    References
    ----------
    Common practice, no source.
    """
    kept = right_answers(code)
    if not kept:
        return Said("Nothing is kept yet. A right answer in a lesson is noted, and shows here.")
    rows = tuple(_row(each, kept.get(each.name, [])) for each in banked_lessons(folder))
    caption = f"Kept in {work_folder() / FILE}; delete it whenever you like."
    return Table(("", "lesson", "", "right", "still open"), rows, caption)


def _row(each, kept):
    """One lesson; what is still open is named once it was begun."""
    still = [question.id.replace("_", " ") for question in each.questions if question.id not in kept]
    count = len(each.questions)
    done = count - len(still)
    names = ", ".join(still[:3]) + (" …" if len(still) > 3 else "") if done else ""
    return (each.lesson.number, each.lesson.question, "●" * done + "○" * len(still), f"{done} of {count}", names)
