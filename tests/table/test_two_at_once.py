"""Two vessels of one name are two while food lies in the first; and one vessel once that is free again."""

from __future__ import annotations

import pytest

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.source import Source

FIRST = "Whisk [3 eggs] [in a bowl] [until pale].\n"
MIX = "mix [200 g plain flour] with [50 g caster sugar] [in a bowl] [as flour mix]"
LINES = {
    # beside it, while the first is full
    f"{FIRST}[Meanwhile], {MIX}.\nFold in [the flour mix].": ["2 bowls"],
    f"{FIRST}[Meanwhile], {MIX.replace('a bowl', 'a second bowl')}.\nFold in [the flour mix].": ["2 bowls"],
    f"{FIRST}[Meanwhile], {MIX.replace('a bowl', 'another bowl')}.\nFold in [the flour mix].": ["2 bowls"],
    # what is put by, and what waits for another component
    f"M{MIX[1:]}.\n\n# Cake\n\n{FIRST}Fold in [the flour mix].": ["2 bowls"],
    # from a plate on to others
    "Fry [4 eggs] [in 1 tbsp butter] [in a frying pan] [for 2 min].\nLift them [on to a warm plate].\n"
    "Arrange [the eggs] [on 4 warm plates].": ["frying pan", "5 warm plates"],
    # by another word for the same
    "Boil [1 l milk] [in a stew-pan] [for 2 min].\n\n# Sauce\n\nMelt [50 g butter] [in a saucepan] with [the rice].":
    ["stew-pan", "saucepan"],
    # three of them
    f"{FIRST}\n# B\n\nMix [100 g honey] and [1 tbsp water] [in a bowl].\n\n# C\n\n"
    "Mix [50 g honey] and [1 tbsp milk] [in a bowl], and fold in [B] and [the rice].": ["3 bowls"],
    # the first is free again
    f"{FIRST}Pour [into a tin] and [bake for 20 min] [in the oven] [at 180 °C].\n"
    "Mix [100 g honey] and [1 tbsp water] [in a bowl].": ["bowl", "tin"],
    "Mix [500 g plain flour] and [300 ml water] [in a bowl].\nRoll it out and cut [into 8 pieces].\n"
    "Beat [1 egg] [in a bowl].": ["bowl"],
    "Boil [500 g potatoes] [in a pan] [for 20 min] and drain.\nMelt [50 g butter] [in a pan].": ["pan"],
    "Mix [100 g honey] and [1 tbsp water] [in a bowl] [as syrup].\nPour [the syrup] [into a jug].\n"
    "Beat [1 egg] [in a bowl].": ["bowl", "jug"],
    # a wait in the cold empties no bowl, a cooking does
    "Mix [100 g honey] and [1 tbsp water] [in a bowl] and [chill for 1 h].\n\n# B\n\n"
    "Beat [1 egg] [in a bowl] and fold in [the rice].": ["2 bowls"],
}  # fmt: skip


@pytest.mark.parametrize("lines", LINES)
def test_what_is_set_out(lines: str) -> None:
    text = f"title: Rice\nserves: 4\n\n# Rice\n\n{lines}\n"
    compiled = compile(Source("rice.tamis", text), default_kitchen("en"), {})
    assert [row.label for row in compiled.equipment] == LINES[lines]
