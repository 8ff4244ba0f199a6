"""The commands: `python -m shop_calc plan JOB.toml` and the like."""

import argparse
import sys

from shop_calc import __version__


def _arguments():
    parser = argparse.ArgumentParser(
        prog="shop_calc", description="Plan hand-trowelled, two-layer concrete from a job file."
    )
    parser.add_argument("--version", action="version", version=__version__)
    commands = parser.add_subparsers(dest="command", required=True, metavar="command")
    plan = commands.add_parser("plan", help="print the whole plan of a job")
    plan.add_argument("job", help="a job file (.toml)")
    plan.add_argument("--why", metavar="NAME", help="explain one value: formula, inputs, mark, source; 'all' lists names")
    plan.add_argument("--units", choices=("us", "si", "both"), default="both", help="units of the print")
    lessons = commands.add_parser("lessons", help="copy the lessons and the data into a folder of your own")
    lessons.add_argument("folder", help="made when it is not there; a file that you edited is never touched")
    return parser


def _plan(options):
    from shop_calc.trade.explain import explain
    from shop_calc.trade.jobs.job import read_job
    from shop_calc.trade.plan import make_plan
    from shop_calc.trade.report import report

    plan = make_plan(read_job(options.job))
    if options.why == "all":
        return "\n".join(f"{step.name:40} {step.words}" for step in plan.working) + "\n"
    if options.why:
        return explain(plan.working, options.why, options.units) + "\n"
    return report(plan, options.units)


def _lessons(options):
    from shop_calc.lesson.copies import copy_lessons

    done = copy_lessons(options.folder)
    kept = "".join(f"  kept as you edited it: {name}\n" for name in done.kept)
    return f"{options.folder}: {done.words()}\n{kept}"


def main(arguments=None):
    """Run one command.

    Parameters
    ----------
    arguments : list of str, optional
        Words of the command line; those of the process if left out [-].

    Returns
    -------
    int
        0 when all went well, 2 when an entry has to be mended first [-].

    Examples
    --------
    >>> main(["plan", "no_such_file.toml"])
    2

    References
    ----------
    Common practice, no source.
    """
    options = _arguments().parse_args(arguments)
    try:
        text = {"plan": _plan, "lessons": _lessons}[options.command](options)
    except ValueError as error:
        print(str(error), file=sys.stderr)
        return 2
    if hasattr(sys.stdout, "reconfigure"):
        sys.stdout.reconfigure(errors="replace")  # a terminal without ² still gets its plan
    try:
        print(text, end="")
        sys.stdout.flush()
    except BrokenPipeError:  # somebody piped it into head
        sys.stderr.close()
    return 0


if __name__ == "__main__":
    sys.exit(main())
