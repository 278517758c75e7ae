"""One class at work: reads, computes, drafts, and takes a person's decisions."""

from markbench.session.keeping import STORE_NAME
from markbench.session.session import Change, Session

__all__ = ["STORE_NAME", "Change", "Session"]
