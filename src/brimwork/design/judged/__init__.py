"""What is judged: every check of a design, graded."""
