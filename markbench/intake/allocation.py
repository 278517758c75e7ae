"""Reading a class makes some hundred thousand small objects that live on and form no cycles."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def without_collecting() -> Iterator[None]:
    """Put the cycle collector off meanwhile: it would visit every object again and again.

    The cost of its visits grows with the class; what is made here it could never free.
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()
