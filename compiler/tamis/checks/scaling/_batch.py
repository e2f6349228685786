"""What a batch is made of, and in which vessel it lies."""

from __future__ import annotations

from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Vessel


class Content:
    """What a batch is made of, in grams or millilitres: how much `air` is between raw leaves and pieces, how much of it
    is `gone`, how much lay in a `layer` to fry; the vessel in which it lies, the one before, and the one in which food
    was got ready for it."""

    __slots__ = ("air", "before", "gone", "layer", "liquid", "met", "solid", "sure", "vessel")

    def __init__(self) -> None:
        self.solid = self.liquid = self.gone = self.air = self.layer = 0
        self.sure = True
        self.vessel: Vessel | None = None
        self.before: Vessel | None = None
        self.met: Vessel | None = None

    @property
    def size(self) -> int:
        """What is left of it."""
        return max(0, self.solid + self.liquid - self.gone)

    def add(self, size: int, liquid: bool) -> None:
        """So much comes in; goes out, if it is less than nothing."""
        if liquid:
            self.liquid = max(0, self.liquid + size)
        else:
            self.solid = max(0, self.solid + size)
