"""Work out the water temperature for a dough, or a mixer's friction factor.

All temperatures are in one scale: `24`, `24 °C` or `75 °F`; a bare number is °C. The friction is what the mixing adds,
in the same degrees; with --mixed (the dough as it came out) and --water it is worked out from a dough already made.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.cli.common import Stop
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    import argparse

    from tamis.formula.water import Bench, Scale

Measured = Literal["dough", "mixed", "water", "flour", "room", "preferment", "friction"]
_NAMES: tuple[Measured, ...] = ("dough", "mixed", "water", "flour", "room", "preferment", "friction")


def arguments(parser: argparse.ArgumentParser) -> None:
    """What `tamis water` takes."""
    wanted = parser.add_mutually_exclusive_group(required=True)
    wanted.add_argument("--dough", metavar="T", help="the temperature that the dough should have")
    mixed = "the temperature of a dough that was mixed, to find the friction factor"
    wanted.add_argument("--mixed", metavar="T", help=mixed)
    parser.add_argument("--water", metavar="T", help="the water's temperature then (with --mixed)")
    parser.add_argument("--flour", metavar="T", required=True, help="the flour's temperature")
    parser.add_argument("--room", metavar="T", required=True, help="the room's temperature")
    parser.add_argument("--preferment", metavar="T", help="the preferment's temperature, if there is one")
    parser.add_argument("--friction", metavar="D", help="friction factor: degrees that mixing adds (default: 0)")


def run(options: argparse.Namespace) -> int:
    """Print the temperature, in both scales, and how it was worked out."""
    from tamis.formula.water import Bench

    given, scale = _read(options)
    bench = Bench(given["flour"], given["room"], given.get("preferment"))
    if options.mixed is not None:
        return _friction(given, bench, scale)
    if options.water is not None:
        raise Stop("--water goes with --mixed; with --dough the water is what is worked out")
    return _water(given["dough"], bench, given.get("friction", Fraction(0)), scale)


def _read(options: argparse.Namespace) -> tuple[dict[Measured, Fraction], Scale]:
    """The temperatures by name, and their scale; mixed scales stop the command."""
    from tamis.quantity.degrees import typed_degrees

    given: dict[Measured, Fraction] = {}
    scales: dict[Scale, None] = {}
    for name in _NAMES:
        text = getattr(options, name)
        if text is None:
            continue
        found = typed_degrees(text)
        if found is None:
            raise Stop(f"--{name} {text}: expected degrees, as `24`, `24 °C` or `75 °F`")
        given[name] = found.value
        if found.scale:
            scales[found.scale] = None
    if len(scales) > 1:
        raise Stop("some temperatures are in °C and some in °F: give all in one scale")
    return given, "F" if "F" in scales else "C"


def _water(dough: Fraction, bench: Bench, friction: Fraction, scale: Scale) -> int:
    from tamis.formula.water import advice, in_other, water_for

    water = water_for(dough, bench, friction)
    other: Scale = "C" if scale == "F" else "F"
    print(f"water at {_degrees(water, scale)} ({_degrees(in_other(water, scale), other)})")
    print(f"  {bench.factor} × {_bare(dough)} − {_terms(bench)}{f' − {_bare(friction)}' if friction else ''}")
    if not friction:
        print("  friction factor taken as 0: a mixer warms the dough by several degrees, hands by only a few")
    caution = advice(water, scale)
    if caution:
        print(f"  {caution}")
    return 0


def _friction(given: dict[Measured, Fraction], bench: Bench, scale: Scale) -> int:
    from tamis.formula.water import friction_of

    if "water" not in given:
        raise Stop("--mixed needs --water: how warm was the water?")
    if "friction" in given:
        raise Stop("--friction goes with --dough; with --mixed it is what is worked out")
    friction = friction_of(given["mixed"], given["water"], bench)
    print(f"friction factor {_degrees(friction, scale)}")
    print(f"  {bench.factor} × {_bare(given['mixed'])} − {_terms(bench)} − {_bare(given['water'])}")
    return 0


def _terms(bench: Bench) -> str:
    parts = [bench.flour, bench.room, *([bench.preferment] if bench.preferment is not None else [])]
    return " − ".join(_bare(part) for part in parts)


def _bare(value: Fraction) -> str:
    from tamis.quantity.numerals import fixed

    text = fixed(abs(value), 1)
    return f"(−{text})" if value < 0 else text


def _degrees(value: Fraction, scale: Scale) -> str:
    return f"{_bare(value).strip('()')} °{scale}"
