/** What lines look like, what runs beneath, and what must keep clear. */
import { describe, expect, it } from 'vitest';
import type { Kit } from '../../src/describe/kit.ts';
import { themes } from '../../src/draw/theme.ts';
import { drawn, sample, samples } from './draw.ts';
import type { Drawing, Point, Wire } from './reader.ts';

/** Lugs that joints hold together, of the net that a lug is in. */
function netOf(kit: Kit, lug: string): ReadonlySet<string> {
  const net = new Set([lug]);
  for (let before = 0; before !== net.size; ) {
    before = net.size;
    for (const { from, to } of kit.joints) {
      const [a, b] = [`${from.part}.${from.lug}`, `${to.part}.${to.lug}`];
      if (net.has(a)) net.add(b);
      else if (net.has(b)) net.add(a);
    }
  }
  return net;
}

/** What the key must call each joint's line: common practice, no source; the net decides for wires, the kind for the rest. */
function roleOf(kit: Kit, joint: Kit['joints'][number]): RegExp {
  const part = (name: string) => kit.parts.find((one) => one.name === name);
  if (joint.kind === 'leg') {
    const sleeved = [joint.from, joint.to].some((end) => {
      const own = part(end.part);
      return own && 'sleeved' in own && own.sleeved.includes(end.lug as '1' | '2');
    });
    return sleeved ? /sleev/ : /leg, bare|bare.*leg/;
  }
  if (joint.kind === 'jumper') return /link|jumper/;
  if (joint.kind === 'bend') return /bent/;
  if (joint.kind === 'braid') return /braid/;
  const net = [...netOf(kit, `${joint.from.part}.${joint.from.lug}`)];
  if (net.some((lug) => lug.endsWith('.sleeve'))) return /^ground \(double line\)$/;
  if (net.some((lug) => lug.endsWith('.tip'))) return /output/;
  const hot = net.filter((lug) => lug.endsWith('.hot'));
  const [only] = hot;
  if (hot.length === 1 && only) return new RegExp(`^${part(only.split('.')[0] ?? '')?.label}, hot$`);
  return /switch|tone|other/;
}

const look = (strokes: Wire['strokes']): string =>
  strokes.map(({ stroke, width, dash }) => `${stroke} ${width} ${dash}`).join(' | ');

describe('every line looks as the key says it carries, where colours tell the signal', () => {
  it.each(samples)('%s', async (name) => {
    const kit = sample(name);
    const { wires, key } = await drawn(kit, { lines: 'signal' });
    const seen = new Set<string>();
    for (const [i, joint] of kit.joints.entries()) {
      const ends = [`${joint.from.part}.${joint.from.lug}`, `${joint.to.part}.${joint.to.lug}`];
      const wire = wires.find(({ ends: drawnEnds }) =>
        [drawnEnds, [...drawnEnds].reverse()].some((pair) =>
          pair.every(
            (end, k) =>
              end === ends[k] ||
              (/\.(left|right)$/.test(end) && end.split('.')[0] === ends[k]?.split('.')[0]),
          ),
        ),
      );
      if (!wire) throw new Error(`joint ${i + 1} is not drawn`);
      const entry = key.find(({ strokes }) => look(strokes) === look(wire.strokes));
      expect(entry?.words, ends.join(' > ')).toMatch(roleOf(kit, joint));
      seen.add(entry?.words ?? '');
    }
    // The key has no line that is not on the sheet, and no two that look alike.
    const lines = key.filter(({ strokes }) => strokes.length > 0);
    expect(new Set(lines.map(({ words }) => words))).toEqual(seen);
    expect(new Set(lines.map(({ strokes }) => look(strokes))).size).toBe(lines.length);
  });
});

/** Name of a colour as a person sees it, by hue, saturation and lightness; limits by eye, no source. */
function seenAs(ink: string): string {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((i) => Number.parseInt(ink.slice(i, i + 2), 16) / 255);
  const [most, least] = [Math.max(r, g, b), Math.min(r, g, b)];
  const light = (most + least) / 2;
  const range = most - least;
  if (range < 0.06) return light > 0.87 ? 'white' : light < 0.15 ? 'black' : light > 0.75 ? 'silver' : 'grey';
  const sixth =
    most === r ? ((g - b) / range + 6) % 6 : most === g ? (b - r) / range + 2 : (r - g) / range + 4;
  const hue = sixth * 60;
  if (hue < 15 || hue > 320) return light > 0.7 ? 'pink' : 'red';
  if (hue < 36) return light < 0.4 ? 'brown' : 'orange';
  if (hue < 48) return light < 0.5 ? 'gold' : 'yellow';
  if (hue < 70) return 'yellow';
  if (hue < 160) return 'green';
  if (hue < 190) return 'turquoise';
  return hue < 250 ? 'blue' : 'violet';
}
/** IEC 60757, from memory. */
const NAMES: Readonly<Record<string, string>> = {
  BK: 'black',
  BN: 'brown',
  RD: 'red',
  OG: 'orange',
  YE: 'yellow',
  GN: 'green',
  BU: 'blue',
  VT: 'violet',
  GY: 'grey',
  WH: 'white',
  PK: 'pink',
  GD: 'gold',
  TQ: 'turquoise',
  SR: 'silver',
};

describe('a line has the colour of its wire’s insulation', () => {
  /** The same kit with every colour there is on its wires, one after the other, of two colours too. */
  const CODES = [...Object.keys(NAMES), 'GNYE', 'BKRD', 'BUWH', 'BNSR'];
  const recoloured = (kit: Kit, from: number): Kit => ({
    ...kit,
    id: `${kit.id}-${from}`,
    joints: kit.joints.map((joint, i) =>
      joint.kind === 'wire' ? { ...joint, colour: CODES[(from + i) % CODES.length] ?? '' } : joint,
    ),
  });
  it.each(['light', 'dark'] as const)('as a person sees it, and as the key names it: %s', async (theme) => {
    const met = new Set<string>();
    for (const [n, name] of samples.entries()) {
      const kit = recoloured(sample(name), 5 * n);
      const { wires, key } = await drawn(kit, { theme });
      for (const [i, { kind, colour = '' }] of kit.joints.entries()) {
        if (kind !== 'wire') continue;
        const wire = wires.find(({ joint }) => joint === i + 1);
        const [edge, first, ...more] = wire?.strokes ?? [];
        const codes = colour.match(/../g) ?? [];
        met.add(colour);
        expect(seenAs(first?.stroke ?? ''), colour).toBe(NAMES[codes[0] ?? '']);
        expect([first?.dash, (edge?.width ?? 0) > (first?.width ?? 0)]).toEqual(['', true]);
        const stripes = more.filter(({ dash }) => dash !== '');
        expect(
          stripes.map(({ stroke }) => seenAs(stroke)),
          colour,
        ).toEqual(codes.slice(1).map((code) => NAMES[code]));
        const entry = key.find(({ strokes }) => look(strokes) === look(wire?.strokes ?? []));
        expect(entry?.code).toBe(colour);
        for (const code of codes) expect(entry?.words).toContain(NAMES[code]);
        // Ground alone is a double line: one stroke more, narrower, on top.
        const ground = roleOf(kit, kit.joints[i] ?? ({ kind: 'wire' } as never)).test('ground (double line)');
        expect(more.length - stripes.length, colour).toBe(ground ? 1 : 0);
        expect(entry?.words.startsWith('ground')).toBe(ground);
      }
      // No two lines of the key look alike, and each is on the sheet.
      const lines = key.filter(({ strokes }) => strokes.length > 0);
      expect(new Set(lines.map(({ strokes }) => look(strokes))).size).toBe(lines.length);
      for (const { strokes } of lines)
        expect(wires.some((wire) => look(wire.strokes) === look(strokes))).toBe(true);
    }
    expect([...met].sort()).toEqual([...CODES].sort());
  });
  it('and in black and white none, but its letters', async () => {
    const { wires } = await drawn(recoloured(sample('kestrel-hss'), 3), { theme: 'print' });
    const inks = new Set(wires.flatMap(({ strokes }) => strokes.map(({ stroke }) => seenAs(stroke))));
    expect([...inks].every((ink) => ['black', 'white', 'grey', 'silver'].includes(ink))).toBe(true);
  });
});

interface Stretch {
  readonly a: Point;
  readonly b: Point;
}
const stretchesOf = (piece: readonly Point[]): readonly Stretch[] =>
  piece.slice(1).map((b, i) => ({ a: piece[i] ?? b, b }));
/** The ways of a wire as if it were unbroken, and the places where it is broken. */
function wayOf({ pieces }: Wire): { readonly way: readonly Stretch[]; readonly gaps: readonly Point[] } {
  const joined = pieces.flat();
  const gaps = pieces.slice(1).map((piece, i) => {
    const [p, q] = [pieces[i]?.at(-1), piece[0]];
    return { x: ((p?.x ?? 0) + (q?.x ?? 0)) / 2, y: ((p?.y ?? 0) + (q?.y ?? 0)) / 2 };
  });
  return { way: stretchesOf(joined), gaps };
}

const isGround = (kit: Kit, { ends }: Wire): boolean => {
  const ground = netOf(kit, `${kit.parts.find((part) => part.kind === 'jack')?.name}.sleeve`);
  return ends.some((end) => ground.has(end));
};

/** Where one wire's level stretch crosses another's upright one. */
function crossings(
  wires: readonly Wire[],
): readonly { readonly at: Point; readonly one: Wire; readonly other: Wire }[] {
  const found: { at: Point; one: Wire; other: Wire }[] = [];
  for (const one of wires)
    for (const other of wires) {
      if (one === other) continue;
      for (const h of wayOf(one).way)
        for (const v of wayOf(other).way) {
          if (h.a.y !== h.b.y || v.a.x !== v.b.x) continue;
          const at = { x: v.a.x, y: h.a.y };
          if ((at.x - h.a.x) * (at.x - h.b.x) < 0 && (at.y - v.a.y) * (at.y - v.b.y) < 0)
            found.push({ at, one, other });
        }
    }
  return found;
}

const brokenAt = (wire: Wire, at: Point): boolean =>
  wayOf(wire).gaps.some((gap) => Math.hypot(gap.x - at.x, gap.y - at.y) < 1);

it('where two cross, one alone is open, and ground runs beneath signal (common practice, no source)', async () => {
  let [mixed, spared] = [0, 0];
  for (const name of samples)
    for (const arrangement of ['free-flow', 'pickguard', 'plate-row']) {
      const kit = sample(name);
      const { wires } = await drawn(kit, { arrangement });
      for (const { at, one, other } of crossings(wires)) {
        expect([one, other].filter((wire) => brokenAt(wire, at))).toHaveLength(1);
        const [a, b] = [isGround(kit, one), isGround(kit, other)];
        // Bare legs to ground do not look like ground wires; this is about ground wires.
        const wired = (wire: Wire): boolean =>
          wire.strokes.length > 1 && wire.strokes.some(({ width }) => width === 6);
        if (a === b || !wired(a ? one : other)) continue;
        mixed++;
        const ground = a ? one : other;
        if (brokenAt(ground, at)) continue;
        // Only where an opening of the ground wire would swallow its end, its corner or another opening of its own.
        const { way, gaps } = wayOf(ground);
        const near = [...way.flatMap((s) => [s.a, s.b]), ...gaps].map((p) =>
          Math.hypot(p.x - at.x, p.y - at.y),
        );
        expect(Math.min(...near), `${one.ends.join(' > ')} and ${other.ends.join(' > ')}`).toBeLessThan(24);
        spared++;
      }
    }
  expect(mixed).toBeGreaterThan(20);
  expect(spared).toBeLessThan(mixed / 3);
});

describe('what keeps clear', () => {
  /** Drawing units from a line's middle to the nearest edge of a lug that is not its own. */
  const LUG_CLEARANCE = 6;
  it.each(samples)('%s: no wire comes near a lug that is not its own', async (name) => {
    for (const arrangement of ['free-flow', sample(name).arrangement, 'pickguard']) {
      const { parts, wires } = await drawn(sample(name), { arrangement });
      for (const wire of wires)
        for (const { name: part, tags } of parts)
          for (const { name: lug, box } of tags) {
            if (wire.ends.includes(`${part}.${lug}`)) continue;
            for (const { a, b } of wayOf(wire).way) {
              const dx = Math.max(box.x - Math.max(a.x, b.x), Math.min(a.x, b.x) - box.x - box.w, 0);
              const dy = Math.max(box.y - Math.max(a.y, b.y), Math.min(a.y, b.y) - box.y - box.h, 0);
              expect(
                Math.hypot(dx, dy),
                `${wire.ends.join(' > ')} near ${part}.${lug}`,
              ).toBeGreaterThanOrEqual(LUG_CLEARANCE - 1e-6);
            }
          }
    }
  });
});

/** Contrast of two inks by WCAG 2.2, “relative luminance” and “contrast ratio” (from memory). */
function contrast(one: string, other: string): number {
  const luminance = (ink: string): number => {
    const [r = 0, g = 0, b = 0] = [1, 3, 5].map((i) => {
      const c = Number.parseInt(ink.slice(i, i + 2), 16) / 255;
      return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const [a, b] = [luminance(one), luminance(other)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

/** The uppermost filled box or circle that a text stands on. */
function groundUnder({ rects, circles }: Drawing, p: Point, order: number): string {
  const hit = [
    ...rects.filter((r) => p.x >= r.x && p.x <= r.x + r.w && p.y >= r.y && p.y <= r.y + r.h),
    ...circles.filter((c) => Math.hypot(c.x - p.x, c.y - p.y) <= c.r),
  ].filter((mark) => mark.order < order && mark.fill !== 'none');
  return hit.sort((a, b) => b.order - a.order)[0]?.fill ?? '#ffffff';
}

it.each(Object.keys(themes) as (keyof typeof themes)[])(
  '%s: every text has a contrast of 4.5 to what it stands on (WCAG 2.2, 1.4.3)',
  async (theme) => {
    for (const name of samples) {
      const drawing = await drawn(sample(name), { theme });
      for (const text of drawing.texts) {
        const ground = groundUnder(drawing, { x: text.middle, y: text.y - 4 }, text.order);
        expect(contrast(text.fill, ground), `${name}: ${text.words}`).toBeGreaterThanOrEqual(4.5);
      }
    }
  },
);

describe('solder dots', () => {
  /** No larger circle is a dot: these cover a line’s end. */
  const DOT = 4;
  it.each(samples)(
    '%s: one at every end of every joint but where a bare component leg goes on alone',
    async (name) => {
      const kit = sample(name);
      const drawing = await drawn(kit);
      const soldered = kit.joints.flatMap(({ kind, from, to }) => {
        const own = [from, to].filter(({ part }) =>
          ['resistor', 'capacitor'].includes(kit.parts.find((one) => one.name === part)?.kind ?? ''),
        );
        return [from, to].filter((end) => {
          const meet = kit.joints.filter((joint) =>
            [joint.from, joint.to].some(({ part, lug }) => part === end.part && lug === end.lug),
          );
          return !(kind === 'leg' && own.includes(end) && meet.length === 1);
        });
      });
      const ends = drawing.wires.flatMap(({ pieces }) => [pieces[0]?.[0], pieces.at(-1)?.at(-1)]);
      const dots = ends.filter(
        (end) =>
          end &&
          drawing.circles.some(
            ({ group, x, y, r }) =>
              group.includes('-joint-') && r <= DOT && Math.hypot(x - end.x, y - end.y) < 0.5,
          ),
      );
      expect(ends).toHaveLength(2 * kit.joints.length);
      expect(dots).toHaveLength(soldered.length);
    },
  );
});
