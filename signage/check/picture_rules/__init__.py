"""One rule over pictures in each module; each module offers ``RULE``."""
