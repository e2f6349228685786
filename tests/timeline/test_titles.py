"""What a row is called: verbs and foods; a verb that has none takes the words or the tool beside it."""

from __future__ import annotations

import pytest

from tamis.compile import compile
from tamis.source import Source
from tamis.timeline.titles import title

from .making import KITCHEN


def title_of(line: str) -> str:
    text = f"title: Trial\nserves: 2\n\n# Trial\n\n{line}\n"
    recipe = compile(Source("trial.tamis", text), KITCHEN, {}).recipe
    return title(recipe.actions[0], recipe.language)


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("Stir [140 g rye flour] and [300 g water] smooth [in a bowl].", "Stir rye flour, water"),
        ("Lay [4 duck legs] [in a roasting tin].", "Lay duck legs in a roasting tin"),
        ("Lay them skin up [in a roasting tin].", "Lay them skin up in a roasting tin"),
        ("Tip the fat out into a heatproof bowl.", "Tip the fat out into a heatproof bowl"),
        ("Lift it on to a clean plate, and [rest for 10 min].", "Lift it on to a clean plate, rest"),
        ("Strain [through a fine sieve].", "Strain through a fine sieve"),
        ("Cover and [rest for 20 min] [in a bowl].", "Cover, rest"),
        ("[Bake for 20 min].", "Bake"),
        ("Scrape into [a 1-litre container].", "Scrape into a 1-litre container"),
        ("[Cook over low heat], [stirring all the time], [until 82 °C].", "Cook over low heat"),
        ("Turn down [to a low heat] and [simmer for 20 min].", "Turn down to a low heat, simmer"),
        ("Roll each up on a bench dusted with [rye flour] and press flat.", "Roll each up, press flat"),
        ("Turn the legs in [50 g duck fat] and [1 tsp fine salt].", "Turn the legs in duck fat, fine salt"),
        (
            "Fill the cases with [200 g jam], put [on a baking tray] and [leave for 20 min].",
            "Fill the cases with jam, put on a baking tray, leave",
        ),
        ("Take the foil off and [bake for 20 min].", "Take the foil off, bake"),
        ("Put the lid on, turn the heat down and [leave for 5 min].", "Put the lid on, turn the heat down, leave"),
    ],
)
def test_title(line: str, said: str) -> None:
    assert title_of(line) == said


@pytest.mark.parametrize("place", ["over", "on top of", "atop"])
def test_where_food_goes_is_said_before_what_was_made_before(place: str) -> None:
    text = (
        f"title: Pie\nserves: 2\n\n# Mash\n\nMash [1 kg potatoes].\n\n# Pie\n\nSpoon [200 g peas] [{place} the mash].\n"
    )
    recipe = compile(Source("pie.tamis", text), KITCHEN, {}).recipe
    assert title(recipe.actions[-1], recipe.language) == f"Spoon peas {place} mash"


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (
            "Rub [a salad bowl] with the cut side of [1 clove garlic, halved].",
            "Rub a salad bowl with the cut side of garlic",
        ),
        (
            "Add as much of [200 ml hot milk] as moistens them.",
            "Add as much of hot milk",
        ),
        ("Add as many of [12 plums] as fit.", "Add as many of plums"),
        ("Heat [1 l milk] [over simmering water].", "Heat milk over simmering water"),
        ("Lower [2 eggs] into [boiling water] and [boil for 10 min].", "Lower eggs into boiling water, boil"),
        ("Put them [in a pan] with [1 l fresh water, for boiling].", "Put them in a pan with fresh water"),
        (
            "Cover the bottom of [a large bucket] with [1 kg ice] and [100 g salt].",
            "Cover the bottom of a large bucket with ice, salt",
        ),
        ("Roll out [500 g pastry] [1 cm thick].", "Roll out pastry 1 cm thick"),
        ("Bring [1 l milk] [to the boil].", "Bring milk to the boil"),
        ("Whisk [2 eggs, separated] – the whites first, [in a clean bowl].", "Whisk eggs – the whites first"),
        (
            "Spread [1 lettuce] [on a plate] and heap [200 g peas] in the middle.",
            "Spread lettuce, heap peas in the middle",
        ),
        ("Turn [1 cake] out [on to a rack].", "Turn cake out"),
        (
            "Season generously with [1 tsp fine salt], garnish with [1 bunch watercress] "
            "and pour over [1 l rich chicken stock].",
            "Season generously with fine salt, garnish with watercress, pour over rich…",
        ),
    ],
)
def test_a_row_keeps_the_words_between_its_foods(line: str, said: str) -> None:
    assert title_of(line) == said
