"""One file per class: an append-only journal of decisions."""
