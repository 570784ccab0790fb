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
  'leaflet.kind': 'Verdrahtungssatz: Bauanleitung',
  'leaflet.title': '{title}: Bauanleitung',
  'leaflet.kit': 'Bausatz {id}',
  'leaflet.revision': 'Stand {mark}',
  'leaflet.contents': 'Inhalt',
  'leaflet.drawing': 'Verdrahtungsplan',
  'leaflet.parts': 'Teile',
  'leaflet.parts-say':
    'Vor dem Beginn jedes Teil abhaken. Fehlt eines oder ist es beschädigt, nicht anfangen.',
  'leaflet.quantity': 'Anz.',
  'leaflet.part': 'Teil',
  'leaflet.picture': 'Bild',
  'leaflet.value': 'Wert',
  'leaflet.recognise': 'Woran zu erkennen',
  'leaflet.done': 'Fertig',
  'leaflet.bands': 'Ringe: {bands}',
  'leaflet.printed': 'Aufdruck {code}',
  'leaflet.measures': 'Misst an seinen Adern etwa {value}',
  'leaflet.lugs': '{count, plural, one {# Lötöse} other {# Lötösen}}: {names}',
  'leaflet.two-colours': '{first} und {second}',
  'leaflet.tools': 'Werkzeug',
  'tool.iron': 'Lötkolben, 30 bis 60 W, mit Ablage, dazu feuchter Schwamm oder Messingwolle',
  'tool.solder': 'Elektroniklot mit Flussmittelseele, am besten bleifrei',
  'tool.cutters': 'Seitenschneider',
  'tool.strippers': 'Abisolierzange',
  'tool.pliers': 'Kleine Spitzzange',
  'tool.clamp': 'Klemme oder Klebeband zum Festhalten der Teile',
  'tool.meter': 'Multimeter mit Widerstandsmessung',
  'tool.goggles': 'Schutzbrille',
  'leaflet.cautions': 'Vor dem Beginn: Sicherheitshinweise',
  'caution.hot':
    'Die Lötspitze ist etwa 350 °C heiß, und flüssiges Lot spritzt. Den Lötkolben nur am Griff halten und in die Ablage zurückstellen.',
  'caution.eyes':
    'Beim Löten eine Schutzbrille tragen, vor allem beim Abschneiden der Drähte: Abgeschnittene Enden fliegen weg.',
  'caution.fumes':
    'An frischer Luft arbeiten und den Kopf nicht in den Rauch halten: Flussmitteldampf kann Asthma auslösen.',
  'caution.lead': 'Am besten bleifreies Lot verwenden. Nach dem Löten und vor dem Essen die Hände waschen.',
  'caution.passive':
    'Dies ist eine passive Schaltung. Niemals einen Verstärker mit Netzanschluss öffnen und während der Arbeit keinen anschließen.',
  'caution.earth':
    'Die Saiten sind mit der Erdung des Verstärkers verbunden und damit auch der Spieler. Bei zweifelhafter Erdung vor dem Anschließen eine Elektrofachkraft prüfen lassen.',
  'caution.children': 'Kleinteile, Drahtreste und Lötkolben von Kindern fernhalten.',
  'caution.rules':
    'Örtliche Vorschriften für Elektroarbeiten und Abfall beachten. Wo sie oder eine Fachkraft etwas anderes sagen als diese Anleitung, gilt das.',
  'leaflet.steps': 'Löten',
  'leaflet.steps-say':
    'Jeden Draht vor dem Löten durch die Lötöse haken, damit die Verbindung von selbst hält. Auf Potigehäusen kurz und heiß löten. Jede fertige Verbindung abhaken.',
  'leaflet.step': 'Schritt {number}: {title}',
  'leaflet.joint': 'Verbindung',
  'leaflet.notes': 'Notizen',
  'leaflet.wire-of': 'Draht, {colour}',
  'leaflet.bare-wire': 'Blanker Draht für Brücken',
  'leaflet.no-colour': 'beliebige Farbe',
  'leaflet.sleeving-of': 'Isolierschlauch',
  'leaflet.wire': 'Draht',
  'leaflet.cuts': 'Drahtliste',
  'leaflet.cut': 'Zuschnitt',
  'leaflet.length': 'Länge',
  'leaflet.for-steps': 'Für Schritte',
  'leaflet.both-lengths': '{millimetres} ({inches} Zoll)',
  'leaflet.strip': '{length} abisolieren',
  'leaflet.trim': 'Ader des Tonabnehmers: passend kürzen',
  'leaflet.strip-say':
    'Jeden Draht an beiden Enden {length} abisolieren; das ist in der Länge enthalten. Adern der Tonabnehmer stehen nicht in der Liste: passend kürzen.',
  'leaflet.estimated-say':
    '≈ ist geschätzt: Abstand am Instrument und {percent} % mehr, mit beiden abisolierten Enden, aufgerundet auf {length}. Vor dem Schneiden am Instrument messen.',
  'leaflet.probes': 'Messspitzen',
  'leaflet.probes-at': 'P1 an {from}, P2 an {to}.',
  'leaflet.reads': 'Das Messgerät zeigt: {reading}',
  'leaflet.test-number': 'Test {number}: {probes}',
  'leaflet.volume-full': 'Alle Regler auf 10',
  'leaflet.volume-zero': 'Lautstärke auf 0',
  'leaflet.test-before': 'Test vor dem Einbau der Tonabnehmer',
  'leaflet.test-before-say':
    'Den Widerstand an der Buchse messen, ohne eingestecktes Kabel. Erst weitermachen, wenn jeder Wert stimmt: Jetzt ist ein Fehler am leichtesten zu finden. Die Werte gelten für Teile innerhalb ihrer Toleranzen, von 10 bis 30 °C.',
  'leaflet.test-finished': 'Test nach dem letzten Schritt',
  'leaflet.test-finished-say':
    'Dasselbe mit den Tonabnehmern. Wo der Widerstand eines Tonabnehmers gemessen wird, ändert er sich mit der Temperatur; ein vorher einzeln gemessener zeigt seinen eigenen Wert.',
  'leaflet.number': 'Nr.',
  'leaflet.rings-say':
    'Jeder Schritt hat eine Zeichnung. Neue Verbindungen sind dick und tragen an beiden Enden die Nummer aus der Liste. Schwarze Nummer: dieses Ende in diesem Schritt löten. Weiße Nummer: nur einhaken; gelötet wird in einem späteren Schritt, zusammen mit allem, was noch an diese Lötöse kommt. Frühere Verbindungen sind dünn.',

  // ── Leaflet: what each switch position does, loads, fault finding
  'leaflet.positions': 'Was jede Schalterstellung bewirkt',
  'leaflet.position': 'Stellung',
  'leaflet.sounds': 'Es klingt',
  'leaflet.joined': 'Wie',
  'leaflet.always': 'immer',
  'leaflet.loads': 'Womit jeder Tonabnehmer belastet ist',
  'leaflet.loads-say':
    'Gleichstromlast: Widerstand an den Anschlüssen des Tonabnehmers, alle Tonabnehmer abgeklemmt. Signallast: dasselbe bei {frequency}, mit Klangregler und Kondensator. Alle Regler auf 10. Letzte Spalte: Signallast im Vergleich mit der einfachen Schaltung, für die der Tonabnehmer gebaut ist.',
  'leaflet.pickup': 'Tonabnehmer',
  'leaflet.dc-load': 'Gleichstromlast',
  'leaflet.signal-load': 'Signallast',
  'leaflet.compared': 'Gegenüber Referenz',
  'leaflet.response': 'Frequenzgang',
  'leaflet.faults': 'Wenn etwas nicht stimmt',
  'leaflet.fault-seen': 'Was auffällt',
  'leaflet.fault-cause': 'Wahrscheinliche Ursache',
  'leaflet.fault-remedy': 'Was zu tun ist',
  'fault.silent': 'Kein Ton in keiner Stellung',
  'fault.silent-cause':
    'Offene Verbindung zwischen {volume} und {jack}, oder Signal und Masse berühren sich dort',
  'fault.silent-remedy':
    'Den letzten Test an der Buchse wiederholen. „Offen“: Drähte an Spitze und Schaft nachlöten. Nahe 0 Ω mit Lautstärke auf 10: nach einer Litze oder Lotbrücke zur Masse suchen.',
  'fault.one': 'Ein Tonabnehmer ist stumm',
  'fault.one-cause': 'Seine Ader ist nicht durchgelötet. Signaladern: {places}',
  'fault.one-remedy':
    'Messwert an der Buchse in seiner Stellung mit dem letzten Test vergleichen; beide Adern nachlöten.',
  'fault.thin': 'Dünner, leiser Klang, wo {pickups} zusammen klingen',
  'fault.thin-cause': 'Gegenphasig: Die zwei Adern eines Tonabnehmers sind vertauscht',
  'fault.thin-remedy': 'Signal und Masse bei jedem mit dem Plan vergleichen und die zwei falschen tauschen.',
  'fault.hum': 'Brummen wird beim Berühren der Saiten nicht leiser',
  'fault.hum-cause': '{point} hat keine Verbindung zur Masse',
  'fault.hum-remedy':
    'Von den Saiten zum Schaft der Buchse messen: unter 1 Ω ist richtig. Sonst den Draht von {point} nachlöten.',
  'fault.buzz': 'Lautes Brummen, beim Berühren von Metall noch lauter',
  'fault.buzz-cause': 'Die Drähte an Spitze und Schaft von {jack} sind vertauscht',
  'fault.buzz-remedy': 'Zuerst Stecker ziehen. Die zwei Drähte tauschen: Masse gehört an den Schaft.',
  'fault.volume': 'Regelt verkehrt herum oder gar nicht: {controls}',
  'fault.volume-cause': 'Verbindungen zweier Lötösen vertauscht, oder die geerdete Lötöse ist offen',
  'fault.volume-remedy':
    'Die drei Lötösen mit dem Plan vergleichen. Auf die Seite achten, von der er gesehen ist.',
  'fault.tone': 'Ändert nichts am Klang: {controls}',
  'fault.tone-cause': 'Ein Anschlussdraht des Kondensators oder der Draht zur Lötöse ist offen',
  'fault.tone-remedy': 'Die Verbindungen von {components} nachlöten, dann die des Reglers.',
  'fault.order': 'Die Stellungen von {selector} liegen in umgekehrter Reihenfolge',
  'fault.order-cause': 'Der Schalter lag beim Verdrahten verkehrt herum',
  'fault.order-remedy':
    'Im Ausschnitt umdrehen, wenn die Drähte lang genug sind; sonst die Tonabnehmeradern nach Plan umlöten.',
  'fault.bright': '{pickup} klingt zu hell',
  'fault.bright-cause': 'Ein Anschlussdraht seines Lastwiderstands {pad} ist offen',
  'fault.bright-remedy': 'Beide Anschlussdrähte von {pad} nachlöten.',
  'fault.crackle': 'Kratzt beim Drehen eines Reglers',
  'fault.crackle-cause': 'Flussmittel ist ins Poti gelaufen, oder es wurde zu lange erhitzt',
  'fault.crackle-remedy': 'Zwanzigmal von Anschlag zu Anschlag drehen. Bleibt es, das Poti ersetzen.',
  'fault.loose': 'Ton kommt und geht, wenn etwas bewegt wird',
  'fault.loose-cause': 'Eine gerissene oder kugelige Lötstelle, die nie geflossen ist',
  'fault.loose-remedy':
    'Mit einem Holzstäbchen vorsichtig auf jede Lötstelle drücken, bis sie gefunden ist; mit wenig neuem Lot erhitzen, bis es fließt.',

  // ── Shop page
};
