"""Let a picture follow the result of a model that does not know it."""


class Follow:
    """A picture with a reader in front: it turns a result into what the picture takes.

    For slider blocks, which hand every result on as it comes.

    Parameters
    ----------
    picture : Picture
        Any picture of this folder [-].
    read : callable
        `read(result)`: the first argument of the picture's `update`, or a tuple of it and a dict of keywords [-].

    Examples
    --------
    >>> class Said:
    ...     figure, alt = None, ""
    ...     def update(self, rows, system="both"):
    ...         self.alt = f"{rows} {system}"
    >>> shown = Follow(Said(), lambda result: result["rows"])
    >>> shown.update({"rows": 3}, "si")
    >>> shown.alt
    '3 si'
    """

    def __init__(self, picture, read):
        self.picture, self._read = picture, read

    def update(self, result, system="both"):
        """Read the result and move the picture."""
        taken = self._read(result)
        more = {}
        if isinstance(taken, tuple) and len(taken) == 2 and isinstance(taken[1], dict):
            taken, more = taken
        self.picture.update(taken, system, **more)

    def __getattr__(self, name):
        if name == "picture":  # not there yet: do not ask ourselves for it again
            raise AttributeError(name)
        return getattr(self.picture, name)
