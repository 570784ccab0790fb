/**
 * Random kits, one a seed, of shapes that nobody has thought of: one to six pickups in series, in parallel and mixed, some
 * with their leads swapped, resistors and capacitors in series and across anywhere, none to three switches, none to
 * four pots, several joints on a leg, wires beside its own, and labels of 1 to 24 characters. Whatever they are as instruments, each is a
 * circuit in which something sounds in nearly every position, written as a person would write it.
 */
import { seeded } from '../../src/common/random.ts';
import type { Description } from './circuits.ts';

type Written = Readonly<Record<string, unknown>>;
type Node = number;

const GROUND: Node = 0;
const LETTERS = 'iIlWMmjgÄÖÜäöüßéÅQ2 7k/-.()&';
const WORDS = [
  'Tonabnehmeranschluss',
  'WWWWWWWWWWWWWWWWWWWWWWWW',
  'i',
  'W',
  'Größe',
  'Steghumbucker',
  'Neck',
  'Äquivalenzwiderstand',
  'Pickup (reversed)',
  'Q/2nd coil',
];
const COLOURS = ['BK', 'RD', 'OG', 'YE', 'GN', 'BU', 'VT', 'WH', 'PK', 'TQ', 'GNYE', 'RDBU', 'BKWH', 'GYPK'];
const RESISTORS = ['1k', '47k', '150k', '237k', '470k', '1M', '2.2M', '10M'];
const CAPACITORS = ['100p', '180p', '680p', '1.2n', '4.7n', '22n', '47n', '0.1u'];

class Draft {
  readonly parts: Record<string, Written> = {};
  readonly #random: () => number;
  readonly #at = new Map<Node, string[]>();
  #next = 1;
  /** Legs that end somewhere; what else is joined to one of them is a wire. */
  readonly #ended = new Set<string>();

  constructor(random: () => number) {
    this.#random = random;
  }

  chance = (share: number): boolean => this.#random() < share;
  upTo = (count: number): number => Math.floor(this.#random() * count);
  pick<T>(from: readonly T[]): T {
    const found = from[this.upTo(from.length)];
    if (found === undefined) throw new Error('nothing to pick from');
    return found;
  }

  node = (): Node => this.#next++;

  add(name: string, fields: Written): void {
    this.parts[name] = this.chance(0.6) ? { ...fields, label: this.#label() } : fields;
  }

  put(lug: string, node: Node): void {
    this.#at.set(node, [...(this.#at.get(node) ?? []), lug]);
  }

  #label(): string {
    if (this.chance(0.4)) return this.pick(WORDS);
    const length = 1 + this.upTo(24);
    const letters = Array.from({ length }, () => this.pick([...LETTERS])).join('');
    return letters.replace(/ +/g, ' ').trim() || 'x';
  }

  /** A resistor or a capacitor between two nodes. */
  component(
    a: Node,
    b: Node,
    kind: 'resistor' | 'capacitor' = this.chance(0.6) ? 'resistor' : 'capacitor',
  ): void {
    const name = `${kind === 'resistor' ? 'r' : 'c'}${Object.keys(this.parts).length}`;
    const value = this.pick(kind === 'resistor' ? RESISTORS : CAPACITORS);
    this.add(name, {
      kind,
      value,
      ...(kind === 'resistor' && this.chance(0.5) ? { tolerance: this.pick(['1%', '5%']) } : {}),
      ...(this.chance(0.3) ? { sleeving: this.pick([1, 2, 'both']) } : {}),
    });
    this.put(`${name}.1`, a);
    this.put(`${name}.2`, b);
  }

  /** Joints that hold every node's lugs together, each lug with no more than it has room for. */
  joints(): readonly Written[] {
    const joints: Written[] = [];
    const taken = new Map<string, number>();
    const room = (lug: string): number => (lug.endsWith('.case') ? 9 : 3) - (taken.get(lug) ?? 0);
    for (const lugs of this.#at.values()) {
      // Cases first, as what carries ground is soldered to them.
      const order = [...lugs].sort((a, b) => Number(b.endsWith('.case')) - Number(a.endsWith('.case')));
      const done: string[] = [];
      for (const lug of order) {
        const free = done.filter((one) => room(one) > 0);
        if (free.length > 0) {
          // Two joints and more on one lug or leg are what must be drawn apart.
          const to = this.chance(0.5) ? (free[0] ?? '') : this.pick(free);
          joints.push(this.#joint(lug, to));
          for (const end of [lug, to]) taken.set(end, (taken.get(end) ?? 0) + 1);
        }
        done.push(lug);
      }
    }
    return joints;
  }

  #joint(from: string, to: string): Written {
    const [a = '', b = ''] = [from, to].map((lug) => lug.split('.')[0]);
    const isLeg = (part: string): boolean => /^(resistor|capacitor)$/.test(String(this.parts[part]?.kind));
    const text = this.chance(0.5) ? `${from} > ${to}` : `${to} > ${from}`;
    const leg = [from, to].find((lug, i) => isLeg(i === 0 ? a : b) && !this.#ended.has(lug));
    if (leg !== undefined) {
      this.#ended.add(leg);
      return { leg: text };
    }
    if (a === b && to.endsWith('.case') && this.chance(0.7)) return { bend: `${from} > ${to}` };
    if (a === b && this.chance(0.8)) return { jumper: text };
    if (from.endsWith('.ground') && to.endsWith('.case') && this.chance(0.2)) return { braid: text };
    return { wire: text, ...(this.chance(0.5) ? { colour: this.pick(COLOURS) } : {}) };
  }
}

/** Pickups between two nodes: one, or two groups of them end to end or side by side. */
function pickups(draft: Draft, names: readonly string[], top: Node, bottom: Node): void {
  const [only] = names;
  if (names.length > 1) {
    const cut = 1 + draft.upTo(names.length - 1);
    const [first, second] = [names.slice(0, cut), names.slice(cut)];
    const middle = draft.chance(0.5) ? draft.node() : undefined;
    pickups(draft, first, top, middle ?? bottom);
    pickups(draft, second, middle ?? top, bottom);
    return;
  }
  if (only === undefined) return;
  draft.add(only, { kind: draft.pick(['single-coil', 'humbucker']) });
  let [hot, ground] = [top, bottom];
  if (draft.chance(0.15)) {
    hot = draft.node();
    draft.component(top, hot);
  }
  if (draft.chance(0.05)) {
    ground = draft.node();
    draft.component(ground, bottom, 'resistor');
  }
  if (draft.chance(0.15)) draft.component(hot, draft.chance(0.5) ? ground : GROUND, 'resistor');
  if (draft.chance(0.12)) [hot, ground] = [ground, hot];
  draft.put(`${only}.hot`, hot);
  draft.put(`${only}.ground`, ground);
}

function pot(draft: Draft, name: string): void {
  draft.add(name, {
    kind: 'pot',
    value: draft.pick(['100k', '250k', '333k', '500k', '1M']),
    taper: draft.pick(['linear', 'log', 'reverse-log']),
  });
  draft.put(`${name}.case`, GROUND);
}

/** Voices on the throws of a lever; answers the node of its commons. */
function select(draft: Draft, name: string, voices: readonly Node[]): Node {
  draft.add(name, { kind: draft.pick(['lever-3', 'lever-5']) });
  const out = draft.node();
  draft.put(`${name}.A0`, out);
  [1, 2, 3].forEach((n) => {
    draft.put(`${name}.A${n}`, voices[(n - 1) % voices.length] ?? GROUND);
  });
  const second = draft.pick(['free', 'free', 'voices', 'voices', 'pads']);
  if (second === 'voices') {
    draft.put(`${name}.B0`, out);
    for (const n of [1, 2, 3]) if (draft.chance(0.5)) draft.put(`${name}.B${n}`, draft.pick(voices));
  } else if (second === 'pads') {
    draft.put(`${name}.B0`, GROUND);
    for (const n of [1, 2, 3])
      if (draft.chance(0.5)) {
        const pad = draft.node();
        draft.component(draft.pick([out, ...voices]), pad, 'resistor');
        draft.put(`${name}.B${n}`, pad);
      }
  }
  return out;
}

/** A lever in the way of the signal, or one that lays something across it; answers where the signal goes on. */
function vary(draft: Draft, name: string, signal: Node): Node {
  draft.add(name, { kind: draft.pick(['lever-3', 'lever-5']) });
  draft.put(`${name}.A0`, signal);
  const across = draft.chance(0.5);
  const on = across ? signal : draft.node();
  for (const n of [1, 2, 3]) {
    const thrown = draft.node();
    if (across && draft.chance(0.3)) continue;
    draft.put(`${name}.A${n}`, !across && n === 1 ? on : thrown);
    if (across) draft.component(thrown, GROUND);
    else if (n > 1) draft.component(thrown, on);
  }
  return on;
}

/** The description of one random kit; the same for the same seed. */
export function randomKit(seed: number): Description {
  const random = seeded(seed);
  // Neighbouring seeds begin alike.
  for (let i = 0; i < 8; i++) random();
  const draft = new Draft(random);
  const count = 1 + draft.upTo(6);
  const names = Array.from({ length: count }, (_, i) => `p${i + 1}`);
  const switches = draft.pick([0, 0, 1, 1, 1, 2, 2, 3]);
  const groups = switches === 0 || count === 1 ? 1 : 1 + draft.upTo(Math.min(3, count));
  const voices = Array.from({ length: groups }, (_, i) => {
    const own = names.filter((_, k) => k % groups === i);
    const top = draft.node();
    pickups(draft, own, top, GROUND);
    return top;
  });
  let pots = draft.upTo(5);
  // A volume for each voice before the switch, of which each keeps its own.
  const turned = voices.map((voice, i) => {
    if (groups < 2 || pots < groups || i > 2 || !draft.chance(0.3)) return voice;
    pots--;
    const [name, out] = [`volume-${i + 1}`, draft.node()];
    pot(draft, name);
    draft.put(`${name}.2`, voice);
    draft.put(`${name}.3`, out);
    draft.put(`${name}.1`, GROUND);
    return out;
  });
  let signal = switches === 0 ? (turned[0] ?? GROUND) : select(draft, 'selector', turned);
  for (let s = 1; s < switches; s++) signal = vary(draft, `lever-${s + 1}`, signal);
  if (draft.chance(0.15)) {
    const on = draft.node();
    draft.component(signal, on);
    signal = on;
  }
  if (draft.chance(0.2)) draft.component(signal, GROUND, 'resistor');
  let tip = signal;
  if (pots > 0) {
    pots--;
    pot(draft, 'volume');
    tip = draft.node();
    draft.put('volume.3', signal);
    draft.put('volume.2', tip);
    draft.put('volume.1', GROUND);
    if (draft.chance(0.4)) {
      const between = draft.chance(0.3) ? draft.node() : tip;
      draft.component(signal, between, 'capacitor');
      if (between !== tip || draft.chance(0.5))
        draft.component(between === tip ? signal : between, tip, 'resistor');
    }
  }
  for (let t = 1; pots > 0; t++, pots--) {
    const [name, thrown] = [`tone-${t}`, draft.node()];
    pot(draft, name);
    draft.put(`${name}.1`, draft.pick([signal, signal, tip, ...turned]));
    draft.put(`${name}.2`, thrown);
    draft.component(thrown, GROUND, 'capacitor');
  }
  if (draft.chance(0.1)) {
    const on = draft.node();
    draft.component(tip, on, 'resistor');
    tip = on;
  }
  draft.add('output', { kind: 'jack' });
  draft.put('output.sleeve', GROUND);
  draft.put('output.tip', tip);
  for (let p = 1; p <= draft.pick([0, 0, 1, 1, 2, 3]); p++) {
    draft.add(`point-${p}`, { kind: 'ground-point' });
    draft.put(`point-${p}.1`, GROUND);
  }
  return {
    kit: `random-${seed}`,
    title: `Random harness ${seed}`,
    parts: draft.parts,
    joints: draft.joints(),
  };
}
