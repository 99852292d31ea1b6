"""Make a Debian package of the standalone folder: called by ``bundle.py --deb``.

What goes where is the table below; what the package stands on is the program's own list.
"""

from __future__ import annotations

import gzip
import shutil
import subprocess
import sys
from email.utils import formatdate
from pathlib import Path

from environment import ROOT

sys.path.insert(0, str(ROOT))
import planner
from planner.app.screen import FONT_PACKAGE, FOR_A_WINDOW, TO_DRAW

NAME = "grow-space-light-planner"
CHANGELOG = "resources/docs/changelog.md"
LINUX = ROOT / "packaging" / "linux"
SHARE = {
    f"{NAME}.desktop": f"applications/{NAME}.desktop",
    f"{NAME}.xml": f"mime/packages/{NAME}.xml",
    f"{NAME}.metainfo.xml": f"metainfo/{NAME}.metainfo.xml",
    f"{NAME}.1": f"man/man1/{NAME}.1",
    "lintian-overrides": f"lintian/overrides/{NAME}",
    "copyright": f"doc/{NAME}/copyright",
    "../../resources/icons/planner.svg": f"icons/hicolor/scalable/apps/{NAME}.svg",
}
CONTROL = """\
Package: {name}
Version: {version}-1
Architecture: {architecture}
Maintainer: the contributors of the grow space light planner <maintainers@growspace.example>
Installed-Size: {kilobytes}
Depends: {depends}
Recommends: libcups2 | libcups2t64
Section: science
Priority: optional
Description: sketch a small grow space and see the light in it
 Draw a cabinet, a shelf or a tent to scale, hang the lamps, say what the
 walls are lined with, and see the light lie on the canopy: how much it is,
 how even it is, and what another lining, another height or another place of
 the lamp would change. The package brings its own Python and Qt.
"""
CHANGES = """\
{name} ({version}-1) unstable; urgency=low

  * The folder of this release; what changed is told in changelog.gz.

 -- the contributors of the grow space light planner <maintainers@growspace.example>  {date}
"""
# Debian 13 and Ubuntu 24.04 call these otherwise.
RENAMED = {"libglib2.0-0": "libglib2.0-0 | libglib2.0-0t64"}


def build(folder: Path, out: Path) -> Path:
    """Pack the standalone folder into ``out``; wants dpkg-deb. Returns the package."""
    tree = ROOT / "build" / "deb"
    shutil.rmtree(tree, ignore_errors=True)
    shutil.copytree(folder, tree / "usr" / "lib" / NAME, symlinks=True)
    for path in (tree / "usr" / "lib").rglob("*"):
        if not path.is_symlink():
            # Libraries are not programs; only what is started may be.
            path.chmod(0o755 if path.is_dir() or path.name == NAME else 0o644)
    (tree / "usr" / "bin").mkdir()
    (tree / "usr" / "bin" / NAME).symlink_to(f"../lib/{NAME}/{NAME}")
    for source, place in SHARE.items():
        target = tree / "usr" / "share" / place
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes((LINUX / source).read_bytes())
    told = {"name": NAME, "version": planner.__version__}
    changes = CHANGES.format(**told, date=formatdate())
    documents = tree / "usr" / "share" / "doc" / NAME
    _packed(documents / "changelog.gz", (ROOT / CHANGELOG).read_bytes())
    _packed(documents / "changelog.Debian.gz", changes.encode())
    manual = tree / "usr" / "share" / SHARE[f"{NAME}.1"]
    _packed(manual.with_suffix(".1.gz"), manual.read_bytes())
    manual.unlink()
    architecture = _said("dpkg", "--print-architecture")
    needed = sorted({*TO_DRAW.values(), *FOR_A_WINDOW.values(), FONT_PACKAGE})
    control = CONTROL.format(
        **told,
        architecture=architecture,
        kilobytes=sum(path.lstat().st_size for path in tree.rglob("*")) // 1024,
        depends=", ".join(["libc6 (>= 2.34)", "libstdc++6", *(RENAMED.get(n, n) for n in needed)]),
    )
    (tree / "DEBIAN").mkdir()
    (tree / "DEBIAN" / "control").write_text(control, encoding="utf-8")
    package = out / f"{NAME}_{planner.__version__}-1_{architecture}.deb"
    # Light compression: four times as quick, a tenth larger.
    packing = ("dpkg-deb", "--root-owner-group", "-Zxz", "-z1", "--build")
    _said(*packing, str(tree), str(package))
    return package


def _packed(path: Path, data: bytes) -> None:
    path.write_bytes(gzip.compress(data, mtime=0))


def _said(*command: str) -> str:
    done = subprocess.run(command, check=True, capture_output=True, text=True)
    return done.stdout.strip()
