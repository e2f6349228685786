"""A measure of something made before is a share of it, unless it is said of each piece."""

from __future__ import annotations

import pytest

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.source import Source

TEXT = """\
title: Parcels
serves: 4

# Filling

Mash [200 g ricotta] with [50 g parmesan, grated].

# Parcels

Cut [500 g puff pastry] [into 20 pieces].
{line}
[Bake for 20 min at 200 °C] [in the oven] [until golden].
"""


@pytest.mark.parametrize(
    ("line", "all_of_it"),
    [
        ("Put [1 tsp of the filling] in the middle of each.", True),
        ("Top each with [1 tsp of the filling].", True),
        ("Put [1 tsp of the filling] in the middle.", False),
        ("Put [half the filling] on each.", False),
        ("Spread [1 tsp of the filling]. Each is folded over.", False),
    ],
)
def test_so_much_for_each_takes_all(line: str, all_of_it: bool) -> None:
    said = compile(Source("parcels.tamis", TEXT.format(line=line)), default_kitchen("en"), {})
    assert ("product-left-over" not in {finding.rule for finding in said.findings}) is all_of_it
