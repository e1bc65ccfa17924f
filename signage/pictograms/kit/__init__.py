"""The construction kit: primitives, nodes, landmarks and the parts that scenes name (``kit/parts.py``)."""
