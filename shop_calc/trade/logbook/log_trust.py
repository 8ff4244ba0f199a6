"""One plain sentence on how far a fitted log may be trusted."""

FEW_POURS = 4  # judgement: up to here the fit is a hint


def trust_words(pour_count, miss_default_h, miss_left_out_h, far):
    """Say how far to trust a fit.

    Parameters
    ----------
    pour_count : int
        Pours that it stands on [-].
    miss_default_h : float or None
        Mean miss by the defaults [h].
    miss_left_out_h : float or None
        Mean miss of pours that the fit never saw [h].
    far : bool
        Whether the fit lies at the edge of the default band [-].

    Returns
    -------
    str
        One sentence [-].

    Examples
    --------
    >>> trust_words(1, 0.5, None, False)
    'One pour moves the plan part of the way: go by the cue, and log the next pour.'

    References
    ----------
    Common practice, no source.
    """
    if pour_count == 0:
        return "No look of this layer is in the log: the plan stands on its defaults."
    edge = "; it lies at the edge of what the defaults thought possible, so check thermometer and hours" if far else ""
    if pour_count == 1:
        return f"One pour moves the plan part of the way: go by the cue, and log the next pour{edge}."
    left, usual = miss_left_out_h * 60.0, miss_default_h * 60.0
    if left >= usual:
        return (
            f"Left out in turn, its {pour_count} pours are missed by {left:.0f} min, no better than the "
            f"{usual:.0f} min of the defaults: do not lean on it yet{edge}."
        )
    hint = "a good hint, no more, with so few pours" if pour_count <= FEW_POURS else "lean on it for this recipe"
    return (
        f"Left out in turn, its {pour_count} pours are missed by {left:.0f} min, by the defaults {usual:.0f} min: "
        f"{hint}, and still go by the cue{edge}."
    )
