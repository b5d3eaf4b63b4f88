"""Milestones, deviations, house rules, the review, comparison and statistics."""
