"""What the light means: the table of figures, spectra, and how linings are cut."""
