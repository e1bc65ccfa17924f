from hypothesis import given
from hypothesis import strategies as st

from signage.control.comparison.words import Fate, TextChange, word_pieces

ROWS = (
    (
        "en",
        "Rub both wet hands.",
        "Rub all wet hands slowly.",
        (("both", "all"), ("hands.", "hands slowly.")),
    ),
    ("en", "Take off gloves", "Take off gloves", ()),
    ("en", "Rub hands", "Now rub hands", (("Rub", "Now rub"),)),
    ("en", "Wait until dry", "Wait", (("until dry", ""),)),
    ("ar", "اخلع القفاز", "اخلع القفاز ببطء", (("", "ببطء"),)),
    ("th", "ถอดถุงมือ", "ถอดหน้ากาก", (("ถุงมือ", "หน้ากาก"),)),
)
"""Thai is written without spaces: its words are those of the dictionary (UAX #29, section 4)."""


def test_words_that_went_and_came_are_told_in_every_script():
    for language, old, new, exchanges in ROWS:
        assert TextChange(language, "text", old, new).exchanges == exchanges, (language, new)


@given(
    st.lists(st.sampled_from(["rub", "both", "hands", "dry.", "{time}"])),
    st.lists(st.text("ab c.", max_size=4)),
)
def test_both_texts_can_be_read_back_from_the_pieces(old, new):
    before, after = " ".join(old), " ".join(new)
    pieces = word_pieces(before, after, "en")
    told = {
        kind: "".join(piece.text for piece in pieces if piece.fate in {Fate.SAME, kind})
        for kind in (Fate.OUT, Fate.IN)
    }
    assert told[Fate.OUT].split() == before.split()
    assert told[Fate.IN] == after
