"""A roster in, the key and the question sheets out: right, escaped, and harmless in a spreadsheet."""

import csv
import io
import re
from html.parser import HTMLParser

import pytest

from shop_calc.__main__ import main
from shop_calc.lesson.banks import banked_lessons
from shop_calc.lesson.check import Kind, check
from shop_calc.lesson.classroom import answer_key, key_csv, key_page, question_sheets, read_roster, roster, write_keys
from shop_calc.lesson.classroom.answer_key import harmless
from shop_calc.lesson.practice import Practice, ask

LESSONS = banked_lessons()
CLASS = roster(
    [("bench 1", "Left bench"), ("bench 2", ""), ("=2+5", "<b>bold</b>"), ("@x", 'a,b\n"c"'), ("Zoë", "-1")]
)
EACH = pytest.mark.parametrize("each", LESSONS, ids=lambda each: each.stem)


def rows(key):
    return list(csv.DictReader(io.StringIO(key_csv(key), newline="")))


@EACH
def test_the_key_holds_what_the_lesson_accepts_and_asks(each):
    key = answer_key(CLASS, [each])[each.stem]
    assert [line.student.code for line, *_ in key] == [student.code for student in CLASS]
    for lines in key:
        assert [line.question.id for line in lines] == [question.id for question in each.questions]
        for line in lines:
            code = line.student.code
            assert check(line.question, line.answer, code).kind is Kind.RIGHT
            for edge, way in zip(line.accepted, (-1, 1), strict=False):
                span = line.accepted[1] - line.accepted[0]
                assert check(line.question, edge - way * span / 50, code).kind is Kind.RIGHT
                assert check(line.question, edge + way * span / 50, code).kind is not Kind.RIGHT


@EACH
def test_the_csv_has_one_row_for_each_question_of_each_student(each):
    found = rows(answer_key(CLASS, [each]))
    assert len(found) == len(CLASS) * len(each.questions)
    for row in found:
        code = {harmless(student.code): student.code for student in CLASS}[row["code"]]
        practice = Practice(each.name, code, keep=False)
        assert practice.check(row["question"], row["answer"]).kind is Kind.RIGHT
        assert row["lesson"] == each.stem and row["known slips"]


def test_no_cell_starts_a_formula():
    for row in csv.reader(io.StringIO(key_csv(answer_key(CLASS, LESSONS)), newline="")):
        for cell in row:
            number = re.fullmatch(r"-?\d+(\.\d+)?(e[+-]?\d+)?", cell)
            assert number or not cell.lstrip().startswith(("=", "+", "-", "@", "\t", "\r")), cell


@pytest.mark.parametrize(
    "cell", ["=1", "+1", "-1", "@A1", "\t=1", "\r=1", " =1", "＝1", "\xa0=1", "  @x", "-", "=cmd|' /C calc'!A0"]
)
def test_what_a_spreadsheet_takes_for_a_formula_is_neutralised(cell):
    assert harmless(cell) == f"'{cell}"


@pytest.mark.parametrize("cell", ["", "bench 1", "a-1", "1", "Zoë", "a=b", "'x"])
def test_an_ordinary_text_stays_as_it_is(cell):
    assert harmless(cell) == cell


class Page(HTMLParser):
    """Tags and text of a page."""

    def __init__(self, page):
        super().__init__()
        self.tags, self.text = [], ""
        self.feed(page)

    def handle_starttag(self, tag, attrs):
        self.tags.append(tag)

    def handle_data(self, data):
        self.text += data


@EACH
def test_pages_show_every_name_as_text_and_every_question_with_its_own_numbers(each):
    key = answer_key(CLASS, [each])[each.stem]
    for page in (Page(key_page(each, key)), Page(question_sheets(each, key))):
        assert "<b>bold</b>" in page.text and "script" not in page.tags and "Zoë · -1" in page.text
    sheets = question_sheets(each, key)
    assert sheets.count("<table>") == len(CLASS) and sheets.count('class="blank"') == len(CLASS) * len(each.questions)
    text = Page(sheets).text.replace("\u00a0", " ")
    for student in CLASS:
        for question in each.questions:
            first = str(ask(question, student.code)).splitlines()[0]
            assert first in text


def test_the_key_page_by_hand():
    # without a code the tile is 12 x 12 x 1.5 in; "mar7" draws its own
    first = LESSONS[0]
    page = Page(key_page(first, answer_key(roster([("mar7", "")]), [first])[first.stem]))
    tile = Practice("start_here", "mar7").solution("tile")
    assert f"{tile:g}" in page.text and "in³, ± 2 %" in page.text and "letter" in page.text


def test_a_sheet_never_holds_the_answer_or_a_hint():
    first = LESSONS[0]
    key = answer_key(roster([("mar7", "")]), [first])
    text = Page(question_sheets(first, key[first.stem])).text.replace("\u00a0", " ")
    for line in key[first.stem][0]:
        assert not any(hint in text for hint in line.question.hints)
    assert f"{key[first.stem][0][0].answer:g}" not in re.sub(r"\d+(\.\d+)? in\b", "", text)


@pytest.mark.parametrize(
    "raw",
    [
        b"code,name\nA-1,Left\nA-2,\n", b"\xef\xbb\xbfcode;name\r\nA-1;Left\r\nA-2;\r\n",
        b"name\tcode\nLeft\tA-1\n\tA-2\n",
        "code,name\nA-1,Left\nA-2,\n".encode("utf-16"), b"Code , Name , bench\nA-1,Left,1\n\n,,\nA-2\n",
    ],
)  # fmt: skip
def test_a_roster_is_read_however_a_spreadsheet_saved_it(tmp_path, raw):
    (tmp_path / "class.csv").write_bytes(raw)
    assert [student.label for student in read_roster(tmp_path / "class.csv")] == ["A-1 · Left", "A-2"]


def test_an_old_spreadsheet_s_letters_are_read(tmp_path):
    (tmp_path / "class.csv").write_bytes("code\nZoë\n".encode("cp1252"))
    assert read_roster(tmp_path / "class.csv")[0].code == "Zoë"


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("", ["column 'code'"]),
        ("name\nx\n", ["column 'code'"]),
        ("code\n", ["no student"]),
        ("code,name\na,\n,Left\nA,\n", ["row 3: no code", "row 4: code 'A' given", "row 2"]),
        ("code\n" + "x" * 201 + "\n", ["at most 200"]),
        ("code\n" + "\n".join(f"c{k}" for k in range(2001)), ["at most 2000"]),
    ],
)
def test_a_wrong_roster_is_refused_and_everything_is_said_at_once(tmp_path, text, parts):
    path = tmp_path / "class.csv"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(ValueError) as caught:
        read_roster(path)
    assert all(part in str(caught.value) for part in parts)


def test_the_command_writes_the_files_and_names_them(tmp_path, capsys):
    (tmp_path / "class.csv").write_text("code\nbench 1\n", encoding="utf-8")
    assert main(["keys", str(tmp_path / "class.csv"), str(tmp_path / "out"), "--lesson", "0"]) == 0
    names = [line.strip() for line in capsys.readouterr().out.splitlines()[1:]]
    assert sorted(path.name for path in (tmp_path / "out").iterdir()) == sorted(names)
    raw = (tmp_path / "out" / "answer_key.csv").read_bytes()
    assert raw.startswith(b"\xef\xbb\xbfcode,name") and b"\r" not in raw  # the mark of UTF-8


def test_an_older_key_is_written_over_only_when_that_is_asked_for(tmp_path, capsys):
    (tmp_path / "class.csv").write_text("code\nbench 1\n", encoding="utf-8")
    (tmp_path / "other.csv").write_text("code\nplum 4\n", encoding="utf-8")
    names = write_keys(tmp_path / "class.csv", tmp_path / "out", ["00"])
    first = {path.name: path.read_bytes() for path in (tmp_path / "out").iterdir()}
    command = ["keys", str(tmp_path / "other.csv"), str(tmp_path / "out"), "--lesson", "00", "01"]
    assert main(command) == 2
    assert "answer_key.csv is there already and was left as it is; --replace" in capsys.readouterr().err
    assert {path.name: path.read_bytes() for path in (tmp_path / "out").iterdir()} == first  # nothing half written
    assert main([*command, "--replace"]) == 0
    key = (tmp_path / "out" / "answer_key.csv").read_text(encoding="utf-8-sig")
    assert "plum 4" in key and "bench 1" not in key and set(names) == set(first)


@pytest.mark.parametrize(
    ("roster_name", "folder", "lesson", "part"),
    [
        ("none.csv", "out", "00", "cannot be read"),
        ("class.csv", "class.csv", "00", "must be a folder"),
        ("class.csv", "class.csv/below", "00", "cannot be written"),
        ("class.csv", "out", "77", "there are 00"),
    ],
)
def test_the_command_says_what_is_wrong(tmp_path, capsys, roster_name, folder, lesson, part):
    (tmp_path / "class.csv").write_text("code\nbench 1\n", encoding="utf-8")
    assert main(["keys", str(tmp_path / roster_name), str(tmp_path / folder), "--lesson", lesson]) == 2
    assert part in capsys.readouterr().err
    assert [path.name for path in tmp_path.iterdir()] == ["class.csv"]
