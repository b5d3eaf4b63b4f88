"""What to ask for: forms, the JSON Schema, questions."""
