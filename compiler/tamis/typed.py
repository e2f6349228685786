"""What the modules take from `typing`, without what `typing` costs a first check.

A type checker sees the names of `typing`. At run time hardly any of them is asked for anything: annotations stay text,
and of an alias only what it is made of (`get_args`).
"""

from __future__ import annotations

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any as Any
    from typing import Generic as Generic
    from typing import Literal as Literal
    from typing import Protocol as Protocol
    from typing import Self as Self
    from typing import TextIO as TextIO
    from typing import TypeVar as TypeVar
    from typing import cast as cast
    from typing import get_args as get_args
else:
    from types import GenericAlias

    Any = Protocol = Self = TextIO = object

    class Literal:
        """`Literal["us", "uk"]`: an alias of which `get_args` gives the words."""

        def __class_getitem__(cls, words):
            return GenericAlias(cls, words)

    class Generic:
        """`Generic[Thing]`: a base of no consequence."""

        def __class_getitem__(cls, _):
            return cls

    def TypeVar(name):
        """A name for what a generic class holds."""
        return name

    def cast(_, value):
        """The value, whose type is known better."""
        return value

    def get_args(alias):
        """What an alias is made of."""
        return alias.__args__
