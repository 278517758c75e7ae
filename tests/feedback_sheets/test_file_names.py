import re
import unicodedata

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from markbench.export.file_names import MOST_BYTES, safe_names

# Microsoft, "Naming Files, Paths, and Namespaces": reserved signs and device names.
RESERVED = re.compile(r'[<>:"/\\|?*\x00-\x1f]')
DEVICES = "CON PRN AUX NUL CONIN$ CONOUT$".split() + [
    f"{port}{digit}" for port in ("COM", "LPT") for digit in "0123456789¹²³"
]

AWKWARD = st.one_of(
    st.text(max_size=40),
    st.text(alphabet=" .-…/\\:*?\u202e\u200f\u0000\u007fAaÅåßİıéﬁ①", max_size=12),
    st.sampled_from(
        [*DEVICES, *(f"{name.lower()}.x" for name in DEVICES), "", "..", "~", "a" * 400]
    ),
    st.text(alphabet="한李\U0001f600e\u0301", min_size=50, max_size=120),
)


@settings(max_examples=300, derandomize=True, deadline=None)
@given(st.lists(AWKWARD, max_size=8))
def test_every_name_is_safe_on_every_system(wanted):
    names = safe_names(wanted)
    assert len(names) == len(wanted)
    for name in names:
        assert name
        assert not RESERVED.search(name)
        assert not any(
            unicodedata.category(sign) in ("Cc", "Cf", "Cs", "Zl", "Zp") for sign in name
        )
        assert name[0] not in ".- "
        assert name[-1] not in ". "
        assert name.split(".")[0].strip().upper() not in DEVICES
        assert len(name.encode()) <= MOST_BYTES
        assert unicodedata.is_normalized("NFC", name)


@settings(max_examples=300, derandomize=True, deadline=None)
@given(st.lists(AWKWARD, max_size=8))
def test_no_two_names_are_one_file_anywhere(wanted):
    names = safe_names(wanted)
    for fold in (
        str.lower,
        str.upper,
        str.casefold,
        lambda name: unicodedata.normalize("NFD", name).casefold(),
        lambda name: unicodedata.normalize("NFKC", name).casefold(),
    ):
        assert len({fold(name) for name in names}) == len(names)


@pytest.mark.parametrize(
    ("wanted", "name"),
    [
        ("24117 Trần Quỳnh Anh", "24117 Trần Quỳnh Anh"),
        ("24101 فاطمة الزهراء", "24101 فاطمة الزهراء"),
        ("CON", "_CON"),
        ("aux.pdf", "_aux.pdf"),
        ("../../etc/passwd", "etc-passwd"),
        ("L01 gnp\u202efdp.exe", "L01 gnpfdp.exe"),
        ("Ana. ", "Ana"),
        ("a\tb\nc", "a b c"),
        ("", "unnamed"),
    ],
)
def test_known_cases(wanted, name):
    assert safe_names([wanted]) == [name]


def test_clashes_are_numbered_in_order():
    assert safe_names(["Åsa", "ÅSA", "A\u030asa"]) == ["Åsa", "ÅSA (2)", "Åsa (3)"]
