"""What the looks of several blocks share."""

import ipywidgets as w

# The arrow of a list, in a grey that is seen on white and on black.
ARROW = (
    "--jp-widgets-dropdown-arrow:url(\"data:image/svg+xml,%3Csvg xmlns='http://www.w3.org/2000/svg' "
    "viewBox='0 0 18 18'%3E%3Cpath fill='none' stroke='%238A8F96' stroke-width='2' d='M4 7l5 5 5-5'/%3E%3C/svg%3E\")"
)


def pages(count):
    """So many empty pieces of HTML that share one layout and one style: the page is there sooner.

    For pieces whose layout nobody changes.

    >>> first, second = pages(2)
    >>> first.layout is second.layout
    True
    """
    first = w.HTML()
    return (first, *(w.HTML(layout=first.layout, style=first.style) for _ in range(count - 1)))
