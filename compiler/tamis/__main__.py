"""The program `tamis`, and `python -m tamis`."""

from __future__ import annotations

import os
import sys


def main() -> int:
    """Run the command line of this process and return its exit status."""
    import gc

    # A command is short and keeps nearly all it makes: looking for garbage costs more than it frees.
    gc.disable()
    from tamis.cli.main import main as run

    try:
        status = run()
        sys.stdout.flush()
    except BrokenPipeError:
        # The reader (`| head`) has gone: whatever is still to be flushed at the end goes nowhere.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1
    except KeyboardInterrupt:
        return 130
    return status


if __name__ == "__main__":
    sys.exit(main())
