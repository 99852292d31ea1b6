"""The fields of what is selected: one panel per kind of thing, edited in place."""
