"""What is typed: the values that a design can have, how each is read, and the file that holds them."""
