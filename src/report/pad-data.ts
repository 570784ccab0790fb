/** The padding choice as plain data: ohms, unrounded; an open circuit is `"open"` once printed. */
import type { Alternative, Effect, PadAdvice, PadOption, PadPlan } from '../analyse/index.ts';
import type { Circuit } from '../circuit/circuit.ts';
import { choiceData, substitutionData } from './stock-data.ts';

export const padData = (circuit: Circuit, plan: PadPlan): object => ({
  kit: circuit.kit.id,
  match: plan.match,
  choice: plan.series,
  ...choiceData(circuit.kit, plan.series),
  ...substitutionData(circuit.kit),
  pickups: Object.fromEntries(plan.advice.map((advice) => [advice.pickup, adviceData(circuit, advice)])),
  effects: plan.effects.map(effectData),
});

function adviceData(circuit: Circuit, advice: PadAdvice): object {
  if (advice.kind === 'silent') return { verdict: advice.kind };
  const { kind, pickup: _, state, ...figures } = advice;
  const base = { verdict: kind, switches: circuit.states[state]?.positions ?? {}, ...figures };
  switch (advice.kind) {
    case 'pad':
      return {
        ...base,
        chosen: optionData(advice.chosen),
        worse: advice.worse.map(effectData),
        ...(advice.below ? { below: optionData(advice.below) } : {}),
        ...(advice.above ? { above: optionData(advice.above) } : {}),
        alternatives: advice.alternatives.map((one) => alternativeData(circuit, one)),
      };
    case 'too-heavy':
    case 'needless':
    case 'no-tone':
      return { ...base, alternatives: advice.alternatives.map((one) => alternativeData(circuit, one)) };
    case 'no-stock':
      return { ...base, nearest: optionData(advice.nearest) };
    default:
      return base;
  }
}

const optionData = (option: PadOption): object => ({ ...option, effects: option.effects.map(effectData) });

function alternativeData(circuit: Circuit, alternative: Alternative): object {
  const effects = alternative.effects.map(effectData);
  const worse = alternative.worse.map(effectData);
  if (alternative.kind !== 'spare-pole') return { ...alternative, effects, worse };
  return {
    ...alternative,
    positions: alternative.states.map((i) => circuit.states[i]?.positions),
    effects,
    worse,
  };
}

const effectData = ({ state, pickup, before, after, reference, percent }: Effect): object => ({
  switches: state.positions,
  sounding: state.sounding,
  pickup,
  before,
  after,
  reference,
  percent,
});
