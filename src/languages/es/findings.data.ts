import type { Messages } from "../../report/index.js";

/** Spanish: what was found, and what it means. */
export const findings: Messages["finding"] = {
  "missing-temperature": ["Temperatura no indicada", "Se supusieron unos 25 °C. Mídala en la batería."],
  "missing-rest-history": [
    "Reposo antes de la medición no indicado",
    "Lo que dice su tensión depende de lo último que hizo y de cuánto reposó después. Anote ambas cosas.",
  ],
  "missing-charge-measurement": [
    "Carga no medida",
    "Ninguna medida utilizable la indica. Mida la tensión en reposo cuando se haya estabilizado.",
  ],
  "missing-ability-measurement": [
    "Aptitud de arranque no medida",
    "Una tensión en reposo indica la carga, no la aptitud de arranque. Mida la corriente de arranque o haga un ensayo de descarga.",
  ],
  "missing-instrument-uncertainty": [
    "Incertidumbre del aparato no indicada",
    "Se supuso un {assumed:%1} del valor leído.",
  ],
  "missing-voltmeter-uncertainty": [
    "Incertidumbre del voltímetro no indicada",
    "Se supusieron {assumedVolts:V} (incertidumbre típica).",
  ],
  "missing-inspection-date": [
    "Fecha de la revisión no indicada",
    "Sin ella, el código de fecha no da la edad.",
  ],
  "chemistry-unknown": [
    "Tecnología desconocida",
    "La carga se conoce con menos certeza, y no se puede dar ninguna tensión de carga. Lea la tecnología en la etiqueta.",
  ],
  "label-refused": [
    "Código de la etiqueta no leído",
    "«{text}» no se pudo leer como {scheme}. Compruébelo en la etiqueta.",
  ],
  "rating-estimated": [
    "Valor nominal solo estimado",
    "La etiqueta no da ninguno; se estiman unos {amperes:A} según el tipo. El error puede ser grande.",
  ],
  "rating-not-comparable": [
    "Medida y valor nominal no comparables",
    "Motivo: {reason:w}. Solo las medidas según la norma de la etiqueta, o según una convertible, dicen de qué es capaz.",
  ],
  "rating-edition-unstated": [
    "Nivel EN no indicado",
    "El nivel 2 queda hasta un 15 % por debajo del nivel 1; por eso se añadió un {relativeUncertainty:%1} a la incertidumbre.",
  ],
  "date-code-ambiguous": [
    "Código de fecha con varios significados",
    "«{text}» se puede leer de {readings:n} maneras.[ Ayudaría: {settledBy:w}.]",
  ],
  "date-code-refused": [
    "Código de fecha no leído",
    "«{text}» no se leyó como fecha. Compruébelo en la batería.",
  ],
  "date-code-confusable": [
    "Carácter engañoso en el código de fecha",
    "En «{text}», {read} puede ser {couldBe}. Mire otra vez.",
  ],
  "case-damaged": [
    "Daño visible",
    "Visto: {signs:w}. No la cargue, no la descargue y no le conecte cables de arranque.",
  ],
  "frozen-seen": ["Hielo en la batería", "No la cargue, no la descargue y no le conecte cables de arranque."],
  "frozen-possible": [
    "Puede estar congelada",
    "Está a {temperatureCelsius:°C}; un ácido tan diluido como indican sus medidas se congela a {freezingPointCelsius:°C}. Trátela como congelada.",
  ],
  "near-freezing": [
    "Cerca de congelarse",
    "Faltan menos de 3 °C para que su ácido se congele. Caliéntela y cárguela pronto.",
  ],
  "electrolyte-low": [
    "Nivel de electrolito bajo",
    "Las placas pueden estar secas: da las medidas de una batería más pequeña, y la carga produce calor y gas. Complete el nivel con agua destilada antes de cualquier carga.",
  ],
  "other-system-voltage": [
    "No es una batería de 12 V",
    "[Tensión leída: {volts:V}. ]Este método no vale para ella.",
  ],
  "system-voltage-unclear": [
    "Tensión del sistema dudosa",
    "Con {volts:V} no es seguro que sea una batería de 12 V. Compruebe la etiqueta y la conexión.",
  ],
  "no-voltage": [
    "Casi sin tensión",
    "{volts:V} en los bornes. Un mal contacto o un corte interno puede ser la causa.",
  ],
  "voltage-above-rest": [
    "No es una tensión en reposo",
    "{volts:V} es más de lo que ninguna batería conserva en reposo después de este tiempo. Aún hay un cargador o un motor en marcha.",
  ],
  "reversed-polarity": [
    "Medida invertida",
    "Tensión leída: {volts:V}. Es probable que los cables de medida estén cambiados.",
  ],
  "reversed-after-check": [
    "Batería invertida",
    "Tensión leída: {volts:V}, con los cables comprobados; por tanto, se cargó al revés. No la cargue ni la conecte.",
  ],
  "surface-charge": [
    "Carga superficial no descartada",
    "El valor de {volts:V} puede ser demasiado alto, y la carga más baja de lo que parece.",
  ],
  "rest-extrapolated": [
    "Tensión en reposo extrapolada",
    "{volts:V} es el valor al que tiende una relajación registrada, no una medida tras un reposo completo. Su incertidumbre dice con qué exactitud se conoce.",
  ],
  "vehicle-loads-possible": [
    "Consumidores del vehículo no descartados",
    "Si hay lámparas, ventilador o unidades de control encendidos, las medidas bajan. Apáguelos.",
  ],
  "temperature-unusual": [
    "Temperatura poco habitual",
    "{temperatureCelsius:°C} es posible. Compruebe el valor y su unidad.",
  ],
  "readings-scatter": [
    "Medidas dispersas",
    "Se reparten en un {relative:%}; el aparato explica un {limit:%}. Sospeche primero de las pinzas y los bornes.",
  ],
  "temperature-compensation-assumed": [
    "Corrección de temperatura supuesta",
    "Se supone que el aparato tuvo en cuenta {temperatureCelsius:°C}; se añadió un {relativeUncertainty:%1} a la incertidumbre.",
  ],
  "electrical-load-present": [
    "Había un consumidor encendido",
    "Pasaban {amperes:d} A durante la medición, lo que supone unos {shiftMillivolts:mV}, y más si dura. Apáguelo y mida otra vez.",
  ],
  "modules-may-be-awake": [
    "Unidades de control quizá despiertas",
    "{minutesSinceLocked:min} después del último contacto; muchas no se duermen hasta pasados {neededMinutes:min}. Cierre con llave, aleje la llave y espere.",
  ],
  "contact-spread": [
    "Las medidas cambian con las pinzas",
    "Volver a colocarlas desplaza la medida un {between:%1}; repetirla explica un {limit:%1}. Limpie los bornes; ponga las pinzas sobre el plomo, no sobre espárragos ni adaptadores.",
  ],
  "low-reading-in-vehicle": [
    "Medida baja en el vehículo no imputada a la batería",
    "Motivo: {reasons:w}. Desconecte la batería y mida otra vez en sus propios bornes.",
  ],
  "ability-implausible": [
    "Medida inverosímil",
    "{ratio:%} del valor nominal: ninguna batería es capaz de eso. Sospeche de las pinzas, del ajuste o de la etiqueta.",
  ],
  "cell-missing": [
    "Ha fallado un elemento",
    "Tras una carga terminada faltan {shortfallVolts:V}, como con {cells:n} de 6 elementos averiados.",
  ],
  "cell-missing-unproven": [
    "Tensión tan baja como con un elemento averiado",
    "Faltan {shortfallVolts:V}, como con {cells:n} de 6 elementos averiados. Una batería vacía puede medir lo mismo.",
  ],
  "cell-spread": [
    "Un elemento mucho más débil",
    "Las densidades difieren en {spread:g}; el límite es {limit:g}. El elemento {weakestCell:n} tiene la más baja.",
  ],
  "cell-spread-unproven": [
    "Elementos desiguales, aún no probado",
    "Las densidades difieren en {spread:g}; el límite es {limit:g}. El elemento {weakestCell:n} tiene la más baja. Solo cuenta después de una carga completa y con el ácido mezclado.",
  ],
  "charge-low": [
    "Carga baja",
    "La medida indica {stateOfCharge:c}; hace falta {limit:%}. Esto no es un defecto.",
  ],
  "charge-above-full": [
    "Medida por encima de la carga completa",
    "Más alta de lo que muestra una batería llena de este tipo. Compruebe el tipo y la medida.",
  ],
  "charge-below-empty": [
    "Medida por debajo de la descarga completa",
    "Está profundamente descargada; hasta qué punto, no se puede saber.",
  ],
  "cells-not-all-measured": ["No se midieron todos los elementos", "De los demás no se sabe nada."],
  "charge-not-established": [
    "Carga conocida con poca certeza",
    "Probabilidad de que llegue a {limit:%}: {probability:p}. Es poco para imputarle una aptitud de arranque baja.",
  ],
  "charge-evidence-disagrees": [
    "Tensión y densidad se contradicen",
    "Carga según la tensión: {fromVoltage:c}; según la densidad: {fromGravity:c}. Déjela reposar, mezcle el ácido y mida otra vez.",
  ],
  "charge-history-contradicted": [
    "Baja a pesar de una carga terminada",
    "La medida indica {stateOfCharge:c}. Compruebe el cargador y sus pinzas; quizá la batería no tomó la carga.",
  ],
  "ability-above": [
    "La aptitud de arranque llega al límite",
    "{ratio:%} del valor nominal: al menos {limit:%} (probabilidad: {probability:p}).",
  ],
  "ability-between": [
    "Aptitud de arranque cerca del límite",
    "{ratio:%} del valor nominal: al menos {limit:%} (probabilidad: {probability:p}). Eso no decide en ningún sentido.",
  ],
  "ability-worn": [
    "Aptitud de arranque por debajo del límite",
    "{ratio:%} del valor nominal: menos de {limit:%} (probabilidad: {probability:p}). Aún puede bastar para una necesidad pequeña.",
  ],
  "ability-below": [
    "Aptitud de arranque muy insuficiente",
    "{ratio:%} del valor nominal: menos de {limit:%} (probabilidad: {probability:p}).",
  ],
  "ability-not-judged": [
    "Aptitud de arranque baja no imputada a la batería",
    "Con poca carga, toda batería da medidas bajas. Probabilidad de que, tal como está, llegue al límite: {probability:p}.",
  ],
  "ability-evidence-disagrees": [
    "Medidas de la aptitud contradictorias",
    "[Ensayo de descarga: {loadTest:w}. ]Estimaciones: de {lowest:%} a {highest:%} del valor nominal. Una de las medidas es falsa.",
  ],
  "load-test-passed": [
    "Ensayo de descarga superado",
    "{marginVolts:V} por encima del límite de {limit:V}; probabilidad de que lo supere de verdad: {probability:p}.",
  ],
  "load-test-failed": [
    "Ensayo de descarga no superado una vez",
    "{marginVolts:-V} por debajo del límite de {limit:V}. Por sí solo no condena nada.",
  ],
  "load-test-failed-again": [
    "Ensayo de descarga no superado otra vez tras una carga",
    "{marginVolts:-V} por debajo del límite de {limit:V}; probabilidad de que lo supere de verdad: {probability:p}.",
  ],
  "load-test-undecided": [
    "Ensayo de descarga demasiado ajustado",
    "Demasiado cerca del límite de {limit:V}; probabilidad de que lo supere de verdad: {probability:p}.",
  ],
  "load-test-not-valid": ["El ensayo de descarga no cuenta", "Motivo: {reasons:w}."],
  "requirement-met": [
    "Suficiente para este motor",
    "Probabilidad de arranque en la mañana más fría: {probability:p}.",
  ],
  "requirement-not-met": [
    "Insuficiente para este motor",
    "Probabilidad de arranque en la mañana más fría: {probability:p}.",
  ],
  "requirement-undecided": [
    "Dudoso para este motor",
    "Probabilidad de arranque en la mañana más fría: {probability:p}.",
  ],
  "requirement-not-judged": ["Arranque del motor sin previsión", "Motivo: {reason:w}."],
  "vehicle-uncertainty-assumed": [
    "Incertidumbre de las medidas en el vehículo supuesta",
    "Incertidumbre típica: {dropMillivolts:mV} para una caída de tensión, {relativeAmperes:%} de una corriente, {drawMilliamperes:mA} para un consumo en reposo, {relativeRipple:%} de un rizado.",
  ],
  "vehicle-reading-undecided": [
    "Demasiado cerca de su límite",
    "{reading:w}, probabilidad de que se cumpla el límite: {probability:p}. Eso no decide en ningún sentido.",
  ],
  "cranking-voltage-held": [
    "La tensión aguanta al arrancar",
    "{volts:V} en los bornes; el límite es {limit:V}.",
  ],
  "cranking-voltage-low": [
    "La tensión cae demasiado al arrancar",
    "{volts:V} en los bornes; el límite es {limit:V}. La causa puede ser la batería, los cables, el motor de arranque o un motor duro de girar.",
  ],
  "cranking-current-usual": [
    "Corriente del motor de arranque normal",
    "{amperes:A}; el límite para este motor es {limit:A}.",
  ],
  "cranking-current-high": [
    "El motor de arranque toma demasiada corriente",
    "{amperes:A}; el límite para este motor es {limit:A}. Motor de arranque o motor.",
  ],
  "slow-with-high-current": ["Lento con una corriente alta", "Revise: {lookAt:w}."],
  "slow-with-low-current": ["Lento o parado con una corriente baja", "Revise: {lookAt:w}."],
  "slow-at-full-voltage": ["Gira despacio aunque la batería mantiene su tensión", "Revise: {lookAt:w}."],
  "no-turning-at-full-voltage": ["No gira aunque la batería mantiene su tensión", "Revise: {lookAt:w}."],
  "voltage-drop-high": [
    "Tensión perdida en el camino al motor de arranque",
    "{reading:w}[: {volts:V}, el límite es {limit:V}][: {milliohms:mΩ}, el límite es {limit:mΩ}].",
  ],
  "voltage-drops-within": [
    "El camino al motor de arranque está en buen estado",
    "Al arrancar, las caídas de tensión de los dos lados cumplen sus límites.",
  ],
  "regulated-voltage-within": ["Tensión de carga normal", "{volts:V} en los bornes."],
  "regulated-voltage-low": [
    "Tensión de carga demasiado baja",
    "{volts:V} en los bornes; a esta temperatura se necesitan al menos {limit:V}.",
  ],
  "regulated-voltage-high": [
    "Tensión de carga demasiado alta",
    "{volts:V} en los bornes; se admiten {limit:V} como máximo. Así la batería pierde el agua y se seca.",
  ],
  "charging-not-judged": ["Tensión de carga no juzgada", "{volts:V} en los bornes. Motivo: {reason:w}."],
  "charging-rise-enough": [
    "Carga con los consumidores encendidos",
    "Con luces y ventilador, la tensión queda {volts:V} por encima de su valor con el motor parado.",
  ],
  "charging-rise-low": [
    "El motor en marcha apenas sube la tensión",
    "Sube {volts:V}; lo mínimo son {limit:V}.",
  ],
  "charging-rise-high": [
    "El motor en marcha sube demasiado la tensión",
    "Sube {volts:V}; lo máximo son {limit:V}.",
  ],
  "charging-drop-high": [
    "Tensión perdida en el camino desde el alternador",
    "{reading:w}: {volts:V}, el límite es {limit:V}.",
  ],
  "ripple-within": [
    "Rizado dentro del límite elegido",
    "{volts:V}; ese límite es {limit:V}. Otros difieren en un factor diez.",
  ],
  "ripple-high": [
    "Rizado por encima del límite elegido",
    "{volts:V}; ese límite es {limit:V}. Un diodo del alternador o una batería débil.",
  ],
  "draw-expected": [
    "Consumo del vehículo estacionado normal",
    "{milliamperes:mA}; hasta {limit:mA} es habitual.",
  ],
  "draw-explained": [
    "Consumo en reposo explicado por el equipamiento",
    "{milliamperes:mA}; lo habitual serían {limit:mA}. Aun así acorta el tiempo que puede estar parado.",
  ],
  "draw-high": [
    "El vehículo estacionado consume demasiado",
    "[{milliamperes:mA}; hasta {limit:mA} es habitual. ]Algo queda encendido.",
  ],
  "draw-not-settled": [
    "Consumo en reposo medido demasiado pronto",
    "{milliamperes:mA} después de {settledMinutes:min}; quizá aún había unidades de control despiertas. Espere {neededMinutes:min}.",
  ],
  "standing-time": [
    "Cuánto tiempo puede estar parado",
    "Con este consumo y una carga inicial de {fromCharge:c}, aún debería arrancar el motor durante {fromDays:d} a {toDays:d} {toDays#one=día|other=días}. El frío y la autodescarga acortan ese tiempo.",
  ],
  "flat-by-drain": [
    "El consumo en reposo basta para explicar la descarga",
    "Tiempo parado: {parkedDays:d} {parkedDays#one=día|other=días}; probabilidad de que una batería sana ya no arranque después: {probability:p}.",
  ],
  "flat-too-fast-for-drain": [
    "Descargada más deprisa de lo que explica el consumo en reposo",
    "Tiempo parado: {parkedDays:d} {parkedDays#one=día|other=días}; probabilidad de que una batería sana ya no arranque después: {probability:p}. Una batería debilitada, o un consumidor que estaba apagado al medir.",
  ],
  "flat-unexplained": [
    "El tiempo parado no decide en ningún sentido",
    "Tiempo parado: {parkedDays:d} {parkedDays#one=día|other=días}; probabilidad de que una batería sana ya no arranque después: {probability:p}.",
  ],
  "charge-sufficient": [
    "Carga suficiente para juzgar",
    "[Probabilidad de que llegue a lo necesario: {probability:p}.]",
  ],
  "starter-or-engine": [
    "La batería y los cables no son la causa",
    "Quedan: el motor de arranque, el motor, su aceite.",
  ],
  "causes-conflict": [
    "Medidas contradictorias sobre una causa",
    "Hablan a la vez a favor y en contra: {cause:w}. Para aclararlo: {settleBy:w}.",
  ],
  "cause-unclear": ["Nada de lo medido lo explica", "[Queda por ver: {open:w}.]"],
};
