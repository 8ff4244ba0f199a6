"""Everything that is wrong with a file, gathered and said at once."""

import difflib
from contextlib import contextmanager
from unicodedata import category

LONGEST_LINE = 900  # characters; what was given is repeated, but not a whole page of it
MOST_LINES = 60  # more at once nobody reads


def plain(text):
    """Take out of a text whatever moves a cursor, colours a terminal, hides itself or turns its direction round.

    Parameters
    ----------
    text : str
        A text, part of which a person may have typed [-].

    Returns
    -------
    str
        The same with a question mark for each such sign; line ends stay [-].

    Examples
    --------
    >>> plain("top\x1b[2J, 5 ft²")
    'top?[2J, 5 ft²'

    References
    ----------
    Common practice, no source.
    """
    return "".join(
        sign if sign.isprintable() or sign in "\n\t" else " " if category(sign) == "Zs" else "?" for sign in str(text)
    )


class Problems(ValueError):
    """One error with one clear line for each thing that is wrong.

    Parameters
    ----------
    lines : sequence of str
        What is wrong, one entry a line: entry, what was given, what is allowed [-].

    Examples
    --------
    >>> str(Problems(["face: 2 in given; it must be less than the piece"]))
    'face: 2 in given; it must be less than the piece'

    References
    ----------
    Common practice, no source.
    """

    def __init__(self, lines):
        kept = [plain(line) for line in lines]
        kept = [line if len(line) <= LONGEST_LINE else line[: LONGEST_LINE - 3] + "..." for line in kept]
        if len(kept) > MOST_LINES:
            kept = [*kept[:MOST_LINES], f"... and {len(kept) - MOST_LINES:,} more like these"]
        self.lines = tuple(kept)
        super().__init__("\n".join(self.lines))

    @property
    def problems(self):
        """The lines, as a tuple."""
        return self.lines


class Collector:
    """Gathers problems while a file is read, so that a person sees all of them in one go.

    Examples
    --------
    >>> found = Collector()
    >>> with found.catch("mix.air"):
    ...     raise ValueError("4 given; it must have a unit")
    >>> found.add("mix.w_cm", "-1", "more than 0")
    >>> found.lines
    ['mix.air: 4 given; it must have a unit', 'mix.w_cm: -1 given; it must be more than 0']

    References
    ----------
    Common practice, no source.
    """

    def __init__(self):
        self.lines = []

    def add(self, entry, given, allowed):
        """Note one problem.

        Parameters
        ----------
        entry : str
            Where it stands in the file, "mix.w_cm" and the like [-].
        given : str or number
            What was given [-].
        allowed : str
            What it must be, in words that follow "it must be" [-].
        """
        self.lines.append(f"{entry}: {given} given; it must be {allowed}")

    def say(self, line):
        """Note a problem whose line is already written.

        Parameters
        ----------
        line : str
            The whole line [-].
        """
        self.lines.append(line)

    def unknown(self, table, known, entry=""):
        """Note every key of a table that has no meaning, with the nearest key that has.

        Parameters
        ----------
        table : dict
            The table as read [-].
        known : iterable of str
            Keys that have a meaning there [-].
        entry : str
            Where the table stands in the file [-].
        """
        known = tuple(known)
        for key in table:
            if key not in known:
                near = difflib.get_close_matches(str(key), known, n=1, cutoff=0.6)
                hint = f"did you mean {near[0]!r}?" if near else f"it has {', '.join(known)}"
                self.lines.append(
                    f"{entry}: {key!r} given; there is no such entry here, {hint}".removeprefix(": ")
                )

    @contextmanager
    def catch(self, entry=""):
        """Turn a ValueError raised inside into a line, or several if it is `Problems`.

        Parameters
        ----------
        entry : str
            Put in front of a message that does not begin with it [-].
        """
        try:
            yield
        except Problems as error:
            self.lines.extend(error.lines)
        except ValueError as error:
            text = str(error)
            self.lines.append(text if not entry or text.startswith(entry) else f"{entry}: {text}")
        except OverflowError:
            self.lines.append(f"{entry or 'an entry'}: a number beyond all measure given; it must be one of a shop")

    def raise_if_any(self):
        """Raise `Problems` with every line gathered, or do nothing.

        Raises
        ------
        Problems
            When anything was noted.
        """
        if self.lines:
            raise Problems(self.lines)
