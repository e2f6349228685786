"""The compiler itself failed, which is no mistake of the cook's and should not happen.

What it was doing is left out: of this recipe a check, a page, or all that is made of it. The finding names the kind of
failure and its place in the compiler; everything else in the library is compiled.

Report the line, if you can with the recipe. With `TAMIS_RAISE=1` in the environment the command stops there instead,
and prints the full traceback.
"""

from __future__ import annotations

import os

from tamis.diagnostics import INTERNAL_ERROR, Diagnostic
from tamis.source import Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from types import FrameType

SWITCH = "TAMIS_RAISE"
"""Set in the environment, it lets every exception through: for whoever mends the compiler, and for its tests."""

_HINT = f"this is not your mistake: please report it with the recipe; {SWITCH}=1 prints the full traceback"


def internal_error(error: Exception) -> Diagnostic:
    """The finding for an exception that nobody foresaw. The disk's, or one that is asked for, goes on its way."""
    if isinstance(error, OSError) or os.environ.get(SWITCH):
        raise error
    return Diagnostic(INTERNAL_ERROR, "error", Span(0, 0), f"the compiler failed here: {told(error)}", _HINT)


def told(error: Exception) -> str:
    """The exception's type, the last place in the compiler that it came through, and the version."""
    from tamis import __version__

    kind, place = type(error).__name__, "an unknown place"
    trace = error.__traceback__
    while trace is not None:
        if _is_own(trace.tb_frame):
            frame = trace.tb_frame
            place = f"{frame.f_globals['__name__']}, line {trace.tb_lineno}, in {frame.f_code.co_name}"
        trace = trace.tb_next
    return f"{kind} at {place} (tamis {__version__})"


def _is_own(frame: FrameType) -> bool:
    return str(frame.f_globals.get("__name__", "")).partition(".")[0] == __name__.partition(".")[0]
