"""What each verb of a step does to persons, kit and fixtures."""
