"""The lessons that lie beside a notebook: number, question, time, with a link to each."""

import html
import json
import re
from dataclasses import dataclass
from pathlib import Path

from shop_calc.lesson.outline import source
from shop_calc.lesson.table import Table

# A learner's own copies and notes have other names and are not listed.
_NAME = re.compile(r"\d\d_[a-z0-9_]+\.ipynb|for_instructors\.ipynb")
_TITLE = re.compile(r"^# +(?:\d+\. +)?(.+?)\s*$", re.MULTILINE)
_PART = r"\*\*{name}\*\*:? *(.+?)(?=\s*·\s*\*\*|\s*\*\*|\n\n|\Z)"


@dataclass(frozen=True)
class Lesson:
    """One lesson as its first cells describe it.

    Parameters
    ----------
    file : str
        Name of the file [-].
    question : str
        Its title, the question of the shop [-].
    time, bench : str
        How long it takes, and what lies on the bench; empty where it does not say [-].

    Examples
    --------
    >>> Lesson("04_stiffening_timeline.ipynb", "When may the steel touch it?", "45 minutes", "").number
    '04'

    References
    ----------
    Common practice, no source.
    """

    file: str
    question: str
    time: str
    bench: str

    @property
    def number(self):
        """The two digits that its name starts with; a dash for a page without."""
        return self.file[:2] if self.file[:2].isdigit() else "–"


@dataclass(frozen=True, repr=False)
class Contents(Table):
    """A table of lessons whose questions are links.

    Parameters
    ----------
    header, rows, caption : tuple of str, tuple of tuple of str, str
        As in `Table`; the question stands in the second column [-].
    files : tuple of str
        Where each row leads [-].

    Examples
    --------
    >>> Contents(("", "question"), (("04", "When?"),), files=("04_x.ipynb",)).cells(0)[1]
    '<a href="04_x.ipynb">When?</a>'

    References
    ----------
    Common practice, no source.
    """

    files: tuple = ()

    def cells(self, row):
        """The cells of one row, the question as a link."""
        number, question, *others = super().cells(row)
        return [number, f'<a href="{html.escape(self.files[row])}">{question}</a>', *others]


def _part(text, name):
    found = re.search(_PART.format(name=name), text, re.DOTALL)
    return _plain(" ".join(found.group(1).split())).rstrip(".") if found else ""


def _plain(text):
    """Prose without the signs that make it slanted, code or a link."""
    return re.sub(r"[*`]", "", re.sub(r"\[([^\]]*)\]\([^)]*\)", r"\1", text))


def read_lesson(path):
    """Read what a lesson says of itself in the cells before its first section.

    Parameters
    ----------
    path : Path
        A notebook [-].

    Returns
    -------
    Lesson or None
        None for a file that is no notebook with a title [-].

    Examples
    --------
    >>> read_lesson(Path("nowhere.ipynb")) is None
    True

    References
    ----------
    Common practice, no source.
    """
    try:
        cells = json.loads(Path(path).read_text(encoding="utf-8"))["cells"]
        prose = "\n\n".join(source(cell) for cell in cells if cell["cell_type"] == "markdown")
    except (OSError, ValueError, KeyError, TypeError):
        return None
    title = _TITLE.search(prose)
    if title is None:
        return None
    opening = prose.split("\n## ")[0]
    return Lesson(Path(path).name, title.group(1), _part(opening, "Time"), _part(opening, "On the bench"))


def lessons(folder="."):
    """Find the lessons of a folder.

    Parameters
    ----------
    folder : str or Path
        Where to look; a notebook's own folder unless told otherwise [-].

    Returns
    -------
    tuple of Lesson
        By number, the page for instructors last [-].

    Examples
    --------
    >>> lessons("/no/such/folder")
    ()

    References
    ----------
    Common practice, no source.
    """
    paths = [path for path in sorted(Path(folder).glob("*.ipynb")) if _NAME.fullmatch(path.name)]
    return tuple(filter(None, map(read_lesson, paths)))


def lesson_table(folder="."):
    """List the lessons of a folder with their questions, times and what lies on the bench.

    Parameters
    ----------
    folder : str or Path
        Where to look; a notebook's own folder unless told otherwise [-].

    Returns
    -------
    Contents
        Shown by the notebook; only what is there is listed [-].

    Examples
    --------
    >>> lesson_table("/no/such/folder").rows
    ()

    References
    ----------
    Common practice, no source.
    """
    found = lessons(folder)
    rows = tuple(
        (each.number, each.question, *((each.time, each.bench) if each.number != "–" else ("", ""))) for each in found
    )  # the page for instructors speaks of the others' times and benches, and has none of its own
    return Contents(("", "the question", "time", "on the bench"), rows, files=tuple(each.file for each in found))
