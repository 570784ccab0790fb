/**
 * Tamperings by someone who had read drawings, and nothing of what checks them. Each would mislead who solders by the drawing, or
 * leaves something that is needed unreadable.
 */

type T = { name: string; why: string; change: (svg: string) => string };
type M = { text: string; at: number; end: number };
const all = (s: string, re: RegExp): M[] =>
  [...s.matchAll(re)].map((m) => ({ text: m[0], at: m.index!, end: m.index! + m[0].length }));
const cut = (s: string, m: M, by: string) => s.slice(0, m.at) + by + s.slice(m.end);
const edit = (s: string, m: M | undefined, f: (t: string) => string) => (m ? cut(s, m, f(m.text)) : s);
const swap = (
  s: string,
  a: M | undefined,
  b: M | undefined,
  fa: (t: string) => string,
  fb: (t: string) => string,
) => (a && b ? cut(cut(s, b, fb(a.text)), a, fa(b.text)) : s);
const idOf = (s: string) => /aria-labelledby="(.*?)-title/.exec(s)![1]!;
const joints = (s: string) => all(s, /<g id="[^"]*-joint-\d+"[^>]*>.*?<\/g>/g);
const plain = (s: string) =>
  joints(s).filter(
    (j) =>
      (/stroke-width="5.6"/.test(j.text) || all(j.text, /<path/g).length === 1) &&
      all(j.text, /<circle/g).length === 2,
  ); // signal wires
const part = (s: string, p: string): M | undefined =>
  all(s, new RegExp(`<g id="[^"]*-part-${p}"[^>]*>.*?</g>`, 'g'))[0];
const texts = (s: string) => all(s, /<text [^>]*>[^<]*<\/text>/g);
const txt = (s: string, c: RegExp) => texts(s).filter((t) => c.test(t.text.replace(/<[^>]*>/g, '')));
const chips = (s: string) => all(s, /<rect [^>]*class="sl-chip"[^>]*><\/rect><text [^>]*>[^<]*<\/text>/g);
const attr = (t: string, a: string) => Number(new RegExp(` ${a}="([^"]*)"`).exec(t)?.[1]);
const setAttr = (t: string, a: string, v: string | number) =>
  t.replace(new RegExp(` ${a}="[^"]*"`), ` ${a}="${v}"`);
const addAttr = (t: string, x: string) => t.replace(/^<([\w:]+)/, `<$1 ${x}`);
const inner = (t: string, f: (c: string) => string) => t.replace(/>([^<]*)</, (_, c: string) => `>${f(c)}<`);
const content = (t: string) => />([^<]*)</.exec(t)![1]!;
const atEnd = (s: string, x: string) => s.replace(/<\/svg>\s*$/, `${x}</svg>`);
const atTop = (s: string, x: string) => s.replace(/(<svg [^>]*>)/, `$1${x}`); // right after the root's start
const onRoot = (s: string, x: string) => s.replace(/^<svg /, `<svg ${x} `);
const inDrawing = (s: string, x: string) => s.replace(/<g id="[^"]*-colours">/, (g) => x + g);
const volume = (s: string) => part(s, 'volume')!;
const selector = (s: string) => part(s, 'selector')!;
const inPart = (s: string, p: string, f: (g: string) => string) => edit(s, part(s, p), f);
const swapTextIn = (g: string, a: RegExp, b: RegExp) => {
  const [x] = txt(g, a),
    [y] = txt(g, b);
  if (!x || !y) return g;
  const [p, q] = x.at < y.at ? [x, y] : [y, x];
  const P = content(p.text),
    Q = content(q.text);
  return cut(
    cut(
      g,
      q,
      inner(q.text, () => P),
    ),
    p,
    inner(p.text, () => Q),
  );
};
/** Exchange two texts with all their attributes but the place. */
const swapTextPlaces = (g: string, a: RegExp, b: RegExp) => {
  const [x] = txt(g, a),
    [y] = txt(g, b);
  if (!x || !y) return g;
  const [p, q] = x.at < y.at ? [x, y] : [y, x];
  const place = (t: string, o: string) => setAttr(setAttr(t, 'x', attr(o, 'x')), 'y', attr(o, 'y'));
  return cut(cut(g, q, place(q.text, p.text)), p, place(p.text, q.text));
};
const lastWire = (s: string) => plain(s).at(-1);
/** Moves the last end of a simple wire: its last path point and last circle. */
const moveEnd = (g: string, dx: number, dy: number) => {
  const cs = all(g, /<circle[^>]*>/g),
    c = cs.at(-1)!,
    x = attr(c.text, 'cx'),
    y = attr(c.text, 'cy');
  g = cut(g, c, setAttr(setAttr(c.text, 'cx', x + dx), 'cy', y + dy));
  return g.replace(/(<path d="[^"]*)"/g, (_, d) => `${d}L${x + dx} ${y + dy}"`);
};
const firstOpening = (g: string) => g.replace(/(?<=[\d])M([\d.]+) ([\d.]+)L/g, 'L$1 $2L');
const hot = (s: string) => plain(s)[0];
const stroke = (t: string) => /stroke="(#[0-9a-f]{6})" stroke-width="4"/.exec(t)![1]!;
const desc = (s: string, f: (d: string) => string) =>
  s.replace(/(<desc[^>]*>)([^<]*)/, (_, a, d) => a + f(d));
const digit = (c: string) => c.replace(/\d(?=[^\d]*$)/, (d) => String((Number(d) + 3) % 10));
const cx = (s: string) => attr(/<circle[^>]*sl-case[^>]*>/.exec(volume(s).text)![0], 'cx');
const cy = (s: string) => attr(/<circle[^>]*sl-case[^>]*>/.exec(volume(s).text)![0], 'cy');
const lug = (s: string, p: string, name: string) => {
  const t = txt(part(s, p)!.text, new RegExp(`^${name}$`))[0]!.text;
  return { x: attr(t, 'x'), y: attr(t, 'y') - 4.3 };
};
const lugA = (s: string) => lug(s, 'selector', 'A1');
const firstChip = (s: string, c: RegExp) => chips(s).find((m) => c.test(content(/<text.*/.exec(m.text)![0])));
const path = (x1: number, y1: number, x2: number, y2: number, more = 'stroke="#1d2b36" stroke-width="4"') =>
  `<path d="M${x1} ${y1}L${x2} ${y2}" fill="none" ${more}></path>`;

const T: T[] = [];
const add = (name: string, why: string, change: (s: string) => string) => T.push({ name, why, change });

// Wires
add('end-to-next-lug', 'last signal wire ends 48 px lower, at another lug', (s) =>
  edit(s, lastWire(s), (g) => moveEnd(g, 0, 48)),
);
add('end-short-of-lug', 'end pulled 14 px off its lug: not soldered', (s) =>
  edit(s, lastWire(s), (g) => moveEnd(g, 0, 14)),
);
add('end-dx-48', 'end at the neighbouring pot lug', (s) => edit(s, plain(s)[0], (g) => moveEnd(g, 48, 0)));
add('joint-group-translated', 'one wire drawn 48 px away by a transform', (s) =>
  edit(s, lastWire(s), (g) => addAttr(g, 'transform="translate(0 48)"')),
);
add('all-wires-translated', 'all wires shifted by a lug pitch', (s) =>
  s.replace(/(<g id="[^"]*-wires")/, '$1 transform="translate(0 48)"'),
);
add('wire-removed', 'a joint is missing', (s) => edit(s, lastWire(s), () => ''));
add('wire-and-its-desc-removed', 'joint gone from picture and description', (s) =>
  desc(
    edit(s, lastWire(s), () => ''),
    (d) => d.replace(/; [^;]*\.$/, '.'),
  ),
);
add('end-dots-removed', 'solder points of a wire gone', (s) =>
  edit(s, lastWire(s), (g) => g.replace(/<circle[^>]*><\/circle>/g, '')),
);
add('extra-wire', 'extra wire hot to ground case', (s) =>
  inDrawing(s, path(lugA(s).x, lugA(s).y, cx(s), cy(s))),
);
add('extra-joint-group', 'extra joint with id of its own', (s) =>
  edit(
    s,
    lastWire(s),
    (g) =>
      g +
      g.replace(/joint-\d+/, 'joint-99').replace(/<path d="M([\d.]+) ([\d.]+)/, '<path d="M$1 $2L400 300'),
  ),
);
add('crossing-dot', 'a dot in a crossing wire says joined', (s) =>
  edit(
    s,
    joints(s).find((j) => /\dM/.test(j.text)),
    (g) => {
      const m = /L([\d.]+) ([\d.]+)M([\d.]+) ([\d.]+)/.exec(g)!;
      return g.replace(
        '</g>',
        `<circle cx="${(+m[1]! + +m[3]!) / 2}" cy="${(+m[2]! + +m[4]!) / 2}" r="5" fill="#1d2b36"></circle></g>`,
      );
    },
  ),
);
add('openings-bridged', 'crossing wires appear to meet', (s) =>
  edit(
    s,
    joints(s).find((j) => /\dM/.test(j.text)),
    firstOpening,
  ),
);
add('openings-bridged-cap', 'square caps of 12 close the openings', (s) =>
  edit(
    s,
    joints(s).find((j) => /\dM/.test(j.text)),
    (g) => g.replace(/<path /g, '<path stroke-linecap="square" stroke-dashoffset="0" '),
  ),
);
add('all-openings-bridged', 'no crossing is shown as one', (s) =>
  s
    .replace(/(<path d="M[^"]*")/g, (p) => p)
    .replace(/(-joint-\d+"[^>]*>)(.*?)(<\/g>)/g, (_, a, b, c) => a + firstOpening(b) + c),
);
add('false-opening', 'wire cut by paper-coloured rect', (s) =>
  edit(s, hot(s), (g) => {
    const c = /<circle[^>]*>/.exec(g)![0];
    return g.replace(
      '</g>',
      `<rect x="${attr(c, 'cx') - 14}" y="${attr(c, 'cy') - 14}" width="28" height="28" fill="#ffffff"></rect></g>`,
    );
  }),
);
add('dashed-wire', 'signal wire dashed away', (s) =>
  edit(s, hot(s), (g) => g.replace('<path ', '<path stroke-dasharray="0 1000" ')),
);
add('pathlength-dash', 'group dash array: the wire vanishes', (s) =>
  edit(s, hot(s), (g) => addAttr(g, 'stroke-dasharray="0 9999"')),
);
add('hairline', 'wire cannot be seen', (s) =>
  edit(s, hot(s), (g) => g.replace(/stroke-width="4"/, 'stroke-width="0.05"')),
);
add('thick-wire', 'wire covers neighbour lugs', (s) =>
  edit(s, hot(s), (g) => g.replace(/stroke-width="4"/, 'stroke-width="60"')),
);
add('wire-colours-exchanged', "two pickups' line colours exchanged", (s) => {
  const [a, b] = [plain(s)[0], plain(s).find((j) => stroke(j.text) !== stroke(plain(s)[0]!.text))];
  if (!a || !b) return s;
  return cut(
    cut(s, b, b.text.replaceAll(stroke(b.text), stroke(a.text))),
    a,
    a.text.replaceAll(stroke(a.text), stroke(b.text)),
  );
});
add('all-colours-alike', 'every signal wire in one colour', (s) => {
  const c = stroke(plain(s)[0]!.text);
  return s
    .replace(/(<path d="[^"]*" stroke=")#[0-9a-f]{6}(" stroke-width="4")/g, `$1${c}$2`)
    .replace(/(<path d="[^"]*" stroke=")#[0-9a-f]{6}(" stroke-width="6")/g, `$1${c}$2`);
});
add('ground-as-signal', 'double line made a single: ground seems signal', (s) =>
  edit(s, joints(s)[0], (g) => {
    const p = all(g, /<path[^>]*><\/path>/g);
    return cut(g, p[1]!, '');
  }),
);
add('sleeve-gone', 'a bare leg where the sleeve is needed', (s) =>
  edit(
    s,
    joints(s).find((j) => /stroke-width="9"/.test(j.text)),
    (g) => {
      const p = all(g, /<path[^>]*><\/path>/g);
      return cut(cut(g, p[1]!, ''), p[0]!, '');
    },
  ),
);
add('link-gone', 'switch link missing', (s) =>
  edit(
    s,
    joints(s).find(
      (j) => /stroke-width="6".*stroke-width="4"/.test(j.text) && all(j.text, /<path/g).length === 2,
    ),
    () => '',
  ),
);
add('bend-gone', 'the lug is not bent to the case', (s) =>
  edit(
    s,
    joints(s).find((j) => /stroke-width="8"/.test(j.text)),
    () => '',
  ),
);
add('path-error', 'error in d stops the wire early in a browser', (s) =>
  edit(s, hot(s), (g) => g.replace(/ d="(M[\d.]+ [\d.]+)L/, ' d="$1 X L')),
);
add('path-relative-L', 'one L made l: runs elsewhere', (s) =>
  edit(s, lastWire(s), (g) => g.replace(/L([^L"]*)"/, 'l$1"')),
);
add('path-two-d', 'second d attribute: not well formed; nothing shows', (s) =>
  edit(s, lastWire(s), (g) => g.replace('<path ', '<path d="M0 0" ')),
);
add('path-closed-Z', 'wire closed: a short from end to end', (s) =>
  edit(s, lastWire(s), (g) => g.replace(/ d="([^"]*)"/, ' d="$1Z"')),
);
add('wire-filled', 'wire path filled: covers what it encloses', (s) =>
  edit(
    s,
    plain(s).find((j) => /Q/.test(j.text)),
    (g) => g.replace(/<path /, '<path fill="#1d2b36" '),
  ),
);
add('two-wires-swapped-ends', 'ends of two pickup wires exchanged', (s) => {
  const w = plain(s);
  const a = w.at(-1)!,
    b = w.at(-2)!;
  const end = (g: string) => all(g, /<circle[^>]*>/g).at(-1)!.text;
  const put = (g: string, o: string) =>
    moveEnd(g, attr(end(o), 'cx') - attr(end(g), 'cx'), attr(end(o), 'cy') - attr(end(g), 'cy'));
  return a.at > b.at ? cut(cut(s, a, put(a.text, b.text)), b, put(b.text, a.text)) : s;
});
add('marker', 'an arrow head marker hides the end', (s) =>
  atTop(
    edit(s, lastWire(s), (g) => g.replace('<path ', '<path marker-end="url(#m)" ')),
    '<defs><marker id="m" markerWidth="9" markerHeight="9" refX="4" refY="4" viewBox="0 0 9 9" overflow="visible"><rect x="-20" y="-20" width="50" height="50" fill="#fff"></rect></marker></defs>',
  ),
);
// Parts
add('lug-letters-A-B', 'A1 and B1 exchanged', (s) =>
  inPart(s, 'selector', (g) => swapTextIn(g, /^A1$/, /^B1$/)),
);
add('lug-places-A1-A2', 'A1 and A2 exchange places', (s) =>
  inPart(s, 'selector', (g) => swapTextPlaces(g, /^A1$/, /^A2$/)),
);
add('lug-order-with-attrs', 'A1 and A2 exchanged with textLength', (s) =>
  inPart(s, 'selector', (g) => {
    const [a] = txt(g, /^A1$/),
      [b] = txt(g, /^A2$/);
    return g
      .replace(a!.text, '@@')
      .replace(b!.text, setAttr(a!.text, 'y', attr(b!.text, 'y')))
      .replace('@@', setAttr(b!.text, 'y', attr(a!.text, 'y')));
  }),
);
add('pot-1-3', 'pot lugs 1 and 3 exchanged: works backwards', (s) =>
  inPart(s, 'volume', (g) => swapTextPlaces(g, /^1$/, /^3$/)),
);
add('tip-sleeve', 'jack shorted', (s) => inPart(s, 'output', (g) => swapTextPlaces(g, /^tip$/, /^sleeve$/)));
add('hot-ground', 'pickup out of phase', (s) =>
  inPart(s, 'neck', (g) => swapTextPlaces(g, /^hot$/, /^ground$/)),
);
add('labels-neck-bridge', 'pickup labels exchanged', (s) => swapTextPlaces(s, /^Neck$/, /^Bridge$/));
add('labels-volume-tone', 'pots exchanged', (s) => swapTextPlaces(s, /^Volume$/, /^Tone( 1)?$/));
add('parts-exchange-by-transform', 'neck group shown at the bridge and back', (s) => {
  const a = part(s, 'neck')!,
    b = part(s, 'bridge')!;
  const y = (m: M) => attr(/<rect[^>]*>/.exec(m.text)![0], 'y');
  const d = y(b) - y(a);
  return cut(
    cut(s, b, addAttr(b.text, `transform="translate(0 ${-d})"`)),
    a,
    addAttr(a.text, `transform="translate(0 ${d})"`),
  );
});
add('part-over-part', 'jack over the volume pot', (s) =>
  inPart(s, 'output', (g) =>
    addAttr(
      g,
      `transform="translate(${cx(s) - attr(/<rect[^>]*>/.exec(g)![0], 'x') - 40} ${cy(s) - attr(/<rect[^>]*>/.exec(g)![0], 'y') - 40})"`,
    ),
  ),
);
add('part-removed', 'tone cap missing', (s) => inPart(s, 'tone-cap', () => ''));
add('pot-mirrored', 'volume pot seen from the other side', (s) =>
  inPart(s, 'volume', (g) => addAttr(g, `transform="translate(${2 * cx(s)} 0) scale(-1 1)"`)),
);
add('pot-rotated', 'pot turned: lugs on top', (s) =>
  inPart(s, 'volume', (g) => addAttr(g, `transform="rotate(180 ${cx(s)} ${cy(s)})"`)),
);
add('value-pot', '250k for 500k', (s) =>
  inPart(s, 'volume', (g) =>
    g
      .replace(/>250 k/, '>500 k')
      .replace(/>500 k(?=.*@)/, '')
      .replace(/>500 kΩ log/, /250 k/.test(g) ? '>500 kΩ log' : '>250 kΩ log'),
  ),
);
add('value-taper', 'log for lin', (s) => inPart(s, 'volume', (g) => g.replace(/ log</, ' lin<')));
add('value-cap-code', 'cap code of ten times the value', (s) =>
  inPart(s, 'tone-cap', (g) => g.replace(/>(\d\d)3</, '>$14<')),
);
add('value-cap-nF', 'cap unit µF for nF', (s) => inPart(s, 'tone-cap', (g) => g.replace(/ nF</, ' µF<')));
add('pickup-resistance', 'false resistance', (s) =>
  inPart(s, 'neck', (g) => edit(g, txt(g, /kΩ/)[0], (t) => inner(t, digit))),
);
add('pickup-kind', 'humbucker for single coil', (s) =>
  inPart(s, 'bridge', (g) =>
    /single coil/.test(g) ? g.replace('single coil', 'humbucker') : g.replace('humbucker', 'single coil'),
  ),
);
add('bands-exchanged', 'two colour bands exchanged: other resistor', (s) => {
  const p = all(s, /<g id="[^"]*-part-pad[^"]*".*?<\/g>/g)[0];
  return edit(s, p, (g) => {
    const b = all(g, /<rect [^>]*height="18"[^>]*>/g);
    if (b.length < 3) return g;
    const f = (m: M) => /fill="([^"]*)"/.exec(m.text)![1]!;
    return cut(
      cut(g, b[1]!, setAttr(b[1]!.text, 'fill', f(b[0]!))),
      b[0]!,
      setAttr(b[0]!.text, 'fill', f(b[1]!)),
    );
  });
});
add('band-multiplier', 'multiplier band of another decade', (s) => {
  const p = all(s, /<g id="[^"]*-part-pad[^"]*".*?<\/g>/g)[0];
  return edit(s, p, (g) => {
    const b = all(g, /<rect [^>]*height="18"[^>]*>/g);
    return b[2] ? cut(g, b[2], setAttr(b[2].text, 'fill', '#c8281e')) : g;
  });
});
add('contact-moved', 'switch blade drawn in the next position', (s) =>
  inPart(s, 'selector', (g) =>
    edit(g, all(g, /<path [^>]*stroke-width="7"[^>]*>/g)[0], (t) =>
      addAttr(t, 'transform="translate(0 48)"'),
    ),
  ),
);
add('contact-removed', 'no blade closed', (s) =>
  inPart(s, 'selector', (g) => g.replace(/<path [^>]*stroke-width="7"[^>]*><\/path>/g, '')),
);
add('unused-lug-as-used', 'free lug (dashed) drawn as used', (s) =>
  edit(s, all(s, /<rect [^>]*sl-tag[^>]*stroke-dasharray[^>]*>/g)[0], (t) =>
    t.replace(/ stroke-dasharray="[^"]*"/, ''),
  ),
);
add('lug-covered', 'lug letter under a lug-coloured tag', (s) =>
  inPart(s, 'selector', (g) =>
    g.replace(
      '</g>',
      `<rect x="${lugA(s).x - 15}" y="${lugA(s).y - 10}" width="30" height="20" fill="#e8d9a8"></rect></g>`,
    ),
  ),
);
add('free-lug-copied', 'a second lug "4" on the pot', (s) =>
  inPart(s, 'volume', (g) => {
    const [t] = txt(g, /^3$/);
    return g.replace(
      '</g>',
      setAttr(
        setAttr(
          inner(t!.text, () => '4'),
          'x',
          cx(s) + 72,
        ),
        'y',
        cy(s),
      ) + '</g>',
    );
  }),
);
// Words, figures
add('chips-exchanged', 'colour codes of two wires exchanged', (s) => {
  const a = chips(s)[0]!,
    b = chips(s).find((c) => content(/<text.*/.exec(c.text)![0]) !== 'BK');
  if (!b) return s;
  const put = (m: M, o: M) => {
    const c = content(/<text.*/.exec(o.text)![0]);
    return m.text.replace(/>[A-Z]{2,4}</, `>${c}<`);
  };
  return cut(cut(s, b, put(b, a)), a, put(a, b));
});
add('chips-exchange-places', 'two chips (rect and letters) exchange places', (s) => {
  const c = chips(s),
    a = c[0]!,
    b = c.find((x) => content(/<text.*/.exec(x.text)![0]) !== 'BK');
  if (!b) return s;
  const mv = (m: M, o: M) => {
    const dx = attr(/<text.*/.exec(o.text)![0], 'x') - attr(/<text.*/.exec(m.text)![0], 'x'),
      dy = attr(o.text, 'y') - attr(m.text, 'y');
    return m.text.replace(
      / x="([\d.]+)" y="([\d.]+)"/g,
      (_, x, y) => ` x="${+x + dx}" y="${+(+y + dy).toFixed(2)}"`,
    );
  };
  return cut(cut(s, b, mv(b, a)), a, mv(a, b));
});
add('chip-code', 'RD for BK', (s) => edit(s, firstChip(s, /BK/), (t) => t.replace('>BK<', '>RD<')));
add('chip-removed', 'no insulation colour given', (s) => edit(s, firstChip(s, /BK/), () => ''));
add('chip-far', 'chip moved into empty space', (s) =>
  edit(s, firstChip(s, /BK/), (t) => t.replace(/ y="([\d.]+)"/g, (_, y) => ` y="${+y - 12}"`)),
);
add('key-exchanged', 'two entries of the key exchanged', (s) =>
  s.replace(/(-key"[^>]*>)(.*?)(<\/g>)/, (_, a, k, z) => {
    const t = texts(k);
    return (
      a +
      swap(
        k,
        t[0],
        t[1],
        (x) => setAttr(x, 'x', attr(t[0]!.text, 'x')),
        (x) => setAttr(x, 'x', attr(t[1]!.text, 'x')),
      ) +
      z
    );
  }),
);
add('key-ground', '"ground" made "hot" in key', (s) => s.replace(/(-key"[^>]*>.*?)>ground</, '$1>hot<'));
add('heading-view', 'component side for solder side', (s) =>
  s.replace(/>Seen from the solder side/, '>Seen from the component side'),
);
add('heading-position', 'other position shown', (s) =>
  s.replace(/(-head">.*?)position (\d)/, (_, a, n) => `${a}position ${+n === 1 ? 3 : 1}`),
);
add('title-step-word', 'a word of the title', (s) =>
  edit(s, texts(s)[0], (t) =>
    inner(t, (c) => c.replace(/volume/, 'two volumes').replace(/HSH|HSS|SSS|HS|SS/, 'HH')),
  ),
);
add('load-digit', "a load's digit", (s) => edit(s, txt(s, /^\d+ kΩ$/).at(-1), (t) => inner(t, digit)));
add('meter-digit', "a meter reading's digit", (s) =>
  edit(s, txt(s, /^\d\.\d\d kΩ$/).at(-1), (t) => inner(t, digit)),
);
add('sign', '+ for − of a claim', (s) =>
  edit(s, txt(s, /^[+−]\d+ %/)[0], (t) => inner(t, (c) => (c[0] === '+' ? '−' : '+') + c.slice(1))),
);
add('brighter-duller', 'brighter for duller', (s) =>
  edit(s, txt(s, /brighter|duller/)[0], (t) =>
    inner(t, (c) => c.replace(/brighter|duller/, (w) => (w === 'duller' ? 'brighter' : 'duller'))),
  ),
);
add('card-number', 'card 1 says 3', (s) => s.replace(/(-position-1">.*?)>1</, '$1>3<'));
add('card-titles', 'titles of cards 1 and 3 exchanged', (s) => {
  const a = all(
    s,
    /(?<=-position-1">.*?)<text [^>]*font-size="14"[^>]*text-anchor="start"[^>]*>[^<]*<\/text>/g,
  )[0];
  return edit(s, a, (t) => inner(t, (c) => (c === 'Neck' ? 'Bridge' : 'Neck')));
});
add('parallel-series', 'in series for in parallel', (s) =>
  edit(s, txt(s, /^in parallel/)[0], (t) => inner(t, (c) => c.replace('parallel', 'series'))),
);
add('bar-length', 'a load bar shows another load', (s) =>
  s.replace(/(-position-1">.*)/, (c) => {
    let n = 0;
    return c.replace(/<rect [^>]*height="(?:8|10|12|6|7|9)"[^>]*>/g, (r) =>
      n++ === 1 ? setAttr(r, 'width', attr(r, 'width') / 2) : r,
    );
  }),
);
add('homoglyph-B', 'Cyrillic В: search and speech differ; lug B1 → А1 by look-alike', (s) =>
  inPart(s, 'selector', (g) => edit(g, txt(g, /^B1$/)[0], (t) => inner(t, () => 'А1'))),
);
add('combining-strike', 'value struck out by combining strokes', (s) =>
  inPart(s, 'volume', (g) =>
    edit(g, txt(g, /kΩ/)[0], (t) => inner(t, (c) => [...c].join('\u0336') + '\u0336')),
  ),
);
add('bidi-override', 'RLO turns 250 to 052', (s) =>
  inPart(s, 'volume', (g) => edit(g, txt(g, /kΩ/)[0], (t) => inner(t, (c) => '\u202e' + c))),
);
add('zero-width-digit', 'charref for a digit changed', (s) =>
  inPart(s, 'volume', (g) => edit(g, txt(g, /kΩ/)[0], (t) => inner(t, (c) => c.replace(/\d/, '&#49;')))),
);
// Text by attributes
add('tspan-moved', 'A1 by tspan at another lug', (s) =>
  inPart(s, 'selector', (g) =>
    edit(g, txt(g, /^A1$/)[0], (t) => inner(t, (c) => `<tspan dy="48">${c}</tspan>`.replace(/^/, ''))),
  ),
);
add('text-dy', 'dy moves lug letter', (s) =>
  inPart(s, 'selector', (g) => edit(g, txt(g, /^A1$/)[0], (t) => addAttr(t, 'dy="48"'))),
);
add('text-dx-list', 'letters overlapped by dx', (s) =>
  edit(s, txt(s, /^\d+ kΩ/)[0], (t) => addAttr(t, 'dx="0 -12 -12"')),
);
add('text-x-list', 'x list reverses digits', (s) =>
  edit(s, txt(s, /^\d\d\d kΩ/)[0], (t) =>
    setAttr(t, 'x', `${attr(t, 'x') + 16} ${attr(t, 'x')} ${attr(t, 'x') - 16}`),
  ),
);
add('text-rotate', '6 reads as 9', (s) => edit(s, txt(s, /[69].*kΩ/)[0], (t) => addAttr(t, 'rotate="180"')));
add('text-baseline', 'baseline-shift lifts a label to another lug', (s) =>
  inPart(s, 'selector', (g) => edit(g, txt(g, /^A2$/)[0], (t) => addAttr(t, 'baseline-shift="48"'))),
);
add('dominant-baseline', 'lug letters leave their tags', (s) =>
  inPart(s, 'selector', (g) => addAttr(g, 'dominant-baseline="hanging"')),
);
add('writing-mode', 'text written downwards', (s) => onRoot(s, 'writing-mode="vertical-rl"'));
add('direction-rtl', 'starts at the other end', (s) =>
  s.replace(/<g id="[^"]*-position-1"/, (g) => `${g} direction="rtl"`),
);
add('unicode-bidi', 'bidi-override turns numbers', (s) =>
  inPart(s, 'volume', (g) => addAttr(g, 'direction="rtl" unicode-bidi="bidi-override"')),
);
add('letter-spacing', 'letters on one heap', (s) =>
  s
    .replace(/ lengthAdjust="spacingAndGlyphs"/g, '')
    .replace(/ textLength="[^"]*"/g, '')
    .replace('<svg ', '<svg letter-spacing="-0.6em" '),
);
add('textLength-0', 'texts pressed to nothing', (s) =>
  inPart(s, 'volume', (g) => g.replace(/textLength="[^"]*"/g, 'textLength="1"')),
);
add('textLength-wide', 'value spread over its neighbours', (s) =>
  inPart(s, 'volume', (g) => g.replace(/textLength="[^"]*"/g, 'textLength="300"')),
);
add('font-tiny', 'lug names at 1 px', (s) =>
  inPart(s, 'selector', (g) => g.replace(/font-size="12"/g, 'font-size="1"')),
);
add('font-symbols', 'pictograms for letters', (s) =>
  s.replace(/font-family="[^"]*"/, 'font-family="Wingdings, Webdings, Symbol"'),
);
add('font-symbols-part', 'pictograms for the lugs', (s) =>
  inPart(s, 'selector', (g) => addAttr(g, 'font-family="Wingdings"')),
);
add('font-weight-stroke', 'text drowned in stroke', (s) =>
  inPart(s, 'selector', (g) => g.replace(/<text /g, '<text stroke="#1d2b36" stroke-width="9" ')),
);
add('line-through', 'joint list / value struck out', (s) =>
  inPart(s, 'volume', (g) => addAttr(g, 'text-decoration="line-through"')),
);
add('anchor', 'text-anchor of root moved: labels off their lugs', (s) =>
  s.replace('text-anchor="middle"', 'text-anchor="end"'),
);
add('text-fill-paper', 'lug letters in the lug colour', (s) =>
  inPart(s, 'selector', (g) => g.replace(/(<text [^>]*fill=")[^"]*/g, '$1#e8d9a8')),
);
add('textPath', 'text on a path elsewhere', (s) =>
  atTop(
    inPart(s, 'selector', (g) =>
      edit(g, txt(g, /^A1$/)[0], (t) => inner(t, (c) => `<textPath href="#tp">${c}</textPath>`)),
    ),
    '<defs><path id="tp" d="M500 500L700 500"></path></defs>',
  ),
);
add('feature-settings', 'ligature/fraction features alter digits', (s) =>
  onRoot(s, "style=\"font-feature-settings:'sups','frac'\""),
);
add('text-transform', 'style text-transform: case of units changed', (s) =>
  onRoot(s, 'style="text-transform:uppercase"'),
);
// Covers, styles, ancestors
add('cover-rect', 'paper over the selector', (s) =>
  inDrawing(
    s,
    `<rect x="${lugA(s).x - 10}" y="${lugA(s).y - 30}" width="130" height="180" fill="#ffffff"></rect>`,
  ),
);
add('cover-image', 'picture over all', (s) =>
  atEnd(
    s,
    '<image x="0" y="0" width="900" height="600" href="data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mP8/5+hHgAHggJ/PchI7wAAAABJRU5ErkJggg=="></image>',
  ),
);
add('cover-foreign', 'HTML over all', (s) =>
  atEnd(
    s,
    '<foreignObject x="0" y="0" width="900" height="600"><div xmlns="http://www.w3.org/1999/xhtml" style="background:#fff;height:100%">x</div></foreignObject>',
  ),
);
add('cover-by-clone-of-card', 'a card copied over the drawing by use', (s) =>
  atEnd(s, `<use href="#${idOf(s)}-part-output" x="60" y="200"></use>`),
);
add('use-wire', 'second wire by use, offset a lug', (s) =>
  edit(s, lastWire(s), (g) => g + `<use href="#${/id="([^"]*)"/.exec(g)![1]}" y="48"></use>`),
);
add('nested-svg', 'nested svg covers', (s) =>
  atEnd(
    s,
    '<svg x="100" y="200" width="300" height="300"><rect width="300" height="300" fill="#ffffff"></rect></svg>',
  ),
);
add('switch-other', 'switch shows another text to the browser', (s) =>
  edit(
    s,
    txt(s, /^Volume$/)[0],
    (t) =>
      `<switch>${addAttr(
        inner(t, () => 'Tone'),
        'systemLanguage="en"',
      )}${t}</switch>`,
  ),
);
add('systemLanguage', 'wire hidden in most locales', (s) =>
  edit(s, lastWire(s), (g) => addAttr(g, 'systemLanguage="tlh"')),
);
add('requiredExtensions', 'wire hidden everywhere', (s) =>
  edit(s, lastWire(s), (g) => addAttr(g, 'requiredExtensions="http://x.example/y"')),
);
add('style-rule', 'CSS hides chips', (s) => atTop(s, '<style>.sl-chip,.sl-chip+text{display:none}</style>'));
add('style-rule-move', 'CSS moves a joint', (s) =>
  atTop(
    s,
    `<style>[id$="-joint-${/joint-(\d+)/.exec(lastWire(s)!.text)![1]}"]{transform:translateY(48px)}</style>`,
  ),
);
add('style-d', 'CSS d property', (s) =>
  edit(s, lastWire(s), (g) => g.replace('<path ', '<path style="d:path(\'M0 0L400 400\')" ')),
);
add('style-attr-visibility', 'wire hidden', (s) =>
  edit(s, lastWire(s), (g) => addAttr(g, 'style="visibility:hidden"')),
);
add(
  'stylesheet-pi',
  'xml-stylesheet in data URL hides wires',
  (s) => `<?xml-stylesheet type="text/css" href="data:text/css,%5Bid*=joint%5D%7Bdisplay:none%7D"?>${s}`,
);
add(
  'doctype-attlist',
  'DTD default attribute hides all circles',
  (s) => `<!DOCTYPE svg [<!ATTLIST circle visibility CDATA "hidden">]>${s}`,
);
add(
  'doctype-entity',
  'entity gives a value',
  (s) => `<!DOCTYPE svg [<!ENTITY v "500 k">]>${s.replace(/>(250|500) k/, '>&v;')}`,
);
add('animate', 'wire fades away', (s) =>
  edit(s, lastWire(s), (g) =>
    g.replace('</g>', '<animate attributeName="opacity" to="0" dur="1s" fill="freeze"></animate></g>'),
  ),
);
add('set-elsewhere', 'set by href changes text position', (s) =>
  atEnd(s, `<set href="#${idOf(s)}-part-volume" attributeName="visibility" to="hidden" begin="0s"></set>`),
);
add('animateTransform', 'all wires move', (s) =>
  s.replace(
    /(<g id="[^"]*-wires"[^>]*>)/,
    '$1<animateTransform attributeName="transform" type="translate" to="0 48" dur="1s" fill="freeze"></animateTransform>',
  ),
);
add('script', 'script alters a label', (s) =>
  atEnd(s, '<script>document.querySelectorAll("text").forEach(t=>t.textContent="1")</script>'),
);
add('onload', 'handler hides', (s) => onRoot(s, 'onload="this.lastChild.remove()"'));
add('mask', 'selector masked', (s) =>
  atTop(
    inPart(s, 'selector', (g) => addAttr(g, 'mask="url(#k)"')),
    '<mask id="k"></mask>',
  ),
);
add('clip', 'drawing clipped', (s) =>
  atTop(
    s.replace(/(<g id="[^"]*-wires")/, '$1 clip-path="url(#c)"'),
    '<clipPath id="c"><rect width="300" height="900"></rect></clipPath>',
  ),
);
add('clip-missing-ref', 'filter reference', (s) =>
  inPart(s, 'volume', (g) => addAttr(g, 'filter="url(#nothing)"')),
);
add('opacity', 'wires faint', (s) => s.replace(/(<g id="[^"]*-wires")/, '$1 opacity="0.06"'));
add('stroke-opacity', 'inherited stroke opacity', (s) =>
  s.replace(/(<g id="[^"]*-wires")/, '$1 stroke-opacity="0.04"'),
);
add('stroke-opacity-root', 'inherited from root: no line to be seen', (s) =>
  onRoot(s, 'stroke-opacity="0.03"'),
);
add('fill-opacity-root', 'inherited from root: letters gone', (s) => onRoot(s, 'fill-opacity="0.03"'));
add('root-miter', 'root stroke-linecap square inherited: openings closed', (s) =>
  onRoot(s, 'stroke-linecap="square"'),
);
add('root-dash', 'root dash inherited: wires mostly absent', (s) => onRoot(s, 'stroke-dasharray="1 60"'));
add('root-style-mirror', 'whole sheet mirrored: lugs left for right', (s) =>
  onRoot(s, 'style="transform:scaleX(-1)"'),
);
add('root-transform', 'root transform attribute', (s) => onRoot(s, 'transform="scale(-1 1)"'));
add('root-tiny', 'sheet at 60 px wide', (s) =>
  s.replace(/ width="\d+" height="\d+"/, ' width="60" height="50"'),
);
add('root-squeezed', 'sheet pressed flat', (s) =>
  s.replace(/ width="\d+" height="\d+"/, ' width="1200" height="60" preserveAspectRatio="none"'),
);
add('root-slice', 'slice crops half of the drawing', (s) =>
  s.replace(/ width="\d+" height="\d+"/, ' width="1200" height="300" preserveAspectRatio="xMidYMid slice"'),
);
add('root-display', 'display none on root', (s) => onRoot(s, 'display="none"'));
add('viewbox-crop', 'cards and lower part cut off', (s) =>
  s.replace(/viewBox="0 0 (\d+) (\d+)"/, (_, w, h) => `viewBox="0 0 ${w} ${Math.round(h / 2)}"`),
);
add('viewbox-shift', 'left part cut off', (s) => s.replace(/viewBox="0 0/, 'viewBox="300 0'));
add('ancestor-scale', 'drawing mirrored, text too', (s) =>
  s.replace(/(-drawing" transform="translate\()([\d.]+) ([\d.]+)\)/, '$1 1000 $3) scale(-1 1)'),
);
add('ancestor-skew', 'drawing skewed', (s) =>
  s.replace(/(-drawing" transform="translate\([^)]*\))/, '$1 skewY(20)'),
);
add('ns-empty', 'xmlns="" group is not rendered', (s) => edit(s, lastWire(s), (g) => addAttr(g, 'xmlns=""')));
add('ns-prefix', 'foreign namespace prefix elements', (s) =>
  edit(s, lastWire(s), (g) =>
    g.replace(/<path /, '<x:path xmlns:x="urn:x" ').replace('</path>', '</x:path>'),
  ),
);
add('ns-root', 'root in a wrong namespace: nothing drawn', (s) =>
  s.replace('http://www.w3.org/2000/svg', 'http://www.w3.org/2000/svG'),
);
add('tag-case', 'PATH in XML is unknown', (s) =>
  edit(s, lastWire(s), (g) => g.replace('<path ', '<Path ').replace('</path>', '</Path>')),
);
add('comment-out', 'wire in a comment', (s) => edit(s, lastWire(s), (g) => `<!--${g}-->`));
add('defs-wrap', 'wire in defs: not rendered', (s) => edit(s, lastWire(s), (g) => `<defs>${g}</defs>`));
add('symbol-wrap', 'part in a symbol: not rendered', (s) =>
  inPart(s, 'tone-cap', (g) => `<symbol>${g}</symbol>`),
);
add('a-wrap-link', 'part made a link to elsewhere', (s) =>
  inPart(s, 'volume', (g) => `<a href="https://example.com">${g}</a>`),
);
add('unit-x', 'x in per cent', (s) =>
  inPart(s, 'selector', (g) => edit(g, txt(g, /^A1$/)[0], (t) => t.replace(/ x="([\d.]+)"/, ' x="$1mm"'))),
);
add('bad-colour', 'invalid colour: path not stroked', (s) =>
  edit(s, lastWire(s), (g) => g.replace(/stroke="#/, 'stroke="##')),
);
add('colour-alpha', '8-digit hex: transparent wire', (s) =>
  edit(s, lastWire(s), (g) => g.replace(/stroke="(#[0-9a-f]{6})"/, 'stroke="$100"')),
);
add('reorder-part-last', 'plate above its wires and chips', (s) => {
  const p = selector(s);
  return inDrawing(cut(s, p, ''), p.text);
});
add('reorder-chips-first', 'chips below wires: letters struck through', (s) => {
  const c = all(s, /<g id="[^"]*-colours">.*?<\/g>/g)[0];
  if (!c) return s;
  return cut(s, c, '').replace(/<g id="[^"]*-wires"/, (w) => c.text + w);
});
add('reorder-paper-last', 'paper over everything', (s) => {
  const p = all(s, /<rect [^>]*sl-paper[^>]*><\/rect>/g)[0]!;
  return atEnd(cut(s, p, ''), p.text);
});
add('joint-order', 'two joints exchange places in the stack: outline over core', (s) => {
  const j = joints(s);
  return swap(
    s,
    j[0],
    j[1],
    (x) => x,
    (x) => x,
  );
});
add('ground-core-order', 'double line paths exchanged: ground looks solid', (s) =>
  edit(s, joints(s)[0], (g) => {
    const p = all(g, /<path[^>]*><\/path>/g);
    return swap(
      g,
      p[0],
      p[1],
      (x) => x,
      (x) => x,
    );
  }),
);
// Words for a screen reader
add('title-changed', 'accessible title of another kit', (s) =>
  s.replace(/(<title[^>]*>)[^<]*/, '$1HH, three-way lever, two volumes'),
);
add('desc-load', 'spoken load false', (s) => desc(s, (d) => d.replace(/(\d)(\d\d) kΩ/, '9$2 kΩ')));
add('desc-joint', 'spoken lug false', (s) =>
  desc(s, (d) => d.replace(/Volume 3|Volume, lug 3/, 'Volume 2').replace(/Selector B0/, 'Selector A3')),
);
add('desc-joint-dropped', 'spoken joint missing', (s) => desc(s, (d) => d.replace(/; wire [^;]*/, '')));
add('desc-removed', 'no description', (s) => s.replace(/<desc.*?<\/desc>/, ''));
add('labelledby-elsewhere', 'name taken from a part', (s) =>
  s.replace(/aria-labelledby="[^"]*"/, `aria-labelledby="${idOf(s)}-part-output"`),
);
add('aria-hidden', 'hidden from readers', (s) => onRoot(s, 'aria-hidden="true"'));
add('aria-label-part', 'part spoken as another', (s) =>
  onRoot(s, 'aria-description="Tone and Volume are exchanged"'),
);
add('role-none', 'role presentation', (s) => s.replace('role="img"', 'role="none"'));
add('id-dup', "a second element with the description's id, earlier", (s) =>
  atTop(s, `<metadata id="${idOf(s)}-desc">Bridge hot to ground.</metadata>`),
);
add('tooltip', 'tooltip of a lug: false title within a part', (s) =>
  inPart(s, 'volume', (g) => g.replace(/(<g [^>]*>)/, '$1<title>Tone</title>')),
);
add('lang', 'lang makes it spoken in Arabic', (s) => onRoot(s, 'xml:lang="ar"'));
// Steps and states
add('mark-removed', 'step: marks of new joints gone', (s) =>
  s.replace(/<path [^>]*sl-mark[^>]*><\/path>/, ''),
);
add('work-line', 'step: lug in the work list false', (s) =>
  s.replace(/(-work">.*)lug (\d)/, (_, a, n) => `${a}lug ${+n === 2 ? 3 : 2}`),
);
add('work-line-length', 'step: length false', (s) =>
  s.replace(/(-work">.*?)(\d+) mm/, (_, a, n) => `${a}${+n * 2} mm`),
);
add('work-line-gone', 'step: a line gone', (s) =>
  s.replace(/(-work">)<rect[^>]*><\/rect><text[^>]*>[^<]*<\/text>/, '$1'),
);
add('work-box-ticked', 'step: box already ticked', (s) =>
  s.replace(
    /(-work">)/,
    '$1<path d="M25 788L29 792L36 783" stroke="#000" stroke-width="2" fill="none"></path>',
  ),
);
add('head-step-number', 'step number false', (s) =>
  s.replace(/(-head">.*?)([Ss]tep) (\d)/, (_, a, b, n) => `${a}${b} ${+n + 1}`),
);
add('paled-wire', 'state: a pale wire made strong or reverse', (s) =>
  s.replace(/(-joint-\d+"[^>]*) opacity="[^"]*"/, '$1'),
);
// after the root, before it, odd whitespace
add(
  'trailing-svg',
  'second root: not well formed; a browser shows an error',
  (s) => `${s}<svg xmlns="http://www.w3.org/2000/svg"></svg>`,
);
add('leading-blank-pi', 'blank before XML declaration: browser refuses', (s) => ` <?xml version="1.0"?>${s}`);
add(
  'encoding-lie',
  'declared Latin-1: Ω and − garbled',
  (s) => `<?xml version="1.0" encoding="ISO-8859-1"?>${s}`,
);
add('control-char', 'a character XML forbids: browser refuses', (s) => desc(s, (d) => `${d}&#1;`));
add('unknown-entity', '&nbsp; undefined in XML: browser refuses', (s) =>
  edit(s, txt(s, /kΩ/)[0], (t) => inner(t, (c) => c.replace(' ', '&nbsp;'))),
);
add('truncated', 'end of file missing', (s) => s.slice(0, -8));

// Second round, about what the first missed
add(
  'root-linecap-round',
  'root linecap round inherited: 12 px openings shrink to 8, ground ends pass their lugs',
  (s) => onRoot(s, 'stroke-linecap="round"'),
);
add('root-dashoffset', 'dash with offset longer than any wire: no wire shown', (s) =>
  onRoot(s, 'stroke-dasharray="1 99999" stroke-dashoffset="-50000"'),
);
add('root-visibility', 'nothing shows', (s) => onRoot(s, 'visibility="hidden"'));
add('root-text-decoration', 'all text struck through', (s) => onRoot(s, 'text-decoration="line-through"'));
add('root-dominant-baseline', 'all letters one line lower, off their tags', (s) =>
  onRoot(s, 'dominant-baseline="text-before-edge"'),
);
add('root-small-caps', 'small caps: kΩ reads KΩ, nF reads NF', (s) => onRoot(s, 'font-variant="small-caps"'));
add('root-unicode-bidi', 'root direction rtl: start-anchored text runs the other way', (s) =>
  onRoot(s, 'direction="rtl"'),
);
add('root-paint-order', 'root stroke inherited: letters in thick outline', (s) =>
  onRoot(s, 'stroke="#1d2b36" stroke-width="12"'),
);
add('root-word-spacing', 'word spacing', (s) => onRoot(s, 'word-spacing="200"'));
add('root-font-stretch', 'letter-spacing on root with textLength kept', (s) =>
  onRoot(s, 'letter-spacing="-40"'),
);
add('root-width-only', 'width 0: nothing shown', (s) =>
  s.replace(/ width="\d+" height="\d+"/, ' width="0" height="0"'),
);
add('root-aria-label', 'aria-label false', (s) =>
  onRoot(s.replace(/ aria-labelledby="[^"]*"/, ''), 'aria-label="Bridge hot goes to ground"'),
);
add('root-labelledby-empty', 'no name at all', (s) =>
  s.replace(/aria-labelledby="[^"]*"/, 'aria-labelledby=""'),
);
add('root-tabindex', 'aria-roledescription: spoken as something else', (s) =>
  onRoot(s, 'aria-roledescription="superseded drawing, do not use"'),
);
add('font-family-group', 'pictograms for the whole drawing group', (s) =>
  s.replace(/-drawing"/, '-drawing" font-family="Wingdings"'),
);
add('linecap-wires', 'square caps on the wires group', (s) =>
  s.replace(/-wires"/, '-wires" stroke-linecap="square"'),
);
add('dash-wires', 'dash on the wires group', (s) => s.replace(/-wires"/, '-wires" stroke-dasharray="1 60"'));
add('dash-drawing', 'dash on the drawing group', (s) =>
  s.replace(/-drawing"/, '-drawing" stroke-dasharray="1 60"'),
);
add('aria-hidden-title', 'aria-hidden on desc', (s) => s.replace('<desc ', '<desc aria-hidden="true" '));
add('aria-label-text', 'lug A1 spoken as B1', (s) =>
  inPart(s, 'selector', (g) => edit(g, txt(g, /^A1$/)[0], (t) => addAttr(t, 'aria-label="B1"'))),
);
add('aria-label-group', 'volume part spoken as tone', (s) =>
  inPart(s, 'volume', (g) => addAttr(g, 'aria-label="Tone" role="img"')),
);
add('paper-last-real', 'the paper (first child rect) drawn last', (s) => {
  const p = all(s, /<\/desc><rect [^>]*><\/rect>/g)[0];
  return p ? atEnd(cut(s, p, '</desc>'), p.text.slice(7)) : s;
});
add('paper-copied-last', 'a copy of the paper at the end', (s) => {
  const p = all(s, /<\/desc><rect [^>]*><\/rect>/g)[0];
  return p ? atEnd(s, p.text.slice(7)) : s;
});
add('paper-before-work', 'paper after the drawing, before the cards / work', (s) => {
  const p = all(s, /<\/desc><rect [^>]*><\/rect>/g)[0]!;
  return cut(s, p, '</desc>').replace(/<g id="[^"]*-(state-1|work)">/, (g) => p.text.slice(7) + g);
});
add('encoding-utf16', 'declared UTF-16', (s) => `<?xml version="1.0" encoding="windows-1251"?>${s}`);
add(
  'newline-pi',
  'two declarations: browser refuses',
  (s) => `\n<?xml version="1.0" encoding="UTF-8"?>\n${s}`,
);
add('xml-version', 'version 9: parser may refuse', (s) => `<?xml version="abc"?>${s}`);
add('xml-pi-inside', 'reserved PI within: browser refuses', (s) => atTop(s, '<?xml version="1.0"?>'));
add('comment-double-dash', 'a comment with -- : browser refuses', (s) => atTop(s, '<!-- a -- b -->'));
add('attr-lt', 'raw < in attribute: browser refuses', (s) => onRoot(s, 'data-x="<"'));
add('cdata-end', ']]> in text: browser refuses', (s) => desc(s, (d) => `${d} ]]>`));
add('ns-unbound', 'unbound prefix on an attribute: browser refuses', (s) => onRoot(s, 'zz:q="1"'));
add('attr-no-space', 'no blank between attributes: browser refuses', (s) =>
  s.replace('" version=', '"version='),
);

export const strangers: readonly T[] = T;
