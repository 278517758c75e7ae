"""Photos and films made fit to leave: no place, no device, no sound.

Photos go through the evidence's own stripping. Films are copied packet by packet into a
new container, without encoding again: only the picture goes over, so sound, data tracks
(where some cameras keep their position) and all tags stay behind. The copy is then read
back: if any tag is left, or a known key of a place stands outside the picture data, the
film is left out of the pack.
"""

from __future__ import annotations

import io

import av
from av.error import FFmpegError

from markbench.evidence.picture import PictureError, strip_metadata
from markbench.evidence.troubles import TROUBLES
from markbench.evidence.video.film import FOLLOWS_NOTHING
from markbench.model import say
from markbench.model.sentence import known_again

# QuickTime's and Android's keys for a place, and Apple's for place and device.
PLACE_KEYS = (b"\xa9xyz", b"com.apple.quicktime", b"loci", b"com.android", b"\xa9mak", b"\xa9mod")
_HARMLESS = {
    "major_brand", "minor_version", "compatible_brands", "encoder", "language",
    "handler_name", "vendor_id", "timecode", "duration",
}  # fmt: skip


class NotCleanError(Exception):
    """A photo or film that could not be made fit to leave; the message says why."""


def clean_photo(data: bytes) -> bytes:
    """A photo without any metadata. Raises :class:`NotCleanError`."""
    try:
        return strip_metadata(data)
    except PictureError as error:
        raise NotCleanError(
            say(
                "its place and device tags could not be taken out ({why})",
                why=known_again(str(error), TROUBLES),
            )
        ) from error


def clean_video(data: bytes) -> bytes:
    """A film's picture alone in a new container. Raises :class:`NotCleanError`."""
    try:
        made = _remuxed(data)
        left = tags_of(made)
    except (FFmpegError, AttributeError, ValueError, OSError, IndexError) as error:
        raise NotCleanError(
            say("the video is damaged or of a kind that cannot be copied without its tags")
        ) from error
    if left:
        raise NotCleanError(
            say("tags were left in the video ({tags})", tags=", ".join(sorted(left)))
        )
    return made


def tags_of(data: bytes) -> set[str]:
    """Names of the tags a film carries that could tell a place, a device or a person."""
    found = set()
    with av.open(io.BytesIO(data), options=FOLLOWS_NOTHING) as film:
        kept = [film.metadata, *(stream.metadata for stream in film.streams)]
        found |= {key for tags in kept for key in tags if key.lower() not in _HARMLESS}
        if any(stream.type != "video" for stream in film.streams):
            found.add("a track that is no picture")
    outside = b"".join(_outside_picture(data))
    found |= {key.decode("latin-1") for key in PLACE_KEYS if key in outside}
    return found


def _remuxed(data: bytes) -> bytes:
    target = io.BytesIO()
    with (
        av.open(io.BytesIO(data), "r", options=FOLLOWS_NOTHING) as film,
        av.open(target, "w", format="mp4", options={"fflags": "+bitexact"}) as copy,
    ):
        source = film.streams.video[0]
        stream = copy.add_stream_from_template(source)
        stream.metadata.clear()
        copy.metadata.clear()
        for packet in film.demux(source):
            if packet.dts is not None:
                packet.stream = stream
                copy.mux(packet)
    return target.getvalue()


def _outside_picture(data: bytes) -> list[bytes]:
    """All of an MP4 file but its picture data (ISO/IEC 14496-12: size, type, content)."""
    parts, at = [], 0
    while at + 8 <= len(data):
        size, kind, head = int.from_bytes(data[at : at + 4], "big"), data[at + 4 : at + 8], 8
        if size == 1:
            size, head = int.from_bytes(data[at + 8 : at + 16], "big"), 16
        end = len(data) if size == 0 else at + max(size, head)
        parts.append(data[at : at + head] if kind == b"mdat" else data[at:end])
        at = end
    return parts
