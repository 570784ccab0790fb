/** What a customer reads, in German, in ICU MessageFormat: see `en.ts`. */
import type { Messages } from './en.ts';

export const de: Messages = {
  // ── The kinds of parts, as a parts list names them: in the singular, without an article
  'kind.blend': 'Überblendpoti',
  'kind.capacitor': 'Kondensator',
  'kind.dual-pot': 'Stereopoti (zwei Bahnen, eine Achse)',
  'kind.four-lead-humbucker': 'Humbucker, vier Adern',
  'kind.ground-point': 'Massepunkt',
  'kind.humbucker': 'Humbucker, zwei Adern',
  'kind.jack': 'Klinkenbuchse, mono',
  'kind.kill-button': 'Taster',
  'kind.lever-3': 'Hebelschalter, drei Stellungen',
  'kind.lever-4': 'Hebelschalter, vier Stellungen',
  'kind.lever-5': 'Hebelschalter, fünf Stellungen',
  'kind.lever-5-4p': 'Hebelschalter, vier Ebenen, fünf Stellungen',
  'kind.mini-toggle': 'Mini-Kippschalter',
  'kind.pot': 'Potentiometer',
  'kind.push-pull': 'Push-Pull-Potentiometer',
  'kind.resistor': 'Widerstand',
  'kind.rotary': 'Drehschalter',
  'kind.single-coil': 'Single-Coil-Tonabnehmer',
  'kind.slide': 'Schiebeschalter',
  'kind.stacked-pot': 'Doppelachs-Potentiometer',
  'kind.stereo-jack': 'Klinkenbuchse, stereo',
  'kind.switch': 'Schalter',
  'kind.toggle-3': 'Kippschalter, drei Stellungen',

  // ── Colours of wires and bands (IEC 60757, IEC 60062)
  'colour.BK': 'schwarz',
  'colour.BN': 'braun',
  'colour.RD': 'rot',
  'colour.OG': 'orange',
  'colour.YE': 'gelb',
  'colour.GN': 'grün',
  'colour.BU': 'blau',
  'colour.VT': 'violett',
  'colour.GY': 'grau',
  'colour.WH': 'weiß',
  'colour.PK': 'rosa',
  'colour.GD': 'gold',
  'colour.TQ': 'türkis',
  'colour.SR': 'silber',

  // ── Drawing: title, key and labels

  // ── Drawing: load cards

  // ── Drawing: response plot

  // ── Soldering: steps and their lines

  // ── Soldering: tests after a step, and readings

  // ── Leaflet: headings, parts, tools, cautions

  // ── Leaflet: what each switch position does, loads, fault finding

  // ── Shop page
};
