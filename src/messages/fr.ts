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

  // ── Drawing: load cards

  // ── Drawing: response plot

  // ── Soldering: steps and their lines
  'step-title.ground': 'Masse',
  'step-title.jumpers':
    '{what, select, jumpers {Ponts} bends {Cosses repliées} other {Ponts et cosses repliées}}',
  'step-title.components': 'Composants',
  'step-title.controls': 'Sélecteur et potentiomètres',
  'step-title.output': 'Sortie',
  'step-title.pickups': 'Micros',
  'step-title.other': 'Autres soudures',
  'steps.share': '{title}, partie {part} sur {of}',
  'step-joint.wire': 'Fil{cut} de {from} à {to}',
  'step-joint.jumper': 'Pont nu{cut} de {from} à {to}',
  'step-joint.braid': 'Tresse{cut} de {from} à {to}',
  'steps.leg': '{component}{cut} : une patte à {to}',
  'steps.bend': 'Replier {from} et souder sur {to}',
  'steps.sleeved': 'sous gaine',
  'steps.marked': 'marqué {print}',
  'steps.hook':
    '{line} ; {ends, select, one {accrocher seulement} other {à {end}, accrocher seulement}}, souder à l’étape {step}',
  'steps.gather': '{line} ; à {end}, souder tout ce qui est accroché',
  'steps.why-surface': 'Chauffé à nouveau, car rien ne peut s’accrocher à une surface : {ends}.',
  'steps.why-test':
    '{end} : soudé maintenant pour pouvoir tester le câblage, puis à nouveau à l’étape {step} avec le fil du micro.',
  'steps.why-waits':
    'Accroché seulement à la cosse d’un micro, où la soudure se fait avec le fil du micro : {components}.',

  // ── Soldering: tests after a step, and readings
  'test.setting':
    '{switched, select, yes {{switches}, {volume, select, zero {volume sur 0, autres réglages sur 10} other {tous les réglages sur 10}}} other {{volume, select, zero {Volume sur 0, autres réglages sur 10} other {Tous les réglages sur 10}}}}',
  'test.short': 'moins de 1 Ω',
  'test.open': 'ouvert',
  'test.value': '{nominal}, de {low} à {high}',
  'test.open-looks': 'Ouvert : l’appareil affiche la même chose que pointes séparées, par exemple OL.',
  'test.short-looks': 'Moins de 1 Ω : l’appareil affiche presque la même chose que pointes en contact.',
  'test.joint': '{from} – {to}',
  'test.missing': 'S’il affiche {reading} : vérifier et ressouder : {joints}.',
  'test.bridged': 'S’il affiche moins de 1 Ω : chercher de la soudure ou un brin entre {lugs}.',
  'test.lugs': '{from} et {to}',
  'test.values': 'S’il affiche une autre valeur : vérifier les valeurs de {parts}.',
  'test.by-eye': 'Aucune mesure ne montre encore ces liaisons, les examiner de près : {joints}.',

  // ── Leaflet: headings, parts, tools, cautions
  'leaflet.kind': 'Kit de câblage : notice de montage',
  'leaflet.title': '{title} : notice de montage',
  'leaflet.kit': 'Kit {id}',
  'leaflet.revision': 'Révision {mark}',
  'leaflet.contents': 'Sommaire',
  'leaflet.drawing': 'Plan de câblage',
  'leaflet.parts': 'Pièces',
  'leaflet.parts-say':
    'Cocher chaque pièce avant de commencer. Ne pas commencer s’il en manque une ou si elle est abîmée.',
  'leaflet.quantity': 'Qté',
  'leaflet.part': 'Pièce',
  'leaflet.picture': 'Image',
  'leaflet.value': 'Valeur',
  'leaflet.recognise': 'Comment la reconnaître',
  'leaflet.done': 'Fait',
  'leaflet.bands': 'Anneaux : {bands}',
  'leaflet.printed': 'Marqué {code}',
  'leaflet.measures': 'Mesure environ {value} entre ses fils',
  'leaflet.lugs': '{count, plural, one {# cosse} other {# cosses}} : {names}',
  'leaflet.two-colours': '{first} et {second}',
  'leaflet.tools': 'Outils',
  'tool.iron': 'Fer à souder de 30 à 60 W avec support, éponge humide ou laine de laiton',
  'tool.solder': 'Soudure pour électronique à âme décapante, de préférence sans plomb',
  'tool.cutters': 'Pince coupante',
  'tool.strippers': 'Pince à dénuder',
  'tool.pliers': 'Petite pince à becs fins',
  'tool.clamp': 'Un étau ou du ruban adhésif pour tenir les pièces',
  'tool.meter': 'Multimètre mesurant les résistances',
  'tool.goggles': 'Lunettes de protection',
  'leaflet.cautions': 'Avant de commencer : précautions',
  'caution.hot':
    'La panne est à environ 350 °C et la soudure fondue éclabousse. Tenir le fer par son manche seulement et le reposer sur son support.',
  'caution.eyes':
    'Porter des lunettes de protection pour souder et surtout pour couper les pattes : les bouts coupés sont projetés.',
  'caution.fumes':
    'Travailler dans un endroit aéré, la tête hors de la fumée : les vapeurs de flux peuvent causer de l’asthme.',
  'caution.lead': 'Préférer la soudure sans plomb. Se laver les mains après le travail et avant de manger.',
  'caution.passive':
    'Ce circuit est passif. Ne jamais ouvrir un amplificateur alimenté par le secteur et ne pas en brancher pendant le travail.',
  'caution.earth':
    'Les cordes sont reliées à la terre de l’amplificateur, et le musicien avec elles. En cas de doute sur la mise à la terre, la faire vérifier par un électricien agréé avant de brancher.',
  'caution.children': 'Tenir les petites pièces, les chutes et le fer hors de portée des enfants.',
  'caution.rules':
    'Respecter les règles locales pour les travaux électriques et les déchets. Là où elles, ou un professionnel agréé, disent autre chose que cette notice, elles priment.',
  'leaflet.steps': 'Soudure',
  'leaflet.steps-say':
    'Accrocher chaque fil et chaque patte dans sa cosse avant de souder, pour que la liaison tienne seule. Sur le boîtier d’un potentiomètre, souder vite et chaud. Cocher chaque liaison faite.',
  'leaflet.step': 'Étape {number} : {title}',
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
  'leaflet.both-lengths': '{millimetres} ({inches} po)',
  'leaflet.strip': 'dénuder {length}',
  'leaflet.trim': 'Fil du micro : le couper à la bonne longueur',
  'leaflet.strip-say':
    'Dénuder chaque fil sur {length} aux deux bouts ; les longueurs en tiennent compte. Les fils des micros ne sont pas dans la liste : les couper à la bonne longueur.',
  'leaflet.estimated-say':
    '≈ est une estimation : la distance sur l’instrument et {percent} % de plus, avec les deux bouts dénudés, arrondie aux {length} supérieurs. Mesurer sur l’instrument avant de couper.',
  'leaflet.probes': 'Pointes',
  'leaflet.probes-at': 'P1 sur {from}, P2 sur {to}.',
  'leaflet.reads': 'Le multimètre affiche : {reading}',
  'leaflet.test-number': 'Essai {number} : {probes}',
  'leaflet.volume-full': 'Tous les réglages sur 10',
  'leaflet.volume-zero': 'Volume sur 0',
  'leaflet.test-before': 'Essai avant le montage des micros',
  'leaflet.test-before-say':
    'Mesurer la résistance à la prise, rien de branché. Ne pas continuer avant que toutes les mesures soient justes : c’est maintenant qu’un défaut est le plus facile à trouver. Les valeurs valent pour des pièces dans leurs tolérances, de 10 à 30 °C.',
  'leaflet.test-finished': 'Essai une fois tout soudé',
  'leaflet.test-finished-say':
    'La même chose avec les micros. Là où l’on lit la résistance d’un micro, elle change avec la température ; un micro mesuré seul auparavant montre sa propre valeur.',
  'leaflet.number': 'N°',
  'leaflet.rings-say':
    'Chaque étape a son dessin. Les nouvelles liaisons sont épaisses et portent à chaque bout le numéro de la liste. Numéro noir : souder ce bout à cette étape. Numéro blanc : accrocher seulement ; il est soudé plus tard, avec ce qui vient encore à cette cosse. Les liaisons déjà faites sont fines.',

  // ── Leaflet: what each switch position does, loads, fault finding
  'leaflet.positions': 'Ce que fait chaque position',
  'leaflet.position': 'Position',
  'leaflet.sounds': 'On entend',
  'leaflet.joined': 'Comment',
  'leaflet.always': 'toujours',
  'leaflet.loads': 'La charge de chaque micro',
  'leaflet.loads-say':
    'Charge continue : résistance aux bornes du micro, tous les micros débranchés. Charge de signal : la même à {frequency}, avec le réglage de tonalité et son condensateur. Tous les réglages sur 10. Dernière colonne : charge de signal comparée au câblage simple pour lequel le micro est conçu.',
  'leaflet.pickup': 'Micro',
  'leaflet.dc-load': 'Charge continue',
  'leaflet.signal-load': 'Charge de signal',
  'leaflet.compared': 'Par rapport à la référence',
  'leaflet.response': 'Réponse en fréquence',
  'leaflet.faults': 'En cas de problème',
  'leaflet.fault-seen': 'Ce que l’on constate',
  'leaflet.fault-cause': 'Cause probable',
  'leaflet.fault-remedy': 'Que faire',
  'fault.silent': 'Aucun son dans aucune position',
  'fault.silent-cause': 'Liaison ouverte entre {volume} et {jack}, ou contact entre signal et masse',
  'fault.silent-remedy':
    'Refaire le dernier essai à la prise. « Ouvert » : ressouder les fils de la pointe et du corps. Près de 0 Ω avec le volume sur 10 : chercher un brin ou un pont de soudure vers la masse.',
  'fault.one': 'Un micro est muet',
  'fault.one-cause': 'Son fil n’est pas bien soudé. Fils chauds : {places}',
  'fault.one-remedy':
    'Comparer la mesure à la prise dans sa position avec le dernier essai ; ressouder ses deux fils.',
  'fault.thin': 'Son mince et faible là où {pickups} sonnent ensemble',
  'fault.thin-cause': 'Hors phase : les deux fils d’un micro sont inversés',
  'fault.thin-remedy':
    'Comparer fil chaud et masse de chacun avec le plan et échanger les deux fils inversés.',
  'fault.hum': 'Le ronflement ne diminue pas quand on touche les cordes',
  'fault.hum-cause': '{point} n’est pas relié à la masse',
  'fault.hum-remedy':
    'Mesurer des cordes au corps de la prise : moins de 1 Ω est correct. Sinon, ressouder le fil de {point}.',
  'fault.buzz': 'Fort ronflement, plus fort quand on touche du métal',
  'fault.buzz-cause': 'Les fils de la pointe et du corps de {jack} sont inversés',
  'fault.buzz-remedy': 'Débrancher d’abord. Échanger les deux fils : la masse va sur le corps.',
  'fault.volume': 'Fonctionne à l’envers ou pas du tout : {controls}',
  'fault.volume-cause': 'Les liaisons de deux cosses sont inversées, ou la cosse de masse est ouverte',
  'fault.volume-remedy': 'Comparer ses trois cosses avec le plan. Attention au côté d’où il est vu.',
  'fault.tone': 'Ne change rien au son : {controls}',
  'fault.tone-cause': 'Une patte du condensateur ou le fil vers sa cosse est ouvert',
  'fault.tone-remedy': 'Ressouder les liaisons de {components}, puis celles du réglage.',
  'fault.order': 'Les positions de {selector} sont dans l’ordre inverse',
  'fault.order-cause': 'L’interrupteur était retourné pendant le câblage',
  'fault.order-remedy':
    'Le retourner dans sa fente si les fils sont assez longs ; sinon déplacer les fils des micros selon le plan.',
  'fault.bright': '{pickup} sonne trop brillant',
  'fault.bright-cause': 'Une patte de sa résistance de charge {pad} est ouverte',
  'fault.bright-remedy': 'Ressouder les deux pattes de {pad}.',
  'fault.crackle': 'Crépite quand on tourne un réglage',
  'fault.crackle-cause': 'Du flux a coulé dans le potentiomètre, ou il a été chauffé trop longtemps',
  'fault.crackle-remedy': 'Le tourner vingt fois d’une butée à l’autre. Si cela persiste, le remplacer.',
  'fault.loose': 'Le son va et vient quand on bouge quelque chose',
  'fault.loose-cause': 'Une soudure fissurée ou en boule qui n’a pas mouillé la cosse',
  'fault.loose-remedy':
    'Appuyer doucement sur chaque soudure avec un bâtonnet de bois ; réchauffer la mauvaise avec un peu de soudure neuve jusqu’à ce qu’elle coule.',

  // ── Shop page
};
