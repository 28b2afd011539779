"""Is each line of the working right, and where is the first slip? Knows nothing of Qt or of recognition."""
