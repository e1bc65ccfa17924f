import pytest
from demo import project

from signage.pages.practice.quizzes import CHOICES, QUESTIONS, container_quiz, meaning_quiz

LIBRARY = project().library
WARD = LIBRARY.wards["lantern-bay"]
PROTOCOL = LIBRARY.protocols["layered-protection"]
PHASES = [(protocol, phase) for protocol in LIBRARY.protocols.values() for phase in protocol.phases]


@pytest.mark.parametrize(("protocol", "phase"), PHASES, ids=[phase.id for _, phase in PHASES])
def test_each_picture_has_one_right_meaning_among_its_choices(protocol, phase):
    quiz = meaning_quiz(protocol, phase)
    assert 3 <= len(quiz.questions) <= QUESTIONS
    for question in quiz.questions:
        assert len(question.choices) == CHOICES
        assert question.choices.count(question.step) == 1
        assert len({choice.text for choice in question.choices}) == CHOICES
        assert len({choice.picture for choice in question.choices}) == CHOICES


def test_the_right_meaning_does_not_always_stand_in_the_same_place():
    quiz = meaning_quiz(PROTOCOL, PROTOCOL.phases[1])
    assert len({question.choices.index(question.step) for question in quiz.questions}) > 1


def test_containers_to_choose_from_are_those_of_the_protocol():
    quiz = container_quiz(PROTOCOL, PROTOCOL.phases[1], WARD)
    for question in quiz.questions:
        assert [container.code for container in question.choices] == ["A", "B", "G", "R"]
        assert question.right == question.step.action.bin
        taken = WARD.fixtures[question.right].accepts
        assert question.step.action.item in taken


def test_a_phase_that_throws_nothing_away_has_no_quiz_about_containers():
    assert container_quiz(PROTOCOL, PROTOCOL.phases[0], WARD) is None
