# SPDX-License-Identifier: GPL-3.0-or-later
"""One-line slips in C++ text: where a hand could have gone wrong, and what would then stand there.

A source is read without a compiler: comments, strings, preprocessor lines, includes and assertions are blanked out
first, and what clang-format settles (blanks round operators, none round template brackets) tells the rest apart.
"""
import bisect
import re
from dataclasses import dataclass


@dataclass(frozen=True)
class Slip:
    kind: str   # 'comparison turned', 'bound moved', ...
    begin: int  # the characters of the file that it replaces
    end: int
    text: str   # by this


def masked(source: str) -> str:
    """The source with everything blanked that must not be touched; as long as the source, with the same lines."""
    out = list(source)

    def blank(begin, end):
        for i in range(begin, end):
            if out[i] != '\n':
                out[i] = ' '

    pattern = re.compile(
        r'//[^\n]*|/\*.*?\*/'                      # comments
        r'|R"(?P<mark>[^(\s]*)\(.*?\)(?P=mark)"'   # raw strings
        r'|"(?:\\.|[^"\\\n])*"'                    # strings
        r"|(?<![0-9a-zA-Z_])'(?:\\.|[^'\\\n])+'"   # characters, but not the ' in 10'000
        r'|(?m:^[ \t]*#(?:[^\n]*\\\n)*[^\n]*)',    # preprocessor lines
        re.S)
    for m in pattern.finditer(source):
        if m[0][0] in '"\'R':
            blank(m.start(), m.end())
            out[m.start()] = out[m.end() - 1] = '"'  # there is a value here, but not one to touch
        else:
            blank(m.start(), m.end())
    text = ''.join(out)
    for m in re.finditer(r'\b(?:static_assert|assert)\s*\(|\busing namespace\b|\bnamespace\b[^;{]*\{', text):
        end = closing(text, m.end() - 1) + 1 if m[0].endswith('(') else m.end()
        blank(m.start(), end)
    return ''.join(out)


def closing(text: str, opening: int) -> int:
    """Where the bracket that opens at `opening` closes (the end of the text if nowhere)."""
    pairs, depth = {'(': ')', '[': ']', '{': '}'}, []
    for i in range(opening, len(text)):
        if text[i] in pairs:
            depth.append(pairs[text[i]])
        elif depth and text[i] == depth[-1]:
            depth.pop()
            if not depth:
                return i
    return len(text) - 1


def operandEnd(text: str, begin: int, loose: bool) -> int:
    """Where the operand that starts at `begin` ends; a loose one (of + and -) takes its * and / with it."""
    i, top = begin, len(text)
    while i < top:
        c = text[i]
        if c in '([{':
            i = closing(text, i) + 1
        elif c in ')]},;:?\n':
            break
        elif c == ' ':
            if not (loose and re.match(r' [*/] ', text[i:i + 3])):
                break
            i += 3
        else:
            i += 1
    return i


def splitArguments(text: str, opening: int):
    """(begin, end) of each argument between the brackets at `opening`, leading blanks left out."""
    close = closing(text, opening)
    parts, begin, i = [], opening + 1, opening + 1
    while i < close:
        if text[i] in '([{':
            i = closing(text, i)
        elif text[i] == '<' and text[i - 1] != ' ':  # a template's
            depth, j = 0, i
            while j < close:
                depth += (text[j] == '<') - (text[j] == '>')
                if depth == 0:
                    break
                j += 1
            i = j if j < close else i
        elif text[i] == ',':
            parts.append((begin, i))
            begin = i + 1
        i += 1
    parts.append((begin, close))
    trimmed = []
    for b, e in parts:
        while b < e and text[b].isspace():
            b += 1
        while e > b and text[e - 1].isspace():
            e -= 1
        trimmed.append((b, e))
    return trimmed


SWAPS = {  # word or operator -> (kind, what else could stand there)
    ' < ': [('comparison turned', ' > '), ('bound moved', ' <= ')],
    ' > ': [('comparison turned', ' < '), ('bound moved', ' >= ')],
    ' <= ': [('comparison turned', ' >= '), ('bound moved', ' < ')],
    ' >= ': [('comparison turned', ' <= '), ('bound moved', ' > ')],
    ' == ': [('comparison turned', ' != ')],
    ' != ': [('comparison turned', ' == ')],
    ' + ': [('sign', ' - ')],
    ' - ': [('sign', ' + ')],
    ' += ': [('sign', ' -= ')],
    ' -= ': [('sign', ' += ')],
    ' && ': [('and <-> or', ' || ')],
    ' || ': [('and <-> or', ' && ')],
    '++': [('sign', '--')],
    'true': [('true <-> false', 'false')],
    'false': [('true <-> false', 'true')],
    'std::min(': [('min <-> max', 'std::max(')],
    'std::max(': [('min <-> max', 'std::min(')],
    'std::min<': [('min <-> max', 'std::max<')],
    'std::max<': [('min <-> max', 'std::min<')],
    'min_element(': [('min <-> max', 'max_element(')],
    'max_element(': [('min <-> max', 'min_element(')],
    'any_of(': [('and <-> or', 'all_of(')],
    'all_of(': [('and <-> or', 'any_of(')],
    'none_of(': [('and <-> or', 'any_of(')],
    'lower_bound(': [('bound moved', 'upper_bound(')],
    'upper_bound(': [('bound moved', 'lower_bound(')],
    '.front()': [('bound moved', '.back()')],
    '.back()': [('bound moved', '.front()')],
}
SYMMETRIC = re.compile(r'(?:std::(?:min|max|hypot|swap|pair)|\bminmax|emplace)(?:<[^<>]*>)?$')
PARAMETER = re.compile(r'((?:const )?[A-Za-z_][\w:<>, ]*[ &*]+)\w+(?: = .*)?')
NUMBER = re.compile(r"(?<![\w.])(?:\d[\d']*\.?\d*(?:e[+-]?\d+)?)(?![\w.])")


def constant(number: str):
    """Ten percent off; the next whole number for a small count; None for guards against rounding, which bear it."""
    digits = number.replace("'", '')
    value = float(digits)
    if value == 0:
        return '1'
    if value < 1e-5:
        return None
    if '.' in digits or 'e' in digits:
        return repr(float(f'{1.1 * value:.12g}'))
    return str(round(1.1 * int(digits))) if value >= 10 else str(int(digits) + 1)


def slipsIn(source: str) -> dict:
    """Every slip that could be made, by line (counted from 1) and, in a line, by kind."""
    text = masked(source)
    found = []

    def add(kind, begin, end, new):
        if source[begin:end] != new:
            found.append(Slip(kind, begin, end, new))

    for old, others in SWAPS.items():
        edge = r'\b' if old[0].isalpha() else ''
        for m in re.finditer(edge + re.escape(old) + (r'\b' if old.isalpha() else ''), text):
            for kind, new in others:
                add(kind, m.start(), m.end(), new)
    for m in NUMBER.finditer(text):
        if (new := constant(m[0])) is not None:
            add('constant', m.start(), m.end(), new)
    for m in re.finditer(r'(?<=\S) ([-+*/]) (?=\S)', text):
        loose = m[1] in '+-'
        end = operandEnd(text, m.end(), loose)
        if end > m.end():
            add('term dropped', m.start(), end, '')
        if not loose and not re.search(r'\b(?:const|auto|\w+_t|Drawing|Part|Case|Action)$', text[:m.start()]):
            add('sign', m.start(1), m.end(1), '/' if m[1] == '*' else '*')
    for m in re.finditer(r'(?:(?<=[(\[{=?:,])|(?<=[=?:,] )|(?<=return ))([-!])(?=[\w(*])', text):
        add('sign' if m[1] == '-' else 'branch not taken', m.start(1), m.end(1), '')
    for m in re.finditer(r'\bif \(', text):
        close = closing(text, m.end() - 1)
        condition = text[m.end():close]
        begin = m.end() + (condition.rfind(';') + 1 if ';' in condition else 0)
        declares = ';' not in condition and re.match(r'(?:const )?[\w:<>]+[ &*]+\w+ = ', condition)
        if not declares:
            add('branch not taken', begin, close, 'false' if begin == m.end() else ' false')
            add('branch not taken', begin, close, 'true' if begin == m.end() else ' true')
    for m in re.finditer(r' \? ', text):
        end = operandEnd(text, m.end(), True)
        while text[end:end + 1] == ' ' and text[end:end + 3] != ' : ':
            end = operandEnd(text, end + 1, True)
        if text[end:end + 3] == ' : ':
            last = operandEnd(text, end + 3, True)
            add('branch not taken', m.end(), last, f'{source[end + 3:last]} : {source[m.end():end]}')
    for m in re.finditer(r'[\w>)\]]?([({])(?=[^(){}]*[^\s])', text):
        opening = m.start(1)
        arguments = splitArguments(text, opening)
        if len(arguments) < 2 or ';' in text[opening:closing(text, opening)] and text[opening] == '{':
            continue
        if SYMMETRIC.search(text[max(0, opening - 40):opening]):
            continue
        for (a, b), (c, d) in zip(arguments, arguments[1:]):
            first, second = source[a:b], source[c:d]
            whole = first + second
            types = [PARAMETER.fullmatch(argument) for argument in (first, second)]
            if any(types) and not (all(types) and types[0][1] == types[1][1]):
                continue
            if not first or not second or '"' in text[a:b] + text[c:d] or '\n' in whole or '[' == first[0] \
                    or '[' == second[0] or re.search(r'begin\(|end\(', whole) or first == second:
                continue
            add('argument exchanged', a, d, second + source[b:c] + first)
    # A statement: from behind a ; { } or : to its ; on the same level.
    for m in re.finditer(r'(?<=[;{}:\n)])\s*\n[ \t]*(?=[A-Za-z_*+(])', text):
        begin = m.end()
        before = text[:begin].rstrip()
        if not before or before[-1] not in ';{}:':
            continue
        i = begin
        while i < len(text) and text[i] not in ';}':
            i = closing(text, i) + 1 if text[i] in '([{' else i + 1
        statement = text[begin:i + 1]
        if not statement.endswith(';') or '.reserve(' in statement or re.match(
                r'(?:return\s+\S|if\b|for\b|while\b|switch\b|case\b|default\b|else\b|using\b|struct\b|class\b|enum\b|'
                r'template\b|break\b|public\b|private\b|friend\b|extern\b|do\b)', statement):
            continue
        if not re.match(r'(?:return;|continue;|[\w:.\[\]>()*+-]+(?:\(| [-+*/|&]?= |\+\+|--|;))', statement.lstrip()):
            continue
        add('statement dropped', begin, i + 1, ';')

    starts = [0]
    for i, c in enumerate(source):
        if c == '\n':
            starts.append(i + 1)
    byLine = {}
    for slip in found:
        byLine.setdefault(bisect.bisect_right(starts, slip.begin), {}).setdefault(slip.kind, []).append(slip)
    return byLine


def draw(sources: dict, generator):
    """Endless (file, line, slip), each once: lines evenly, then kinds in a line, then places of that kind."""
    lines = []
    for path in sorted(sources):
        lines += [(path, line, kinds) for line, kinds in sorted(slipsIn(sources[path]).items())]
    seen = set()
    while lines:
        at = generator.randrange(len(lines))
        path, line, kinds = lines[at]
        open_ = {k: [s for s in v if (path, s) not in seen] for k, v in sorted(kinds.items())}
        open_ = {k: v for k, v in open_.items() if v}
        if not open_:
            lines.pop(at)
            continue
        slip = generator.choice(open_[generator.choice(list(open_))])
        seen.add((path, slip))
        yield path, line, slip
