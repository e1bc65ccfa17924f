"""``signage audit …``: every command of the group."""

from signage.cli import audit_incidents, audit_pictures, audit_rounds

__all__ = ["audit_incidents", "audit_pictures", "audit_rounds"]
