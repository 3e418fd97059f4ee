"""Exercises: a question with screened numbers, and what a wrong answer says about the slip behind it."""
