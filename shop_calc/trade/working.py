"""The working: every computed value can say how it came about."""

from dataclasses import dataclass

MARKS = ("read", "unnamed", "memory", "derived", "practice", "judgement", "invented", "given")


@dataclass(frozen=True)
class Step:
    """One line of the working.

    Parameters
    ----------
    name : str
        Name of the value, as `--why` finds it: lower case, unit as suffix [-].
    symbol : str
        Symbol used in formulas further down [-].
    formula : str
        Plain arithmetic in the symbols of `inputs`, or a procedure that starts with "by " [-].
    inputs : tuple of (symbol, value, unit)
        What went in, in SI [unit as given].
    value : float
        The result, in SI [unit].
    unit : str
        Unit of `value`, as units.convert reads it; "-" for pure numbers [-].
    mark : str
        Mark of the formula: read, unnamed, memory, derived, practice, judgement, invented, given [-].
    source : str
        Edition, clause or table; or the plain words that there is none [-].
    words : str
        What the value is, in shop words [-].

    Examples
    --------
    >>> Step("face_volume_m3", "V_f", "V - V_c", (("V", 3.0, "m3"), ("V_c", 2.0, "m3")), 1.0, "m3",
    ...      "derived", "geometry", "volume of the face layer").value
    1.0

    References
    ----------
    Common practice, no source.
    """

    name: str
    symbol: str
    formula: str
    inputs: tuple
    value: float
    unit: str
    mark: str
    source: str
    words: str = ""

    def __post_init__(self):
        if self.mark not in MARKS:
            raise ValueError(f"mark of {self.name}: {self.mark!r} given; it must be one of {', '.join(MARKS)}")


def find(working, name):
    """Look a value up by name in a working.

    Parameters
    ----------
    working : sequence of Step
        The working of a plan or of one part of it [-].
    name : str
        The full name or an unmistakable part of it [-].

    Returns
    -------
    Step
        The line found [-].

    Raises
    ------
    ValueError
        When nothing, or more than one line, fits; the message lists what would.

    Examples
    --------
    >>> steps = (Step("face_volume_m3", "V_f", "by hand", (), 1.0, "m3", "derived", "geometry"),)
    >>> find(steps, "face").value
    1.0

    References
    ----------
    Common practice, no source.
    """
    wanted = name.strip().lower().replace(" ", "_")
    exact = [s for s in working if s.name == wanted]
    if exact:
        return exact[-1]
    hits = [s for s in working if wanted and wanted in s.name]
    if len(hits) == 1:
        return hits[0]
    if hits:
        raise ValueError(f"{name!r} fits several values: {', '.join(s.name for s in hits)}; give one of them in full")
    raise ValueError(f"no value is called {name!r}; there are: {', '.join(s.name for s in working)}")
