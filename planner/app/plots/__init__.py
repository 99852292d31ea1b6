"""Plots and keys to the drawings: section, colour bar, colours."""
