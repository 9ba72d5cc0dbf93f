import type { GuidanceMessages } from "../../report/index.js";

/** German: what the guidance says. */
export const guidance: GuidanceMessages = {
  step: {
    "look-over":
      "Vor jedem Anfassen besichtigen: Risse, Lecks, Schwellungen, verbrannte oder lockere Pole, Geruch nach Schwefel, Eis. Auch notieren, ob die Säure niedrig steht.",
    "read-label": "Das Etikett lesen: Bauart, Kaltstartstrom mit seiner Norm, oder den Typcode.",
    "check-leads":
      "Die Pole reinigen, beide Messleitungen mit den Polzeichen vergleichen und noch einmal messen.",
    "measure-temperature":
      "Die Temperatur der Batterie messen, nicht die des Raums, und angeben, auf welche Art.",
    "tell-rest-history":
      "Herausfinden, was sie zuletzt tat, Laden, Fahren oder Entladen, und vor wie vielen Stunden.",
    "measure-rest-voltage": "Die Spannung an den Polen messen, Ladegerät und Verbraucher aus.",
    "draw-off-surface-charge":
      "Die Oberflächenladung abbauen: Licht für 15 s ein, dann aus. 3 bis 10 min warten und die Spannung neu messen.",
    "measure-gravity":
      "Hat sie Stopfen, die zum Öffnen gedacht sind: die Säure jeder Zelle mit dem Säureheber messen, Augen und Hände geschützt. Sonst diesen Schritt auslassen.",
    "measure-cranking": "Den Startstrom mit einem Handgerät messen[, eingestellt auf die Norm {standard}].",
    "repeat-reading":
      "Die Messung wiederholen, bis {readings:n} Messwerte da sind, Klemmen jedes Mal neu angesetzt.",
    "top-up-water":
      "Wo Stopfen sind, die Platten mit destilliertem Wasser bedecken, nicht mehr, Augen und Hände geschützt. Nie Säure nachfüllen.",
    "warm-up":
      "Auf Raumtemperatur kommen lassen. Dann noch einmal nach Eis und Rissen sehen und ihre Temperatur messen.",
    "cool-down":
      "Unter 45 °C abkühlen lassen. Dann noch einmal nach Schwellungen sehen und ihre Temperatur messen.",
    "change-room":
      "Vor dem Laden in einen Raum mit mehr Luft bringen[: {neededCubicMetresPerHour:m³/h} Frischluft, oder ohne Lüfter {freeVolumeCubicMetres:m³} freien Raum], und diesen Raum notieren. Gibt es keinen, nicht laden.",
    charge:
      "In bewegter Luft voll laden[ mit {fromAmperes:n} bis {toAmperes:A} und bis zu {endVolts:V}][, etwa {fromHours:d} bis {toHours:h}]. {hours:h} ruhen lassen, dann die Spannung messen. Was vorher gemessen wurde, zählt nicht mehr.",
    "load-test": "Eine Belastungsprüfung machen: {loadAmperes:A} für 15 s, und am Ende die Spannung ablesen.",
    "charge-and-repeat-load-test":
      "In bewegter Luft voll laden[ mit {fromAmperes:n} bis {toAmperes:A} und bis zu {endVolts:V}], {hours:h} ruhen lassen, die Spannung messen und die Belastungsprüfung mit {loadAmperes:A} wiederholen.",
    "read-date-code": "Den Datumscode auf Gehäuse, Pol oder Aufkleber lesen und das heutige Datum notieren.",
    "give-purchase-and-terms": "Den Verkauf mit Beleg und die Garantiebedingungen aufnehmen.",
  },
  reason: {
    "hazard-first":
      "Eine beschädigte oder gefrorene Batterie kann verletzen, wer sie misst; nichts geht dem vor.",
    "nothing-without-label": "Ein Messwert sagt nichts, solange nicht bekannt ist, woran er zu messen ist.",
    "connection-doubtful": "Der Messwert sieht nach Klemmen oder Leitungen aus, nicht nach der Batterie.",
    "temperature-unknown":
      "Jeder Messwert hängt von ihr ab, und ohne sie darf weder Ladegerät noch Last angeschlossen werden.",
    "rest-history-unknown":
      "Eine Spannung zeigt die Ladung nur, wenn bekannt ist, wie lange die Batterie geruht hat.",
    "charge-unknown":
      "Die Ladung entscheidet, ob ein niedriger Messwert der Batterie angelastet werden darf.",
    "surface-charge-possible": "Oberflächenladung kann eine Batterie verdecken, die gar nicht geladen ist.",
    "charge-uncertain": "Säure und Spannung zusammen zeigen die Ladung besser als eines allein.",
    "ability-unknown": "Noch nichts hat gemessen, was sie leisten kann.",
    "one-reading-uncertain":
      "Mehrere Messwerte engen die Antwort ein, und ein Garantieanspruch verlangt eine wiederholte Messung.",
    "plates-uncovered":
      "Platten über der Säure werden beim Laden heiß; so, wie sie ist, darf sie nicht geladen werden.",
    "too-cold-to-charge": "Zum Laden ist es zu kalt, und Eis kann verborgen sein.",
    "too-hot-to-charge": "Zum Laden ist sie zu heiß.",
    "room-without-air": "Der Raum, in dem geladen würde, führt das explosionsfähige Gas des Ladens nicht ab.",
    "too-little-charge": "Ein niedriger Messwert bei geringer Ladung beweist nichts gegen eine Batterie.",
    "ability-between-limits": "Die Messwerte lassen es offen; eine schwere Last ist ein Beleg anderer Art.",
    "first-failure-needs-repeat":
      "Wird eine Belastungsprüfung zum ersten Mal nicht bestanden, kann Ladung fehlen; erst die zweite verurteilt.",
    "age-unknown":
      "Ohne Beleg, oder bei begrenzter Lagerzeit, zählen die Bedingungen ab dem Herstellungsdatum.",
    "claim-open":
      "Die Batterie geht außer Betrieb; was die Garantie zahlt, hängt von Verkauf und Bedingungen ab.",
  },
  end: {
    hazard: "Hier aufhören. Absondern und nichts an ihr messen.",
    "other-system": "Hier aufhören. Es ist keine 12-V-Batterie; dieses Verfahren gilt für sie nicht.",
    settled: "Mehr ist nicht nötig: Kein weiterer Schritt würde die Antwort genug ändern.",
    "nothing-left": "Kein sicherer Schritt ist übrig, der nicht schon getan ist. Die Antwort bleibt offen.",
    "not-evaluable": "Ohne Etikett oder einen einzigen Messwert gibt es keine Antwort.",
  },
  why: "Warum: {reason}",
  risk: "Falsche Antwort jetzt: {riskNow:p}. Dieser Schritt nimmt im Mittel {drop:p} weg.",
  prepares: "Falsche Antwort jetzt: {riskNow:p}. Dieser Schritt macht, dass der nächste zählt.",
  residual: "Eine falsche Antwort bleibt möglich: {riskNow:p}.",
  untaken: "Was im Weg steht: {reason}",
};
