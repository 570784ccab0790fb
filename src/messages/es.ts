/** What a customer reads, in Spanish, in ICU MessageFormat: see `en.ts`. */
import type { Messages } from './en.ts';

export const es: Messages = {
  // ── The kinds of parts, as a parts list names them: in the singular, without an article
  'kind.blend': 'potenciómetro de mezcla',
  'kind.capacitor': 'condensador',
  'kind.dual-pot': 'potenciómetro doble',
  'kind.four-lead-humbucker': 'pastilla humbucker, cuatro hilos',
  'kind.ground-point': 'punto de masa',
  'kind.humbucker': 'pastilla humbucker, dos hilos',
  'kind.jack': 'jack de salida mono',
  'kind.kill-button': 'pulsador momentáneo',
  'kind.lever-3': 'selector de palanca, tres posiciones',
  'kind.lever-4': 'selector de palanca, cuatro posiciones',
  'kind.lever-5': 'selector de palanca, cinco posiciones',
  'kind.lever-5-4p': 'selector de palanca, cuatro polos, cinco posiciones',
  'kind.mini-toggle': 'mini interruptor de palanca',
  'kind.pot': 'potenciómetro',
  'kind.push-pull': 'potenciómetro push-pull',
  'kind.resistor': 'resistencia',
  'kind.rotary': 'conmutador rotativo',
  'kind.single-coil': 'pastilla de bobina simple',
  'kind.slide': 'interruptor deslizante',
  'kind.stacked-pot': 'potenciómetro concéntrico',
  'kind.stereo-jack': 'jack de salida estéreo',
  'kind.switch': 'conmutador',
  'kind.toggle-3': 'interruptor de palanca, tres posiciones',

  // ── Colours of wires and bands (IEC 60757, IEC 60062)
  'colour.BK': 'negro',
  'colour.BN': 'marrón',
  'colour.RD': 'rojo',
  'colour.OG': 'naranja',
  'colour.YE': 'amarillo',
  'colour.GN': 'verde',
  'colour.BU': 'azul',
  'colour.VT': 'violeta',
  'colour.GY': 'gris',
  'colour.WH': 'blanco',
  'colour.PK': 'rosa',
  'colour.GD': 'oro',
  'colour.TQ': 'turquesa',
  'colour.SR': 'plata',

  // ── Drawing: title, key and labels

  // ── Drawing: load cards

  // ── Drawing: response plot

  // ── Soldering: steps and their lines
  'step-title.ground': 'Masa',
  'step-title.jumpers':
    '{what, select, jumpers {Puentes} bends {Terminales doblados} other {Puentes y terminales doblados}}',
  'step-title.components': 'Componentes',
  'step-title.controls': 'Selector y potenciómetros',
  'step-title.output': 'Salida',
  'step-title.pickups': 'Pastillas',
  'step-title.other': 'Otras soldaduras',
  'steps.share': '{title}, parte {part} de {of}',
  'step-joint.wire': 'Cable{cut} de {from} a {to}',
  'step-joint.jumper': 'Puente desnudo{cut} de {from} a {to}',
  'step-joint.braid': 'Malla{cut} de {from} a {to}',
  'steps.leg': '{component}{cut}: una pata a {to}',
  'steps.bend': 'Doblar {from} hacia atrás y soldar a {to}',
  'steps.sleeved': 'con funda aislante',
  'steps.marked': 'marcado {print}',
  'steps.hook':
    '{line}; {ends, select, one {solo enganchar} other {en {end}, solo enganchar}}, soldar en el paso {step}',
  'steps.gather': '{line}; en {end}, soldar todo lo enganchado',
  'steps.why-surface': 'Se calienta otra vez, pues nada puede engancharse a una superficie: {ends}.',
  'steps.why-test':
    '{end}: se suelda ahora para poder probar el cableado, y otra vez en el paso {step} con el hilo de la pastilla.',
  'steps.why-waits':
    'Solo enganchado en el terminal de una pastilla, donde se suelda junto con el hilo de la pastilla: {components}.',

  // ── Soldering: tests after a step, and readings
  'test.setting':
    '{switched, select, yes {{switches}, {volume, select, zero {volumen en 0, los demás controles en 10} other {todos los controles en 10}}} other {{volume, select, zero {Volumen en 0, los demás controles en 10} other {Todos los controles en 10}}}}',
  'test.short': 'menos de 1 Ω',
  'test.open': 'abierto',
  'test.value': '{nominal}, de {low} a {high}',
  'test.open-looks': 'Abierto: el medidor muestra lo mismo que con las puntas separadas, por ejemplo OL.',
  'test.short-looks': 'Menos de 1 Ω: el medidor muestra casi lo mismo que con las puntas en contacto.',
  'test.joint': '{from} – {to}',
  'test.missing': 'Si muestra {reading}: revisar y volver a soldar: {joints}.',
  'test.bridged': 'Si muestra menos de 1 Ω: buscar estaño o un hilo suelto entre {lugs}.',
  'test.lugs': '{from} y {to}',
  'test.values': 'Si muestra otro valor: comprobar los valores de {parts}.',
  'test.by-eye': 'Ninguna medición muestra todavía estas uniones; mirarlas de cerca: {joints}.',

  // ── Leaflet: headings, parts, tools, cautions

  // ── Leaflet: what each switch position does, loads, fault finding

  // ── Shop page
};
