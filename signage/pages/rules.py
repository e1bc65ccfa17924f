"""What can be wrong with the site or its address: each rule with its reason and its cure."""

from __future__ import annotations

from signage.ground.rule import S1, S3, Rule

OUT_OF_REACH = Rule(
    "PG-1",
    "address-out-of-reach",
    S3,
    "The training address in library.yaml is not one that a phone on the ward can open.",
    "The code on a wall leads to it for years; behind localhost every phone finds only itself.",
    "training-address: http://localhost:8080",
    "Write the address under which the ward's phones reach the training pages, such as "
    "http://ward-pages.internal:8080.",
)
DEAD_LINK = Rule(
    "PG-2",
    "dead-link",
    S1,
    "A QR code of a sheet leads to a page, or to a place in a page, that the built site does not have.",
    "Somebody scans it in gloves and in a hurry, and finds nothing.",
    "http://ward-pages.internal:8080/ar/p1/apron-off/ without ar/p1/apron-off/index.html",
    "Run 'signage pages' and 'signage draw' on the same content, and copy the whole site to its server.",
)

RULES = (OUT_OF_REACH, DEAD_LINK)
"""Every rule, in the order of the codes."""
