// Rules of published practice in Spanish: a short name, and the rule in full. Our own translation of our own words (see
// evidence/practice.json).
import type { Tongue } from '../romance/tongue.ts';
import type { Explained } from '../words.ts';

const rule = (title: string, text: string): Explained => ({ title, text });

export const RULES: Tongue['rules'] = {
  'practice.hygiene-after-each-glove-removal': rule(
    'Higiene de manos tras retirar cada guante',
    'Después de retirar un guante, trate la capa que queda por fuera en esa mano antes de que toque nada: desinfecte un guante interior, frote una mano desnuda.',
  ),
  'practice.hygiene-between-items': rule(
    'Higiene de manos entre dos elementos',
    'Desinfecte la capa exterior de ambas manos después de retirar cada elemento, antes de tocar el siguiente.',
  ),
  'practice.final-hand-hygiene': rule(
    'La higiene de manos cierra la salida',
    'El último acto de la salida es la higiene de las manos desnudas, cuando ya se retiró el último elemento.',
  ),
  'practice.shield-by-rear-strap': rule(
    'La visera se retira por la cinta',
    'Retire la visera por su cinta, en las sienes o por detrás, con el cuerpo inclinado hacia delante para que caiga lejos de la cara.',
  ),
  'practice.goggles-by-rear-strap': rule(
    'Las gafas se retiran por la cinta',
    'Retire las gafas de protección por la cinta o por las patillas.',
  ),
  'practice.face-item-front-untouched': rule(
    'No tocar la parte delantera de lo que cubre la cara',
    'No toque la parte delantera de una mascarilla, una visera o unas gafas.',
  ),
  'practice.respirator-lower-strap-first': rule(
    'Cinta inferior de la mascarilla antes que la superior',
    'Pase la cinta inferior por encima de la cabeza antes que la superior, con el cuerpo inclinado hacia delante.',
  ),
  'practice.respirator-last-of-face': rule(
    'La mascarilla, lo último de la cara',
    'De todo lo que hay en la cara, la mascarilla se retira en último lugar.',
  ),
  'practice.glove-change-before-respirator': rule(
    'Guantes nuevos para la mascarilla',
    'Cuando la mascarilla se retira después de la prenda, cambie antes los guantes interiores por otros nuevos, con fricción de las manos desnudas entre unos y otros.',
  ),
  'practice.no-face-touch-after-hood': rule(
    'Ninguna mano a la cara después de la capucha',
    'Una vez retirada la capucha, nada toca la cara.',
  ),
  'practice.warn-before-headgear': rule(
    'Avisar antes del reflejo',
    'Antes de retirar la protección de la cabeza, el observador advierte que no hay que secarse la frente ni apartar el pelo.',
  ),
  'practice.gown-upper-fastening-first': rule(
    'Cierre superior de la bata antes que la cintura',
    'Suelte la bata en el cuello antes que en la cintura.',
  ),
  'practice.garment-front-untouched': rule(
    'No tocar la parte delantera de las prendas',
    'No toque la parte delantera ni el exterior de las mangas de una prenda usada con nada que quiera mantener sin contaminar.',
  ),
  'practice.garment-inside-out': rule(
    'Las prendas se enrollan del revés',
    'Aparte la prenda del cuerpo y enróllela de modo que el exterior termine por dentro.',
  ),
  'practice.garment-not-shaken': rule(
    'Sin sacudir y sin rozar en el cubo',
    'Deposite la prenda usada en el cubo; no la sacuda ni la lance, y manténgala lejos de su ropa.',
  ),
  'practice.boot-cover-heel-before-toe': rule(
    'El talón antes que la punta',
    'Pase el cubrebotas por el talón antes que por la punta.',
  ),
  'practice.boot-cover-by-outside': rule(
    'Cubrebotas en posición sentada, con las piernas separadas',
    'En posición sentada, sujete el cubrebotas por fuera, tire hacia abajo y no toque una pierna con la otra.',
  ),
  'practice.boot-covers-before-garment': rule(
    'Los cubrebotas antes que la prenda',
    'Retire los cubrebotas con los guantes exteriores puestos, antes que la capucha y la prenda.',
  ),
  'practice.legs-apart': rule(
    'Piernas separadas',
    'En los pasos de botas y zapatos, una pierna no se apoya en la otra ni la toca.',
  ),
  'practice.one-wipe-per-shoe': rule('Una toallita por zapato', 'Use una toallita nueva para cada zapato.'),
  'practice.shoes-wiped-with-soles': rule(
    'Zapatos en posición sentada, también las suelas',
    'En la silla limpia, pase una toallita por toda la superficie de los zapatos de arriba abajo, también las suelas, sin tocar los tobillos.',
  ),
  'practice.glove-on-dry-hand': rule(
    'Guantes nuevos sobre manos secas',
    'Ponga un guante nuevo solo en una mano que se haya secado.',
  ),
  'practice.hygiene-before-fresh-glove': rule(
    'Fricción antes de un guante nuevo',
    'Frote las manos desnudas antes de ponerse un guante nuevo.',
  ),
  'practice.clean-and-dirty-chair-apart': rule(
    'Silla limpia y silla sucia separadas',
    'Reserve una silla señalada para los pasos limpios; quien todavía lleva un exterior contaminado no se sienta en ella.',
  ),
  'practice.helper-hygiene-after-each-assist': rule(
    'Higiene de manos de quien ayuda, tras cada ayuda',
    'Quien ayuda se desinfecta las manos justo después de cada ayuda.',
  ),
  'practice.helper-keeps-side': rule(
    'Quien ayuda se queda en su lado',
    'Un asistente no camina entre el lado sucio y el lado limpio durante una salida.',
  ),
  'practice.observer-hands-off': rule(
    'El observador no toca',
    'Si hay un asistente, el observador no da ayuda física; si no lo hay, el contacto se reduce al mínimo.',
  ),
  'practice.observer-and-assistant-apart': rule(
    'Dos personas, dos funciones',
    'El observador y el asistente son dos personas.',
  ),
  'practice.assistant-for-hood-or-coverall': rule(
    'Cuándo hace falta un asistente',
    'Hace falta un asistente siempre que se lleve un equipo con ventilación asistida o un mono.',
  ),
  'practice.observer-for-every-step': rule(
    'Se observa cada paso',
    'Un observador formado supervisa cada paso de toda colocación y de toda retirada.',
  ),
  'practice.one-step-at-a-time': rule(
    'Un paso cada vez, sin prisa',
    'El observador lee un paso en voz alta, deja tiempo para hacerlo y lo confirma antes del siguiente.',
  ),
  'practice.off-in-doffing-area': rule(
    'Nada se retira en la habitación del paciente',
    'El equipo sigue puesto hasta entrar en la zona de retirada; en la habitación del paciente solo se revisa y se limpia con toallitas.',
  ),
  'practice.stays-until-all-off': rule(
    'Todo se retira en la zona de retirada',
    'Una vez empezada la salida, quien lleva el equipo permanece en la zona de retirada hasta haberse quitado el último elemento; lo necesario está allí a mano.',
  ),
  'practice.zip-one-hand': rule(
    'Una sola mano en la cremallera',
    'Mueva la cremallera con dos dedos de una mano, la cabeza hacia atrás y con un espejo; la otra mano no toca la parte delantera del mono.',
  ),
  'practice.hygiene-around-zip': rule(
    'Higiene antes y después de la cremallera',
    'Desinfecte los guantes después de abrir la solapa y de nuevo después de la cremallera, que está contaminada.',
  ),
  'practice.apron-torn-at-neck': rule(
    'El delantal se rompe por el cuello',
    'Rompa o corte la tira del cuello del delantal en lugar de pasarla por encima de la cabeza.',
  ),
  'practice.apron-rolled-away': rule(
    'El delantal se enrolla lejos del cuerpo',
    'Enrolle el delantal de dentro hacia fuera, lejos del cuerpo.',
  ),
  'practice.shoe-cover-strings-before-zip': rule(
    'Cordones de los cubrezapatos antes que la cremallera',
    'Desate los cordones de los cubrezapatos antes de abrir el mono.',
  ),
  'practice.shirt-tucked': rule(
    'Camisa por dentro',
    'Meta la camisa por dentro antes de la colocación, para que ninguna punta encuentre la prenda.',
  ),
  'practice.inspect-inner-gloves': rule(
    'Se revisan los guantes interiores',
    'Retirados los guantes exteriores, revise los interiores: intactos y sin suciedad, desinfecte; rotos o manchados, desinfecte, retire, frote las manos, póngase guantes nuevos.',
  ),
  'practice.inspect-before-exit': rule(
    'Primero revisar y quitar la suciedad',
    'Antes de la salida, la persona equipada revisa el equipo, y la suciedad visible se quita primero con una toallita.',
  ),
  'practice.inspect-at-end': rule(
    'Última mirada',
    'Con el observador, busque suciedad y roturas en el pijama y la piel antes de marcharse.',
  ),
  'practice.start-on-all-clear': rule(
    'Empezar a la señal',
    'La persona equipada sale de la habitación solo a la señal del observador.',
  ),
  'practice.gloves-disinfected-before-leaving': rule(
    'Desinfectar los guantes y después salir',
    'Los guantes exteriores se desinfectan en la habitación, antes de que la persona equipada salga de ella.',
  ),
  'practice.area-ready-before-start': rule(
    'Primero se comprueba la zona',
    'Antes de la salida, el observador comprueba que el cubo está en su sitio y no demasiado lleno, y que todo lo necesario está a mano.',
  ),
  'practice.spraying-not-credited': rule(
    'Rociar no cuenta',
    'Rociar personas o superficies no cuenta como desinfección; pasar una toallita, sí.',
  ),
  'practice.soil-off-before-disinfectant': rule(
    'Primero limpiar, después desinfectar',
    'Quite la sangre o la suciedad visible antes de confiar en un desinfectante: la sangre seca anula el cloro.',
  ),
  'practice.no-glove-snap': rule(
    'Guantes sin latigazo',
    'Retire los guantes sin que restallen y sin tocar el guante interior.',
  ),
  'practice.second-glove-from-inside': rule(
    'El segundo guante, desde dentro',
    'Deslice un dedo por debajo del puño del segundo guante y enróllelo sobre el primero.',
  ),
  'practice.gloves-not-alone-before-gown': rule(
    'Los guantes con la bata, no antes',
    'Con un solo par de guantes, los guantes no se retiran antes que la bata; bata y guantes en una sola pieza evitan que las manos desnudas toquen el exterior.',
  ),
  'practice.ankles-untouched': rule(
    'No tocar los tobillos',
    'No toque los tobillos desnudos al desinfectar los zapatos.',
  ),
  'practice.hood-by-outside-then-away': rule(
    'Capucha: enrollar, inclinarse, apartar',
    'El asistente, desde atrás, enrolla la capucha por fuera; a la señal, la persona equipada se inclina y la desliza hacia abajo, apartándola. Ambos se desinfectan las manos.',
  ),
  'practice.tape-tears-nothing': rule(
    'Cinta adhesiva sin daño',
    'Si se usa cinta adhesiva, no debe romper el equipo ni tocar la piel.',
  ),
  'practice.one-wearer-at-a-time': rule(
    'Una sola persona cada vez',
    'En la zona, solo una persona cada vez se retira el equipo.',
  ),
  'practice.fixtures-cleaned-after': rule(
    'La sala se limpia después de cada salida',
    'Después de cada salida, limpie lo que se tocó: tapa del cubo, silla, grifo, lavabo, suelo.',
  ),
  'practice.zones-named': rule(
    'Las zonas dicen qué se hace dónde',
    'Indique para cada zona qué se puede hacer y retirar en ella.',
  ),
  'practice.bin-not-over-full': rule(
    'Cubos nunca demasiado llenos',
    'Las bolsas de residuos se cierran cuando están llenas en sus tres cuartas partes.',
  ),
  'practice.donning.inner-cuff-under-sleeve': rule(
    'Puño interior bajo la manga',
    'El puño del guante interior queda bajo la manga.',
  ),
  'practice.donning.outer-glove-over-cuff': rule(
    'Guante exterior sobre la manga',
    'El guante exterior cubre el puño de la manga.',
  ),
  'practice.donning.respirator-before-hood': rule(
    'La mascarilla antes que la capucha',
    'La mascarilla se pone antes que la capucha y la visera.',
  ),
  'practice.donning.seal-check': rule(
    'Comprobación del sellado',
    'El sellado de la mascarilla se comprueba después de ponerla.',
  ),
  'practice.donning.hygiene-first': rule(
    'Higiene de manos antes de la colocación',
    'La colocación empieza con la higiene de manos, hasta que se sequen.',
  ),
  'practice.donning.no-skin-visible': rule(
    'Ni piel ni pelo al descubierto',
    'La colocación termina cuando el observador no ve piel ni pelo al descubierto.',
  ),
  'practice.donning.blower-outside': rule(
    'El motor, por fuera de la prenda',
    'El motor y el cinturón del equipo con ventilación asistida quedan por fuera de la prenda.',
  ),
  'practice.donning.no-wrist-gap': rule(
    'Sin hueco en la muñeca',
    'Guantes y mangas se superponen de modo que la muñeca no se vea, ni en reposo ni al estirar el brazo; una trabilla para el pulgar ayuda.',
  ),
  'practice.strong-chlorine-not-on-skin': rule(
    'Concentración del cloro según el uso',
    'Use la solución clorada fuerte solo en objetos y derrames; para las manos, use la solución débil o la solución hidroalcohólica.',
  ),
  'practice.keep-wet-for-label-time': rule(
    'Tiempo de contacto de las toallitas',
    'Mantenga la superficie visiblemente húmeda durante todo el tiempo de la etiqueta.',
  ),
  'practice.rub-until-dry': rule(
    'Frotar hasta que se seque',
    'Frote las manos hasta que se sequen, con cantidad suficiente para cubrirlas.',
  ),
  'practice.hygiene-at-every-step-who': rule(
    'Higiene entre todos los pasos',
    'Las manos enguantadas se desinfectan entre cada dos pasos.',
  ),
  'practice.mask-by-straps': rule(
    'Las mascarillas se retiran por las cintas',
    'Retire la mascarilla por sus cintas, primero la inferior, con el cuerpo inclinado hacia delante.',
  ),
  'practice.practised-with-read-aloud': rule(
    'Lectura en voz alta también al entrenar',
    'Entrene con supervisión y con cada paso leído en voz alta.',
  ),
  'practice.boot-covers-seated': rule(
    'Los cubrebotas se retiran en posición sentada',
    'Siéntese para retirar los cubrebotas; nadie se sostiene sobre una pierna.',
  ),
  'practice.boots-without-hands': rule(
    'Las botas se retiran sin las manos',
    'Saque los pies de las botas de goma sin usar las manos.',
  ),
};
