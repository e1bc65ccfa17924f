"""All rules of the rehearsal in the order of their families."""

from signage.ground.rule import Rule
from signage.rehearse.rules.conduct import ENTRY, ROLES, STEPS, WAIVERS
from signage.rehearse.rules.contact import CONTACT
from signage.rehearse.rules.hands import HANDS
from signage.rehearse.rules.layering import LAYERING
from signage.rehearse.rules.places import BINS, FIXTURES, ZONES

RULES: tuple[Rule, ...] = (
    *LAYERING,
    *HANDS,
    *CONTACT,
    *BINS,
    *ZONES,
    *ROLES,
    *FIXTURES,
    *ENTRY,
    *STEPS,
    *WAIVERS,
)

RULE_OF = {rule.code: rule for rule in RULES}
"""A rule by its code."""
