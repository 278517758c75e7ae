"""Read a class list: csv or spreadsheet, any sensible headings, in any usual language.

The heading row is the first of the upper rows whose cells name a person column; what
stands above it (school, class, date) is passed over. Everything odd is a finding and the
rest of the list is used: a list with one doubled id is still a list.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from markbench.intake.class_list_columns import (
    MOST_LEARNERS,
    heading_form,
    heading_row,
    looks_like_a_name,
    sheets_of,
)
from markbench.intake.kinds import stem
from markbench.intake.matching import Matcher
from markbench.intake.names import cut_camel, fold, name_parts
from markbench.intake.tables import column_letters, read_readings
from markbench.intake.tables.workbooks import UnreadableError
from markbench.intake.tree import MOST_TABLE_BYTES, Found, PieceError, Shelf, problem
from markbench.model import Brief, Concern, Finding, Learner, Source, joined, say

CLASS_LIST_STEMS = (
    "class list", "classlist", "class_list", "class-list", "roster", "register",
    "students", "learners", "pupils", "senarai nama", "klassenliste", "lista de clase",
    "liste de classe", "klassenlijst", "elenco", "lista klasy", "klasseliste",
)  # fmt: skip
CLASS_LIST_ENDINGS = (".csv", ".tsv", ".txt", ".xlsx", ".xlsm", ".xls", ".ods")
_FEWEST_NAMES = 3  # in a column that no heading calls one of names
_MOST_LIST_CANDIDATES = 40  # sheets at the top that are tried as an unnamed class list


@dataclass(frozen=True, slots=True)
class ClassList:
    """The learners in the list's order, and what was odd about it."""

    learners: tuple[Learner, ...]
    problems: tuple[Finding, ...] = ()
    partners: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class _Row:
    source: Source
    id: str
    name: str
    group: str
    partner: str
    surname: str = ""


def read_class_list(name: str, data: bytes, *, sure: bool = True) -> ClassList | None:
    """Read a class list from a file's bytes.

    ``sure``: the file is called a class list, so a list that cannot be understood is a
    finding. Otherwise ``None`` says "this is not a class list", and only a sheet whose
    every heading is one of a class list's is taken.
    """
    try:
        sheets = sheets_of(name, data)
    except UnreadableError as error:
        problem = _problem(
            name, say("The class list {file} could not be read: {why}.", file=name, why=str(error))
        )
        return ClassList((), (problem,)) if sure else None
    for sheet, cells in sheets:
        found = heading_row(cells, sure=sure)
        if found is None:
            continue
        row, columns = found
        rows = list(_rows(name, sheet, cells, row, columns))
        if len(rows) > 1 or (sure and rows):
            read = _learners(name, rows, has_ids="id" in columns.values())
            if read.learners or read.problems:
                return read
    if not sure:
        return None
    bare = _bare_names(name, sheets)
    if bare:
        return _learners(name, bare, has_ids=False)
    guessed = _names_by_looks(name, sheets)
    if guessed is not None:
        read, finding = guessed
        return replace(read, problems=(finding, *read.problems))
    text = say(
        "No heading of a class list was found in {file}; one row should name the columns, as “id, "
        "name, group”.",
        file=name,
    )
    return ClassList((), (_problem(name, text),))


def find_class_list(
    shelf: Shelf, found: Sequence[Found], problems: list[Finding]
) -> tuple[ClassList | None, str]:
    """The class list at the top of a class folder and its file; problems are added.

    A file called as one wins; else any one sheet whose every heading is a class list's.
    """
    top = [
        one
        for one in found
        if len(one.parts) == 1 and one.file.casefold().endswith(CLASS_LIST_ENDINGS)
    ]
    named = [one for one in top if _called_a_list(stem(one.file))]
    if len(named) > 1:
        names = ", ".join(one.file for one in named)
        text = say(
            "There is more than one class list ({names}); {file} is used.",
            names=names,
            file=named[0].file,
        )
        problems.append(problem(named[0].file, text))
    for one in named[:1]:
        try:
            data = shelf.read(one.file, MOST_TABLE_BYTES)
        except PieceError as error:
            problems.append(problem(one.file, str(error)))
            return None, one.file
        listed = read_class_list(one.file, data)
        if listed is not None and not listed.learners and _has_readings(one.file, data):
            break  # somebody's readings, whatever they are called
        return listed, one.file
    if len(top) > _MOST_LIST_CANDIDATES:
        return None, ""
    lists: list[tuple[ClassList, str]] = []
    for one in top:
        try:
            data = shelf.read(one.file, MOST_TABLE_BYTES)
        except PieceError:
            continue
        read = read_class_list(one.file, data, sure=False)
        if read is not None:
            lists.append((read, one.file))
    if not lists:
        return None, ""
    read, file = max(lists, key=lambda pair: len(pair[0].learners))
    if len(lists) > 1:
        names = ", ".join(name for _, name in lists)
        text = say(
            "Several files look like a class list ({names}); {file}, the longest, is used.",
            names=names,
            file=file,
        )
        problems.append(problem(file, text))
    return read, file


def _has_readings(file: str, data: bytes) -> bool:
    return read_readings(file, data, Brief(), "").table is not None


def _called_a_list(name: str) -> bool:
    """Whether a name is a class list's: one of the usual ones, or “Class list 10Q”.

    Words that may as well stand in a learner's file (“students”) count only alone.
    """
    words = [fold(word) for word in cut_camel(name)]
    runs = {"".join(words[i:j]) for i in range(len(words)) for j in range(i + 1, i + 4)}
    usual = {heading_form(text): text for text in CLASS_LIST_STEMS}
    if "".join(words) in usual:
        return True
    return any(" " in usual[run] or "list" in run or "lijst" in run for run in runs & usual.keys())


def _bare_names(name: str, sheets: Iterable[tuple[str, list[list[str]]]]) -> list[_Row]:
    """A file that is nothing but one name to a line is a class list as well."""
    for sheet, cells in sheets:
        filled = [(i, [c for c in row if c]) for i, row in enumerate(cells) if any(row)]
        if len(filled) > 1 and all(
            len(row) == 1 and any(letter.isalpha() for letter in row[0]) for _, row in filled
        ):
            return [
                _Row(Source(name, sheet, f"A{i + 1}", row[0]), "", row[0], "", "")
                for i, row in filled
            ]
    return []


def _names_by_looks(
    name: str, sheets: Iterable[tuple[str, list[list[str]]]]
) -> tuple[ClassList, Finding] | None:
    """A list whose headings say nothing known: the first column of full names, and that said."""
    for sheet, cells in sheets:
        for place in range(max(map(len, cells), default=0)):
            column = [(n, row[place]) for n, row in enumerate(cells) if place < len(row)]
            first = next((n for n, text in column if looks_like_a_name(text)), None)
            below = [(n, text) for n, text in column if first is not None and n >= first and text]
            named = [(n, text) for n, text in below if looks_like_a_name(text)]
            if len(named) < _FEWEST_NAMES or len(named) < 0.8 * len(below):
                continue
            text = say(
                "No heading of a class list was found in {file}; the names were taken from column "
                "{column}, which begins with “{first}”. One row should name the columns, as “id, "
                "name, group”.",
                file=name,
                column=column_letters(place),
                first=named[0][1],
            )
            rows = list(_rows(name, sheet, cells, named[0][0] - 1, {place: "name"}))
            return _learners(name, rows, has_ids=False), _problem(name, text)
    return None


# -- rows ----------------------------------------------------------------------------


def _rows(
    name: str, sheet: str, cells: Sequence[Sequence[str]], heading: int, columns: dict[int, str]
) -> Iterable[_Row]:
    places = {column: place for place, column in columns.items()}
    alone = heading >= 0 and sum(map(bool, cells[heading])) == 1
    for number, row in enumerate(cells[heading + 1 : heading + 1 + MOST_LEARNERS], heading + 2):

        def text(column: str, row: Sequence[str] = row) -> str:
            place = places.get(column)
            return row[place].strip() if place is not None and place < len(row) else ""

        person = text("name")
        if alone and len(row) > 1 and person:  # "Okafor, James" cut at its comma
            person = ", ".join(cell for cell in row if cell)
        given, surname = text("given"), text("surname")
        last = surname
        if not person:
            person = f"{given} {surname}".strip()
        elif given and not surname and not name_parts(given) & name_parts(person):
            last, person = person, f"{given} {person}"  # "Name" beside "Vorname" is the surname
        elif surname and not given and not name_parts(surname) & name_parts(person):
            person = f"{person} {surname}"
        # "Okafor, James": one comma puts the surname first.
        before, comma, after = person.partition(",")
        if comma and after.strip() and "," not in after:
            last, person = before.strip(), f"{after.strip()} {before.strip()}"
        raw = " | ".join(cell for cell in row if cell)
        if not raw:
            continue
        source = Source(name, sheet, f"A{number}", raw)
        yield _Row(source, text("id"), person, text("group"), text("partner"), last)


def _learners(name: str, rows: Sequence[_Row], *, has_ids: bool) -> ClassList:
    problems: list[Finding] = []
    learners: list[Learner] = []
    by_id: dict[str, _Row] = {}
    by_name: dict[str, list[str]] = defaultdict(list)
    wants_partner: list[tuple[str, _Row]] = []
    for row in rows:
        if not row.id and not any(letter.isalpha() for letter in row.name):
            if row.name or row.partner:
                problems.append(
                    _problem(
                        name,
                        say("{place} of the class list has no name.", place=str(row.source)),
                        row,
                    )
                )
            continue
        if has_ids and not row.id:
            text = say("{name} has no id in the class list; the name serves as id.", name=row.name)
            problems.append(_problem(name, text, row))
        if not row.name:
            problems.append(
                _problem(name, say("Id {id} has no name in the class list.", id=row.id), row)
            )
        identity = row.id or row.name
        key = identity.casefold()
        if key in by_id:
            other = by_id[key]
            if fold(other.name) == fold(row.name) and (row.id or not has_ids):
                text = say(
                    "{name} ({id}) stands twice in the class list.",
                    name=row.name or identity,
                    id=identity,
                )
                if has_ids:
                    problems.append(
                        _problem(name, joined((text, say("The second row is left out."))), row)
                    )
                    continue
            shared, identity = identity, _free(identity, by_id)
            text = say(
                "Two rows of the class list have the id {id}: {one} and {other}. {other} is called "
                "{own} here until the list is put right.",
                id=shared,
                one=other.name,
                other=row.name,
                own=identity,
            )
            problems.append(_problem(name, text, row))
            key = identity.casefold()
        by_id[key] = row
        by_name[" ".join(sorted(fold(row.name).split()))].append(identity)
        learners.append(
            Learner(identity, row.name or identity, row.group, row.partner, row.surname)
        )
        if row.partner:
            wants_partner.append((identity, row))
    for key, ids in by_name.items():
        if len(ids) > 1 and key:
            shown = learners[[learner.id for learner in learners].index(ids[0])].name
            text = say(
                "{n} learners are called {name} ({ids}); their files can be told apart by id "
                "alone.",
                n=len(ids),
                name=shown,
                ids=", ".join(ids),
            )
            problems.append(_problem(name, text))
    learners, pairs, odd = _partners(name, learners, wants_partner)
    return ClassList(tuple(learners), (*problems, *odd), pairs)


def _free(identity: str, taken: Iterable[str]) -> str:
    number = 2
    while f"{identity}-{number}".casefold() in taken:
        number += 1
    return f"{identity}-{number}"


def _partners(
    name: str, learners: list[Learner], wanted: Sequence[tuple[str, _Row]]
) -> tuple[list[Learner], tuple[tuple[str, str], ...], list[Finding]]:
    """Turn partners as typed (id or name) into ids; one-sided pairs hold for both."""
    if not wanted:
        return learners, (), []
    matcher = Matcher(learners)
    problems: list[Finding] = []
    partner: dict[str, str] = {}
    for identity, row in wanted:
        judgement = matcher.judge(row.partner)
        if not judgement.clear or judgement.best.learner == identity:
            text = say(
                "The partner “{partner}” of {id} is not clear from the class list.",
                partner=row.partner,
                id=identity,
            )
            problems.append(_problem(name, text, row))
            continue
        partner[identity] = judgement.best.learner
    for one, other in list(partner.items()):
        back = partner.setdefault(other, one)
        if back != one:
            text = say(
                "{one} names {other} as partner, and {other} names {back}; is it a group of three?",
                one=one,
                other=other,
                back=back,
            )
            problems.append(_problem(name, text))
    pairs = {tuple(sorted((one, other))) for one, other in partner.items()}
    known = [replace(learner, partner=partner.get(learner.id, "")) for learner in learners]
    return known, tuple((one, other) for one, other in sorted(pairs)), problems


def _problem(name: str, text: str, row: _Row | None = None) -> Finding:
    source = row.source if row else Source(name)
    return Finding("folder_problem", "", text, Concern.LOOK, sources=(source,))
