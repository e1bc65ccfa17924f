"""Whether the address behind the QR codes is one that a phone on the ward can open."""

from __future__ import annotations

import ipaddress
from urllib.parse import urlsplit

from signage.ground.place import NOWHERE, Place
from signage.ground.problem import Problem
from signage.pages.rules import OUT_OF_REACH

_NEVER_FOUND = ("localhost", "example", "invalid", "test")
"""Top-level names that lead to the own machine or nowhere (RFC 6761, section 6)."""

_EXAMPLES = ("example.com", "example.net", "example.org")
"""Names that are reserved for documents (RFC 2606, section 3)."""


def reachable_problem(address: str, place: Place = NOWHERE) -> Problem | None:
    """The warning that no phone can open the address, or None where one may."""
    reason = _reason(address.strip())
    if reason is None:
        return None
    return OUT_OF_REACH.problem(f"The training address '{address}' {reason}.", place)


def _reason(address: str) -> str | None:
    try:
        parts = urlsplit(address)
        host, _port = parts.hostname, parts.port
    except ValueError as error:
        return f"cannot be read ({error})"
    if parts.scheme not in {"http", "https"}:
        return "does not begin with http:// or https://"
    if not host:
        return "names no machine"
    if parts.username is not None or parts.password is not None:
        return "holds a user name or password, which everyone could read on the wall"
    if parts.query or parts.fragment:
        return "has a part after ? or #, and the path of a page cannot follow it"
    return _reason_of_number(host) or _reason_of_name(host)


def _reason_of_number(host: str) -> str | None:
    try:
        number = ipaddress.ip_address(host)
    except ValueError:
        return None
    if number.is_loopback:
        return "leads every phone to itself"
    if number.is_unspecified or number.is_multicast or number.is_reserved:
        return "is no address of one machine"
    if number.is_link_local:
        return "changes whenever the machine joins the network again"
    return None


def _reason_of_name(host: str) -> str | None:
    name = host.rstrip(".").lower()
    if name.rpartition(".")[2] in _NEVER_FOUND or any(
        name == example or name.endswith(f".{example}") for example in _EXAMPLES
    ):
        return "uses a name that is reserved for tests and examples"
    if ":" not in name and "." not in name and not name.isdigit():
        return "has a name without a dot, which phones look up nowhere"
    if name.replace(".", "").isdigit() and name.count(".") != 3:
        return "is neither a name nor a complete number"
    return None
