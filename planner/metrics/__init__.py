"""What the light means: daily integral, uniformity, energy."""
