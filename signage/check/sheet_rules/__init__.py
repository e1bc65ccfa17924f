"""One rule over composed sheets in each module; each module offers ``RULE``."""
