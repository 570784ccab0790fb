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
  'step-title.ground': 'Masse',
  'step-title.jumpers':
    '{what, select, jumpers {Drahtbrücken} bends {Umgebogene Ösen} other {Drahtbrücken und umgebogene Ösen}}',
  'step-title.components': 'Bauteile',
  'step-title.controls': 'Schalter und Potis',
  'step-title.output': 'Ausgang',
  'step-title.pickups': 'Tonabnehmer',
  'step-title.other': 'Weitere Verbindungen',
  'steps.share': '{title}, Teil {part} von {of}',
  'step-joint.wire': 'Draht{cut} von {from} nach {to}',
  'step-joint.jumper': 'Blanke Drahtbrücke{cut} von {from} nach {to}',
  'step-joint.braid': 'Schirmgeflecht{cut} von {from} nach {to}',
  'steps.leg': '{component}{cut}: ein Beinchen an {to}',
  'steps.bend': '{from} zurückbiegen und an {to} löten',
  'steps.sleeved': 'mit Isolierschlauch',
  'steps.marked': 'Aufdruck {print}',
  'steps.hook':
    '{line}; {ends, select, one {nur einhaken} other {an {end} nur einhaken}}, in Schritt {step} löten',
  'steps.gather': '{line}; an {end} alles Eingehakte mitlöten',
  'steps.why-surface': 'Wird noch einmal erhitzt, da sich an einer Fläche nichts einhaken lässt: {ends}.',
  'steps.why-test':
    '{end}: jetzt gelötet, damit die Verdrahtung geprüft werden kann, und in Schritt {step} noch einmal mit der Ader des Tonabnehmers.',
  'steps.why-waits':
    'An der Öse eines Tonabnehmers nur eingehakt und dort zusammen mit dessen Ader gelötet: {components}.',

  // ── Soldering: tests after a step, and readings
  'test.setting':
    '{switched, select, yes {{switches}, {volume, select, zero {Lautstärke auf 0, andere Regler auf 10} other {alle Regler auf 10}}} other {{volume, select, zero {Lautstärke auf 0, andere Regler auf 10} other {Alle Regler auf 10}}}}',
  'test.short': 'unter 1 Ω',
  'test.open': 'offen',
  'test.value': '{nominal}, von {low} bis {high}',
  'test.open-looks': 'Offen: Das Messgerät zeigt dasselbe wie mit getrennten Messspitzen, zum Beispiel OL.',
  'test.short-looks':
    'Unter 1 Ω: Das Messgerät zeigt fast dasselbe wie mit aneinandergehaltenen Messspitzen.',
  'test.joint': '{from} – {to}',
  'test.missing': 'Zeigt es {reading}: prüfen und nachlöten: {joints}.',
  'test.bridged': 'Zeigt es unter 1 Ω: nach Lot oder einer Litze suchen zwischen {lugs}.',
  'test.lugs': '{from} und {to}',
  'test.values': 'Zeigt es einen anderen Wert: die Werte prüfen von {parts}.',
  'test.by-eye': 'Diese Verbindungen zeigt noch keine Messung, also genau hinsehen: {joints}.',

  // ── Leaflet: headings, parts, tools, cautions

  // ── Leaflet: what each switch position does, loads, fault finding

  // ── Shop page
};
