"""From a plan to the light in it.

``scene`` turns a plan into surfaces and sources; ``evaluate.evaluate`` is the one door:
everything that needs an estimate, on screen or off, goes through it.
"""
