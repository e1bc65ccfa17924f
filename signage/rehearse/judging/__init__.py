"""What is judged of states: at the start and after every movement, for every person, in every zone."""
