"""Plan files: opened and saved whole, or refused in one sentence.

``store`` opens and saves, ``migrations`` brings old formats up to date, ``disk`` writes
whole files and puts what is wrong into words, ``lock`` keeps two windows off one file,
``recovery`` keeps unsaved work aside.
"""
