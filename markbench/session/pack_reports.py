"""The words of a written report: all of it that can leave without its author.

A document carries its author in its properties, its headers and its pictures. So only the
words go, as plain text; layout and figures stay behind. Rejected: the document itself with
its properties emptied, in which a name on the title page would still be read.
"""

from __future__ import annotations

import io
import re
import zipfile
import zlib
from collections.abc import Iterator
from xml.etree.ElementTree import Element, ParseError, fromstring

from markbench.model import say
from markbench.session.pack_media import NotCleanError

_MOST_BYTES = 20_000_000  # of text; a report of a hundred pages has about 300 000
_WORD = "{http://schemas.openxmlformats.org/wordprocessingml/2006/main}"
_TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"


def words_of(name: str, data: bytes) -> str:
    """The words of a text file, a PDF, or a document of a word processor (docx, odt).

    Raises :class:`NotCleanError` for any other kind, or where none can be read.
    """
    ending = name.rpartition(".")[2].casefold()
    if ending in ("txt", "md"):
        words = _decoded(data)
    elif ending == "docx":
        words = _lines(_member(data, "word/document.xml"), (f"{_WORD}p",), f"{_WORD}t")
    elif ending == "odt":
        words = _lines(_member(data, "content.xml"), (f"{_TEXT}p", f"{_TEXT}h"), "")
    elif ending == "pdf":
        words = _of_pdf(data)
    else:
        raise NotCleanError(say("names cannot be taken out of a report of this kind"))
    words = re.sub(r"\n{3,}", "\n\n", words.replace("\r\n", "\n")).strip()
    if not words:
        raise NotCleanError(say("no words could be read in the report"))
    return words + "\n"


def _decoded(data: bytes) -> str:
    for encoding in ("utf-8-sig", "cp1252"):
        try:
            return data.decode(encoding)
        except UnicodeDecodeError:
            continue
    return data.decode("latin-1")


def _member(data: bytes, name: str) -> Element:
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive, archive.open(name) as member:
            content = member.read(_MOST_BYTES + 1)
        if len(content) > _MOST_BYTES or b"<!DOCTYPE" in content[:2000]:
            raise NotCleanError(say("the report is not built as such a document should be"))
        return fromstring(content)
    except (KeyError, OSError, EOFError, RuntimeError, NotImplementedError, zipfile.BadZipFile,
            zlib.error, ParseError, RecursionError) as error:  # fmt: skip
        raise NotCleanError(say("the report cannot be read")) from error


def _lines(root: Element, paragraphs: tuple[str, ...], run: str) -> str:
    """One line for each paragraph; ``run``: the elements that hold words, empty for all."""

    def said(paragraph: Element) -> Iterator[str]:
        if not run:
            yield from paragraph.itertext()
            return
        for part in paragraph.iter():
            if part.tag == run:
                yield part.text or ""
            elif part.tag in (f"{_WORD}tab", f"{_WORD}br"):
                yield " "

    return "\n".join("".join(said(one)) for one in root.iter() if one.tag in paragraphs)


def _of_pdf(data: bytes) -> str:
    # Imported late: only a class whose brief allows reports waits for it.
    from pypdf import PdfReader
    from pypdf.errors import PyPdfError

    try:
        reader = PdfReader(io.BytesIO(data))
        return "\n\n".join(page.extract_text() for page in reader.pages)
    except (PyPdfError, ValueError, KeyError, TypeError, AttributeError, IndexError, OSError,
            RecursionError, NotImplementedError) as error:  # fmt: skip
        raise NotCleanError(say("the report cannot be read")) from error
