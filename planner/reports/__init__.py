"""What is said about an estimate and how it leaves the program.

``content`` is the words and figures as data, ``advice`` what would help most; ``exports``
writes the numbers; ``paper`` paints, with
inks by ``contrast``, and is the only one here that knows Qt.
"""
