import type { Messages } from "../../report/index.js";

/** German: why something could not be worked out, and what would help. Holds wherever the code is used. */
export const refusals: NonNullable<Messages["refusal"]> = {
  // label codes and ratings
  "malformed-code": ["Der Text hat nicht die Form eines solchen Codes.", "Der Code genau wie aufgedruckt."],
  "unlisted-code": ["Die Bedeutung eines Teils ist hier nicht bekannt.", "Die Angaben auf dem Etikett."],
  "zero-capacity": ["Die Ziffern ergeben 0 Ah.", "Der Code genau wie aufgedruckt."],
  "implausible-current": [
    "Der Code steht für einen Startstrom, den keine Starterbatterie hat.",
    "Der Code genau wie aufgedruckt.",
  ],
  "jis-rank-no-rating": [
    "Eine JIS-Leistungsziffer passt zu vielen Batterien.",
    "CCA oder Reservekapazität vom Etikett.",
  ],
  "no-rating-in-code": ["Der Code enthält keinen Kaltstartstrom.", "Der CCA-Wert vom Etikett."],
  "rank-class-unknown": [
    "Für dieses Gehäuse ist kein Zusammenhang von Leistungsziffer und CCA bekannt.",
    "CCA oder Reservekapazität vom Etikett.",
  ],
  "jis-before-2006": ["JIS-Werte vor 2006 beruhen auf einer anderen Prüfung.", "Ein Etikett ab 2006."],
  "en-level-2": [
    "EN-Stufe 2 folgt aus der Ladung in 150 s, andere Werte aus der Spannung unter Last.",
    "Der Herstellerwert nach der anderen Norm.",
  ],
  "en-level-unstated": [
    "Die EN-Stufen 1 und 2 heißen gleich, und die Stufe ist nicht angegeben.",
    "Die aufgedruckte Stufe oder ein Etikett nach der Ausgabe 2015.",
  ],
  "iec-edition-unstated": [
    "IEC bezeichnet Prüfungen, die etwa um den Faktor 1,5 auseinanderliegen.",
    "Ausgabe oder Jahr des Etiketts.",
  ],
  "iec-test-not-read": ["Die Prüfung dieser IEC-Ausgabe ist hier nicht festgestellt.", "Der Normtext."],
  "hca-not-a-rating": ["Für HCA gibt es keine vereinbarte Prüfung.", "Der CCA-Wert des Herstellers."],
  "standard-unstated": [
    "Ein Strom ohne seine Norm ist um den Faktor 1,7 unsicher.",
    "Die Norm auf dem Etikett.",
  ],
  "test-not-established": ["Die Prüfung zu diesem Wert ist hier nicht festgestellt.", "Der Normtext."],
  "no-direct-conversion": [
    "Kein direkter Zusammenhang ist veröffentlicht, und verkettete gehen nicht auf.",
    "Der Herstellerwert nach der anderen Norm.",
  ],
  "capacity-out-of-range": [
    "Der Zusammenhang gilt nicht für eine Kapazität dieser Größe.",
    "Der aufgedruckte Wert.",
  ],
  "exponent-out-of-range": [
    "Veröffentlichte Exponenten liegen zwischen 1 und 1,6.",
    "Zwei Entladeprüfungen.",
  ],
  "current-too-high": ["Das Peukert-Gesetz reicht nicht bis zu Startströmen.", "Eine Startprüfung."],
  "same-current": ["Beide Prüfungen liefen mit demselben Strom.", "Eine Prüfung mit anderem Strom."],
  // state of charge
  "voltage-below-acid-range": [
    "So niedrig ruhen sechs intakte Zellen nie.",
    "Die Spannung jeder einzelnen Zelle.",
  ],
  "voltage-above-acid-range": [
    "Oberflächenladung, oder ein Ladegerät ist noch an.",
    "Eine Messung nach einem Tag Ruhe.",
  ],
  "may-be-frozen": [
    "Kälter als der Gefrierpunkt der Säure, von der diese Spannung zeugt.",
    "Eine Messung nach dem Auftauen.",
  ],
  "no-free-electrolyte": ["Verschlossene Zellen enthalten keine freie Säure.", "Eine Ruhespannung."],
  "acid-outside-range": [
    "Die Säurekonzentration liegt außerhalb des Bereichs.",
    "Ein Messwert in diesem Bereich.",
  ],
  "gravity-outside-range": [
    "Die Säuredichte liegt außerhalb des Bereichs.",
    "Ein Messwert in diesem Bereich.",
  ],
  "gravity-out-of-range": [
    "Eine Zelle liegt außerhalb von 0,985 bis 1,400.",
    "Der Messwert als relative Dichte, zum Beispiel 1,265.",
  ],
  "temperature-outside-range": [
    "Für diese Temperatur gibt es keine veröffentlichten Werte.",
    "Eine Messung näher an der Raumtemperatur.",
  ],
  "too-few-cells": ["Ein Unterschied braucht mindestens zwei Zellen.", "Messwerte aller Zellen."],
  "charge-outside-range": [
    "Unter 30 % Ladung folgt das Startvermögen keinem veröffentlichten Gesetz, und über 120 % stimmt die Ladung nicht.",
    "Eine geladene Batterie und eine Ruhespannung.",
  ],
  "temperature-outside-table": [
    "Die Tabelle sagt zu dieser Temperatur nichts.",
    "Eine Batterie, die auf 0 bis 30 °C gebracht wurde.",
  ],
  // bench
  "charging-forbidden": [
    "So darf sie nicht geladen werden.",
    "Eine Batterie, die aufgetaut, besichtigt und frei von Schäden gefunden wurde.",
  ],
  "chemistry-unknown": [
    "Ladespannung und Ladestrom hängen von Bauart und Kapazität ab.",
    "Bauart und Amperestunden oder Reservekapazität vom Etikett.",
  ],
  "capacity-unknown": [
    "Ladespannung und Ladestrom hängen von Bauart und Kapazität ab.",
    "Bauart und Amperestunden oder Reservekapazität vom Etikett.",
  ],
  "no-rating": [
    "Weder Kaltstartstrom noch Kapazität ist bekannt.",
    "Kaltstartstrom oder Kapazität vom Etikett.",
  ],
  "no-six-volt-column": ["Die gewählte Grenztabelle hat keine Spalte für 6 V.", "Die übliche Grenztabelle."],
  "flooded-only": [
    "Für diese Bauart ist keine Grenze der Drei-Minuten-Ladung bestätigt.",
    "Stattdessen die Ladeannahme nach fünf Minuten.",
  ],
  "record-too-short": [
    "Die Aufzeichnung enthält die Belastung nicht lange genug.",
    "Eine Aufzeichnung der ganzen Prüfung.",
  ],
  "record-gap": [
    "Um den gesuchten Zeitpunkt liegen die Zeilen zu weit auseinander.",
    "Eine Aufzeichnung mit einer Zeile je Sekunde.",
  ],
  // date codes
  empty: ["Der Datumscode ist leer.", "Der Code auf der Batterie."],
  "too-long": ["Der Text ist länger als jeder Datumscode.", "Nur die Kennzeichnung mit dem Datum."],
  "not-ascii": [
    "Der Text hat Zeichen, die in keinem Datumscode stehen.",
    "Der Code in A-Z, 0-9 und / - sowie Punkt.",
  ],
  "no-reading": [
    "Kein gewähltes Schema liest diesen Text als Datum.",
    "Das Schema des Herstellers oder eine Vorlage.",
  ],
  "outside-window": [
    "Das Datum liegt nach der Prüfung oder jenseits des angenommenen Alters.",
    "Das Prüfdatum oder ein größeres angenommenes Alter.",
  ],
  "template-mismatch": ["Der Text passt nicht zur Vorlage.", "Eine Vorlage mit einem Zeichen je Stelle."],
  "iec-60062-year-g": [
    "Veröffentlichte Reihen von Jahresbuchstaben sind sich bei G uneins.",
    "Ein zweiter Code, oder das Schema, falls es nicht IEC 60062 ist.",
  ],
  "contradicted-by-evidence": [
    "Jede Deutung liegt nach dem Verkauf oder der Inbetriebnahme.",
    "Eine Prüfung des Codes und dieser Daten.",
  ],
  "grid-not-punched": ["Kein Monat oder kein Jahr ist entfernt.", "Der entfernte Monat und das Jahr."],
  // vehicle
  "not-12-volt": [
    "Die Grenzen für das Fahrzeug gelten für 12-V-Anlagen.",
    "Ein Verfahren für diese Systemspannung.",
  ],
  "temperature-unknown": [
    "Die Grenze hängt von der Temperatur des Motors ab.",
    "Die Temperatur von Motor oder Batterie.",
  ],
  "below-table": ["Die Tabelle endet bei -18 °C.", "Eine Messung bei weniger Kälte."],
  "inrush-included": [
    "Der erste Einbruch ist keine Spannung beim Anlassen.",
    "Die niedrigste Spannung nach 0,3 s.",
  ],
  "sampled-too-slowly": [
    "Die Messpunkte liegen zu weit auseinander.",
    "Zwei oder mehr Messwerte je Sekunde.",
  ],
  "no-row-for-temperature": [
    "Für diese Temperatur ist kein Wert veröffentlicht.",
    "Eine Messung am warmen Motor.",
  ],
  "negative-reading": ["Diese Größe kann nicht negativ sein.", "Das Vorzeichen des Messwerts."],
  "leads-exchanged": ["Der Spannungsabfall ist negativ.", "Eine Messung mit getauschten Messleitungen."],
  "no-current": [
    "Ohne Strom geht auf keinem Weg Spannung verloren.",
    "Der Spannungsabfall, während Strom fließt.",
  ],
  "current-required": ["Die Grenze gilt bei einem bestimmten Strom.", "Der Strom."],
  "limit-needs-current": ["Die Grenze eines Teils hängt vom Strom ab.", "Grenzen in Volt."],
  "outside-table": ["Die Bänder sind für -20 bis 80 °C veröffentlicht.", "Eine Messung in diesem Bereich."],
  "charging-not-begun": ["Das Laden beginnt erst nahe 1200 1/min.", "Eine Messung bei 2500 1/min."],
  "may-be-computer-controlled": [
    "Ein Steuergerät hält die Spannung vielleicht niedrig.",
    "Auf welche Art die Spannung geregelt wird.",
  ],
  "place-differs": ["Die Grenze gilt an einer anderen Messstelle.", "Eine andere Grenze."],
  "method-differs": ["Spitze-Spitze-Wert und Effektivwert sind verschieden.", "Eine andere Grenze."],
  "not-a-standing-draw": [
    "Kein abgestelltes Fahrzeug zieht über 10 A; vielleicht waren es Milliampere.",
    "Die Einheit des Messwerts.",
  ],
  "not-settled": ["Die Steuergeräte sind vielleicht noch wach.", "Eine Messung nach längerem Warten."],
  "draw-not-established": ["Der Ruhestrom lässt sich nicht von null unterscheiden.", "Eine feinere Messung."],
  "charge-out-of-range": [
    "Die Ladung beim Abstellen liegt außerhalb von 0 bis 100 %.",
    "Die Ladung beim Abstellen.",
  ],
  "reserve-capacity-unknown": [
    "Wie lange ein Fahrzeug stehen kann, hängt von der Reservekapazität der Batterie ab.",
    "Reservekapazität oder Amperestunden vom Etikett.",
  ],
};
