"""Nothing lives in a module but constants: what a project loaded belongs to the project."""

import ast
from pathlib import Path

import pytest

PACKAGE = Path(__file__).resolve().parents[2] / "signage"

EXCEPTIONS = {
    "produce/workers.py: _Work.do is assigned": "a process of a pool is started for one job, and the pool "
    "hands it nothing else to remember the job by",
}

CHANGING = frozenset({
    "add", "append", "clear", "discard", "extend", "insert", "pop", "popitem", "remove", "reverse",
    "setdefault", "sort", "update",
})  # fmt: skip
"""The methods by which lists, dictionaries and sets change (Python Library Reference, built-in types)."""

OF_A_PROJECT = frozenset({"Library", "Path", "PictureSet", "Project", "Publication", "Releases", "Wording"})
"""What a cache in a module must not be kept by: it would hold a project, or what a file held once."""

DEFINITIONS = (ast.FunctionDef, ast.AsyncFunctionDef, ast.Lambda)


def names_stored(node):
    """Every name that is bound anywhere below a node."""
    return {
        each.id for each in ast.walk(node) if isinstance(each, ast.Name) and isinstance(each.ctx, ast.Store)
    }


def names_of_module(tree):
    names = set()
    for node in tree.body:
        if isinstance(node, ast.Import | ast.ImportFrom):
            names |= {(alias.asname or alias.name).partition(".")[0] for alias in node.names}
        elif isinstance(node, ast.ClassDef | ast.FunctionDef):
            names.add(node.name)
        else:
            names |= names_stored(node)
    return names


def names_of_function(node):
    arguments = node.args
    given = [
        *arguments.posonlyargs,
        *arguments.args,
        *arguments.kwonlyargs,
        arguments.vararg,
        arguments.kwarg,
    ]
    return {each.arg for each in given if each} | names_stored(node)


def owner(node):
    """The name at the root of ``name.x[y].z``; None where there is none."""
    while isinstance(node, ast.Attribute | ast.Subscript):
        node = node.value
    return node.id if isinstance(node, ast.Name) else None


def targets(node):
    if isinstance(node, ast.Assign | ast.Delete):
        return node.targets
    return [node.target] if isinstance(node, ast.AugAssign | ast.AnnAssign) else []


def changes(node, shared):
    """What a node changes of the names of its module."""
    if isinstance(node, ast.Global):
        yield from (f"{name} is global" for name in node.names)
    for target in targets(node):
        if isinstance(target, ast.Attribute | ast.Subscript) and owner(target) in shared:
            yield f"{ast.unparse(target)} is assigned"
    called = node.func if isinstance(node, ast.Call) else None
    if isinstance(called, ast.Attribute) and called.attr in CHANGING and owner(called.value) in shared:
        yield f"{ast.unparse(called)} is called"


def changes_below(node, shared):
    for child in ast.iter_child_nodes(node):
        seen = shared - names_of_function(child) if isinstance(child, DEFINITIONS) else shared
        yield from changes(child, seen)
        yield from changes_below(child, seen)


def caches_of_projects(tree):
    """Functions that remember what they were asked about a project or a file."""
    for node in ast.walk(tree):
        if not isinstance(node, ast.FunctionDef):
            continue
        decorators = {ast.unparse(each).partition("(")[0].rpartition(".")[2] for each in node.decorator_list}
        if decorators & {"cache", "lru_cache"}:
            said = {each.id for each in ast.walk(node.args) if isinstance(each, ast.Name)}
            yield from (f"{node.name} is kept by {name}" for name in sorted(said & OF_A_PROJECT))


def shared_lists(tree):
    """Lists, dictionaries and sets in the body of a class, which all its objects share."""
    for node in ast.walk(tree):
        if isinstance(node, ast.ClassDef):
            for each in node.body:
                if isinstance(each, ast.Assign | ast.AnnAssign) and isinstance(
                    each.value, ast.List | ast.Dict | ast.Set | ast.ListComp | ast.DictComp | ast.SetComp
                ):
                    yield f"{node.name}.{ast.unparse(targets(each)[0])} is shared"


def state_in(text):
    tree = ast.parse(text)
    return [*changes_below(tree, names_of_module(tree)), *caches_of_projects(tree), *shared_lists(tree)]


def test_no_module_keeps_what_a_project_loaded():
    found = {
        f"{path.relative_to(PACKAGE).as_posix()}: {fault}"
        for path in PACKAGE.rglob("*.py")
        for fault in state_in(path.read_text(encoding="utf-8"))
    }
    assert found == set(EXCEPTIONS)


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        ("KNOWN = {}\ndef add(name):\n    KNOWN[name] = 1", "KNOWN[name] is assigned"),
        ("KNOWN = []\ndef add(name):\n    if name:\n        KNOWN.append(name)", "KNOWN.append is called"),
        ("from a import KNOWN\ndef add(name):\n    del KNOWN[name]", "KNOWN[name] is assigned"),
        ("import a\na.KNOWN.update(b=1)", "a.KNOWN.update is called"),
        ("N = 0\ndef count():\n    global N\n    N += 1", "N is global"),
        ("@lru_cache(maxsize=8)\ndef read(file: Path) -> str: ...", "read is kept by Path"),
        ("class Sheet:\n    known: list[str] = []", "Sheet.known is shared"),
        ("KNOWN = {}\nadd = lambda name: KNOWN.setdefault(name, 1)", "KNOWN.setdefault is called"),
    ],
)
def test_each_form_of_state_is_seen(text, fault):
    assert state_in(text) == [fault]


def test_what_belongs_to_a_function_or_an_object_is_none_of_it():
    own = "KNOWN = {}\ndef made(KNOWN):\n    KNOWN['a'] = 1\n    found = []\n    found.append(KNOWN)"
    assert state_in(own) == []
    assert state_in("class Sheet:\n    def add(self, mark):\n        self.marks.append(mark)") == []
