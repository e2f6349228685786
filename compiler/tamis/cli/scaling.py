"""The ways to ask for another amount, shared by the commands that take them."""

from __future__ import annotations

from tamis.cli.common import Stop
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    import argparse

    from tamis.compile import Compiled
    from tamis.diagnostics import Diagnostic
    from tamis.kitchen.house import Kitchen
    from tamis.scaling.scale import Scaled

WayName = Literal["serves", "makes", "by", "flour", "dough", "pan"]


class Way(NamedTuple):
    """An option, what may stand after it, and what that asks for."""

    name: WayName
    example: str
    what: str


WAYS = (
    Way("serves", "6", "for this many people"),
    Way("makes", "3 loaves", "how much of what the recipe makes"),
    Way("by", "1.5", "multiply the recipe"),
    Way("flour", "2 kg", "total flour"),
    Way("dough", "12 × 90 g", "total dough"),
    Way("pan", "23 cm round", "for another tin; of several sizes say which, as `23 cm round for 20 cm round`"),
)


class Outcome(NamedTuple):
    """A scaled recipe, what was done in a sentence, and what to mind about it."""

    scaled: Scaled
    sentence: str
    misleading: list[Diagnostic]


def scaling_arguments(parser: argparse.ArgumentParser, required: bool) -> None:
    """The options, of which one can be given (must be, if `required`)."""
    group = parser.add_mutually_exclusive_group(required=required)
    for way, example, what in WAYS:
        group.add_argument(f"--{way}", metavar="AMOUNT", help=f"{what}: --{way} {_quoted(example)}")


def _quoted(example: str) -> str:
    return f'"{example}"' if " " in example else example


def asked(options: argparse.Namespace) -> tuple[WayName, str] | None:
    """The way and the words that the cook gave, if any."""
    given = ((way.name, getattr(options, way.name)) for way in WAYS)
    return next(((way, text) for way, text in given if text is not None), None)


def outcome_of(way: WayName, text: str, compiled: Compiled, kitchen: Kitchen) -> Outcome:
    """The recipe scaled; raises Stop where the recipe or the wish does not give a factor."""
    from tamis.scaling.misleads import misleading
    from tamis.scaling.scale import scaled
    from tamis.scaling.wanted import factor_for

    if way == "pan":
        return _exchanged(text, compiled, kitchen)
    wanted = factor_for(way, text, compiled.recipe, kitchen)
    if wanted.problem:
        raise Stop(f"--{way}: {wanted.problem}")
    found = misleading(compiled, wanted.factor, kitchen)
    return Outcome(scaled(compiled, wanted.factor, kitchen), "", found)


def _exchanged(text: str, compiled: Compiled, kitchen: Kitchen) -> Outcome:
    from tamis.scaling.exchange import exchange_for, exchange_text, exchanged
    from tamis.scaling.misleads import misleading

    exchange = exchange_for(text, compiled.recipe, kitchen)
    if exchange.problem:
        raise Stop(f"--pan: {exchange.problem}")
    places = frozenset(tool.clause.span.start for tool in exchange.tools)
    found = misleading(compiled, exchange.factor, kitchen, places)
    return Outcome(exchanged(compiled, exchange, kitchen), exchange_text(exchange), found)
