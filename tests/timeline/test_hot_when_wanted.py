"""What is heated for food is hot when the food is ready: not sooner, and in the time that its mass takes."""

from __future__ import annotations

import pytest

from tamis.compile import compile
from tamis.source import Source
from tamis.timeline.rows import Entry

from .making import KITCHEN

HEAD = "title: Trial\nserves: 4\n\n"


def entries(text: str) -> tuple[Entry, ...]:
    compiled = compile(Source("trial.tamis", HEAD + text), KITCHEN, {})
    assert [finding for finding in compiled.findings if finding.severity == "error"] == []
    return compiled.timeline.entries


def row(found: tuple[Entry, ...], words: str) -> Entry:
    return next(entry for entry in found if words in entry.title)


FAT = """\
# Fat
{fat}

# Dish
Mix [200 g plain flour] with [200 ml water] [in a bowl] [until smooth].
Dip [600 g cauliflower] into it.
Put into [the fat] and [fry for 6 min] [until brown].
"""


@pytest.mark.parametrize(
    ("fat", "least", "most"),
    [
        ("Heat [200 g lard, for frying] [in a deep pan] [to 190 °C].", 4, 6),
        ("Heat [900 g lard, for frying] [in a deep pan] [to 190 °C].", 9, 13),
        ("Melt [900 g lard, for frying] [in a deep pan] and heat it [to 190 °C].", 9, 15),
        ("Heat [2 l sunflower oil, for deep-frying] [in a deep pan] [to 180 °C].", 15, 20),
    ],
)
def test_fat_heats_by_its_mass_and_is_hot_when_the_food_is_ready(fat: str, least: int, most: int) -> None:
    found = entries(FAT.format(fat=fat))
    heats, fries, dips = row(found, "eat"), row(found, "fry"), row(found, "Dip")
    assert least * 60 <= heats.end - heats.start <= most * 60
    assert heats.end == fries.start == dips.end
    assert not heats.segments[-1].hands


BESIDE = """\
# Cabbage
[Boil for 20 min] [800 g white cabbage, shredded] [in plenty of boiling water] [in a large pot] [until tender].

# Sauce
[Meanwhile], {sauce}

# Dish
Drain [the cabbage] [in a colander].
Stir [1 tbsp olive oil] into [the sauce].
[At once], mix in [the cabbage].
"""


@pytest.mark.parametrize(
    "sauce",
    [
        "stir [100 ml vinegar] with [50 g sugar] [in a saucepan] and bring [to the boil].",
        "boil [200 ml vinegar] [in a saucepan] [for 4 min].",
        "stir [100 ml vinegar] with [50 g sugar] [in a bowl].",
    ],
)
def test_what_is_made_meanwhile_ends_with_the_wait_that_it_runs_beside(sauce: str) -> None:
    found = entries(BESIDE.format(sauce=sauce))
    boils = row(found, "Boil white cabbage")
    made = row(found, "vinegar")
    assert boils.start <= made.start
    assert made.end >= boils.end
