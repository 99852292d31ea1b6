"""What is said about an estimate and how it leaves the program.

``content`` is the words and figures as data, ``advice`` what would help most; ``exports``
writes the numbers. A ``report`` is data too: ``chapters`` makes it, with the ``build_sheet`` and
``cautions``, ``drawings`` and ``charts`` as SVG; ``page`` writes it as HTML. ``contrast`` holds
the colours. What knows Qt: ``leaves`` paints a report on paper, ``paper`` the map as one picture,
``board`` the survey board on a ``sheet``.
"""
