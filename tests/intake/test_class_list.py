"""Class lists as schools keep them. Every name is invented."""

from __future__ import annotations

import io

import pytest
import xlsxwriter

from markbench.intake.class_list import ClassList, read_class_list
from markbench.intake.class_list_columns import heading_of


def read(text: str, encoding: str = "utf-8", name: str = "class_list.csv") -> ClassList:
    found = read_class_list(name, text.encode(encoding))
    assert found is not None
    return found


def people(found: ClassList) -> list[tuple[str, str]]:
    return [(learner.id, learner.name) for learner in found.learners]


@pytest.mark.parametrize(
    ("text", "encoding"),
    [
        ("id,name\n01,Ana Silva\n02,Jörg Müller\n", "utf-8"),
        ("Admission No,Full Name\n01,Ana Silva\n02,Jörg Müller\n", "utf-8-sig"),
        ("Candidate number;Surname;First name\n01;Silva;Ana\n02;Müller;Jörg\n", "cp1252"),
        ("Nr\tVorname\tNachname\n01\tAna\tSilva\n02\tJörg\tMüller\n", "utf-16"),
        ("Matricule;Nom;Prénom\n01;Silva;Ana\n02;Müller;Jörg\n", "utf-8"),
        ("Numero de alumno,Apellidos,Nombre\n01,Silva,Ana\n02,Müller,Jörg\n", "utf-8"),
        ("No. Murid|Nama\n01|Ana Silva\n02|Jörg Müller\n", "utf-8"),
        ("Matricola,Cognome,Nome\n01,Silva,Ana\n02,Müller,Jörg\n", "utf-8"),
        ("Leerlingnummer;Achternaam;Voornaam\n01;Silva;Ana\n02;Müller;Jörg\n", "utf-8"),
        ("Nr ucznia;Nazwisko;Imię\n01;Silva;Ana\n02;Müller;Jörg\n", "utf-8"),
        ("Elevnummer;Etternavn;Fornavn\n01;Silva;Ana\n02;Müller;Jörg\n", "utf-8"),
        ("Código,Sobrenome,Nome\n01,Silva,Ana\n02,Müller,Jörg\n", "utf-8"),
        ('id,name\n01,"Silva, Ana"\n02,"Müller, Jörg"\n', "utf-8"),
        ("Invented School,,\nPhysics 10B,,\n,,\nID,NAME,CLASS\n01,Ana Silva,B\n02,Jörg Müller,B\n",
         "utf-8"),
        ("id,name,notes,Bus route\n01,Ana Silva,,4\n\n02,Jörg Müller,x,5\n,,,\n", "utf-8"),
    ],
)  # fmt: skip
def test_headings_delimiters_and_encodings(text: str, encoding: str) -> None:
    found = read(text, encoding)
    assert people(found) == [("01", "Ana Silva"), ("02", "Jörg Müller")]
    assert found.problems == ()


def test_spreadsheet_with_numbers_as_ids() -> None:
    held = io.BytesIO()
    book = xlsxwriter.Workbook(held, {"in_memory": True})
    sheet = book.add_worksheet("Class")
    sheet.write_row(0, 0, ["School of the invented", ""])
    sheet.write_row(2, 0, ["Index number", "Learner", "Group"])
    sheet.write_row(3, 0, [7, "Ana Silva", "B"])
    sheet.write_row(4, 0, [8, "Jörg Müller", "C"])
    book.close()
    found = read_class_list("class_list.xlsx", held.getvalue())
    assert found is not None
    assert people(found) == [("7", "Ana Silva"), ("8", "Jörg Müller")]
    assert [learner.group for learner in found.learners] == ["B", "C"]


def test_a_list_without_ids_uses_names() -> None:
    assert people(read("name\nAna Silva\nBo Lin\n")) == [
        ("Ana Silva", "Ana Silva"),
        ("Bo Lin", "Bo Lin"),
    ]
    assert people(read("Ana Silva\nBo Lin\n")) == [
        ("Ana Silva", "Ana Silva"),
        ("Bo Lin", "Bo Lin"),
    ]
    assert people(read("Name\nSilva, Ana\nLin, Bo\n")) == [
        ("Ana Silva", "Ana Silva"),
        ("Bo Lin", "Bo Lin"),
    ]


def test_duplicates_blanks_and_clashes_are_findings() -> None:
    found = read(
        "id,name\n01,Ana Silva\n01,Ana Silva\n02,Bo Lin\n02,Cy Dar\n,Eve Fox\n03,\n04,Ana Silva\n"
    )
    ids = [learner.id for learner in found.learners]
    assert ids == ["01", "02", "02-2", "Eve Fox", "03", "04"]
    said = " ".join(problem.message for problem in found.problems)
    assert "stands twice" in said
    assert "Two rows of the class list have the id 02: Bo Lin and Cy Dar" in said
    assert "Eve Fox has no id" in said
    assert "Id 03 has no name" in said
    assert "2 learners are called Ana Silva (01, 04)" in said
    assert all(problem.check == "folder_problem" for problem in found.problems)
    cells = {source.cell for problem in found.problems for source in problem.sources}
    assert {"A3", "A5", "A6", "A7"} <= cells


def test_partners_by_id_or_name() -> None:
    found = read("id,name,partner\n01,Ana Silva,02\n02,Bo Lin,\n03,Cy Dar,Eve Fox\n04,Eve Fox,\n")
    assert [learner.partner for learner in found.learners] == ["02", "01", "04", "03"]
    assert found.partners == (("01", "02"), ("03", "04"))
    odd = read("id,name,partner\n01,Ana Silva,02\n02,Bo Lin,03\n03,Cy Dar,Zed\n")
    said = " ".join(problem.message for problem in odd.problems)
    assert "Zed" in said
    assert "group of three" in said


def test_a_broken_list_is_a_finding_and_no_exception() -> None:
    for name, data in [
        ("class_list.xlsx", b"not a workbook"),
        ("class_list.csv", b""),
        ("class_list.csv", b"\x00\xff\x00\xff"),
        ("class_list.csv", b"x,y\n1,2\n"),
        ("class_list.ods", b"PK\x03\x04junk"),
    ]:
        found = read_class_list(name, data)
        assert found is not None
        assert found.learners == ()
        assert len(found.problems) == 1


def test_an_unnamed_sheet_is_a_class_list_only_if_every_heading_is_known() -> None:
    sure = b"id,name,class\n01,Ana Silva,B\n02,Bo Lin,B\n"
    assert read_class_list("10B.csv", sure, sure=False) is not None
    for text in (
        b"name,length / cm,t1\nAna,20,9.0\nBo,30,11.0\n",
        b"name,Ana Silva\nlength,20\n",
        b"Length / cm,Time / s\n20,9\n30,11\n",
        b"name\nAna Silva\nBo Lin\n",  # one column of anything may be called a name
    ):
        assert read_class_list("10B.csv", text, sure=False) is None


def test_headings_in_ten_languages() -> None:
    names = ["Full name", "Nama penuh", "Nom et prénom", "Vollständiger Name",
             "Nombre y apellidos", "Cognome e nome", "Nome completo", "Volledige naam",
             "Imię i nazwisko", "Navn"]  # fmt: skip
    assert {heading_of(name) for name in names} == {"name"}
    assert heading_of("Length / cm") == ""


def test_both_halves_of_a_name_under_one_heading_are_the_name() -> None:
    for text in ("Surname, Forename", "Forename / Surname", "Last name & first name"):
        assert heading_of(text) == "name"
    for text in ("Surname, Class", "Length, Time", ",", "Forename, Forename"):
        assert heading_of(text) == ""
    data = (
        b"Set 10Q;;\n;;\nAdm. No.;Surname, Forename;Tutor\n"
        b"7001;Okonjo, Tamsin;TQ\n7002;Wren, Percival;TQ\n"
    )
    found = read_class_list("set list.csv", data, sure=False)
    assert found is not None
    assert [(one.id, one.name) for one in found.learners] == [
        ("7001", "Tamsin Okonjo"),
        ("7002", "Percival Wren"),
    ]


@pytest.mark.parametrize(
    "heading",
    [
        "Name, Vorname", "Name Vorname", "Nachname Vorname", "Zuname, Vorname", "Vor- und Nachname",
        "Nom, prénom(s)", "Cognome Nome", "Naam, voornaam", "Nazwisko, imię", "Apellidos, nombre",
        "Efternamn, förnamn", "Sobrenome, nome", "Family name, given name", "Last, first",
        "Name (surname, first name)", "Nom de l'élève", "Name der Schülerin / des Schülers",
    ],
)  # fmt: skip
def test_a_heading_that_names_both_halves_of_a_name(heading: str) -> None:
    data = f"Class 9b;;\n;;\nNo;{heading};Note\n1;Okonjo, Tamsin Rose;\n2;Wren, Percival;late\n"
    found = read_class_list("class list.csv", data.encode())
    assert found is not None
    assert not found.problems
    assert [one.name for one in found.learners] == ["Tamsin Rose Okonjo", "Percival Wren"]


@pytest.mark.parametrize("heading", ["Class name", "Nr. Name", "First name Class", "Nom de rue"])
def test_a_heading_that_names_more_than_a_name_is_none_of_names(heading: str) -> None:
    assert heading_of(heading) == ""


@pytest.mark.parametrize(
    "rows",
    [
        "Name;Vorname\nOkonjo;Tamsin\nvan Dijk;Roos",
        "Vorname;Name\nTamsin;Okonjo\nRoos;van Dijk",
        "Nom;Prénom\nOkonjo;Tamsin\nvan Dijk;Roos",
        "Name;Surname\nTamsin;Okonjo\nRoos;van Dijk",
        "Nome;Cognome\nTamsin;Okonjo\nRoos;van Dijk",
        "Naam;Voornaam\nOkonjo;Tamsin\nvan Dijk;Roos",
        "Navn;Fornavn\nTamsin Okonjo;Tamsin\nRoos van Dijk;Roos",
        "Name;Rufname\nTamsin Okonjo;Tammy\nRoos van Dijk;Rosie",
        "Surname;Known as\nOkonjo;Tamsin\nvan Dijk;Roos",
    ],
)
def test_a_name_beside_a_first_name_is_the_surname(rows: str) -> None:
    found = read_class_list("class list.csv", rows.encode())
    assert found is not None
    assert [one.name for one in found.learners] == ["Tamsin Okonjo", "Roos van Dijk"]


def test_names_under_headings_nobody_knows_are_found_and_that_is_said() -> None:
    data = "Lfd;Sukunimi;Luokka\n1;Ojala, Anna;9b\n2;Virtanen, Otto;9b\n3;Korhonen, Ida;9b\n"
    found = read_class_list("class list.csv", data.encode())
    assert found is not None
    assert [one.name for one in found.learners] == ["Anna Ojala", "Otto Virtanen", "Ida Korhonen"]
    assert [one.message for one in found.problems] == [
        "No heading of a class list was found in class list.csv; the names were taken from column "
        "B, which begins with “Ojala, Anna”. One row should name the columns, as “id, name, group”."
    ]
    for text in ("Foo;Bar\n1;2\n3;4\n", "Foo;Bar\nto do;x\nnot yet;y\nAda Quill;z\nso on;z\n"):
        nothing = read_class_list("class list.csv", text.encode())
        assert nothing is not None
        assert not nothing.learners


def test_a_title_above_the_headings_is_no_heading() -> None:
    data = b"Students\nid;name;group\n1;Ana Silva;B\n2;Bo Lin;B\n"
    found = read_class_list("class list.csv", data)
    assert found is not None
    assert [(one.id, one.name, one.group) for one in found.learners] == [
        ("1", "Ana Silva", "B"),
        ("2", "Bo Lin", "B"),
    ]
