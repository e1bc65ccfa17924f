"""The register of printed copies: which were printed, where they hang, and what became of them."""
