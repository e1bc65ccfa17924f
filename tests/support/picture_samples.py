"""Small pictures, built from nodes, for rules that must notice."""

from dataclasses import replace
from functools import partial

from signage.check.picture_rule import PictureSubject
from signage.pictograms.compile import compile_operations
from signage.pictograms.kit.nodes import Patch, group
from signage.pictograms.kit.paths import ellipse, rounded_rectangle
from signage.pictograms.picture_set import SHIPPED_PICTURES as PICTURES


def drawn(*nodes, name="sample", cropped=(), others=(), alike=()):
    """A picture of these nodes; ``others`` are names of shipped pictures that may stand beside it."""
    scene = replace(
        PICTURES.scene("apron-on"),
        name=name,
        draw=partial(tuple, (group(*nodes),)),
        cropped=frozenset(cropped),
        alike=frozenset(alike),
    )
    beside = tuple(PICTURES.picture(other) for other in others)
    return PictureSubject(scene, compile_operations(scene.operations), beside)


def disc(x, y, radius, pigment="ink"):
    return Patch(ellipse(x, y, radius), pigment)


def block(x, y, width, height, pigment="ink"):
    return Patch(rounded_rectangle(x, y, width, height, 0), pigment)


def messages(rule, subject):
    found = list(rule.find(subject))
    assert {problem.code for problem in found} <= {rule.rule.code}
    assert all(problem.place.path and problem.hint for problem in found)
    return [problem.message for problem in found]
