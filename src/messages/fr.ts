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
  'view.solder-side':
    'Vu du côté des soudures ; montage pour {hand, select, left {gaucher} other {droitier}}.',
  'view.component-side':
    'Vu du côté des composants, comme à travers la plaque ; montage pour {hand, select, left {gaucher} other {droitier}}.',
  'lines.insulation': 'Couleur et lettres du trait : isolant du fil (CEI 60757).',
  'lines.both':
    'Couleur du trait : isolant du fil là où des lettres l’indiquent (CEI 60757), sinon le signal transporté.',
  'lines.signal': 'Couleur du trait : signal transporté.',
  'lines.letters': 'Lettres : couleur de l’isolant (CEI 60757).',
  'lines.crossing': 'À un croisement, le trait interrompu passe dessous.',
  'controls.full': 'Tous les réglages sur 10',
  'drawn.selected':
    '{pickups} sélectionné : trajet du signal mis en évidence, le reste {rest, select, dashed {en tirets} other {estompé}}.',
  'drawn.silent': 'Pas de signal de sortie dans cette position.',
  'step.of': 'Étape {number} sur {count} : {title}.',
  'step.new':
    'Les nouvelles liaisons sont mises en évidence{how, select, dotted { par des pointillés} other {}}.',
  'sheet.loads-on':
    'Charges dans chaque position du sélecteur : {last, plural, =2 {feuille 2} other {feuilles 2 à {last}}}.',
  'sheet.loads': 'Charges dans chaque position du sélecteur : feuille {number} sur {count}.',
  'piece.drawing': 'câblage',
  'piece.key': 'légende',
  'piece.cards': 'charges dans chaque position du sélecteur',
  'piece.checklist': 'liste de contrôle',
  'key.hot': '{pickup}, point chaud',
  'key.signal': 'signal',
  'key.switch-output': 'sortie du sélecteur',
  'key.output': 'vers la prise jack',
  'key.tone': 'réglage de tonalité',
  'key.other': 'autre fil de signal',
  'key.ground': 'masse (trait double)',
  'key.leg': 'patte de composant nue',
  'key.sleeved': 'patte sous gaine',
  'key.jumper': 'pont de fil nu',
  'key.bend': 'cosse repliée et soudée au boîtier',
  'key.braid': 'tresse de blindage nue : à tenir loin des cosses de signal',
  'key.solder': 'soudure',
  'key.solder-case': 'soudure ; sur le corps rond d’un potentiomètre : à son boîtier',
  'key.unused': 'cosse inutilisée',
  'key.striped': '{colour}, rayé',
  'key.half-track':
    'piste du potentiomètre de balance : {half, select, hatched {moitié hachurée résistive, moitié unie sans résistance} other {moitié claire résistive, moitié foncée sans résistance}}',
  'bare.insulate': 'Isoler le pont de {from} à {to} sur {part} : il croise {across}.',
  'bare.sleeve': 'Gainer la patte de {part} vers {to} : elle croise {across}.',
  'bare.across':
    '{what, select, jumper {un pont de fil nu} own {son autre patte} other {une patte nue de {part}}}',
  'stock.replaced': '{part} : {from} est remplacé par {to}',
  'desc.joints': 'Liaisons : {joints}.',
  'desc.joint': '{joint} de {from} à {to}',
  'joint.wire': 'fil',
  'joint.leg': 'patte',
  'joint.jumper': 'pont',
  'joint.bend': 'cosse repliée',
  'joint.braid': 'tresse',
  'named.list': '{name} : {words}',
  'list.apart': '{first} ; {next}',
  'lugs.numbered': 'cosse {lug}',
  'lug.tip': 'pointe',
  'lug.ring': 'anneau',
  'lug.sleeve': 'corps',
  'lug.hot': 'chaud',
  'lug.ground': 'masse',
  'lug.shield': 'écran',
  'lug.a-start': 'début A',
  'lug.a-finish': 'fin A',
  'lug.b-start': 'début B',
  'lug.b-finish': 'fin B',
  'lug.case': 'boîtier',
  'lug.common': 'commun',
  'lug.frame': 'châssis',
  'coil.coil A': 'bobine A',
  'coil.coil B': 'bobine B',
  'shaft.a': 'axe intérieur',
  'shaft.b': 'axe extérieur',
  'position.pushed in': 'enfoncé',
  'position.pulled out': 'tiré',
  'position.in': 'enfoncé',
  'position.out': 'tiré',
  'position.up': 'en haut',
  'position.down': 'en bas',
  'position.in the middle': 'au milieu',
  'position.middle': 'milieu',
  'position.in the centre': 'au centre',
  'position.centre': 'centre',
  'position.at centre': 'au centre',
  'position.fully anticlockwise': 'à fond en sens antihoraire',
  'position.fully clockwise': 'à fond en sens horaire',
  'position.pressed': 'appuyé',
  'position.released': 'relâché',
  'switch.towards': 'vers {pickups}',
  'switch.position': 'en position {position}',
  'switch.positions': 'dans les positions {positions}',
  'switch.everywhere': 'dans toutes les positions',
  'switch.together': 'partout où ils sont sélectionnés ensemble',
  'switch.with': 'avec {settings}',
  'face.three-way': '3 positions',
  'face.four-way': '4 positions',
  'face.five-way': '5 positions',
  'face.five-way-four-pole': '5 positions, 4 pôles',
  'face.three-way-toggle': 'bascule, 3 positions',
  'face.toggle': 'bascule {action}',
  'face.push-pull': 'push-pull',
  'face.slide': 'à glissière',
  'face.switch': 'commutateur',
  'face.rotary': 'rotatif {kind, select, shorting {court-circuitant} other {non court-circuitant}}',
  'face.push-button': 'poussoir',
  'face.contact': '{position} : {contact, select, open {ouvert} other {fermé}}',
  'face.mono-jack': 'jack mono',
  'face.stereo-jack': 'jack stéréo',
  'face.single-coil': 'simple bobinage',
  'face.humbucker': 'humbucker',
  'face.assumed': '{value} supposé',
  'face.both-gangs': '{value}, les deux pistes',
  'face.same-shaft': '{value}, même axe',
  'face.inner-shaft': '{value}, axe intérieur',
  'face.outer-shaft': '{value}, axe extérieur',
  'face.no-load': '{value}, no-load',
  'taper.linear': 'lin',
  'taper.log': 'log',
  'taper.reverse-log': 'log inverse',
  'taper.lower-half': 'balance',
  'taper.upper-half': 'balance',
  'pads.alone': '{pickup} seul : charge continue {load}',

  // ── Drawing: load cards
  'figure.open': 'ouvert',
  'load.dc': 'charge continue',
  'load.signal': 'charge de signal',
  'meter.jack': 'multimètre, pointe–corps',
  'meter.outputs': 'multimètre, vers le corps',
  'meter.short': 'multimètre',
  'meter.none': 'pas de mesure',
  'meter.assumed': '{reading}, supposé',
  'sounding.none': 'Pas de signal',
  'sounding.head': 'actif',
  'verdict.treble-cut': 'aigus coupés, {level}',
  'verdict.no-load': 'pas de charge',
  'verdict.as-designed': 'comme prévu',
  'verdict.duller': '{percent}, plus sourd',
  'verdict.yet-duller': '{percent}, mais plus sourd',
  'verdict.duller-in-series': '{percent}, plus sourd en série',
  'verdict.heavier': '{percent}, charge plus forte',
  'verdict.brighter': '{percent}, plus brillant',
  'level.down': '{level} plus faible',
  'level.none': 'pas de signal',
  'joined.series': 'en série',
  'joined.parallel': 'en parallèle',
  'joined.both': 'en série et en parallèle',
  'joined.chain': '{pickups} en série',
  'joined.with': '{first}, en parallèle avec {next}',
  'joined.phase': 'en opposition de phase',
  'joined.phase-of': '{pickups} en opposition de phase',
  'joined.coils': '{whose, select, own {bobines} each {bobines de chacun} other {bobines de {pickup}}} {how}',
  'joined.together': 'ensemble {level}',
  'joined.cancel': '{words} : ils s’annulent, pas de signal',
  'joined.hum': 'sans ronflement',
  'cards.columns': 'Les premières colonnes sont les positions ; 1/2 : identique dans les deux.',
  'cards.number':
    'Numéro de la carte : position de {switch}{faced, select, yes {, comme indiqué dessus} other {}}.',
  'cards.numbers':
    'Numéros des cartes : positions de {switches}{faced, select, yes {, comme indiqué dessus} other {}}.',
  'cards.either': '{numbers} : identique dans les positions {positions}.',
  'cards.undrawn': 'Une carte pour plusieurs positions ne montre que les sélecteurs qui y restent inchangés.',
  'cards.dc-load': 'Charge continue : résistance entre les fils du micro, tous les micros débranchés.',
  'cards.signal-load':
    'Charge de signal\u00a0: la même à {frequency}{toned, select, yes {, avec le réglage de tonalité et son condensateur} other {}}.',
  'cards.bar': 'Barre : charge de signal dans cette position ; repère : charge de référence du micro.',
  'cards.multimeter': 'Multimètre : micros branchés, tous les réglages sur 10.',
  'cards.level':
    'dB plus faible : niveau à 1 kHz, même tension dans chaque bobine, par rapport au micro le plus fort dans cette position ;',
  'cards.level-alone': 'pour un seul micro, ou tous ensemble, par rapport au câblage de référence.',
  'cards.treble':
    'Aigus coupés : niveau au point −3 dB du câblage de référence du micro, par rapport à ce câblage.',
  'cards.series': 'En série : la charge de chaque micro comprend les bobinages des autres de sa chaîne.',
  'cards.split':
    'Une seule bobine : repère et niveau sont ceux du micro entier dans son câblage de référence.',
  'cards.hum':
    'Sans ronflement\u00a0: le ronflement de toutes les bobines ensemble est inférieur au quart de celui d’une bobine.',
  'desc.position': 'Position {position} : {words}.',
  'desc.load': '{pickup} : charge continue {dc}, charge de signal {signal}',

  // ── Drawing: response plot
  'plot.lead':
    'Réponse : tension de sortie à la prise jack pour 1 V induit dans chaque bobine sélectionnée. Volume {volume}, tonalité {tone} ; câble {cable}, amplificateur {amplifier}.',
  'plot.references':
    'Tirets gris : câblage de référence du micro, au même réglage. Hauteur des pics par rapport au niveau à 100 Hz{loss, select, neglected {, pertes du noyau négligées} other {}}.',
  'plot.reference': 'référence',
  'plot.reference-of': 'référence, {pickups}',
  'plot.cutoff': '−3 dB à {frequency}',
  'plot.only-here': 'un pic ; la référence n’en a pas',
  'plot.only-there': 'pas de pic ; la référence en a un',
  'plot.neither': 'pas de pic dans les deux',
  'plot.difference': '{percent}, pic {height}',
  'plot.nothing': 'Pas de signal de sortie à ce réglage.',
  'plot.compared': 'résonance comparée à la référence',
  'plot.resonance': 'résonance {figures}',
  'plot.no-resonance': 'pas de résonance',
  'plot.against': '{pickup} par rapport à sa référence : {words}',

  // ── Soldering: steps and their lines
  'step-title.ground': 'Masse',
  'step-title.jumpers':
    '{what, select, jumpers {Ponts} bends {Cosses repliées} other {Ponts et cosses repliées}}',
  'step-title.components': 'Composants',
  'step-title.controls': 'Sélecteur et potentiomètres',
  'step-title.output': 'Sortie',
  'step-title.pickups': 'Micros',
  'step-title.other': 'Autres liaisons',
  'steps.share': '{title}, partie {part} sur {of}',
  'step-joint.wire': 'Fil{cut} de {from} à {to}',
  'step-joint.jumper': 'Pont nu{cut} de {from} à {to}',
  'step-joint.braid': 'Tresse{cut} de {from} à {to}',
  'step-joint.lead': 'Fil du micro{cut} de {from} à {to}',
  'steps.leg': '{component}{cut}\u00a0: une patte à {to}',
  'steps.bend': 'Replier {from} et souder sur {to}',
  'steps.sleeved': 'sous gaine',
  'steps.marked': 'marqué {print}',
  'steps.hook':
    '{line}\u00a0; {ends, select, one {accrocher seulement} other {à {end}, accrocher seulement}}, souder à l’étape {step}',
  'steps.gather': '{line}\u00a0; à {end}, souder tout ce qui est accroché',
  'steps.free': '{line}\u00a0; laisser libre le bout pour {point}',
  'steps.why-free':
    '{points}\u00a0: pas dans le kit, mais sur l’instrument. Ce bout du fil reste libre jusqu’à ce que les pièces soient dans l’instrument\u00a0; pour un test, tenir la pointe de touche sur le bout nu.',
  'steps.why-leads':
    'Les fils d’un micro y sont déjà fixés\u00a0: ne souder que leur autre bout, qui seul porte un numéro.',
  'steps.why-cable':
    'Micro à quatre fils\u00a0: retirer la gaine de son câble assez loin pour que chaque fil et la tresse atteignent leur place.',
  'steps.at-leads':
    'Ces soudures se font au bout nu d’un fil du micro, non dans le micro\u00a0; les gainer\u00a0: {ends}.',
  'steps.why-braid':
    'Tresse\u00a0: l’ouvrir près du bout, sortir le fil intérieur par le trou et torsader la tresse en un brin. La gainer jusqu’à la soudure et la tenir loin des cosses de signal.',
  'steps.why-surface':
    'Ce métal porte déjà des soudures d’une étape précédente\u00a0; faire les nouvelles à côté\u00a0: {ends}.',
  'steps.why-test':
    '{end}\u00a0: soudé maintenant pour pouvoir tester le câblage, puis à nouveau à l’étape {step} avec le fil du micro.',
  'steps.why-waits':
    'Accroché seulement à la cosse d’un micro, où la soudure se fait avec le fil du micro\u00a0: {components}.',

  // ── Soldering: tests after a step, and readings
  'test.setting':
    '{switched, select, yes {{switches}, {volume, select, zero {volume sur 0, autres réglages sur 10} other {tous les réglages sur 10}}} other {{volume, select, zero {Volume sur 0, autres réglages sur 10} other {Tous les réglages sur 10}}}}',
  'test.short': 'moins de 1\u00a0Ω',
  'test.value': '{nominal}, de {low} à {high}',
  'test.or-hooked':
    '{expected}\u00a0; {hooked} convient aussi, si une patte seulement accrochée touche sa cosse',
  'test.or-some-hooked':
    '{expected}\u00a0; moins, jusqu’à {lowest}, convient aussi\u00a0: cela dépend des pattes accrochées qui touchent leur cosse',
  'test.nearly-zero': 'quelques ohms au plus',
  'test.nearly-looks':
    'Quelques ohms au plus\u00a0: un potentiomètre sur 0 garde une faible résistance au bout de sa piste.',
  'test.meter-held':
    'Régler le multimètre sur résistance, sur un calibre supérieur à la valeur attendue ou automatique. Des doigts sur les deux pointes changent les grandes valeurs\u00a0: les tenir par le manche.',
  'test.open-looks':
    'Ouvert\u00a0: le multimètre affiche la même chose que pointes de touche séparées, par exemple OL.',
  'test.short-looks':
    'Moins de 1\u00a0Ω\u00a0: le multimètre affiche presque la même chose que pointes de touche en contact.',
  'test.cold-looks':
    'Davantage là où moins de 1\u00a0Ω est attendu, par exemple 5 à 50\u00a0Ω\u00a0: une soudure froide\u00a0; la réchauffer.',
  'test.wiper-looks':
    'Quelques ohms là où une plus grande valeur est attendue\u00a0: un court-circuit mesuré à travers un potentiomètre\u00a0; le traiter comme moins de 1\u00a0Ω.',
  'test.other-looks':
    'Toute autre valeur\u00a0: comparer d’abord les cosses au plan, car le plus souvent un fil est à la mauvaise\u00a0; vérifier ensuite les valeurs des pièces.',
  'test.joint': '{from} – {to}',
  'test.free-end': 'le bout libre du fil pour {point}',
  'test.missing':
    'S’il affiche {near, select, yes {environ } other {}}{reading}, vérifier et ressouder ces liaisons\u00a0: {joints}.',
  'test.bridged':
    'S’il affiche moins de 1\u00a0Ω, chercher un pont de soudure ou un brin de fil, d’abord entre {lugs}.',
  'test.touching':
    'S’il affiche moins de 1\u00a0Ω, suivre les fils depuis les deux pointes et chercher un brin, une tresse ou de la soudure qui les relie.',
  'test.lugs': '{from} et {to}',
  'test.values':
    'S’il affiche une autre valeur, vérifier les cosses, puis la valeur {count, plural, one {de cette pièce} other {de ces pièces}}\u00a0: {parts}.',
  'test.by-eye': 'Aucune mesure ne prouve ces liaisons\u00a0; examiner leur soudure de près\u00a0: {joints}.',

  // ── Leaflet: headings, parts, tools, cautions
  'leaflet.kind': 'Kit de câblage\u00a0: notice de montage',
  'leaflet.title': '{title}\u00a0: notice de montage',
  'leaflet.kit': 'Kit {id}',
  'leaflet.revision': 'Révision {mark}',
  'leaflet.extent':
    '{parts, plural, one {# pièce} other {# pièces}}, {joints, plural, one {# liaison} other {# liaisons}}, {steps, plural, one {# étape} other {# étapes}}',
  'leaflet.contents': 'Sommaire',
  'leaflet.drawing': 'Plan de câblage',
  'leaflet.key': 'Légende du plan de câblage',
  'leaflet.parts': 'Pièces',
  'leaflet.parts-say':
    'Cocher chaque pièce avant de commencer. Ne pas commencer s’il en manque une ou si elle est abîmée.',
  'leaflet.spare-say':
    'Les quantités de fil et de gaine sont celles de ce kit, plus {percent}\u00a0% de réserve.',
  'leaflet.quantity': 'Qté',
  'leaflet.part': 'Pièce',
  'leaflet.picture': 'Image',
  'leaflet.value': 'Valeur',
  'leaflet.recognise': 'Comment la reconnaître',
  'leaflet.done': 'Fait',
  'leaflet.bands': 'Anneaux\u00a0: {bands}',
  'leaflet.printed': 'Marqué {code}',
  'leaflet.measure-first': 'Le mesurer avant de le souder\u00a0: de {low} à {high}',
  'leaflet.measures': 'Mesure environ {value} entre ses fils',
  'leaflet.measures-assumed': 'Supposé\u00a0: {value} entre ses fils\u00a0; mesurer et noter la valeur',
  'leaflet.measures-coils':
    '{assumed, select, yes {Supposé, avant de relier ses fils\u00a0; mesurer et noter les valeurs} other {Mesure, avant de relier ses fils}}\u00a0: {coils}',
  'leaflet.coil-measures': '{from} à {to}, environ {value}',
  'leaflet.assumed-say':
    'La résistance de ces micros est supposée\u00a0: {pickups}. Les mesures avec eux peuvent différer\u00a0; les comparer à ce qui a été mesuré entre leurs fils.',
  'leaflet.lugs':
    '{count, plural, one {# cosse} other {# cosses}}\u00a0: {names}{cased, select, yes {\u00a0; en plus, en métal\u00a0: {case}} other {}}',
  'leaflet.jack-lugs':
    'Pointe\u00a0: le contact qui touche le bout de la fiche.{ring, select, yes { Anneau\u00a0: le contact qui touche la partie médiane de la fiche.} other {}} Corps\u00a0: la cosse reliée au filetage de la prise',
  'leaflet.frame-lug': 'Ce métal est le corps du commutateur, ou la cosse qui y est reliée',
  'leaflet.not-in-kit': 'pas dans le kit',
  'leaflet.ground-point':
    'L’endroit de l’instrument où va ce fil de masse, par exemple le chevalet, le cordier ou le blindage de la cavité. Les dessins le montrent comme une cosse, 1\u00a0: il n’y a là aucune cosse à souder',
  'leaflet.orientation': 'Reconnaître cosses et positions',
  'orient.hold':
    '{side, select, component {Les dessins montrent potentiomètres et commutateurs du côté de l’axe ou du levier, comme si les cosses se voyaient à travers.} other {Les dessins montrent potentiomètres et commutateurs du côté de leurs cosses\u00a0: tenir chaque pièce cosses vers soi, axe ou levier vers l’arrière.}} Sur les pièces du kit, les cosses peuvent être disposées autrement\u00a0: se fier aux lignes suivantes.',
  'orient.pot':
    '{side, select, component {Potentiomètre\u00a0: tenu axe vers soi et cosses vers le bas, ses cosses sont 1, 2, 3 de gauche à droite. Vues de derrière, elles sont 3, 2, 1.} other {Potentiomètre\u00a0: tenu ainsi, cosses vers le bas, ses cosses sont 3, 2, 1 de gauche à droite. Vues du côté de l’axe, elles sont 1, 2, 3.}}',
  'orient.full':
    '{controls}\u00a0: sur 10 à fond en sens {end, select, clockwise {horaire} other {antihoraire}}, vu du côté de l’axe\u00a0; sur 0 à l’autre butée.',
  'orient.lever':
    '{switch}\u00a0: la position 1 est le bout de course du levier côté chevalet, la position {last} le bout côté manche.',
  'orient.shaft':
    '{switch}\u00a0: en position 1, l’axe est à fond en sens antihoraire, vu du côté de l’axe\u00a0; compter les positions dans le sens horaire à partir de là.',
  'orient.toggle':
    '{switch}\u00a0: «\u00a0en haut\u00a0» et «\u00a0en bas\u00a0» disent où est le {moves, select, slider {curseur} other {levier}} quand la cosse {upper} est au-dessus de la cosse {lower}, comme sur le dessin.',
  'orient.check': 'À vérifier au multimètre avant de souder sur {switch}\u00a0: {contacts}.',
  'orient.contact': '{position}, moins de 1\u00a0Ω entre {pairs}',
  'orient.turn':
    'Si le multimètre indique plutôt les cosses de l’autre bout, recompter les cosses d’après le plan\u00a0; si elles étaient justes, retourner le sélecteur.',
  'orient.commons':
    'Sur {switch}, tenir une pointe sur {named, select, no {la cosse commune} other {une cosse commune ({lugs})}} et chercher avec l’autre à quelle cosse elle est reliée.',
  'orient.coils':
    '{pickups}\u00a0: les fils sont les deux bouts de chaque bobine, son début et sa fin ({coils})\u00a0; {braid} est la tresse nue. Le fabricant du micro dit quel fil est lequel\u00a0; les couleurs changent d’un fabricant à l’autre. Vérifier au multimètre\u00a0: les deux fils d’une bobine affichent sa résistance, comme dans la liste des pièces, et des fils de bobines différentes affichent ouvert. Aucun multimètre ne distingue début et fin\u00a0: s’ils sont inversés, voir «\u00a0{fault}\u00a0» dans le tableau des défauts.',
  'leaflet.tools': 'Outils',
  'tool.iron': 'Fer à souder de 30 à 60\u00a0W avec support, éponge humide ou laine de laiton',
  'tool.case': 'Panne large et papier de verre fin, pour les soudures sur un boîtier en métal',
  'tool.solder': 'Soudure pour électronique à âme décapante, de préférence sans plomb',
  'tool.cutters': 'Pince coupante',
  'tool.strippers': 'Pince à dénuder',
  'tool.pliers': 'Petite pince à becs fins',
  'tool.clamp': 'Un étau ou du ruban adhésif pour tenir les pièces',
  'tool.stick': 'Un bâtonnet de bois et un petit tournevis',
  'tool.desolder': 'Pompe ou tresse à dessouder',
  'tool.meter': 'Multimètre mesurant les résistances',
  'tool.goggles': 'Lunettes de protection',
  'leaflet.cautions': 'Avant de commencer\u00a0: précautions',
  'caution.hot':
    'La panne est à environ 350\u00a0°C et la soudure fondue éclabousse. Tenir le fer par son manche seulement et le reposer sur son support.',
  'caution.eyes':
    'Porter des lunettes de protection pour souder et surtout pour couper les pattes\u00a0: les bouts coupés sont projetés.',
  'caution.fumes':
    'Travailler dans un endroit aéré, la tête hors de la fumée\u00a0: les vapeurs de flux peuvent causer de l’asthme.',
  'caution.lead': 'Préférer la soudure sans plomb. Se laver les mains après le travail et avant de manger.',
  'caution.passive':
    'Ce circuit est passif. Ne jamais ouvrir un amplificateur alimenté par le secteur et ne pas en brancher pendant le travail.',
  'caution.earth':
    'Les cordes sont reliées à la terre de l’amplificateur, et le musicien avec elles. En cas de doute sur la mise à la terre, la faire vérifier par un électricien agréé avant de brancher.',
  'caution.children': 'Tenir les petites pièces, les chutes et le fer hors de portée des enfants.',
  'caution.rules':
    'Respecter les règles locales pour les travaux électriques et les déchets. Si elles, ou un professionnel agréé, contredisent cette notice, les suivre.',
  'leaflet.steps': 'Soudure',
  'leaflet.steps-say':
    'Accrocher chaque fil et chaque patte dans sa cosse avant de souder, pour que la liaison tienne seule. Chauffer ensemble la cosse et le fil, puis apporter la soudure sur eux et non sur le fer. Cocher chaque liaison faite.',
  'leaflet.how-say':
    'Torsader et étamer le bout nu d’un fil multibrin avant de l’accrocher. Sur une cosse, deux à trois secondes de chauffe suffisent. Couper ce qui dépasse une fois la soudure figée. Pour défaire une soudure, la fondre et l’aspirer avec la pompe ou la tresse à dessouder.',
  'leaflet.hold-say':
    'Avant la première soudure, fixer potentiomètres et commutateurs à leurs distances réelles, sur la plaque ou sur un carton percé\u00a0: les dessins ne sont pas à l’échelle.{bridging, select, none {} other { C’est le plus important là où les pattes d’un composant relient deux pièces\u00a0: {bridging}.}}',
  'leaflet.case-say':
    'Soudures sur un boîtier en métal ({cases})\u00a0: avant la première, poncer un endroit jusqu’au métal brillant et l’essuyer. Chauffer cet endroit avec une panne large, plus longtemps qu’une cosse, jusqu’à ce qu’un peu de soudure s’y étale. Laisser refroidir. Appuyer ensuite le fil ou la patte sur la soudure, chauffer les deux jusqu’à ce qu’elle fonde, et ne plus bouger avant qu’elle soit solide. Laisser refroidir un potentiomètre une minute entre deux soudures sur son boîtier.',
  'leaflet.case-plan':
    'Le boîtier de {part}, tourné comme sur les dessins, avec les endroits de ses soudures\u00a0: {name} est la liaison {number} de l’étape {step}. Poncer tous les endroits avant la première soudure, et laisser chacun libre jusqu’à son étape.',
  'leaflet.step': 'Étape {number}\u00a0: {title}',
  'leaflet.tests-after': '{count, plural, one {Essai} other {Essais}} après l’étape {number}',
  'leaflet.measuring': 'Comment mesurer',
  'leaflet.joint': 'Liaison',
  'leaflet.notes': 'Notes',
  'leaflet.wire-of': 'Fil, {colour}',
  'leaflet.bare-wire': 'Fil nu pour les ponts',
  'leaflet.no-colour': 'couleur au choix',
  'leaflet.sleeving-of': 'Gaine isolante',
  'leaflet.wire': 'Fil',
  'leaflet.cuts': 'Fils à couper',
  'leaflet.cut': 'Coupe',
  'leaflet.length': 'Longueur',
  'leaflet.for-steps': 'Pour les étapes',
  'leaflet.both-lengths': '{millimetres} ({inches}\u00a0po)',
  'leaflet.strip': 'dénuder {length}',
  'leaflet.trim': 'couper à longueur',
  'leaflet.strip-say':
    'Mesurer sur l’instrument avant de couper\u00a0: les dessins ne sont pas à l’échelle. Dénuder chaque fil sur {length} aux deux bouts\u00a0; les longueurs en tiennent compte. Les fils des micros ne sont pas dans la liste\u00a0: les couper à la bonne longueur.',
  'leaflet.estimated-say':
    '≈ est une estimation\u00a0: la distance sur l’instrument et {percent}\u00a0% de plus, avec les deux bouts dénudés, arrondie aux {length} supérieurs.',
  'leaflet.extend-for': '{component} (environ {length})',
  'leaflet.extend-say':
    'Pattes peut-être trop courtes pour aller d’une cosse à l’autre\u00a0: {components}. L’étape qui les soude dit comment en prolonger une.',
  'leaflet.extend-step':
    '{components}\u00a0: si les pattes n’atteignent pas leur cosse, poser le bout de fil le long d’une patte sur 10\u00a0mm et les souder ensemble. Glisser la gaine sur la patte et la soudure, puis amener le bout libre à sa cosse.',
  'leaflet.extending-wire': 'Fil pour prolonger des pattes',
  'leaflet.probes': 'Pointes de touche',
  'leaflet.probes-at': 'Pointe de touche rouge sur {from}, noire sur {to}.',
  'leaflet.probe-red': 'rouge',
  'leaflet.probe-black': 'noire',
  'leaflet.reads': 'Le multimètre affiche\u00a0: {reading}',
  'leaflet.test-number': 'Essai {number}\u00a0: {probes}',
  'leaflet.volume-full': 'Tous les réglages sur 10',
  'leaflet.volume-zero': 'Volume sur 0',
  'leaflet.test-before': 'Essai avant le montage des micros',
  'leaflet.test-before-say':
    'Mesurer la résistance à la prise, rien de branché. Ne pas continuer avant que toutes les mesures soient justes\u00a0: c’est maintenant qu’un défaut est le plus facile à trouver. Les valeurs valent pour des pièces dans leurs tolérances, de 10 à 30\u00a0°C.',
  'leaflet.test-wrong':
    'Si une mesure est fausse, comparer chaque liaison de cette position au plan\u00a0: ouvert veut dire qu’il en manque une, trop peu que deux se touchent ou qu’un fil est à la mauvaise cosse. Voir aussi «\u00a0{faults}\u00a0».',
  'leaflet.test-finished': 'Essai une fois tout soudé',
  'leaflet.test-finished-say':
    'Mesurer encore à la prise, maintenant avec les micros. La résistance d’un micro change avec la température\u00a0; les limites en tiennent compte.',
  'leaflet.fitting': 'Montage dans l’instrument',
  'fit.nuts':
    'Mettre en place potentiomètres, commutateurs et prise sans tirer sur les fils. Tenir le corps de la pièce en serrant l’écrou ou les vis\u00a0: s’il tourne, les fils se tordent et des soudures cassent.',
  'fit.wires':
    'Poser les fils sans tension, loin des parties mobiles des commutateurs. Aucune patte nue, aucune cosse ni aucun fil nu ne doit toucher les autres, un boîtier ou le blindage.',
  'fit.point':
    '{point}\u00a0: amener le bout libre de ce fil à sa place sur l’instrument et l’y fixer, nu, sur du métal propre. Entre ce métal et le corps de la prise, le multimètre affiche moins de 1\u00a0Ω.',
  'fit.plug':
    'Avant de refermer l’instrument, mettre le volume de l’amplificateur à 0, brancher, allumer l’amplificateur et monter un peu le volume.',
  'fit.tap':
    'Dans chaque position, tapoter chaque micro avec un petit tournevis en acier, tenu fermement car l’aimant l’attire. On l’entend nettement sur les micros actifs dans cette position, à peine ou pas du tout sur les autres.',
  'fit.tone':
    'Tourner chaque réglage de tonalité ({controls}) de 10 à 0, dans une position où il agit\u00a0: les aigus doivent disparaître. Cela prouve les soudures de {components}.',
  'fit.stop':
    'Si les parties métalliques picotent au toucher, débrancher aussitôt et ne pas jouer\u00a0: faire vérifier l’amplificateur et la mise à la terre par un électricien agréé. Si l’amplificateur ronfle fort, débrancher aussi et vérifier d’abord la prise, voir «\u00a0{faults}\u00a0». Suivre l’avis de l’électricien, même contre cette notice.',
  'leaflet.number': 'N°',
  'leaflet.rings-say':
    'Chaque étape a son dessin\u00a0: les nouvelles liaisons y sont épaisses, celles déjà faites fines. Les lettres sur un fil sont le code de sa couleur.',
  'rings.number':
    'Le numéro à un bout est celui de la liste. Il est sur le fil, ou à côté avec un trait fin jusqu’au bout.',
  'rings.black': 'Numéro blanc sur noir\u00a0: souder ce bout à cette étape.',
  'rings.white':
    'Numéro noir sur blanc\u00a0: accrocher ce bout seulement. Il est soudé plus tard, avec ce qui vient encore à cette cosse. Jusque-là, il est dessiné comme un anneau ouvert d’un côté.',
  'rings.gathered':
    'Un anneau avec un point\u00a0: ce bout a été accroché à une étape précédente. Le souder à cette étape, avec tout ce qui est accroché là.',
  'rings.none':
    'Pas de numéro\u00a0: rien à souder là, comme où une patte sort de son composant et un fil de son micro, à une cosse pliée et à un bout qui reste libre.',

  // ── Leaflet: what each switch position does, loads, fault finding
  'leaflet.positions': 'Ce que fait chaque position',
  'leaflet.position': 'Position',
  'leaflet.sounds': 'On entend',
  'leaflet.joined': 'Comment',
  'leaflet.tone': 'Réglage de tonalité',
  'leaflet.no-tone': 'aucun',
  'leaflet.always': 'toujours',
  'leaflet.loads': 'La charge de chaque micro',
  'leaflet.loads-say':
    'Ce sont les valeurs prévues de ce kit, non des défauts. Charge continue\u00a0: résistance entre les fils du micro, tous les micros débranchés. Charge de signal\u00a0: la même à {frequency}{toned, select, yes {, avec le réglage de tonalité et son condensateur} other {}}. Tous les réglages sur 10. La dernière colonne compare la charge de signal à la charge prévue.',
  'leaflet.designed-say':
    'Charges prévues (charge continue, charge de signal)\u00a0: {loads}. Un micro utilisé seul sonne comme prévu si ses charges sont proches de ces valeurs. Plus d’ohms le rendent plus brillant, moins d’ohms le rendent plus sourd.',
  'leaflet.quieter-say':
    'dB plus faible\u00a0: à 1 kHz, par rapport au micro le plus fort dans la même position\u00a0; un micro seul, ou tous ensemble, par rapport au câblage prévu.',
  'leaflet.two-loads': '{dc}, {signal}',
  'leaflet.pickup': 'Micro',
  'leaflet.dc-load': 'Charge continue',
  'leaflet.signal-load': 'Charge de signal',
  'leaflet.compared': 'Par rapport à la charge prévue',
  'leaflet.response': 'Réponse en fréquence',
  'leaflet.faults': 'En cas de problème',
  'leaflet.fault-seen': 'Ce que l’on constate',
  'leaflet.fault-cause': 'Cause probable',
  'leaflet.fault-remedy': 'Que faire',
  'fault.silent': 'Aucun son dans aucune position',
  'fault.silent-cause':
    'Une liaison entre {volume} et {jack} ne conduit pas, ou le signal touche la masse à cet endroit',
  'fault.silent-remedy':
    'Refaire le dernier essai à la prise. «\u00a0Ouvert\u00a0»\u00a0: ressouder les fils de la pointe et du corps. Quelques ohms au plus avec le volume sur 10\u00a0: chercher un pont de soudure ou un brin de fil vers la masse.',
  'fault.one': 'Un micro est muet',
  'fault.one-cause': 'Un de ses fils n’est pas bien soudé. Fils chauds\u00a0: {places}',
  'fault.one-remedy':
    'Comparer la mesure à la prise dans sa position avec le dernier essai\u00a0; ressouder {leads, select, all {tous ses} other {ses deux}} fils.',
  'fault.thin': 'Son mince et faible de micros qui sonnent ensemble\u00a0: {pickups}',
  'fault.thin-cause': 'En opposition de phase\u00a0: les deux fils d’un micro sont inversés',
  'fault.thin-remedy':
    'Comparer fil chaud et masse de chacun avec le plan et échanger les deux fils inversés.',
  'fault.coils': 'Un micro à quatre fils a un son mince et faible',
  'fault.coils-cause':
    'Seul aussi\u00a0: début et fin d’une de ses bobines sont inversés. Seulement avec un autre micro\u00a0: début et fin des deux bobines sont inversés',
  'fault.coils-remedy':
    'Comparer ses fils aux indications du fabricant et échanger début et fin de cette bobine, ou des deux.',
  'fault.split':
    '{pickups}\u00a0: le passage à une seule bobine est sans effet, ou se fait dans la mauvaise position',
  'fault.split-cause':
    'Un fil là où les deux bobines se rejoignent est à la mauvaise cosse du commutateur, ou mal soudé',
  'fault.split-remedy':
    'Comparer les mesures à la prise, avec une bobine et avec les deux, au dernier essai, puis les cosses de ce commutateur au plan.',
  'fault.hum': 'Le ronflement ne diminue pas quand on touche les cordes',
  'fault.hum-cause': '{point} n’est pas relié à la masse',
  'fault.hum-remedy':
    'Mesurer des cordes au corps de la prise\u00a0: moins de 1\u00a0Ω est correct. Sinon, ressouder le fil de {point}.',
  'fault.buzz': 'Fort ronflement, plus fort quand on touche du métal',
  'fault.buzz-cause': 'Les fils de la pointe et du corps de {jack} sont inversés',
  'fault.buzz-remedy':
    'Débrancher aussitôt et ne pas jouer. Au multimètre, le corps de {jack}, et non la pointe, doit afficher moins de 1\u00a0Ω vers les fils de masse\u00a0; sinon, échanger les deux fils. Si c’est déjà le cas, faire vérifier l’amplificateur et la mise à la terre par un électricien agréé.',
  'fault.volume': '{controls}\u00a0: fonctionne à l’envers ou pas du tout',
  'fault.volume-cause': 'Les liaisons de deux cosses sont inversées, ou la liaison à la masse ne conduit pas',
  'fault.volume-remedy': 'Comparer ses trois cosses avec le plan. Attention au côté d’où il est vu.',
  'fault.tone': '{controls}\u00a0: sans effet sur le son',
  'fault.tone-cause': 'Une patte du condensateur ou le fil vers sa cosse n’est pas bien soudé',
  'fault.tone-remedy': 'Ressouder les liaisons de {components}, puis celles du réglage.',
  'fault.order': 'Les positions de {selector} sont dans l’ordre inverse',
  'fault.order-cause':
    'Le sélecteur est monté à l’envers, ou ses cosses ont été comptées depuis le mauvais bout',
  'fault.order-remedy':
    'Retrouver ses cosses au multimètre. Si chaque fil est à la cosse que montre le plan, retourner le sélecteur à sa place\u00a0; sinon déplacer les fils vers ces cosses.',
  'fault.bright': '{pickup} sonne trop brillant',
  'fault.bright-cause': 'Une patte de sa résistance de charge {pad} n’est pas bien soudée',
  'fault.bright-remedy': 'Ressouder les deux pattes de {pad}.',
  'fault.crackle': 'Crachote quand on tourne un réglage',
  'fault.crackle-cause': 'Du flux a coulé dans le potentiomètre, ou il a été chauffé trop longtemps',
  'fault.crackle-remedy': 'Le tourner vingt fois d’une butée à l’autre. Si cela persiste, le remplacer.',
  'fault.loose': 'Le son va et vient quand on bouge quelque chose',
  'fault.loose-cause': 'Une soudure fissurée, ou en boule parce que la soudure n’a pas coulé sur la cosse',
  'fault.loose-remedy':
    'Appuyer doucement sur chaque soudure avec un bâtonnet de bois\u00a0; réchauffer la mauvaise avec un peu de soudure neuve jusqu’à ce qu’elle coule.',
  'leaflet.resonance': 'Résonance',
  'leaflet.cutoff': 'Fin des aigus (−3\u00a0dB)',
  'leaflet.resonance-compared': 'Résonance par rapport à la référence',

  // ── Shop page: index of kits
  'shop.index-title': 'Plans de câblage',
  'shop.index-filter': 'Trouver un kit',
  'shop.index-search': 'Recherche',
  'shop.index-pickups': 'Micros',
  'shop.index-switch': 'Commutateur',
  'shop.index-parts': 'Avec ces composants',
  'shop.index-any': 'Tous',
  'shop.index-none': 'aucun',
  'shop.index-reset': 'Tout afficher',
  'shop.index-count': '{count, plural, =0 {Aucun kit trouvé} one {# kit} other {# kits}}',
  'shop.index-counted': '{count} × {what}',

  // ── Page of circuits
  'gallery.title': 'Circuits pour câblages passifs de guitare',
  'gallery.say':
    'Les lettres désignent les micros du manche au chevalet\u00a0: H humbucker, S simple bobinage. Cliquer sur un dessin pour le voir seul, à toute taille.',
  'gallery.contents': 'Circuits',
  'gallery.extends': 'Dans un kit\u00a0:',
  'gallery.alt': 'Plan de câblage\u00a0: {title}',

  // ── Shop page

  // ── Shop page: the figure
  'shop.hint':
    'Pointer un fil ou une cosse pour voir ce qui y est relié. Au clavier\u00a0: aller au dessin avec Tab, puis utiliser les flèches.',
  'shop.hint-touch': 'Toucher un fil ou une cosse pour voir ce qui y est relié.',
  'shop.path': 'Trajet du signal',
  'shop.zoom-in': 'Agrandir',
  'shop.zoom-out': 'Réduire',
  'shop.reset': 'Réinitialiser',
  'shop.print': 'Imprimer',
  'shop.rules':
    'Respecter les règles locales pour les travaux électriques et les déchets. Si elles, ou un professionnel agréé, contredisent cette page, les suivre.',
  'shop.joint':
    'Liaison {number}, {what}\u00a0: de {from} à {to}{coloured, select, yes {, {colour}} other {}}{sleeved, select, yes {, sous gaine} other {}}.',
  'shop.lug': '{lug}\u00a0: {joined, select, yes {relié à {ends}} other {inutilisé}}.',
  'shop.lug-name': '{part} {lug}',
  'shop.joints': 'Toutes les liaisons',
  'shop.from': 'De',
  'shop.to': 'À',
  'shop.colour': 'Couleur du fil',
  'shop.details': 'Détails',
  'shop.yes': 'oui',
  'shop.no': 'non',
};
