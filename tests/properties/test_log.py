"""The log tells what the walk did: read back from nothing, it gives the state of the walk after every entry."""

from __future__ import annotations

import random
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given, settings
from kitchen_table import compiled, demo_texts, without_one_clause, without_one_line
from nasty import FAMILIES
from test_masses import recipes
from test_never_raises import _HEADED

from tamis.kitchen.house import default_kitchen
from tamis.model.effects import Gives, Refers
from tamis.model.flow import Flow
from tamis.model.left_over import tell_left_over
from tamis.model.replay import Replay
from tamis.model.state import State
from tamis.model.walker import walk
from tamis.model.wanted import make_all
from tamis.reading.clauses import Reference
from tamis.reading.reader import read
from tamis.scaling.scale import scaled
from tamis.source import Source
from tamis.syntax.outline import parse
from tests.cases import Case, read_cases


class Watch:
    """Reads each entry back when it is written, and compares all that it touches with the state."""

    def __init__(self, text: str, stem: str = "dish") -> None:
        self.replay = Replay()
        kitchen = default_kitchen("en")
        document, _ = parse(Source(f"{stem}.tamis", text), "en")
        reading, _ = read(document, kitchen)
        used = {name: compiled(name, demo_texts()[name]).supply for name in reading.header.uses if name in demo_texts()}
        self.flow = Flow(reading, kitchen, used, [], walk)
        emit = State.emit
        watch = self

        def watched(state: State, *args: object) -> int:
            number = emit(state, *args)  # type: ignore[arg-type]  # as it came
            watch.compare(state, number)
            return number

        State.emit = watched  # type: ignore[method-assign]
        try:
            make_all(self.flow)
            tell_left_over(self.flow)
        finally:
            State.emit = emit  # type: ignore[method-assign]
        assert [entry.number for entry in self.flow.log] == list(range(len(self.flow.log)))
        self.compare_all()

    def compare(self, state: State, number: int) -> None:
        """The hand and the open batches after an entry."""
        entry = self.flow.log[number]
        self.replay.read(entry)
        hand = -1 if state.present is None else state.present.number
        assert entry.batch == hand == self.replay.hand.get(state.component, -1), entry
        assert [batch.number for batch in state.open] == list(self.replay.open.get(state.component, ())), entry
        if state.present is not None:
            self.compare_batch(hand)

    def compare_batch(self, number: int) -> None:
        batch, told = self.flow.begun[number], self.replay.batches[number]
        assert batch.foods == told.foods
        assert batch.names == told.names
        assert (batch.mass, batch.left, batch.pieces) == (told.mass, told.left, told.pieces)

    def compare_all(self) -> None:
        """Every batch in the end."""
        assert list(self.replay.batches) == list(range(len(self.flow.begun)))
        for number, batch in enumerate(self.flow.begun):
            self.compare_batch(number)
            assert self.replay.batches[number].product == (-1 if batch.product is None else batch.product)
        findings = [entry.effect for entry in self.flow.log if entry.effect in self.flow.findings]
        assert findings == self.flow.findings


@pytest.mark.parametrize("stem", demo_texts())
def test_the_log_of_a_recipe(stem: str) -> None:
    Watch(demo_texts()[stem], stem)


@pytest.mark.parametrize("stem", demo_texts())
def test_the_log_of_a_recipe_with_something_left_out(stem: str) -> None:
    text = demo_texts()[stem]
    cuts = [*without_one_line(text), *without_one_clause(text)]
    for cut in random.Random(stem).sample(cuts, min(len(cuts), 12)):
        Watch(cut.text, stem)


LIFTED = read_cases(Path(__file__).parents[1] / "language" / "reading" / "lifted.case")


@pytest.mark.parametrize("case", LIFTED, ids=lambda case: case.name)
def test_the_log_of_food_that_is_lifted_out(case: Case) -> None:
    heading = "" if case.given.startswith("# ") else "# Dish\n"
    Watch(f"title: Dish\nserves: 4\n\n{heading}{case.given}")


@settings(max_examples=60, deadline=None)
@given(recipes())
def test_the_log_of_shares_and_detours(made: tuple[str, object]) -> None:
    Watch(made[0])


@settings(max_examples=120, deadline=None)
@given(_HEADED)
def test_the_log_of_scraps(text: str) -> None:
    Watch(text)


@pytest.mark.parametrize("family", FAMILIES)
def test_the_log_of_nasty_input(family: str) -> None:
    Watch(FAMILIES[family](12))


@pytest.mark.parametrize("stem", demo_texts())
def test_every_clause_that_was_understood_has_its_entries(stem: str) -> None:
    """Each clause stands in the log in its line, with its words; a reference with what it means."""
    result = compiled(stem, demo_texts()[stem])
    told: dict[tuple[int, int], list[object]] = {}
    for entry in result.recipe.log:
        told.setdefault((entry.action, entry.read), []).append(entry.effect)
        assert entry.clause.start <= entry.words.start <= entry.words.end <= entry.clause.end
        assert entry.why.entry < entry.number
    for action in result.recipe.actions:
        for at, clause in enumerate(action.reads):
            effects = told[action.number, at]
            if isinstance(clause, Reference):
                assert any(isinstance(effect, Refers) for effect in effects)


def test_a_scaled_recipe_points_into_the_text_that_is_shown() -> None:
    text = demo_texts()["poured-custard"]
    original = compiled("poured-custard", text)
    shown = scaled(original, Fraction(3), default_kitchen("en")).shown
    assert [entry.words for entry in shown.log] == [entry.words for entry in original.recipe.log]
    gives = [
        [entry.effect for entry in log if isinstance(entry.effect, Gives)] for log in (original.recipe.log, shown.log)
    ]
    once, thrice = (sum(effect.food.mass.hi for effect in effects if effect.food) for effects in gives)
    assert thrice == 3 * once > 0
