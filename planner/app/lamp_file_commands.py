"""Lamps from files: asked for by menu or dropped on the window, shown, hung, kept, written."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtWidgets import QWidget

from planner.app.edit_steps import EditSteps
from planner.app.exports import write_text
from planner.app.fields.panel import Workplace
from planner.app.questions import Questions
from planner.app.settings import Settings
from planner.app.spectrum_choice import SpectrumChoice
from planner.catalogue.library import CatalogueError
from planner.files.disk import PlanFileError
from planner.plan.lamp import LampModel

if TYPE_CHECKING:
    from planner.app.lamp_file_dialog import LampFileDialog
    from planner.catalogue.lamp_files.photometry import Photometry

LAMP_FILTER: Final = "Lamp files (*.ies *.ldt *.IES *.LDT);;All files (*)"
SPECTRUM_FILTER: Final = "Tables (*.csv *.txt *.tsv);;All files (*)"
LM63_FILTER: Final = "LM-63 lamp files (*.ies);;All files (*)"
MOST_SETS: Final = 20


class LampFileCommands(QObject):
    """What the window does with lamp files; ``told(str)`` with a line for the status bar."""

    told = Signal(str)

    def __init__(
        self,
        workplace: Workplace,
        steps: EditSteps,
        spectra: SpectrumChoice,
        questions: Questions,
        settings: Settings,
        window: QWidget,
    ) -> None:
        super().__init__(window)
        self._workplace, self._steps, self._spectra = workplace, steps, spectra
        self._questions, self._settings, self._window = questions, settings, window
        self.dialog: LampFileDialog | None = None

    # -- in -------------------------------------------------------------------------------

    def choose(self) -> None:
        """Ask which lamp file, and show it."""
        path = self._questions.open_file("Add lamp from file", self._folder(), LAMP_FILTER)
        if path is not None:
            self.show_file(path)

    def show_file(self, path: Path) -> bool:
        """Show a lamp file in its preview; one message says why it cannot be read."""
        from planner.app.lamp_file_dialog import LampFileDialog  # noqa: PLC0415 - seldom needed
        from planner.catalogue.lamp_files.photometry import LampFileError  # noqa: PLC0415

        try:
            sets = _read_all_sets(path)
        except LampFileError as error:
            text = str(error)
            message = text if path.name in text else f"'{path.name}', {text}"
            self._questions.tell_failure("This lamp file cannot be used", message)
            return False
        self._settings.keep(last_folder=path.absolute().parent)
        dialog = LampFileDialog(path, sets, self._spectra, self._window)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.accepted_model.connect(self._hang)
        dialog.spectrum_file_wanted.connect(self._read_spectrum)
        dialog.finished.connect(self._forget)
        self.dialog = dialog
        dialog.open()
        dialog.ppf_box.setFocus()
        return True

    def _forget(self) -> None:
        self.dialog = None

    def _read_spectrum(self) -> None:
        from planner.catalogue.spectra import SpectrumError  # noqa: PLC0415 - seldom needed

        path = self._questions.open_file("Spectrum from file", self._folder(), SPECTRUM_FILTER)
        if path is None or self.dialog is None:
            return
        try:
            _, notes = self._spectra.read(path)
        except SpectrumError as error:
            self.dialog.alert.say(str(error))
        else:
            self.dialog.choose_newest_spectrum(notes)

    def _hang(self, model: LampModel, keep: bool) -> None:
        shelf = self._workplace.shelf
        # Lamps of one key count as one kind: a plan may hold others from files by that name.
        taken = {lamp.model.key for lamp in self._workplace.document.plan.lamps}
        model = model.model_copy(update={"key": shelf.own_lamp_key(model.name, taken)})
        if keep:
            try:
                shelf.save_lamp(model)
            except CatalogueError as error:
                self._questions.tell_failure("The lamp was not kept", str(error))
        if self.dialog is not None and self.dialog.spectrum is not None:
            self._spectra.choose(model.key, self.dialog.spectrum)
        self._steps.hang_model(model)

    # -- out ------------------------------------------------------------------------------

    def export(self) -> bool:
        """Write the selected lamp as an LM-63 file; whether it was written."""
        from planner.catalogue.lamp_files.convert import to_photometry  # noqa: PLC0415
        from planner.catalogue.lamp_files.lm63_write import lm63_text  # noqa: PLC0415
        from planner.metrics.spectra import lux_per_umol  # noqa: PLC0415

        index = self._steps.lamp
        if index is None:
            return False
        model = self._workplace.document.plan.lamps[index].model
        proposal = self._folder() / f"{_file_name(model.name)}.ies"
        path = self._questions.save_path("Lamp as LM-63", proposal, LM63_FILTER)
        if path is None:
            return False
        path = path if path.suffix else path.with_name(f"{path.name}.ies")
        spectrum = self._spectra.of_lamp(model.key)
        scale = None if spectrum is None else lux_per_umol(spectrum)
        try:
            write_text(path, lm63_text(to_photometry(model, scale)))
        except PlanFileError as error:
            self._questions.tell_failure("The lamp was not written", str(error))
            return False
        light = "scaled to 1000 lm" if spectrum is None else f"lumens by '{spectrum.name}'"
        self.told.emit(f"Wrote {path.name}, {light}")
        return True

    def _folder(self) -> Path:
        return self._settings.folder


def _read_all_sets(path: Path) -> tuple[Photometry, ...]:
    """The file once for each of its lamp sets (only EULUMDAT has several)."""
    from planner.catalogue.lamp_files.photometry import LampFileError  # noqa: PLC0415
    from planner.catalogue.lamp_files.reading import read_lamp_file  # noqa: PLC0415

    found = [read_lamp_file(path)]
    while found[0].source_format == "EULUMDAT" and len(found) < MOST_SETS:
        try:
            found.append(read_lamp_file(path, lamp_set=len(found)))
        except LampFileError:
            break
    return tuple(found)


def _file_name(name: str) -> str:
    kept = "".join("-" if mark in '<>:"/\\|?*' or ord(mark) < 32 else mark for mark in name)
    return kept.strip(" .")[:80] or "lamp"
