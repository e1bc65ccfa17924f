"""Numbers in words. Expected spellings: CLDR 48 annotations of number spelling (rbnf) as ICU speaks them.

The everyday Amharic and Arabic words are from memory.
"""

from icu4py.messageformat import MessageFormat

from signage.words.meaning.number_words import numbers_in


def seconds(text, tag):
    return [found.seconds for found in numbers_in(text, tag)]


def test_times_are_read_in_figures_and_words_of_each_language():
    cases = {
        ("en", "Rub for 60 s"): [60],
        ("en", "Rub for sixty seconds, then two minutes"): [60, 120],
        ("en", "A two-minute wait"): [120],
        ("en", "1.5 minutes"): [90],
        ("fr", "Frotter deux minutes"): [120],
        ("fr", "Attendre soixante-quinze secondes"): [75],
        ("fr", "Attendre neuf minutes"): [540],
        ("ar", "انتظر دقيقتين"): [120],
        ("ar", "انتظر ٦٠ ثانية"): [60],
        ("ar", "افرك ثلاثين ثانية"): [30],
        ("hi", "साठ सेकंड तक रगड़ें"): [60],
        ("hi", "२ मिनट"): [120],
        ("am", "ስልሳ ሰከንድ ይጠብቁ"): [60],
        ("bn", "৬০ সেকেন্ড"): [60],
        ("sw", "dakika mbili"): [120],
        ("qaa", "60 s"): [60],
    }
    for (tag, text), wanted in cases.items():
        assert seconds(text, tag) == wanted, (tag, text)


def test_what_is_no_time_has_no_seconds():
    for tag, text in (("en", "Stand 2 m away"), ("en", "Bin 2"), ("fr", "deux mains"), ("hi", "60 से ज़्यादा")):
        assert set(seconds(text, tag)) <= {None}, text


def test_every_number_to_a_hundred_is_read_back_as_cldr_spells_it():
    for tag in ("en", "fr", "hi", "ar", "am", "de", "es", "pt"):
        spell = MessageFormat("{n,spellout}", tag)
        for number in range(3, 101):
            spelling = spell.format({"n": number}).replace("\u00ad", "")
            values = [found.value for found in numbers_in(f"({spelling})", tag)]
            assert values == [number], (tag, spelling)


def test_words_that_are_other_words_too_are_marked():
    (new,) = numbers_in("un sac neuf", "fr")
    assert new.is_ambiguous
    (three,) = numbers_in("trois sacs", "fr")
    assert not three.is_ambiguous
