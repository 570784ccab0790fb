/** What a customer reads, in Spanish, in ICU MessageFormat: see `en.ts`. */
import type { Messages } from './en.ts';

export const es: Messages = {
  // ── The kinds of parts, as a parts list names them: in the singular, without an article
  'kind.blend': 'potenciómetro de mezcla',
  'kind.capacitor': 'condensador',
  'kind.dual-pot': 'potenciómetro doble',
  'kind.four-lead-humbucker': 'pastilla humbucker, cuatro hilos',
  'kind.ground-point': 'punto de masa',
  'kind.humbucker': 'pastilla humbucker, dos hilos',
  'kind.jack': 'jack de salida mono',
  'kind.kill-button': 'pulsador momentáneo',
  'kind.lever-3': 'selector de palanca, tres posiciones',
  'kind.lever-4': 'selector de palanca, cuatro posiciones',
  'kind.lever-5': 'selector de palanca, cinco posiciones',
  'kind.lever-5-4p': 'selector de palanca, cuatro polos, cinco posiciones',
  'kind.mini-toggle': 'mini interruptor de palanca',
  'kind.pot': 'potenciómetro',
  'kind.push-pull': 'potenciómetro push-pull',
  'kind.resistor': 'resistencia',
  'kind.rotary': 'conmutador rotativo',
  'kind.single-coil': 'pastilla de bobina simple',
  'kind.slide': 'interruptor deslizante',
  'kind.stacked-pot': 'potenciómetro concéntrico',
  'kind.stereo-jack': 'jack de salida estéreo',
  'kind.switch': 'conmutador',
  'kind.toggle-3': 'interruptor de palanca, tres posiciones',

  // ── Colours of wires and bands (IEC 60757, IEC 60062)
  'colour.BK': 'negro',
  'colour.BN': 'marrón',
  'colour.RD': 'rojo',
  'colour.OG': 'naranja',
  'colour.YE': 'amarillo',
  'colour.GN': 'verde',
  'colour.BU': 'azul',
  'colour.VT': 'violeta',
  'colour.GY': 'gris',
  'colour.WH': 'blanco',
  'colour.PK': 'rosa',
  'colour.GD': 'oro',
  'colour.TQ': 'turquesa',
  'colour.SR': 'plata',

  // ── Drawing: title, key and labels

  // ── Drawing: load cards

  // ── Drawing: response plot

  // ── Soldering: steps and their lines

  // ── Soldering: tests after a step, and readings

  // ── Leaflet: headings, parts, tools, cautions

  // ── Leaflet: what each switch position does, loads, fault finding

  // ── Shop page
};
