"""One class at work: reads, computes, drafts, and takes a person's decisions."""

from markbench.session.session import STORE_NAME, Change, Session

__all__ = ["STORE_NAME", "Change", "Session"]
