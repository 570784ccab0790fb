/** What the trade calls parts and choices, and which of these a word stands for. */
import { closestName } from '../common/nearest.ts';

/** Parts that the trade has and this program does not yet; common practice, no source. */
const UNSUPPORTED = /push-?push|preamp|diode|transformer|inductor/;
/** Switches that a kit can describe itself. */
const SWITCHES = /toggle|rotary|slide|kill|button|-?way|lever-|-?pole|mini|switch/;

/** What a word names, if it is such a part: one that is missing, or a switch that the kit can describe. */
export function unsupported(word: string): 'missing' | 'switch' | undefined {
  const plain = word.trim().toLowerCase().replaceAll(' ', '-');
  return UNSUPPORTED.test(plain) ? 'missing' : SWITCHES.test(plain) ? 'switch' : undefined;
}

/** What the trade calls some choices. */
const SYNONYMS: Readonly<Record<string, string>> = {
  audio: 'log',
  logarithmic: 'log',
  lin: 'linear',
  antilog: 'reverse-log',
  'anti-log': 'reverse-log',
  'reverse-audio': 'reverse-log',
  potentiometer: 'pot',
  'no-load': 'pot',
  'no-load-pot': 'pot',
  stacked: 'stacked-pot',
  concentric: 'stacked-pot',
  'concentric-pot': 'stacked-pot',
  'dual-gang': 'dual-pot',
  'dual-gang-pot': 'dual-pot',
  'stereo-pot': 'dual-pot',
  'blend-pot': 'blend',
  'four-lead': 'four-lead-humbucker',
  toggle: 'toggle-3',
  'toggle-switch': 'toggle-3',
  'three-way-toggle': 'toggle-3',
  'mini-switch': 'mini-toggle',
  'rotary-switch': 'rotary',
  'slide-switch': 'slide',
  'slider-switch': 'slide',
  'kill-switch': 'kill-button',
  killswitch: 'kill-button',
  'push-button': 'kill-button',
  'three-way': 'lever-3',
  '3-way': 'lever-3',
  'four-way': 'lever-4',
  '4-way': 'lever-4',
  'five-way': 'lever-5',
  '5-way': 'lever-5',
  'four-pole': 'lever-5-4p',
  '4-pole': 'lever-5-4p',
  cap: 'capacitor',
  link: 'jumper',
  sleeve: 'sleeving',
  tube: 'sleeving',
  cable: 'output-load',
  amplifier: 'output-load',
  color: 'colour',
};

/** The choice a word stands for in the trade, or else the one it is nearest to. */
export function meantBy(word: string, allowed: readonly string[]): string | undefined {
  const plain = word.trim().toLowerCase().replaceAll(' ', '-');
  const synonym = Object.hasOwn(SYNONYMS, plain) ? SYNONYMS[plain] : undefined;
  return synonym !== undefined && allowed.includes(synonym) ? synonym : closestName(word, allowed);
}
