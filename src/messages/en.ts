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
  'step-title.ground': 'Ground',
  'step-title.jumpers': '{what, select, jumpers {Jumpers} bends {Bent lugs} other {Jumpers and bent lugs}}',
  'step-title.components': 'Components',
  'step-title.controls': 'Switch and pots',
  'step-title.output': 'Output',
  'step-title.pickups': 'Pickups',
  'step-title.other': 'Further joints',
  'steps.share': '{title}, part {part} of {of}',
  'step-joint.wire': 'Wire{cut} from {from} to {to}',
  'step-joint.jumper': 'Bare jumper{cut} from {from} to {to}',
  'step-joint.braid': 'Braid{cut} from {from} to {to}',
  'steps.leg': '{component}{cut}: one leg to {to}',
  'steps.bend': 'Bend {from} back and solder it to {to}',
  'steps.sleeved': 'sleeved',
  'steps.marked': 'marked {print}',
  'steps.hook': '{line}; {ends, select, one {hook only} other {at {end} hook only}}, solder in step {step}',
  'steps.gather': '{line}; at {end} solder all that is hooked',
  'steps.why-surface': 'Heated again, as nothing can be hooked to a surface: {ends}.',
  'steps.why-test':
    '{end}: soldered now so that the harness can be tested, and again in step {step} with the pickup’s lead.',
  'steps.why-waits':
    'Only hooked at a pickup’s lug, and soldered there together with the pickup’s lead: {components}.',

  // ── Soldering: tests after a step, and readings
  'test.setting':
    '{switched, select, yes {{switches}, {volume, select, zero {volume on 0, other controls on 10} other {all controls on 10}}} other {{volume, select, zero {Volume on 0, other controls on 10} other {All controls on 10}}}}',
  'test.short': 'below 1 Ω',
  'test.open': 'open',
  'test.value': '{nominal}, from {low} to {high}',
  'test.open-looks': 'Open: the meter shows what it shows with its probes apart, such as OL.',
  'test.short-looks': 'Below 1 Ω: the meter shows nearly what it shows with its probes touching.',
  'test.joint': '{from} – {to}',
  'test.missing': 'If it reads {reading}, check and solder again: {joints}.',
  'test.bridged': 'If it reads below 1 Ω: look for solder or a strand between {lugs}.',
  'test.lugs': '{from} and {to}',
  'test.values': 'If it reads another value: check the values of {parts}.',
  'test.by-eye': 'No reading shows these joints by now, so look at them closely: {joints}.',

  // ── Leaflet: headings, parts, tools, cautions

  // ── Leaflet: what each switch position does, loads, fault finding

  // ── Shop page
};

export type MessageKey = keyof typeof en;
export type Messages = Readonly<Record<MessageKey, string>>;
