"""`tamis COMMAND …`: finding the command and what its end means to the shell.

A check of one file should feel instant, so nothing is imported before it is known which command is
meant, and a command's own file imports the rest. Exit status: 0 nothing of level error, 1 errors (or
warnings with `--strict`), 2 the command could not run.
"""

from __future__ import annotations

import sys
from importlib import import_module

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.typed import Any

COMMANDS = {
    "check": "check recipes for mistakes",
    "build": "build a web site from a folder",
    "table": "print a recipe's ingredients",
    "scale": "print a recipe for more, for fewer, or for another tin",
    "safety": "print hazards, allergens and cautions",
    "timeline": "print the timeline: what to do when",
    "flow": "print what was understood, line by line, and why",
    "formula": "print a dough's formula in weights and percentages",
    "water": "work out the water temperature for a dough",
    "convert": "convert a measure to other units",
    "market": "print one market list for recipes",
    "cost": "print what a recipe costs",
    "explain": "what a rule finds, why it matters, how to fix it",
    "new": "begin a recipe file",
}


def main(argv: Sequence[str] | None = None) -> int:
    """Run a command line (without the program's name) and return its exit status."""
    words = list(sys.argv[1:] if argv is None else argv)
    _print_anything()
    if words and words[0] in COMMANDS:
        return _run(words[0], words[1:])
    return _without_command(words)


def _run(name: str, words: list[str]) -> int:
    command = import_module(f"tamis.cli.{name}")
    options = None
    try:
        options = _options(command, name, words)
        status: int = command.run(options)
    except _reasons() as reason:
        print(f"tamis {name}: {reason}", file=sys.stderr)
        return 2
    except Exception as error:
        from tamis.cli.common import tell_failure

        return tell_failure(name, getattr(options, "file", None), error)
    return status


def _options(command: Any, name: str, words: list[str]) -> Any:
    from tamis.cli.plain import Plain

    plain = Plain()
    command.arguments(plain)
    said = plain.read(words)
    if said is not None:
        return said
    from argparse import ArgumentParser

    parser = ArgumentParser(f"tamis {name}", description=(command.__doc__ or "").partition("\n\n")[0])
    command.arguments(parser)
    return parser.parse_args(words)


def _reasons() -> tuple[type[Exception], ...]:
    """What stops a command, its text for the cook."""
    from tamis.cli.common import Stop
    from tamis.library.files import Unreadable

    return Stop, Unreadable


def _without_command(words: list[str]) -> int:
    from tamis import __version__

    version = "--version"
    if words == [version]:
        print(f"tamis {__version__}")
        return 0
    from argparse import ArgumentParser, RawDescriptionHelpFormatter

    listing = "\n".join(f"  {name:<10}{what}" for name, what in COMMANDS.items())
    parser = ArgumentParser(
        "tamis",
        usage="tamis COMMAND …",
        description="A compiler for recipes.",
        epilog=f"commands:\n{listing}\n\n`tamis COMMAND --help` tells more.",
        formatter_class=RawDescriptionHelpFormatter,
    )
    parser.add_argument(version, action="version", version=f"tamis {__version__}")
    unknown = [word for word in words if not word.startswith("-")]
    if unknown:
        from tamis.quantity.near import nearest

        near = nearest(unknown[0], COMMANDS)
        hint = f"; did you mean `{near}`?" if near else f" (one of {', '.join(COMMANDS)})"
        print(f"tamis: there is no command “{unknown[0]}”{hint}", file=sys.stderr)
        return 2
    parser.parse_args(words)
    parser.print_help()
    return 2 if not words else 0


def _print_anything() -> None:
    """A terminal with a small character set shows a replacement, and does not stop the command."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure:
            reconfigure(errors="replace")
