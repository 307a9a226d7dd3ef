"""Makes the label fonts and the table of their letters' widths.

Run by hand when a font changes, in the project folder, with fonttools and brotli (made with fonttools 4.66.1):
    python lib/server/labels/fonts/make-fonts.py <folder with DejaVuSansCondensed.ttf and -Bold.ttf, version 2.37>

'label' is the app's own face, Atkinson Hyperlegible Next, at 400 and 700, its two subsets put together again, because a
PDF takes neither variable fonts nor several files for a face. 'more' has the letters that it lacks: Greek, Cyrillic,
Armenian, Georgian, Vietnamese, a few signs.
"""
import json
import os
import sys
import tempfile

from fontTools import subset
from fontTools.merge import Merger
from fontTools.ttLib import TTFont
from fontTools.varLib import instancer

HERE = os.path.dirname(os.path.abspath(__file__))
OWN = 'node_modules/@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-%s-wght-normal.woff2'
WIDTHS = os.path.join(HERE, '../../../domain/labels/letter-widths.json')
MORE = ['0100-024F', '0300-036F', '0370-03FF', '0400-052F', '0531-058A', '10D0-10FF', '1E00-1EFF', '1F00-1FFF',
        '2010-2027', '2030-205E', '20A0-20BF', '2116', '2190-2193', '2212', '2248', '2260-2265', '2640', '2642', '26A0']


def own_face(name, weight):
    parts = []
    for part in ('latin', 'latin-ext'):
        font = instancer.instantiateVariableFont(TTFont(OWN % part), {'wght': weight})
        font.flavor = None
        parts.append(os.path.join(tempfile.gettempdir(), f'{part}-{name}.ttf'))
        font.save(parts[-1])
    font = Merger().merge(parts)
    path = os.path.join(HERE, f'label-{name}.ttf')
    font.save(path)
    return TTFont(path)


def more_letters(name, folder, file, have):
    font = TTFont(os.path.join(folder, file))
    wanted = set()
    for piece in MORE:
        first, _, last = piece.partition('-')
        wanted |= set(range(int(first, 16), int(last or first, 16) + 1))
    options = subset.Options()
    options.layout_features = ['kern', 'mark', 'mkmk', 'ccmp']
    options.hinting = False
    options.name_IDs = [0, 1, 2, 4, 5, 6, 13]
    cutter = subset.Subsetter(options)
    cutter.populate(unicodes=wanted - have)
    cutter.subset(font)
    path = os.path.join(HERE, f'more-{name}.ttf')
    font.save(path)
    return TTFont(path)


def runs_of_widths(font):
    """Thousandths of an em, as runs [first code point, width, width ...]."""
    scale = 1000 / font['head'].unitsPerEm
    widths = {point: round(font['hmtx'][glyph][0] * scale) for point, glyph in font.getBestCmap().items() if point >= 32}
    runs = []
    for point in sorted(widths):
        if runs and point == runs[-1][0] + len(runs[-1]) - 1:
            runs[-1].append(widths[point])
        else:
            runs.append([point, widths[point]])
    return runs


tables = {'label': {}, 'more': {}}
for name, weight, file in (('regular', 400, 'DejaVuSansCondensed.ttf'), ('bold', 700, 'DejaVuSansCondensed-Bold.ttf')):
    own = own_face(name, weight)
    more = more_letters(name, sys.argv[1], file, set(own.getBestCmap()))
    tables['label'][name] = runs_of_widths(own)
    tables['more'][name] = runs_of_widths(more)
with open(WIDTHS, 'w') as out:
    json.dump(tables, out)
