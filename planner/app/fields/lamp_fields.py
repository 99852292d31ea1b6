"""Fields of a lamp: where it hangs, how much it gives, how it spreads it, and what kind it is."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QLineEdit

from planner.app.edit_steps import duplicate, hang_lamp, remove
from planner.app.fields.choosers import LampChooser, SpectrumChoice, lamp_facts
from planner.app.fields.form import Form, NoteLabel, button, show_ticks
from planner.app.fields.panel import FieldPanel, Workplace
from planner.app.fields.two_readings import TwoReadingsFields
from planner.app.plots.lamp_plots import PolarPlot, SpectrumPlot, curves_of_model, figures_text
from planner.catalogue.library import CatalogueError
from planner.language import inside
from planner.metrics.figures import FIGURE, percent
from planner.metrics.spectra import wavebands_of
from planner.plan import edits
from planner.plan.ageing import FADING_UNKNOWN, fades_unknown
from planner.plan.changes import refit
from planner.plan.lamp import (
    BarsBody,
    Body,
    CosineProfile,
    Lamp,
    LampModel,
    PanelBody,
    PlanesProfile,
    PointBody,
    Profile,
    TableProfile,
    ppf_of,
    watts_of,
)
from planner.plan.place import Place, PlaceKind
from planner.plan.plan import Plan
from planner.plan.quantity import BEAM_DOUBT, PERCENT
from planner.plan.refusal import refusal
from planner.plan.turning import with_model
from planner.plan.wavebands import BAND_WORDS, PAR_BANDS, Wavebands
from planner.units import format_number


def profile_words(profile: Profile) -> str:
    """One or two sentences on a profile: its law or table, and the angle of half its peak."""
    if isinstance(profile, CosineProfile):
        edge = _deg(profile.beam_angle_deg / 2)
        return f"Half of its peak is left at {edge}; from there it fades smoothly to the side."
    if isinstance(profile, TableProfile):
        half = _half_angle(profile.angles_deg, profile.relative)
        return (
            f"The beam is a table of {len(profile.angles_deg)} angles from "
            f"{_deg(profile.angles_deg[0])} to {_deg(profile.angles_deg[-1])}, the same all "
            f"around. Half of its peak is left at {_deg(half)}."
        )
    return _planes_words(profile)


def _planes_words(profile: PlanesProfile) -> str:
    along = _nearest(profile, (0.0, 180.0, 360.0))
    across = _nearest(profile, (90.0, 270.0))
    ends = f"{_deg(profile.angles_deg[0])} to {_deg(profile.angles_deg[-1])}"
    planes = len(profile.azimuths_deg)
    text = (
        f"The beam is a photometric table of {planes} plane{'' if planes == 1 else 's'} with "
        f"{len(profile.angles_deg)} angles each, from {ends}."
    )
    if along == across:
        return f"{text} Half of its peak is left at {_deg(_half(profile, along))}."
    return (
        f"{text} Half of its peak is left at {_deg(_half(profile, along))} along the lamp and "
        f"{_deg(_half(profile, across))} across it."
    )


def _nearest(profile: PlanesProfile, azimuths: tuple[float, ...]) -> int:
    """The plane nearest to one of the azimuths."""
    return min(
        range(len(profile.azimuths_deg)),
        key=lambda k: min(abs(profile.azimuths_deg[k] - azimuth) for azimuth in azimuths),
    )


def _half(profile: PlanesProfile, plane: int) -> float:
    return _half_angle(profile.angles_deg, profile.relative[plane])


def _half_angle(angles: tuple[float, ...], relative: tuple[float, ...]) -> float:
    """The widest angle at which at least half of the peak is left."""
    half = max(relative) / 2
    return max(a for a, value in zip(angles, relative, strict=True) if value >= half)


def _deg(angle: float) -> str:
    return f"{format_number(angle, 1)}°"


SPECTRUM_HELP = (
    "For display, for lux and for lamp files. What is chosen is kept for this kind of lamp in "
    "your settings."
)
COLOUR_HELP = (
    "For all lamps of this kind the plan then holds how much of their light is blue, green, red "
    "and far-red. Once that is known of every lamp, the figures tell of each on the canopy, and "
    "linings with a colour return each as they do."
)
GREY_LININGS = (
    "No lining here has colours, so walls return all alike. None of the catalogue has: give one of "
    "your own its reflectance by colour."
)
NONE = "none chosen"


def _colour_words(colour: Wavebands) -> str:
    return ", ".join(
        f"{inside(BAND_WORDS[band])} {percent(colour.share(band))}" for band in PAR_BANDS
    )


class LampLightFields(Form):
    """The polar plot of a lamp and, where one is chosen, its spectrum with its figures.

    Signals: ``coloured`` carries the wavebands the plan shall count, None for none of them.
    """

    coloured = Signal(object)

    def __init__(self, spectra: SpectrumChoice) -> None:
        super().__init__()
        self._spectra = spectra
        self._model: LampModel | None = None
        self._grey = False
        self.polar = self.add_wide(PolarPlot())
        self.spectrum_row, self.spectrum_combo = self.add_choice("Spectrum", (), SPECTRUM_HELP)
        self.spectrum_plot = SpectrumPlot()
        self.figures = NoteLabel()
        self.add_wide(self.spectrum_plot)
        self.add_wide(self.figures)
        self.colour_switch = QCheckBox("Count its colours")
        self.colour_switch.setAccessibleName(self.colour_switch.text())
        self.colour_row = self.add_row("", self.colour_switch, COLOUR_HELP)
        self.colour_note = self.add_wide(NoteLabel())
        self.colour_switch.clicked.connect(self._count)
        self.spectrum_combo.activated.connect(self._choose)
        spectra.changed.connect(self._show_spectrum)

    def show_model(self, model: LampModel, *, grey: bool = False) -> None:
        """Show a kind of lamp; ``grey``: no lining of the plan has colours."""
        if (model, grey) == (self._model, self._grey):
            return
        self._grey = grey
        if self._model is None or model.profile != self._model.profile:
            self.polar.show_curves(curves_of_model(model))
        self._model = model
        self._show_spectrum()

    def _show_spectrum(self) -> None:
        if self._model is None:
            return
        names = [NONE, *(spectrum.name for spectrum in self._spectra.spectra)]
        self.spectrum_combo.offer([(name, None) for name in names])
        spectrum = self._spectra.of_lamp(self._model.key)
        offered = self._spectra.spectra
        line = 0 if spectrum is None else 1 + offered.index(spectrum)
        self.spectrum_combo.setCurrentIndex(line)
        self.spectrum_plot.setVisible(spectrum is not None)
        self.figures.setVisible(spectrum is not None)
        self.spectrum_plot.show_spectrum(spectrum)
        figures = self.spectrum_plot.figures
        if spectrum is not None and figures is not None:
            model = " A shape made by a formula, measured on no lamp." if spectrum.is_model else ""
            self.figures.setText(f"{figures_text(figures)}{model}")
        counted = self._model.wavebands
        self.colour_row.set_visible(spectrum is not None or counted is not None)
        self.colour_switch.setChecked(counted is not None)
        self.colour_note.setVisible(counted is not None)
        if counted is not None:
            said = f"Of the photons of PPFD, {_colour_words(counted)}."
            self.colour_note.setText(f"{said} {GREY_LININGS}" if self._grey else said)

    def _choose(self, line: int) -> None:
        if self._model is not None:
            chosen = None if line == 0 else self._spectra.spectra[line - 1]
            self._spectra.choose(self._model.key, chosen)
            if self._model.wavebands is not None and chosen is not None:
                self.coloured.emit(wavebands_of(chosen))

    def _count(self, on: bool) -> None:
        spectrum = None if self._model is None else self._spectra.of_lamp(self._model.key)
        self.coloured.emit(wavebands_of(spectrum) if on and spectrum is not None else None)


BODY_KINDS: Final = (("Small bulb or spot", "point"), ("Board or bar", "panel"), ("Bars", "bars"))


class LampKindFields(FieldPanel):
    """The lower part of a lamp's fields: edits the kind of this one lamp."""

    def __init__(self, workplace: Workplace) -> None:
        super().__init__(workplace)
        self.add_heading("What kind it is")
        self.ppf_field = self.add_dial("ppf")
        self.watts_field = self.add_dial("watts")
        self.dim_row, self.dim_switch = self.add_switch(
            "Can be dimmed",
            lambda plan, on: self._with(plan, dimmable=on),
            ("Set lamp as dimmable", "Set lamp as not dimmable"),
            "Whether its output can be turned down. What is advised keeps to it.",
        )
        self.life_field = self.add_dial("hours-to-90")
        self.beam_field = self.add_dial("beam")
        self.doubt_field = self.add_quantity(
            "May be off by",
            BEAM_DOUBT,
            lambda plan: self._model(plan).beam_uncertainty_deg if self._has_beam(plan) else None,
            lambda plan, value: self._with(plan, beam_uncertainty_deg=value),
            "Set doubt of the beam",
            "By how many degrees the beam angle may be off, either way; 0 where it was measured. "
            "The ± of all figures counts it. What a kind of lamp states at first is usual, from "
            "memory.",
        )
        self.doubt_field.bounded = lambda _plan: BEAM_DOUBT
        self.doubt_field.others = lambda plan: [
            plan.lamps[one.index].model.beam_uncertainty_deg for one in self.chosen
        ]
        self.readings = TwoReadingsFields(workplace)
        self.add_panel(self.readings)
        self.profile_note = self.add_wide(NoteLabel())
        self.light_fields = self.add_wide(LampLightFields(workplace.spectra))
        self.light_fields.coloured.connect(self._count_colours)
        self.body_row, self.body_combo = self.add_choice("Shines from", BODY_KINDS)
        self.body_combo.activated.connect(self._choose_body)
        self.length_field = self.add_dial("lamp-length", "Length")
        self.width_field = self.add_dial("lamp-width", "Width")
        self.count_field = self.add_dial("bars", "Bars")
        self.bar_width_field = self.add_dial("bar-width")
        self.housing_field = self.add_dial("housing")
        self._add_keeping()
        self.end()

    def _add_keeping(self) -> None:
        self.keep_button = self.add_wide(
            button("Save as own lamp …", "Keeps this kind of lamp in your library, under a name.")
        )
        self.keep_button.setCheckable(True)
        self.keep_line = QLineEdit()
        self.keep_row = self.add_row("Name", self.keep_line)
        self.save_button = self.add_wide(button("Save", "Keeps the lamp in your library."))
        self.update_button = button(
            "Update own lamp", "Writes these numbers into the entry of your library."
        )
        self.delete_button = button(
            "Delete own lamp", "Takes the entry out of your library; plans that use it keep it."
        )
        self.own_bar = self.add_buttons(self.update_button, self.delete_button)
        self.update_button.clicked.connect(
            lambda: self._in_library(self.workplace.shelf.save, self._model(self.plan))
        )
        self.delete_button.clicked.connect(
            lambda: self._in_library(self.workplace.shelf.delete, self._model(self.plan))
        )
        self.own_alert = self.add_alert()
        self.keep_button.toggled.connect(self._show_keeping)
        self.save_button.clicked.connect(self._save)
        self.keep_line.returnPressed.connect(self._save)
        self._show_keeping(False)

    # -- showing ------------------------------------------------------------------------

    def show_selection(self, selection: Place) -> None:
        self.keep_button.setChecked(False)
        super().show_selection(selection)

    def refresh(self, plan: Plan) -> None:
        if self.selection.kind is not PlaceKind.LAMP or not self.selection.fits(plan):
            return
        model = self._model(plan)
        all_ = [plan.lamps[place.index].model for place in self.chosen]
        kinds = {one.body.kind for one in all_}
        self.body_combo.setCurrentIndex(
            self.body_combo.findData(model.body.kind) if len(kinds) == 1 else -1
        )
        self.profile_note.setText(profile_words(model.profile))
        show_ticks(self.dim_switch, [one.dimmable for one in all_])
        self.light_fields.show_model(model, grey=all(o.wavebands is None for o in plan.linings))
        # Of several kinds no one beam is that of all, and no one kind is to be kept.
        alike = all(one == model for one in all_)
        for part in (self.profile_note, self.light_fields, self.keep_button):
            part.setVisible(alike)
        own = model.key in self.workplace.shelf.catalogue.own_lamps
        self.own_bar.setVisible(own)
        self.update_button.setEnabled(
            own and self.workplace.shelf.catalogue.lamp(model.key) != model
        )
        super().refresh(plan)

    def _show_keeping(self, shown: bool) -> None:
        self.keep_row.set_visible(shown)
        self.save_button.setVisible(shown)
        if shown:
            self.keep_line.setText(f"{self._model(self.plan).name} (own)")
            self.keep_line.setFocus()
            self.keep_line.selectAll()

    # -- edits --------------------------------------------------------------------------

    def _model(self, plan: Plan) -> LampModel:
        return plan.lamps[self.selection.index].model

    def _has_beam(self, plan: Plan) -> bool:
        return self.selection.fits(plan) and isinstance(self._model(plan).profile, CosineProfile)

    def _with(self, plan: Plan, **parts: Any) -> Plan:
        return self.on_each(plan, lambda plan, index: with_model(plan, index, **parts))

    def _count_colours(self, wavebands: Wavebands | None) -> None:
        name = "Leave out the lamp's colours" if wavebands is None else "Count the lamp's colours"
        key = self._model(self.plan).key

        def build() -> Plan:
            return edits.change_kind(self.plan, key, wavebands=wavebands)

        self.edit(self.light_fields.colour_row, build, name)

    def _choose_body(self, _line: int) -> None:
        kind = self.body_combo.currentData()

        def change(plan: Plan, index: int) -> Plan:
            model = plan.lamps[index].model
            same = kind == model.body.kind
            return plan if same else with_model(plan, index, body=body_of(kind, model))

        self.edit(self.body_row, lambda: self.on_each(self.plan, change), "Set lamp shape")

    def _in_library(self, act: Callable[[Any], None], what: Any) -> None:
        """Change the library, which is no part of the plan: nothing to undo."""
        try:
            act(what)
        except CatalogueError as error:
            self.own_alert.say(str(error))
        else:
            self.own_alert.say("")

    def _save(self) -> None:
        name = self.keep_line.text().strip()
        shelf = self.workplace.shelf
        old = self._model(self.plan)
        try:
            key = shelf.own_lamp_key(name)
            model = edits.changed(old, name=name, key=key, source="Own entry.")
            shelf.save(model)
        except ValueError as error:
            self.keep_row.show_error(refusal(error, self.workplace.display.unit))
        except CatalogueError as error:
            self.keep_row.show_error(str(error))
        else:
            self.keep_button.setChecked(False)
            self.edit(
                self.keep_row,
                lambda: self.on_each(
                    self.plan, lambda plan, index: edits.change_lamp(plan, index, model=model)
                ),
                "Save as own lamp",
            )


def body_of(kind: str, model: LampModel) -> Body:
    """A body of another kind, as large as the old one where that had a size."""
    length, width = model.size
    length, width = length or 0.3, width or 0.3
    if kind == "point":
        return PointBody()
    if kind == "panel":
        return PanelBody(length=length, width=width)
    return BarsBody(count=4, length=length, width=width, bar_width=max(width / 10, 0.005))


class LampFields(FieldPanel):
    """Shown while a lamp is selected."""

    def __init__(self, workplace: Workplace) -> None:
        super().__init__(workplace)
        self.several_note = self.add_wide(NoteLabel())
        self.chooser = LampChooser(workplace.shelf)
        self.chooser_row = self.add_row("Kind of lamp", self.chooser, wide=True)
        self.facts = self.add_wide(NoteLabel())
        self.label_row, self.label_line = self.add_text(
            "Name of this lamp",
            self._label,
            lambda plan, text: edits.change_lamp(plan, self.selection.index, label=text),
            "Name lamp",
        )
        self.label_line.setPlaceholderText("none; it goes by its number")
        self.add_heading("Where it hangs")
        self.height_field = self.add_dial("height")
        self.x_field = self.add_dial("lamp-x", "x")
        self.y_field = self.add_dial("lamp-y", "y")
        self.rotation_field = self.add_dial("lamp-rotation", "Rotation")
        self.tilt_field = self.add_dial("tilt", "Tilt")
        self.output_field = self.add_dial("output")
        self.hours_field = self.add_dial("hours-run", "Hours run")
        self.age_note = self.add_wide(NoteLabel(FADING_UNKNOWN))
        self.dust_field = self.add_dial("dust", "Dust")
        self.add_button = button("One more", "Hangs one more of this kind. Key: L")
        self.duplicate_button = button("Duplicate", "Hangs a second one like this beside it.")
        self.remove_button = button("Remove", "Takes this lamp down.")
        self.add_buttons(self.add_button, self.duplicate_button, self.remove_button)
        self.alert = self.add_alert()
        self.kind_fields = LampKindFields(workplace)
        self.add_panel(self.kind_fields)
        self.end()
        self.chooser.chosen.connect(self._choose)
        self.add_button.clicked.connect(lambda: self.alert.say(hang_lamp(workplace)))
        self.duplicate_button.clicked.connect(
            lambda: self.alert.say(duplicate(workplace, self.chosen))
        )
        self.remove_button.clicked.connect(lambda: remove(workplace, self.chosen))
        workplace.shelf.changed.connect(lambda: self.refresh(self.plan))

    def refresh(self, plan: Plan) -> None:
        if self.selection.kind is not PlaceKind.LAMP or not self.selection.fits(plan):
            return
        super().refresh(plan)
        lamps = [plan.lamps[place.index] for place in self.chosen]
        self.show_several(self.several_note, self.label_row)
        self.age_note.setVisible(fades_unknown(lamps))
        self.chooser.show_model(lamps[0].model, plan.costs)
        self.facts.setText(facts_text(*lamps))

    def _label(self, plan: Plan) -> str:
        index = self.selection.index
        return plan.lamps[index].label if index < len(plan.lamps) else ""

    def _choose(self, model: LampModel) -> None:
        def change(plan: Plan, index: int) -> Plan:
            return refit(plan, Place(PlaceKind.LAMP, index), model)

        name = f"Choose lamp {model.name}"
        self.edit(self.chooser_row, lambda: self.on_each(self.plan, change), name)


def facts_text(lamp: Lamp, *others: Lamp) -> str:
    """What this lamp gives and takes at its output, as old and dusty as it is; several together."""
    if others:
        all_ = (lamp, *others)
        kinds = len({one.model.key for one in all_})
        which = "all of one kind" if kinds == 1 else f"of {kinds} kinds, the first of them above"
        return (
            f"Together they give {FIGURE['photon_flux'].text(ppf_of(all_))} from "
            f"{FIGURE['watts'].text(watts_of(all_))}; {which}."
        )
    if lamp.output_percent == 100 and lamp.kept == 1:
        return f"Gives {lamp_facts(lamp.model)}."
    output = PERCENT.text(lamp.output_percent, None)
    if lamp.kept < 1:
        output += f", of which age and dust leave {percent(lamp.kept)},"
    return (
        f"At {output} it gives {FIGURE['photon_flux'].text(lamp.ppf)} from "
        f"{FIGURE['watts'].text(lamp.watts)}; new and at full output {lamp_facts(lamp.model)}."
    )
