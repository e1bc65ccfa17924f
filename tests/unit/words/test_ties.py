import pytest

from signage.words.ties import soften, tie

NBSP = "\u00a0"
FSI, PDI = "\u2068", "\u2069"


def shown(text):
    return text.replace(NBSP, "~").replace("\u202f", "^")


@pytest.mark.parametrize(
    ("tag", "text", "tied"),
    [
        ("en", "Take off the apron and a glove", "Take off the~apron and a~glove"),
        ("en", "The hood. An apron.", "The~hood. An~apron."),
        ("en", "Bathe all over", "Bathe all over"),
        ("en", f"Open the {FSI}hood{PDI}", f"Open the~{FSI}hood{PDI}"),
        ("fr", "Jeter la cagoule au bac ?", "Jeter la~cagoule au~bac~?"),
        ("fr", "Dire « complet » : sortir ; voilà !", "Dire «~complet~»~: sortir~; voilà~!"),
        ("fr", "Voilà celui-la qui sort", "Voilà celui-la qui sort"),
        ("fr", "Prêt ? Oui : {x}", "Prêt~? Oui~: {x}"),
        ("de", "Die Haube abnehmen ?", "Die Haube abnehmen ?"),
        ("hi", "हाथों को पानी से धोएँ", "हाथों~को पानी~से धोएँ"),
        ("hi", "सेब और कीट", "सेब और कीट"),
        ("hi", f"{FSI}एप्रन{PDI} को उतारें", f"{FSI}एप्रन{PDI}~को उतारें"),
        ("hi", "दस्तानों में।", "दस्तानों~में।"),
    ],
)
def test_words_that_belong_together_are_tied(tag, text, tied):
    assert shown(tie(text, tag)) == tied


@pytest.mark.parametrize(
    ("tag", "text", "tied"),
    [
        ("en", "Rub for 20 s, then 2 minutes", "Rub for 20~s, then 2~minutes"),
        ("en", "Wait 2 steps", "Wait 2 steps"),
        ("en", f"{FSI}50{PDI} mm", f"{FSI}50{PDI}~mm"),
        ("fr", "20 secondes", "20~secondes"),
        ("ar", "٢٠ ثانية", "٢٠~ثانية"),
        ("hi", "20 से॰ तक", "20~से॰~तक"),
        ("bn", "২০ সেকেন্ড", "২০~সেকেন্ড"),
        ("sw", "20 mm", "20~mm"),
    ],
)
def test_a_number_stays_with_its_unit(tag, text, tied):
    assert shown(tie(text, tag)) == tied


@pytest.mark.parametrize(
    ("tag", "text", "softened"),
    [
        ("en", f"the{NBSP}apron, 20{NBSP}s", "the apron, 20~s"),
        ("fr", f"la{NBSP}cagoule{NBSP}? «{NBSP}oui{NBSP}»", "la cagoule~? «~oui~»"),
        ("hi", f"हाथों{NBSP}को 20{NBSP}से॰", "हाथों को 20~से॰"),
        ("hi", f"कुछ{NBSP}से॰", "कुछ~से॰"),
        ("hi", f"20{NBSP}से 30 तक", "20~से 30 तक"),
        ("en", f"Door{NBSP}A", "Door~A"),
    ],
)
def test_only_soft_ties_yield(tag, text, softened):
    assert shown(soften(text, tag)) == softened


def test_a_space_of_another_width_stays_as_it_was_typed():
    assert tie("Prêt\u202f? 20\u202fs", "fr") == "Prêt\u202f? 20\u202fs"
