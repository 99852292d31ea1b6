"""Modules in another language: compiled as they are imported, with their words exchanged.

As test runners rewrite assertions, so that nothing in the code that makes a sentence has to know of
it. A text is named by its template: an f-string's own words with the names of what is put in,
``{count} lamps over {name}``, so that a translation may set them in another order. Numbers in
an exchanged f-string that are formatted there are written as the language writes them.
``packaging/translations.py`` keeps the catalogue in step with the sources.
"""

from __future__ import annotations

import ast
import importlib.util
import marshal
import os
import re
import sys
import types
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from importlib.abc import MetaPathFinder
from importlib.machinery import SOURCE_SUFFIXES, FileFinder, ModuleSpec, SourceFileLoader
from pathlib import Path
from typing import Final

from planner import language
from planner.folders import resource_path
from planner.language import words_in

PACKAGE: Final = "planner"


def speak(code: str) -> None:
    """Have all modules that are imported from now on speak a language; for once at the start."""
    catalogue = language.begin(code)
    if catalogue is not None:
        sys.meta_path.insert(0, _Finder(catalogue))


# -- templates: how a text is named ----------------------------------------------------


def template(text: ast.Constant | ast.JoinedStr) -> tuple[str, dict[str, ast.FormattedValue]]:
    """The template of a text, and what is put in by the names it has there.

    A value is named by the last name in it; others that would be named alike get a number.
    """
    if isinstance(text, ast.Constant):
        return str(text.value), {}
    names: dict[str, ast.FormattedValue] = {}
    parts: list[str] = []
    for part in text.values:
        if isinstance(part, ast.Constant):
            parts.append(str(part.value))
        elif isinstance(part, ast.FormattedValue):
            name = base = _name(part.value)
            number = 2
            while name in names and ast.dump(names[name]) != ast.dump(part):
                name, number = f"{base}{number}", number + 1
            names[name] = part
            parts.append(f"{{{name}}}")
    return "".join(parts), names


def _name(value: ast.expr) -> str:
    match value:
        case ast.Name(id=name) | ast.Attribute(attr=name):
            return name
        case ast.Call(func=inner) | ast.Subscript(value=inner) | ast.Await(value=inner):
            return _name(inner)
    return "value"


def texts(tree: ast.Module) -> Iterator[ast.Constant | ast.JoinedStr]:
    """All texts of a module that might be read by people, in the order of the source."""
    yield from _Texts().found(tree)


class _Texts(ast.NodeVisitor):
    """Finds texts; passes by docstrings, annotations, comparisons and what names a thing."""

    def found(self, tree: ast.Module) -> list[ast.Constant | ast.JoinedStr]:
        self._found: list[ast.Constant | ast.JoinedStr] = []
        self.visit(tree)
        return self._found

    def visit_Constant(self, node: ast.Constant) -> None:
        if isinstance(node.value, str) and _is_read(node.value):
            self._found.append(node)

    def visit_JoinedStr(self, node: ast.JoinedStr) -> None:
        if _is_text(template(node)[0]):
            self._found.append(node)
        for part in node.values:
            if isinstance(part, ast.FormattedValue):
                self.visit(part.value)

    def visit_Expr(self, node: ast.Expr) -> None:
        if not isinstance(node.value, ast.Constant):
            self.generic_visit(node)

    def visit_Compare(self, node: ast.Compare) -> None:
        for side in (node.left, *node.comparators):
            if not isinstance(side, ast.Constant | ast.Tuple | ast.Set | ast.List):
                self.visit(side)

    def visit_Subscript(self, node: ast.Subscript) -> None:
        self.visit(node.value)
        if not isinstance(node.slice, ast.Constant) and _name(node.value) != "Literal":
            self.visit(node.slice)

    def visit_ClassDef(self, node: ast.ClassDef) -> None:
        keys = any(_name(base) == "StrEnum" for base in node.bases)
        for part in node.body:
            if keys and isinstance(part, ast.Assign) and isinstance(part.value, ast.Constant):
                continue
            self.visit(part)

    def visit_AnnAssign(self, node: ast.AnnAssign) -> None:
        if node.value is not None:
            self.visit(node.value)

    def visit_arg(self, node: ast.arg) -> None:
        """Annotations name types."""

    def visit_FunctionDef(self, node: ast.FunctionDef) -> None:
        for part in (node.args, *node.decorator_list, *node.body):
            self.visit(part)

    def visit_MatchValue(self, node: ast.MatchValue) -> None:
        """What is compared."""

    def visit_Call(self, node: ast.Call) -> None:
        called = _name(node.func)
        on = _name(node.func.value) if isinstance(node.func, ast.Attribute) else ""
        if called in _NAMING or on in ("_log", "re"):
            return
        self.generic_visit(node)


def _is_read(text: str) -> bool:
    return any(sign.isalpha() for sign in text) and _is_text(text)


def _is_text(text: str) -> bool:
    # Control characters are of no text, and no XML may hold them.
    return all(sign >= " " or sign in "\n\t" for sign in text)


_NAMING: Final = {
    "setObjectName", "getattr", "setattr", "hasattr", "TypeVar", "encode", "decode", "open",
    "ParamSpec", "setProperty", "property", "Literal", "cast", "word",
}  # fmt: skip
"""Calls whose texts name things."""


# -- the exchange ----------------------------------------------------------------------


def exchanged(tree: ast.Module, words: Mapping[str, str]) -> ast.Module:
    """A module's tree with the texts exchanged that ``words`` holds."""
    new: dict[int, tuple[str, dict[str, ast.FormattedValue]]] = {}
    for text in texts(tree):
        name, put_in = template(text)
        found = words.get(name)
        if found is not None:
            new[id(text)] = found, put_in
    if new:
        _Exchange(new).visit(tree)
        after = sum(
            (isinstance(node, ast.ImportFrom) and node.module == "__future__")
            or (isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant))
            for node in tree.body[:2]
        )  # fmt: skip
        tree.body.insert(
            after, ast.parse("from planner.language import written as _written").body[0]
        )
        ast.fix_missing_locations(tree)
    return tree


class _Exchange(ast.NodeTransformer):
    """Puts translations in, from the inside out: a text may stand in what another puts in."""

    def __init__(self, new: Mapping[int, tuple[str, dict[str, ast.FormattedValue]]]) -> None:
        self._new = new

    def visit(self, node: ast.AST) -> ast.AST:
        key = id(node)
        node = super().visit(node)
        if key not in self._new:
            return node
        translation, put_in = self._new[key]
        parts: list[ast.expr] = []
        for part in re.split(r"(\{\w+\})", translation):
            value = put_in.get(part[1:-1]) if part.startswith("{") else None
            if value is not None:
                parts.append(_in_language(value))
            elif part:
                parts.append(ast.Constant(part))
        new = ast.JoinedStr(parts) if put_in else ast.Constant(translation)
        return ast.copy_location(new, node)


def _in_language(value: ast.FormattedValue) -> ast.FormattedValue:
    if value.format_spec is None or value.conversion != -1:
        return value
    call = ast.Call(ast.Name("_written", ast.Load()), [value.value, value.format_spec], [])
    return ast.FormattedValue(call, -1, None)


# -- modules that speak ----------------------------------------------------------------


class _Finder(MetaPathFinder):
    """Finds the program's own modules, and has them compiled with their words exchanged."""

    def __init__(self, catalogue: Path) -> None:
        self._catalogue = catalogue

    def find_spec(
        self,
        fullname: str,
        path: Sequence[str] | None,
        _target: types.ModuleType | None = None,
    ) -> ModuleSpec | None:
        if fullname.partition(".")[0] != PACKAGE:
            return None
        # By the files themselves: in a bundle the modules lie in an archive, too.
        for folder in path or ():
            spec = FileFinder(folder, (SourceFileLoader, SOURCE_SUFFIXES)).find_spec(fullname)
            if spec is not None and isinstance(spec.loader, SourceFileLoader):
                spec.loader = _Loader(fullname, spec.loader.path, self._catalogue)
                return spec
        return None


class _Loader(SourceFileLoader):
    """Compiles a module in another language, and keeps the outcome beside Python's own."""

    def __init__(self, fullname: str, path: str, catalogue: Path) -> None:
        super().__init__(fullname, path)
        self._catalogue = catalogue

    def get_code(self, fullname: str) -> types.CodeType:
        path = Path(self.get_filename(fullname))
        source = path.read_bytes()
        stamp = _stamp(self._catalogue, source)
        kept = Path(importlib.util.cache_from_source(path, optimization=language.spoken()))
        try:
            with kept.open("rb") as stream:
                if marshal.load(stream) == stamp:
                    code = marshal.load(stream)
                    if isinstance(code, types.CodeType):
                        return code
        except (OSError, ValueError, EOFError, TypeError):
            pass
        code = _compiled(source, fullname, str(path), self._catalogue)
        if not sys.dont_write_bytecode:
            _keep(kept, marshal.dumps(stamp) + marshal.dumps(code))
        return code


def modules() -> Iterator[tuple[str, Path]]:
    """All modules of the program by name, with their sources."""
    for path in sorted(_PACKAGE.rglob("*.py")):
        place = path.relative_to(_PACKAGE.parent).with_suffix("")
        yield ".".join(place.parts).removesuffix(".__init__"), path


_PACKAGE: Final = Path(__file__).parent


def ahead(code: str) -> Iterator[tuple[Path, bytes]]:
    """All modules compiled in a language: where each is looked for, from the package's folder on.

    For a bundle, where a start can keep nothing: there compiling them took longer than all else.
    """
    catalogue = resource_path(f"translations/planner_{code}.ts")
    for name, path in modules():
        place, source = path.relative_to(_PACKAGE.parent), path.read_bytes()
        made = _compiled(source, name, str(place), catalogue)
        kept = Path(importlib.util.cache_from_source(place, optimization=code))
        yield kept, marshal.dumps(_stamp(catalogue, source)) + marshal.dumps(made)


def _compiled(source: bytes, name: str, path: str, catalogue: Path) -> types.CodeType:
    tree = exchanged(ast.parse(source, path), words_in(catalogue, name))
    return compile(tree, path, "exec", dont_inherit=True)


def _stamp(catalogue: Path, source: bytes) -> str:
    return (_catalogue_hash(catalogue) + importlib.util.source_hash(source)).hex()


@cache
def _catalogue_hash(catalogue: Path) -> bytes:
    # With this module: what it makes of a catalogue may change.
    return importlib.util.source_hash(catalogue.read_bytes() + Path(__file__).read_bytes())


def _keep(file: Path, data: bytes) -> None:
    # Beside it and moved, so that a program that starts at the same time reads no half of it.
    part = file.with_name(f"{file.name}.{os.getpid()}")
    try:
        file.parent.mkdir(exist_ok=True)
        part.write_bytes(data)
        part.replace(file)
    except OSError:
        part.unlink(missing_ok=True)
