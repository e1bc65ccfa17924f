"""Pages on which a person practises an order before doing it."""
