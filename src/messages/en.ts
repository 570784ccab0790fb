/** What a customer reads, in English, in ICU MessageFormat. Every key stands in every language, with the same arguments. */
export const en = {
  // ── The kinds of parts, as a parts list names them: in the singular, without an article
  'kind.blend': 'blend pot',
  'kind.capacitor': 'capacitor',
  'kind.dual-pot': 'dual-gang pot',
  'kind.four-lead-humbucker': 'humbucker pickup, four leads',
  'kind.ground-point': 'ground point',
  'kind.humbucker': 'humbucker pickup, two leads',
  'kind.jack': 'mono output jack',
  'kind.kill-button': 'momentary push button',
  'kind.lever-3': 'three-way lever switch',
  'kind.lever-4': 'four-way lever switch',
  'kind.lever-5': 'five-way lever switch',
  'kind.lever-5-4p': 'four-pole five-way lever switch',
  'kind.mini-toggle': 'mini toggle switch',
  'kind.pot': 'pot',
  'kind.push-pull': 'push-pull pot',
  'kind.resistor': 'resistor',
  'kind.rotary': 'rotary switch',
  'kind.single-coil': 'single coil pickup',
  'kind.slide': 'slide switch',
  'kind.stacked-pot': 'stacked pot',
  'kind.stereo-jack': 'stereo output jack',
  'kind.switch': 'switch',
  'kind.toggle-3': 'three-way toggle switch',

  // ── Colours of wires and bands (IEC 60757, IEC 60062)
  'colour.BK': 'black',
  'colour.BN': 'brown',
  'colour.RD': 'red',
  'colour.OG': 'orange',
  'colour.YE': 'yellow',
  'colour.GN': 'green',
  'colour.BU': 'blue',
  'colour.VT': 'violet',
  'colour.GY': 'grey',
  'colour.WH': 'white',
  'colour.PK': 'pink',
  'colour.GD': 'gold',
  'colour.TQ': 'turquoise',
  'colour.SR': 'silver',

  // ── Drawing: title, key and labels

  // ── Drawing: load cards

  // ── Drawing: response plot

  // ── Soldering: steps and their lines

  // ── Soldering: tests after a step, and readings

  // ── Leaflet: headings, parts, tools, cautions

  // ── Leaflet: what each switch position does, loads, fault finding

  // ── Shop page
};

export type MessageKey = keyof typeof en;
export type Messages = Readonly<Record<MessageKey, string>>;
