"""Records: the `NamedTuple` of `typing`, with classes made in a fifth of the time.

`typing.NamedTuple` compiles each annotation and a `__new__` when a class is made, and a first check makes more than a
hundred classes before it has read a line. Here annotations give the names of the fields and nothing else; a class gets
a copy of a `__new__` for as many fields, with the names of its own. A type checker sees the class of `typing`, whose
rules hold: fields with their types, defaults last, methods and properties allowed.
"""

from __future__ import annotations

from tamis.typed import TYPE_CHECKING

made = tuple.__new__
"""`made(Span, (1, 2))` is `Span(1, 2)` in half the time, defaults and counting of fields aside: for what is made by the
hundred a recipe."""

if TYPE_CHECKING:
    from typing import NamedTuple as NamedTuple
else:
    from collections import _tuplegetter
    from types import FunctionType

    _GETTERS = tuple([_tuplegetter(at, "") for at in range(64)])  # the property of the field that stands so far on

    # fmt: off
    _NEW = (
        lambda _cls: made(_cls, ()),
        lambda _cls, a: made(_cls, (a,)),
        lambda _cls, a, b: made(_cls, (a, b)),
        lambda _cls, a, b, c: made(_cls, (a, b, c)),
        lambda _cls, a, b, c, d: made(_cls, (a, b, c, d)),
        lambda _cls, a, b, c, d, e: made(_cls, (a, b, c, d, e)),
        lambda _cls, a, b, c, d, e, f: made(_cls, (a, b, c, d, e, f)),
        lambda _cls, a, b, c, d, e, f, g: made(_cls, (a, b, c, d, e, f, g)),
        lambda _cls, a, b, c, d, e, f, g, h: made(_cls, (a, b, c, d, e, f, g, h)),
        lambda _cls, a, b, c, d, e, f, g, h, i: made(_cls, (a, b, c, d, e, f, g, h, i)),
        lambda _cls, a, b, c, d, e, f, g, h, i, j: made(_cls, (a, b, c, d, e, f, g, h, i, j)),
        lambda _cls, a, b, c, d, e, f, g, h, i, j, k: made(_cls, (a, b, c, d, e, f, g, h, i, j, k)),
        lambda _cls, a, b, c, d, e, f, g, h, i, j, k, m: made(_cls, (a, b, c, d, e, f, g, h, i, j, k, m)),
        lambda _cls, a, b, c, d, e, f, g, h, i, j, k, m, n: made(_cls, (a, b, c, d, e, f, g, h, i, j, k, m, n)),
        lambda _cls, a, b, c, d, e, f, g, h, i, j, k, m, n, o: made(_cls, (a, b, c, d, e, f, g, h, i, j, k, m, n, o)),
    )
    # fmt: on
    """A `__new__` for each number of fields, as a named tuple of the standard library has; to compile one when it is
    needed takes longer than all else about a class."""

    def _new_of_many(_cls):
        """That of a record with more."""
        return made(_cls, [*locals().values()][1:])

    def _code(fields):
        """The code of a `__new__` with such fields."""
        names = ("_cls", *fields)
        if len(fields) < len(_NEW):
            return _NEW[len(fields)].__code__.replace(co_varnames=names)
        size = len(names)
        return _new_of_many.__code__.replace(co_varnames=names, co_argcount=size, co_nlocals=size)

    # What all records can do. It is put into each class: to look through one class more above it takes longer.
    @classmethod
    def _make(cls, values):
        record = made(cls, values)
        if len(record) != len(cls._fields):
            raise TypeError(f"Expected {len(cls._fields)} arguments, got {len(record)}")
        return record

    def _replace(self, /, **values):
        record = made(self.__class__, map(values.pop, self._fields, self))
        if values:
            raise ValueError(f"Got unexpected field names: {list(values)!r}")
        return record

    def _asdict(self):
        return dict(zip(self._fields, self, strict=True))

    def __repr__(self):
        fields = (f"{name}={value!r}" for name, value in zip(self._fields, self, strict=True))
        return f"{self.__class__.__name__}({', '.join(fields)})"

    def __getnewargs__(self):
        return tuple(self)

    _METHODS = {
        "_make": _make,
        "_replace": _replace,
        "_asdict": _asdict,
        "__repr__": __repr__,
        "__getnewargs__": __getnewargs__,
        "__slots__": (),
    }

    class _RecordType(type):
        """Makes a class of records from the body of a class."""

        def __new__(cls, name, bases, body):
            if not bases:
                return super().__new__(cls, name, bases, body)
            fields = tuple(body["__annotations__"])
            defaults = {field: body.pop(field) for field in fields if field in body}
            if list(defaults) != list(fields[len(fields) - len(defaults) :]):
                raise TypeError(f"{name}: fields with a default come last")
            own = {"__new__": FunctionType(_code(fields), globals(), "__new__", tuple(defaults.values()))}
            own |= dict(zip(fields, _GETTERS))  # noqa: B905  # as many as there are fields
            own |= {"__match_args__": fields, "_fields": fields, "_field_defaults": defaults}
            return type(name, (tuple,), _METHODS | body | own)

    class NamedTuple(metaclass=_RecordType):
        """The base of a class of records."""
