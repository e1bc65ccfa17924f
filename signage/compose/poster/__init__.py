"""The wall poster of a phase: its plan, its sizes, its tiles."""
