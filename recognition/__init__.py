"""What does each written line say? Knows nothing of Qt or of the checker."""
