"""The questions of all lessons: one module a lesson in `questions/`, named as the notebook without its number."""

import pkgutil
from dataclasses import dataclass
from importlib import import_module

from shop_calc.lesson import questions
from shop_calc.lesson.contents import Lesson, lessons
from shop_calc.lesson.copies import lessons_folder


def bank_names():
    """Name every lesson that has questions.

    Returns
    -------
    tuple of str
        In order of the alphabet [-].

    Examples
    --------
    >>> "start_here" in bank_names()
    True

    References
    ----------
    Common practice, no source.
    """
    return tuple(sorted(info.name for info in pkgutil.iter_modules(questions.__path__)))


def bank(name):
    """Give the questions of one lesson.

    Parameters
    ----------
    name : str
        Name of the lesson's file, without its number [-].

    Returns
    -------
    tuple of Question
        In the order of the lesson [-].

    Raises
    ------
    ValueError
        When there is no such lesson.

    Examples
    --------
    >>> bank("start_here")[0].id
    'tile'

    References
    ----------
    Common practice, no source.
    """
    if not str(name).isidentifier():
        raise ValueError(f"practice: {name!r} given; it must be the name of a lesson's questions")
    try:
        return tuple(import_module(f"{questions.__name__}.{name}").QUESTIONS)
    except ModuleNotFoundError as error:
        if error.name != f"{questions.__name__}.{name}":
            raise  # the lesson is there, something that it needs is not
        raise ValueError(f"practice: {name!r} given; there are {', '.join(bank_names())}") from None


@dataclass(frozen=True)
class Banked:
    """A lesson and its questions.

    Parameters
    ----------
    lesson : Lesson
        What its first cells say of it [-].
    name : str
        Name of its questions [-].
    questions : tuple of Question
        In the order of the lesson [-].

    Examples
    --------
    >>> Banked(Lesson("00_start_here.ipynb", "Where do I start?", "", ""), "start_here", ()).stem
    '00_start_here'

    References
    ----------
    Common practice, no source.
    """

    lesson: Lesson
    name: str
    questions: tuple

    @property
    def stem(self):
        """Name of the notebook without its ending."""
        return self.lesson.file.removesuffix(".ipynb")


def banked_lessons(folder=None):
    """Give every lesson of a folder that has questions, in order.

    Parameters
    ----------
    folder : str or Path, optional
        Where the notebooks lie; those of the package if left out [-].

    Returns
    -------
    tuple of Banked
        By number [-].

    Examples
    --------
    >>> banked_lessons()[0].name
    'start_here'

    References
    ----------
    Common practice, no source.
    """
    known, found = bank_names(), []
    for lesson in lessons(folder or lessons_folder()):
        name = lesson.file.removesuffix(".ipynb").partition("_")[2]
        if lesson.number.isdigit() and name in known:
            found.append(Banked(lesson, name, bank(name)))
    return tuple(found)
