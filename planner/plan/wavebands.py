"""Wavebands: how a lamp's photons, and what a lining returns, are spread over blue, green and red.

Blue is 400 to 500 nm, green 500 to 600, red 600 to 700: together the photons of PPFD. Far-red
is 700 to 750 nm, which with them makes the 400 to 750 nm of ePPFD (S. Zhen, M. van Iersel,
B. Bugbee, "Why far-red photons should be included in the definition of photosynthetic photons
and the measurement of horticultural fixture efficacy", Frontiers in Plant Science 12 (2021)
693445).
"""

from __future__ import annotations

from typing import Annotated, Final, Self

from pydantic import Field, model_validator

from planner.plan.quantity import Value

PAR_BANDS: Final = ("blue", "green", "red")
FAR_RED: Final = "far_red"
BAND_WORDS: Final = {"blue": "Blue", "green": "Green", "red": "Red", FAR_RED: "Far-red"}
LIMITS_NM: Final = {
    "blue": (400.0, 500.0),
    "green": (500.0, 600.0),
    "red": (600.0, 700.0),
    FAR_RED: (700.0, 750.0),
}

Part = Annotated[float, Field(ge=0.0, le=1.0e6)]


class Wavebands(Value):
    """One number for each waveband, on any scale: only their proportions count.

    Of a lamp they are photons, of a lining reflectances.
    """

    blue: Part = Field(description="400-500 nm.")
    green: Part = Field(description="500-600 nm.")
    red: Part = Field(description="600-700 nm.")
    far_red: Part = Field(default=0.0, description="700-750 nm.")

    @model_validator(mode="after")
    def _check(self) -> Self:
        if self._par <= 1e-9:
            raise ValueError("at least one of blue, green and red must be above 0.")
        return self

    @property
    def _par(self) -> float:
        return self.blue + self.green + self.red

    def share(self, band: str) -> float:
        """Photons of a band per photon of 400-700 nm; blue, green and red add up to 1."""
        return float(getattr(self, band)) / self._par

    def tint(self, band: str) -> float:
        """A band's number over the mean of blue, green and red."""
        return 3 * self.share(band)

    def reflectance(self, band: str, whole: float) -> float:
        """Reflectance in a band of what returns ``whole`` over 400-700 nm; never above 1."""
        return min(self.tint(band) * whole, 1.0)


LEAVES: Final = Wavebands(blue=0.05, green=0.12, red=0.06, far_red=0.35)
"""What green leaves return: green more than blue and red, far-red most. Typical, from memory."""

DAYLIGHT: Final = Wavebands(blue=0.3046, green=0.3557, red=0.3398, far_red=0.1624)
"""Photons of average daylight with sky, CIE standard illuminant D65 (CIE 015:2018)."""

DAYLIGHT_LUX: Final = 55.5
"""Lux for 1 µmol m⁻² s⁻¹ of D65, by V(λ). For sun and sky together 54 is published (R. W. Thimijan,
R. D. Heins (1983), HortScience 18, 818-822); for white LEDs 53 to 73."""
