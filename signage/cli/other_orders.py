"""``rehearse --stress`` and ``rehearse --why``: the protocol in orders that nobody has written."""

from __future__ import annotations

from typing import TYPE_CHECKING

from signage.cli.application import Format
from signage.cli.report import print_json, problems_json, say, status_of
from signage.ground.counting import counted

if TYPE_CHECKING:
    from collections.abc import Sequence

    from signage.ground.problem import Problem
    from signage.model.library import Library, Protocol, Step
    from signage.rehearse.variations.purpose import Purpose


def tell_stress(library: Library, protocol: Protocol, form: Format) -> int:
    """The review of every single slip; where references are faulty, their findings instead."""
    from signage.cli.stress_report import print_stress
    from signage.rehearse.variations.stress_review import review_stress

    review = review_stress(library, protocol)
    if not review.stress.walked.walks:
        return _tell_faults([each.as_problem() for each in review.stress.walked.found.findings], form)
    if form is Format.JSON:
        print_json(review.as_json())
    else:
        print_stress(review)
    return 0


def tell_why(library: Library, protocol: Protocol, step: Step, form: Format) -> int:
    """What would become wrong without a step; where references are faulty, their findings instead."""
    from signage.rehearse.rehearsal import rehearse
    from signage.rehearse.variations.purpose import purpose_of

    rehearsal = rehearse(library, protocol)
    if rehearsal.withheld or not rehearsal.trace:
        return _tell_faults(rehearsal.problems(), form)
    purpose = purpose_of(library, protocol, step)
    if form is Format.JSON:
        print_json(purpose.as_json())
    else:
        _print_purpose(library, purpose)
    return 0


def _tell_faults(problems: Sequence[Problem], form: Format) -> int:
    if form is Format.JSON:
        print_json(problems_json(problems))
    else:
        for problem in problems:
            say(f"{problem.place}: {problem.severity.value} {problem.code} {problem.message}")
        say("Other orders cannot be rehearsed while this stands.")
    return status_of(problems)


def _print_purpose(library: Library, purpose: Purpose) -> None:
    from signage.rehearse.explanation import told_facts
    from signage.rehearse.state.setting import prepare

    step, setting = purpose.step, prepare(library, purpose.protocol)
    say(f"{purpose.protocol.code} step {step.id}: {step.text}")
    if not purpose.findings:
        say("Left out, nothing becomes wrong that the model can see.")
        reason = step.rationale or "Nobody has written why it stands here (ST-4); 'rationale:' would say it."
        say(f"  {reason}")
    else:
        say(f"Left out, {counted(len(purpose.findings), 'thing')} would be wrong:")
    for finding, facts in purpose.findings:
        where = f"At step {finding.step}: " if finding.step else ""
        say(f"  {where}{finding.severity.value} {finding.code} {finding.message}")
        for line in told_facts(facts):
            say(f"      {line}")
        say(f"      {finding.rule.why}")
    for exposure in purpose.exposures:
        say(
            f"  Contamination of {setting.name(exposure.source)} would reach the bare "
            f"{exposure.site.replace('-', ' ')} of {exposure.person} at step {exposure.step}."
        )
    if purpose.findings and step.rationale:
        say(f"Its author says: {step.rationale}")
