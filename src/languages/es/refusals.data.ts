import type { Messages } from "../../report/index.js";

/** Spanish: why something could not be worked out, and what would help. Holds wherever the code is used. */
export const refusals: NonNullable<Messages["refusal"]> = {
  // label codes and ratings
  "malformed-code": ["El texto no tiene la forma de un código así.", "El código tal como está impreso."],
  "unlisted-code": ["El significado de una parte no se conoce aquí.", "Los datos de la etiqueta."],
  "zero-capacity": ["Las cifras dan 0 Ah.", "El código tal como está impreso."],
  "implausible-current": [
    "El código corresponde a una corriente de arranque que no tiene ninguna batería de arranque.",
    "El código tal como está impreso.",
  ],
  "jis-rank-no-rating": [
    "Un mismo índice de prestaciones JIS vale para muchas baterías.",
    "El CCA o la capacidad de reserva de la etiqueta.",
  ],
  "no-rating-in-code": ["El código no contiene la corriente de arranque en frío.", "El CCA de la etiqueta."],
  "rank-class-unknown": [
    "Para esta caja no se conoce relación entre el índice de prestaciones y el CCA.",
    "El CCA o la capacidad de reserva de la etiqueta.",
  ],
  "jis-before-2006": [
    "Los valores JIS anteriores a 2006 se basan en otro ensayo.",
    "Una etiqueta de 2006 o posterior.",
  ],
  "en-level-2": [
    "El nivel EN 2 sale de la carga entregada en 150 s; los otros valores, de la tensión en descarga.",
    "El valor del fabricante según la otra norma.",
  ],
  "en-level-unstated": [
    "Los niveles EN 1 y 2 comparten el nombre, y el nivel no está indicado.",
    "El nivel impreso, o una etiqueta según la edición de 2015.",
  ],
  "iec-edition-unstated": [
    "IEC designa ensayos separados por un factor de 1,5 aproximadamente.",
    "La edición o el año de la etiqueta.",
  ],
  "iec-test-not-read": ["El ensayo de esta edición IEC no está establecido aquí.", "El texto de la norma."],
  "hca-not-a-rating": ["HCA no tiene un ensayo acordado.", "El CCA del fabricante."],
  "standard-unstated": [
    "Una corriente sin su norma es incierta en un factor de 1,7.",
    "La norma en la etiqueta.",
  ],
  "test-not-established": ["El ensayo de este valor no está establecido aquí.", "El texto de la norma."],
  "no-direct-conversion": [
    "No hay relación directa publicada, y las encadenadas no cuadran.",
    "El valor del fabricante según la otra norma.",
  ],
  "capacity-out-of-range": ["La relación no vale para una capacidad de este tamaño.", "El valor impreso."],
  "exponent-out-of-range": ["Los exponentes publicados están entre 1 y 1,6.", "Dos ensayos de descarga."],
  "current-too-high": [
    "La ley de Peukert no llega hasta las corrientes de arranque.",
    "Un ensayo de arranque.",
  ],
  "same-current": ["Los dos ensayos se hicieron con la misma corriente.", "Un ensayo con otra corriente."],
  // state of charge
  "voltage-below-acid-range": [
    "Seis elementos que funcionan nunca reposan a una tensión tan baja.",
    "La tensión de cada elemento.",
  ],
  "voltage-above-acid-range": [
    "Carga superficial, o un cargador aún encendido.",
    "Una medida tras un día de reposo.",
  ],
  "may-be-frozen": [
    "Más fría que el punto de congelación del ácido que esta tensión revela.",
    "Una medida después de que la batería se descongele.",
  ],
  "no-free-electrolyte": [
    "Los elementos regulados por válvula no contienen ácido libre.",
    "Una tensión en reposo.",
  ],
  "acid-outside-range": [
    "La concentración del ácido está fuera del margen.",
    "Una medida dentro de ese margen.",
  ],
  "gravity-outside-range": ["La densidad está fuera del margen.", "Una medida dentro de ese margen."],
  "gravity-out-of-range": [
    "Un elemento está fuera del margen de 0,985 a 1,400.",
    "La medida como densidad relativa, por ejemplo 1,265.",
  ],
  "temperature-outside-range": [
    "Para esta temperatura no hay valores publicados.",
    "Una medida más cerca de la temperatura de un local templado.",
  ],
  "too-few-cells": ["Una diferencia necesita al menos dos elementos.", "Medidas de todos los elementos."],
  "charge-outside-range": [
    "Por debajo del 30 % de carga, la aptitud de arranque no sigue ninguna ley publicada, y por encima del 120 % la carga es falsa.",
    "Una batería cargada y una tensión en reposo.",
  ],
  "temperature-outside-table": [
    "La tabla no dice nada de esta temperatura.",
    "Una batería llevada a entre 0 y 30 °C.",
  ],
  // bench
  "charging-forbidden": [
    "En este estado no se debe cargar.",
    "Una batería descongelada, examinada y hallada sin daños.",
  ],
  "chemistry-unknown": [
    "La tensión y la corriente de carga dependen de la tecnología y de la capacidad.",
    "La tecnología y los amperios hora o la capacidad de reserva, de la etiqueta.",
  ],
  "capacity-unknown": [
    "La tensión y la corriente de carga dependen de la tecnología y de la capacidad.",
    "La tecnología y los amperios hora o la capacidad de reserva, de la etiqueta.",
  ],
  "no-rating": [
    "No se conoce ni la corriente de arranque en frío ni la capacidad.",
    "La corriente de arranque en frío o la capacidad, de la etiqueta.",
  ],
  "no-six-volt-column": [
    "La tabla de límites elegida no tiene columna para 6 V.",
    "La tabla de límites habitual.",
  ],
  "flooded-only": [
    "Para esta tecnología no hay límite confirmado de la carga de tres minutos.",
    "En su lugar, la aceptación de carga tras cinco minutos.",
  ],
  "record-too-short": [
    "El registro no contiene la descarga durante bastante tiempo.",
    "Un registro de todo el ensayo.",
  ],
  "record-gap": [
    "Alrededor del momento buscado, las filas están demasiado separadas.",
    "Un registro con una fila por segundo.",
  ],
  // date codes
  empty: ["El código de fecha está vacío.", "El código que lleva la batería."],
  "too-long": [
    "El texto es más largo que cualquier código de fecha.",
    "Solo el marcado que contiene la fecha.",
  ],
  "not-ascii": [
    "El texto tiene caracteres que no aparecen en ningún código de fecha.",
    "El código en A-Z, 0-9 y / - además del punto.",
  ],
  "no-reading": [
    "Ningún sistema de códigos elegido lee este texto como fecha.",
    "El sistema de códigos del fabricante, o una plantilla.",
  ],
  "outside-window": [
    "La fecha es posterior a la revisión o va más allá de la edad admitida.",
    "La fecha de la revisión, o una edad admitida mayor.",
  ],
  "template-mismatch": ["El texto no encaja en la plantilla.", "Una plantilla con un signo por carácter."],
  "iec-60062-year-g": [
    "Las series publicadas de letras de año no coinciden en la G.",
    "Un segundo código, o el sistema de códigos si no es IEC 60062.",
  ],
  "contradicted-by-evidence": [
    "Todas las lecturas son posteriores a la venta o a la puesta en servicio.",
    "Una comprobación del código y de estas fechas.",
  ],
  "grid-not-punched": ["No se ha quitado ningún mes o ningún año.", "El mes y el año que se quitaron."],
  // vehicle
  "not-12-volt": [
    "Los límites para el vehículo son los de instalaciones de 12 V.",
    "Un método para esta tensión.",
  ],
  "temperature-unknown": [
    "El límite depende de la temperatura del motor.",
    "La temperatura del motor o de la batería.",
  ],
  "below-table": ["La tabla termina en -18 °C.", "Una medida con menos frío."],
  "inrush-included": [
    "La primera caída momentánea no es la tensión al arrancar.",
    "La tensión más baja después de 0,3 s.",
  ],
  "sampled-too-slowly": ["Los puntos de medida están demasiado separados.", "Dos medidas por segundo o más."],
  "no-row-for-temperature": [
    "No hay ningún valor publicado para esta temperatura.",
    "Una medida con el motor caliente.",
  ],
  "negative-reading": ["Esta magnitud no puede ser negativa.", "El signo de la medida."],
  "leads-exchanged": [
    "La caída de tensión es negativa.",
    "Una medida con los cables de medida cambiados entre sí.",
  ],
  "no-current": [
    "Sin corriente no se pierde tensión en ningún camino.",
    "La caída de tensión mientras pasa la corriente.",
  ],
  "current-required": ["El límite vale para una corriente determinada.", "La corriente."],
  "limit-needs-current": ["El límite de una parte depende de la corriente.", "Límites en voltios."],
  "outside-table": ["Las bandas están publicadas para -20 a 80 °C.", "Una medida dentro de ese margen."],
  "charging-not-begun": ["La carga no empieza hasta cerca de 1200 rpm.", "Una medida a 2500 rpm."],
  "may-be-computer-controlled": [
    "Quizá una unidad de control mantiene baja la tensión.",
    "Cómo se regula la tensión.",
  ],
  "place-differs": ["El límite vale para otro punto de medida.", "Otro límite."],
  "method-differs": ["El valor de pico a pico y el valor eficaz son distintos.", "Otro límite."],
  "not-a-standing-draw": [
    "Ningún vehículo estacionado consume más de 10 A; quizá eran miliamperios.",
    "La unidad de la medida.",
  ],
  "not-settled": ["Quizá las unidades de control siguen despiertas.", "Una medida después de esperar más."],
  "draw-not-established": ["El consumo en reposo no se distingue de cero.", "Una medida más fina."],
  "charge-out-of-range": ["La carga al estacionar está fuera de 0 a 100 %.", "La carga al estacionar."],
  "reserve-capacity-unknown": [
    "El tiempo que un vehículo puede estar parado depende de la capacidad de reserva de la batería.",
    "La capacidad de reserva o los amperios hora, de la etiqueta.",
  ],
};
