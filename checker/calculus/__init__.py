"""Derivatives, integrals, sums and limits worked out to ordinary trees."""
