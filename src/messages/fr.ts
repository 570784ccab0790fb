/** What a customer reads, in French, in ICU MessageFormat: see `en.ts`. */
import type { Messages } from './en.ts';

export const fr: Messages = {
  // ── The kinds of parts, as a parts list names them: in the singular, without an article
  'kind.blend': 'potentiomètre de balance',
  'kind.capacitor': 'condensateur',
  'kind.dual-pot': 'potentiomètre double',
  'kind.four-lead-humbucker': 'micro humbucker, quatre fils',
  'kind.ground-point': 'point de masse',
  'kind.humbucker': 'micro humbucker, deux fils',
  'kind.jack': 'prise jack mono',
  'kind.kill-button': 'bouton-poussoir momentané',
  'kind.lever-3': 'sélecteur à levier, trois positions',
  'kind.lever-4': 'sélecteur à levier, quatre positions',
  'kind.lever-5': 'sélecteur à levier, cinq positions',
  'kind.lever-5-4p': 'sélecteur à levier, quatre pôles, cinq positions',
  'kind.mini-toggle': 'mini-interrupteur à bascule',
  'kind.pot': 'potentiomètre',
  'kind.push-pull': 'potentiomètre push-pull',
  'kind.resistor': 'résistance',
  'kind.rotary': 'commutateur rotatif',
  'kind.single-coil': 'micro simple bobinage',
  'kind.slide': 'interrupteur à glissière',
  'kind.stacked-pot': 'potentiomètre à axes concentriques',
  'kind.stereo-jack': 'prise jack stéréo',
  'kind.switch': 'commutateur',
  'kind.toggle-3': 'sélecteur à bascule, trois positions',

  // ── Colours of wires and bands (IEC 60757, IEC 60062)
  'colour.BK': 'noir',
  'colour.BN': 'brun',
  'colour.RD': 'rouge',
  'colour.OG': 'orange',
  'colour.YE': 'jaune',
  'colour.GN': 'vert',
  'colour.BU': 'bleu',
  'colour.VT': 'violet',
  'colour.GY': 'gris',
  'colour.WH': 'blanc',
  'colour.PK': 'rose',
  'colour.GD': 'or',
  'colour.TQ': 'turquoise',
  'colour.SR': 'argent',

  // ── Drawing: title, key and labels

  // ── Drawing: load cards

  // ── Drawing: response plot

  // ── Soldering: steps and their lines

  // ── Soldering: tests after a step, and readings

  // ── Leaflet: headings, parts, tools, cautions

  // ── Leaflet: what each switch position does, loads, fault finding

  // ── Shop page
};
