"""One file per class: an append-only journal of decisions.

Why it is made so stands in DECISION-journal.md beside this file.
"""

from markbench.store.backups import backups_of, made_at
from markbench.store.errors import (
    StoreAwayError,
    StoreDamagedError,
    StoreError,
    StoreInUseError,
    StoreTooNewError,
)
from markbench.store.fold import fold
from markbench.store.holder import Holder
from markbench.store.journal import Break, Journal
from markbench.store.salvage import Salvaged, salvage

__all__ = [
    "Break",
    "Holder",
    "Journal",
    "Salvaged",
    "StoreAwayError",
    "StoreDamagedError",
    "StoreError",
    "StoreInUseError",
    "StoreTooNewError",
    "backups_of",
    "fold",
    "made_at",
    "salvage",
]
