"""The Survey page: the board, the readings, what they say beside an estimate."""
