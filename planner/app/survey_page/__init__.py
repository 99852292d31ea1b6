"""Parts of the survey page: the board, the readings, what they say beside an estimate."""
