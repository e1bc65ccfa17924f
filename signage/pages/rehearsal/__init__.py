"""The page that tells a reviewer what the rehearsal of a protocol found."""
