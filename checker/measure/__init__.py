"""How right and how fast the checker is over published data: `python -m checker.measure DATA`, one JSON object."""
