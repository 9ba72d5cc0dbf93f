import type { Messages } from "../../report/index.js";
import { findings } from "./findings.data.js";
import { refusals } from "./refusals.data.js";
import { warranty } from "./warranty.data.js";
import { words } from "./words.data.js";

/** German: everything a report says. Verbs of what to do stand in the infinitive; the battery is "sie". */
export const messages: Messages = {
  language: "de",
  direction: "ltr",
  comma: ", ",
  semicolon: "; ",
  sentence: [".", " "],
  firstDay: "1",
  chance: ["{n} von 100", "{n} von 1000", "mehr als 999 von 1000", "weniger als 1 von 1000"],
  question: {
    what: "Was ist es?",
    trust: "Ist auf die Messwerte Verlass?",
    charge: "Wie voll ist sie geladen?",
    ability: "Wie viel Leistungsfähigkeit ist übrig?",
    start: "Wird sie den Motor starten?",
    vehicle: "Was zeigte das Fahrzeug?",
    now: "Wozu taugt sie, und was ist zu tun?",
    cause: "Was steckt dahinter?",
    noticed: "Was fiel auf?",
    next: "Was ist als Nächstes zu tun?",
    hurt: "Was kann mich verletzen?",
    age: "Wie alt ist sie?",
    warranty: "Was zahlt die Garantie?",
    refused: "Was ließ sich nicht ermitteln?",
    derivation: "Wie wurde es ermittelt?",
  },
  severity: { hazard: "Gefahren", defect: "Mängel", warning: "Warnungen", note: "Hinweise" },
  chemistry: {
    flooded: "Nassbatterie",
    "flooded-calcium": "Nassbatterie mit Calcium",
    efb: "EFB-Batterie",
    agm: "AGM-Batterie",
    gel: "Gel-Batterie",
    unknown: "Batterie unbekannter Bauart",
  },
  standard: {
    "sae-j537": "CCA (SAE)",
    "en-50342-1:2015": "EN (2015)",
    "en-50342-1:2006-level-1": "EN1 (2006)",
    "en-50342-1:2006-level-2": "EN2 (2006)",
    "en-50342-1:unstated": "EN (Stufe nicht angegeben)",
    "iec-60095-1:pre-2006": "IEC (vor 2006)",
    "iec-60095-1:2006": "IEC (2006)",
    "iec-60095-1:2018": "IEC (2018)",
    "iec-60095-1:unstated": "IEC (Ausgabe nicht angegeben)",
    "din-43539-2": "DIN",
    "jis-d-5301:2006": "CCA (JIS)",
    "jis-d-5301:pre-2006": "JIS (vor 2006)",
    "bci-ca": "CA",
    "bci-mca": "MCA",
    hca: "HCA",
    "gost-959-91": "GOST",
    "gb-t-5008-1": "GB/T",
    unstated: "CCA (Norm nicht angegeben)",
  },
  condition: {
    serviceable: ["Brauchbar", "Sie leistet genug von dem, was ihr Nennwert verspricht."],
    worn: [
      "Geschwächt",
      "Sie liegt unter der Grenze für eine brauchbare Batterie, ist aber nicht als unbrauchbar erwiesen.",
    ],
    unserviceable: ["Unbrauchbar", "Sie taugt nicht mehr zum Gebrauch."],
    "internally-failed": ["Im Innern ausgefallen", "Eine Zelle arbeitet nicht mehr."],
    "not-established": ["Nicht festgestellt", "Die Messwerte entscheiden nicht, was sie ist."],
  },
  action: {
    keep: ["Weiter benutzen"],
    "charge-then-keep": ["Laden, dann weiter benutzen"],
    "charge-then-repeat": ["Laden, dann neu messen"],
    repeat: ["Neu messen, bevor entschieden wird"],
    retire: ["Außer Betrieb nehmen"],
    isolate: ["Absondern und nicht laden"],
    stop: ["Hier aufhören", "Dieses Verfahren gilt nur für 12-V-Batterien."],
  },
  decidedBy: {
    "damaged-case": "ein sichtbarer Schaden geht jeder Messung vor",
    frozen: "eine Batterie, die gefroren ist oder sein kann, wird nicht beurteilt",
    "low-electrolyte": "mit trockenen Platten misst sich jede Batterie schwach",
    "system-voltage":
      "Etikett oder Spannung ist nicht die einer ruhenden, richtig herum angeschlossenen 12-V-Batterie",
    "scattered-readings": "die Messwerte streuen mehr, als das Messgerät erklärt",
    "contact-spread": "neues Ansetzen der Klemmen ändert den Messwert mehr als bloßes Wiederholen",
    "in-vehicle-reading": "ein niedriger Messwert im Fahrzeug kann am Fahrzeug liegen",
    "missing-cell": "der Spannung fehlt eine ganze Zelle",
    "cell-spread": "eine Zelle ist viel schwächer als die anderen",
    "too-little-charge": "die Ladung ist zu gering oder nicht gut genug bekannt, um sie zu beurteilen",
    "conflicting-evidence": "Belastungsprüfung und Schätzung widersprechen sich",
    "load-test": "die Belastungsprüfung",
    ability: "die gemessene Leistungsfähigkeit gegen den Nennwert",
    "no-ability-evidence": "keine gültige Messung zeigt ihre Leistungsfähigkeit",
  },
  trust: {
    sound: "Ja. Nichts wurde gefunden, was sie einschränkt.",
    limited: "Teilweise. Dies schränkt sie ein:",
    unusable: "Nein. Sie erlauben kein Urteil.",
  },
  finding: findings,
  cause: {
    battery: "Die Batterie selbst",
    connection: "Ihre Verbindung zum Starter",
    "charging-circuit": "Der Ladestromkreis",
    drain: "Entladung im Stand",
    "only-discharged": "Nur entladen",
  },
  support: {
    supported: "die Messwerte sprechen dafür",
    contradicted: "die Messwerte sprechen dagegen",
    open: "offen",
  },
  caution: {
    "local-codes-first": "Örtliche Sicherheitsvorschriften gehen vor.",
    "eyes-and-acid":
      "Säure verätzt. Augenschutz, Schürze und Gummihandschuhe tragen. Säure im Auge: 15 min spülen, zum Arzt.",
    "hydrogen-no-sparks":
      "Sie gibt auch in Ruhe explosionsfähiges Gas ab. In der Nähe keine Flamme, keine Funken, nicht rauchen.",
    "ventilate-charging":
      "In bewegter Luft laden, Stopfen eingesetzt. Erst das Ladegerät ausschalten, dann die Klemmen bewegen.",
    "charge-temperature": "Das Laden abbrechen, wenn die Batterie 50 °C erreicht.",
    "warm-before-charging": "Vor dem Laden auf Raumtemperatur bringen und nach Eis und Rissen sehen.",
    "never-charge": "Nicht laden, nicht belasten, keine Starthilfe.",
    "frozen-handling": "Eis kann das Gehäuse gesprengt haben. Bei Raumtemperatur auftauen, dann besichtigen.",
    "damaged-handling": "Beschädigt: aufrecht halten, Handschuhe tragen, Säure mit Natron aufnehmen.",
    "toxic-gas":
      "Geruch nach faulen Eiern ist giftiges Gas: Ladegerät aus, Türen auf, fernbleiben, bis er weg ist.",
    "sealed-overheating":
      "Verschlossen: niemals öffnen. Heiß oder Geruch nach faulen Eiern: Ladegerät aus, lüften, Abstand halten.",
    "clamp-order": "Die Masseklemme zuerst abnehmen und zuletzt aufsetzen.",
    lifting: "Sie ist schwer. Aufrecht heben, mit Tragegurt oder beiden Händen.",
    "short-circuit": "Kein Werkzeug, Ring oder Band über die Pole: Ein Kurzschluss verbrennt sofort.",
    "return-and-transport":
      "Aufrecht und mit abgedeckten Polen tragen; auf der Straße ist sie {unNumber}, Klasse 8. Zum Recycling geben, nie in den Müll.",
    "charging-air":
      "Laden braucht {neededCubicMetresPerHour:m³/h} Frischluft ({batteries:n} {batteries#one=Batterie|other=Batterien} gleichzeitig): ohne Lüfter zwei Öffnungen von je {openingSquareCentimetres:cm²} und {freeVolumeCubicMetres:m³} freien Raum.",
    "room-air":
      "Dort nicht laden: Nötig sind [{freeVolumeCubicMetres:m³} freier Raum, vorhanden {roomCubicMetres:m³}][{neededCubicMetresPerHour:m³/h} Frischluft, vorhanden {givenCubicMetresPerHour:m³/h}].",
    "jump-starting":
      "Starthilfe: Verbraucher aus, Plus an Plus, letzte Klemme an blankes Metall mindestens {groundMetres:m} von der entladenen Batterie, Abnehmen umgekehrt. Nie 24 V, nie über {mostVolts:n} V.",
    "eye-wash": "Wasser zum Spülen von Augen und Haut innerhalb von {metres:m}.",
    "neutralise-spills":
      "Verschüttete Säure: {gramsPerLitre:n} g Natron auf einen Liter Wasser, bis es nicht mehr schäumt, dann nachspülen.",
    "take-back":
      "Bei einem Händler oder einer Sammelstelle abgeben, die Batterien zurücknimmt; Blei und Säure sind gefährlicher Abfall.",
    "system-voltage-supply": "Nicht an Ladegerät, Prüfgerät oder Fahrzeug mit 12 V anschließen.",
  },
  nextStep: {
    "exchange-leads": "Die Messleitungen tauschen und mit den Polzeichen vergleichen.",
    "check-connection": "Die Pole reinigen, Klemmen und Leitungen prüfen.",
    "end-charging": "Ladegerät oder Motor ausschalten, eine heiße Batterie abkühlen und dann ruhen lassen.",
    "thaw-and-inspect":
      "Bei Raumtemperatur auftauen. Dann nach Rissen und Schwellungen sehen; findet sich etwas, gehört sie zur Rücknahme.",
    "top-up-water":
      "Wo Stopfen sind, die Platten mit destilliertem Wasser bedecken, nicht mehr, mit Augenschutz. Nie Säure nachfüllen.",
    "find-comparable-rating":
      "Auf dem Etikett einen Nennwert mit seiner Norm suchen, oder nach der aufgedruckten Norm messen.",
    "change-room": "Vor dem Laden in einen Raum mit mehr Luft bringen oder hier mehr Luft zuführen.",
    "offer-claim": "Die Bedingungen zahlen: vor der Rückgabe den Garantieanspruch anbieten.",
    "warm-up": "Auf Raumtemperatur kommen lassen und nach Eis und Rissen sehen.",
    "cool-down": "Zuerst unter 45 °C abkühlen lassen.",
    "set-apart": "Absondern, fern von Funken. Nicht laden.",
    charge:
      "Voll laden[ mit {fromAmperes:n} bis {toAmperes:A} und bis zu {endVolts:V}][ (für {atCelsius:°C})][, etwa {fromHours:d} bis {toHours:h}].",
    "rest-after-charge": "Ohne Ladegerät und Last {hours:h} ruhen lassen.",
    "draw-off-surface-charge":
      "Die Oberflächenladung abbauen: Licht für 15 s ein, dann aus und 3 min warten. Oder 3 h oder länger ruhen lassen.",
    "measure-ability": "Den Startstrom messen oder eine Belastungsprüfung machen.",
    "measure-again": "Neu messen[: {readings:n} Messwerte, Klemmen jedes Mal neu angesetzt].",
    "measure-with-load": "Eine Belastungsprüfung machen[: {loadAmperes:A} für 15 s].",
    "measure-at-the-posts":
      "Abklemmen, Masseklemme zuerst, und auf der Werkbank an ihren eigenen Polen neu messen.",
    "repair-connection":
      "Klemmen, Kabel und Masse des Startstromkreises reinigen und festziehen, dann die Spannungsabfälle neu messen.",
    "measure-voltage-drops":
      "Beim Anlassen die Spannungsabfälle beider Seiten messen: höchstens {seconds:n} s, dann {pauseSeconds:n} s Pause.",
    "look-at-starter": "Starter und Motor untersuchen lassen.",
    "repair-charging-circuit":
      "Generator, Regler und ihre Kabel instand setzen lassen, sonst entlädt sich die Batterie wieder.",
    "find-consumer":
      "Suchen, was eingeschaltet bleibt: den Ruhestrom beobachten, eine Sicherung nach der anderen ziehen, das Fahrzeug dabei nicht wecken.",
    "let-modules-sleep":
      "Das Fahrzeug verriegeln, den Schlüssel fernhalten, warten[: {neededMinutes:min}], dann den Ruhestrom neu messen.",
    "settle-cause": "Zur Ursache ({cause:w}): {settleBy:w}.",
    "hand-back": "Dem Besitzer zurückgeben.",
    "look-again-before-winter": "Vor dem Winter noch einmal prüfen.",
    "take-back": "Außer Betrieb nehmen: mit dem Anspruch, wo es einen gibt, sonst zum Recycling.",
    "other-method": "Ein Verfahren für ihre Systemspannung verwenden.",
  },
  ...warranty,
  word: words,
  refusal: refusals,
  phrase: {
    title: "Batterieprüfung",
    reference: "Kennung: {id}",
    inspected: "Geprüft: {day:date}",
    identity: "{chemistry}[, {nominalVolts:n} V].",
    label: "Typcode „{text}“ ({scheme}).",
    rating: "Nennwert {amperes} {standard}, {from:w}.",
    capacity: "Kapazität {amount} bei Entladung in 20 h.",
    reserve: "Reservekapazität {amount} bei 25 A.",
    about: "etwa {value}",
    range: "{lower} bis {upper}",
    atLeast: "mindestens {value}",
    atMost: "höchstens {value}",
    anything: "alles von leer bis voll",
    group: "{name}:",
    unknown: "Nicht bekannt.",
    none: "Nicht gemessen.",
    charge: "Etwa {share:c} ({interval}), aus {from:w}.",
    chargeBound: "Höchstens {upper:c}, aus {from:w}. Oberflächenladung kann eine geringere Ladung verdecken.",
    ability:
      "Aus {from:w}: {ratio:%} des Nennwerts ({interval}).[ Das sind {amperes:A} {standard}[ ({converted:w})].]",
    reaches:
      "Wahrscheinlichkeit, dass sie die Grenze[ von {limit:%}] für „brauchbar“ erreicht: {probability:p}.",
    below:
      "Wahrscheinlichkeit, dass sie unter der Grenze[ von {limit:%}] für „unbrauchbar“ liegt: {probability:p}.",
    limits: "Keine Norm setzt diese Grenzen; sie sind eine Festlegung.",
    loadAbove:
      "Belastungsprüfung: {margin:V} über der Grenze von {limit:V}; Wahrscheinlichkeit, dass sie wirklich besteht: {probability:p}.",
    loadBelow:
      "Belastungsprüfung: {margin:-V} unter der Grenze von {limit:V}; Wahrscheinlichkeit, dass sie wirklich besteht: {probability:p}.",
    loadFaults: "Gegen die Belastungsprüfung spricht: {faults:w}.",
    startDownTo:
      "Voll geladen: Bei {celsius:°C}[ ({interval})] ist ein Start ebenso wahrscheinlich wie keiner, bei weniger Kälte wahrscheinlicher.",
    startBelow:
      "Voll geladen: Bei {celsius:°C} ist ein Start wahrscheinlicher als keiner, vielleicht auch bei mehr Kälte.",
    startAbove: "Selbst bei {celsius:°C} startet sie vielleicht nicht.",
    coldMorning:
      "Am kältesten Morgen kann sie {ability:A} geben, der Motor verlangt {demand:A}. Wahrscheinlichkeit eines Starts: {probability:p}.",
    assumed: "Angenommen: {assumptions:w}.",
    reason: "Grund: {reason}.",
    chargePlan:
      "Voll, wenn {equal-hourly-readings:n} stündliche Messwerte gleich sind. Bei {electrolyte-temperature:°C} abbrechen; nie über {ceilingVolts:V} oder {charge-current:A}[, nie länger als {longest:h}].[ Tiefentladen: erst nach {judgeAfterHours:h} beurteilen.]",
    vehicleReading:
      "{code:w}: {measured}; Grenze {limit}, {outcome:w} (Wahrscheinlichkeit der Einhaltung: {probability:p}).",
    otherSources: "Andere veröffentlichte Grenzen ergäben etwas anderes.",
    care: "Mit Vorsicht: {doubts:w}.",
    standing: "Mögliche Standzeit bei diesem Ruhestrom: {span} {count#one=Tag|other=Tage}.",
    flatBattery:
      "Standzeit und vorgefundene Ladung sprechen für: {code:w}; Wahrscheinlichkeit, dass der Ruhestrom allein genügt: {probability:p}.",
    because: "{cause}: {support}[ ({findings})].",
    dateCode: "Datumscode „{text}“.",
    reading: "Hergestellt: {period}, Alter {age} ({scheme}[; {reasons:w}]).",
    period: "{from:date} bis {to:date}",
    years: "{span} {count#one=Jahr|other=Jahre}",
    months: "{span} {count#one=Monat|other=Monate}",
    span: "{from} bis {to}",
    overall: "Alle Deutungen zusammen: Alter {age}. Die am besten gestützten stehen zuerst.",
    ruledOut: "{n:n} weitere {n#one=Deutung liegt|other=Deutungen liegen} nach Verkauf oder Inbetriebnahme.",
    note: "Hinweis: {note:w}.",
    more: "und {n:n} weitere",
    term: "Frist von {startedOn:date} bis {lastCoveredDay:date}[, {used:n} von {whole:n} {unit:w} verbraucht].",
    amount: "{line}: {amount} {currency}[, {why}][ = {formula}]",
    replacement: "Der Ersatz ist von {startsOn:date} bis {lastCoveredDay:date} gedeckt.",
    worst: "Am ungünstigsten für den Kunden: {outcome}[ Zu zahlen: {total} {currency}.]",
    best: "Am günstigsten für den Kunden: {outcome}[ Zu zahlen: {total} {currency}.]",
    shelf: "Von der Herstellung bis zum Verkauf: {lower:n} bis {upper:n} {upper#one=Tag|other=Tage}.",
    refusal: "{about:w}: {reason} Helfen würde: {wouldHelp}",
    stepResult: "= {result}[ {unit}]",
    stepSource: "Quelle: {title}[, {edition}][, {locator}] ({standing:w})",
    plusMinus: "± gibt die Standardunsicherheit an.",
    noDerivation: "Diese Auswertung enthält keine Herleitung.",
    dayTitle: "Zusammenfassung",
    evaluated: "Ausgewertet",
    unusable: "Nicht verwendbar",
    byCondition: "Zustand",
    byAction: "Was zu tun ist",
    byChemistry: "Bauart",
    byRatingStandard: "Norm des Nennwerts",
    byFinding: "Aufgefallen",
    pictures: "Bilder",
    step: "Schritt {n:n}",
    stepsInBrackets: "Zahlen in Klammern nennen die Schritte am Ende der Seite, aus denen die Werte stammen.",
  },
};
