"""What is said about an estimate and how it leaves the program.

``content`` is the words and figures as data, ``advice`` the one change of output that
would help; ``json_export`` and ``csv_export`` write the numbers; ``paper`` paints, with
inks by ``contrast``, and is the only one here that knows Qt.
"""
