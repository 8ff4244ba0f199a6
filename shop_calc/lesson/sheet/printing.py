"""Print a page to PDF with the browser that the person has; nothing is downloaded and nothing is asked of the net."""

import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

_NAMES = (
    "chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome", "microsoft-edge",
    "microsoft-edge-stable", "msedge",
)  # fmt: skip
_MAC = (
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
)
_WINDOWS = (
    "Google/Chrome/Application/chrome.exe",
    "Microsoft/Edge/Application/msedge.exe",
    "Chromium/Application/chrome.exe",
)
_WINDOWS_ROOTS = ("PROGRAMFILES", "PROGRAMFILES(X86)", "LOCALAPPDATA")
_SWITCHES = (
    "--headless", "--disable-gpu", "--no-first-run", "--no-default-browser-check", "--disable-extensions",
    "--disable-background-networking", "--disable-component-update", "--disable-sync", "--no-pdf-header-footer",
)  # fmt: skip
LONGEST_S = 120


def find_browser():
    """Look for a browser that prints without a window.

    Returns
    -------
    str or None
        Its path; None when there is none [-].

    Examples
    --------
    >>> find_browser() is None or Path(find_browser()).exists()
    True

    References
    ----------
    Usual places of installation, common practice, no source.
    """
    for name in _NAMES:
        found = shutil.which(name)
        if found:
            return found
    places = list(_MAC) if sys.platform == "darwin" else []
    if sys.platform == "win32":
        roots = [os.environ[name] for name in _WINDOWS_ROOTS if os.environ.get(name)]
        places = [str(Path(root) / rest) for root in roots for rest in _WINDOWS]
    return next((place for place in places if Path(place).is_file()), None)


def print_pdf(html, browser, folder):
    """Print a page.

    Not for pages that load something: it is printed as it stands.

    Parameters
    ----------
    html : str
        A whole document [-].
    browser : str
        What `find_browser` gave [-].
    folder : str or path-like
        Where a passing folder may be made; a browser in a cage often sees only the person's own folders [-].

    Returns
    -------
    bytes
        A PDF file [-].

    Raises
    ------
    ValueError
        When the browser does not print, or the folder cannot be written to.

    Examples
    --------
    >>> print_pdf("<p>", "no_such_browser", ".")
    Traceback (most recent call last):
    ...
    ValueError: sheet: no_such_browser did not print (No such file or directory); write an .html file and print that

    References
    ----------
    Headless printing of Chromium, Chrome and Edge.
    """
    try:
        with tempfile.TemporaryDirectory(prefix="shop-sheet-", dir=folder, ignore_cleanup_errors=True) as passing:
            page, out = Path(passing).resolve() / "sheet.html", Path(passing).resolve() / "sheet.pdf"
            page.write_text(html, encoding="utf-8")
            root = ("--no-sandbox",) if hasattr(os, "geteuid") and os.geteuid() == 0 else ()
            own = (f"--user-data-dir={page.parent / 'profile'}", f"--print-to-pdf={out}")
            words = [browser, *_SWITCHES, *root, *own, page.as_uri()]
            done = subprocess.run(words, capture_output=True, timeout=LONGEST_S)
            if out.is_file() and (data := out.read_bytes()).startswith(b"%PDF"):
                return data
            why = f"it ended with {done.returncode}"
    except subprocess.TimeoutExpired:
        why = f"it took longer than {LONGEST_S} s"
    except OSError as error:
        why = error.strerror or type(error).__name__
    raise ValueError(f"sheet: {Path(browser).name} did not print ({why}); write an .html file and print that")
