"""The fixtures of ``browsing``, by name."""

from browsing import axe, browser, folder, host, kept_phone, phone, scriptless, violations, visit

__all__ = ["axe", "browser", "folder", "host", "kept_phone", "phone", "scriptless", "violations", "visit"]
