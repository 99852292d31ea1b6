"""Spectra as the window uses them: which are offered, and which belongs to which lamp.

A plan holds no spectrum: what is chosen here is for display and for lamp files. The choice
for a kind of lamp is remembered in the settings, by keys; a spectrum from the user's own
file lasts as long as the window.
"""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QObject, Signal

from planner.app.settings import Settings
from planner.catalogue.spectra import built_in_spectra, read_spectrum_file
from planner.plan.spectrum import Spectrum, doubts


class SpectrumChoice(QObject):
    """The spectra on offer; emits ``changed`` when one comes or a lamp gets another."""

    changed = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._settings: Settings | None = None
        self._spectra: tuple[Spectrum, ...] | None = None
        self._of_lamp: dict[str, str] = {}

    def remember_in(self, settings: Settings) -> None:
        """Keep the choices in these settings from now on."""
        self._settings = settings
        self._of_lamp = dict(settings.values.lamp_spectra)

    @property
    def spectra(self) -> tuple[Spectrum, ...]:
        """All spectra on offer, the built-in ones first (read when first asked for)."""
        if self._spectra is None:
            self._spectra = built_in_spectra()
        return self._spectra

    def of_lamp(self, lamp_key: str) -> Spectrum | None:
        """The spectrum chosen for a kind of lamp, None without one."""
        wanted = self._of_lamp.get(lamp_key)
        if wanted is None:
            return None
        return next((one for one in self.spectra if one.key == wanted), None)

    def choose(self, lamp_key: str, spectrum: Spectrum | None) -> None:
        """Give a kind of lamp a spectrum, or take it away."""
        if spectrum is None:
            self._of_lamp.pop(lamp_key, None)
        else:
            self._of_lamp[lamp_key] = spectrum.key
        if self._settings is not None:
            self._settings.keep(lamp_spectra=dict(sorted(self._of_lamp.items())))
        self.changed.emit()

    def read(self, path: Path) -> tuple[Spectrum, tuple[str, ...]]:
        """Read a spectrum of the user's own and offer it; returns it with what is doubtful.

        Raises
        ------
        planner.catalogue.spectra.SpectrumError
            If the file is no spectrum; the message is a sentence.
        """
        taken = {spectrum.key for spectrum in self.spectra}
        reading = read_spectrum_file(path, taken=taken)
        self._spectra = (*self.spectra, reading.spectrum)
        self.changed.emit()
        told = dict.fromkeys((*reading.notes, *doubts(reading.spectrum)))
        return reading.spectrum, tuple(told)
