"""What the looks of several blocks share."""

# The arrow of a list, in a grey that is seen on white and on black.
ARROW = (
    "--jp-widgets-dropdown-arrow:url(\"data:image/svg+xml,%3Csvg xmlns='http://www.w3.org/2000/svg' "
    "viewBox='0 0 18 18'%3E%3Cpath fill='none' stroke='%238A8F96' stroke-width='2' d='M4 7l5 5 5-5'/%3E%3C/svg%3E\")"
)
