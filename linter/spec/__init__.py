"""The sections of the spec file as models: every field with unit, meaning and range."""
