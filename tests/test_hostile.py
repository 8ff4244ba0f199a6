"""Files and answers that mean no good: what comes back is clear lines; nothing is run, nothing is written, nothing breaks."""

import ast
import copy
import re
import tomllib
from datetime import datetime
from pathlib import Path

import pytest
from case_jobs import PLAIN

from shop_calc import units
from shop_calc.__main__ import main
from shop_calc.lesson.banks import bank, bank_names
from shop_calc.lesson.check import check
from shop_calc.lesson.classroom import write_keys
from shop_calc.lesson.sheet import sheet_html
from shop_calc.trade.jobs.job import LARGEST_FILE, check_job, demo_job, parse_job
from shop_calc.trade.jobs.job_fields import FIELDS
from shop_calc.trade.logbook.log_read import parse_log, read_rows
from shop_calc.trade.mortar.recipe_file import recipe_from_table
from shop_calc.trade.plan import make_plan
from shop_calc.trade.problems import Problems
from shop_calc.trade.report import report

# Everything that moves a cursor, colours a terminal, hides text or turns its direction round.
CONTROL = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff]")
RIGHT_TO_LEFT = "plan \u202etxt.exe\u202c \u2067abc\u2069"
TERMINAL = "\x1b[2J\x1b]0;owned\x07top\x9b31m\r\x08\x00"
TAG = "<script>alert(1)</script><img src=x onerror=alert(2)>\" onmouseover='x"
CODE = "__import__('os').system('touch owned')"
BRACES = "{0.__class__.__init__.__globals__} %(x)s ${HOME} `id` $(id)"
CELL = "=HYPERLINK(\"http://example.invalid\",\"x\")"
TEXTS = {"right to left": RIGHT_TO_LEFT, "terminal": TERMINAL, "tag": TAG, "code": CODE, "braces": BRACES, "cell": CELL,
         "at": "@SUM(1+1)", "pipe": "=cmd|' /C calc'!A0", "digits": "1" * 5000, "zalgo": "a" + "\u0301" * 3000,
         "surrogate name": "\N{PILE OF POO}" * 400, "path": "../../../../etc/passwd"}  # fmt: skip
NUMBERS = [float("nan"), float("inf"), float("-inf"), 1e308, -1e308, 5e-324, 0, -1, 10**400, True]
SIZES = ["1e308 m", "nan in", "inf ft", "-inf ft", "1e-320 in", "9" * 400 + " in", "1/0 in", "0/0 in", "1e400 in", "٣ in",
         "0x10 in", "1_000 in", "5 in; import os", "5 in" * 20_000, "in", "-0 in", "１２ in \u202e"]  # fmt: skip


@pytest.fixture
def empty(monkeypatch, tmp_path):
    """A folder of its own; afterwards nothing may lie in it or above it that was not there."""
    inside = tmp_path / "inside"
    inside.mkdir()
    monkeypatch.chdir(inside)
    yield inside
    assert [path.name for path in tmp_path.iterdir()] == ["inside"]


def plain(text):
    assert not CONTROL.search(text), repr(text[max(CONTROL.search(text).start() - 40, 0):][:80])
    assert "Traceback" not in text
    return text


def refused_or_planned(entries):
    """Either clear lines or a plan; both must be fit for a terminal."""
    try:
        made = make_plan(check_job(entries))
    except Problems as error:
        assert error.lines and all(line.strip() and len(line) < 1200 for line in error.lines)
        plain("\n".join(error.lines))
        return None
    plain(report(made))
    return made


def with_entry(section, name, value):
    entries = copy.deepcopy(PLAIN)
    table = entries.setdefault(section, {})
    (table[0] if isinstance(table, list) else table)[name] = value
    return entries


ENTRIES = [(section, field.name) for section in FIELDS if "." not in section for field in FIELDS[section]]


@pytest.mark.parametrize(("section", "name"), ENTRIES)
def test_no_entry_of_a_job_takes_what_is_no_sensible_number_or_text(section, name, empty):
    for value in [*NUMBERS, *SIZES, *TEXTS.values(), [], {}, [[[]]], {"a": {"b": {}}}, None, datetime(1, 1, 1), datetime.max]:
        refused_or_planned(with_entry(section, name, value))
    assert list(empty.iterdir()) == []


@pytest.mark.parametrize("text", TEXTS.values(), ids=TEXTS)
def test_names_of_a_job_stay_names(text, empty):
    entries = copy.deepcopy(PLAIN)
    entries["name"] = text[:300]
    entries["piece"]["cutout"] = [{"shape": "circle", "name": text[:300], "diameter": "2 in", "at": ["30 in", "7 in"]}]
    entries["mix"]["recipe"] = {
        "name": text[:300], "note": text[:300], "origin": text[:300], "w_cm": 0.34,
        "parts": {"portland cement": 80, text[:60]: {"amount": 20, "relative_density": 2.6, "kind": "cementitious"},
                  "fine silica sand": {"amount": 100, "state": "oven-dry"}}}  # fmt: skip
    entries["mix"] |= {"stone": "0", "coarse_sand": "0"}
    made = refused_or_planned(entries)
    if made is not None:
        page = sheet_html(made)
        assert "<script>alert" not in page and "<img src=x" not in page and "\x1b" not in page
    del entries["mix"]["recipe"]
    entries["mix"]["recipe"] = "demo mortar"
    made = refused_or_planned(entries)
    assert made is not None
    page = sheet_html(made)
    assert "<script>alert" not in page and "<img src=x" not in page and "\x1b" not in page
    assert list(empty.iterdir()) == []


@pytest.mark.parametrize("text", TEXTS.values(), ids=TEXTS)
def test_unknown_keys_are_repeated_harmlessly(text):
    for entries in ({**PLAIN, text: 1}, {**PLAIN, "piece": {**PLAIN["piece"], text: 1}},
                    {**PLAIN, "cost": {"prices": {text: {"pack": "1 lb", "price": 1}}}},
                    {**PLAIN, "cost": {text: 1}}, {**PLAIN, "cost": {"currency": text}},
                    {**PLAIN, "piece": {**PLAIN["piece"], "exposed": [text]}}):  # fmt: skip
        refused_or_planned(entries)


@pytest.mark.parametrize("text", TEXTS.values(), ids=TEXTS)
def test_own_recipes_are_read_or_refused_in_clear_lines(text):
    parts = {"portland cement": 100, "fine silica sand": {"amount": 100, "state": "oven-dry"}}
    for table in ({"w_cm": text, "parts": parts}, {"w_cm": 0.3, "parts": {text: 100}}, {"w_cm": 0.3, "parts": text},
                  {"w_cm": 0.3, "parts": parts, "doses": {text: "1 % of binder"}},
                  {"w_cm": 0.3, "parts": parts, "doses": {"water reducer, liquid": text}},
                  {text: 0.3, "parts": parts}, {"kind": "bag", "mass": text, "water": "1 lb", "yield": "1 ft3"}):  # fmt: skip
        refused_or_planned(with_entry("mix", "recipe", table))
        try:
            recipe_from_table(table)
        except ValueError as error:
            plain(str(error))


@pytest.mark.parametrize("number", NUMBERS)
def test_numbers_beyond_all_measure_in_a_recipe_are_refused(number):
    parts = {"portland cement": 100, "fine silica sand": {"amount": 100, "state": "oven-dry"}}
    for table in ({"w_cm": number, "parts": parts}, {"w_cm": 0.3, "parts": {"portland cement": number}},
                  {"w_cm": 0.3, "air": number, "parts": parts},
                  {"w_cm": 0.3, "parts": {"portland cement": {"amount": 100, "relative_density": number}}}):  # fmt: skip
        made = refused_or_planned(with_entry("mix", "recipe", table) | {"name": "numbers"})
        if made is not None:
            assert 0.1 < made.mix.w_cm < 1.01 and 0 < made.batch.mixed_kg < 1e6


TOML = {
    "deep list": "a = " + "[" * 5000 + "]" * 5000,
    "deep table": "a" + ".a" * 5000 + " = 1",
    "deep inline": "a = " + "{a = " * 2000 + "1" + "}" * 2000,
    "huge number": "format = " + "9" * 50_000,
    "huge text": 'name = "' + "x" * (LARGEST_FILE - 20) + '"',
    "control": 'name = "a\x00b"',
    "escape": 'name = "\\u001b[2J"',
    "torn": 'name = "abc',
    "twice": "format = 1\nformat = 1",
    "wrong type": "format = 1\npiece = 5\nroom = [1, 2]\nmix = []\nday = 'x'",
    "empty": "",
    "surrogate": 'name = "\\ud800"',
    "many keys": "\n".join(f"k{number} = 1" for number in range(10_000)),
}


@pytest.mark.parametrize("text", TOML.values(), ids=TOML)
def test_toml_that_means_no_good_is_refused_in_lines(text, empty, capsys):
    with pytest.raises(ValueError):
        parse_job(text)
    (empty / "job.toml").write_text(text, encoding="utf-8")
    assert main(["plan", "job.toml"]) == 2
    said = capsys.readouterr()
    assert said.out == "" and plain(said.err).strip()
    assert len(said.err) < 20_000, "a screen or two, not a flood"
    assert [path.name for path in empty.iterdir()] == ["job.toml"]


def test_a_huge_file_is_not_even_read(empty, capsys):
    with open(empty / "job.toml", "wb") as file:
        file.truncate(3_000_000_000)  # sparse
    assert main(["plan", "job.toml"]) == 2
    assert "bytes" in plain(capsys.readouterr().err)


@pytest.mark.parametrize("text", TEXTS.values(), ids=TEXTS)
def test_words_of_the_command_line_are_repeated_harmlessly(text, empty, capsys):
    job = str(demo_job("garden_bench_top"))
    name = text[:100].replace("\x00", "")
    for words in (["plan", name], ["plan", job, "--why", text], ["plan", job, "--log", name], ["keys", name, "out"],
                  ["keys", name, name], ["sheet", name, "a.html"]):  # fmt: skip
        assert main(words) == 2, words
        said = capsys.readouterr()
        plain(said.out + said.err)
    assert list(empty.iterdir()) == []


LOG_FILES = ["../x.csv", "/etc/passwd", "a/../../x.csv", "..\\x.csv", "C:\\x.csv", "\\\\host\\share\\x.csv", "~/x.csv",
             "~root", "x.csv\x00.toml", "con\x1b[2J.csv", "file:///etc/passwd", ".", "logs/..", "//etc/passwd",
             "\u202egnp.csv"]  # fmt: skip


@pytest.mark.parametrize("name", LOG_FILES)
def test_a_log_is_looked_for_only_below_the_job(name, empty, capsys):
    (empty / "deep").mkdir()
    quoted = name.replace("\\", "\\\\").replace("\x00", "\\u0000").replace("\x1b", "\\u001b")
    text = demo_job("garden_bench_top").read_text(encoding="utf-8") + f'\n[log]\nfile = "{quoted}"\n'
    (empty / "deep" / "job.toml").write_text(text, encoding="utf-8")
    assert main(["plan", "deep/job.toml"]) == 2
    said = plain(capsys.readouterr().err)
    assert "root:" not in said


def test_a_link_that_leads_out_of_the_folder_is_no_log_of_the_job(empty, capsys):
    (empty / "deep").mkdir()
    (empty / "secret.csv").write_text("pour_id,time_iso,event\nsecret,2026-05-04T08:00,water_in\n", encoding="utf-8")
    try:
        (empty / "deep" / "log.csv").symlink_to(empty / "secret.csv")
    except OSError:
        pytest.skip("no links on this system")
    text = demo_job("garden_bench_top").read_text(encoding="utf-8") + '\n[log]\nfile = "log.csv"\n'
    (empty / "deep" / "job.toml").write_text(text, encoding="utf-8")
    assert main(["plan", "deep/job.toml"]) == 2
    assert "secret" not in plain(capsys.readouterr().err)


HEAD = "pour_id,time_iso,event,layer,mix_temp_c,cue,note,recipe\n"


@pytest.mark.parametrize("text", TEXTS.values(), ids=TEXTS)
def test_cells_of_a_log_are_text_and_what_is_said_of_them_is_harmless(text, empty, capsys):
    cell = '"' + text.replace('"', '""') + '"'
    body = HEAD + "".join(f"{a},{b},{c},face,16,{d},{e},{f}\n" for a, b, c, d, e, f in (
        (cell, "2026-05-04T08:00", "water_in", "", "", ""), ("p", cell, "water_in", "", "", ""),
        ("p", "2026-05-04T08:00", cell, "", "", ""), ("p", "2026-05-04T08:00", "water_in", cell, cell, cell)))  # fmt: skip
    rows = parse_log(body.encode("utf-8", "surrogatepass"))
    plain("\n".join(str(line) for line in (*rows.problems, *rows.remarks)))
    (empty / "log.csv").write_bytes(body.encode("utf-8", "surrogatepass"))
    main(["plan", str(demo_job("garden_bench_top")), "--log", "log.csv"])
    said = capsys.readouterr()
    plain(said.out + said.err)
    assert [path.name for path in empty.iterdir()] == ["log.csv"]


def test_a_field_of_ten_megabytes_is_named_and_not_repeated():
    for data in (HEAD.encode() + b"p,2026-05-04T08:00,water_in,face,16,," + b"x" * 10_000_000 + b",\n",
                 HEAD.encode() + b'p,"' + b"y" * 10_000_000, b"z" * 10_000_000, b'"' * 10_000_000):  # fmt: skip
        rows = parse_log(data)
        assert not rows.events and rows.problems
        assert all(len(str(line)) < 500 for line in rows.problems)
    for question in bank("start_here"):
        assert len(check(question, "9" * 10_000_000).text) < 500
    with pytest.raises(ValueError) as error:
        units.parse("5" * 10_000_000 + " in", "length")
    assert len(str(error.value)) < 500


@pytest.mark.parametrize("value", ["nan", "inf", "-inf", "1e308", "1e999", "-1e308", "0x10", "1_0", "9" * 500])
def test_numbers_beyond_all_measure_in_a_log_are_named(value):
    rows = parse_log((HEAD + f"p,2026-05-04T08:00,water_in,,{value},,,\n").encode())
    assert rows.events == () and rows.problems[0].column == "mix_temp_c"


@pytest.mark.parametrize("lesson", bank_names())
def test_no_answer_breaks_a_question_or_comes_back_unescaped(lesson):
    answers = [*NUMBERS, *SIZES[:12], *TEXTS.values(), [], {}, [[]], object(), b"x", 1j, float, ["a"] * 1000, {"a"}, "a" * 9999]
    for question in bank(lesson):
        for answer in answers:
            outcome = check(question, answer)
            plain(outcome.text)
            page = outcome._repr_mimebundle_().get("text/html", "")
            assert "<script>alert" not in page and "<img src=x" not in page


@pytest.mark.parametrize("text", TEXTS.values(), ids=TEXTS)
def test_a_class_list_makes_files_only_in_its_folder(text, empty):
    cell = '"' + text.replace('"', '""').replace("\x00", "") + '"'
    (empty / "list.csv").write_text(f"code,name\n{cell},{cell}\nann,Ann\n", encoding="utf-8")
    try:
        write_keys("list.csv", "out", ("00",))
    except ValueError as error:
        plain(str(error))
        assert [path.name for path in empty.iterdir()] == ["list.csv"]
        return
    assert sorted(path.name for path in empty.iterdir()) == ["list.csv", "out"]
    for path in (empty / "out").iterdir():
        page = path.read_text(encoding="utf-8")
        if path.suffix == ".html":
            assert "<script>alert" not in page and "<img src=x" not in page
        if path.suffix == ".csv":  # what a spreadsheet would run
            assert not re.search(r"(?m)(^|,)\"?[=@\t\r]", page), path.name


# ---- nothing that is typed can ever be run

ROOT = Path(__file__).parents[1] / "shop_calc"
RUNS = {"eval", "exec", "compile", "__import__", "execfile", "breakpoint"}
OPENS = {"pickle", "marshal", "shelve", "dill", "joblib", "code", "codeop", "runpy", "ctypes"}


def loose_ends(tree):
    """Calls that run text, loaders that run what they read, shells; (line, words) of each."""
    for node in ast.walk(tree):
        if isinstance(node, (ast.Import, ast.ImportFrom)):
            names = [alias.name for alias in node.names] if isinstance(node, ast.Import) else [node.module or ""]
            yield from ((node.lineno, name) for name in names if name.partition(".")[0] in OPENS)
        if not isinstance(node, ast.Call):
            continue
        name = node.func.id if isinstance(node.func, ast.Name) else getattr(node.func, "attr", "")
        of = node.func.value.id if isinstance(node.func, ast.Attribute) and isinstance(node.func.value, ast.Name) else ""
        if name in RUNS and of in ("", "builtins", "pd", "df", "frame", "numpy", "np"):
            yield node.lineno, name
        if name in {"system", "popen", "read_pickle", "load_module", "literal_eval", "query"}:
            yield node.lineno, name
        if any(word.arg == "shell" and getattr(word.value, "value", True) for word in node.keywords):
            yield node.lineno, "shell"
        if any(word.arg == "allow_pickle" and getattr(word.value, "value", True) for word in node.keywords):
            yield node.lineno, "allow_pickle"


def test_nothing_in_the_package_can_run_a_text():
    found = {}
    for path in sorted(ROOT.rglob("*.py")):
        ends = list(loose_ends(ast.parse(path.read_text(encoding="utf-8"))))
        if ends:
            found[str(path.relative_to(ROOT))] = ends
    assert found == {}


@pytest.mark.parametrize("line", ["eval(x)", "exec(x)", "import pickle", "subprocess.run(x, shell=True)", "os.system(x)",
                                  "np.load(x, allow_pickle=True)", "df.eval(x)"])  # fmt: skip
def test_the_check_itself_sees_a_loose_end(line):
    assert list(loose_ends(ast.parse(line)))


DRAWN = {"piece.sketch", "piece.cut", "day.hours", "stage.lane"}


def test_pages_are_escaped_unless_a_template_is_told_otherwise():
    for path in ROOT.rglob("*.py"):
        text = path.read_text(encoding="utf-8")
        if "Environment(" in text and "jinja2" in text:
            assert "autoescape=True" in text or "select_autoescape" in text, path
    for path in ROOT.rglob("*.j2"):
        if "voila" in str(path):
            continue  # the page around a lesson; it shows what the notebook made, already escaped
        bare = re.findall(r"([\w.]+)\s*\|\s*safe", path.read_text(encoding="utf-8"))
        assert set(bare) <= DRAWN, path  # drawings of our own; test_sheet.py gives them hostile names


def test_the_demo_jobs_hold_nothing_of_this():
    for path in demo_job("garden_bench_top").parent.glob("*.toml"):
        assert not CONTROL.search(path.read_text(encoding="utf-8")), path
        tomllib.loads(path.read_text(encoding="utf-8"))


def test_what_never_ends_is_not_read(empty, capsys):
    with open("log.csv", "wb") as file:
        file.truncate(3_000_000_000)  # sparse
    with pytest.raises(ValueError, match="more than 50,000,000 bytes"):
        read_rows("log.csv")
    if Path("/dev/zero").exists():
        with pytest.raises(ValueError, match="a device or a pipe"):
            read_rows("/dev/zero")
        assert main(["plan", "/dev/zero"]) == 2
        assert "a device or a pipe" in capsys.readouterr().err
