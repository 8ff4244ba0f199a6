"""Which of our files a table comes from, so that one given for another gets one line and not a complaint for each entry."""

RECIPE_MARKS = ("parts", "doses", "w_cm", "cement_share")
RECIPE_KINDS = ("recipe", "bag")
JOB_MARKS = ("piece", "day", "room")


def file_kind(table):
    """Tell a recipe, a bag and a job apart by the entries that only one of them has.

    Not a check of any of them.

    Parameters
    ----------
    table : dict
        The table as read [-].

    Returns
    -------
    str or None
        recipe, bag or job; None where it has entries of both or of none [-].

    Examples
    --------
    >>> file_kind({"kind": "bag", "mass": "80 lb"}), file_kind({"piece": {}, "day": {}}), file_kind({"name": "x"})
    ('bag', 'job', None)

    References
    ----------
    Forms of our own, data/README.md.
    """
    kind = table.get("kind")
    named = kind if isinstance(kind, str) and kind in RECIPE_KINDS else None
    recipe = named or any(mark in table for mark in RECIPE_MARKS)
    job = any(mark in table for mark in JOB_MARKS)
    if bool(recipe) == job:
        return None
    return "job" if job else named or "recipe"
