#!/usr/bin/env python3
"""The texts that people read, and their translations.

    python3 scripts/texts.py           lists what a language lacks or gets wrong; exit status 1 then
    python3 scripts/texts.py update [ROOM ...]
                                       adds the missing texts, untranslated, to the .po files of
                                       these rooms (all, when none is named)

A text is the literal in say("..."), spoken("..."), term("...") or a count's two literals; xgettext
(package gettext) finds them. Each room of core and app has its own file in
resources/translations/LANGUAGE; a text that several rooms use stands with the first.
"""
import pathlib
import re
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parent.parent
TRANSLATIONS = ROOT / "resources" / "translations"
KEYWORDS = ["say:1", "spoken:1", "term:1", "count_of:2,3", "spoken_count:2,3", "in_parts:3,4",
            "count_words:3,4"]
HEADER = ('msgid ""\nmsgstr ""\n"X-Language: {code}\\n"\n'
          '"Content-Type: text/plain; charset=UTF-8\\n"\n'
          '"Plural-Forms: nplurals=2; plural=(n != 1);\\n"\n')


class Text:
    """One text: its English, its plural where it is counted, its translations."""

    def __init__(self, english, plural, forms):
        self.english, self.plural, self.forms = english, plural, forms

    def faults(self):
        """What is wrong with the translation, in words."""
        if not self.forms or not all(self.forms):
            return ["no translation"]
        wanted = places(self.english) | (places(self.plural) if self.plural else set())
        return ["other places {n} than the English" for form in self.forms
                if places(form) - {"1"} != wanted - {"1"} or
                (not self.plural and places(form) != wanted)][:1]


def places(text):
    return set(re.findall(r"\{(\d)\}", text))


def unquoted(lines):
    joined = "".join(re.findall(r'"((?:[^"\\]|\\.)*)"', line)[0] for line in lines)
    return re.sub(r"\\(.)", lambda m: {"n": "\n", "t": "\t"}.get(m[1], m[1]), joined)


def quoted(text):
    escaped = text.replace("\\", "\\\\").replace('"', '\\"').replace("\t", "\\t")
    parts = escaped.split("\n")
    lines = [part + "\\n" for part in parts[:-1]] + ([parts[-1]] if parts[-1] else [])
    return '"' + (lines[0] if lines else "") + '"' if len(lines) < 2 else \
        '""\n' + "\n".join(f'"{line}"' for line in lines)


def read_po(content):
    """The texts of a .po file, without its header."""
    texts, fields, current = [], {}, None

    def end():
        if fields.get("msgid"):
            english = unquoted(fields["msgid"])
            forms = [unquoted(fields[name]) for name in sorted(fields) if name.startswith("msgstr")]
            plural = unquoted(fields["msgid_plural"]) if "msgid_plural" in fields else None
            if english:
                texts.append(Text(english, plural, forms))

    for line in content.splitlines() + [""]:
        start = re.match(r"(msgid|msgid_plural|msgstr|msgstr\[\d\]) (\".*\")$", line)
        if start and start[1] == "msgid":
            end()
            fields = {}
        if start:
            current = start[1]
            fields[current] = [start[2]]
        elif line.startswith('"') and current:
            fields[current].append(line)
        else:
            current = None
    end()
    return texts


def room_of(path):
    parts = path.relative_to(ROOT).parts
    if parts[0] == "core":
        return parts[1]
    return parts[2] if parts[1] == "desktop" and len(parts) > 3 else parts[1]


def said():
    """Every text of the program by its room, each once, in the order of the files."""
    rooms, seen = {}, {}
    files = [p for top in ("core", "app") for p in sorted((ROOT / top).rglob("*"))
             if p.suffix in (".cpp", ".h")]
    for room in dict.fromkeys(map(room_of, files)):
        names = [str(p) for p in files if room_of(p) == room]
        options = [f"--keyword={word}" for word in KEYWORDS]
        answer = subprocess.run(
            ["xgettext", "--language=C++", "--from-code=UTF-8", "--keyword", *options, "--sort-by-file",
             "--no-location", "--output=-", *names],
            check=True, capture_output=True, text=True)
        for text in read_po(answer.stdout):
            # A noun that is counted anywhere has both forms; elsewhere its singular is taken.
            known = seen.setdefault(text.english, text)
            known.plural = known.plural or text.plural
            if known is text:
                rooms.setdefault(room, []).append(text)
    return rooms


def entry(text):
    out = f"\nmsgid {quoted(text.english)}\n"
    if text.plural is None:
        return out + 'msgstr ""\n'
    return out + f'msgid_plural {quoted(text.plural)}\nmsgstr[0] ""\nmsgstr[1] ""\n'


def main(arguments):
    update, wanted_rooms = arguments[:1] == ["update"], arguments[1:]
    if arguments and not update:
        sys.exit(__doc__)
    rooms, status = said(), 0
    for folder in sorted(p for p in TRANSLATIONS.iterdir() if p.is_dir()):
        known = {}
        for file in sorted(folder.glob("*.po")):
            for text in read_po(file.read_text(encoding="utf-8")):
                if text.english in known:
                    print(f"{folder.name}/{file.name}: twice: {text.english}")
                    status = 1
                known[text.english] = text
        for room, texts in rooms.items():
            missing = [text for text in texts if text.english not in known]
            if update and missing and (not wanted_rooms or room in wanted_rooms):
                file = folder / f"{room}.po"
                head = file.read_text(encoding="utf-8") if file.exists() else HEADER.format(
                    code=folder.name)
                file.write_text(head + "".join(map(entry, missing)), encoding="utf-8")
                print(f"{folder.name}/{room}.po: {len(missing)} added")
            for text in texts:
                for fault in (known[text.english].faults() if text.english in known
                              else ["no translation"]):
                    print(f"{folder.name}/{room}.po: {fault}: {text.english}")
                    status = 1
                if text.english in known and (known[text.english].plural is None) != (
                        text.plural is None):
                    print(f"{folder.name}/{room}.po: counted in one place only: {text.english}")
                    status = 1
        everything = {text.english for texts in rooms.values() for text in texts}
        for english in known:
            if english not in everything:
                print(f"{folder.name}: said nowhere: {english}")
                status = 1
    return status


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
