from signage.words.meaning.phrases import Phrases


def test_phrases_are_whole_words_with_stars_gaps_and_ends():
    cases = {
        ("en", "put on", "Put on the apron"): True,
        ("en", "put on", "Compute on paper"): False,
        ("en", "take … off", "Take the outer gloves off"): True,
        ("en", "take … off", "Take it. Hands off"): False,
        ("en", "take … off", "Take one or two or three steps off"): False,
        ("en", "off.", "Jewellery and phone off"): True,
        ("en", "off.", "Off the chair"): False,
        ("en", "can’t", "It can't leak"): True,
        ("fr", "retir*", "RETIREZ LES GANTS"): True,
        ("fr", "ne … que", "Il ne reste que le masque"): True,
        ("fr", "n’ … que", "N’ôter que l’apron"): True,
        ("ar", "*خلع*", "وَاخْلَعِ القفاز"): True,
        ("ar", "لا", "الجلاد"): False,
        ("hi", "न", "नर्स को बताएँ"): False,
        ("hi", "पहन*", "दस्ताने पहनकर"): True,
        ("am", "አይ*", "አይንኩ።"): True,
        ("th", "ถอด", "กรุณาถอดถุงมือ"): True,
    }
    for (tag, phrase, text), is_found in cases.items():
        assert (Phrases([phrase], tag).found_in(text) is not None) is is_found, (phrase, text)


def test_placeholders_are_words_and_phrases_can_be_taken_out():
    assert Phrases(["for … then"], "en").found_in("Rub for {time} then dry")
    assert not Phrases([], "en")
    idioms, markers = Phrases(["or not"], "en"), Phrases(["not"], "en")
    from signage.words.meaning.phrases import words_of

    assert markers.found_in_words(idioms.without(words_of("Wet or not, wipe it", "en"))) is None
    assert markers.found_in_words(idioms.without(words_of("Do not wipe, wet or not", "en")))
