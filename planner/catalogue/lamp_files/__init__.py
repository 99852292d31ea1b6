"""Lamp files of the open standards: ANSI/IES LM-63 and EULUMDAT.

``reading.read_lamp_file`` reads either kind into one value, ``photometry.Photometry``;
``convert.to_lamp_model`` makes a lamp of the catalogue from it; ``lm63_write`` writes it
back as LM-63-2019. Nothing is imported here, so that starting the program stays quick.
"""
