"""The Sketch page: draw the space, hang lamps, see the light."""
