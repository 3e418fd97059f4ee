"""What is bought and done: shopping list, cost sheet and programme."""
