"""Put the key and the question sheets of a class into a folder."""

from pathlib import Path

from shop_calc.lesson.banks import banked_lessons
from shop_calc.lesson.classroom.answer_key import answer_key, key_csv
from shop_calc.lesson.classroom.pages import key_page, question_sheets
from shop_calc.lesson.classroom.roster import read_roster
from shop_calc.lesson.copies import named_folder, put_whole

KEY = "answer_key.csv"


def write_keys(roster_path, folder, numbers=(), *, replace=False):
    """Write the answer key and the question sheets of a class.

    Parameters
    ----------
    roster_path : str or Path
        The list of the class, see `read_roster` [-].
    folder : str or Path
        Where the files shall be; it is made when it is not there [-].
    numbers : sequence of str
        Lessons, as "01"; all of them if empty [-].
    replace : bool
        True to write over files that are there [-].

    Returns
    -------
    tuple of str
        Names of the files: the key of all lessons as CSV, and two pages for each lesson [-].

    Raises
    ------
    ValueError
        When the roster or a number is wrong, a file is there already, or the folder cannot be written.

    Examples
    --------
    >>> import tempfile
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     path = Path(folder) / "class.csv"
    ...     _ = path.write_text("code\\nbench 1\\nbench 2\\n")
    ...     write_keys(path, Path(folder) / "out", ["00"])
    ('answer_key.csv', 'key_00_start_here.html', 'questions_00_start_here.html')

    References
    ----------
    Common practice, no source.
    """
    students, lessons = read_roster(roster_path), _wanted(numbers)
    key = answer_key(students, lessons)
    files = {KEY: "\ufeff" + key_csv(key)}  # the mark tells a spreadsheet that it is UTF-8
    for each in lessons:
        files[f"key_{each.stem}.html"] = key_page(each, key[each.stem])
        files[f"questions_{each.stem}.html"] = question_sheets(each, key[each.stem])
    folder = named_folder(folder)
    if (folder / KEY).resolve() == Path(roster_path).resolve():
        raise ValueError(f"roster: {roster_path} given; the key would be written over it, give the list another name")
    there = [name for name in files if (folder / name).exists()]
    if there and not replace:
        raise ValueError(f"folder: {folder} given; {there[0]} is there already and was left as it is; --replace writes over it")
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for name, text in files.items():
            put_whole(folder / name, text.encode("utf-8"))
    except OSError as error:
        raise ValueError(f"folder: {folder} given; it cannot be written ({error.strerror})") from None
    return tuple(files)


def _wanted(numbers):
    lessons = banked_lessons()
    known = {each.lesson.number: each for each in lessons}
    unknown = [str(number) for number in numbers if str(number).zfill(2) not in known]
    if unknown:
        raise ValueError(f"lesson: {', '.join(unknown)} given; there are {', '.join(known)}")
    return tuple(known[number] for number in sorted({str(each).zfill(2) for each in numbers} or known))
