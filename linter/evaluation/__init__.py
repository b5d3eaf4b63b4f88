"""Names to values, worst corners, figures and statuses."""
