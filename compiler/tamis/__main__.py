"""The program `tamis`, and `python -m tamis`."""

from __future__ import annotations

import os
import sys


def main() -> int:
    """Run the command line of this process, and end it; a status is returned only where nobody reads on."""
    import gc

    # A command is short and keeps nearly all it makes: looking for garbage costs more than it frees.
    gc.disable()
    from tamis.near_imports import install

    install()
    from tamis.cli.main import main as run

    try:
        status = run()
        for stream in (sys.stdout, sys.stderr):
            if stream is not None:  # closed by whoever started us
                stream.flush()
    except BrokenPipeError:
        # The reader (`| head`) has gone: whatever is still to be flushed at the end goes nowhere.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1
    except OSError as error:  # a full disk behind `>`, a drive pulled out
        os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
        where = f" ({error.filename})" if error.filename else ""
        print(f"tamis: cannot read or write{where}: {error.strerror or error}", file=sys.stderr)
        return 2
    except KeyboardInterrupt:
        return 130
    # To take apart all that a check has made would cost a tenth of its time; the system takes it back whole.
    os._exit(status)


if __name__ == "__main__":
    sys.exit(main())
