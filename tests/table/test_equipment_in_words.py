"""Equipment that plain words name stands in the list, as what brackets name does."""

from __future__ import annotations

import pytest

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.source import Source

LINES = {
    "Tip into the pot.": ["pot"],
    "Lay on a baking tray.": ["baking tray"],
    "Lay on a large, deep baking tray.": ["large deep baking tray"],
    "Lay on two baking trays lined with baking paper.": ["2 baking trays", "baking paper"],
    "Heat it [in a large, heavy pan].": ["large heavy pan"],
    "Tip [into a shallow, straight-sided 20 × 30 cm tin].": ["shallow straight-sided tin, 20 × 30 cm"],
    "Tip [into two wide, shallow, heatproof bowls].": ["2 wide shallow heatproof bowls"],
    "Cut it [with a long, thin knife].": ["long thin knife"],
    "Tip [into a clean, dry, sterilised 500 ml jar].": ["clean dry sterilised jar, 500 ml"],
    "Cover with foil.": ["foil"],
    "Wrap tightly in baking paper and lay in a roasting tin.": ["baking paper", "roasting tin"],
    "Press through a fine sieve with a wooden spoon.": ["fine sieve", "wooden spoon"],
    "Return to the bowl.": [],
    "Set over a bowl of ice.": ["bowl of ice"],
    "Dip it into a deep dish of [200 g breadcrumbs].": ["deep dish"],
    "Stand it in a dish of [500 ml iced water].": ["dish"],
    "Stand it in a deep dish of the hot water.": ["deep dish"],
    "Add a bowl of [200 g breadcrumbs].": [],
    "Pour in a tin of [400 g tomatoes].": [],
    "Stand it in a large pan of simmering water.": ["large pan of simmering water"],
    "Have ready a bowl of iced water.": ["bowl of iced water"],
    "Grease a 20 cm cake tin.": ["cake tin, 20 cm"],
    "Butter six ramekins.": ["6 ramekins"],
    "Line two 900 g loaf tins.": ["2 loaf tins, 900 g"],
    "Get a wok hot.": ["wok"],
    "Lay foil loosely over it.": ["foil"],
    "Cover it with a sheet of baking paper.": ["baking paper"],
    "Spoon some on to each plate.": ["plate"],
    "Thread it on to 4 large skewers and lay a skewer on each plate.": ["4 large skewers", "plate"],
    "Scrape down the bowl.": [],
    "Peel off the strings.": [],
    "Pull out the string.": [],
    "Put on [the lid].": ["lid"],
    "Lay the lid on the pot": ["lid", "pot"],
    "Turn out on to [a marble slab].": ["marble slab"],
    "Fill into [5 jars (330 ml each)].": ["5 jars, 330 ml"],
    "Tip [on to a tray], then [on to a second tray].": ["2 trays"],
    "Tip [on to a tray], then [on to another tray] and back from [the second tray].": ["2 trays"],
    "Tip [on to a tray], [on to a second tray] and [on to a third tray].": ["3 trays"],
    "Tip [on to a tray], then [on to a tray on the second shelf].": ["tray"],
    "Use a fork.": ["fork"],
    "Melt it in the bottom of a deep pan.": ["deep pan"],
    "Put it in a 2-litre pudding basin.": ["2-litre pudding basin"],
    "Press it to the size of a dinner plate.": [],
    "Stir in a spoon of honey.": [],
    "Pour in a tin of tomatoes.": [],
    "Add two spoons sugar.": [],
    "Add a glass of wine.": [],
    "Skim the pan juices.": [],
    "Use 2 % of its weight.": [],
    "Strain through muslin in large bowl.": ["muslin", "large bowl"],
    "Weigh it down with a plate and two tins.": ["plate", "2 tins"],
    "Lay on a tray and wrap [in foil].": ["tray", "foil"],
    "Cut out with a 6 cm round cutter.": ["round cutter, 6 cm"],
    "Put half in a tin and the rest in another tin.": ["2 tins"],
    "Simmer in pan juices [for 2 min].": [],
    "Cook without a lid, then lift from the casserole.": [],
    "Put in the oven, on the middle shelf.": [],
    "Stir with your hands, in a figure of eight.": [],
    "Serve with rice.": [],
    "Press into a flat square, wrap [in cling film].": ["cling film"],
    "[Bake for 20 min at 180 °C] on two racks.": [],
    "[Bake for 20 min at 180 °C] on the middle rack, then cool on a rack.": ["rack"],
    "[Bake for 20 min at 180 °C] on a rack in a roasting tin.": ["rack", "roasting tin"],
    "Tip [into a 2-litre glass bowl] and cool.": ["2-litre glass bowl"],
    "Tip [into a heavy 3-litre saucepan] and cool.": ["heavy 3-litre saucepan"],
    "Spread [over 2 GN 1/1 trays] and cool.": ["2 GN 1/1 trays"],
    # each of those that are there
    "Lay them [in 2 frying pans], 4 cakes to a pan.": ["2 frying pans"],
    "Divide [between 6 ramekins], one to a dish.": ["6 ramekins"],
    "Pack [into 3 jars], about half a litre to a jar.": ["3 jars"],
    "Thread on to [6 skewers] and lay a skewer on each plate.": ["6 skewers", "plate"],
    "Lift two cakes to a plate.": ["plate"],
    "Serve, two to a plate.": ["plate"],
    # a lid that is eaten
    "Lay the lid over [the rice].": [],
    "Lay the lid over [the rice]": [],
    "Cover with a pastry lid and trim.": [],
    "Lay the lid on [the mixing bowl].": ["lid"],
    "Put the lid on, and [cook for 10 min].": ["lid"],
    # in the words of a wait
    "[Bake for 40 min] [at 180 °C], [covering with foil after 30 min].": ["foil"],
    "[Simmer for 40 min], [stirring with a wooden spoon].": ["wooden spoon"],
    "[Bake for 40 min, covered with foil] [at 180 °C].": ["foil"],
    "[Cool for 10 min in the mixing bowl].": [],
    # one or the other
    "Grind it [through a mincer], or pulse it [in a food processor].": ["mincer", "or food processor"],
    "Put it [in a wok] or a deep frying pan.": ["wok", "or deep frying pan"],
    "Stir with a fork or a wooden spoon, then lay [on a tray].": ["fork", "or wooden spoon", "tray"],
    "Beat [with a mixer] or [with a wooden spoon]. Scrape up [with a wooden spoon].": ["mixer", "wooden spoon"],
    "Cut it [with a knife], or tear it, and put it [in a bowl].": ["knife", "bowl"],
    "Lift [with a slotted spoon], one or two at a time, [on to a plate].": ["slotted spoon", "plate"],
    "Heat [2 heavy frying pans] and lay the cakes in the dry pans.": ["2 heavy frying pans"],
}


@pytest.mark.parametrize("line", LINES)
def test_what_a_line_needs(line: str) -> None:
    text = f"title: Rice\nserves: 4\n\n# Rice\n\nMix [400 g rice] and [400 g water] [in a mixing bowl].\n{line}\n"
    compiled = compile(Source("rice.tamis", text), default_kitchen("en"), {})
    assert [row.label for row in compiled.equipment] == ["mixing bowl", *LINES[line]]
