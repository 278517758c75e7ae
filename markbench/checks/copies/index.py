"""Which pairs are worth scoring, without looking at all of them.

Five timings that two tables share, up to a constant shift, become one key: their four
differences. Tables that share a key are candidates. A copy with half of its ten timings
altered still shares one. A class is small enough to compare everyone with everyone; the
index serves year groups and boards. There the threshold rises with the number of pairs, so
that more shared timings are needed to pass it and longer keys lose nothing; times written
to tenths agree by chance so often that only nearly whole tables can pass at all.
"""

from __future__ import annotations

import itertools

import numpy as np
from numpy.typing import NDArray

from markbench.checks.copies.tables import Tables

Ints = NDArray[np.int64]

_EVERYONE = 400  # up to here, all pairs
_MOST_VALUES = 10
# Timings in a key by the size of the group (chance agreements grow with its square, so keys
# lengthen), and where times are written to tenths.
_SHARED = ((5_000, 5), (30_000, 6), (10**12, 7))
_SHARED_TENTHS = ((5_000, 8), (10**12, _MOST_VALUES))
# Under one key a table meets this many neighbours at most: a key held by more is a set of
# common numbers, not shared readings.
_COMMON = 8


def candidates(tables: Tables) -> tuple[Ints, Ints]:
    """Pairs (first, second), first < second, that may share a table."""
    n = len(tables)
    if n <= _EVERYONE:
        first, second = np.triu_indices(n, 1)
        return first.astype(np.int64), second.astype(np.int64)
    values = _values(tables)
    fine = tables.step_s < 0.05
    lengths = [
        next(length for most, length in shared if n <= most) for shared in (_SHARED, _SHARED_TENTHS)
    ]
    codes = np.zeros(0, dtype=np.int64)
    for who, wanted in zip((np.flatnonzero(fine), np.flatnonzero(~fine)), lengths, strict=True):
        length = min(wanted, values.shape[1])
        for subset in itertools.combinations(range(values.shape[1]), length):
            codes = np.union1d(codes, _sharing(values[np.ix_(who, subset)], who, n))
    return codes // n, codes % n


def _values(tables: Tables) -> Ints:
    """Up to ten timings of each table in milliseconds, in order of size; −1 where absent.

    Rows are taken evenly where there are more, the first two timings of each.
    """
    times = tables.times_s[:, :, :2].reshape(len(tables), -1)
    milli = np.where(np.isfinite(times), np.round(times * 1000), -1).astype(np.int64)
    order = np.sort(np.where(milli < 0, np.iinfo(np.int64).max, milli), axis=1)
    order = np.where(order == np.iinfo(np.int64).max, -1, order)
    if order.shape[1] > _MOST_VALUES:
        keep = np.linspace(0, order.shape[1] - 1, _MOST_VALUES).round().astype(int)
        order = order[:, keep]
    return order


def _sharing(chosen: Ints, owners: Ints, n: int) -> Ints:
    """Codes first·n + second of tables whose chosen timings differ by one constant."""
    whole = (chosen >= 0).all(axis=1)
    chosen, owners = chosen[whole], owners[whole]
    keys = np.zeros(len(owners), dtype=np.uint64)
    for column in range(1, chosen.shape[1]):
        step = (chosen[:, column] - chosen[:, column - 1]).astype(np.uint64)
        keys = (keys ^ step) * np.uint64(0x9E3779B97F4A7C15)
        keys ^= keys >> np.uint64(29)
    order = np.argsort(keys)
    keys, owners = keys[order], owners[order]
    codes = []
    same = np.ones(len(keys), dtype=bool)
    for distance in range(1, min(_COMMON, len(keys))):
        # Sorted neighbours ``distance`` apart under one key; runs longer than _COMMON
        # give no more than their nearest neighbours.
        same = same[: len(keys) - distance] & (keys[distance:] == keys[:-distance])
        left = np.flatnonzero(same)
        if not len(left):
            break
        one, other = owners[left], owners[left + distance]
        codes.append(np.minimum(one, other) * n + np.maximum(one, other))
    return np.concatenate(codes) if codes else np.zeros(0, dtype=np.int64)
