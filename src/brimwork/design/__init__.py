"""A design: its file, its levels, the chain that computes it, and the graded checks."""
