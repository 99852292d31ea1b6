"""What is said about an estimate and how it leaves the program.

``content`` is the words and figures as data, ``advice`` what would help most; ``exports``
writes the numbers. ``paper`` paints the map and ``board`` the survey board, on ``sheet``;
these three know Qt. ``contrast`` chooses inks.
"""
