"""Holds the stubs of mobile/stubs against the signatures of Android's API 36, as PyPI's chaquopy-stubs-android tells them.

    stubs.py CLASSES        every public class, method and field there has to be in Android: name, arity, types of parameters
    stubs.py --self-test    a misspelt stub, one with a parameter too many and one of another type are each told

CLASSES is the folder of the compiled stubs. The signatures are Python's: of numbers they keep that it is a whole one or not,
so int and long cannot be told apart by a result; of a parameter they can. What is not held against anything is named below.
"""

import ast
import pathlib
import re
import subprocess
import sys

# Not of Android's API 36 signatures, each with where it is from and why it stands unchecked.
GAPS = {
    "androidx.": "AndroidX is no part of Android; its signatures are in no registry that is reached here",
    "app.tauri.": "two classes of Tauri that are not compiled here: BuildConfig is made by Gradle, FsUtils reads files for others",
    "com.fasterxml.": "one module of Jackson that Debian has no package of",
    "org.secundine.": "Gradle makes R out of the resources",
}
# Members that Android has and those signatures leave out.
LEFT_OUT: dict[str, str] = {}

PRIMITIVE = {
    "boolean": "java.jboolean", "byte": "java.jbyte", "char": "java.jchar", "short": "java.jshort", "int": "java.jint",
    "long": "java.jlong", "float": "java.jfloat", "double": "java.jdouble",
}


def compiled(folder):
    """The compiled stubs as {class: [(kind, name, [parameter types], is static)]}, as javap tells them."""
    files = sorted(str(path) for path in pathlib.Path(folder).rglob("*.class"))
    told = subprocess.run(["javap", "-protected", *files], check=True, capture_output=True, text=True).stdout
    return read(told)


def read(told):
    """What javap tells, as `compiled` gives it."""
    found, name = {}, None
    for line in told.splitlines():
        line = line.strip()
        head = re.match(r"(?:[\w ]*?)\b(?:class|interface) ([\w.$]+)", line)
        if head and line.endswith("{"):
            name = head.group(1)
            found[name] = []
        elif line.endswith(";") and name:
            found[name].append(member(name, line))
    return found


def member(owner, line):
    line = re.sub(r" throws .*;", ";", line)
    called = re.match(r"(.*?)([\w.$]+)\((.*)\);", line)
    if not called:
        return "field", line.rstrip(";").split()[-1], [], " static " in f" {line} "
    before, name, parameters = called.groups()
    types = [part.strip() for part in split(parameters)]
    if name == owner:
        # The outer object of an inner class is handed on by the compiler, not by who writes.
        return "new", name, types, False
    return "method", name, types, " static " in f" {before} "


def split(parameters):
    """Splits at commas that are not within <>."""
    parts, depth, part = [], 0, ""
    for letter in parameters:
        depth += (letter == "<") - (letter == ">")
        if letter == "," and depth == 0:
            parts.append(part)
            part = ""
        else:
            part += letter
    return [*parts, part] if part.strip() else parts


class Android:
    """The signatures, read a package at a time."""

    def __init__(self, root):
        self.root, self.packages = pathlib.Path(root), {}

    def package(self, name):
        if name not in self.packages:
            first, *rest = name.split(".")
            path = self.root.joinpath(f"{first}-stubs", *rest, "__init__.pyi")
            self.packages[name] = ast.parse(path.read_text()) if path.exists() else None
        return self.packages[name]

    def find(self, name):
        """The class of a name such as `android.app.Notification$Builder`, with its package; none where there is none."""
        parts = name.replace("$", ".").split(".")
        for cut in range(len(parts) - 1, 0, -1):
            module = self.package(".".join(parts[:cut]))
            node = module
            for part in parts[cut:]:
                node = next((one for one in getattr(node, "body", []) if isinstance(one, ast.ClassDef) and one.name == part), None)
            if node is not None:
                return node, ".".join(parts[:cut])
        return None, None

    def family(self, name, seen=None):
        """A class and all that it inherits from, as far as the signatures go."""
        seen = set() if seen is None else seen
        node, package = self.find(name)
        if node is None or name in seen:
            return
        seen.add(name)
        yield node, package
        for base in node.bases:
            text = ast.unparse(base).split("[")[0]
            for full in (text, f"{package}.{text}"):
                yield from self.family(full, seen)

    def members(self, name):
        """Methods as {name: [[parameter types]]}, and the names of fields; a constructor is `__init__` of the class alone."""
        methods, fields = {}, set()
        for own, (node, package) in enumerate(self.family(name)):
            for one in node.body:
                if isinstance(one, ast.FunctionDef) and (own == 0 or one.name != "__init__"):
                    skip = 0 if is_static(one) else 1
                    given = [*one.args.posonlyargs, *one.args.args][skip:]
                    types = [(ast.unparse(arg.annotation) if arg.annotation else "", package) for arg in given]
                    if one.args.vararg:
                        types.append((f"chaquopy.varargs[{ast.unparse(one.args.vararg.annotation)}]", package))
                    methods.setdefault(one.name, []).append((types, is_static(one)))
                elif isinstance(one, ast.AnnAssign) and isinstance(one.target, ast.Name):
                    fields.add(one.target.id)
        return methods, fields


def is_static(function):
    return any(ast.unparse(by) in ("staticmethod", "classmethod") for by in function.decorator_list)


def fits(java, python):
    """Whether a parameter of a stub, as javap writes it, is the one of the signature."""
    (told, package), bare = python, re.sub(r"<.*>", "", java).replace("...", "[]").strip()
    if len(bare) == 1 or "TypeVar" in told:
        return True
    alternatives = [part.strip() for part in told.split(" | ")]
    if bare in PRIMITIVE:
        return PRIMITIVE[bare] in alternatives
    if bare.endswith("[]"):
        inner = bare[:-2].split(".")[-1].split("$")[-1]
        if inner in PRIMITIVE:
            return f"java.chaquopy.JavaArrayJ{inner.capitalize()}" in alternatives
        return any(("rray" in part or "varargs" in part) and inner in part for part in alternatives)
    full = bare.replace("$", ".")
    if full == "java.lang.Class":
        return any(part.startswith("typing.Type[") for part in alternatives)
    if full == "java.lang.Object":
        return any(part.split(".")[-1] in ("Object", "Any", "object") for part in alternatives)
    names = {full, full.removeprefix("java.lang."), full.removeprefix(f"{package}.")}
    return any(re.sub(r"\[.*\]", "", part) in names for part in alternatives)


def check(classes, android):
    """What is wrong, in words; and how many classes and members were held against the signatures."""
    wrong, held = [], [0, 0]
    for name, members in sorted(classes.items()):
        if any(name.startswith(gap) for gap in GAPS):
            continue
        held[0] += 1
        if android.find(name)[0] is None:
            wrong.append(f"{name}: Android has no such class")
            continue
        methods, fields = android.members(name)
        for kind, member_name, types, static in members:
            if f"{name}.{member_name}" in LEFT_OUT:
                continue
            held[1] += 1
            if kind == "field":
                if member_name not in fields:
                    wrong.append(f"{name}.{member_name}: Android has no such field")
                continue
            if kind == "new" and not types:
                # A class without a constructor of its own in the signatures has the empty one.
                continue
            known = methods.get("__init__" if kind == "new" else member_name, [])
            if not known:
                wrong.append(f"{name}.{member_name}: Android has no such method")
            elif not any(len(told) == len(types) and (kind == "new" or told_static == static) and all(map(fits, types, told)) for told, told_static in known):
                wrong.append(f"{name}.{member_name}({', '.join(types)}): Android has it otherwise: " + " or ".join(show(told) for told, _ in known))
    return wrong, held


def show(types):
    return "(" + ", ".join(told for told, _ in types) + ")"


GOOD = """public class android.app.AlarmManager {
  public native void setExactAndAllowWhileIdle(int, long, android.app.PendingIntent);
  public static final int ELAPSED_REALTIME_WAKEUP;
}"""
BAD = {
    "setExactAndAllowWhileIdle": "setExactAndAllowWhileidle",
    "int, long": "int, long, long",
    "(int, long, ": "(int, java.lang.String, ",
    "int, long, android": "int, int, android",
    "app.PendingIntent": "app.Activity",
    "AlarmManager": "AlarmMangler",
    "ELAPSED_REALTIME_WAKEUP": "ELAPSED_REALTIME_WAKE",
    "public native void": "public static native void",
}


def self_test(android):
    assert check(read(GOOD), android)[0] == [], check(read(GOOD), android)
    for right, lie in BAD.items():
        assert right in GOOD, right
        assert len(check(read(GOOD.replace(right, lie)), android)[0]) == 1, f"not told: {lie}"
    print(f"stubs: {len(BAD)} lies are told")


def main():
    import site

    android = Android(next(path for path in site.getsitepackages() if pathlib.Path(path, "android-stubs").exists()))
    self_test(android)
    if sys.argv[1] == "--self-test":
        return
    wrong, held = check(compiled(sys.argv[1]), android)
    for one in wrong:
        print(f"stubs: {one}")
    print(f"stubs: {held[0]} classes and {held[1]} members held against API 36; not held: {', '.join(GAPS)}")
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
