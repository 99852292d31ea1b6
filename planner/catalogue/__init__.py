"""What is known beforehand: linings, lamps, crops, with the source of every number.

``library`` reads the entries that ship with the program and the user's own; the plan
keeps a copy of what it uses and never depends on the catalogue again.
"""
