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
  'view.solder-side':
    'Von der Lötseite gesehen; {hand, select, left {Linkshänder} other {Rechtshänder}}-Ausführung.',
  'view.component-side':
    'Von der Bauteilseite gesehen, wie durch die Platte hindurch; {hand, select, left {Linkshänder} other {Rechtshänder}}-Ausführung.',
  'lines.insulation': 'Linienfarbe und Buchstaben: Isolierung des Drahts (IEC 60757).',
  'lines.both':
    'Linienfarbe: Isolierung des Drahts, wo Buchstaben sie nennen (IEC 60757), sonst das geführte Signal.',
  'lines.signal': 'Linienfarbe: geführtes Signal.',
  'lines.letters': 'Buchstaben: Farbe der Isolierung (IEC 60757).',
  'lines.crossing': 'An einer Kreuzung verläuft die unterbrochene Linie unten.',
  'controls.full': 'Alle Regler auf 10',
  'drawn.selected':
    '{pickups} gewählt: Signalweg hervorgehoben, der Rest {rest, select, dashed {gestrichelt} other {abgeblendet}}.',
  'drawn.silent': 'Kein Ausgangssignal in dieser Stellung.',
  'step.of': 'Schritt {number} von {count}: {title}.',
  'step.new':
    'Neue Verbindungen sind {how, select, dotted {durch punktierte Linien } other {}}hervorgehoben.',
  'sheet.loads-on':
    'Lasten in jeder Schalterstellung: {last, plural, =2 {Blatt 2} other {Blätter 2 bis {last}}}.',
  'sheet.loads': 'Lasten in jeder Schalterstellung: Blatt {number} von {count}.',
  'piece.drawing': 'Verdrahtung',
  'piece.key': 'Legende',
  'piece.cards': 'Lasten in jeder Schalterstellung',
  'piece.checklist': 'Checkliste',
  'key.hot': '{pickup}, Signal',
  'key.signal': 'Signal',
  'key.switch-output': 'Schalterausgang',
  'key.output': 'zur Ausgangsbuchse',
  'key.tone': 'Tonregler',
  'key.other': 'anderer Signaldraht',
  'key.ground': 'Masse (Doppellinie)',
  'key.leg': 'blankes Bauteilbeinchen',
  'key.sleeved': 'Beinchen mit Isolierschlauch',
  'key.jumper': 'blanke Drahtbrücke',
  'key.bend': 'Öse zurückgebogen und ans Gehäuse gelötet',
  'key.braid': 'blankes Schirmgeflecht: von Signalösen fernhalten',
  'key.solder': 'Lötstelle',
  'key.solder-case': 'Lötstelle; auf dem runden Potikörper: an dessen Gehäuse',
  'key.unused': 'unbenutzte Öse',
  'key.striped': '{colour}, gestreift',
  'key.half-track':
    'Bahn des Überblendpotis: {half, select, hatched {schraffierte Hälfte mit Widerstand, freie Hälfte ohne} other {helle Hälfte mit Widerstand, dunkle Hälfte ohne}}',
  'bare.insulate': 'Drahtbrücke von {from} nach {to} an {part} isolieren: Sie kreuzt {across}.',
  'bare.sleeve': 'Beinchen von {part} zu {to} mit Isolierschlauch versehen: Es kreuzt {across}.',
  'bare.across':
    '{what, select, jumper {eine blanke Drahtbrücke} own {das andere Beinchen} other {ein blankes Beinchen von {part}}}',
  'stock.replaced': '{part}: {from} ist durch {to} ersetzt',
  'desc.joints': 'Verbindungen: {joints}.',
  'desc.joint': '{joint} von {from} nach {to}',
  'joint.wire': 'Draht',
  'joint.leg': 'Beinchen',
  'joint.jumper': 'Drahtbrücke',
  'joint.bend': 'umgebogene Öse',
  'joint.braid': 'Schirmgeflecht',
  'named.list': '{name}: {words}',
  'list.apart': '{first}; {next}',
  'lugs.numbered': 'Öse {lug}',
  'lug.tip': 'Spitze',
  'lug.ring': 'Ring',
  'lug.sleeve': 'Schaft',
  'lug.hot': 'Signal',
  'lug.ground': 'Masse',
  'lug.shield': 'Schirm',
  'lug.a-start': 'Start A',
  'lug.a-finish': 'Ende A',
  'lug.b-start': 'Start B',
  'lug.b-finish': 'Ende B',
  'lug.case': 'Gehäuse',
  'lug.common': 'gemeinsam',
  'lug.frame': 'Rahmen',
  'coil.coil A': 'Spule A',
  'coil.coil B': 'Spule B',
  'shaft.a': 'innere Achse',
  'shaft.b': 'äußere Achse',
  'position.pushed in': 'eingedrückt',
  'position.pulled out': 'herausgezogen',
  'position.in': 'gedrückt',
  'position.out': 'gezogen',
  'position.up': 'oben',
  'position.down': 'unten',
  'position.in the middle': 'in der Mitte',
  'position.middle': 'Mitte',
  'position.in the centre': 'in der Mitte',
  'position.centre': 'Mitte',
  'position.at centre': 'in der Mitte',
  'position.fully anticlockwise': 'ganz gegen den Uhrzeigersinn',
  'position.fully clockwise': 'ganz im Uhrzeigersinn',
  'position.pressed': 'gedrückt',
  'position.released': 'losgelassen',
  'switch.towards': 'in Richtung {pickups}',
  'switch.position': 'in Stellung {position}',
  'switch.positions': 'in den Stellungen {positions}',
  'switch.everywhere': 'in jeder Stellung',
  'switch.together': 'überall, wo sie zusammen gewählt sind',
  'switch.with': 'mit {settings}',
  'face.three-way': '3 Stellungen',
  'face.four-way': '4 Stellungen',
  'face.five-way': '5 Stellungen',
  'face.five-way-four-pole': '5 Stellungen, 4 Ebenen',
  'face.three-way-toggle': 'Kippschalter, 3 Stellungen',
  'face.toggle': 'Kippschalter {action}',
  'face.push-pull': 'Push-Pull',
  'face.slide': 'Schiebeschalter',
  'face.switch': 'Schalter',
  'face.rotary': 'Drehschalter, {kind, select, shorting {kurzschließend} other {unterbrechend}}',
  'face.push-button': 'Taster',
  'face.contact': '{position}: {contact, select, open {offen} other {zu}}',
  'face.mono-jack': 'Monobuchse',
  'face.stereo-jack': 'Stereobuchse',
  'face.single-coil': 'Single-Coil',
  'face.humbucker': 'Humbucker',
  'face.assumed': '{value} angenommen',
  'face.both-gangs': '{value}, beide Bahnen',
  'face.same-shaft': '{value}, gleiche Achse',
  'face.inner-shaft': '{value}, innere Achse',
  'face.outer-shaft': '{value}, äußere Achse',
  'face.no-load': '{value}, No-Load',
  'taper.linear': 'lin',
  'taper.log': 'log',
  'taper.reverse-log': 'neg. log',
  'taper.lower-half': 'Überblend',
  'taper.upper-half': 'Überblend',
  'pads.alone': '{pickup} allein: Gleichstromlast {load}',

  // ── Drawing: load cards
  'figure.open': 'offen',
  'load.dc': 'Gleichstromlast',
  'load.signal': 'Signallast',
  'meter.jack': 'Multimeter, Spitze–Schaft',
  'meter.outputs': 'Multimeter, zum Schaft',
  'meter.short': 'Multimeter',
  'meter.none': 'keine Anzeige',
  'meter.assumed': '{reading}, angenommen',
  'sounding.none': 'Kein Ausgangssignal',
  'sounding.head': 'zu hören',
  'verdict.treble-cut': 'Höhenverlust, {level}',
  'verdict.no-load': 'keine Last',
  'verdict.as-designed': 'wie vorgesehen',
  'verdict.duller': '{percent}, dumpfer',
  'verdict.yet-duller': '{percent}, aber dumpfer',
  'verdict.duller-in-series': '{percent}, in Reihe dumpfer',
  'verdict.heavier': '{percent}, höhere Last',
  'verdict.brighter': '{percent}, heller',
  'level.down': '{level} leiser',
  'level.none': 'kein Signal',
  'joined.series': 'in Reihe',
  'joined.parallel': 'parallel',
  'joined.both': 'in Reihe und parallel',
  'joined.chain': '{pickups} in Reihe',
  'joined.with': '{first}, parallel zu {next}',
  'joined.phase': 'gegenphasig',
  'joined.phase-of': '{pickups} gegenphasig',
  'joined.coils': '{whose, select, own {Spulen} each {Spulen jeweils} other {Spulen von {pickup}}} {how}',
  'joined.together': 'zusammen {level}',
  'joined.cancel': '{words}: sie löschen sich aus, kein Signal',
  'joined.hum': 'brummfrei',
  'cards.columns': 'Die ersten Spalten sind die Stellungen; 1/2: in beiden gleich.',
  'cards.number': 'Nummer der Karte: Stellung von {switch}{faced, select, yes {, wie aufgedruckt} other {}}.',
  'cards.numbers':
    'Nummern der Karten: Stellungen von {switches}{faced, select, yes {, wie aufgedruckt} other {}}.',
  'cards.either': '{numbers}: gleich in den Stellungen {positions}.',
  'cards.undrawn':
    'Eine Karte für mehrere Stellungen zeigt nur die Schalter, die in allen davon gleich stehen.',
  'cards.dc-load':
    'Gleichstromlast: Widerstand zwischen den Tonabnehmeranschlüssen, alle Tonabnehmer abgeklemmt.',
  'cards.signal-load':
    'Signallast: dasselbe bei {frequency}{toned, select, yes {, mit Tonregler und Kondensator} other {}}.',
  'cards.bar': 'Balken: Signallast in dieser Stellung; Strich: Referenzlast des Tonabnehmers.',
  'cards.multimeter': 'Multimeter: Tonabnehmer angeschlossen, alle Regler auf 10.',
  'cards.level':
    'dB leiser: Pegel bei 1 kHz, gleiche Spannung in jeder Spule, gegenüber dem lautesten Tonabnehmer in dieser Stellung;',
  'cards.level-alone':
    'bei einem einzelnen Tonabnehmer oder allen zusammen gegenüber der Referenzverdrahtung.',
  'cards.treble':
    'Höhenverlust: Pegel am −3-dB-Punkt der Referenzverdrahtung des Tonabnehmers, gegenüber dieser Verdrahtung.',
  'cards.series': 'In Reihe: Die Last jedes Tonabnehmers enthält die Wicklungen der anderen in seiner Kette.',
  'cards.split':
    'Nur eine Spule: Strich und Pegel sind die des ganzen Tonabnehmers in seiner Referenzverdrahtung.',
  'cards.hum':
    'Brummfrei: Das Brummen aller Spulen zusammen ist kleiner als ein Viertel von dem einer Spule.',
  'desc.position': 'Stellung {position}: {words}.',
  'desc.load': '{pickup}: Gleichstromlast {dc}, Signallast {signal}',

  // ── Drawing: response plot
  'plot.lead':
    'Frequenzgang: Ausgangsspannung an der Buchse bei 1\u00a0V, das in jeder gewählten Spule induziert wird. Lautstärke auf {volume}, Tonregler auf {tone}; Kabel {cable}, Verstärker {amplifier}.',
  'plot.references':
    'Grau gestrichelt: Referenzverdrahtung des Tonabnehmers, bei gleicher Einstellung. Resonanzhöhen gegenüber dem Pegel bei 100 Hz{loss, select, neglected {, Kernverluste vernachlässigt} other {}}.',
  'plot.reference': 'Referenz',
  'plot.reference-of': 'Referenz, {pickups}',
  'plot.cutoff': '−3 dB bei {frequency}',
  'plot.only-here': 'eine Spitze; die Referenz hat keine',
  'plot.only-there': 'keine Spitze; die Referenz hat eine',
  'plot.neither': 'keine Spitze in beiden',
  'plot.difference': '{percent}, Spitze {height}',
  'plot.nothing': 'Kein Ausgangssignal bei dieser Einstellung.',
  'plot.compared': 'Resonanz im Vergleich zur Referenz',
  'plot.resonance': 'Resonanz {figures}',
  'plot.no-resonance': 'keine Resonanz',
  'plot.against': '{pickup} gegenüber seiner Referenz: {words}',

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
  'step-joint.lead': 'Ader{cut} von {from} nach {to}',
  'steps.leg': '{component}{cut}: ein Beinchen an {to}',
  'steps.bend': '{from} zurückbiegen und an {to} löten',
  'steps.sleeved': 'mit Isolierschlauch',
  'steps.marked': 'Aufdruck {print}',
  'steps.hook':
    '{line}; {ends, select, one {nur einhaken} other {an {end} nur einhaken}}, in Schritt {step} löten',
  'steps.gather': '{line}; an {end} alles Eingehakte mitlöten',
  'steps.free': '{line}; das Ende für {point} bleibt frei',
  'steps.why-free':
    '{points}: nicht im Bausatz, sondern am Instrument. Dieses Drahtende bleibt frei, bis die Teile im Instrument sind; bei einem Test die Messspitze an das blanke Ende halten.',
  'steps.why-leads':
    'Die Adern eines Tonabnehmers sind an ihm schon befestigt: nur ihr anderes Ende löten; nur dieses trägt eine Nummer.',
  'steps.why-cable':
    'Tonabnehmer mit vier Adern: den Mantel seines Kabels so weit entfernen, dass jede Ader und das Geflecht ihre eigene Stelle erreichen.',
  'steps.at-leads':
    'Hier wird am blanken Ende einer Ader des Tonabnehmers gelötet, nicht im Tonabnehmer; mit Isolierschlauch überziehen: {ends}.',
  'steps.why-braid':
    'Geflecht: nahe am Ende öffnen, die innere Ader durch das Loch herausziehen und das Geflecht zu einem Strang verdrillen. Bis zur Lötstelle mit Isolierschlauch überziehen und von Signalösen fernhalten.',
  'steps.why-surface':
    'Hier sind schon Lötstellen aus einem früheren Schritt; die neuen daneben setzen: {ends}.',
  'steps.why-test':
    '{end}: jetzt gelötet, damit die Verdrahtung geprüft werden kann, und in Schritt {step} noch einmal mit der Ader des Tonabnehmers.',
  'steps.why-waits':
    'An der Öse eines Tonabnehmers nur eingehakt und dort zusammen mit dessen Ader gelötet: {components}.',

  // ── Soldering: tests after a step, and readings
  'test.setting':
    '{switched, select, yes {{switches}, {volume, select, zero {Lautstärke auf 0, andere Regler auf 10} other {alle Regler auf 10}}} other {{volume, select, zero {Lautstärke auf 0, andere Regler auf 10} other {Alle Regler auf 10}}}}',
  'test.short': 'unter 1\u00a0Ω',
  'test.value': '{nominal}, von {low} bis {high}',
  'test.or-hooked':
    '{expected}; auch {hooked} ist richtig, wo ein nur eingehaktes Beinchen seine Öse schon berührt',
  'test.or-some-hooked':
    '{expected}; auch weniger, bis hinab zu {lowest}, ist richtig: es kommt darauf an, welche der eingehakten Beinchen ihre Öse schon berühren',
  'test.nearly-zero': 'höchstens wenige Ohm',
  'test.nearly-looks':
    'Höchstens wenige Ohm: Ein Poti auf 0 behält am Ende seiner Bahn einen kleinen Widerstand.',
  'test.meter-held':
    'Das Multimeter auf Widerstand stellen, auf einen Bereich über dem erwarteten Wert oder auf Automatik. Finger an beiden Messspitzen verändern große Messwerte: nur am Griff halten.',
  'test.open-looks': 'Offen: Das Multimeter zeigt dasselbe wie mit getrennten Messspitzen, zum Beispiel OL.',
  'test.short-looks':
    'Unter 1\u00a0Ω: Das Multimeter zeigt fast dasselbe wie mit aneinandergehaltenen Messspitzen.',
  'test.cold-looks':
    'Mehr, wo unter 1\u00a0Ω erwartet wird, zum Beispiel 5 bis 50\u00a0Ω: eine kalte Lötstelle; noch einmal erhitzen.',
  'test.wiper-looks':
    'Wenige Ohm, wo ein größerer Wert erwartet wird: ein Kurzschluss, der über ein Poti gemessen wird; wie unter 1\u00a0Ω behandeln.',
  'test.other-looks':
    'Jeder andere Wert: zuerst die Ösen mit dem Plan vergleichen, meist ist ein Draht an der falschen; dann die Werte der Teile prüfen.',
  'test.joint': '{from} – {to}',
  'test.free-end': 'dem freien Ende des Drahts für {point}',
  'test.missing':
    'Zeigt es {near, select, yes {etwa } other {}}{reading}, diese Verbindungen prüfen und nachlöten: {joints}.',
  'test.bridged':
    'Zeigt es unter 1\u00a0Ω, nach einer Lötbrücke oder einem abstehenden Litzendraht suchen, zuerst zwischen {lugs}.',
  'test.touching':
    'Zeigt es unter 1\u00a0Ω, die Drähte von beiden Messspitzen aus verfolgen und suchen, wo ein Litzendraht, ein Geflecht oder Lot sie verbindet.',
  'test.lugs': '{from} und {to}',
  'test.values':
    'Zeigt es einen anderen Wert, die Ösen prüfen, dann den Wert {count, plural, one {dieses Teils} other {dieser Teile}}: {parts}.',
  'test.by-eye': 'Diese Verbindungen prüft keine Messung, also ihr Lot genau ansehen: {joints}.',

  // ── Leaflet: headings, parts, tools, cautions
  'leaflet.kind': 'Verdrahtungssatz: Bauanleitung',
  'leaflet.title': '{title}: Bauanleitung',
  'leaflet.kit': 'Bausatz {id}',
  'leaflet.revision': 'Stand {mark}',
  'leaflet.extent':
    '{parts, plural, one {# Teil} other {# Teile}}, {joints, plural, one {# Verbindung} other {# Verbindungen}}, {steps, plural, one {# Schritt} other {# Schritte}}',
  'leaflet.contents': 'Inhalt',
  'leaflet.drawing': 'Verdrahtungsplan',
  'leaflet.key': 'Legende zum Verdrahtungsplan',
  'leaflet.parts': 'Teile',
  'leaflet.parts-say':
    'Vor dem Beginn jedes Teil abhaken. Fehlt eines oder ist es beschädigt, nicht anfangen.',
  'leaflet.spare-say':
    'Die Mengen von Draht und Isolierschlauch sind der Bedarf dieses Bausatzes und {percent}\u00a0% Reserve.',
  'leaflet.quantity': 'Anz.',
  'leaflet.part': 'Teil',
  'leaflet.picture': 'Bild',
  'leaflet.value': 'Wert',
  'leaflet.recognise': 'Woran zu erkennen',
  'leaflet.done': 'Fertig',
  'leaflet.bands': 'Ringe: {bands}',
  'leaflet.printed': 'Aufdruck {code}',
  'leaflet.measure-first': 'Vor dem Löten messen: von {low} bis {high}',
  'leaflet.measures': 'Zwischen seinen Adern etwa {value}',
  'leaflet.measures-assumed': 'Angenommen: {value} zwischen seinen Adern; messen und notieren',
  'leaflet.measures-coils':
    '{assumed, select, yes {Angenommen, solange seine Adern nicht verbunden sind; messen und notieren} other {Zu messen, solange seine Adern nicht verbunden sind}}: {coils}',
  'leaflet.coil-measures': '{from} bis {to} etwa {value}',
  'leaflet.assumed-say':
    'Der Widerstand dieser Tonabnehmer ist angenommen: {pickups}. Messwerte mit ihnen können abweichen; mit dem vergleichen, was an den Adern gemessen wurde.',
  'leaflet.lugs':
    '{count, plural, one {# Lötöse} other {# Lötösen}}: {names}{cased, select, yes {; dazu aus Metall: {case}} other {}}',
  'leaflet.jack-lugs':
    'Spitze: der Kontakt, der das Ende des Steckers berührt.{ring, select, yes { Ring: der Kontakt, der den mittleren Abschnitt des Steckers berührt.} other {}} Schaft: die Öse, die mit dem Gewinde der Buchse verbunden ist',
  'leaflet.frame-lug': 'Dieses Metall ist der Körper des Schalters oder die Öse, die mit ihm verbunden ist',
  'leaflet.not-in-kit': 'nicht im Bausatz',
  'leaflet.ground-point':
    'Die Stelle am Instrument, zu der dieser Massedraht führt, zum Beispiel Steg, Saitenhalter oder Abschirmung des Fachs. Die Zeichnungen zeigen sie als eine Öse, 1: eine solche Öse zum Löten gibt es nicht',
  'leaflet.orientation': 'Ösen und Stellungen erkennen',
  'orient.hold':
    '{side, select, component {Die Zeichnungen zeigen Potis und Schalter von der Seite der Achse oder des Hebels, als wären die Ösen durch sie hindurch zu sehen.} other {Die Zeichnungen zeigen Potis und Schalter von der Seite ihrer Ösen: jedes Teil mit den Ösen zu sich halten, die Achse oder den Hebel von sich weg.}} An den Teilen im Bausatz können die Ösen anders angeordnet sein: maßgebend sind die folgenden Zeilen.',
  'orient.pot':
    '{side, select, component {Poti: mit der Achse zu sich und den Ösen nach unten gehalten, sind die Ösen von links nach rechts 1, 2, 3. Von hinten gesehen sind sie 3, 2, 1.} other {Poti: so gehalten, mit den Ösen nach unten, sind die Ösen von links nach rechts 3, 2, 1. Von der Achse gesehen sind sie 1, 2, 3.}}',
  'orient.full':
    '{controls}: auf 10, wenn ganz {end, select, clockwise {im} other {gegen den}} Uhrzeigersinn gedreht, von der Achse gesehen; auf 0 am anderen Anschlag.',
  'orient.lever':
    '{switch}: Stellung 1 ist das Ende des Hebelwegs am Steg, Stellung {last} das Ende am Hals.',
  'orient.shaft':
    '{switch}: In Stellung 1 ist die Achse ganz gegen den Uhrzeigersinn gedreht, von der Achse gesehen; von dort im Uhrzeigersinn zählen.',
  'orient.toggle':
    '{switch}: „oben“ und „unten“ bezeichnen, wo der {moves, select, slider {Schieber} other {Hebel}} steht, wenn die Öse {upper} über der Öse {lower} liegt, wie gezeichnet.',
  'orient.check': 'Vor dem Löten an {switch} mit dem Multimeter prüfen: {contacts}.',
  'orient.contact': '{position} unter 1\u00a0Ω zwischen {pairs}',
  'orient.turn':
    'Zeigt das Multimeter stattdessen die Ösen des anderen Endes, die Ösen noch einmal nach dem Plan abzählen; stimmen sie, den Schalter umdrehen.',
  'orient.commons':
    'An {switch} eine Messspitze an {named, select, no {die gemeinsame Öse} other {eine gemeinsame Öse ({lugs})}} halten und mit der anderen suchen, mit welcher Öse sie verbunden ist.',
  'orient.coils':
    '{pickups}: Die Adern sind die zwei Enden jeder Spule, ihr Start und ihr Ende ({coils}); {braid} ist das blanke Geflecht. Welche Ader welche ist, sagt der Hersteller des Tonabnehmers; die Farben sind bei jedem anders. Mit dem Multimeter prüfen: Die zwei Adern einer Spule zeigen deren Widerstand wie in der Teileliste, Adern verschiedener Spulen zeigen offen. Start und Ende unterscheidet kein Multimeter: Sind sie vertauscht, siehe „{fault}“ in der Fehlertabelle.',
  'leaflet.tools': 'Werkzeug',
  'tool.iron': 'Lötkolben, 30 bis 60\u00a0W, mit Ablage, dazu feuchter Schwamm oder Messingwolle',
  'tool.case': 'Breite Lötspitze und feines Schleifpapier, für Lötstellen an einem Metallgehäuse',
  'tool.solder': 'Elektroniklot mit Flussmittelseele, am besten bleifrei',
  'tool.cutters': 'Seitenschneider',
  'tool.strippers': 'Abisolierzange',
  'tool.pliers': 'Kleine Spitzzange',
  'tool.clamp': 'Klemme oder Klebeband zum Festhalten der Teile',
  'tool.stick': 'Holzstäbchen und kleiner Schraubendreher',
  'tool.desolder': 'Entlötpumpe oder Entlötlitze',
  'tool.meter': 'Multimeter mit Widerstandsmessung',
  'tool.goggles': 'Schutzbrille',
  'leaflet.cautions': 'Vor dem Beginn: Sicherheitshinweise',
  'caution.hot':
    'Die Lötspitze ist etwa 350\u00a0°C heiß, und flüssiges Lot spritzt. Den Lötkolben nur am Griff halten und in die Ablage zurückstellen.',
  'caution.eyes':
    'Beim Löten eine Schutzbrille tragen, vor allem beim Abschneiden der Beinchen: Abgeschnittene Enden fliegen weg.',
  'caution.fumes':
    'An frischer Luft arbeiten und den Kopf nicht in den Rauch halten: Flussmitteldampf kann Asthma auslösen.',
  'caution.lead': 'Am besten bleifreies Lot verwenden. Nach dem Löten und vor dem Essen die Hände waschen.',
  'caution.passive':
    'Dies ist eine passive Schaltung. Niemals einen Verstärker mit Netzanschluss öffnen und während der Arbeit keinen anschließen.',
  'caution.earth':
    'Die Saiten sind mit der Erdung des Verstärkers verbunden und damit auch der Spieler. Bei zweifelhafter Erdung vor dem Anschließen eine Elektrofachkraft prüfen lassen.',
  'caution.children': 'Kleinteile, Drahtreste und Lötkolben von Kindern fernhalten.',
  'caution.rules':
    'Örtliche Vorschriften für Elektroarbeiten und Abfall beachten. Weichen sie oder der Rat einer Fachkraft von dieser Anleitung ab, ihnen folgen.',
  'leaflet.steps': 'Löten',
  'leaflet.steps-say':
    'Jeden Draht und jedes Beinchen vor dem Löten durch die Lötöse haken, damit die Verbindung von selbst hält. Öse und Draht zusammen erhitzen, dann das Lot an beide halten, nicht an den Lötkolben. Jede fertige Verbindung abhaken.',
  'leaflet.how-say':
    'Das blanke Ende einer Litze vor dem Einhaken verdrillen und verzinnen. An einer Öse reichen zwei bis drei Sekunden Hitze. Was übersteht, erst an der festen Lötstelle abschneiden. Zum Lösen das Lot schmelzen und mit Entlötpumpe oder Entlötlitze aufnehmen.',
  'leaflet.hold-say':
    'Potis und Schalter vor der ersten Lötstelle mit ihren wirklichen Abständen befestigen, auf dem Schlagbrett oder auf einem Karton mit Löchern: Die Zeichnungen sind nicht maßstäblich.{bridging, select, none {} other { Das ist am wichtigsten, wo die Beinchen eines Bauteils zwei Teile verbinden: {bridging}.}}',
  'leaflet.case-say':
    'Lötstellen an einem Metallgehäuse ({cases}): vor der ersten eine Stelle blank schleifen und abwischen. Die Stelle mit breiter Lötspitze erhitzen, länger als eine Öse, bis etwas Lot flach darauf verläuft. Abkühlen lassen. Dann den Draht oder das Beinchen auf das Lot drücken, beides erhitzen, bis das Lot fließt, und stillhalten, bis es fest ist. Ein Poti zwischen zwei Lötstellen am Gehäuse eine Minute abkühlen lassen.',
  'leaflet.case-plan':
    'Das Gehäuse von {part}, gedreht wie in den Zeichnungen, mit den Stellen für seine Verbindungen: {name} ist Verbindung {number} in Schritt {step}. Alle Stellen vor der ersten Lötung blank schleifen und jede bis zu ihrem Schritt frei lassen.',
  'leaflet.step': 'Schritt {number}: {title}',
  'leaflet.tests-after': '{count, plural, one {Test} other {Tests}} nach Schritt {number}',
  'leaflet.measuring': 'So wird gemessen',
  'leaflet.joint': 'Verbindung',
  'leaflet.notes': 'Notizen',
  'leaflet.wire-of': 'Draht, {colour}',
  'leaflet.bare-wire': 'Blanker Draht für Brücken',
  'leaflet.no-colour': 'beliebige Farbe',
  'leaflet.sleeving-of': 'Isolierschlauch',
  'leaflet.wire': 'Draht',
  'leaflet.cuts': 'Draht zuschneiden',
  'leaflet.cut': 'Zuschnitt',
  'leaflet.length': 'Länge',
  'leaflet.for-steps': 'Für Schritte',
  'leaflet.both-lengths': '{millimetres} ({inches}\u00a0Zoll)',
  'leaflet.strip': '{length} abisolieren',
  'leaflet.trim': 'passend kürzen',
  'leaflet.strip-say':
    'Vor dem Schneiden am Instrument messen: Die Zeichnungen sind nicht maßstäblich. Jeden Draht an beiden Enden {length} abisolieren; das ist in der Länge enthalten. Adern der Tonabnehmer stehen nicht in der Liste: passend kürzen.',
  'leaflet.estimated-say':
    '≈ ist geschätzt: Abstand am Instrument und {percent}\u00a0% mehr, mit beiden abisolierten Enden, aufgerundet auf {length}.',
  'leaflet.extend-for': '{component} (etwa {length})',
  'leaflet.extend-say':
    'Beinchen, die vielleicht nicht von Öse zu Öse reichen: {components}. Der Schritt, der sie lötet, sagt, wie man eines verlängert.',
  'leaflet.extend-step':
    '{components}: Reichen die Beinchen nicht, das Stück Draht 10\u00a0mm weit neben ein Beinchen legen und beide verlöten. Den Isolierschlauch über Beinchen und Lötstelle schieben, dann das freie Ende zu seiner Öse führen.',
  'leaflet.extending-wire': 'Draht zum Verlängern von Beinchen',
  'leaflet.probes': 'Messspitzen',
  'leaflet.probes-at': 'Rote Messspitze an {from}, schwarze an {to}.',
  'leaflet.probe-red': 'rot',
  'leaflet.probe-black': 'schwarz',
  'leaflet.reads': 'Das Multimeter zeigt: {reading}',
  'leaflet.test-number': 'Test {number}: {probes}',
  'leaflet.volume-full': 'Alle Regler auf 10',
  'leaflet.volume-zero': 'Lautstärke auf 0',
  'leaflet.test-before': 'Test vor dem Einbau der Tonabnehmer',
  'leaflet.test-before-say':
    'Den Widerstand an der Buchse messen, ohne eingestecktes Kabel. Erst weitermachen, wenn jeder Wert stimmt: Jetzt ist ein Fehler am leichtesten zu finden. Die Werte gelten für Teile innerhalb ihrer Toleranzen, von 10 bis 30\u00a0°C.',
  'leaflet.test-wrong':
    'Stimmt ein Wert nicht, jede Verbindung dieser Stellung mit dem Plan vergleichen: offen heißt, dass eine fehlt, zu wenig, dass sich zwei berühren oder ein Draht an der falschen Öse ist. Siehe auch „{faults}“.',
  'leaflet.test-finished': 'Test nach dem letzten Schritt',
  'leaflet.test-finished-say':
    'Noch einmal an der Buchse messen, jetzt mit den Tonabnehmern. Der Widerstand eines Tonabnehmers ändert sich mit der Temperatur; die Grenzen berücksichtigen das.',
  'leaflet.fitting': 'Einbau in das Instrument',
  'fit.nuts':
    'Potis, Schalter und Buchse an ihren Platz setzen, ohne an den Drähten zu ziehen. Beim Anziehen von Mutter oder Schrauben das Gehäuse festhalten: Dreht es sich mit, verdrehen sich die Drähte und Lötstellen brechen.',
  'fit.wires':
    'Die Drähte ohne Zug verlegen, abseits der beweglichen Teile von Schaltern. Kein blankes Beinchen, keine Öse und kein blanker Draht darf ein anderes, ein Gehäuse oder die Abschirmung berühren.',
  'fit.point':
    '{point}: das freie Ende dieses Drahts an seine Stelle am Instrument führen und dort blank auf sauberem Metall befestigen. Zwischen diesem Metall und dem Schaft der Buchse zeigt das Multimeter unter 1\u00a0Ω.',
  'fit.plug':
    'Vor dem Schließen des Instruments den Verstärker ganz leise stellen, einstecken, den Verstärker einschalten und nur wenig lauter drehen.',
  'fit.tap':
    'In jeder Schalterstellung jeden Tonabnehmer leicht mit einem kleinen Stahlschraubendreher antippen; den Schraubendreher gut festhalten, denn der Magnet zieht ihn an. Deutlich zu hören ist das bei den Tonabnehmern, die in dieser Stellung klingen, bei den anderen kaum oder gar nicht.',
  'fit.tone':
    'Jeden Tonregler ({controls}) in einer Stellung, in der er wirkt, von 10 auf 0 drehen: Die Höhen müssen verschwinden. Das prüft die Lötstellen von {components}.',
  'fit.stop':
    'Kribbelt es beim Berühren von Metallteilen, sofort den Stecker ziehen und nicht spielen: Verstärker und Netzerdung von einer Elektrofachkraft prüfen lassen. Brummt der Verstärker laut, ebenfalls sofort den Stecker ziehen und zuerst die Buchse prüfen, siehe „{faults}“. Dem Rat der Fachkraft folgen, auch gegen diese Anleitung.',
  'leaflet.number': 'Nr.',
  'leaflet.rings-say':
    'Jeder Schritt hat eine Zeichnung; neue Verbindungen sind darin dick, frühere dünn. Buchstaben auf einem Draht sind das Kürzel seiner Farbe.',
  'rings.number':
    'Die Nummer an einem Ende ist die aus der Liste. Sie steht auf dem Draht oder daneben mit einem dünnen Strich zum Ende.',
  'rings.black': 'Weiße Nummer auf Schwarz: dieses Ende in diesem Schritt löten.',
  'rings.white':
    'Schwarze Nummer auf Weiß: dieses Ende nur einhaken. Gelötet wird es in einem späteren Schritt, zusammen mit allem, was noch an diese Lötöse kommt. Bis dahin ist es als Ring mit einer Lücke gezeichnet.',
  'rings.gathered':
    'Ein Ring mit einem Punkt: dieses Ende wurde in einem früheren Schritt eingehakt. In diesem Schritt löten, zusammen mit allem, was dort eingehakt ist.',
  'rings.none':
    'Keine Nummer: hier ist nichts zu löten, so wo ein Beinchen aus seinem Bauteil und eine Ader aus ihrem Tonabnehmer kommt, an einer umgebogenen Lötöse und an einem Ende, das frei bleibt.',

  // ── Leaflet: what each switch position does, loads, fault finding
  'leaflet.positions': 'Was jede Schalterstellung bewirkt',
  'leaflet.position': 'Stellung',
  'leaflet.sounds': 'Zu hören',
  'leaflet.joined': 'Wie',
  'leaflet.tone': 'Tonregler',
  'leaflet.no-tone': 'keiner',
  'leaflet.always': 'immer',
  'leaflet.loads': 'Last an jedem Tonabnehmer',
  'leaflet.loads-say':
    'Das sind die vorgesehenen Werte dieses Bausatzes, keine Fehler. Gleichstromlast: Widerstand zwischen den Adern des Tonabnehmers, alle Tonabnehmer abgeklemmt. Signallast: dasselbe bei {frequency}{toned, select, yes {, mit Tonregler und Kondensator} other {}}. Alle Regler auf 10. Die letzte Spalte vergleicht die Signallast mit der vorgesehenen.',
  'leaflet.designed-say':
    'Vorgesehene Lasten (Gleichstromlast, Signallast): {loads}. Ist ein Tonabnehmer allein zu hören, klingt er wie vorgesehen, wenn seine Lasten etwa so groß sind. Mehr Ohm machen den Klang heller, weniger machen ihn dumpfer.',
  'leaflet.quieter-say':
    'dB leiser: bei 1 kHz gegenüber dem lautesten Tonabnehmer in derselben Stellung; ein Tonabnehmer allein oder alle zusammen gegenüber der vorgesehenen Verdrahtung.',
  'leaflet.two-loads': '{dc}, {signal}',
  'leaflet.pickup': 'Tonabnehmer',
  'leaflet.dc-load': 'Gleichstromlast',
  'leaflet.signal-load': 'Signallast',
  'leaflet.compared': 'Gegenüber der vorgesehenen Last',
  'leaflet.response': 'Frequenzgang',
  'leaflet.faults': 'Wenn etwas nicht stimmt',
  'leaflet.fault-seen': 'Was auffällt',
  'leaflet.fault-cause': 'Wahrscheinliche Ursache',
  'leaflet.fault-remedy': 'Was zu tun ist',
  'fault.silent': 'In keiner Stellung ein Ton',
  'fault.silent-cause':
    'Eine Verbindung zwischen {volume} und {jack} leitet nicht, oder Signal und Masse berühren sich dort',
  'fault.silent-remedy':
    'Den letzten Test an der Buchse wiederholen. „Offen“: Drähte an Spitze und Schaft nachlöten. Höchstens wenige Ohm bei Lautstärke auf 10: nach einer Lötbrücke oder einem abstehenden Litzendraht zur Masse suchen.',
  'fault.one': 'Ein Tonabnehmer ist stumm',
  'fault.one-cause': 'Eine seiner Adern ist nicht richtig verlötet. Signaladern: {places}',
  'fault.one-remedy':
    'Messwert an der Buchse in seiner Stellung mit dem letzten Test vergleichen; {leads, select, all {alle seine} other {beide}} Adern nachlöten.',
  'fault.thin': 'Dünner, leiser Klang von Tonabnehmern, die zusammen klingen: {pickups}',
  'fault.thin-cause': 'Gegenphasig: Die zwei Adern eines Tonabnehmers sind vertauscht',
  'fault.thin-remedy': 'Signal und Masse bei jedem mit dem Plan vergleichen und die zwei falschen tauschen.',
  'fault.coils': 'Ein Tonabnehmer mit vier Adern klingt dünn und leise',
  'fault.coils-cause':
    'Auch allein: Start und Ende einer seiner Spulen sind vertauscht. Nur zusammen mit einem anderen Tonabnehmer: Start und Ende beider Spulen sind vertauscht',
  'fault.coils-remedy':
    'Seine Adern mit den Angaben des Herstellers vergleichen und Start und Ende dieser Spule oder beider tauschen.',
  'fault.split':
    '{pickups}: Das Umschalten auf eine Spule bewirkt nichts oder kommt in der falschen Stellung',
  'fault.split-cause':
    'Eine Ader oder ein Draht, wo die zwei Spulen zusammenkommen, ist an der falschen Öse des Schalters oder nicht richtig verlötet',
  'fault.split-remedy':
    'Die Messwerte an der Buchse, mit einer und mit beiden Spulen, mit dem letzten Test vergleichen, dann die Ösen dieses Schalters mit dem Plan.',
  'fault.hum': 'Brummen wird beim Berühren der Saiten nicht leiser',
  'fault.hum-cause': '{point} hat keine Verbindung zur Masse',
  'fault.hum-remedy':
    'Von den Saiten zum Schaft der Buchse messen: unter 1\u00a0Ω ist richtig. Sonst den Draht von {point} nachlöten.',
  'fault.buzz': 'Lautes Brummen, beim Berühren von Metall noch lauter',
  'fault.buzz-cause': 'Die Drähte an Spitze und Schaft von {jack} sind vertauscht',
  'fault.buzz-remedy':
    'Sofort den Stecker ziehen und nicht spielen. Der Schaft von {jack}, nicht die Spitze, muss am Multimeter unter 1\u00a0Ω zu den Massedrähten zeigen; sonst die zwei Drähte tauschen. Erst wenn das stimmt, Verstärker und Netzerdung von einer Elektrofachkraft prüfen lassen.',
  'fault.volume': '{controls}: regelt verkehrt herum oder gar nicht',
  'fault.volume-cause': 'Verbindungen zweier Ösen vertauscht, oder die Verbindung zur Masse leitet nicht',
  'fault.volume-remedy':
    'Die drei Lötösen mit dem Plan vergleichen. Auf die Seite achten, von der er gesehen ist.',
  'fault.tone': '{controls}: ändert nichts am Klang',
  'fault.tone-cause': 'Ein Beinchen des Kondensators oder der Draht zu seiner Öse ist nicht richtig verlötet',
  'fault.tone-remedy': 'Die Verbindungen von {components} nachlöten, dann die des Reglers.',
  'fault.order': 'Die Stellungen von {selector} liegen in umgekehrter Reihenfolge',
  'fault.order-cause': 'Der Schalter sitzt verkehrt herum, oder seine Ösen wurden vom falschen Ende gezählt',
  'fault.order-remedy':
    'Die Ösen noch einmal mit dem Multimeter bestimmen. Sitzt jeder Draht an der Öse, die der Plan zeigt, den Schalter an seinem Platz umdrehen; sonst die Drähte an diese Ösen umlöten.',
  'fault.bright': '{pickup} klingt zu hell',
  'fault.bright-cause': 'Ein Beinchen seines Lastwiderstands {pad} ist nicht richtig verlötet',
  'fault.bright-remedy': 'Beide Beinchen von {pad} nachlöten.',
  'fault.crackle': 'Kratzt beim Drehen eines Reglers',
  'fault.crackle-cause': 'Flussmittel ist ins Poti gelaufen, oder es wurde zu lange erhitzt',
  'fault.crackle-remedy': 'Zwanzigmal von Anschlag zu Anschlag drehen. Kratzt es weiter, das Poti ersetzen.',
  'fault.loose': 'Ton kommt und geht, wenn etwas bewegt wird',
  'fault.loose-cause':
    'Eine Lötstelle, die gerissen ist oder kugelig, weil das Lot nie auf die Öse geflossen ist',
  'fault.loose-remedy':
    'Mit einem Holzstäbchen vorsichtig auf jede Lötstelle drücken, bis die schlechte gefunden ist; sie mit wenig neuem Lot erhitzen, bis es fließt.',
  'leaflet.resonance': 'Resonanz',
  'leaflet.cutoff': 'Höhengrenze (−3\u00a0dB)',
  'leaflet.resonance-compared': 'Resonanz gegenüber der Referenz',

  // ── Shop page: index of kits
  'shop.index-title': 'Verdrahtungspläne',
  'shop.index-filter': 'Bausatz finden',
  'shop.index-search': 'Suche',
  'shop.index-pickups': 'Tonabnehmer',
  'shop.index-switch': 'Schalter',
  'shop.index-parts': 'Mit diesen Teilen',
  'shop.index-any': 'Alle',
  'shop.index-none': 'keiner',
  'shop.index-reset': 'Alle zeigen',
  'shop.index-count': '{count, plural, =0 {Kein Bausatz gefunden} one {# Bausatz} other {# Bausätze}}',
  'shop.index-counted': '{count} × {what}',

  // ── Page of circuits
  'gallery.title': 'Schaltungen für passive Gitarrenverdrahtung',
  'gallery.say':
    'Die Buchstaben nennen die Tonabnehmer vom Hals zum Steg: H Humbucker, S Single-Coil. Eine Zeichnung anklicken, um sie allein und in jeder Größe zu sehen.',
  'gallery.contents': 'Schaltungen',
  'gallery.extends': 'In einem Bausatz:',
  'gallery.alt': 'Verdrahtungsplan: {title}',

  // ── Shop page

  // ── Shop page: the figure
  'shop.hint':
    'Auf einen Draht oder eine Öse zeigen, um zu sehen, was sie verbinden. Mit der Tastatur: mit Tab zur Zeichnung, dann die Pfeiltasten.',
  'shop.hint-touch': 'Auf einen Draht oder eine Öse tippen, um zu sehen, was sie verbinden.',
  'shop.path': 'Signalweg',
  'shop.zoom-in': 'Vergrößern',
  'shop.zoom-out': 'Verkleinern',
  'shop.reset': 'Zurücksetzen',
  'shop.print': 'Drucken',
  'shop.rules':
    'Örtliche Vorschriften für Elektroarbeiten und Abfall beachten. Weichen sie oder der Rat einer Fachkraft von dieser Seite ab, ihnen folgen.',
  'shop.joint':
    'Verbindung {number}, {what}: von {from} nach {to}{coloured, select, yes {, {colour}} other {}}{sleeved, select, yes {, mit Isolierschlauch} other {}}.',
  'shop.lug': '{lug}: {joined, select, yes {verbunden mit {ends}} other {unbenutzt}}.',
  'shop.lug-name': '{part} {lug}',
  'shop.joints': 'Alle Verbindungen',
  'shop.from': 'Von',
  'shop.to': 'Nach',
  'shop.colour': 'Drahtfarbe',
  'shop.details': 'Einzelheiten',
  'shop.yes': 'ja',
  'shop.no': 'nein',
};
