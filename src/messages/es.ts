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
  'leaflet.kind': 'Kit de cableado: instrucciones de montaje',
  'leaflet.title': '{title}: instrucciones de montaje',
  'leaflet.kit': 'Kit {id}',
  'leaflet.revision': 'Revisión {mark}',
  'leaflet.contents': 'Contenido',
  'leaflet.drawing': 'Esquema de cableado',
  'leaflet.parts': 'Piezas',
  'leaflet.parts-say': 'Marcar cada pieza antes de empezar. No empezar si falta alguna o está dañada.',
  'leaflet.quantity': 'Cant.',
  'leaflet.part': 'Pieza',
  'leaflet.picture': 'Imagen',
  'leaflet.value': 'Valor',
  'leaflet.recognise': 'Cómo reconocerla',
  'leaflet.done': 'Hecho',
  'leaflet.bands': 'Bandas: {bands}',
  'leaflet.printed': 'Marcado {code}',
  'leaflet.measures': 'Mide unos {value} entre sus hilos',
  'leaflet.lugs': '{count, plural, one {# terminal} other {# terminales}}: {names}',
  'leaflet.two-colours': '{first} y {second}',
  'leaflet.tools': 'Herramientas',
  'tool.iron': 'Soldador de 30 a 60 W con soporte, y esponja húmeda o lana de latón',
  'tool.solder': 'Estaño para electrónica con alma de resina, mejor sin plomo',
  'tool.cutters': 'Alicates de corte',
  'tool.strippers': 'Pelacables',
  'tool.pliers': 'Alicates pequeños de punta fina',
  'tool.clamp': 'Una pinza o cinta para sujetar las piezas',
  'tool.meter': 'Multímetro que mida resistencias',
  'tool.goggles': 'Gafas de protección',
  'leaflet.cautions': 'Antes de empezar: precauciones',
  'caution.hot':
    'La punta está a unos 350 °C y el estaño fundido salpica. Sujetar el soldador solo por el mango y dejarlo en su soporte.',
  'caution.eyes':
    'Llevar gafas de protección al soldar y sobre todo al cortar patillas: los extremos salen despedidos.',
  'caution.fumes':
    'Trabajar con ventilación y apartar la cabeza del humo: los vapores del fundente pueden causar asma.',
  'caution.lead': 'Usar mejor estaño sin plomo. Lavarse las manos después de soldar y antes de comer.',
  'caution.passive':
    'Este circuito es pasivo. No abrir nunca un amplificador conectado a la red ni conectarlo durante el trabajo.',
  'caution.earth':
    'Las cuerdas están unidas a la tierra del amplificador, y con ellas el músico. Si hay dudas sobre la toma de tierra, hacerla revisar por un electricista autorizado antes de enchufar.',
  'caution.children': 'Mantener piezas pequeñas, recortes y soldador lejos de los niños.',
  'caution.rules':
    'Respetar las normas locales sobre trabajos eléctricos y residuos. Si estas, o un profesional autorizado, indican otra cosa que esta hoja, tienen razón.',
  'leaflet.steps': 'Soldadura',
  'leaflet.steps-say':
    'Enganchar cada hilo y patilla en su terminal antes de soldar, para que la unión se sostenga sola. En la carcasa de un potenciómetro, soldar rápido y caliente. Marcar cada unión terminada.',
  'leaflet.step': 'Paso {number}: {title}',
  'leaflet.joint': 'Unión',
  'leaflet.notes': 'Notas',
  'leaflet.wire-of': 'Cable, {colour}',
  'leaflet.bare-wire': 'Hilo desnudo para puentes',
  'leaflet.no-colour': 'cualquier color',
  'leaflet.sleeving-of': 'Macarrón aislante',
  'leaflet.wire': 'Cable',
  'leaflet.cuts': 'Cables que cortar',
  'leaflet.cut': 'Corte',
  'leaflet.length': 'Longitud',
  'leaflet.for-steps': 'Para los pasos',
  'leaflet.both-lengths': '{millimetres} ({inches} pulg.)',
  'leaflet.strip': 'pelar {length}',
  'leaflet.trim': 'Hilo de la pastilla: cortarlo a medida',
  'leaflet.strip-say':
    'Pelar {length} en ambos extremos de cada cable; las longitudes ya lo incluyen. Los hilos de las pastillas no están en la lista: cortarlos a medida.',
  'leaflet.estimated-say':
    '≈ es una estimación: la distancia en el instrumento y un {percent} % más, con ambos extremos pelados, redondeada hacia arriba a {length}. Medir en el instrumento antes de cortar.',
  'leaflet.probes': 'Puntas',
  'leaflet.probes-at': 'P1 en {from}, P2 en {to}.',
  'leaflet.reads': 'El multímetro muestra: {reading}',
  'leaflet.test-number': 'Prueba {number}: {probes}',
  'leaflet.volume-full': 'Todos los controles en 10',
  'leaflet.volume-zero': 'Volumen en 0',
  'leaflet.test-before': 'Prueba antes de montar las pastillas',
  'leaflet.test-before-say':
    'Medir la resistencia en el conector, sin nada enchufado. No seguir hasta que todas las lecturas sean correctas: ahora es cuando mejor se encuentra un fallo. Los valores valen para piezas dentro de sus tolerancias, de 10 a 30 °C.',
  'leaflet.test-finished': 'Prueba con todo soldado',
  'leaflet.test-finished-say':
    'Lo mismo con las pastillas. Donde se lee la resistencia de una pastilla, cambia con la temperatura; una pastilla medida sola antes muestra su propio valor.',
  'leaflet.number': 'N.º',
  'leaflet.rings-say':
    'Cada paso tiene su dibujo. Las uniones nuevas son gruesas y llevan en cada extremo el número de la lista. Número negro: soldar ese extremo en este paso. Número blanco: solo engancharlo; se suelda en un paso posterior, junto con lo que aún llega a ese terminal. Las uniones anteriores son finas.',

  // ── Leaflet: what each switch position does, loads, fault finding
  'leaflet.positions': 'Qué hace cada posición',
  'leaflet.position': 'Posición',
  'leaflet.sounds': 'Suena',
  'leaflet.joined': 'Cómo',
  'leaflet.always': 'siempre',
  'leaflet.loads': 'La carga de cada pastilla',
  'leaflet.loads-say':
    'Carga continua: resistencia entre los hilos de la pastilla con todas desconectadas. Carga de señal: la misma a {frequency}, con el control de tono y su condensador. Todos los controles en 10. Última columna: carga de señal comparada con el cableado sencillo para el que se diseñó la pastilla.',
  'leaflet.pickup': 'Pastilla',
  'leaflet.dc-load': 'Carga continua',
  'leaflet.signal-load': 'Carga de señal',
  'leaflet.compared': 'Respecto a la referencia',
  'leaflet.response': 'Respuesta en frecuencia',
  'leaflet.faults': 'Si algo va mal',
  'leaflet.fault-seen': 'Qué se nota',
  'leaflet.fault-cause': 'Causa probable',
  'leaflet.fault-remedy': 'Qué hacer',
  'fault.silent': 'No suena en ninguna posición',
  'fault.silent-cause': 'Unión abierta entre {volume} y {jack}, o contacto entre señal y masa',
  'fault.silent-remedy':
    'Repetir la última prueba en el conector. «Abierto»: volver a soldar los cables de la punta y la malla. Cerca de 0 Ω con el volumen en 10: buscar un hilo suelto o un puente de estaño a masa.',
  'fault.one': 'Una pastilla no suena',
  'fault.one-cause': 'Su hilo no está bien soldado. Hilos de señal: {places}',
  'fault.one-remedy':
    'Comparar la lectura en el conector en su posición con la última prueba; volver a soldar sus dos hilos.',
  'fault.thin': 'Sonido fino y débil donde suenan juntas {pickups}',
  'fault.thin-cause': 'Fuera de fase: los dos hilos de una pastilla están cambiados',
  'fault.thin-remedy':
    'Comparar señal y masa de cada una con el esquema e intercambiar los dos hilos equivocados.',
  'fault.hum': 'El zumbido no disminuye al tocar las cuerdas',
  'fault.hum-cause': '{point} no está unido a masa',
  'fault.hum-remedy':
    'Medir de las cuerdas a la malla del conector: menos de 1 Ω es correcto. Si no, volver a soldar el cable de {point}.',
  'fault.buzz': 'Zumbido fuerte, mayor al tocar metal',
  'fault.buzz-cause': 'Los cables de punta y malla de {jack} están cambiados',
  'fault.buzz-remedy': 'Desenchufar primero. Intercambiar los dos cables: la masa va en la malla.',
  'fault.volume': 'Funciona al revés o no funciona: {controls}',
  'fault.volume-cause': 'Las uniones de dos terminales están cambiadas, o el terminal de masa está abierto',
  'fault.volume-remedy': 'Comparar sus tres terminales con el esquema. Atención al lado desde el que se ve.',
  'fault.tone': 'No cambia el sonido: {controls}',
  'fault.tone-cause': 'Una patilla del condensador o el cable a su terminal está abierto',
  'fault.tone-remedy': 'Volver a soldar las uniones de {components} y después las del control.',
  'fault.order': 'Las posiciones de {selector} salen en orden inverso',
  'fault.order-cause': 'El interruptor estaba girado al cablearlo',
  'fault.order-remedy':
    'Darle la vuelta en su ranura si los cables alcanzan; si no, mover los hilos de las pastillas según el esquema.',
  'fault.bright': '{pickup} suena demasiado brillante',
  'fault.bright-cause': 'Una patilla de su resistencia de carga {pad} está abierta',
  'fault.bright-remedy': 'Volver a soldar las dos patillas de {pad}.',
  'fault.crackle': 'Cruje al girar un control',
  'fault.crackle-cause': 'Ha entrado fundente en el potenciómetro, o se calentó demasiado',
  'fault.crackle-remedy': 'Girarlo veinte veces de tope a tope. Si continúa, cambiar el potenciómetro.',
  'fault.loose': 'El sonido va y viene al mover algo',
  'fault.loose-cause': 'Una soldadura agrietada o en bola que no mojó el terminal',
  'fault.loose-remedy':
    'Presionar suavemente cada soldadura con un palito de madera; recalentar la mala con un poco de estaño nuevo hasta que fluya.',

  // ── Shop page
};
