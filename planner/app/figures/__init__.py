"""The figures of an estimate: a sentence, a few large numbers, and the rest folded away."""
