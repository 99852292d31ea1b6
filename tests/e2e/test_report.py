"""What a user does with the report: choose sections, look, save, print; and the command."""

from __future__ import annotations

import html
import io
import json
import re
import threading
from pathlib import Path

import pypdf
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QGuiApplication, QImage
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from planner.app import report_window
from planner.app.canvas.items import Item, Part
from planner.app.jobs import Cancelled, Job, Progress
from planner.app.main_window import MainWindow
from planner.app.report_window import ReportWindow
from planner.catalogue.library import demo_plan
from planner.command_line import main
from planner.files.store import save_plan
from planner.plan.variant_edits import add_variants
from planner.reports.report import SECTIONS
from planner.units import PPFD_UNIT, LengthUnit
from tests.e2e.shell import ReadyAnswers, make_window, small_plan, trigger
from tests.e2e.test_plain_names import EVIL, evil_plan
from tests.unit.reports.test_page import parsed

pytestmark = pytest.mark.gui


def opened(window: MainWindow) -> ReportWindow:
    trigger(window, "report")
    (dialog,) = window.findChildren(ReportWindow)
    return dialog


def texts(path: Path) -> list[str]:
    reader = pypdf.PdfReader(io.BytesIO(path.read_bytes()))
    return [" ".join(page.extract_text().split()) for page in reader.pages]


@pytest.fixture
def shown(qtbot: QtBot) -> tuple[ReportWindow, ReadyAnswers, MainWindow]:
    window, answers = make_window(qtbot, small_plan("Loft box"))
    return opened(window), answers, window


def test_the_report_opens_with_its_sections_and_leaves(
    shown: tuple[ReportWindow, ReadyAnswers, MainWindow],
) -> None:
    dialog, _, _ = shown
    ticked = [key for key, box in dialog.boxes.items() if not box.isHidden()]
    # No variants, no surveys, no schedule: no sections on them.
    assert ticked == ["decision", "plan", "light", "figures", "budget", "build", "assumptions",
                      "cautions"]  # fmt: skip
    assert dialog.view.count >= 4
    # Whoever cannot see the leaves is told how many, what of, and the decision.
    described = dialog.view.accessibleDescription()
    assert described.startswith(f"{dialog.view.count} pages: Decision, The plan")
    assert "Chosen: 1 × Panel, hung 50 cm above the canopy; no walls" in described
    assert dialog.alert.text() == ""
    dialog.accept()


def test_sections_can_be_left_out_and_order_is_kept(
    shown: tuple[ReportWindow, ReadyAnswers, MainWindow], tmp_path: Path
) -> None:
    dialog, answers, _ = shown
    for key, box in dialog.boxes.items():
        box.setChecked(key in {"cautions", "decision"})
    answers.to_save = tmp_path / "report.pdf"
    QTest.mouseClick(dialog.pdf_button, Qt.MouseButton.LeftButton)
    text = " ".join(texts(answers.to_save))
    assert text.index("Decision") < text.index("Cautions")
    assert "Build sheet" not in text
    dialog.accept()


def test_without_a_section_nothing_can_be_saved(
    shown: tuple[ReportWindow, ReadyAnswers, MainWindow],
) -> None:
    dialog, _, _ = shown
    for box in dialog.boxes.values():
        box.setChecked(False)
    assert not dialog.pdf_button.isEnabled()
    assert not dialog.print_button.isEnabled()
    dialog.boxes["light"].setChecked(True)
    assert dialog.html_button.isEnabled()
    dialog.accept()


def test_one_press_leaves_only_the_build_sheet(
    shown: tuple[ReportWindow, ReadyAnswers, MainWindow],
) -> None:
    dialog, _, _ = shown
    dialog.sheet_button.click()
    assert [key for key, box in dialog.boxes.items() if box.isChecked()] == ["build"]
    assert dialog.view.count == 1
    assert dialog.sheet_button.text() == "All sections"
    dialog.sheet_button.click()
    assert all(box.isChecked() for box in dialog.boxes.values())
    dialog.accept()


def test_it_is_saved_as_one_page_of_html(
    shown: tuple[ReportWindow, ReadyAnswers, MainWindow], tmp_path: Path
) -> None:
    dialog, answers, window = shown
    answers.to_save = tmp_path / "report.html"
    dialog.html_button.click()
    page = answers.to_save.read_text("utf-8")
    reader = parsed(page)
    assert "Loft box" in reader.texts
    assert answers.proposed[-1].name == "Loft box.html"
    assert window.statusBar().currentMessage() == "Wrote report.html"
    dialog.accept()


def test_a_folder_that_is_not_there_is_told(
    shown: tuple[ReportWindow, ReadyAnswers, MainWindow], tmp_path: Path
) -> None:
    dialog, answers, _ = shown
    answers.to_save = tmp_path / "nowhere" / "report.pdf"
    assert not dialog.save(".pdf")
    assert len(answers.told) == 1
    dialog.accept()


def test_it_is_printed_as_it_is_shown(
    shown: tuple[ReportWindow, ReadyAnswers, MainWindow], tmp_path: Path
) -> None:
    dialog, answers, _ = shown
    dialog.paper.setCurrentIndex(1)
    dialog.paper.activated.emit(1)
    answers.to_print = tmp_path / "printed.pdf"
    dialog.print_button.click()
    assert answers.asked[-1] == "printer for letter of Loft box"
    reader = pypdf.PdfReader(answers.to_print)
    assert len(reader.pages) == dialog.view.count
    width, height = (float(side) for side in reader.pages[0].mediabox[2:])
    assert (width, height) == pytest.approx((612, 792), abs=1)
    answers.to_print = None
    assert not dialog.print_()
    dialog.accept()


def test_the_leaves_scroll_by_keys_and_are_white_paper(
    shown: tuple[ReportWindow, ReadyAnswers, MainWindow], qtbot: QtBot
) -> None:
    dialog, _, _ = shown
    view = dialog.view
    view.setFocus()
    QTest.keyClick(view, Qt.Key.Key_PageDown)
    assert view.verticalScrollBar().value() == pytest.approx(view.leaf_size().height() + 16, abs=1)
    QTest.keyClick(view, Qt.Key.Key_End)
    assert view.verticalScrollBar().value() == view.verticalScrollBar().maximum()
    QTest.keyClick(view, Qt.Key.Key_Home)
    image = view.grab().toImage()
    assert image.pixelColor(view.viewport().width() // 2, 40) == QColor("white")
    dialog.accept()


def test_each_drawing_goes_out_by_itself(
    shown: tuple[ReportWindow, ReadyAnswers, MainWindow], tmp_path: Path
) -> None:
    dialog, answers, _ = shown
    menu = dialog.drawings_menu()
    names = [action.text() for action in menu.actions()]
    assert names[0].startswith("The space from above, 100 cm by 100 cm")
    assert any("light from" in name for name in names)
    parts = [action.text() for action in menu.actions()[0].menu().actions()]  # type: ignore[attr-defined]
    # A plan has no numbers to copy.
    assert parts == ["Copy the picture", "Save as …"]
    menu.close()
    plan = dialog.drawings()[0]
    plan.ask_and_save()
    assert (
        answers.proposed[-1].name
        == "the-space-from-above-100-cm-by-100-cm-with-its-walls-and-lam.png"
    )
    answers.to_save = tmp_path / "plan.svg"
    plan.ask_and_save()
    assert answers.to_save.read_text("utf-8").startswith("<svg ")
    answers.to_save = tmp_path / "plan.png"
    plan.ask_and_save()
    # 1 m at 1 : 15 is 66.7 mm, more than its room of 66; at 1 : 20 it is 50 mm, with 11 mm all
    # round 72 mm: at 12 dots a millimetre 864.
    assert QImage(str(answers.to_save)).width() == pytest.approx(864, abs=2)
    plan.copy_picture()
    assert QGuiApplication.clipboard().image().width() == pytest.approx(864, abs=2)
    dialog.accept()


def test_the_drawing_under_the_pointer_is_meant(
    shown: tuple[ReportWindow, ReadyAnswers, MainWindow],
) -> None:
    dialog, _, _ = shown
    view = dialog.view
    assert view.drawing_at(view.width() / 2, 30) is None
    places = [
        drawing.words
        for y in range(0, round(view.leaf_size().height()), 10)
        for x in (0.25, 0.6)
        if (drawing := view.drawing_at(x * view.viewport().width(), y)) is not None
    ]
    assert {words.partition(",")[0] for words in places} >= {
        "The space from above", "The space from its near side: 200 cm high",
    }  # fmt: skip
    dialog.accept()


def test_in_inches_letter_is_proposed(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot)
    window.display.update(unit=LengthUnit.INCH)
    dialog = opened(window)
    assert dialog.paper.currentText() == "Letter"
    assert dialog.made is not None
    dialog.accept()


def test_options_are_compared_once_they_are_reckoned(qtbot: QtBot) -> None:
    plan = small_plan()
    window, _ = make_window(qtbot, add_variants(plan, ("Twin", plan.setup)))
    dialog = opened(window)
    assert not dialog.boxes["options"].isHidden()
    assert not dialog.bar.isVisible()
    dialog.accept()


def test_closing_while_it_reckons_leaves_nothing_running(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot, demo_plan())
    window.estimator.lane.synchronous = False
    dialog = opened(window)
    # What the light at hand tells comes first, and it is said what is still to come.
    qtbot.waitUntil(lambda: dialog.made is not None, timeout=20_000)
    assert dialog.bar.isVisible()
    assert dialog.state.text().startswith("Reckoning how sure the figures are…")
    assert dialog.boxes["budget"].isHidden()
    dialog.reject()
    window.close()


@pytest.mark.parametrize("stopped", [False, True])
def test_paper_waits_for_what_is_still_reckoned(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch, stopped: bool
) -> None:
    """Saved before, a report says for good 'was not reckoned' of what comes a moment later."""
    go_on = threading.Event()
    job = report_window._job

    def held(asked: report_window.Asked) -> Job:
        def work(progress: Progress, cancelled: Cancelled) -> object:
            while not go_on.wait(0.01) and not cancelled():
                pass
            return job(asked)(progress, cancelled)

        return work

    monkeypatch.setattr(report_window, "_job", held)
    window, _ = make_window(qtbot)
    window.estimator.lane.synchronous = False
    dialog = opened(window)
    paper = (dialog.pdf_button, dialog.html_button, dialog.print_button)
    qtbot.waitUntil(lambda: dialog.made is not None, timeout=20_000)
    dialog.boxes["plan"].click()
    assert not any(made.isEnabled() for made in paper)
    assert dialog.state.text().endswith("wait until it is done or stopped.")
    if stopped:
        QTest.mouseClick(dialog.stop_button, Qt.MouseButton.LeftButton)
    else:
        go_on.set()
    qtbot.waitUntil(lambda: all(made.isEnabled() for made in paper), timeout=20_000)
    assert dialog.boxes["budget"].isHidden() is stopped
    assert not dialog.state.isVisible()
    assert not dialog.stop_button.isVisible()
    dialog.reject()
    window.close()


def test_names_are_printed_as_they_stand(qtbot: QtBot, tmp_path: Path) -> None:
    window, answers = make_window(qtbot, evil_plan())
    dialog = opened(window)
    answers.to_save = tmp_path / "evil.html"
    dialog.html_button.click()
    page = answers.to_save.read_text("utf-8")
    assert EVIL not in page
    assert EVIL in "".join(parsed(page).texts)
    dialog.accept()


def test_help_tells_the_cautions_of_this_plan_first(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot, evil_plan())
    trigger(window, "help_cautions")
    assert window._help is not None
    text = window._help._browsers["cautions"].toPlainText()
    assert text.index("In this plan") < text.index("Electricity and water")
    # Two panels of 100 W: 200 / (1.2 x 1005 x 5) x 3600 = 119.4 m³ an hour.
    assert "about 119 m³ of air an hour" in text
    assert text.index("computes light, nothing else") < text.index("In this plan")


def test_help_tells_all_of_a_linings_caution(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot, demo_plan())
    trigger(window, "help_cautions")
    assert window._help is not None
    text = window._help._browsers["cautions"].toPlainText()
    assert "Tears: Aluminium foil, flat, shiny side out. This lining tears easily. Fix it" in text
    assert text.count("Unplug before you touch") == 1


def test_from_a_finding_the_cautions_are_one_click_away(qtbot: QtBot) -> None:
    window, _ = make_window(qtbot, evil_plan())
    window.page.details.findings.more.click()
    assert window._help is not None
    assert window._help.shown_page == "cautions"
    assert "In this plan" in window._help._browsers["cautions"].toPlainText()


def test_the_map_goes_out_as_a_drawing_and_to_the_clipboard(qtbot: QtBot, tmp_path: Path) -> None:
    window, answers = make_window(qtbot, small_plan("Loft box"))
    answers.to_save = tmp_path / "map.svg"
    trigger(window, "export_drawing")
    assert answers.proposed[-1].name == "loft-box-map.png"
    drawing = answers.to_save.read_text("utf-8")
    # A dome of 100 on the mean: its lines carry round numbers.
    assert drawing.startswith("<svg ")
    assert ">100</text>" in drawing
    trigger(window, "copy_map")
    # Title, colour scale with its unit and figures go with it, as with the command's picture.
    assert ">Loft box</text>" in drawing
    assert f">{PPFD_UNIT}</text>" in drawing
    # 187.5 mm at 12 dots a millimetre.
    assert QGuiApplication.clipboard().image().width() == pytest.approx(2250, abs=2)


@pytest.mark.parametrize(
    ("key", "name", "said"),
    [
        ("plan", "loft-box-plan-drawing.png", "Wall 1: "),
        ("side", "loft-box-side-elevation.png", "Side view along y"),
    ],
)
def test_both_drawings_go_out_as_they_are_shown(
    qtbot: QtBot, tmp_path: Path, key: str, name: str, said: str
) -> None:
    window, answers = make_window(qtbot, small_plan("Loft box"))
    view = {"plan": window.page.plan_view, "side": window.page.elevation}[key]
    answers.to_save = tmp_path / "shown.svg"
    menu = view.menu_for(Item(Part.OUTSIDE), (0.0, 0.0))
    offered = [action.objectName() for action in menu.actions()]
    assert offered[-2:] == [f"copy_{key}", f"export_{key}"]
    menu.close()
    trigger(window, f"export_{key}")
    assert answers.proposed[-1].name == name
    assert said in answers.to_save.read_text("utf-8")
    trigger(window, f"copy_{key}")
    copied = QGuiApplication.clipboard().image()
    assert copied.size() == view.size() * 2


# -- without a window -------------------------------------------------------------------------


def test_the_command_writes_a_pdf_by_its_name(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "sheet.pdf"
    code = main(["report", "demo", "--out", str(out), "--sections", "build,decision",
                 "--paper", "letter", "--unit", "in", "--quality", "preview"])  # fmt: skip
    assert code == 0
    assert capsys.readouterr().out.endswith("(decision, build sheet)\n")
    first, second = texts(out)
    assert "invented" in first
    # 55 cm of cord: 21.65 in, 346.5 sixteenths; 34 cm from wall 4: 13.386 in, 13 3/8.
    assert "13 3/8" in second


def test_the_command_writes_a_page(tmp_path: Path) -> None:
    plan, out = tmp_path / "my.plan.json", tmp_path / "page.htm"
    save_plan(demo_plan(), plan)
    assert main(["report", str(plan), "--out", str(out), "--quality", "preview"]) == 0
    assert parsed(out.read_text("utf-8")).ids[0] == "decision"


def test_its_figures_are_those_of_the_estimate_to_their_last_digit(tmp_path: Path) -> None:
    """Read back from the page and held against the numbers another command writes."""
    data, page = tmp_path / "estimate.json", tmp_path / "report.html"
    assert main(["estimate", "demo", "--json", str(data)]) == 0
    assert main(["report", "demo", "--out", str(page), "--sections", "figures"]) == 0
    figures = json.loads(data.read_text("utf-8"))["figures"]
    rows = re.findall(
        r'<tr><td>([^<]+)</td><td class="number">([^<]+)</td><td>([^<]*)</td>',
        page.read_text("utf-8"),
    )
    found = {html.unescape(name): html.unescape(value) for name, value, _ in rows}
    names = {"Mean": "mean", "DLI": "dli", "Minimum": "minimum", "Maximum": "maximum",
             "Min / mean": "min_over_mean", "Inside band": "share_inside", "Power": "watts",
             "Utilisation": "utilisation", "Energy a day": "kwh_per_day"}  # fmt: skip
    for name, key in names.items():
        value, _, half = found[name].partition(" ± ")
        exact = figures[key] * (
            100 if key in {"min_over_mean", "share_inside", "utilisation"} else 1
        )
        last = 10.0 ** -len(value.partition(".")[2])
        assert abs(float(value) - exact) <= last / 2 + 1e-9, name
        # Two digits of a half-width at most, and no finer than the value itself.
        assert len(half.replace(".", "").lstrip("0")) <= 2
    # The lamps' flux is known to 15 %: most of it is the mean's.
    mean, doubt = (float(part) for part in found["Mean"].split(" ± "))
    assert 0.15 < doubt / mean < 0.20


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (["--out", "report.txt"], "does not say what to write; name a file .pdf or .html."),
        (["--out", "-"], "does not say what to write"),
        (["--out", "nowhere/x.pdf"], "there is no folder"),
        (["--out", "x.pdf", "--sections", "poem"], "There is no section 'poem'"),
        (["--out", "x.pdf", "--sections", ","], "Name at least one section"),
    ],
)
def test_what_cannot_be_is_one_sentence(
    arguments: list[str],
    sentence: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["report", "demo", *arguments]) == 2
    assert sentence in capsys.readouterr().err
    assert list(tmp_path.glob("*.pdf")) == []


def test_the_help_of_the_command_names_every_section(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit):
        main(["report", "--help"])
    shown = " ".join(capsys.readouterr().out.split())
    assert ", ".join(SECTIONS).replace("build,", "build (the build sheet),") in shown


def test_a_map_is_written_as_a_drawing(tmp_path: Path) -> None:
    out = tmp_path / "map.svg"
    asked = ["estimate", "demo", "--quality", "preview", "--picture", str(out)]
    assert main([*asked, "--unit", "in"]) == 0
    drawing = out.read_text("utf-8")
    assert drawing.startswith("<svg ")
    # 80 cm are 31 1/2 in on a tape; the scale carries its unit, and the sentence stands over it.
    assert ">31 1/2 in</text>" in drawing
    assert f">{PPFD_UNIT}</text>" in drawing
    assert "of the canopy lies inside" in drawing
