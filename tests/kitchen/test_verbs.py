"""What the verbs mean, as tables that a cook can check."""

from __future__ import annotations

import re

import pytest

from tamis.assets import asset_text
from tamis.kitchen.make_verbs import made
from tamis.kitchen.verb_words import verb_words
from tamis.kitchen.verbs import Verb, Verbs

TEXT = asset_text("grammar/verbs.toml")
VERBS = Verbs.load("en")
STATIONS = {"", "oven", "grill", "ring", "mixer", "fridge", "freezer", "bath"}


def verb(phrase: str) -> Verb:
    found = VERBS.get(phrase)
    assert found is not None, phrase
    return found


# What holds of each verb, and nothing else of: waits keeps cooks heat adds removes separates divides names.
FLAGS = """
add          adds
stir         adds
stir in      adds
whisk        adds
return       adds
brush        adds
scatter      adds
serve        adds
knead
roll
beat
whip
cover        adds
bring        waits heat
heat         heat
melt         heat
bake         waits cooks heat
simmer       waits cooks heat
fry          waits cooks heat
deep-fry     waits cooks heat
grill        waits cooks heat
leave        waits
rise         waits
prove        waits
ferment      waits
cool         waits
thaw         waits
rest         waits keeps
chill        waits keeps
freeze       waits keeps
marinate     waits keeps
soak         waits keeps
cure         waits keeps
infuse       waits keeps
hold         keeps
keep         keeps
keep warm    keeps
discard      removes
remove       removes
fish out     removes
strain off   removes
strain       separates
drain        separates
divide       divides
cut          divides
set aside    names
keep back    names
"""
BOOLEANS = ("waits", "keeps", "cooks", "heat", "adds", "removes", "separates", "divides", "names")


@pytest.mark.parametrize("line", FLAGS.strip().splitlines())
def test_what_holds_of_a_verb(line: str) -> None:
    phrase, expected = line[:13].strip(), line[13:].split()
    assert [name for name in BOOLEANS if getattr(verb(phrase), name)] == expected


@pytest.mark.parametrize(
    ("phrase", "attention", "station"),
    [
        ("whisk", "hands", ""),
        ("fry", "hands", "ring"),
        ("sear", "hands", "ring"),
        ("grill", "hands", "grill"),
        ("simmer", "unattended", "ring"),
        ("bring", "unattended", "ring"),
        ("bake", "unattended", "oven"),
        ("roast", "unattended", "oven"),
        ("leave", "unattended", ""),
        ("rise", "unattended", ""),
        ("chill", "unattended", "fridge"),
        ("freeze", "unattended", "freezer"),
        ("keep warm", "unattended", ""),
    ],
)
def test_who_is_busy_and_what_is_taken_up(phrase: str, attention: str, station: str) -> None:
    assert (verb(phrase).attention, verb(phrase).station) == (attention, station)


@pytest.mark.parametrize(
    ("said", "base", "length"),
    [
        ("stir in the rest", "stir in", 2),
        ("stir the pot", "stir", 1),
        ("fold in three and turn", "fold", 3),
        ("fold in the flour", "fold in", 2),
        ("bring back", "bring", 2),
        ("bring together into a ball", "bring together", 2),
        ("leave to rise", "rise", 3),
        ("leave it be", "leave", 1),
        ("keep warm", "keep warm", 2),
        ("keep back", "keep back", 2),
        ("lower in", "lower in", 2),
        ("lower the oven", "lower", 1),
        ("broil", "grill", 1),
        ("caramelize", "caramelise", 1),
        ("refrigerate", "chill", 1),
    ],
)
def test_the_longest_phrase_wins(said: str, base: str, length: int) -> None:
    assert VERBS.match(said.split(), 0) == (verb(base), length)


def test_matching_begins_where_it_is_told_and_finds_nothing_in_prose() -> None:
    assert VERBS.match(["then", "stir", "in"], 1) == (verb("stir in"), 2)
    assert VERBS.match(["stir"], 1) is None
    assert VERBS.match(["slowly", "on", "to", "the", "yolks"], 0) is None


@pytest.mark.parametrize(
    ("form", "base"),
    [
        ("whisking", "whisk"),
        ("dusted", "dust"),
        ("floured", "flour"),
        ("lined", "line"),
        ("oiled", "oil"),
        ("stirring", "stir"),
        ("buttered", "butter"),
        ("whipped", "whip"),
        ("fried", "fry"),
        ("deep-fried", "deep-fry"),
        ("frozen", "freeze"),
        ("kept", "keep"),
        ("leaving", "leave"),
        ("put", "put"),
        ("puréed", "purée"),
        ("spatchcocked", "spatchcock"),
        ("sautéed", "fry"),
        ("folding in", "fold in"),
        ("stir", None),
        ("golden", None),
    ],
)
def test_a_participle_leads_to_its_verb(form: str, base: str | None) -> None:
    found = VERBS.participle(form)
    assert (found and found.base) == base


@pytest.mark.parametrize(
    ("base", "present", "past"),
    [
        ("stir", "stirring", "stirred"),
        ("mix", "mixing", "mixed"),
        ("stew", "stewing", "stewed"),
        ("peel", "peeling", "peeled"),
        ("season", "seasoning", "seasoned"),
        ("dredge", "dredging", "dredged"),
        ("dry", "drying", "dried"),
        ("spray", "spraying", "sprayed"),
        ("pan-fry", "pan-frying", "pan-fried"),
    ],
)
def test_the_spelling_of_participles(base: str, present: str, past: str) -> None:
    assert verb_words("en").participles(base) == (present, past)


@pytest.mark.parametrize(
    ("phrase", "purpose"),
    [
        ("dust", "for dusting"),
        ("grease", "for greasing"),
        ("butter", "for greasing"),
        ("oil", "for greasing"),
        ("line", "for lining"),
        ("season", "to taste"),
        ("garnish", "to garnish"),
        ("sprinkle", "for sprinkling"),
        ("serve", "to serve"),
        ("stir", ""),
    ],
)
def test_what_unmeasured_goods_are_for(phrase: str, purpose: str) -> None:
    assert verb(phrase).purpose == purpose


def test_the_times_are_in_seconds() -> None:
    assert verb("knead").takes == 8 * 60
    assert verb("peel").per_piece == 45
    assert verb("bring").estimate_per_kg == 5 * 60
    assert verb("braise").estimate == 2 * 3600


@pytest.mark.parametrize(
    ("phrase", "doubtful"),
    [
        ("cream", True),
        ("warm", True),
        ("toast", True),
        ("skin", True),
        ("whisk", True),
        ("add", False),
        ("bring", False),
    ],
)
def test_a_word_that_may_be_no_verb_says_so(phrase: str, doubtful: bool) -> None:
    assert verb(phrase).doubtful == doubtful


def test_a_misspelt_verb_finds_its_neighbour() -> None:
    assert VERBS.near("wisk") == "whisk"
    assert VERBS.near("simmmer") == "simmer"
    assert VERBS.near("accordion") is None


# Laws of the whole list.


def test_there_are_enough_verbs_and_each_can_be_found() -> None:
    assert len(list(VERBS)) >= 200
    for each in VERBS:
        assert VERBS.match(each.base.split(), 0) == (each, len(each.base.split()))


@pytest.mark.parametrize("each", list(VERBS), ids=lambda each: each.base)
def test_the_facts_of_a_verb_agree(each: Verb) -> None:
    assert each.base == each.base.lower()
    assert each.attention in ("hands", "unattended")
    assert each.station in STATIONS
    assert not each.waits or each.estimate > 0, "what waits for a cue alone needs an estimate"
    assert not each.keeps or each.attention == "unattended", "a window is no work"
    assert not (each.adds and each.removes)
    assert each.heat or each.station in ("", "fridge", "freezer")


def test_the_head_of_the_file_explains_each_fact() -> None:
    head = TEXT.partition("\n[")[0]
    explained = set(re.findall(r"^#   ([a-z_]+)", head, re.M)) | {"per_piece"}
    assert set(Verb._fields) - {"base", "name", "attention", "does"} <= explained


@pytest.mark.parametrize(
    "text",
    [
        '[a]\nstir = ""\n[b]\nstir = ""\n',
        '[a]\nstir = "also mix / mix"\n',
        '[a]\nstir = "tkes 2 min"\n',
        '[a]\nstir = "takes 2 minutes"\n',
        '[a]\nstir = "does"\n',
    ],
)
def test_a_faulty_file_is_refused(text: str) -> None:
    with pytest.raises((ValueError, TypeError, KeyError)):
        made(text, "en")
