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
  'leaflet.kind': 'Wiring kit: assembly instructions',
  'leaflet.title': '{title}: assembly instructions',
  'leaflet.kit': 'Kit {id}',
  'leaflet.revision': 'Revision {mark}',
  'leaflet.contents': 'Contents',
  'leaflet.drawing': 'Wiring drawing',
  'leaflet.parts': 'Parts',
  'leaflet.parts-say': 'Tick off every part before you start. Do not start if one is missing or damaged.',
  'leaflet.quantity': 'Qty',
  'leaflet.part': 'Part',
  'leaflet.picture': 'Picture',
  'leaflet.value': 'Value',
  'leaflet.recognise': 'How to recognise it',
  'leaflet.done': 'Done',
  'leaflet.bands': 'Bands: {bands}',
  'leaflet.printed': 'Marked {code}',
  'leaflet.measures': 'Measures about {value} across its leads',
  'leaflet.lugs': '{count, plural, one {# lug} other {# lugs}}: {names}',
  'leaflet.two-colours': '{first} and {second}',
  'leaflet.tools': 'Tools',
  'tool.iron': 'Soldering iron, 30 to 60 W, with a stand, and a damp sponge or brass wool',
  'tool.solder': 'Solder for electronics with a flux core, lead-free for preference',
  'tool.cutters': 'Side cutters',
  'tool.strippers': 'Wire strippers',
  'tool.pliers': 'Small long-nose pliers',
  'tool.clamp': 'A clamp or tape to hold parts still',
  'tool.meter': 'Multimeter that measures resistance',
  'tool.goggles': 'Eye protection',
  'leaflet.cautions': 'Before you start: cautions',
  'caution.hot':
    'The iron is at about 350 °C, and molten solder splashes. Hold the iron by its handle only and put it back in its stand.',
  'caution.eyes': 'Wear eye protection while soldering, and above all while clipping legs: cut ends fly off.',
  'caution.fumes': 'Work in fresh air and keep your head out of the plume: flux fume can cause asthma.',
  'caution.lead': 'Prefer lead-free solder. Wash your hands after soldering and before eating.',
  'caution.passive':
    'This is a passive circuit. Never open a mains-powered amplifier, and never connect one while you work.',
  'caution.earth':
    'The strings are joined to the amplifier’s earth, and so is the player. Have doubtful mains earthing checked by a licensed electrician before you plug in.',
  'caution.children': 'Keep small parts, offcuts and the iron away from children.',
  'caution.rules':
    'Follow local rules for electrical work and for waste. Where local codes or a licensed practitioner say otherwise than this leaflet, they are right.',
  'leaflet.steps': 'Soldering',
  'leaflet.steps-say':
    'Hook each wire and leg through its lug before you solder, so that the joint holds by itself. Keep joints on a pot’s case quick and hot. Tick off each joint when it is made.',
  'leaflet.step': 'Step {number}: {title}',
  'leaflet.joint': 'Joint',
  'leaflet.notes': 'Notes',
  'leaflet.probes': 'Probes',
  'leaflet.probes-at': 'P1 on {from}, P2 on {to}.',
  'leaflet.reads': 'The meter shows: {reading}',
  'leaflet.test-number': 'Test {number}: {probes}',
  'leaflet.volume-full': 'All controls on 10',
  'leaflet.volume-zero': 'Volume on 0',
  'leaflet.test-before': 'Test before the pickups are fitted',
  'leaflet.test-before-say':
    'Measure resistance at the jack, with nothing plugged in. Do not go on before every reading is right: a fault is easiest to find now. The values stand for parts within their tolerances, from 10 to 30 °C.',
  'leaflet.test-finished': 'Test when everything is soldered',
  'leaflet.test-finished-say':
    'The same with the pickups. Where the pickup’s own resistance is read, it changes with temperature; a pickup that was measured alone beforehand shows its own value.',
  'leaflet.number': 'No.',
  'leaflet.rings-say':
    'Each step has a drawing. New joints are thick, with a number at both ends that is also in the list. A black number: solder this end in this step. A white one: hook it only; it is soldered in a later step, with what else comes to that lug. Joints made before are thin.',

  // ── Leaflet: what each switch position does, loads, fault finding
  'leaflet.positions': 'What each switch position does',
  'leaflet.position': 'Position',
  'leaflet.sounds': 'Sounds',
  'leaflet.joined': 'How',
  'leaflet.always': 'always',
  'leaflet.loads': 'What each pickup works into',
  'leaflet.loads-say':
    'DC load: resistance across the pickup’s leads with all pickups disconnected. Signal load: the same at {frequency}, with the tone control and its capacitor. All controls on 10. Last column: signal load compared with the plain harness the pickup was designed for.',
  'leaflet.pickup': 'Pickup',
  'leaflet.dc-load': 'DC load',
  'leaflet.signal-load': 'Signal load',
  'leaflet.compared': 'Compared with reference',
  'leaflet.response': 'Frequency response',
  'leaflet.faults': 'If something is wrong',
  'leaflet.fault-seen': 'What you notice',
  'leaflet.fault-cause': 'Likely cause',
  'leaflet.fault-remedy': 'What to do',
  'fault.silent': 'No sound in any position',
  'fault.silent-cause': 'An open joint between {volume} and {jack}, or signal and ground touch there',
  'fault.silent-remedy':
    'Repeat the last test at the jack. “Open”: solder the wires on the tip and the sleeve again. Near 0 Ω with the volume on 10: look for a strand or a solder bridge to ground.',
  'fault.one': 'One pickup is silent',
  'fault.one-cause': 'Its lead is not soldered through. Hot leads: {places}',
  'fault.one-remedy':
    'Compare the reading at the jack in its position with the last test; solder both of its leads again.',
  'fault.thin': 'Thin, quiet sound where {pickups} sound together',
  'fault.thin-cause': 'They are out of phase: the two leads of one pickup are exchanged',
  'fault.thin-remedy': 'Compare hot and ground of each with the drawing and exchange the two that are wrong.',
  'fault.hum': 'Hum does not become less when the strings are touched',
  'fault.hum-cause': '{point} is not connected to ground',
  'fault.hum-remedy':
    'Measure from the strings to the jack’s sleeve: below 1 Ω is right. Else solder the wire of {point} again.',
  'fault.buzz': 'Loud hum, louder when metal parts are touched',
  'fault.buzz-cause': 'The wires on tip and sleeve of {jack} are exchanged',
  'fault.buzz-remedy': 'Unplug first. Exchange the two wires: ground belongs on the sleeve.',
  'fault.volume': 'Works the wrong way round, or not at all: {controls}',
  'fault.volume-cause': 'The joints of two lugs are exchanged, or the grounded lug is open',
  'fault.volume-remedy':
    'Compare its three lugs with the drawing. Mind the side from which the drawing is seen.',
  'fault.tone': 'Makes no difference to the sound: {controls}',
  'fault.tone-cause': 'A leg of the capacitor or the wire to its lug is open',
  'fault.tone-remedy': 'Solder the joints of {components} again, then those of the control.',
  'fault.order': 'The positions of {selector} come in reverse order',
  'fault.order-cause': 'The switch was turned round when it was wired',
  'fault.order-remedy':
    'Turn it round in its slot if its wires are long enough; else move the pickup wires as drawn.',
  'fault.bright': '{pickup} sounds too bright',
  'fault.bright-cause': 'Its pad, {pad}, has an open leg',
  'fault.bright-remedy': 'Solder both legs of {pad} again.',
  'fault.crackle': 'Crackles when a control is turned',
  'fault.crackle-cause': 'Flux has run into the pot, or it was heated for too long',
  'fault.crackle-remedy': 'Turn it from end to end twenty times. If it stays, replace the pot.',
  'fault.loose': 'Sound comes and goes when something is moved',
  'fault.loose-cause': 'A cracked or ball-shaped joint that never wetted the lug',
  'fault.loose-remedy':
    'Press gently on each joint with a wooden stick to find it; heat it again with a little new solder until it flows.',

  // ── Shop page
};

export type MessageKey = keyof typeof en;
export type Messages = Readonly<Record<MessageKey, string>>;
