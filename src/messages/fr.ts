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

  // ── Leaflet: what each switch position does, loads, fault finding

  // ── Shop page
};
