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
  'view.solder-side':
    'Seen from the solder side; {hand, select, left {left-handed} other {right-handed}} build.',
  'view.component-side':
    'Seen from the component side, as if through the plate; {hand, select, left {left-handed} other {right-handed}} build.',
  'lines.insulation': 'Line colour and letters: the wire’s insulation (IEC 60757).',
  'lines.both':
    'Line colour: the wire’s insulation where letters give it (IEC 60757), else the signal carried.',
  'lines.signal': 'Line colour: signal carried.',
  'lines.letters': 'Letters: insulation colour (IEC 60757).',
  'lines.crossing': 'At a crossing, the broken line passes underneath.',
  'controls.full': 'All controls on 10',
  'drawn.selected':
    '{pickups} selected: signal path highlighted, the rest {rest, select, dashed {dashed} other {dimmed}}.',
  'drawn.silent': 'No output in this position.',
  'step.of': 'Step {number} of {count}: {title}.',
  'step.new': 'New joints are highlighted{how, select, dotted { by dotted lines} other {}}.',
  'sheet.loads-on': 'Loads in each switch position: {last, plural, =2 {sheet 2} other {sheets 2 to {last}}}.',
  'sheet.loads': 'Loads in each switch position: sheet {number} of {count}.',
  'piece.drawing': 'wiring',
  'piece.key': 'key',
  'piece.cards': 'loads in each switch position',
  'piece.checklist': 'checklist',
  'key.hot': '{pickup}, hot',
  'key.signal': 'signal',
  'key.switch-output': 'switch output',
  'key.output': 'to the output jack',
  'key.tone': 'tone control',
  'key.other': 'other signal wire',
  'key.ground': 'ground (double line)',
  'key.leg': 'bare component leg',
  'key.sleeved': 'sleeved leg',
  'key.jumper': 'bare jumper',
  'key.bend': 'lug bent back and soldered to the case',
  'key.braid': 'bare shield braid: keep clear of signal lugs',
  'key.solder': 'solder joint',
  'key.solder-case': 'solder joint; on a pot’s round body: to its case',
  'key.unused': 'unused lug',
  'key.striped': '{colour}, striped',
  'key.half-track':
    'blend pot’s track: {half, select, hatched {hatched half has resistance, plain half has none} other {pale half has resistance, dark half has none}}',
  'bare.insulate': 'Insulate the jumper from {from} to {to} of {part}: it crosses {across}.',
  'bare.sleeve': 'Sleeve the leg of {part} to {to}: it crosses {across}.',
  'bare.across': '{what, select, jumper {a bare jumper} own {its other leg} other {a bare leg of {part}}}',
  'stock.replaced': '{part}: {from} is replaced by {to}',
  'desc.joints': 'Joints: {joints}.',
  'desc.joint': '{joint} from {from} to {to}',
  'joint.wire': 'wire',
  'joint.leg': 'leg',
  'joint.jumper': 'jumper',
  'joint.bend': 'bend',
  'joint.braid': 'braid',
  'named.list': '{name}: {words}',
  'list.apart': '{first}; {next}',
  'lugs.numbered': 'lug {lug}',
  'lug.tip': 'tip',
  'lug.ring': 'ring',
  'lug.sleeve': 'sleeve',
  'lug.hot': 'hot',
  'lug.ground': 'ground',
  'lug.shield': 'shield',
  'lug.a-start': 'a-start',
  'lug.a-finish': 'a-finish',
  'lug.b-start': 'b-start',
  'lug.b-finish': 'b-finish',
  'lug.case': 'case',
  'lug.common': 'common',
  'lug.frame': 'frame',
  'coil.coil A': 'coil A',
  'coil.coil B': 'coil B',
  'shaft.a': 'inner shaft',
  'shaft.b': 'outer shaft',
  'position.pushed in': 'pushed in',
  'position.pulled out': 'pulled out',
  'position.in': 'in',
  'position.out': 'out',
  'position.up': 'up',
  'position.down': 'down',
  'position.in the middle': 'in the middle',
  'position.middle': 'middle',
  'position.in the centre': 'in the centre',
  'position.centre': 'centre',
  'position.at centre': 'at centre',
  'position.fully anticlockwise': 'fully anticlockwise',
  'position.fully clockwise': 'fully clockwise',
  'position.pressed': 'pressed',
  'position.released': 'released',
  'switch.towards': 'towards {pickups}',
  'switch.position': 'in position {position}',
  'switch.positions': 'in positions {positions}',
  'switch.everywhere': 'in every position',
  'switch.together': 'wherever they are selected together',
  'switch.with': 'with {settings}',
  'face.three-way': 'three-way',
  'face.four-way': 'four-way',
  'face.five-way': 'five-way',
  'face.five-way-four-pole': 'five-way, 4 poles',
  'face.three-way-toggle': 'three-way toggle',
  'face.toggle': '{action} toggle',
  'face.push-pull': 'push-pull',
  'face.slide': 'slide switch',
  'face.switch': 'switch',
  'face.rotary': '{kind, select, shorting {shorting rotary} other {non-shorting rotary}}',
  'face.push-button': 'push button',
  'face.contact': '{position}: {contact, select, open {open} other {closed}}',
  'face.mono-jack': 'mono jack',
  'face.stereo-jack': 'stereo jack',
  'face.single-coil': 'single coil',
  'face.humbucker': 'humbucker',
  'face.assumed': '{value} assumed',
  'face.both-gangs': '{value}, both gangs',
  'face.same-shaft': '{value}, same shaft',
  'face.inner-shaft': '{value}, inner shaft',
  'face.outer-shaft': '{value}, outer shaft',
  'face.no-load': '{value}, no-load',
  'taper.linear': 'lin',
  'taper.log': 'log',
  'taper.reverse-log': 'rev log',
  'taper.lower-half': 'blend',
  'taper.upper-half': 'blend',
  'pads.alone': '{pickup} alone: DC load {load}',

  // ── Drawing: load cards
  'figure.open': 'open',
  'load.dc': 'DC load',
  'load.signal': 'signal load',
  'meter.jack': 'multimeter, tip to sleeve',
  'meter.outputs': 'multimeter, to sleeve',
  'meter.short': 'multimeter',
  'meter.none': 'no reading',
  'meter.assumed': '{reading}, assumed',
  'sounding.none': 'No output',
  'sounding.head': 'sounding',
  'verdict.treble-cut': 'treble cut, {level}',
  'verdict.no-load': 'no load',
  'verdict.as-designed': 'as designed',
  'verdict.duller': '{percent}, duller',
  'verdict.yet-duller': '{percent}, but duller',
  'verdict.duller-in-series': '{percent}, duller in series',
  'verdict.heavier': '{percent}, heavier load',
  'verdict.brighter': '{percent}, brighter',
  'level.down': '{level} quieter',
  'level.none': 'no output',
  'joined.series': 'in series',
  'joined.parallel': 'in parallel',
  'joined.both': 'in series and in parallel',
  'joined.chain': '{pickups} in series',
  'joined.with': '{first}, in parallel with {next}',
  'joined.phase': 'out of phase',
  'joined.phase-of': '{pickups} out of phase',
  'joined.coils': '{whose, select, own {coils} each {coils of each} other {coils of {pickup}}} {how}',
  'joined.together': 'together {level}',
  'joined.cancel': '{words}: they cancel, no output',
  'joined.hum': 'hum-cancelling',
  'cards.columns': 'The first columns are the positions; 1/2: the same in both.',
  'cards.number': 'Card number: position of {switch}{faced, select, yes {, as on its face} other {}}.',
  'cards.numbers':
    'Card numbers: positions of {switches}{faced, select, yes {, as on their faces} other {}}.',
  'cards.either': '{numbers}: the same in positions {positions}.',
  'cards.undrawn':
    'A card of several positions shows only the switches that stay as they are in all of them.',
  'cards.dc-load': 'DC load: resistance across the pickup’s leads, all pickups disconnected.',
  'cards.signal-load':
    'Signal load: the same at {frequency}{toned, select, yes {, with the tone control and its capacitor} other {}}.',
  'cards.bar': 'Bar: signal load in this position; tick: the pickup’s reference load.',
  'cards.multimeter': 'Multimeter: pickups connected, all controls on 10.',
  'cards.level':
    'dB quieter: level at 1 kHz, equal voltage in each coil, relative to the loudest pickup in this position;',
  'cards.level-alone': 'for a single pickup, or all together, relative to the reference harness.',
  'cards.treble':
    'Treble cut: level at the −3 dB point of the pickup’s reference harness, relative to that harness.',
  'cards.series': 'In series: each pickup’s load includes the windings of the others in its chain.',
  'cards.split': 'One coil alone: tick and level are those of the whole pickup in its reference harness.',
  'cards.hum': 'Hum-cancelling: the hum of all coils together is less than a quarter of one coil’s.',
  'desc.position': 'Position {position}: {words}.',
  'desc.load': '{pickup}: DC load {dc}, signal load {signal}',

  // ── Drawing: response plot
  'plot.lead':
    'Response: output voltage at the jack for 1 V induced in each selected coil. Volume {volume}, tone {tone}; cable {cable}, amplifier {amplifier}.',
  'plot.references':
    'Dashed grey: the pickup’s reference harness, at the same setting. Peak heights relative to the level at 100 Hz{loss, select, neglected {, core loss neglected} other {}}.',
  'plot.reference': 'reference',
  'plot.reference-of': 'reference, {pickups}',
  'plot.cutoff': '−3 dB at {frequency}',
  'plot.only-here': 'a peak; the reference has none',
  'plot.only-there': 'no peak; the reference has one',
  'plot.neither': 'no peak in either',
  'plot.difference': '{percent}, peak {height}',
  'plot.nothing': 'No output at this setting.',
  'plot.compared': 'resonance compared with the reference',
  'plot.resonance': 'resonance {figures}',
  'plot.no-resonance': 'no resonance',
  'plot.against': '{pickup} against its reference: {words}',

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
  'step-joint.lead': 'Lead{cut} from {from} to {to}',
  'steps.leg': '{component}{cut}: one leg to {to}',
  'steps.bend': 'Bend {from} back and solder it to {to}',
  'steps.sleeved': 'sleeved',
  'steps.marked': 'marked {print}',
  'steps.hook': '{line}; {ends, select, one {hook only} other {at {end} hook only}}, solder in step {step}',
  'steps.gather': '{line}; at {end} solder all that is hooked',
  'steps.free': '{line}; leave the end for {point} free',
  'steps.why-free':
    '{points}: not in the kit, but on your instrument. This end of the wire stays free until the parts are in the instrument; in a test, hold the probe to its bare end.',
  'steps.why-leads':
    'The leads of a pickup are attached to it already: solder only their other ends, which have the numbers.',
  'steps.why-cable':
    'Pickup with four leads: strip back the jacket of its cable far enough for each lead and the braid to reach its place.',
  'steps.at-leads':
    'These joints are made at the bare end of a pickup’s lead, not in the pickup; sleeve them: {ends}.',
  'steps.why-braid':
    'Braid: open it near its end, pull the inner wire out through the hole, and twist the braid into one strand. Sleeve it up to the joint, and keep it clear of signal lugs.',
  'steps.why-surface': '{ends}: joints of an earlier step are there; place the new ones beside them.',
  'steps.why-test':
    '{end}: soldered now so that the harness can be tested, and again in step {step} with the pickup’s lead.',
  'steps.why-waits': 'Only hooked for now, and soldered together with the pickup’s lead: {components}.',

  // ── Soldering: tests after a step, and readings
  'test.setting':
    '{switched, select, yes {{switches}, {volume, select, zero {volume on 0, other controls on 10} other {all controls on 10}}} other {{volume, select, zero {Volume on 0, other controls on 10} other {All controls on 10}}}}',
  'test.short': 'below 1 Ω',
  'test.value': '{nominal}, from {low} to {high}',
  'test.or-hooked': '{expected}; {hooked} is right too, where a leg that is only hooked touches its lug',
  'test.or-some-hooked':
    '{expected}; anything less, down to {lowest}, is right too: it depends on which of the hooked legs touch their lugs',
  'test.nearly-zero': 'a few ohms or less',
  'test.nearly-looks': 'A few ohms or less: a pot on 0 leaves a little resistance at the end of its track.',
  'test.meter-held':
    'Set the meter to resistance, to a range above the value to be read or to automatic. Hold the probes by their handles: fingers on both tips change large readings.',
  'test.open-looks': 'Open: the meter shows what it shows with its probes apart, such as OL.',
  'test.short-looks': 'Below 1 Ω: the meter shows nearly what it shows with its probes touching.',
  'test.cold-looks':
    'More where below 1\u00a0Ω is expected, such as 5 to 50\u00a0Ω: a cold joint; heat it again.',
  'test.wiper-looks':
    'A few ohms where a larger value is expected: a short circuit that is measured through a pot; treat it as below 1\u00a0Ω.',
  'test.other-looks':
    'Any other value: first compare the lugs with the drawing, as a wire on the wrong lug is the likeliest cause; then check the values of the parts.',
  'test.joint': '{from} – {to}',
  'test.free-end': 'the free end of the wire for {point}',
  'test.missing':
    'If it reads {near, select, yes {about } other {}}{reading}, check these connections and solder them again: {joints}.',
  'test.bridged':
    'If it reads below 1 Ω, look for a solder bridge or a loose wire strand, first between {lugs}.',
  'test.touching':
    'If it reads below 1 Ω, follow the wires from both probes and look for a loose strand, a braid or solder that joins them.',
  'test.lugs': '{from} and {to}',
  'test.values':
    'If it reads another value, check the lugs, then the value of {count, plural, one {this part} other {these parts}}: {parts}.',
  'test.by-eye': 'No meter reading checks these connections, so look closely at their solder: {joints}.',

  // ── Leaflet: headings, parts, tools, cautions
  'leaflet.kind': 'Wiring kit: assembly instructions',
  'leaflet.title': '{title}: assembly instructions',
  'leaflet.kit': 'Kit {id}',
  'leaflet.revision': 'Revision {mark}',
  'leaflet.extent':
    '{parts, plural, one {# part} other {# parts}}, {joints, plural, one {# connection} other {# connections}}, {steps, plural, one {# step} other {# steps}}',
  'leaflet.contents': 'Contents',
  'leaflet.drawing': 'Wiring drawing',
  'leaflet.key': 'Key to the drawing',
  'leaflet.parts': 'Parts',
  'leaflet.parts-say': 'Tick off every part before you start. Do not start if one is missing or damaged.',
  'leaflet.spare-say': 'Amounts of wire and sleeving are what this kit takes and {percent}\u00a0% to spare.',
  'leaflet.quantity': 'Qty',
  'leaflet.part': 'Part',
  'leaflet.picture': 'Picture',
  'leaflet.value': 'Value',
  'leaflet.recognise': 'How to recognise it',
  'leaflet.done': 'Done',
  'leaflet.bands': 'Bands: {bands}',
  'leaflet.printed': 'Marked {code}',
  'leaflet.measure-first': 'Before soldering it, measure it: from {low} to {high}',
  'leaflet.measures': 'Measures about {value} across its leads',
  'leaflet.measures-assumed': 'Assumed: {value} across its leads; measure it and note the value',
  'leaflet.measures-coils':
    '{assumed, select, yes {Assumed, before its leads are joined; measure and note the values} other {Measures, before its leads are joined}}: {coils}',
  'leaflet.coil-measures': '{from} to {to} about {value}',
  'leaflet.assumed-say':
    'The resistance of these pickups is assumed: {pickups}. Readings with them may differ; compare them with what you measured across each pickup’s leads.',
  'leaflet.lugs':
    '{count, plural, one {# lug} other {# lugs}}: {names}{cased, select, yes {, and the metal {case}} other {}}',
  'leaflet.jack-lugs':
    'Tip: the contact that touches the end of the plug.{ring, select, yes { Ring: the contact that touches the plug’s middle section.} other {}} Sleeve: the lug that is connected to the threaded body',
  'leaflet.frame-lug': 'This metal is the body of the switch, or the lug that is connected to it',
  'leaflet.not-in-kit': 'not in the kit',
  'leaflet.ground-point':
    'The place on your instrument that this ground wire goes to, such as the bridge, the tailpiece or the shielding of the cavity. The drawings show it as one lug, 1: there is no such lug to solder to',
  'leaflet.orientation': 'How to tell lugs and positions',
  'orient.hold':
    '{side, select, component {The drawings show pots and switches from the side of the shaft or lever, as if you could see the lugs through them.} other {The drawings show pots and switches from behind, where their lugs are: hold each with its lugs towards you and its shaft or lever away from you.}} Lugs can be arranged differently on the part in your kit: go by the lines below.',
  'orient.pot':
    '{side, select, component {Pot: hold it with the shaft towards you and the lugs pointing down; its lugs are then 1, 2, 3 from left to right. Seen from behind they are 3, 2, 1.} other {Pot: held like this, with the lugs pointing down, its lugs are 3, 2, 1 from left to right. Seen from the side of the shaft they are 1, 2, 3.}}',
  'orient.full':
    '{controls}: on 10 when turned fully {end, select, clockwise {clockwise} other {anticlockwise}}, seen from the shaft; on 0 at the other end.',
  'orient.lever':
    '{switch}: position 1 is the end of the lever’s travel next to the bridge, position {last} the end next to the neck.',
  'orient.shaft':
    '{switch}: position 1 is the shaft turned fully anticlockwise, seen from the shaft; count the positions clockwise from there.',
  'orient.toggle':
    '{switch}: “up” and “down” are where its {moves, select, slider {slider} other {lever}} is with lug {upper} above lug {lower}, as drawn.',
  'orient.check': 'Check with the meter before you solder to {switch}: {contacts}.',
  'orient.contact': '{position}, below 1 Ω between {pairs}',
  'orient.turn':
    'If the meter shows the lugs of the other end instead, count the lugs again from the drawing; if they were right, turn the switch round.',
  'orient.commons':
    'On {switch}, hold one probe on {named, select, no {the common lug} other {a common lug ({lugs})}} and find with the other which lug it is connected to.',
  'orient.coils':
    '{pickups}: the leads are the two ends of each coil, its start and its finish ({coils}); {braid} is the bare braid. The pickup’s maker says which lead is which; colours differ from maker to maker. Check with the meter: the two leads of one coil show its resistance, as in the list of parts, and leads of different coils show open. A meter cannot tell a start from a finish: if they are swapped, see “{fault}” in the table of faults.',
  'leaflet.tools': 'Tools',
  'tool.iron': 'Soldering iron, 30 to 60\u00a0W, with a stand, and a damp sponge or brass wool',
  'tool.case': 'A broad soldering tip and fine sandpaper, for joints on a metal case',
  'tool.solder': 'Solder for electronics with a flux core, lead-free for preference',
  'tool.cutters': 'Side cutters',
  'tool.strippers': 'Wire strippers',
  'tool.pliers': 'Small long-nose pliers',
  'tool.clamp': 'A clamp or tape to hold parts still',
  'tool.stick': 'A wooden stick and a small screwdriver',
  'tool.desolder': 'Desoldering pump or desoldering braid',
  'tool.meter': 'Multimeter that measures resistance',
  'tool.goggles': 'Eye protection',
  'leaflet.cautions': 'Before you start: cautions',
  'caution.hot':
    'The iron is at about 350\u00a0°C, and molten solder splashes. Hold the iron by its handle only and put it back in its stand.',
  'caution.eyes': 'Wear eye protection while soldering, and above all while clipping legs: cut ends fly off.',
  'caution.fumes': 'Work in fresh air and keep your head out of the plume: flux fume can cause asthma.',
  'caution.lead': 'Prefer lead-free solder. Wash your hands after soldering and before eating.',
  'caution.passive':
    'This is a passive circuit. Never open a mains-powered amplifier, and never connect one while you work.',
  'caution.earth':
    'The strings are joined to the amplifier’s earth, and so is the player. Have doubtful mains earthing checked by a licensed electrician before you plug in.',
  'caution.children': 'Keep small parts, offcuts and the iron away from children.',
  'caution.rules':
    'Follow local rules for electrical work and for waste. Where local codes or a licensed practitioner disagree with this leaflet, follow them.',
  'leaflet.steps': 'Soldering',
  'leaflet.steps-say':
    'Hook each wire and leg through its lug before you solder, so that the joint holds by itself. Heat the lug and the wire together, then add solder to them, not to the iron. Tick off each connection when it is made.',
  'leaflet.how-say':
    'Twist and tin the bare end of a stranded wire before you hook it. On a lug, two to three seconds of heat are enough. Clip what sticks out when the joint is solid. To undo a joint, melt it and draw the solder off with the desoldering pump or braid.',
  'leaflet.hold-say':
    'Before the first joint, fix pots and switches at the distances that they have in the instrument, on the pickguard or on a piece of card with holes: the drawings are not to scale.{bridging, select, none {} other { This matters most where the legs of a component join two parts: {bridging}.}}',
  'leaflet.case-say':
    'Joints on a metal case ({cases}): before the first one, sand a spot until it is bright and wipe it clean. Heat the spot with a broad tip, longer than a lug needs, until a little solder flows flat onto it. Let it cool. Then press the wire or the leg onto the solder, heat both until the solder flows, and hold the joint still until it is solid. Let a pot cool for a minute between two joints on its case.',
  'leaflet.case-plan':
    'The case of {part}, turned as in the drawings, with places for its joints: {name} is connection {number} of step {step}. Sand all places before the first joint, and leave each one free until its step.',
  'leaflet.step': 'Step {number}: {title}',
  'leaflet.tests-after': '{count, plural, one {Test} other {Tests}} after step {number}',
  'leaflet.measuring': 'How to measure',
  'leaflet.joint': 'Connection',
  'leaflet.notes': 'Notes',
  'leaflet.wire-of': 'Wire, {colour}',
  'leaflet.bare-wire': 'Bare wire for jumpers',
  'leaflet.no-colour': 'any colour',
  'leaflet.sleeving-of': 'Sleeving',
  'leaflet.wire': 'Wire',
  'leaflet.cuts': 'Wire to cut',
  'leaflet.cut': 'Cut',
  'leaflet.length': 'Length',
  'leaflet.for-steps': 'For steps',
  'leaflet.both-lengths': '{millimetres} ({inches}\u00a0in)',
  'leaflet.strip': 'strip {length}',
  'leaflet.trim': 'trim to reach',
  'leaflet.strip-say':
    'Measure on your instrument before you cut: the drawings are not to scale. Strip {length} at both ends of each wire; lengths include it. Pickup leads are not in this list: trim them to reach.',
  'leaflet.estimated-say':
    '≈ is an estimate: the distance on the instrument and {percent}\u00a0% more, with both stripped ends, rounded up to {length}.',
  'leaflet.extend-for': '{component} (about {length})',
  'leaflet.extend-say':
    'Legs that may not reach from one lug to the other: {components}. The step that solders them says how to lengthen one.',
  'leaflet.extend-step':
    '{components}: if the legs do not reach, lay the piece of wire 10\u00a0mm alongside one leg and solder them together. Push the sleeving over leg and joint, then take the free end to its lug.',
  'leaflet.extending-wire': 'Wire to extend legs',
  'leaflet.probes': 'Probes',
  'leaflet.probes-at': 'Red probe on {from}, black probe on {to}.',
  'leaflet.probe-red': 'red',
  'leaflet.probe-black': 'black',
  'leaflet.reads': 'The meter shows: {reading}',
  'leaflet.test-number': 'Test {number}: {probes}',
  'leaflet.volume-full': 'All controls on 10',
  'leaflet.volume-zero': 'Volume on 0',
  'leaflet.test-before': 'Test before the pickups are fitted',
  'leaflet.test-before-say':
    'Measure resistance at the jack, with nothing plugged in. Do not go on before every reading is right: a fault is easiest to find now. The values stand for parts within their tolerances, from 10 to 30\u00a0°C.',
  'leaflet.test-wrong':
    'If a reading is wrong, compare every connection of that position with the drawing: open means that one is missing, too little that two touch or that a wire is on the wrong lug. See also “{faults}”.',
  'leaflet.test-finished': 'Test when everything is soldered',
  'leaflet.test-finished-say':
    'Measure at the jack again, now with the pickups. A pickup’s own resistance changes with temperature; the limits allow for that.',
  'leaflet.fitting': 'Fitting in the instrument',
  'fit.nuts':
    'Put each pot, switch and jack in its place without pulling at its wires. Hold its body still while you tighten its nut or screws: if it turns, its wires twist and joints break.',
  'fit.wires':
    'Lay the wires without tension, away from the moving parts of switches. No bare leg, lug or wire may touch another one, a case or the shielding.',
  'fit.point':
    '{point}: take the free end of this wire to its place on the instrument and fix it, bare, to clean metal there. Between that metal and the jack’s sleeve the meter shows below 1\u00a0Ω.',
  'fit.plug':
    'Before you close the instrument, turn the amplifier’s volume to 0, plug in, switch the amplifier on, and turn its volume up a little.',
  'fit.tap':
    'In each switch position tap each pickup lightly with a small steel screwdriver, and hold it firmly, as the magnet pulls it. You hear the taps clearly on the pickups that sound in this position, and hardly or not at all on the others.',
  'fit.tone':
    'Turn each tone control from 10 to 0 in a position in which it acts ({controls}): the treble must disappear. This proves the soldering of {components}.',
  'fit.stop':
    'If metal parts tingle when you touch them, unplug at once and do not play: have the amplifier and its mains earthing checked by a licensed electrician. If the amplifier hums loudly, unplug at once too, and first check the jack as “{faults}” says. Follow the electrician’s advice, even against this leaflet.',
  'leaflet.number': 'No.',
  'leaflet.rings-say':
    'Each step has a drawing; it shows new connections thick and earlier ones thin. Letters on a wire are the code of its colour.',
  'rings.number':
    'A number at an end is the one in the list. It stands on the wire, or beside it with a thin line to the end.',
  'rings.black': 'White number on black: solder this end in this step.',
  'rings.white':
    'Black number on white: hook this end only. It is soldered in a later step, with what else comes to that lug. Until then it is drawn as a ring with a gap.',
  'rings.gathered':
    'A ring with a dot: this end was hooked in an earlier step. Solder it in this step, together with all that is hooked there.',
  'rings.none':
    'No number: there is nothing to solder where a component leg leaves its body, where a lead leaves its pickup, at a bent lug, and at an end that stays free.',

  // ── Leaflet: what each switch position does, loads, fault finding
  'leaflet.positions': 'What each switch position does',
  'leaflet.position': 'Position',
  'leaflet.sounds': 'Sounds',
  'leaflet.joined': 'How',
  'leaflet.tone': 'Tone control',
  'leaflet.no-tone': 'none',
  'leaflet.always': 'always',
  'leaflet.loads': 'Load on each pickup',
  'leaflet.loads-say':
    'These are design values of this kit, not faults. DC load: resistance across the pickup’s leads with all pickups disconnected. Signal load: the same at {frequency}{toned, select, yes {, with the tone control and its capacitor} other {}}. All controls on 10. The last column compares the signal load with the design load.',
  'leaflet.designed-say':
    'Design loads (DC load, signal load): {loads}. Where a pickup is heard alone, it sounds as designed if its loads are about these. More ohms make it brighter, fewer make it duller.',
  'leaflet.quieter-say':
    'dB quieter: compared at 1 kHz with the loudest pickup in the same position; a pickup alone, or all together, with the harness that it was designed for.',
  'leaflet.two-loads': '{dc}, {signal}',
  'leaflet.pickup': 'Pickup',
  'leaflet.dc-load': 'DC load',
  'leaflet.signal-load': 'Signal load',
  'leaflet.compared': 'Compared with design load',
  'leaflet.response': 'Frequency response',
  'leaflet.faults': 'If something is wrong',
  'leaflet.fault-seen': 'What you notice',
  'leaflet.fault-cause': 'Likely cause',
  'leaflet.fault-remedy': 'What to do',
  'fault.silent': 'No sound in any position',
  'fault.silent-cause':
    'A joint between {volume} and {jack} does not conduct, or signal and ground touch there',
  'fault.silent-remedy':
    'Repeat the last test at the jack. “Open”: solder the wires on the tip and the sleeve again. A few ohms or less with the volume on 10: look for a solder bridge or a loose wire strand to ground.',
  'fault.one': 'One pickup is silent',
  'fault.one-cause': 'One of its leads is not soldered well. Hot leads: {places}',
  'fault.one-remedy':
    'Compare the reading at the jack in its position with the last test; solder {leads, select, all {all} other {both}} of its leads again.',
  'fault.thin': 'Thin, quiet sound of pickups that sound together: {pickups}',
  'fault.thin-cause': 'They are out of phase: the two leads of one pickup are swapped',
  'fault.thin-remedy': 'Compare hot and ground of each with the drawing and swap the two that are wrong.',
  'fault.coils': 'A four-lead pickup sounds thin and quiet',
  'fault.coils-cause':
    'If it does so by itself too: start and finish of one of its coils are swapped. If only together with another pickup: start and finish of both coils are swapped',
  'fault.coils-remedy':
    'Compare its leads with what its maker says, and swap start and finish of that coil, or of both.',
  'fault.split': '{pickups}: the change to one coil does nothing, or comes in the wrong position',
  'fault.split-cause':
    'A lead or a wire where the two coils meet is on the wrong lug of the switch, or not soldered well',
  'fault.split-remedy':
    'Compare the readings at the jack with the last test, with one coil and with both; then compare the lugs of this switch with the drawing.',
  'fault.hum': 'The hum does not get quieter when you touch the strings',
  'fault.hum-cause': '{point} is not connected to ground',
  'fault.hum-remedy':
    'Measure from the strings to the jack’s sleeve: below 1 Ω is right. If it is more, solder the wire of {point} again.',
  'fault.buzz': 'Loud hum, louder when metal parts are touched',
  'fault.buzz-cause': 'The wires on tip and sleeve of {jack} are swapped',
  'fault.buzz-remedy':
    'Unplug at once and do not play. With the meter, the sleeve of {jack}, not its tip, must show below 1\u00a0Ω to the ground wires; if it does not, swap the two wires. Only if it does, have the amplifier and its mains earthing checked by a licensed electrician.',
  'fault.volume': '{controls}: works the wrong way round, or not at all',
  'fault.volume-cause': 'The wires of two lugs are swapped, or the joint to ground does not conduct',
  'fault.volume-remedy':
    'Compare its three lugs with the drawing, and note which side of the pot the drawing shows.',
  'fault.tone': '{controls}: no effect on the sound',
  'fault.tone-cause': 'A leg of the capacitor or the wire to its lug is not soldered well',
  'fault.tone-remedy': 'Solder the joints of {components} again, then those of the control.',
  'fault.order': 'The positions of {selector} come in reverse order',
  'fault.order-cause':
    'The switch stands the wrong way round in its place, or its lugs were counted from the wrong end',
  'fault.order-remedy':
    'Find its lugs with the meter again. If every wire is at the lug that the drawing shows, turn the switch round in its place. If not, move the wires to the lugs that the drawing shows.',
  'fault.bright': '{pickup} sounds too bright',
  'fault.bright-cause': 'A leg of its padding resistor, {pad}, is not soldered well',
  'fault.bright-remedy': 'Solder both legs of {pad} again.',
  'fault.crackle': 'Crackles when a control is turned',
  'fault.crackle-cause': 'Flux has run into the pot, or it was heated for too long',
  'fault.crackle-remedy': 'Turn it from end to end twenty times. If it still crackles, replace the pot.',
  'fault.loose': 'Sound comes and goes when something is moved',
  'fault.loose-cause':
    'A joint that is cracked, or round like a ball because the solder never flowed onto the lug',
  'fault.loose-remedy':
    'Press gently on each joint with a wooden stick to find it; heat it again with a little new solder until it flows.',
  'leaflet.resonance': 'Resonance',
  'leaflet.cutoff': 'Treble ends (−3 dB)',
  'leaflet.resonance-compared': 'Resonance compared with the reference',

  // ── Shop page: index of kits
  'shop.index-title': 'Wiring diagrams',
  'shop.index-filter': 'Find a kit',
  'shop.index-search': 'Search',
  'shop.index-pickups': 'Pickups',
  'shop.index-switch': 'Switch',
  'shop.index-parts': 'With these parts',
  'shop.index-any': 'All',
  'shop.index-none': 'none',
  'shop.index-reset': 'Show all',
  'shop.index-count': '{count, plural, =0 {No kit found} one {# kit} other {# kits}}',
  'shop.index-counted': '{count} × {what}',

  // ── Page of circuits
  'gallery.title': 'Circuits for passive guitar wiring',
  'gallery.say':
    'Letters name the pickups from neck to bridge: H humbucker, S single coil. Select a drawing to see it by itself, at any size.',
  'gallery.contents': 'Circuits',
  'gallery.extends': 'In a kit:',
  'gallery.alt': 'Wiring diagram: {title}',

  // ── Shop page

  // ── Shop page: the figure
  'shop.hint':
    'Point at a wire or a lug to see what it joins. With the keyboard: Tab to the drawing, then the arrow keys.',
  'shop.hint-touch': 'Tap a wire or a lug to see what it joins.',
  'shop.path': 'Signal path',
  'shop.zoom-in': 'Zoom in',
  'shop.zoom-out': 'Zoom out',
  'shop.reset': 'Reset',
  'shop.print': 'Print',
  'shop.rules':
    'Follow local rules for electrical work and for waste. Where local codes or a licensed practitioner disagree with this page, follow them.',
  'shop.joint':
    'Connection {number}, {what}: {from} to {to}{coloured, select, yes {, {colour}} other {}}{sleeved, select, yes {, sleeved} other {}}.',
  'shop.lug': '{lug}: {joined, select, yes {joined to {ends}} other {unused}}.',
  'shop.lug-name': '{part} {lug}',
  'shop.joints': 'All connections',
  'shop.from': 'From',
  'shop.to': 'To',
  'shop.colour': 'Wire colour',
  'shop.details': 'Details',
  'shop.yes': 'yes',
  'shop.no': 'no',
};

export type MessageKey = keyof typeof en;
export type Messages = Readonly<Record<MessageKey, string>>;
