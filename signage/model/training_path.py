"""Where the training page of a protocol or step stands: sheets print the path, the site is built by it."""

from __future__ import annotations

from signage.model.library import Protocol, Step


def training_path(locale: str, protocol: Protocol, step: Step | None = None) -> str:
    """Such as ``/ar/p1/apron-off/``; without a step the page of the whole protocol."""
    page = f"{step.id}/" if step else ""
    return f"/{locale}/{protocol.code.lower()}/{page}"
