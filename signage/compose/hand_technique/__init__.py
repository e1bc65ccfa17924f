"""The wall poster of the movements of a hand technique."""
