"""Endings of the two files that travel between first and second marker."""

PACK_ENDING = ".markbench-pack"
REPLY_ENDING = ".markbench-reply"
