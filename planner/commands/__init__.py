"""Commands that need no window, one file each; ``command_line`` lists them."""
