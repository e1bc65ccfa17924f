"""The practice of a protocol: which exercises there are, and their pages in one language."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from signage.model.library import Library, Protocol
from signage.pages import address
from signage.pages.container_sign import container_sign
from signage.pages.picture import PictureKey
from signage.pages.practice.mistakes import MistakeExercise, mistake_exercises
from signage.pages.practice.orders import OrderExercise, order_exercises
from signage.pages.practice.quizzes import ContainerQuiz, MeaningQuiz, container_quiz, meaning_quiz
from signage.pages.practice.reasons import Examiner, Reason
from signage.pages.protocol_pages import protocol_page
from signage.pages.publication import PageContext
from signage.pages.rendering import Page
from signage.pages.shared_pages import is_what_if
from signage.pages.views import StepView, container_view, phase_view, step_views
from signage.pages.words import PageWords

Exercise = OrderExercise | MeaningQuiz | ContainerQuiz | MistakeExercise


@dataclass(frozen=True)
class Choice:
    """An answer to choose."""

    text: str
    is_right: bool
    sign: Markup | None = None


@dataclass(frozen=True)
class Question:
    """A question with its answers; it shows a picture, or a text."""

    choices: tuple[Choice, ...]
    picture: PictureKey | None = None
    picture_words: str = ""
    text: str = ""

    @property
    def answer(self) -> str:
        """The right answer."""
        return next(choice.text for choice in self.choices if choice.is_right)


def plan_practice(library: Library, protocol: Protocol, examiner: Examiner) -> tuple[Exercise, ...]:
    """All exercises of a protocol, the same in every language.

    Phases that answer to an event have quizzes only: most of what they say is not for a rehearsal to judge.
    """
    ward = library.wards[protocol.ward]
    planned: list[Exercise] = []
    for phase in protocol.phases:
        quizzes = (meaning_quiz(protocol, phase), container_quiz(protocol, phase, ward))
        planned += [quiz for quiz in quizzes if quiz is not None]
        if is_what_if(library, protocol, phase):
            continue
        planned += order_exercises(protocol, phase, examiner)
        planned += mistake_exercises(protocol, phase, examiner)
    return tuple(planned)


def practice_pages(context: PageContext, exercises: tuple[Exercise, ...]) -> Iterator[Page]:
    """The list of exercises, then one page for each."""
    yield _list_page(context, exercises)
    views = {
        phase.id: {view.step.id: view for view in step_views(context, phase)}
        for phase in context.protocol.phases
    }
    addresses = [address.practice(context.tag, context.protocol, each.name) for each in exercises]
    for place, exercise in enumerate(exercises, start=1):
        template, title, values = _content(context, exercise, views[exercise.phase.id])
        chain = {
            "place": place,
            "count": len(exercises),
            "back": addresses[place - 2] if place > 1 else None,
            "next": addresses[place] if place < len(addresses) else None,
            "phase_title": phase_view(context, exercise.phase).title,
        }
        yield _exercise_page(context, exercise, template, title, {**values, **chain})


def _exercise_page(
    context: PageContext, exercise: Exercise, template: str, title: str, values: Mapping[str, Any]
) -> Page:
    return protocol_page(
        context,
        template,
        lambda locale: address.practice(locale, context.protocol, exercise.name),
        values,
        up=(address.practice(context.tag, context.protocol), context.words.fixed("page-practice")),
        theme=exercise.phase.theme,
        title=title,
    )


def _list_page(context: PageContext, exercises: tuple[Exercise, ...]) -> Page:
    words, protocol = context.words, context.protocol
    phases = []
    for phase in protocol.phases:
        own = [exercise for exercise in exercises if exercise.phase is phase]
        links = [
            (address.practice(context.tag, protocol, exercise.name), _name(words, exercise))
            for exercise in own
        ]
        if links:
            title = words.content(f"{protocol.id}/phase/{phase.id}/title")
            phases.append({"theme": phase.theme, "title": title, "exercises": links})
    return protocol_page(
        context,
        "practice.html",
        lambda locale: address.practice(locale, protocol),
        {"phases": phases},
        title=words.fixed("page-practice"),
    )


def _name(words: PageWords, exercise: Exercise) -> str:
    if isinstance(exercise, MeaningQuiz):
        return words.fixed("page-meaning")
    if isinstance(exercise, ContainerQuiz):
        return words.fixed("page-container")
    title = words.fixed("page-order" if isinstance(exercise, OrderExercise) else "page-wrong-here")
    return f"{title} {words.number(exercise.place)}"


def _content(
    context: PageContext, exercise: Exercise, views: Mapping[str, StepView]
) -> tuple[str, str, dict[str, Any]]:
    """Template, title and values of an exercise."""
    title = _name(context.words, exercise)
    if isinstance(exercise, OrderExercise):
        return "ordering.html", title, _ordering(context, exercise, views)
    if isinstance(exercise, MistakeExercise):
        return "mistake.html", title, _mistake(context, exercise, views)
    if isinstance(exercise, MeaningQuiz):
        return "quiz.html", title, {"task": title, "questions": _meanings(exercise, views)}
    return "quiz.html", title, {"task": title, "questions": _containers(context, exercise, views)}


def _ordering(context: PageContext, exercise: OrderExercise, views: Mapping[str, StepView]) -> dict[str, Any]:
    words = context.words
    unsafe = words.fixed("page-unsafe")
    sentences = [
        words.fixed("page-right"),
        words.fixed("page-safe-not-ours"),
        words.fixed("page-other-order"),
        *(f"{unsafe} {reason_words(context, reason)}" for reason in exercise.reasons),
    ]
    steps = [views[step.id] for step in exercise.steps]
    return {
        "answer": steps,
        "shuffled": [(key, steps[key]) for key in exercise.shuffled],
        "judgement": _data({"verdicts": exercise.verdicts, "sentences": sentences}),
    }


def _mistake(
    context: PageContext, exercise: MistakeExercise, views: Mapping[str, StepView]
) -> dict[str, Any]:
    cure = "page-moved" if exercise.is_moved else "page-left-out"
    return {
        "shown": [views[step.id] for step in exercise.shown],
        "wrong_at": exercise.reason.step,
        "sentence": reason_words(context, exercise.reason),
        "cure": context.words.fixed(cure, step=views[exercise.culprit.id].headline),
    }


def _meanings(quiz: MeaningQuiz, views: Mapping[str, StepView]) -> list[Question]:
    return [
        Question(
            tuple(Choice(views[choice.id].headline, choice is question.step) for choice in question.choices),
            views[question.step.id].picture,
            views[question.step.id].picture_words,
        )
        for question in quiz.questions
    ]


def _containers(context: PageContext, quiz: ContainerQuiz, views: Mapping[str, StepView]) -> list[Question]:
    words = context.words
    questions = []
    for question in quiz.questions:
        choices = []
        for fixture in question.choices:
            kind, code = "tub" if fixture.kind == "tub" else "bin", fixture.code or ""
            sign = container_sign(kind, code, "")
            word = container_view(context, fixture).word
            text = f"{word} {words.code(code)}" if code else word
            choices.append(Choice(text, fixture.id == question.right, sign))
        questions.append(Question(tuple(choices), text=views[question.step.id].headline))
    return questions


def reason_words(context: PageContext, reason: Reason) -> str:
    """Why an order is unsafe, and at which step."""
    text = context.words.fixed(reason.text)
    step = next((step for step in context.protocol.steps if step.id == reason.step), None)
    if step is None:
        return text
    return context.words.fixed("page-reason-at", step=context.step_headline(step), reason=text)


def _data(value: Mapping[str, Any]) -> Markup:
    """JSON that cannot end the element it stands in."""
    text = json.dumps(value, ensure_ascii=False, separators=(",", ":"))
    return Markup(text.replace("<", "\\u003c").replace("&", "\\u0026"))  # noqa: S704 - escaped as JSON
