"""For whoever teaches: a roster of codes in, the answer key and printable question sheets out.

`roster.py` reads the list, `answer_key.py` works every question with every student's numbers, `pages.py` prints,
`write.py` puts the files into a folder. `python -m shop_calc keys ROSTER.csv FOLDER` does all of it.
"""

from shop_calc.lesson.classroom.answer_key import answer_key, key_csv
from shop_calc.lesson.classroom.pages import key_page, question_sheets
from shop_calc.lesson.classroom.roster import Student, read_roster, roster
from shop_calc.lesson.classroom.write import write_keys

__all__ = [
    "Student",
    "answer_key",
    "key_csv",
    "key_page",
    "question_sheets",
    "read_roster",
    "roster",
    "write_keys",
]
