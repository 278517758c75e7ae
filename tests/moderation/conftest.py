"""An invented class and its marks."""

import pytest
from invented_class import IDS, NAMES, film, mark_all, photo, table

from markbench.session import Session


@pytest.fixture(scope="session")
def evidence():
    return {"photo": [photo(n) for n in range(len(NAMES))], "film": film()}


@pytest.fixture
def folder(tmp_path, evidence):
    root = tmp_path / "Class 9Z"
    for place, name in enumerate(NAMES):
        own = root / name
        own.mkdir(parents=True)
        (own / f"{name} readings.csv").write_text(table(name, place), "utf-8")
        (own / f"{name} setup.jpg").write_bytes(evidence["photo"][place])
        (own / f"{name} selfie.jpg").write_bytes(evidence["photo"][place - 1])
    (root / NAMES[0] / f"{NAMES[0]} video.mp4").write_bytes(evidence["film"])
    rows = "\n".join(f"{i},{n}" for i, n in zip(IDS, NAMES, strict=True))
    (root / "class_list.csv").write_text(f"id,name\n{rows}\n", "utf-8")
    (root / "brief.toml").write_text(
        'evidence = ["setup_photo", "selfie"]\ngrades = { A = 12, B = 8 }\n'
        f'partners = [["{IDS[0]}", "{IDS[1]}"]]\n[place]\nlatitude_deg = 50.0\n',
        "utf-8",
    )
    return root


@pytest.fixture
def session(folder):
    opened = Session.open(folder, "T. Teacher")
    yield opened
    opened.close()


@pytest.fixture
def marked(session):
    mark_all(session)
    criterion = session.rubric.criteria[0]
    session.set_level(IDS[0], criterion.id, criterion.levels[-1].name, why="Ada left two out.")
    session.set_feedback(IDS[1], criterion.id, "Well timed, Ben, and better than ADA.")
    session.set_note(IDS[1], "A private word.")
    return session
