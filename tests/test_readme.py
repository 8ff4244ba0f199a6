"""README's commands: those for Windows say the same as those for Linux and macOS, and what they name is there."""

import re
from pathlib import Path

import pytest
from fresh_machine import commands

from shop_calc.__main__ import _arguments

ROOT = Path(__file__).parents[1]
TEXT = (ROOT / "README.md").read_text(encoding="utf-8")
HEADINGS = re.findall(r"^## (.+)$", TEXT, re.M)
LINES = [line for heading in HEADINGS for line in commands(TEXT, heading)]


def windows(line):
    """The same line for a Command Prompt."""
    line = re.sub(r"^python3 ", "py ", line).replace(".venv/bin/", ".venv\\Scripts\\")
    return re.sub(r"\bworkbooks/", r"workbooks\\", line)


@pytest.mark.parametrize("heading", ["Open the lessons", "Run the tests"])
def test_windows_has_the_same_command(heading):
    (line,) = commands(TEXT, heading)
    section = TEXT.partition(f"## {heading}\n")[2].partition("\n## ")[0]
    assert re.findall(r"^```bat\n(.*?)\n```$", section, re.M | re.S) == [windows(line)]


def test_quotes_are_such_as_every_shell_knows():
    assert LINES and not [line for line in LINES if "'" in line or "$" in line]


@pytest.mark.parametrize("line", [line for line in LINES if "-m shop_calc" in line])
def test_every_command_of_ours_can_be_read_and_its_files_are_there(line, capsys):
    words = line.partition("-m shop_calc ")[2].split()
    _arguments().parse_args(words)
    assert all((ROOT / word).is_file() for word in words if word.startswith(("data/", "workbooks/")))
