"""Small pictures, built from nodes, for rules that must notice."""

from dataclasses import replace

from signage.check.picture_rule import PictureSubject
from signage.pictograms.compile import compile_operations
from signage.pictograms.kit.nodes import Patch, group
from signage.pictograms.kit.paths import ellipse, rounded_rectangle
from signage.pictograms.scenes import scene_of


def drawn(*nodes, name="sample", cropped=(), others=(), alike=()):
    """A picture of these nodes."""
    scene = replace(
        scene_of("apron-on"),
        name=name,
        nodes=(group(*nodes),),
        cropped=frozenset(cropped),
        alike=frozenset(alike),
    )
    return PictureSubject(scene, compile_operations(scene.operations), others)


def disc(x, y, radius, pigment="ink"):
    return Patch(ellipse(x, y, radius), pigment)


def block(x, y, width, height, pigment="ink"):
    return Patch(rounded_rectangle(x, y, width, height, 0), pigment)


def messages(rule, subject):
    found = list(rule.find(subject))
    assert {problem.code for problem in found} <= {rule.rule.code}
    assert all(problem.place.path and problem.hint for problem in found)
    return [problem.message for problem in found]
