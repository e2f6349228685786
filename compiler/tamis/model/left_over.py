"""What was named and never used, and what a share left over: told once all components are made."""

from __future__ import annotations

from tamis.diagnostics import Diagnostic, Severity
from tamis.model.state import State
from tamis.source import Span
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.model.batch import Batch
    from tamis.model.flow import Flow


def tell_left_over(flow: Flow) -> None:
    """Say it of each batch that it is true of."""
    for batch in flow.batches:
        if batch.product is None or batch.origin in ("by-product", "used-recipe"):
            continue
        product = flow.products[batch.product]
        if batch.origin == "named" and batch.left == 1 and batch.taken_at is None:
            made = "lifted out" if batch.lifted_from else "named"
            message = f"“{product.name}” is {made} here and never used"
            the = example(flow.kitchen.language, "the", name=product.name.lower())
            hint = f"bring it back with {the}, or discard it" if batch.lifted_from else "use it, or discard it"
            _tell(flow, "product-unused", product.span, message, hint)
        elif batch.origin in ("component", "named") and batch.shared and batch.left > 0 and batch.taken_at:
            message = f"{_how_much(batch)} “{product.name.lower()}” is left over after the last share of it"
            rest = example(flow.kitchen.language, "the_rest", name=product.name.lower())
            if _measured_out(flow, batch.taken_at) or _may_wait(flow, product.component):
                hint = f"if that is meant, say what becomes of it; else use {rest}"
                _tell(flow, "product-left-over", batch.taken_at, message, hint, "information")
            else:
                _tell(flow, "product-left-over", batch.taken_at, message, f"use {rest}, or all of it here")


def _measured_out(flow: Flow, span: Span) -> bool:
    """Whether the last share of it was measured, as 600 ml of the stock: whoever measures knows that some stays."""
    for named in [named for labour in flow.labours for named in labour.references]:
        if named.clause.span == span and named.share:
            return named.share.measure is not None and bool(named.share.measure.unit)
    return False


def _may_wait(flow: Flow, component: int) -> bool:
    """Whether the recipe tells how long it keeps: what is more than the dish takes is then made on purpose."""
    return bool(flow.reading.components[component].ahead)


def _how_much(batch: Batch) -> str:
    """So many of its pieces, where these were taken one by one."""
    if batch.pieces is None or not batch.pieces[0].single:
        return "some of"
    whole = batch.pieces[0].lo
    number = batch.left * whole
    return f"{number} of the {whole} pieces of" if number.denominator == 1 else "some of"


def _tell(flow: Flow, rule: str, span: Span, message: str, hint: str, severity: Severity = "error") -> None:
    end = State(flow, -1)
    end.at(-1, span, span, -1)
    end.tell(Diagnostic(rule, severity, span, message, hint))
