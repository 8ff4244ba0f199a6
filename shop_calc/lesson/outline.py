"""How a lesson is built: headings in order, length, habits. `python -m shop_calc.lesson.outline FILE`."""

import ast
import json
import re
import sys
from pathlib import Path

# Second-level headings, in this order; a lesson may have others of its own between them.
HEADINGS = (
    "Guess first",
    "By hand",
    "See it",
    "Move it",
    "Against the book",
    "Where this stops being true",
    "On the bench",
    "Practice",
    "In short",
    "More practice",
)
# Bold words that open a line before the first heading, and in the recap.
OPENING = ("You will be able to", "Before you start", "Time")
RECAP = ("For the shop log", "Next", "Sources")

LIGHT_HEADINGS = ("How a lesson goes", "Try it", "In short")
LIGHT_OPENING = ("You will be able to", "Time")
LIGHT_RECAP = ("Next",)

CELLS, WORDS = (25, 52), (1000, 1800)  # before the closing practice; small steps want cells, the words are the hour
LIGHT_CELLS, LIGHT_WORDS = (8, 45), (250, 1800)
LONGEST_CODE = 12
QUESTIONS = 4  # in "Practice"; the others stand in "More practice"

_HEADING = re.compile(r"^## +(.+?)\s*$", re.MULTILINE)
_WORD = re.compile(r"[^\W_][\w'’./-]*")
_IMAGE = re.compile(r"!\[([^\]]*)\]\(")
_TAG = re.compile(r"<img\b[^>]*>")
_ALT = re.compile(r'\balt="([^"]+)"')


def source(cell):
    """Give the text of a cell.

    Parameters
    ----------
    cell : dict
        A cell of the notebook's JSON [-].

    Returns
    -------
    str
        Its text [-].

    Examples
    --------
    >>> source({"source": ["a\\n", "b"]})
    'a\\nb'

    References
    ----------
    Common practice, no source.
    """
    return "".join(cell["source"])


def sections(cells):
    """Sort cells under the second-level heading that they stand under; "" before the first.

    Parameters
    ----------
    cells : sequence of dict
        Cells of the notebook's JSON [-].

    Returns
    -------
    dict of str to list of dict
        In the order of the page [-].

    Examples
    --------
    >>> prose = ["# Why?", "## By hand"]
    >>> list(sections([{"cell_type": "markdown", "source": text} for text in prose]))
    ['', 'By hand']

    References
    ----------
    Common practice, no source.
    """
    found, name = {"": []}, ""
    for cell in cells:
        if cell["cell_type"] == "markdown":
            for heading in _HEADING.findall(source(cell)):
                name = heading
                found.setdefault(name, [])
        found[name].append(cell)
    return found


def words(cells):
    """Count the words of the prose.

    Parameters
    ----------
    cells : sequence of dict
        Cells of the notebook's JSON [-].

    Returns
    -------
    int
        Words in markdown cells, links and tags left out [-].

    Examples
    --------
    >>> words([{"cell_type": "markdown", "source": "Three [short](https://a.b) words."}])
    3

    References
    ----------
    Common practice, no source.
    """
    text = "\n".join(source(cell) for cell in cells if cell["cell_type"] == "markdown")
    text = re.sub(r"\]\([^)]*\)|<[^>]+>|https?://\S+", " ", text)
    return len(_WORD.findall(text))


def faults(path):
    """Say what a lesson lacks or has too much of.

    Parameters
    ----------
    path : Path
        A lesson; one whose name starts with 00 has the lighter outline [-].

    Returns
    -------
    list of str
        One line a fault; empty for a lesson in order [-].

    Examples
    --------
    >>> faults(Path("nowhere.ipynb"))
    Traceback (most recent call last):
    FileNotFoundError: [Errno 2] No such file or directory: 'nowhere.ipynb'

    References
    ----------
    Common practice, no source.
    """
    path = Path(path)
    cells = json.loads(path.read_text(encoding="utf-8"))["cells"]
    light = path.name.startswith("00")
    parts = sections(cells)
    found = [*_title(cells), *_order(parts, light), *_length(parts, light), *_code(cells), *_pictures(cells)]
    return found if light else [*found, *_guess(parts), *_practice(parts)]


def _title(cells):
    first = source(cells[0]).lstrip().splitlines()[0] if cells else ""
    return [] if re.fullmatch(r"# .*\?", first.strip()) else [f"title: {first!r}; it must be a question"]


def _bold(cells, wanted, where):
    text = "\n".join(source(cell) for cell in cells if cell["cell_type"] == "markdown")
    return [f"{where}: **{words}** is missing" for words in wanted if f"**{words}" not in text]


def _order(parts, light):
    wanted = LIGHT_HEADINGS if light else HEADINGS
    have = [name for name in parts if name in wanted]
    found = [f"heading: '## {name}' is missing" for name in wanted if name not in have]
    if have != [name for name in wanted if name in have]:
        found.append(f"headings: in the order {', '.join(have)}; the order is {', '.join(wanted)}")
    found += _bold(parts[""], LIGHT_OPENING if light else OPENING, "opening")
    return found + _bold(parts.get("In short", []), LIGHT_RECAP if light else RECAP, "In short")


def _length(parts, light):
    before = [cell for name, cells in parts.items() if name != "More practice" for cell in cells]
    found = []
    for what, number, (least, most) in (
        ("cells", len(before), LIGHT_CELLS if light else CELLS),
        ("words", words(before), LIGHT_WORDS if light else WORDS),
    ):
        if not least <= number <= most:
            found.append(f"length: {number} {what} before the closing practice; between {least} and {most}")
    return found


def _nodes(cell):
    """Every node of a code cell's syntax; none where it is no Python, which `_code` reports."""
    try:
        return list(ast.walk(ast.parse(source(cell))))
    except SyntaxError:
        return []


def _code(cells):
    found, importing = [], 0
    for place, cell in enumerate(cells):
        if cell["cell_type"] != "code":
            continue
        text = source(cell)
        if len(text.splitlines()) > LONGEST_CODE:
            found.append(f"cell {place}: {len(text.splitlines())} lines of code; at most {LONGEST_CODE}")
        if re.search(r"sys\.path|^\s*[!%]", text, re.MULTILINE):
            found.append(f"cell {place}: sys.path, a shell line or a magic")
            continue
        if re.search(r";\s*$", text, re.MULTILINE):
            found.append(f"cell {place}: a trailing semicolon")
        nodes = _nodes(cell)
        if not nodes:
            found.append(f"cell {place}: no Python")
        imports = [node for node in nodes if isinstance(node, (ast.Import, ast.ImportFrom))]
        importing += bool(imports)
        if any(name.name == "*" for node in imports for name in node.names):
            found.append(f"cell {place}: a star import")
    if importing != 1:
        found.append(f"imports: in {importing} cells; in one")
    return found


def _pictures(cells):
    found = []
    for place, cell in enumerate(cells):
        pages = [source(cell)] if cell["cell_type"] == "markdown" else []
        for output in cell.get("outputs", []):
            page = output.get("data", {}).get("text/html", "")
            pages.append("".join(page))
        for page in pages:
            bare = [alt for alt in _IMAGE.findall(page) if not alt.strip()]
            bare += [tag for tag in _TAG.findall(page) if not _ALT.search(tag)]
            if bare:
                found.append(f"cell {place}: a picture without alt text")
    return found


def _names(cells, kind):
    found = set()
    for cell in cells:
        if cell["cell_type"] == "code":
            found |= {
                node.id for node in _nodes(cell) if isinstance(node, ast.Name) and isinstance(node.ctx, kind)
            }
    return found


def _guess(parts):
    guesses = {name for name in _names(parts.get("Guess first", []), ast.Store) if name.startswith("guess")}
    if not guesses:
        return ["Guess first: no cell writes a guess down (guess_... = ...)"]
    later = [cell for name, cells in parts.items() if name not in ("", "Guess first") for cell in cells]
    lost = sorted(guesses - _names(later, ast.Load))
    return [f"Guess first: {name} never comes back" for name in lost]


def _practice(parts):
    found = []
    asked = "\n".join(source(cell) for cell in parts.get("Practice", []) if cell["cell_type"] == "code")
    count = len(re.findall(r"\bcheck\(", asked))
    if count < QUESTIONS:
        found.append(f"Practice: {count} questions; at least {QUESTIONS}")
    moved = "\n".join(source(cell) for cell in parts.get("Move it", []) if cell["cell_type"] == "code")
    if "Block(" not in moved:
        found.append("Move it: no slider block")
    return found


if __name__ == "__main__":
    lines = [f"{path}: {line}" for path in sys.argv[1:] for line in faults(path)]
    print("\n".join(lines) or "in order")
    sys.exit(bool(lines))
