from dataclasses import replace

from content_samples import found, library, subject, ward, with_ward

from signage.check.content_rules.unprintable_paper import RULE


def with_papers(*papers):
    return subject(replace(library(), papers=papers))


def test_a_paper_that_no_printer_of_any_ward_takes():
    (problem,) = found(RULE, with_papers("A4", "A2"))
    assert problem.message == "No printer of any ward takes A2; the printers take A1, A3, A4."
    assert problem.place == library().at("papers")


def test_a_ward_that_can_print_none_of_the_papers():
    (problem,) = found(RULE, with_papers("A3"))
    assert "The printers of 'quay-ward' take A4, which is none of the papers" in problem.message
    assert problem.place == ward("quay-ward").printers[0].at("papers")


def test_wards_without_printers_are_not_judged():
    bare = {name: replace(each, printers=()) for name, each in library().wards.items()}
    assert found(RULE, subject(replace(library(), wards=bare, papers=("A2",)))) == []
    assert found(RULE, subject(with_ward(replace(ward("quay-ward"), printers=())))) == []
