"""Forms that go round the ward: recall list, notice in an empty place, audit round, incident slip."""
