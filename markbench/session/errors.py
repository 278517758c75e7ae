"""What a session refuses, each with the sentence to show."""

from __future__ import annotations


class RefusedError(Exception):
    """A command that was understood and not carried out; the message says why."""


class SignedOffError(RefusedError):
    """The marks are frozen by sign-off; reopening is a decision of its own."""


class GoneByError(RefusedError):
    """A step that can no longer be taken back, or done again; those beyond it can."""


class SignatureError(RefusedError):
    """A signature to be taken back or given again: not before the person says that it shall."""


class PackError(RefusedError):
    """A moderation pack that cannot be made, opened or trusted."""


class BlindError(RefusedError):
    """A first mark asked for before the second is complete, or changed after looking."""


class MergeError(RefusedError):
    """A journal or reply that cannot be merged; everything wrong with it is listed."""
