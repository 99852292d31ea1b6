"""Charts, colour bars and colours, and how they are saved."""
