"""Our texts in other languages (Qt's .ts and .qm), and the tool that keeps them in step with the code."""
