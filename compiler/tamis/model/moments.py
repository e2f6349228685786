"""Moments counted back from later work: a bird is taken out `[1 h before roasting]`, and rubbed within that hour."""

from __future__ import annotations

from tamis.diagnostics import Diagnostic
from tamis.model.words import model_words
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.kitchen.verbs import Verb, Verbs
    from tamis.model.flow import Flow
    from tamis.model.recipe import Action
    from tamis.reading.clauses import Time


def tie_moments(flow: Flow) -> None:
    """What stands between such a line and the work that it names is done meanwhile: only that work waits."""
    for number, labour in enumerate(flow.labours):
        moment = next((time for time in labour.times if time.before), None) if labour.times else None
        if moment is None or not _is_moment(flow.actions[number], flow.kitchen.verbs):
            continue
        later = _later(flow, number, moment.before)
        if later is None:
            flow.findings.append(_unknown(moment, flow.kitchen.language))
            continue
        for between in range(number + 1, later):
            action = flow.actions[between]
            if number in action.after:
                after = tuple(line for line in action.after if line != number)
                starts = tuple(sorted({*action.after_start, number}))
                flow.actions[between] = action._replace(after=after, after_start=starts, at_once=False)
        there = flow.actions[later]
        flow.actions[later] = there._replace(after=tuple(sorted({*there.after, number})))


def _is_moment(action: Action, verbs: Verbs) -> bool:
    """Whether a line is done so long before other work; where its own verb waits, it is how long that waits."""
    verb = verbs.of_base(action.work.verb) if action.work.verb else None
    return action.work.wait is not None and (verb is None or not verb.waits)


def _later(flow: Flow, number: int, said: str) -> int | None:
    """The first line after this one that does the work."""
    words, text = model_words(flow.kitchen.language), said.lower()
    verb = _work(text.split(), flow.kitchen.verbs)
    for later in range(number + 1, len(flow.actions)):
        verbs = [use.verb for use in flow.actions[later].verbs]
        cooks = text in words.cooking and any(other.cooks for other in verbs)
        if text in words.using or cooks or verb in verbs:
            return later
    return None


def _work(words: list[str], verbs: Verbs) -> Verb | None:
    """The verb of `roasting`, `folding in the cream`."""
    phrases = (" ".join(words[:size]) for size in range(len(words), 0, -1))
    return next((verb for verb in map(verbs.present, phrases) if verb is not None), None)


def _unknown(moment: Time, language: str) -> Diagnostic:
    message = f"“before {moment.before}”: no later line names that work, so this is planned as a separate wait"
    from tamis.quantity.times import duration

    wait = example(language, "leave", time=duration(moment.duration.lo))
    hint = f"name the work as its line does, or write the wait: {wait}"
    return Diagnostic("moment-untied", "warning", moment.clause.span, message, hint)
