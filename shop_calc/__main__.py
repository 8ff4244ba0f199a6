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
    plan.add_argument("--log", metavar="FILE.csv", help="a shop log: the day is planned by your own pours")
    plan.add_argument("--strip-by", metavar="HH:MM", help="only answer: the sides shall be ready to come off by then")
    plan.add_argument("--leave-by", metavar="HH:MM", help="only answer: the last steel shall be done by then")
    sheet = commands.add_parser("sheet", help="write the shop sheet of a job: two pages to print and pin to the wall")
    sheet.add_argument("job", help="a job file (.toml)")
    sheet.add_argument("file", help="a name that ends in .html, or in .pdf where Chromium, Chrome or Edge can print it")
    sheet.add_argument("--log", metavar="FILE.csv", help="a shop log: the day is planned by your own pours")
    sheet.add_argument("--replace", action="store_true", help="write over the file when it is there")
    sheet.add_argument("--paper", choices=("letter", "a4"), default="", help="size of the paper; HTML fits both without it")
    lessons = commands.add_parser("lessons", help="copy the lessons and the data into a folder of your own")
    lessons.add_argument("folder", help="made when it is not there; a file that you edited is never touched")
    keys = commands.add_parser("keys", help="for a class: the answer key and printable question sheets")
    keys.add_argument("roster", help="a CSV file with a column 'code', one row for each student; 'name' if you like")
    keys.add_argument("folder", help="where the files shall be; made when it is not there")
    keys.add_argument("--lesson", metavar="NN", nargs="+", default=(), help="only these lessons, for example 01 02")
    keys.add_argument("--replace", action="store_true", help="write over the files when they are there")
    view = commands.add_parser("view", help="show the lessons without their code, to this machine only")
    view.add_argument("--port", type=int, default=8866, help="port on this machine")
    view.add_argument("--no-browser", action="store_true", help="do not open a page")
    return parser


def _plan(options):
    from shop_calc.trade.explain import explain
    from shop_calc.trade.jobs.job import read_job
    from shop_calc.trade.plan import make_plan
    from shop_calc.trade.report import report
    from shop_calc.units import one_system

    plan = make_plan(read_job(options.job), options.log)
    wanted = (("strip", options.strip_by), ("last_steel_end", options.leave_by))
    if any(when for _, when in wanted):
        from shop_calc.trade.plan_backwards import backwards_lines, next_clock

        answers = (backwards_lines(plan, event, next_clock(plan, when)) for event, when in wanted if when)
        return one_system("\n\n".join("\n".join(lines) for lines in answers) + "\n", options.units)
    if options.why == "all":
        return "\n".join(f"{step.name:40} {step.words}" for step in plan.working) + "\n"
    if options.why:
        return explain(plan.working, options.why, options.units) + "\n"
    return report(plan, options.units)


def _sheet(options):
    from shop_calc.lesson.sheet import save_sheet
    from shop_calc.trade.jobs.job import read_job
    from shop_calc.trade.plan import make_plan

    path = save_sheet(make_plan(read_job(options.job), options.log), options.file, replace=options.replace, paper=options.paper)
    how = "print it" if path.suffix.lower() == ".pdf" else "open it in a browser and print it"
    return f"{path}: two pages, written; {how}, front and back of one leaf\n"


def _lessons(options):
    from shop_calc.lesson.copies import copy_lessons

    done = copy_lessons(options.folder)
    kept = "".join(f"  kept as you edited it: {name}\n" for name in done.kept)
    return f"{options.folder}: {done.words()}\n{kept}"


def _keys(options):
    from shop_calc.lesson.classroom import write_keys

    names = write_keys(options.roster, options.folder, options.lesson, replace=options.replace)
    return "".join(f"{name}\n" for name in (f"{options.folder}:", *(f"  {name}" for name in names)))


def _view(options):
    import subprocess

    from shop_calc.lesson.view import command

    words, environment = command(options.port, not options.no_browser)
    print(f"The lessons without their code: http://127.0.0.1:{options.port}/ (Ctrl-C ends it)", flush=True)
    try:
        ended = subprocess.run(words, env=environment, check=False).returncode
    except KeyboardInterrupt:
        return "\n"
    if ended not in (0, -2, -15):
        raise ValueError(f"view: it ended with code {ended}; is port {options.port} taken? Try another: --port 8867")
    return ""


def _plain(text):
    from shop_calc.trade.problems import plain  # whatever was typed, it must not steer the terminal

    return plain(text)


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
        text = {"plan": _plan, "sheet": _sheet, "lessons": _lessons, "keys": _keys, "view": _view}[options.command](options)
    except ValueError as error:
        print(_plain(str(error)), file=sys.stderr)
        return 2
    if hasattr(sys.stdout, "reconfigure"):
        sys.stdout.reconfigure(errors="replace")  # a terminal without ² still gets its plan
    try:
        print(_plain(text), end="")
        sys.stdout.flush()
    except BrokenPipeError:  # somebody piped it into head
        sys.stderr.close()
    return 0


if __name__ == "__main__":
    sys.exit(main())
