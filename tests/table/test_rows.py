"""Single rows from a recipe's text: the amount as written, in metric and in US measures."""

from __future__ import annotations

import pytest

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.source import Source
from tamis.table.lines import apart
from tamis.table.showing import shown


@pytest.mark.parametrize(
    ("clause", "written", "metric", "us"),
    [
        ("[40–60 g butter]", "40–60 g", "40–60 g", "3 tbsp to ¼ cup"),  # USDA SR28 01145: 227 g a cup
        ("[1–2 tbsp plain flour]", "1–2 tbsp", "7.8–16 g", "1–2 tbsp"),  # 20081: 125 g a cup
        ("[1 can (28 oz) tomatoes]", "1 can (28 oz)", "1 can (795 g)", "1 can (28 oz)"),
        ("[2 14-ounce cans tomatoes]", "2 cans (14 oz each)", "2 cans (397 g each)", "2 cans (14 oz each)"),
        ("[2 mangoes (200 g flesh each)]", "2 (200 g flesh each)", "2 (200 g flesh each)", "2 (7 oz flesh each)"),
        ("[1 coconut (350 g flesh)]", "1 (350 g flesh)", "1 (350 g flesh)", "1 (12¼ oz flesh)"),
        ("[a 28-ounce can tomatoes]", "1 can (28 oz)", "1 can (795 g)", "1 can (28 oz)"),
    ],
)
def test_ranges_and_cans_in_other_units(clause: str, written: str, metric: str, us: str) -> None:
    text = f"title: Pot\nserves: 2\n\nStir {clause} [in a pan].\n"
    table = compile(Source("pot.tamis", text), default_kitchen("en"), {}).table
    assert tuple(shown(table.rows[0], default_kitchen("en"))) == (written, metric, us)


@pytest.mark.parametrize(
    ("clauses", "rows"),
    [
        (
            "[8 peppercorns] and [1 pinch ground black pepper]",
            [("peppercorns", "8"), ("ground black pepper", "1 pinch")],
        ),
        ("[1 pinch ground cloves], [4 cloves] and [2 cloves]", [("ground cloves", "1 pinch"), ("cloves", "6")]),
        ("[8 peppercorns] and [4 black peppercorns]", [("peppercorns", "12")]),
        ("[1 tsp black pepper] and [1/2 tsp black pepper]", [("black pepper", "1½ tsp")]),
        ("[2 onions] and [1 slice onion]", [("onions", "about 2")]),
        ("[2 partridges] and [2 partridge breasts]", [("partridges", "2"), ("partridge breasts", "2")]),
        ("[1 pheasant] and [4 pheasant legs]", [("pheasant", "1"), ("pheasant legs", "4")]),
        ("[2 partridge breasts] and [1 partridge breast]", [("partridge breasts", "3")]),
        (
            "[1 tsp cumin seeds], [2 tsp ground cumin] and [1/2 tsp cumin seeds]",
            [("cumin seeds", "1½ tsp"), ("ground cumin", "2 tsp")],
        ),
        (
            "[1 tsp black peppercorns], [1 tsp pepper] and [1/2 tsp ground black pepper]",
            [("black peppercorns", "1 tsp"), ("pepper", "1½ tsp")],
        ),
        (
            "[1 tsp coriander seeds] and [1 tsp ground coriander]",
            [("coriander seeds", "1 tsp"), ("ground coriander", "1 tsp")],
        ),
        (
            "[4 cardamom pods], [1 tsp ground cardamom] and [2 green cardamom pods]",
            [("cardamom pods", "6"), ("ground cardamom", "1 tsp")],
        ),
        (
            "[1 tsp allspice berries] and [1/4 tsp allspice]",
            [("allspice berries", "1 tsp"), ("allspice", "¼ tsp")],
        ),
        (
            "[1 tsp fennel seeds] and [1 tsp ground fennel]",
            [("fennel seeds", "1 tsp"), ("ground fennel", "1 tsp")],
        ),
        ("[1 tsp grated nutmeg] and [1/4 tsp nutmeg]", [("nutmeg", "1¼ tsp")]),
    ],
)
def test_a_spice_that_is_whole_stands_apart_from_it_ground(clauses: str, rows: list[tuple[str, str]]) -> None:
    text = f"title: Pot\nserves: 2\n\nStir {clauses} [in a pan].\n"
    table = compile(Source("pot.tamis", text), default_kitchen("en"), {}).table
    assert [(row.name, shown(row, default_kitchen("en"))[0]) for row in table.rows] == rows


@pytest.mark.parametrize(
    ("clauses", "said"),
    [
        ("[with plenty of water]", ["water as needed"]),
        ("[200 ml water] [with plenty of boiling water]", ["plus boiling water as needed"]),
        (
            "[60 g fresh breadcrumbs] and [120 g dried breadcrumbs, for coating]",
            ["120 g dried breadcrumbs for coating"],
        ),
        ("[60 g breadcrumbs] and [120 g dried breadcrumbs, for coating]", ["plus 120 g dried breadcrumbs for coating"]),
        ("[60 g rice flour] and [a little rice flour, for dusting]", ["plus a little rice flour for dusting"]),
    ],
)
def test_what_stands_apart_is_more_of_the_same_only_where_it_is(clauses: str, said: list[str]) -> None:
    text = f"title: Pot\nserves: 2\n\nStir {clauses} [in a pan].\n"
    assert apart(compile(Source("pot.tamis", text), default_kitchen("en"), {}).table, default_kitchen("en")) == said
