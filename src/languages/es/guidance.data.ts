import type { GuidanceMessages } from "../../report/index.js";

/** Spanish: what the guidance says. */
export const guidance: GuidanceMessages = {
  step: {
    "look-over":
      "Examínela antes de tocar nada: grietas, fugas, hinchazón, bornes quemados o flojos, olor a azufre, hielo. Anote también si el electrolito está bajo.",
    "read-label":
      "Lea la etiqueta: tecnología de la batería, corriente de arranque en frío con su norma, o el código de tipo.",
    "check-leads":
      "Limpie los bornes, compruebe los dos cables de medida con las marcas de los bornes y mida otra vez.",
    "measure-temperature": "Mida la temperatura de la batería, no la del local, y diga cómo.",
    "tell-rest-history":
      "Averigüe qué fue lo último que hizo, carga, viaje o descarga, y hace cuántas horas.",
    "measure-rest-voltage": "Mida la tensión en los bornes, con el cargador y los consumidores apagados.",
    "draw-off-surface-charge":
      "Elimine la carga superficial: luces encendidas durante 15 s, después apagadas. Espere de 3 a 10 min y mida otra vez la tensión.",
    "measure-gravity":
      "Si tiene tapones hechos para abrirse: mida el ácido de cada elemento con un densímetro, con ojos y manos protegidos. Si no, omita este paso.",
    "measure-cranking":
      "Mida la corriente de arranque con un aparato de mano[, ajustado a la norma {standard}].",
    "repeat-reading": "Repita la medida hasta tener {readings:n}, colocando de nuevo las pinzas cada vez.",
    "top-up-water":
      "Si tiene tapones, añada agua destilada solo hasta cubrir las placas, con ojos y manos protegidos. No añada nunca ácido.",
    "warm-up":
      "Deje que llegue a la temperatura de un local templado. Después busque otra vez hielo y grietas, y mida su temperatura.",
    "cool-down":
      "Deje que se enfríe por debajo de 45 °C. Después busque otra vez hinchazón, y mida su temperatura.",
    "change-room":
      "Llévela a un local con más aire antes de cargarla[: {neededCubicMetresPerHour:m³/h} de aire fresco o, sin ventilador, {freeVolumeCubicMetres:m³} de espacio libre], y anote cuál es ese local. Si no lo hay, no la cargue.",
    charge:
      "Cárguela del todo[ con {fromAmperes:n} a {toAmperes:A} hasta {endVolts:V}][, unas {fromHours:d} a {toHours:h}], donde circule el aire. Déjela reposar {hours:h} y después mida la tensión. Lo medido antes ya no cuenta.",
    "load-test": "Haga un ensayo de descarga: {loadAmperes:A} durante 15 s, y lea la tensión al final.",
    "charge-and-repeat-load-test":
      "Cárguela del todo[ con {fromAmperes:n} a {toAmperes:A} hasta {endVolts:V}], donde circule el aire, déjela reposar {hours:h}, mida la tensión y repita el ensayo de descarga con {loadAmperes:A}.",
    "read-date-code":
      "Lea el código de fecha en la caja, en un borne o en un adhesivo, y anote la fecha de hoy.",
    "give-purchase-and-terms": "Anote la venta, con su comprobante, y las condiciones de la garantía.",
  },
  reason: {
    "hazard-first": "Una batería dañada o congelada puede herir a quien la mide; nada va antes que esto.",
    "nothing-without-label": "Una medida no dice nada mientras no se sepa con qué compararla.",
    "connection-doubtful": "La medida parece la de unas pinzas o unos cables, no la de la batería.",
    "temperature-unknown":
      "Toda medida depende de ella, y sin ella la batería no se debe cargar ni descargar.",
    "rest-history-unknown":
      "Una tensión indica la carga solo si se sabe cuánto tiempo lleva en reposo la batería.",
    "charge-unknown": "La carga decide si una medida baja se puede imputar a la batería.",
    "surface-charge-possible": "Una carga superficial puede ocultar una batería que no está nada cargada.",
    "charge-uncertain": "El ácido y la tensión juntos indican la carga mejor que uno solo de los dos.",
    "ability-unknown": "Nada ha medido todavía lo que puede dar.",
    "one-reading-uncertain": "Varias medidas afinan la respuesta, y una reclamación exige una repetida.",
    "plates-uncovered":
      "Las placas por encima del ácido se calientan con la carga; tal como está, no se debe cargar.",
    "too-cold-to-charge": "Hace demasiado frío para cargarla, y puede haber hielo oculto.",
    "too-hot-to-charge": "Está demasiado caliente para cargarla.",
    "room-without-air": "El local donde se cargaría no evacua el gas explosivo de la carga.",
    "too-little-charge": "Una medida baja con poca carga no prueba nada contra una batería.",
    "ability-between-limits":
      "Las medidas lo dejan abierto; una descarga fuerte es una prueba de otra clase.",
    "first-failure-needs-repeat":
      "No superar un primer ensayo de descarga puede ser falta de carga; solo el segundo condena.",
    "age-unknown":
      "Sin comprobante de compra, o con un límite de almacenamiento, las condiciones cuentan desde la fecha de fabricación.",
    "claim-open":
      "La batería deja el servicio; lo que paga la garantía depende de la venta y de las condiciones.",
  },
  end: {
    hazard: "No siga. Apártela y no mida nada en ella.",
    "other-system": "No siga. No es una batería de 12 V; este método no es para ella.",
    settled: "No hace falta nada más: ningún otro paso cambiaría bastante la respuesta.",
    "nothing-left": "No queda ningún paso seguro que no se haya dado. La respuesta sigue abierta.",
    "not-evaluable": "Sin la etiqueta, o sin ninguna medida, no hay respuesta.",
  },
  why: "Por qué: {reason}",
  risk: "Riesgo de una respuesta falsa ahora: {riskNow:p}. Este paso quita de media {drop:p}.",
  prepares: "Riesgo de una respuesta falsa ahora: {riskNow:p}. Este paso hace que el siguiente cuente.",
  residual: "Sigue siendo posible una respuesta falsa: {riskNow:p}.",
  untaken: "Lo que lo impide: {reason}",
};
