/**
 * The padding choice on sixty random mixed kits, judged by a solver and by rules of the tests' own: what is promised comes true, no
 * offer is worse than what is there, and nothing is refused where a resistor at another lug would help. References are those of the
 * handbook's plain harness: 250 k and 250 k for a single coil, 500 k and 500 k for a humbucker, 22 nF. Common practice, no source.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import {
  type Alternative,
  choosePads,
  type Match,
  type PadAdvice,
  type PadPlan,
} from '../../src/analyse/index.ts';
import { seeded } from '../../src/common/random.ts';
import { type Compact, makeCircuit } from './kits.ts';
import { type OwnLoad, ownLoads } from './own-loads.ts';

const KITS = 60;
const SINGLE = 'single-coil';

/** A mixed set: one to three pickups on a lever or none, one volume, none to two tones, resistors where they should and should not be. */
function mixedKit(seed: number): Compact {
  const random = seeded(seed);
  for (let i = 0; i < 8; i++) random();
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  const names = ['bridge', 'middle', 'neck'].slice(0, pick([1, 2, 2, 3, 3]));
  const lever = names.length === 1 ? undefined : pick(['lever-5', 'lever-5', 'lever-3', undefined]);
  const parts: Record<string, Compact['parts'][string]> = {};
  const joints = ['volume.1 > volume.case', 'output.sleeve > volume.case', 'volume.2 > output.tip'];
  const input = lever ? 'selector.A0' : 'volume.3';
  const lugOf = (i: number): string => (lever ? `selector.A${i + 1}` : 'volume.3');
  for (const [i, name] of names.entries()) {
    parts[name] = { kind: pick([SINGLE, 'humbucker']) };
    // Now and then the leads are exchanged.
    const [hot, ground] = random() < 0.15 ? ['ground', 'hot'] : ['hot', 'ground'];
    joints.push(`${name}.${hot} > ${lugOf(i)}`, `${name}.${ground} > volume.case`);
  }
  if (lever) {
    parts.selector = { kind: lever };
    joints.push('selector.A0 > volume.3');
  }
  parts.volume = { kind: 'pot', value: pick(['250k', '500k', '500k', '1M']) };
  parts.output = { kind: 'jack' };
  for (let i = 0; i < pick([0, 1, 1, 2]); i++) {
    parts[`tone-${i}`] = { kind: 'pot', value: pick(['250k', '500k']) };
    parts[`cap-${i}`] = { kind: 'capacitor', value: pick(['22n', '47n']) };
    joints.push(`tone-${i}.1 > cap-${i}.1`, `cap-${i}.2 > volume.case`, `tone-${i}.case > volume.case`);
    joints.push(`tone-${i}.2 > ${lever && random() < 0.6 ? `selector.B${1 + i}` : input}`);
  }
  if (lever) joints.push('selector.A0 > selector.B0');
  for (let i = 0; i < pick([0, 1, 1, 2]); i++) {
    parts[`r-${i}`] = { kind: 'resistor', value: pick(['220k', '330k', '470k', '470k', '1M']) };
    const at = pick([input, lugOf(0), lugOf(names.length - 1), 'volume.3']);
    joints.push(`r-${i}.1 > ${at}`, `r-${i}.2 > volume.case`);
  }
  return { kit: `mixed-${seed}`, parts, joints };
}

const OMEGA = 2 * Math.PI * 1000;
/** DC and signal load of the plain harness, by hand. */
function reference(compact: Compact, pickup: string): Readonly<Record<Match, number>> {
  const ohms = compact.parts[pickup]?.kind === SINGLE ? 250e3 : 500e3;
  const reactance = 1 / (OMEGA * 22e-9);
  return { dc: ohms, signal: 1 / (1 / ohms + ohms / (ohms ** 2 + reactance ** 2)) };
}
const off = (load: number, wanted: number): number => Math.abs(Math.log(load / wanted));

const loadOf = (loads: readonly OwnLoad[], match: Match, index: number, pickup: string): number =>
  loads.find((one) => one.index === index && one.pickup === pickup)?.[match] ?? NaN;

/** Where each pickup is judged: with the fewest others. */
function judgedAt(loads: readonly OwnLoad[], pickup: string): number {
  const count = (index: number): number => loads.filter((one) => one.index === index).length;
  const own = loads.filter((one) => one.pickup === pickup).map(({ index }) => index);
  return own.filter((index) => count(index) === Math.min(...own.map(count)))[0] ?? -1;
}

/** Whether a change helps a pickup and hurts none where it is judged. */
function helps(
  compact: Compact,
  match: Match,
  now: readonly OwnLoad[],
  after: readonly OwnLoad[],
  pickup: string,
) {
  const change = (name: string): number => {
    const index = judgedAt(now, name);
    const wanted = reference(compact, name)[match];
    return off(loadOf(after, match, index, name), wanted) - off(loadOf(now, match, index, name), wanted);
  };
  const all = [...new Set(now.map((one) => one.pickup))];
  return change(pickup) < -Math.log(1.01) && all.every((name) => change(name) <= Math.log(1.1));
}

type Edit = (compact: Compact) => Compact;
const withPart =
  (name: string, ohms: number, from: string, to: string): Edit =>
  (compact) => ({
    ...compact,
    parts: { ...compact.parts, [name]: { kind: 'resistor', value: ohms } },
    joints: [
      ...compact.joints.filter((joint) => !String(joint).includes(`${name}.`)),
      `${name}.1 > ${from}`,
      `${name}.2 > ${to}`,
    ],
  });
const without =
  (name: string): Edit =>
  ({ parts, joints, ...rest }) => ({
    ...rest,
    parts: Object.fromEntries(Object.entries(parts).filter(([key]) => key !== name)),
    joints: joints.filter((joint) => !String(joint).includes(`${name}.`)),
  });
const withJoint =
  (joint: string): Edit =>
  (compact) => ({ ...compact, joints: [...compact.joints, joint] });
const withValue =
  (name: string, value: number): Edit =>
  (compact) => ({
    ...compact,
    parts: {
      ...compact.parts,
      [name]: { ...compact.parts[name], kind: compact.parts[name]?.kind ?? '', value },
    },
  });
const inTurn = (edits: readonly Edit[], compact: Compact): Compact =>
  edits.reduce((done, edit) => edit(done), compact);

/** What is to be done for an alternative, in the test's own words; pads the pickup has now go first where it says so. */
function editsOf(alternative: Alternative, replaces: readonly string[]): readonly Edit[] {
  const gone = replaces.map(without);
  switch (alternative.kind) {
    case 'elsewhere':
      return [
        ...gone,
        withPart(alternative.pad.part, alternative.pad.ohms, alternative.pad.from, alternative.pad.to),
      ];
    case 'spare-pole':
      return [
        ...gone,
        withPart(alternative.pad.part, alternative.pad.ohms, alternative.pad.from, alternative.pad.to),
        ...(alternative.pad.wires ?? []).map(([a, b]) => withJoint(`${a} > ${b}`)),
      ];
    case 'pots':
      return [...gone, ...Object.entries(alternative.pots).map(([name, ohms]) => withValue(name, ohms))];
    case 'move':
      return alternative.pads.map(({ part, ohms, from, to }) => withPart(part, ohms, from, to));
    case 'remove':
      return [without(alternative.part)];
    case 'tone-jumper':
      return [withJoint(`${alternative.from} > ${alternative.to}`)];
  }
}

/** All that is wrong with what is advised for a kit. */
function errorsIn(compact: Compact, match: Match, plan: PadPlan): readonly string[] {
  const errors: string[] = [];
  // Each is advised with the resistors chosen before it fitted.
  let done = compact;
  for (const advice of plan.advice) {
    const now = ownLoads(makeCircuit(done));
    const say = (what: string): void =>
      void errors.push(`${compact.kit} ${match}, ${advice.pickup}: ${what}`);
    if (advice.kind === 'silent') continue;
    const [wanted, index] = [reference(compact, advice.pickup)[match], judgedAt(now, advice.pickup)];
    if (Math.abs(advice.reference / wanted - 1) > 1e-6)
      say(`reference ${advice.reference}, by hand ${wanted}`);
    const alternatives = 'alternatives' in advice ? advice.alternatives : [];
    const replaces = advice.kind === 'pad' ? advice.replaces : [];
    for (const one of alternatives) {
      const after = ownLoads(makeCircuit(inTurn(editsOf(one, replaces), done)));
      if (!helps(compact, match, now, after, advice.pickup)) say(`${one.kind} is worse than now`);
      for (const { index: i, pickup, after: promised } of one.effects)
        for (const [key, value] of [
          ['dc', promised.dcLoad],
          ['signal', promised.signalLoad],
        ] as const)
          if (Math.abs(value / loadOf(after, key, i, pickup) - 1) > 1e-6)
            say(`${one.kind} promises ${value}`);
    }
    if (advice.kind === 'pad') {
      const next = inTurn(
        [...advice.replaces.map(without), withPart(advice.part, advice.chosen.ohms, advice.from, advice.to)],
        done,
      );
      const after = ownLoads(makeCircuit(next));
      const load = loadOf(after, match, index, advice.pickup);
      if (Math.abs(advice.chosen.load / load - 1) > 1e-6)
        say(`promises ${advice.chosen.load}, solved ${load}`);
      if (!advice.present && !(off(load, wanted) < off(loadOf(now, match, index, advice.pickup), wanted)))
        say('the resistor makes the load worse');
      for (const one of now) {
        const [before, then] = [one[match], loadOf(after, match, one.index, one.pickup)];
        const own = reference(compact, one.pickup)[match];
        const judged = one.pickup === advice.pickup && one.index === index;
        const worse = off(then, own) - off(before, own) > Math.log(1.1);
        const said = advice.worse.some(
          (effect) => effect.index === one.index && effect.pickup === one.pickup,
        );
        if (!judged && worse !== said)
          say(`worse for ${one.pickup} in ${one.index}: ${worse}, said: ${said}`);
      }
      done = advice.present ? done : next;
    }
    const refused: readonly PadAdvice['kind'][] = ['too-heavy', 'out-of-reach', 'needless'];
    if (refused.includes(advice.kind) && alternatives.length === 0) {
      const found = movesThatHelp(compact, done, match, now, advice.pickup);
      if (found.length > 0) say(`${advice.kind}, but it helps to move ${found.join(', ')}`);
    }
  }
  return errors;
}

/** Every resistor at every pickup's lead that carries signal, tried. */
function movesThatHelp(
  compact: Compact,
  done: Compact,
  match: Match,
  now: readonly OwnLoad[],
  pickup: string,
) {
  const leads = done.joints
    .map(String)
    .filter((joint) => /^(bridge|middle|neck)\./.test(joint) && !joint.endsWith('.case'))
    .map((joint) => joint.split(' > ')[1] ?? '');
  return Object.entries(done.parts).flatMap(([name, { kind, value }]) =>
    kind !== 'resistor'
      ? []
      : [...new Set(leads)].flatMap((lug) => {
          const text = String(value);
          const ohms = text.endsWith('k')
            ? Number(text.slice(0, -1)) * 1e3
            : text === '1M'
              ? 1e6
              : Number(text);
          const moved = withPart(name, ohms, lug, 'volume.case')(done);
          return helps(compact, match, now, ownLoads(makeCircuit(moved)), pickup)
            ? [`${name} to ${lug}`]
            : [];
        }),
  );
}

describe(`${KITS} random mixed kits`, () => {
  const kits = Array.from({ length: KITS }, (_, i) => mixedKit(i + 1));
  const planned = (match: Match) =>
    kits.map((kit) => [kit, choosePads(makeCircuit(kit), { match })] as const);
  let plans: Readonly<Record<Match, ReturnType<typeof planned>>>;
  beforeAll(() => {
    plans = { dc: planned('dc'), signal: planned('signal') };
  }, 240_000);

  it.each(['dc', 'signal'] as const)(
    '%s: promises come true, nothing is worse, nothing is refused that helps',
    { timeout: 240_000 },
    (match) => {
      expect(plans[match].flatMap(([kit, plan]) => errorsIn(kit, match, plan))).toEqual([]);
    },
  );

  it('are of every sort', () => {
    const advice = [...plans.dc, ...plans.signal].flatMap(([, plan]) => plan.advice);
    const sorts = new Set(advice.map(({ kind }) => kind));
    for (const kind of ['pad', 'fits', 'too-heavy', 'needless', 'shares', 'no-tone'] as const)
      expect(sorts, kind).toContain(kind);
    const offers = new Set(
      advice.flatMap((one) => ('alternatives' in one ? one.alternatives : [])).map(({ kind }) => kind),
    );
    for (const kind of ['elsewhere', 'pots', 'move', 'remove', 'tone-jumper'] as const)
      expect(offers, kind).toContain(kind);
  });
});
