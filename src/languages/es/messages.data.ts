import type { Messages } from "../../report/index.js";
import { findings } from "./findings.data.js";
import { refusals } from "./refusals.data.js";
import { warranty } from "./warranty.data.js";
import { words } from "./words.data.js";

/** Spanish: everything a report says. What to do is said to "usted"; the battery is feminine. */
export const messages: Messages = {
  language: "es",
  direction: "ltr",
  comma: ", ",
  semicolon: "; ",
  sentence: [".", " "],
  firstDay: "1",
  chance: ["{n} de cada 100", "{n} de cada 1000", "más de 999 de cada 1000", "menos de 1 de cada 1000"],
  question: {
    what: "¿Qué batería es?",
    trust: "¿Se puede confiar en las medidas?",
    charge: "¿Cuál es su estado de carga?",
    ability: "¿Cuánta aptitud de arranque le queda?",
    start: "¿Arrancará el motor?",
    vehicle: "¿Qué mostró el vehículo?",
    now: "¿Para qué sirve, y qué hacer ahora?",
    cause: "¿Cuál es la causa?",
    noticed: "¿Qué se observó?",
    next: "¿Qué hacer a continuación?",
    hurt: "¿Qué puede hacerme daño?",
    age: "¿Qué edad tiene?",
    warranty: "¿Qué paga la garantía?",
    refused: "¿Qué no se pudo determinar?",
    derivation: "¿Cómo se determinó?",
  },
  severity: { hazard: "Peligros", defect: "Defectos", warning: "Advertencias", note: "Observaciones" },
  chemistry: {
    flooded: "Batería de electrolito líquido",
    "flooded-calcium": "Batería de calcio con electrolito líquido",
    efb: "Batería EFB",
    agm: "Batería AGM",
    gel: "Batería de gel",
    unknown: "Batería de tecnología desconocida",
  },
  standard: {
    "sae-j537": "CCA (SAE)",
    "en-50342-1:2015": "EN (2015)",
    "en-50342-1:2006-level-1": "EN1 (2006)",
    "en-50342-1:2006-level-2": "EN2 (2006)",
    "en-50342-1:unstated": "EN (nivel no indicado)",
    "iec-60095-1:pre-2006": "IEC (antes de 2006)",
    "iec-60095-1:2006": "IEC (2006)",
    "iec-60095-1:2018": "IEC (2018)",
    "iec-60095-1:unstated": "IEC (edición no indicada)",
    "din-43539-2": "DIN",
    "jis-d-5301:2006": "CCA (JIS)",
    "jis-d-5301:pre-2006": "JIS (antes de 2006)",
    "bci-ca": "CA",
    "bci-mca": "MCA",
    hca: "HCA",
    "gost-959-91": "GOST",
    "gb-t-5008-1": "GB/T",
    unstated: "CCA (norma no indicada)",
  },
  condition: {
    serviceable: ["Apta para el servicio", "Da lo suficiente de lo que promete su valor nominal."],
    worn: [
      "Debilitada",
      "Está por debajo del límite de una batería apta para el servicio, pero nada demuestra que sea inservible.",
    ],
    unserviceable: ["No apta para el servicio", "No es adecuada para el uso."],
    "internally-failed": ["Fallo interno", "Un elemento ya no funciona."],
    "not-established": ["Estado no determinado", "Las medidas no lo deciden."],
  },
  action: {
    keep: ["Manténgala en servicio"],
    "charge-then-keep": ["Cárguela y después manténgala en servicio"],
    "charge-then-repeat": ["Cárguela y después mida otra vez"],
    repeat: ["Mida otra vez antes de decidir"],
    retire: ["Retírela del servicio"],
    isolate: ["Apártela y no la cargue"],
    stop: ["No siga", "Este método es solo para baterías de 12 V."],
  },
  decidedBy: {
    "damaged-case": "un daño visible va antes que cualquier medida",
    frozen: "una batería que está o puede estar congelada no se juzga",
    "low-electrolyte": "con las placas secas, toda batería da medidas bajas",
    "system-voltage":
      "la etiqueta o la tensión no es la de una batería de 12 V en reposo, conectada con la polaridad correcta",
    "scattered-readings": "las medidas se dispersan más de lo que explica el aparato",
    "contact-spread": "volver a colocar las pinzas cambia la medida más que repetirla",
    "in-vehicle-reading": "una medida baja en el vehículo puede deberse al vehículo",
    "missing-cell": "a la tensión le falta un elemento entero",
    "cell-spread": "un elemento es mucho más débil que los demás",
    "too-little-charge": "la carga es demasiado baja, o no se conoce lo bastante bien, para juzgarla",
    "conflicting-evidence": "el ensayo de descarga y la estimación se contradicen",
    "load-test": "el ensayo de descarga",
    ability: "la aptitud de arranque medida, comparada con el valor nominal",
    "no-ability-evidence": "ninguna medida válida indica su aptitud de arranque",
  },
  trust: {
    sound: "Sí. No se encontró nada que las limite.",
    limited: "En parte. Las limita lo siguiente:",
    unusable: "No. No permiten ningún juicio.",
  },
  finding: findings,
  cause: {
    battery: "La propia batería",
    connection: "Su conexión con el motor de arranque",
    "charging-circuit": "El circuito de carga",
    drain: "Una descarga durante la parada",
    "only-discharged": "Solo descargada",
  },
  support: {
    supported: "las medidas hablan a favor",
    contradicted: "las medidas hablan en contra",
    open: "sin decidir",
  },
  caution: {
    "local-codes-first": "Las normas de seguridad locales van primero.",
    "eyes-and-acid":
      "El ácido quema. Lleve protección ocular, delantal y guantes de goma. Ácido en un ojo: enjuague durante 15 min y llame a un médico.",
    "hydrogen-no-sparks":
      "Desprende gas explosivo incluso en reposo. Cerca de ella, ni llamas ni chispas, y no fume.",
    "ventilate-charging":
      "Cárguela donde circule el aire, con los tapones puestos. Apague el cargador antes de mover sus pinzas.",
    "charge-temperature": "Detenga la carga cuando la batería llegue a 50 °C.",
    "warm-before-charging":
      "Antes de cargarla, llévela a la temperatura de un local templado y busque hielo y grietas.",
    "never-charge": "No la cargue, no la descargue y no le conecte cables de arranque.",
    "frozen-handling":
      "El hielo puede haber rajado la caja. Deje que se descongele a la temperatura de un local templado y después examínela.",
    "damaged-handling":
      "Dañada: manténgala derecha, lleve guantes y absorba el ácido con bicarbonato sódico.",
    "toxic-gas":
      "El olor a huevos podridos es un gas tóxico: apague el cargador, abra las puertas y aléjese hasta que desaparezca.",
    "sealed-overheating":
      "Batería sellada: no la abra nunca. Si está caliente o huele a huevos podridos: apague el cargador, ventile y aléjese.",
    "clamp-order": "Desconecte primero el cable de masa y conéctelo el último.",
    lifting: "Pesa mucho. Levántela derecha, con una correa o con las dos manos.",
    "short-circuit":
      "Ni herramientas, ni anillos, ni pulseras entre los bornes: un cortocircuito quema al instante.",
    "return-and-transport":
      "Llévela derecha y con los bornes cubiertos; en carretera es {unNumber}, clase 8. Entréguela para reciclar, nunca a la basura.",
    "charging-air":
      "La carga necesita {neededCubicMetresPerHour:m³/h} de aire fresco ({batteries:n} {batteries#one=batería|other=baterías} a la vez): sin ventilador, dos aberturas de {openingSquareCentimetres:cm²} cada una y {freeVolumeCubicMetres:m³} de espacio libre.",
    "room-air":
      "No cargue allí: se necesitan [{freeVolumeCubicMetres:m³} de espacio libre y hay {roomCubicMetres:m³}][{neededCubicMetresPerHour:m³/h} de aire fresco y hay {givenCubicMetresPerHour:m³/h}].",
    "jump-starting":
      "Cables de arranque: consumidores apagados; positivo con positivo; última pinza sobre metal desnudo a {groundMetres:m} como mínimo de la batería descargada; retírelos en orden inverso. Nunca 24 V, nunca más de {mostVolts:n} V.",
    "eye-wash": "Agua para enjuagar los ojos y la piel a {metres:m} como máximo.",
    "neutralise-spills":
      "Ácido derramado: vierta una solución de {gramsPerLitre:n} g de bicarbonato sódico por litro de agua hasta que deje de hacer espuma; después, enjuague.",
    "take-back":
      "Entréguela a un vendedor o punto de recogida que acepte baterías; el plomo y el ácido son residuos peligrosos.",
    "system-voltage-supply": "No la conecte a un cargador, a un aparato de medida ni a un vehículo de 12 V.",
  },
  nextStep: {
    "exchange-leads": "Cambie entre sí los cables de medida y compruébelos con las marcas de los bornes.",
    "check-connection": "Limpie los bornes y compruebe las pinzas y los cables.",
    "end-charging":
      "Apague el cargador o el motor, deje enfriar la batería si está caliente y déjela en reposo.",
    "thaw-and-inspect":
      "Deje que se descongele a la temperatura de un local templado. Después busque grietas e hinchazón; si las hay, entréguela como batería usada.",
    "top-up-water":
      "Si tiene tapones, añada agua destilada solo hasta cubrir las placas, con los ojos protegidos. No añada nunca ácido.",
    "find-comparable-rating":
      "Busque en la etiqueta un valor nominal con su norma, o mida según la norma impresa.",
    "change-room": "Antes de cargarla, llévela a un local con más aire o haga entrar más aire en este.",
    "offer-claim": "Las condiciones la cubren: ofrezca la reclamación de garantía antes de devolverla.",
    "warm-up": "Deje que se caliente hasta la temperatura de un local templado, y busque hielo y grietas.",
    "cool-down": "Deje primero que se enfríe por debajo de 45 °C.",
    "set-apart": "Apártela, lejos de chispas. No la cargue.",
    charge:
      "Cárguela del todo[ con {fromAmperes:n} a {toAmperes:A} hasta {endVolts:V}][ (para {atCelsius:°C})][, unas {fromHours:d} a {toHours:h}].",
    "rest-after-charge": "Déjela reposar {hours:h}, sin cargador ni consumidores.",
    "draw-off-surface-charge":
      "Elimine la carga superficial: luces encendidas durante 15 s, después apagadas, y espere 3 min. O déjela reposar 3 h o más.",
    "measure-ability": "Mida la corriente de arranque, o haga un ensayo de descarga.",
    "measure-again": "Mida otra vez[: {readings:n} medidas, colocando de nuevo las pinzas cada vez].",
    "measure-with-load": "Haga un ensayo de descarga[: {loadAmperes:A} durante 15 s].",
    "measure-at-the-posts":
      "Desconéctela, primero el cable de masa, y mida otra vez en sus propios bornes, en el banco.",
    "repair-connection":
      "Limpie y apriete los terminales, los cables y la masa del circuito de arranque, y mida otra vez las caídas de tensión.",
    "measure-voltage-drops":
      "Mida las caídas de tensión de los dos lados con el motor de arranque accionado: {seconds:n} s como máximo, y después {pauseSeconds:n} s de pausa.",
    "look-at-starter": "Haga examinar el motor de arranque y el motor.",
    "repair-charging-circuit":
      "Haga reparar el alternador, el regulador y sus cables; si no, la batería se descargará otra vez.",
    "find-consumer":
      "Busque qué queda encendido: observe el consumo mientras retira los fusibles uno por uno, sin despertar el vehículo.",
    "let-modules-sleep":
      "Cierre el vehículo con llave, aleje la llave, espere[ {neededMinutes:min}] y mida otra vez el consumo en reposo.",
    "settle-cause": "Para aclarar la causa ({cause:w}): {settleBy:w}.",
    "hand-back": "Devuélvala al cliente.",
    "look-again-before-winter": "Revísela otra vez antes del invierno.",
    "take-back": "Retírela del servicio: con la reclamación si la hay; si no, para reciclar.",
    "other-method": "Use un método para su propia tensión.",
  },
  ...warranty,
  word: words,
  refusal: refusals,
  phrase: {
    title: "Revisión de la batería",
    reference: "Referencia: {id}",
    inspected: "Revisada: {day:date}",
    identity: "{chemistry}[, {nominalVolts:n} V].",
    label: "Código de la etiqueta «{text}» ({scheme}).",
    rating: "Valor nominal {amperes} {standard}, {from:w}.",
    capacity: "Capacidad {amount} en descarga de 20 h.",
    reserve: "Capacidad de reserva {amount} a 25 A.",
    about: "alrededor de {value}",
    range: "de {lower} a {upper}",
    atLeast: "al menos {value}",
    atMost: "como máximo {value}",
    anything: "cualquier cosa, de vacía a llena",
    group: "{name}:",
    unknown: "No se sabe.",
    none: "No se midió.",
    charge: "Alrededor del {share:c} ({interval}), según {from:w}.",
    chargeBound:
      "Como máximo {upper:c}, según {from:w}. Una carga superficial puede ocultar una carga más baja.",
    ability:
      "Según {from:w}: {ratio:%} del valor nominal ({interval}).[ Son {amperes:A} {standard}[ ({converted:w})].]",
    reaches:
      "Probabilidad de que llegue al límite[ del {limit:%}] de una batería apta para el servicio: {probability:p}.",
    below:
      "Probabilidad de que esté por debajo del límite[ del {limit:%}] de una batería no apta: {probability:p}.",
    limits: "Ninguna norma fija estos límites; son una elección.",
    loadAbove:
      "Ensayo de descarga: {margin:V} por encima del límite de {limit:V}; probabilidad de que lo supere de verdad: {probability:p}.",
    loadBelow:
      "Ensayo de descarga: {margin:-V} por debajo del límite de {limit:V}; probabilidad de que lo supere de verdad: {probability:p}.",
    loadFaults: "Contra el ensayo de descarga: {faults:w}.",
    startDownTo:
      "Con carga completa, hasta {celsius:°C}[ ({interval})] el arranque del motor es al menos tan probable como el fallo.",
    startBelow:
      "Con carga completa, a {celsius:°C} el arranque del motor es más probable que el fallo, y quizá también con más frío.",
    startAbove: "Incluso a {celsius:°C} puede que no arranque el motor.",
    coldMorning:
      "En la mañana más fría puede dar {ability:A} y el motor pide {demand:A}. Probabilidad de arranque: {probability:p}.",
    assumed: "Se supone: {assumptions:w}.",
    reason: "Motivo: {reason}.",
    chargePlan:
      "Está llena cuando {equal-hourly-readings:n} medidas tomadas de hora en hora son iguales. Deténgase a {electrolyte-temperature:°C}; no pase nunca de {ceilingVolts:V} ni de {charge-current:A}[, ni de {longest:h} de carga].[ Profundamente descargada: no la juzgue hasta pasadas {judgeAfterHours:h}.]",
    vehicleReading:
      "{code:w}: {measured}; límite {limit}, {outcome:w} (probabilidad de que se cumpla: {probability:p}).",
    otherSources: "Otros límites publicados darían otro resultado.",
    care: "Con cautela: {doubts:w}.",
    standing: "Tiempo que puede estar parado con este consumo: {span} {count#one=día|other=días}.",
    flatBattery:
      "El tiempo parado y la carga encontrada hablan a favor de: {code:w}; probabilidad de que el consumo en reposo baste por sí solo: {probability:p}.",
    because: "{cause}: {support}[ ({findings})].",
    dateCode: "Código de fecha «{text}».",
    reading: "Fabricación: {period}; edad: {age} ({scheme}[; {reasons:w}]).",
    period: "{from:date} a {to:date}",
    years: "{span} {count#one=año|other=años}",
    months: "{span} {count#one=mes|other=meses}",
    span: "{from} a {to}",
    overall: "Todas las lecturas juntas: edad {age}. Las mejor apoyadas van primero.",
    ruledOut:
      "{n:n} {n#one=lectura más es posterior|other=lecturas más son posteriores} a la venta o a la puesta en servicio.",
    note: "Observación: {note:w}.",
    more: "y {n:n} más",
    term: "Plazo de garantía del {startedOn:date} al {lastCoveredDay:date}[, {used:n} de {whole:n} {unit:w} transcurridos].",
    amount: "{line}: {amount} {currency}[, {why}][ = {formula}]",
    replacement: "La batería nueva está cubierta del {startsOn:date} al {lastCoveredDay:date}.",
    worst: "Lo menos favorable para el cliente: {outcome}[ A pagar: {total} {currency}.]",
    best: "Lo más favorable para el cliente: {outcome}[ A pagar: {total} {currency}.]",
    shelf: "De la fabricación a la venta: {lower:n} a {upper:n} {upper#one=día|other=días}.",
    refusal: "{about:w}: {reason} Ayudaría: {wouldHelp}",
    stepResult: "= {result}[ {unit}]",
    stepSource: "Fuente: {title}[, {edition}][, {locator}] ({standing:w})",
    plusMinus: "± indica la incertidumbre típica.",
    noDerivation: "Esta evaluación no contiene su cálculo.",
    dayTitle: "Resumen",
    evaluated: "Evaluadas",
    unusable: "No utilizables",
    byCondition: "Estado",
    byAction: "Qué hacer",
    byChemistry: "Tecnología",
    byRatingStandard: "Norma del valor nominal",
    byFinding: "Observado",
    pictures: "Imágenes",
    step: "Paso {n:n}",
    stepsInBrackets:
      "Los números entre corchetes indican los pasos, al final de la página, de los que salen los valores.",
  },
};
