"""A design: its file of inputs, its levels, the chain of formulas that computes it, and the checks that grade it."""
