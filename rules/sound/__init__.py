"""Sound: level, noise, hearing, input stage."""
