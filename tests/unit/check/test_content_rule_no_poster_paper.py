from dataclasses import replace

from content_samples import found, library, subject

from signage.check.content_rules.no_poster_paper import RULE


def test_a_library_of_small_papers_makes_no_poster():
    (problem,) = found(RULE, subject(replace(library(), papers=("A5", "A6"))))
    assert problem.message == "Of A5, A6 none is large enough for a poster."
    assert problem.place == library().at("papers")


def test_one_large_paper_is_enough():
    assert found(RULE, subject(replace(library(), papers=("A5", "A4")))) == []
    assert found(RULE, subject(replace(library(), papers=("Letter",)))) == []
