"""Every word that people meet, once: `python tests/list_words.py`, on request.

Commands, options, entries of files, columns, headings, labels, words in pictures, openings of messages, words on the sheet and
in the forms. To be read whole, now and then, with one question: does this sound like somebody else's tool, product, recipe or
person? What the trade or an open standard uses stays.
"""

import ast
import csv
import json
import re
import sys
from collections import defaultdict
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))  # the package beside this file, whichever copy is installed

from shop_calc.__main__ import _arguments
from shop_calc.trade.jobs.job_fields import FIELDS

ROOT = Path(__file__).parents[1]
LABELS = {"title", "label", "description", "placeholder", "tooltip", "what", "xlabel", "ylabel", "name", "words", "text"}
MESSAGES = {"ValueError", "Advice", "add", "say", "Problems", "Said", "Remark", "_say", "_note"}
OPENING = 9  # words of a message


def literal(node):
    """The text of a string or an f-string, with … for what is put in; None for anything else."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        return node.value
    if isinstance(node, ast.JoinedStr):
        return "".join(part.value if isinstance(part, ast.Constant) else "…" for part in node.values)
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add):
        return f"{literal(node.left) or '…'}{literal(node.right) or '…'}"
    return None


def without_docstrings(tree):
    for node in ast.walk(tree):
        body = getattr(node, "body", None)
        if isinstance(body, list) and body and isinstance(body[0], ast.Expr) and isinstance(body[0].value, ast.Constant):
            body.pop(0)
    return tree


def of_code(tree, whole):
    """(kind, text) of every label and message of a module; of every text in it where `whole`."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Call):
            name = getattr(node.func, "id", getattr(node.func, "attr", ""))
            if name in MESSAGES:
                for text in filter(None, map(literal, node.args)):
                    yield "openings of messages", " ".join(text.split()[:OPENING])
            for word in node.keywords:
                if word.arg in LABELS and (text := literal(word.value)):
                    yield "labels and titles", text
        elif whole and (text := literal(node)) and re.search(r"[^\W\d_]{3}\W* [^\W\d_]|^[A-Z][a-z]", text):
            yield "other texts of lessons, pictures, sheet and plan", text


def of_cells(path):
    for cell in json.loads(path.read_text(encoding="utf-8"))["cells"]:
        source = "".join(cell["source"])
        if cell["cell_type"] == "markdown":
            yield from (("headings", line.lstrip("# ")) for line in source.splitlines() if re.match(r"#+ ", line))
        else:
            yield from of_code(ast.parse(source), whole=False)


def of_commands():
    for action in _arguments()._actions:
        for name, parser in (getattr(action, "choices", None) or {}).items():
            yield "commands and options", f"shop-calc {name}"
            for each in parser._actions:
                words = ", ".join(each.option_strings) or each.metavar or each.dest
                choices = f" ({', '.join(map(str, each.choices))})" if each.choices else ""
                yield "commands and options", f"  {words}{choices}: {each.help}"


def of_data():
    for section, fields in FIELDS.items():
        for field in fields:
            yield "entries of a job file", f"{section}.{field.name} {'| '.join(field.choices)}".strip()
    for path in sorted((ROOT / "data").rglob("*.csv")):
        with open(path, newline="", encoding="utf-8") as file:
            rows = list(csv.reader(file))
        yield from (("columns of data", name) for name in rows[0])
        if path.name in ("defaults.csv", "materials.csv", "glossary.csv"):
            yield from ((f"names in {path.name}", row[0]) for row in rows[1:])
    for path in sorted((ROOT / "data").rglob("*.toml")):
        named = re.findall(r'^name = "(.*)"', path.read_text(encoding="utf-8"), re.M)
        yield from (("names of demo files", name) for name in (path.stem, *named))


def words():
    """All of them: kind -> texts in the order in which they are met, each once."""
    found = defaultdict(dict)

    def keep(pairs):
        for kind, text in pairs:
            text = " ".join(text.split())
            if re.search(r"[^\W\d_]{2}", text) and not any(text in kept for kept in found.values()):
                found[kind][text] = None

    keep(of_commands())
    keep(of_data())
    for path in (ROOT / "README.md", ROOT / "DEVELOPERS.md", ROOT / "data" / "README.md", ROOT / ".hub" / "README.md"):
        keep(("headings", line.lstrip("# ")) for line in path.read_text(encoding="utf-8").splitlines() if line.startswith("#"))
    for path in sorted((ROOT / "workbooks").rglob("*.ipynb")):
        keep(of_cells(path))
    for path in sorted((ROOT / "shop_calc").rglob("*.j2")):
        page = path.read_text(encoding="utf-8")
        bare = re.sub(r"\{#.*?#\}|\{%.*?%\}|<style.*?</style>|<script.*?</script>", "\n", page, flags=re.S)
        bare = re.sub(r"\{\{.*?\}\}", "…", bare, flags=re.S)
        keep(("words of printed pages", line) for line in re.sub(r"<[^>]*>", "\n", bare).splitlines())
    for path in sorted((ROOT / "shop_calc").rglob("*.py")):
        tree = without_docstrings(ast.parse(path.read_text(encoding="utf-8")))
        keep(of_code(tree, whole=path.relative_to(ROOT).parts[1] in ("trade", "lesson")))
    return found


if __name__ == "__main__":
    sys.stdout.reconfigure(errors="replace")
    for kind, texts in words().items():
        print(f"\n== {kind}: {len(texts)}")
        print("\n".join(texts))
