"""Side by side: what the page of that name is made of."""
