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
  'view.solder-side':
    'Visto desde el lado de las soldaduras; montaje para {hand, select, left {zurdos} other {diestros}}.',
  'view.component-side':
    'Visto desde el lado de los componentes, como a través de la placa; montaje para {hand, select, left {zurdos} other {diestros}}.',
  'lines.insulation': 'Color y letras de la línea: aislamiento del cable (IEC 60757).',
  'lines.both':
    'Color de la línea: aislamiento del cable donde lo indican letras (IEC 60757); si no, la señal que lleva.',
  'lines.signal': 'Color de la línea: señal que lleva.',
  'lines.letters': 'Letras: color del aislamiento (IEC 60757).',
  'lines.crossing': 'En un cruce, la línea interrumpida pasa por debajo.',
  'controls.full': 'Todos los controles en 10',
  'drawn.selected':
    '{pickups} seleccionado: camino de la señal resaltado, el resto {rest, select, dashed {a trazos} other {atenuado}}.',
  'drawn.silent': 'Sin señal de salida en esta posición.',
  'step.of': 'Paso {number} de {count}: {title}.',
  'step.new': 'Las conexiones nuevas están resaltadas{how, select, dotted { con líneas de puntos} other {}}.',
  'sheet.loads-on':
    'Cargas en cada posición del selector: {last, plural, =2 {hoja 2} other {hojas 2 a {last}}}.',
  'sheet.loads': 'Cargas en cada posición del selector: hoja {number} de {count}.',
  'piece.drawing': 'cableado',
  'piece.key': 'leyenda',
  'piece.cards': 'cargas en cada posición del selector',
  'piece.checklist': 'lista de comprobación',
  'key.hot': '{pickup}, vivo',
  'key.signal': 'señal',
  'key.switch-output': 'salida del selector',
  'key.output': 'hacia el jack de salida',
  'key.tone': 'control de tono',
  'key.other': 'otro cable de señal',
  'key.ground': 'masa (línea doble)',
  'key.leg': 'patilla de componente desnuda',
  'key.sleeved': 'patilla con funda',
  'key.jumper': 'puente desnudo',
  'key.bend': 'terminal doblado y soldado a la carcasa',
  'key.braid': 'malla desnuda: mantener lejos de los terminales de señal',
  'key.solder': 'soldadura',
  'key.solder-case': 'soldadura; sobre el cuerpo redondo de un potenciómetro: a su carcasa',
  'key.unused': 'terminal sin usar',
  'key.striped': '{colour}, a rayas',
  'key.half-track':
    'pista del potenciómetro de mezcla: {half, select, hatched {mitad rayada con resistencia, mitad lisa sin ella} other {mitad clara con resistencia, mitad oscura sin ella}}',
  'bare.insulate': 'Aislar el puente de {from} a {to} en {part}: cruza {across}.',
  'bare.sleeve': 'Enfundar la patilla de {part} hacia {to}: cruza {across}.',
  'bare.across':
    '{what, select, jumper {un puente desnudo} own {su otra patilla} other {una patilla desnuda de {part}}}',
  'stock.replaced': '{part}: {from} se sustituye por {to}',
  'desc.joints': 'Conexiones: {joints}.',
  'desc.joint': '{joint} de {from} a {to}',
  'joint.wire': 'cable',
  'joint.leg': 'patilla',
  'joint.jumper': 'puente',
  'joint.bend': 'terminal doblado',
  'joint.braid': 'malla',
  'named.list': '{name}: {words}',
  'list.apart': '{first}; {next}',
  'lugs.numbered': 'terminal {lug}',
  'lug.tip': 'punta',
  'lug.ring': 'anillo',
  'lug.sleeve': 'manga',
  'lug.hot': 'vivo',
  'lug.ground': 'masa',
  'lug.shield': 'malla',
  'lug.a-start': 'inicio A',
  'lug.a-finish': 'final A',
  'lug.b-start': 'inicio B',
  'lug.b-finish': 'final B',
  'lug.case': 'carcasa',
  'lug.common': 'común',
  'lug.frame': 'chasis',
  'coil.coil A': 'bobina A',
  'coil.coil B': 'bobina B',
  'shaft.a': 'eje interior',
  'shaft.b': 'eje exterior',
  'position.pushed in': 'metido',
  'position.pulled out': 'sacado',
  'position.in': 'metido',
  'position.out': 'sacado',
  'position.up': 'arriba',
  'position.down': 'abajo',
  'position.in the middle': 'en el medio',
  'position.middle': 'medio',
  'position.in the centre': 'en el centro',
  'position.centre': 'centro',
  'position.at centre': 'en el centro',
  'position.fully anticlockwise': 'a tope en sentido antihorario',
  'position.fully clockwise': 'a tope en sentido horario',
  'position.pressed': 'pulsado',
  'position.released': 'suelto',
  'switch.towards': 'hacia {pickups}',
  'switch.position': 'en la posición {position}',
  'switch.positions': 'en las posiciones {positions}',
  'switch.everywhere': 'en todas las posiciones',
  'switch.together': 'siempre que se seleccionan juntos',
  'switch.with': 'con {settings}',
  'face.three-way': '3 posiciones',
  'face.four-way': '4 posiciones',
  'face.five-way': '5 posiciones',
  'face.five-way-four-pole': '5 posiciones, 4 polos',
  'face.three-way-toggle': 'palanca, 3 posiciones',
  'face.toggle': 'palanca {action}',
  'face.push-pull': 'push-pull',
  'face.slide': 'deslizante',
  'face.switch': 'conmutador',
  'face.rotary': 'rotativo {kind, select, shorting {cortocircuitante} other {no cortocircuitante}}',
  'face.push-button': 'pulsador',
  'face.contact': '{position}: {contact, select, open {abierto} other {cerrado}}',
  'face.mono-jack': 'jack mono',
  'face.stereo-jack': 'jack estéreo',
  'face.single-coil': 'bobina simple',
  'face.humbucker': 'humbucker',
  'face.assumed': '{value} supuesto',
  'face.both-gangs': '{value}, ambas pistas',
  'face.same-shaft': '{value}, mismo eje',
  'face.inner-shaft': '{value}, eje interior',
  'face.outer-shaft': '{value}, eje exterior',
  'face.no-load': '{value}, no-load',
  'taper.linear': 'lin',
  'taper.log': 'log',
  'taper.reverse-log': 'log inverso',
  'taper.lower-half': 'mezcla',
  'taper.upper-half': 'mezcla',
  'pads.alone': '{pickup} solo: carga continua {load}',

  // ── Drawing: load cards
  'figure.open': 'abierto',
  'load.dc': 'carga continua',
  'load.signal': 'carga de señal',
  'meter.jack': 'multímetro, punta–manga',
  'meter.outputs': 'multímetro, a la manga',
  'meter.short': 'multímetro',
  'meter.none': 'sin lectura',
  'meter.assumed': '{reading}, supuesto',
  'sounding.none': 'Sin señal',
  'sounding.head': 'suena',
  'verdict.treble-cut': 'agudos cortados, {level}',
  'verdict.no-load': 'sin carga',
  'verdict.as-designed': 'según diseño',
  'verdict.duller': '{percent}, más apagado',
  'verdict.yet-duller': '{percent}, pero más apagado',
  'verdict.duller-in-series': '{percent}, más apagado en serie',
  'verdict.heavier': '{percent}, carga mayor',
  'verdict.brighter': '{percent}, más brillante',
  'level.down': '{level} más bajo',
  'level.none': 'sin señal',
  'joined.series': 'en serie',
  'joined.parallel': 'en paralelo',
  'joined.both': 'en serie y en paralelo',
  'joined.chain': '{pickups} en serie',
  'joined.with': '{first}, en paralelo con {next}',
  'joined.phase': 'en contrafase',
  'joined.phase-of': '{pickups} en contrafase',
  'joined.coils':
    '{whose, select, own {bobinas} each {bobinas de cada una} other {bobinas de {pickup}}} {how}',
  'joined.together': 'juntas {level}',
  'joined.cancel': '{words}: se anulan, sin señal',
  'joined.hum': 'sin zumbido',
  'cards.columns': 'Las primeras columnas son las posiciones; 1/2: igual en ambas.',
  'cards.number':
    'Número de la tarjeta: posición de {switch}{faced, select, yes {, como se indica en él} other {}}.',
  'cards.numbers':
    'Números de las tarjetas: posiciones de {switches}{faced, select, yes {, como se indica en ellos} other {}}.',
  'cards.either': '{numbers}: igual en las posiciones {positions}.',
  'cards.undrawn':
    'Una tarjeta de varias posiciones muestra solo los selectores que no cambian en ninguna de ellas.',
  'cards.dc-load':
    'Carga continua: resistencia entre los hilos de la pastilla, todas las pastillas desconectadas.',
  'cards.signal-load':
    'Carga de señal: la misma a {frequency}{toned, select, yes {, con el control de tono y su condensador} other {}}.',
  'cards.bar': 'Barra: carga de señal en esta posición; marca: carga de referencia de la pastilla.',
  'cards.multimeter': 'Multímetro: pastillas conectadas, todos los controles en 10.',
  'cards.level':
    'dB más bajo: nivel a 1 kHz, igual tensión en cada bobina, respecto de la pastilla más fuerte en esta posición;',
  'cards.level-alone': 'con una sola pastilla, o todas juntas, respecto del cableado de referencia.',
  'cards.treble':
    'Agudos cortados: nivel en el punto de −3 dB del cableado de referencia de la pastilla, respecto de ese cableado.',
  'cards.series': 'En serie: la carga de cada pastilla incluye los bobinados de las demás de su cadena.',
  'cards.split': 'Una sola bobina: marca y nivel son los de la pastilla entera en su cableado de referencia.',
  'cards.hum':
    'Sin zumbido: el zumbido de todas las bobinas juntas es menor que la cuarta parte del de una bobina.',
  'desc.position': 'Posición {position}: {words}.',
  'desc.load': '{pickup}: carga continua {dc}, carga de señal {signal}',

  // ── Drawing: response plot
  'plot.lead':
    'Respuesta: tensión de salida en el jack con 1 V inducido en cada bobina seleccionada. Volumen {volume}, tono {tone}; cable {cable}, amplificador {amplifier}.',
  'plot.references':
    'Trazos grises: cableado de referencia de la pastilla, con el mismo ajuste. Altura de los picos respecto del nivel a 100 Hz{loss, select, neglected {, sin contar las pérdidas del núcleo} other {}}.',
  'plot.reference': 'referencia',
  'plot.reference-of': 'referencia, {pickups}',
  'plot.cutoff': '−3 dB a {frequency}',
  'plot.only-here': 'un pico; la referencia no tiene',
  'plot.only-there': 'sin pico; la referencia tiene uno',
  'plot.neither': 'sin pico en ninguna',
  'plot.difference': '{percent}, pico {height}',
  'plot.nothing': 'Sin señal de salida con este ajuste.',
  'plot.compared': 'resonancia comparada con la referencia',
  'plot.resonance': 'resonancia {figures}',
  'plot.no-resonance': 'sin resonancia',
  'plot.against': '{pickup} frente a su referencia: {words}',

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
  'step-joint.lead': 'Hilo de la pastilla{cut} de {from} a {to}',
  'steps.leg': '{component}{cut}: una patilla a {to}',
  'steps.bend': 'Doblar {from} hacia atrás y soldar a {to}',
  'steps.sleeved': 'con funda aislante',
  'steps.marked': 'marcado {print}',
  'steps.hook':
    '{line}; {ends, select, one {solo enganchar} other {en {end}, solo enganchar}}, soldar en el paso {step}',
  'steps.gather': '{line}; en {end}, soldar todo lo enganchado',
  'steps.free': '{line}; dejar libre el extremo para {point}',
  'steps.why-free':
    '{points}: no está en el kit, sino en el instrumento. Este extremo del cable queda libre hasta que las piezas estén en el instrumento; en una prueba, apoyar la punta en el extremo desnudo.',
  'steps.why-leads':
    'Los hilos de una pastilla ya están unidos a ella: soldar solo el otro extremo, el único que lleva número.',
  'steps.why-cable':
    'Pastilla de cuatro hilos: pelar la cubierta de su cable lo bastante para que cada hilo y la malla lleguen a su lugar.',
  'steps.at-leads':
    'Estas soldaduras se hacen en el extremo desnudo de un hilo de la pastilla, no dentro de ella; enfundarlas: {ends}.',
  'steps.why-braid':
    'Malla: abrirla cerca del extremo, sacar el hilo interior por el hueco y retorcer la malla en un solo cordón. Enfundarla hasta la soldadura y mantenerla lejos de los terminales de señal.',
  'steps.why-surface':
    'Este metal ya tiene soldaduras de un paso anterior; hacer las nuevas al lado: {ends}.',
  'steps.why-test':
    '{end}: se suelda ahora para poder probar el cableado, y otra vez en el paso {step} con el hilo de la pastilla.',
  'steps.why-waits':
    'Solo enganchado en el terminal de una pastilla, donde se suelda junto con el hilo de la pastilla: {components}.',

  // ── Soldering: tests after a step, and readings
  'test.setting':
    '{switched, select, yes {{switches}, {volume, select, zero {volumen en 0, los demás controles en 10} other {todos los controles en 10}}} other {{volume, select, zero {Volumen en 0, los demás controles en 10} other {Todos los controles en 10}}}}',
  'test.short': 'menos de 1\u00a0Ω',
  'test.value': '{nominal}, de {low} a {high}',
  'test.or-hooked':
    '{expected}; {hooked} también es correcto, si una patilla solo enganchada toca su terminal',
  'test.or-some-hooked':
    '{expected}; menos, hasta {lowest}, también es correcto: depende de qué patillas enganchadas tocan su terminal',
  'test.nearly-zero': 'unos pocos ohmios como máximo',
  'test.nearly-looks':
    'Unos pocos ohmios como máximo: un potenciómetro en 0 conserva una pequeña resistencia al final de su pista.',
  'test.meter-held':
    'Poner el multímetro en resistencia, en un rango mayor que el valor esperado o automático. Los dedos en ambas puntas cambian las lecturas grandes: sujetarlas por el mango.',
  'test.open-looks':
    'Abierto: el multímetro muestra lo mismo que con las puntas de prueba separadas, por ejemplo OL.',
  'test.short-looks':
    'Menos de 1\u00a0Ω: el multímetro muestra casi lo mismo que con las puntas de prueba en contacto.',
  'test.cold-looks':
    'Más donde se espera menos de 1\u00a0Ω, por ejemplo de 5 a 50\u00a0Ω: una soldadura fría; volver a calentarla.',
  'test.wiper-looks':
    'Unos pocos ohmios donde se espera un valor mayor: un cortocircuito medido a través de un potenciómetro; tratarlo como menos de 1\u00a0Ω.',
  'test.other-looks':
    'Cualquier otro valor: comparar primero los terminales con el esquema, pues lo más probable es un cable en el equivocado; después, los valores de las piezas.',
  'test.joint': '{from} – {to}',
  'test.free-end': 'el extremo libre del cable para {point}',
  'test.missing':
    'Si muestra {near, select, yes {unos } other {}}{reading}, revisar y volver a soldar estas uniones: {joints}.',
  'test.bridged':
    'Si muestra menos de 1\u00a0Ω, buscar un puente de estaño o un hilo suelto, primero entre {lugs}.',
  'test.touching':
    'Si muestra menos de 1\u00a0Ω, seguir los cables desde ambas puntas y buscar un hilo suelto, una malla o estaño que los una.',
  'test.lugs': '{from} y {to}',
  'test.values':
    'Si muestra otro valor, comprobar los terminales y después el valor de {count, plural, one {esta pieza} other {estas piezas}}: {parts}.',
  'test.by-eye': 'Ninguna medición comprueba estas uniones; mirar de cerca su soldadura: {joints}.',

  // ── Leaflet: headings, parts, tools, cautions
  'leaflet.kind': 'Kit de cableado: instrucciones de montaje',
  'leaflet.title': '{title}: instrucciones de montaje',
  'leaflet.kit': 'Kit {id}',
  'leaflet.revision': 'Revisión {mark}',
  'leaflet.extent':
    '{parts, plural, one {# pieza} other {# piezas}}, {joints, plural, one {# unión} other {# uniones}}, {steps, plural, one {# paso} other {# pasos}}',
  'leaflet.contents': 'Contenido',
  'leaflet.drawing': 'Esquema de cableado',
  'leaflet.key': 'Leyenda del esquema de cableado',
  'leaflet.parts': 'Piezas',
  'leaflet.parts-say': 'Marcar cada pieza antes de empezar. No empezar si falta alguna o está dañada.',
  'leaflet.spare-say':
    'Las cantidades de cable y funda son las de este kit y un {percent}\u00a0% de reserva.',
  'leaflet.quantity': 'Cant.',
  'leaflet.part': 'Pieza',
  'leaflet.picture': 'Imagen',
  'leaflet.value': 'Valor',
  'leaflet.recognise': 'Cómo reconocerla',
  'leaflet.done': 'Hecho',
  'leaflet.bands': 'Bandas: {bands}',
  'leaflet.printed': 'Marcado {code}',
  'leaflet.measure-first': 'Medirla antes de soldarla: de {low} a {high}',
  'leaflet.measures': 'Mide unos {value} entre sus hilos',
  'leaflet.measures-assumed': 'Supuesto: {value} entre sus hilos; medir y anotar el valor',
  'leaflet.measures-coils':
    '{assumed, select, yes {Supuesto, antes de unir sus hilos; medir y anotar los valores} other {Mide, antes de unir sus hilos}}: {coils}',
  'leaflet.coil-measures': '{from} a {to}, unos {value}',
  'leaflet.assumed-say':
    'La resistencia de estas pastillas es supuesta: {pickups}. Las lecturas con ellas pueden diferir; compararlas con lo medido entre sus hilos.',
  'leaflet.lugs':
    '{count, plural, one {# terminal} other {# terminales}}: {names}{cased, select, yes {; además, de metal: {case}} other {}}',
  'leaflet.jack-lugs':
    'Punta: el contacto que toca el extremo de la clavija.{ring, select, yes { Anillo: el contacto que toca la parte central de la clavija.} other {}} Manga: el terminal unido a la rosca del jack',
  'leaflet.frame-lug': 'Este metal es el cuerpo del conmutador, o el terminal unido a él',
  'leaflet.not-in-kit': 'no incluido en el kit',
  'leaflet.ground-point':
    'El lugar del instrumento al que va este cable de masa, por ejemplo el puente, el cordal o el apantallado de la cavidad. Los dibujos lo muestran como un terminal, 1: no hay tal terminal donde soldar',
  'leaflet.orientation': 'Cómo reconocer terminales y posiciones',
  'orient.hold':
    '{side, select, component {Los dibujos muestran potenciómetros y conmutadores desde el lado del eje o de la palanca, como si los terminales se vieran a través de ellos.} other {Los dibujos muestran potenciómetros y conmutadores desde el lado de sus terminales: sujetar cada pieza con los terminales hacia uno mismo y el eje o la palanca hacia atrás.}} En las piezas del kit los terminales pueden estar dispuestos de otra forma: valen las líneas siguientes.',
  'orient.pot':
    '{side, select, component {Potenciómetro: con el eje hacia uno mismo y los terminales hacia abajo, son 1, 2, 3 de izquierda a derecha. Vistos desde atrás son 3, 2, 1.} other {Potenciómetro: sujeto así, con los terminales hacia abajo, son 3, 2, 1 de izquierda a derecha. Vistos desde el eje son 1, 2, 3.}}',
  'orient.full':
    '{controls}: en 10 al girar a tope en sentido {end, select, clockwise {horario} other {antihorario}}, visto desde el eje; en 0 en el otro tope.',
  'orient.lever':
    '{switch}: la posición 1 es el extremo del recorrido de la palanca junto al puente, la posición {last} el extremo junto al mástil.',
  'orient.shaft':
    '{switch}: en la posición 1 el eje está girado a tope en sentido antihorario, visto desde el eje; desde ahí se cuenta en sentido horario.',
  'orient.toggle':
    '{switch}: «arriba» y «abajo» indican dónde está {moves, select, slider {el cursor} other {la palanca}} con el terminal {upper} por encima del terminal {lower}, como en el dibujo.',
  'orient.check': 'Comprobar con el multímetro antes de soldar en {switch}: {contacts}.',
  'orient.contact': '{position}, menos de 1\u00a0Ω entre {pairs}',
  'orient.turn':
    'Si el multímetro indica los terminales del otro extremo, contarlos otra vez según el esquema; si eran correctos, dar la vuelta al selector.',
  'orient.commons':
    'En {switch}, apoyar una punta en {named, select, no {el terminal común} other {un terminal común ({lugs})}} y buscar con la otra a qué terminal está unido.',
  'orient.coils':
    '{pickups}: los hilos son los dos extremos de cada bobina, su inicio y su final ({coils}); {braid} es el apantallado del cable, sin aislar. El fabricante de la pastilla dice cuál es cada hilo; los colores cambian de un fabricante a otro. Comprobar con el multímetro: los dos hilos de una bobina muestran su resistencia, como en la lista de piezas, y los de bobinas distintas muestran abierto. Ningún multímetro distingue inicio y final: si están cambiados, ver «{fault}» en la tabla de fallos.',
  'leaflet.tools': 'Herramientas',
  'tool.iron': 'Soldador de 30 a 60\u00a0W con soporte, y esponja húmeda o lana de latón',
  'tool.case': 'Punta de soldador ancha y lija fina, para las soldaduras en una carcasa de metal',
  'tool.solder': 'Estaño para electrónica con alma de resina, mejor sin plomo',
  'tool.cutters': 'Alicates de corte',
  'tool.strippers': 'Pelacables',
  'tool.pliers': 'Alicates pequeños de punta fina',
  'tool.clamp': 'Una pinza o cinta para sujetar las piezas',
  'tool.stick': 'Un palito de madera y un destornillador pequeño',
  'tool.desolder': 'Bomba o malla de desoldar',
  'tool.meter': 'Multímetro que mida resistencias',
  'tool.goggles': 'Gafas de protección',
  'leaflet.cautions': 'Antes de empezar: precauciones',
  'caution.hot':
    'La punta está a unos 350\u00a0°C y el estaño fundido salpica. Sujetar el soldador solo por el mango y dejarlo en su soporte.',
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
    'Respetar las normas locales sobre trabajos eléctricos y residuos. Si estas, o un profesional autorizado, contradicen esta hoja, seguirlas.',
  'leaflet.steps': 'Soldadura',
  'leaflet.steps-say':
    'Enganchar cada cable y cada patilla en su terminal antes de soldar, para que la unión se sostenga sola. Calentar a la vez el terminal y el cable, y aplicar el estaño sobre ellos, no sobre el soldador. Marcar cada unión terminada.',
  'leaflet.how-say':
    'Retorcer y estañar el extremo desnudo de un cable de hilos finos antes de engancharlo. En un terminal bastan dos o tres segundos de calor. Cortar lo que sobra cuando la soldadura esté sólida. Para deshacerla, fundirla y retirar el estaño con la bomba o la malla de desoldar.',
  'leaflet.hold-say':
    'Antes de la primera soldadura, fijar potenciómetros y conmutadores a sus distancias reales, en el golpeador o en un cartón con agujeros: los dibujos no están a escala.{bridging, select, none {} other { Es lo más importante donde las patillas de un componente unen dos piezas: {bridging}.}}',
  'leaflet.case-say':
    'Soldaduras en una carcasa de metal ({cases}): antes de la primera, lijar un punto hasta que brille y limpiarlo. Calentar ese punto con una punta ancha, más tiempo que un terminal, hasta que un poco de estaño se extienda sobre él. Dejar enfriar. Después apretar el cable o la patilla contra el estaño, calentar ambos hasta que el estaño fluya y no mover nada hasta que esté sólido. Dejar enfriar el potenciómetro un minuto entre dos soldaduras en su carcasa.',
  'leaflet.case-plan':
    'La carcasa de {part}, girada como en los dibujos, con los puntos de sus soldaduras: {name} es la unión {number} del paso {step}. Lijar todos los puntos antes de la primera soldadura y dejar cada uno libre hasta su paso.',
  'leaflet.step': 'Paso {number}: {title}',
  'leaflet.tests-after': '{count, plural, one {Prueba} other {Pruebas}} después del paso {number}',
  'leaflet.measuring': 'Cómo medir',
  'leaflet.joint': 'Unión',
  'leaflet.notes': 'Notas',
  'leaflet.wire-of': 'Cable, {colour}',
  'leaflet.bare-wire': 'Hilo desnudo para puentes',
  'leaflet.no-colour': 'cualquier color',
  'leaflet.sleeving-of': 'Funda aislante',
  'leaflet.wire': 'Cable',
  'leaflet.cuts': 'Cables que cortar',
  'leaflet.cut': 'Corte',
  'leaflet.length': 'Longitud',
  'leaflet.for-steps': 'Para los pasos',
  'leaflet.both-lengths': '{millimetres} ({inches}\u00a0pulg.)',
  'leaflet.strip': 'pelar {length}',
  'leaflet.trim': 'cortar a medida',
  'leaflet.strip-say':
    'Medir en el instrumento antes de cortar: los dibujos no están a escala. Pelar {length} en ambos extremos de cada cable; las longitudes ya lo incluyen. Los hilos de las pastillas no están en la lista: cortarlos a medida.',
  'leaflet.estimated-say':
    '≈ es una estimación: la distancia en el instrumento y un {percent}\u00a0% más, con ambos extremos pelados, redondeada hacia arriba a {length}.',
  'leaflet.extend-for': '{component} (unos {length})',
  'leaflet.extend-say':
    'Patillas que quizá no lleguen de un terminal al otro: {components}. El paso que las suelda dice cómo alargar una.',
  'leaflet.extend-step':
    '{components}: si las patillas no llegan, poner el trozo de cable 10\u00a0mm a lo largo de una patilla y soldarlos. Pasar la funda sobre la patilla y la soldadura, y llevar el extremo libre a su terminal.',
  'leaflet.extending-wire': 'Cable para alargar patillas',
  'leaflet.probes': 'Puntas de prueba',
  'leaflet.probes-at': 'Punta de prueba roja en {from}, negra en {to}.',
  'leaflet.probe-red': 'roja',
  'leaflet.probe-black': 'negra',
  'leaflet.reads': 'El multímetro muestra: {reading}',
  'leaflet.test-number': 'Prueba {number}: {probes}',
  'leaflet.volume-full': 'Todos los controles en 10',
  'leaflet.volume-zero': 'Volumen en 0',
  'leaflet.test-before': 'Prueba antes de montar las pastillas',
  'leaflet.test-before-say':
    'Medir la resistencia en el jack, sin nada enchufado. No seguir hasta que todas las lecturas sean correctas: ahora es cuando mejor se encuentra un fallo. Los valores valen para piezas dentro de sus tolerancias, de 10 a 30\u00a0°C.',
  'leaflet.test-wrong':
    'Si una lectura no es correcta, comparar cada unión de esa posición con el esquema: abierto significa que falta una; demasiado poco, que dos se tocan o que un cable está en el terminal equivocado. Ver también «{faults}».',
  'leaflet.test-finished': 'Prueba con todo soldado',
  'leaflet.test-finished-say':
    'Medir otra vez en el jack, ahora con las pastillas. La resistencia de una pastilla cambia con la temperatura; los límites lo tienen en cuenta.',
  'leaflet.fitting': 'Montaje en el instrumento',
  'fit.nuts':
    'Colocar potenciómetros, conmutadores y jack en su lugar sin tirar de los cables. Sujetar el cuerpo de la pieza al apretar la tuerca o los tornillos: si gira, los cables se retuercen y las soldaduras se rompen.',
  'fit.wires':
    'Colocar los cables sin tensión, lejos de las partes móviles de los conmutadores. Ninguna patilla, terminal o hilo desnudo debe tocar otro, una carcasa o el apantallado.',
  'fit.point':
    '{point}: llevar el extremo libre de este cable a su lugar en el instrumento y fijarlo allí, desnudo, sobre metal limpio. Entre ese metal y la manga del jack, el multímetro muestra menos de 1\u00a0Ω.',
  'fit.plug':
    'Antes de cerrar el instrumento, poner el volumen del amplificador en 0, enchufar, encender el amplificador y subir un poco el volumen.',
  'fit.tap':
    'En cada posición, dar un golpecito a cada pastilla con un destornillador pequeño de acero, bien sujeto, pues el imán lo atrae. Se oye con claridad en las pastillas que suenan en esa posición, y apenas o nada en las demás.',
  'fit.tone':
    'Girar cada control de tono ({controls}) de 10 a 0 en una posición en la que actúa: los agudos deben desaparecer. Así se comprueban las soldaduras de {components}.',
  'fit.stop':
    'Si las partes metálicas dan un hormigueo al tocarlas, desenchufar enseguida y no seguir tocando el instrumento: hacer revisar el amplificador y la toma de tierra por un electricista autorizado. Si el amplificador zumba con fuerza, desenchufar también y comprobar primero el jack, ver «{faults}». Seguir el consejo del electricista, aun en contra de esta hoja.',
  'leaflet.number': 'N.º',
  'leaflet.rings-say':
    'Cada paso tiene su dibujo: las uniones nuevas son gruesas, las anteriores finas. Las letras sobre un cable son el código de su color.',
  'rings.number':
    'El número en un extremo es el de la lista. Está sobre el cable, o al lado con una línea fina hasta el extremo.',
  'rings.black': 'Número blanco sobre negro: soldar ese extremo en este paso.',
  'rings.white':
    'Número negro sobre blanco: solo enganchar ese extremo. Se suelda en un paso posterior, junto con lo que aún llega a ese terminal. Hasta entonces se dibuja como un anillo con un hueco.',
  'rings.gathered':
    'Un anillo con un punto: ese extremo se enganchó en un paso anterior. Soldarlo en este paso, junto con todo lo que está enganchado ahí.',
  'rings.none':
    'Sin número: ahí no hay nada que soldar, como donde una patilla sale de su componente y un hilo de su pastilla, en un terminal doblado y en un extremo que queda libre.',

  // ── Leaflet: what each switch position does, loads, fault finding
  'leaflet.positions': 'Qué hace cada posición',
  'leaflet.position': 'Posición',
  'leaflet.sounds': 'Suena',
  'leaflet.joined': 'Cómo',
  'leaflet.tone': 'Control de tono',
  'leaflet.no-tone': 'ninguno',
  'leaflet.always': 'siempre',
  'leaflet.loads': 'La carga de cada pastilla',
  'leaflet.loads-say':
    'Son valores de diseño de este kit, no fallos. Carga continua: resistencia entre los hilos de la pastilla, con todas las pastillas desconectadas. Carga de señal: la misma a {frequency}{toned, select, yes {, con el control de tono y su condensador} other {}}. Todos los controles en 10. La última columna compara la carga de señal con la prevista.',
  'leaflet.designed-say':
    'Cargas previstas (carga continua, carga de señal): {loads}. Una pastilla que suena sola suena según diseño si sus cargas son aproximadamente estas. Con más ohmios es más brillante, con menos es más apagada.',
  'leaflet.quieter-say':
    'dB menos: a 1 kHz, respecto a la pastilla más fuerte en la misma posición; una pastilla sola, o todas juntas, respecto al cableado previsto.',
  'leaflet.two-loads': '{dc}, {signal}',
  'leaflet.pickup': 'Pastilla',
  'leaflet.dc-load': 'Carga continua',
  'leaflet.signal-load': 'Carga de señal',
  'leaflet.compared': 'Respecto a la carga prevista',
  'leaflet.response': 'Respuesta en frecuencia',
  'leaflet.faults': 'Si algo va mal',
  'leaflet.fault-seen': 'Qué se nota',
  'leaflet.fault-cause': 'Causa probable',
  'leaflet.fault-remedy': 'Qué hacer',
  'fault.silent': 'No suena en ninguna posición',
  'fault.silent-cause': 'Una unión entre {volume} y {jack} no conduce, o la señal toca la masa en ese tramo',
  'fault.silent-remedy':
    'Repetir la última prueba en el jack. «Abierto»: volver a soldar los cables de la punta y la manga. Unos pocos ohmios como máximo con el volumen en 10: buscar un puente de estaño o un hilo suelto hacia masa.',
  'fault.one': 'Una pastilla no suena',
  'fault.one-cause': 'Uno de sus hilos no está bien soldado. Hilos vivos: {places}',
  'fault.one-remedy':
    'Comparar la lectura en el jack en su posición con la última prueba; volver a soldar {leads, select, all {todos sus} other {sus dos}} hilos.',
  'fault.thin': 'Sonido fino y débil de pastillas que suenan juntas: {pickups}',
  'fault.thin-cause': 'En contrafase: los dos hilos de una pastilla están cambiados',
  'fault.thin-remedy':
    'Comparar vivo y masa de cada una con el esquema e intercambiar los dos hilos equivocados.',
  'fault.coils': 'Una pastilla de cuatro hilos suena fina y débil',
  'fault.coils-cause':
    'También sola: inicio y final de una de sus bobinas están cambiados. Solo junto con otra pastilla: inicio y final de las dos bobinas están cambiados',
  'fault.coils-remedy':
    'Comparar sus hilos con lo que indica el fabricante e intercambiar inicio y final de esa bobina, o de las dos.',
  'fault.split': '{pickups}: el paso a una sola bobina no hace nada, o se da en la posición equivocada',
  'fault.split-cause':
    'Un hilo o un cable donde se unen las dos bobinas está en el terminal equivocado del conmutador, o mal soldado',
  'fault.split-remedy':
    'Comparar las lecturas en el jack, con una bobina y con las dos, con la última prueba; después, los terminales de este conmutador con el esquema.',
  'fault.hum': 'El zumbido no disminuye al tocar las cuerdas',
  'fault.hum-cause': '{point} no está unido a masa',
  'fault.hum-remedy':
    'Medir de las cuerdas a la manga del jack: menos de 1\u00a0Ω es correcto. Si no, volver a soldar el cable de {point}.',
  'fault.buzz': 'Zumbido fuerte, mayor al tocar metal',
  'fault.buzz-cause': 'Los cables de punta y manga de {jack} están cambiados',
  'fault.buzz-remedy':
    'Desenchufar enseguida y no tocar el instrumento. Con el multímetro, la manga de {jack}, no la punta, debe mostrar menos de 1\u00a0Ω hacia los cables de masa; si no, intercambiar los dos cables. Solo si ya es así, hacer revisar el amplificador y la toma de tierra por un electricista autorizado.',
  'fault.volume': '{controls}: funciona al revés o no funciona',
  'fault.volume-cause': 'Las uniones de dos terminales están cambiadas, o la unión a masa no conduce',
  'fault.volume-remedy': 'Comparar sus tres terminales con el esquema. Atención al lado desde el que se ve.',
  'fault.tone': '{controls}: sin efecto en el sonido',
  'fault.tone-cause': 'Una patilla del condensador o el cable a su terminal no está bien soldado',
  'fault.tone-remedy': 'Volver a soldar las uniones de {components} y después las del control.',
  'fault.order': 'Las posiciones de {selector} salen en orden inverso',
  'fault.order-cause':
    'El selector está montado al revés, o sus terminales se contaron desde el extremo equivocado',
  'fault.order-remedy':
    'Volver a identificar sus terminales con el multímetro. Si cada cable está en el terminal que muestra el esquema, dar la vuelta al selector en su lugar; si no, pasar los cables a esos terminales.',
  'fault.bright': '{pickup} suena demasiado brillante',
  'fault.bright-cause': 'Una patilla de su resistencia de carga {pad} no está bien soldada',
  'fault.bright-remedy': 'Volver a soldar las dos patillas de {pad}.',
  'fault.crackle': 'Cruje al girar un control',
  'fault.crackle-cause': 'Ha entrado fundente en el potenciómetro, o se calentó demasiado',
  'fault.crackle-remedy': 'Girarlo veinte veces de tope a tope. Si continúa, cambiar el potenciómetro.',
  'fault.loose': 'El sonido va y viene al mover algo',
  'fault.loose-cause': 'Una soldadura agrietada, o en bola porque el estaño no fluyó sobre el terminal',
  'fault.loose-remedy':
    'Presionar suavemente cada soldadura con un palito de madera; recalentar la mala con un poco de estaño nuevo hasta que fluya.',
  'leaflet.resonance': 'Resonancia',
  'leaflet.cutoff': 'Fin de agudos (−3\u00a0dB)',
  'leaflet.resonance-compared': 'Resonancia respecto a la referencia',

  // ── Shop page: index of kits
  'shop.index-title': 'Esquemas de cableado',
  'shop.index-filter': 'Buscar un kit',
  'shop.index-search': 'Búsqueda',
  'shop.index-pickups': 'Pastillas',
  'shop.index-switch': 'Conmutador',
  'shop.index-parts': 'Con estos componentes',
  'shop.index-any': 'Todos',
  'shop.index-none': 'ninguno',
  'shop.index-reset': 'Mostrar todos',
  'shop.index-count': '{count, plural, =0 {Ningún kit encontrado} one {# kit} other {# kits}}',
  'shop.index-counted': '{count} × {what}',

  // ── Page of circuits
  'gallery.title': 'Circuitos para cableado pasivo de guitarra',
  'gallery.say':
    'Las letras indican las pastillas del mástil al puente: H humbucker, S bobina simple. Pulsar un dibujo para verlo solo, a cualquier tamaño.',
  'gallery.contents': 'Circuitos',
  'gallery.extends': 'En un kit:',
  'gallery.alt': 'Esquema de cableado: {title}',

  // ── Shop page

  // ── Shop page: the figure
  'shop.hint':
    'Señalar un cable o un terminal para ver qué une. Con el teclado: ir al dibujo con Tab y usar las flechas.',
  'shop.hint-touch': 'Tocar un cable o un terminal para ver qué une.',
  'shop.path': 'Camino de la señal',
  'shop.zoom-in': 'Ampliar',
  'shop.zoom-out': 'Reducir',
  'shop.reset': 'Restablecer',
  'shop.print': 'Imprimir',
  'shop.rules':
    'Respetar las normas locales sobre trabajos eléctricos y residuos. Si estas, o un profesional autorizado, contradicen esta página, seguirlas.',
  'shop.joint':
    'Unión {number}, {what}: de {from} a {to}{coloured, select, yes {, {colour}} other {}}{sleeved, select, yes {, con funda} other {}}.',
  'shop.lug': '{lug}: {joined, select, yes {unido a {ends}} other {sin usar}}.',
  'shop.lug-name': '{part} {lug}',
  'shop.joints': 'Todas las uniones',
  'shop.from': 'De',
  'shop.to': 'A',
  'shop.colour': 'Color del cable',
  'shop.details': 'Detalles',
  'shop.yes': 'sí',
  'shop.no': 'no',
};
