"""The lessons without their code, for a tablet in the workshop or a wall screen."""

import os
import shutil
import sys
from pathlib import Path

from shop_calc.lesson.copies import lessons_folder

PORT = 8866


def command(port=PORT, open_browser=True):
    """Say how the view is started: program, arguments and environment.

    Parameters
    ----------
    port : int
        Port on this machine [-].
    open_browser : bool
        True to open the page [-].

    Returns
    -------
    tuple of (list of str, dict)
        The command and the environment that it runs in [-].

    Raises
    ------
    ValueError
        When the view is not installed, or the port cannot be one.

    Examples
    --------
    >>> words, environment = command(8866, open_browser=False)
    >>> "--Voila.ip=127.0.0.1" in words
    True

    Notes
    -----
    Only this machine can reach it, and it shows results, never a cell that runs what a visitor types.

    References
    ----------
    Common practice, no source.
    """
    if isinstance(port, bool) or not isinstance(port, int) or not 1024 <= port <= 65535:
        raise ValueError(f"port: {port!r} given; it must be a whole number from 1024 to 65535")
    try:
        import voila  # noqa: F401  only asked whether it is there
    except ImportError:
        raise ValueError("view: not installed; add it with: python -m pip install voila") from None
    own = str(Path(__file__).parent)
    others = os.environ.get("JUPYTER_PATH")
    environment = {**os.environ, "JUPYTER_PATH": f"{own}{os.pathsep}{others}" if others else own}
    words = [
        sys.executable, "-m", "voila", str(lessons_folder()), "--template=shop", f"--port={port}",
        "--Voila.ip=127.0.0.1", "--Voila.port_retries=0", "--classic-tree",
    ]  # fmt: skip
    if not open_browser or not shutil.which(sys.executable):
        words.append("--no-browser")
    return words, environment
