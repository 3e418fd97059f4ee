"""What follows from what was typed: levels, geometry, and the chain of numbers, by subject and by kind of feature."""
