"""Regular expressions that are compiled when they are first used.

A phase has dozens of them, and a check of a sound recipe uses few: those that look into a mistake wait until there is
one. To compile one takes as long as to import a small module.
"""

from __future__ import annotations

import re

from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:

    def pattern(text: str, flags: int = 0) -> re.Pattern[str]:
        """What `re.compile` gives."""
else:

    class pattern:
        """Stands for what `re.compile` gives; a method that was asked for once is an attribute from then on."""

        def __init__(self, text: str, flags: int = 0) -> None:
            self.pattern = text
            self._flags = flags

        def __getattr__(self, name: str) -> Any:
            found = getattr(re.compile(self.pattern, self._flags), name)
            setattr(self, name, found)
            return found
