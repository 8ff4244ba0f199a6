"""`python -m shop_calc.lesson.pictures FILE.html` (or FILE.png): all pictures on one page to look at."""

import argparse
import sys


def main(arguments=None):
    """Write the page; returns 0, or 2 when the name is no good."""
    parser = argparse.ArgumentParser(
        prog="python -m shop_calc.lesson.pictures",
        description="Put every picture on one page: colour, grey, two kinds of colour blindness. Invented numbers.",
    )
    parser.add_argument("file", help="where to write it; the ending .html or .png decides the kind")
    wanted = parser.parse_args(arguments).file
    from shop_calc.lesson.pictures.gallery import write_page

    try:
        print(f"Written: {write_page(wanted)}")
    except (ValueError, OSError) as error:
        print(error, file=sys.stderr)
        return 2
    return 0


if __name__ == "__main__":
    sys.exit(main())
