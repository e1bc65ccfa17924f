import pytest
from demo import project

from signage.ground.problem import Severity
from signage.pages.practice.mistakes import MOST, SHOWN, mistake_exercises
from signage.pages.practice.orders import with_steps
from signage.pages.practice.reasons import rehearsing
from signage.rehearse.rehearsal import rehearse

LIBRARY = project().library
PROTOCOL = LIBRARY.protocols["layered-protection"]


def rehearsed(protocol):
    return rehearse(LIBRARY, protocol).findings


@pytest.fixture(scope="module", params=[0, 1], ids=["put-on", "take-off"])
def exercises(request):
    return list(mistake_exercises(PROTOCOL, PROTOCOL.phases[request.param], rehearsing(LIBRARY)))


def test_a_phase_has_a_few_mistakes_each_of_its_own_kind(exercises):
    assert 2 <= len(exercises) <= MOST
    assert len({exercise.reason.text for exercise in exercises}) == len(exercises)


def test_the_step_to_find_is_among_the_steps_that_are_shown(exercises):
    for exercise in exercises:
        ids = [step.id for step in exercise.shown]
        assert exercise.reason.step in ids
        assert 3 <= len(ids) <= SHOWN + 1


def test_what_was_left_out_is_not_shown_and_what_was_moved_is(exercises):
    for exercise in exercises:
        assert (exercise.culprit in exercise.shown) == exercise.is_moved


def test_the_mistake_is_one_for_the_rehearsal_too(exercises):
    for exercise in exercises:
        steps = list(exercise.phase.steps)
        place = steps.index(exercise.culprit)
        del steps[place]
        if exercise.is_moved:
            steps.insert(place - 1, exercise.culprit)
        found = rehearsed(with_steps(PROTOCOL, exercise.phase, steps))
        assert exercise.reason.step in {f.step for f in found if f.severity is not Severity.S3}


def test_a_hand_technique_has_none():
    hands = LIBRARY.protocols["clean-hands"]
    assert list(mistake_exercises(hands, hands.phases[0], rehearsing(LIBRARY))) == []
