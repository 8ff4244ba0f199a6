"""The words of the trade, as data/glossary.csv has them."""

import csv
from dataclasses import dataclass
from functools import cache

from shop_calc.defaults import data_folder


@dataclass(frozen=True)
class Term:
    """A word of the trade.

    Parameters
    ----------
    term : str
        The word [-].
    also : tuple of str
        Other ways to write it, for the links [-].
    meaning : str
        What it means, in plain words [-].
    first_used : str
        The lesson that uses it first, the name of its file without the ending; empty where none does [-].
    mark, source : str
        How we know [-].

    Examples
    --------
    >>> terms()[0].anchor == terms()[0].term.replace(" ", "-")
    True

    References
    ----------
    Common practice, no source.
    """

    term: str
    also: tuple
    meaning: str
    first_used: str
    mark: str
    source: str

    @property
    def anchor(self):
        """The cell of the page that a link to it leads to."""
        return self.term.replace(" ", "-")


@cache
def terms():
    """Read the words of the trade.

    Returns
    -------
    tuple of Term
        In order of the alphabet [-].

    Examples
    --------
    >>> next(term.mark for term in terms() if term.term == "initial set")
    'read'

    References
    ----------
    Each row of data/glossary.csv names its own.
    """
    with open(data_folder() / "glossary.csv", newline="", encoding="utf-8") as file:
        rows = list(csv.DictReader(file))
    for row in rows:
        row["also"] = tuple(part.strip() for part in row["also"].split(";") if part.strip())
    return tuple(Term(**row) for row in sorted(rows, key=lambda row: row["term"]))
