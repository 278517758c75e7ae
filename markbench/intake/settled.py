"""What the teacher has settled before: plain data that the intake obeys."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any

from markbench.intake.corrections import TypedRow
from markbench.intake.tables import ColumnHints
from markbench.model import PieceKind, Portfolio


def _nothing() -> Mapping[str, Any]:
    return MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Settled:
    """The teacher's earlier choices.

    ``owners``: piece file → learner id, ``""`` for nobody; a key that ends in ``/`` settles
    everything in that folder or zip file (``work.zip!/``). ``kinds`` and ``hints``: by
    piece file. ``refused``: piece file → learners whose it is not, however well it fits.
    ``typed``: learner id → rows that stand in place of any file.
    ``corrections``: ``file|sheet|cell`` → the text to read instead. ``kept``: learner id →
    what was known of files that were removed after sign-off: the pieces, and the table with
    its findings where the table's own file went too.
    """

    owners: Mapping[str, str] = field(default_factory=_nothing)
    refused: Mapping[str, frozenset[str]] = field(default_factory=_nothing)
    kinds: Mapping[str, PieceKind] = field(default_factory=_nothing)
    hints: Mapping[str, ColumnHints] = field(default_factory=_nothing)
    typed: Mapping[str, tuple[TypedRow, ...]] = field(default_factory=_nothing)
    corrections: Mapping[str, str] = field(default_factory=_nothing)
    kept: Mapping[str, Portfolio] = field(default_factory=_nothing)

    def owner(self, file: str) -> str | None:
        """The learner settled for a piece, ``""`` for nobody, ``None`` if not settled."""
        place = len(file)
        owner = self.owners.get(file)
        while owner is None and (place := file.rfind("/", 0, place)) > 0:
            owner = self.owners.get(file[: place + 1])
        return owner
