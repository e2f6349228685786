"""The part of JSON Schema that our own schemas use, enough to hold data and schema together."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

TYPES: dict[str, Any] = {
    "object": dict,
    "array": list,
    "string": str,
    "integer": int,
    "number": (int, float),
    "boolean": bool,
    "null": type(None),
}
UNDERSTOOD = {
    *("$schema", "$defs", "$ref", "title", "description", "type", "properties", "required", "items"),
    *("additionalProperties", "const", "enum", "anyOf", "pattern"),
}


def faults(value: Any, schema: dict[str, Any], root: dict[str, Any], where: str = "$") -> Iterator[str]:
    """What is wrong with a value, a sentence each."""
    assert set(schema) <= UNDERSTOOD, f"this validator does not know {set(schema) - UNDERSTOOD}"
    if "$ref" in schema:
        yield from faults(value, root["$defs"][schema["$ref"].removeprefix("#/$defs/")], root, where)
    types = schema.get("type", [])
    if types and not any(_is(value, name) for name in ([types] if isinstance(types, str) else types)):
        yield f"{where}: {value!r} is no {types}"
        return
    if "const" in schema and value != schema["const"]:
        yield f"{where}: {value!r} is not {schema['const']!r}"
    if "enum" in schema and value not in schema["enum"]:
        yield f"{where}: {value!r} is none of {schema['enum']}"
    if "pattern" in schema and not re.search(schema["pattern"], value):
        yield f"{where}: {value!r} does not match {schema['pattern']}"
    if "anyOf" in schema and all(any(faults(value, each, root, where)) for each in schema["anyOf"]):
        yield f"{where}: {value!r} fits none of the choices"
    yield from _inside(value, schema, root, where)


def _inside(value: Any, schema: dict[str, Any], root: dict[str, Any], where: str) -> Iterator[str]:
    if isinstance(value, list):
        for at, item in enumerate(value):
            yield from faults(item, schema.get("items", {}), root, f"{where}[{at}]")
    if isinstance(value, dict) and "properties" in schema:
        yield from (f"{where}: {name} is missing" for name in schema.get("required", []) if name not in value)
        for name, item in value.items():
            if name in schema["properties"]:
                yield from faults(item, schema["properties"][name], root, f"{where}.{name}")
            elif schema.get("additionalProperties") is False:
                yield f"{where}: nobody knows {name}"


def _is(value: Any, name: str) -> bool:
    return isinstance(value, TYPES[name]) and not (isinstance(value, bool) and name in ("integer", "number"))
