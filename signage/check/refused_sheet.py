"""A sheet that could not be composed at all."""

from signage.check.rule import Explanation
from signage.ground.problem import Severity

EXPLANATION = Explanation(
    code="SH-0",
    name="sheet-refused",
    severity=Severity.S1,
    what="Whether each sheet that the library asks for can be composed and may be printed.",
    why="A sheet that is refused is missing on the ward, and an older one may hang in its place.",
    example="A step card in a language whose words lack one of its texts.",
    cure="Mend what the message names, then run 'signage check' again.",
)
