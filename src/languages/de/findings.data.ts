import type { Messages } from "../../report/index.js";

/** German: what was found, and what it means. */
export const findings: Messages["finding"] = {
  "missing-temperature": [
    "Temperatur nicht angegeben",
    "Etwa 25 °C wurden angenommen. An der Batterie messen.",
  ],
  "missing-rest-history": [
    "Ruhezeit vor der Messung nicht angegeben",
    "Was sie zuletzt tat und wie lange sie dann ruhte, entscheidet, was ihre Spannung sagt. Beides notieren.",
  ],
  "missing-charge-measurement": [
    "Ladezustand nicht gemessen",
    "Kein brauchbarer Messwert zeigt ihn. Die Ruhespannung messen, sobald sie sich gesetzt hat.",
  ],
  "missing-ability-measurement": [
    "Leistungsfähigkeit nicht gemessen",
    "Eine Ruhespannung zeigt die Ladung, nicht die Leistungsfähigkeit. Den Startstrom messen oder eine Belastungsprüfung machen.",
  ],
  "missing-instrument-uncertainty": [
    "Unsicherheit des Messgeräts nicht angegeben",
    "{assumed:%1} des Messwerts wurden angenommen.",
  ],
  "missing-voltmeter-uncertainty": [
    "Unsicherheit des Spannungsmessers nicht angegeben",
    "{assumedVolts:V} (Standardunsicherheit) wurden angenommen.",
  ],
  "missing-inspection-date": ["Prüfdatum nicht angegeben", "Ohne dieses ergibt der Datumscode kein Alter."],
  "chemistry-unknown": [
    "Bauart nicht bekannt",
    "Der Ladezustand ist weniger sicher, und eine Ladespannung lässt sich nicht nennen. Auf dem Etikett nachsehen.",
  ],
  "label-refused": [
    "Typcode nicht gelesen",
    "„{text}“ ließ sich nicht als {scheme} lesen. Auf dem Etikett nachsehen.",
  ],
  "rating-estimated": [
    "Nennwert nur geschätzt",
    "Das Etikett nennt keinen; etwa {amperes:A} sind aus dem Typ geschätzt. Das kann weit danebenliegen.",
  ],
  "rating-not-comparable": [
    "Messwert und Nennwert nicht vergleichbar",
    "Grund: {reason:w}. Nur Messwerte nach der Norm des Etiketts, oder nach einer umrechenbaren, sagen, wie leistungsfähig sie ist.",
  ],
  "rating-edition-unstated": [
    "EN-Stufe nicht angegeben",
    "Stufe 2 liegt bis zu 15 % unter Stufe 1; deshalb kamen {relativeUncertainty:%1} zur Unsicherheit hinzu.",
  ],
  "date-code-ambiguous": [
    "Datumscode ist mehrdeutig",
    "„{text}“ lässt sich auf {readings:n} Arten lesen.[ Helfen würde: {settledBy:w}.]",
  ],
  "date-code-refused": [
    "Datumscode nicht gelesen",
    "„{text}“ wurde nicht als Datum gelesen. An der Batterie nachsehen.",
  ],
  "date-code-confusable": [
    "Verwechselbares Zeichen im Datumscode",
    "In „{text}“ kann {read} auch {couldBe} sein. Noch einmal hinsehen.",
  ],
  "case-damaged": [
    "Sichtbarer Schaden",
    "Gesehen: {signs:w}. Nicht laden, nicht belasten, keine Starthilfe.",
  ],
  "frozen-seen": ["Eis in der Batterie", "Nicht laden, nicht belasten, keine Starthilfe."],
  "frozen-possible": [
    "Vielleicht gefroren",
    "Sie hat {temperatureCelsius:°C}; so schwache Säure, wie ihre Messwerte anzeigen, gefriert bei {freezingPointCelsius:°C}. Wie gefroren behandeln.",
  ],
  "near-freezing": [
    "Dem Gefrieren nahe",
    "Ihre Säure gefriert weniger als 3 °C unter dieser Temperatur. Bald erwärmen und laden.",
  ],
  "electrolyte-low": [
    "Säurestand niedrig",
    "Die Platten können trocken liegen: Sie misst sich wie eine kleinere Batterie, und beim Laden entstehen Hitze und Gas. Vor jedem Laden mit destilliertem Wasser auffüllen.",
  ],
  "other-system-voltage": [
    "Keine 12-V-Batterie",
    "[Gemessen: {volts:V}. ]Dieses Verfahren gilt für sie nicht.",
  ],
  "system-voltage-unclear": [
    "Systemspannung unklar",
    "{volts:V} passen nicht sicher zu einer 12-V-Batterie. Etikett und Anschluss prüfen.",
  ],
  "no-voltage": [
    "Fast keine Spannung",
    "{volts:V} an den Polen. Schlechter Kontakt oder eine Unterbrechung im Innern kann die Ursache sein.",
  ],
  "voltage-above-rest": [
    "Keine Ruhespannung",
    "{volts:V} hält nach dieser Zeit keine ruhende Batterie. Ein Ladegerät oder Motor läuft noch.",
  ],
  "reversed-polarity": [
    "Messwert verpolt",
    "Gemessen: {volts:V}. Wahrscheinlich sind die Messleitungen vertauscht.",
  ],
  "reversed-after-check": [
    "Batterie umgepolt",
    "Gemessen: {volts:V} bei geprüften Messleitungen; sie wurde also verkehrt herum geladen. Nicht laden und nicht anschließen.",
  ],
  "surface-charge": [
    "Oberflächenladung nicht ausgeschlossen",
    "{volts:V} können zu hoch sein, und die Ladung geringer, als sie scheint.",
  ],
  "rest-extrapolated": [
    "Ruhespannung hochgerechnet",
    "{volts:V} ist das Ziel eines aufgezeichneten Abklingens, kein Messwert nach voller Ruhe. Die Unsicherheit sagt, wie gut es bekannt ist.",
  ],
  "vehicle-loads-possible": [
    "Verbraucher im Fahrzeug nicht ausgeschlossen",
    "Eingeschaltete Lampen, Gebläse oder Steuergeräte senken die Messwerte. Ausschalten.",
  ],
  "temperature-unusual": [
    "Ungewöhnliche Temperatur",
    "{temperatureCelsius:°C} sind möglich. Wert und Einheit prüfen.",
  ],
  "readings-scatter": [
    "Messwerte streuen",
    "Sie streuen um {relative:%}; das Messgerät erklärt {limit:%}. Zuerst an Klemmen und Pole denken.",
  ],
  "temperature-compensation-assumed": [
    "Temperaturkorrektur angenommen",
    "Angenommen ist, dass das Messgerät {temperatureCelsius:°C} berücksichtigt hat; {relativeUncertainty:%1} kamen zur Unsicherheit hinzu.",
  ],
  "electrical-load-present": [
    "Ein Verbraucher war eingeschaltet",
    "{amperes:d} A flossen während der Messung; das macht etwa {shiftMillivolts:mV} aus, mit der Zeit mehr. Ausschalten und neu messen.",
  ],
  "modules-may-be-awake": [
    "Steuergeräte vielleicht noch wach",
    "{minutesSinceLocked:min} nach der letzten Berührung; viele schlafen erst nach {neededMinutes:min} ein. Verriegeln, Schlüssel fernhalten, warten.",
  ],
  "contact-spread": [
    "Messwerte ändern sich mit den Klemmen",
    "Neues Ansetzen verschiebt den Messwert um {between:%1}; bloßes Wiederholen erklärt {limit:%1}. Pole reinigen; Klemmen auf Blei setzen, nicht auf Bolzen oder Adapter.",
  ],
  "low-reading-in-vehicle": [
    "Niedriger Messwert im Fahrzeug nicht angelastet",
    "Grund: {reasons:w}. Abgeklemmt an ihren eigenen Polen neu messen.",
  ],
  "ability-implausible": [
    "Messwert nicht plausibel",
    "{ratio:%} des Nennwerts leistet keine Batterie. Klemmen, Einstellung oder Etikett prüfen.",
  ],
  "cell-missing": [
    "Eine Zelle ist ausgefallen",
    "Nach abgeschlossenem Laden fehlen {shortfallVolts:V}, wie beim Ausfall von {cells:n} von 6 Zellen.",
  ],
  "cell-missing-unproven": [
    "Spannung so niedrig wie bei ausgefallener Zelle",
    "Es fehlen {shortfallVolts:V}, wie beim Ausfall von {cells:n} von 6 Zellen. Eine leere Batterie kann dasselbe zeigen.",
  ],
  "cell-spread": [
    "Eine Zelle viel schwächer",
    "Die Säuredichten unterscheiden sich um {spread:g}, die Grenze ist {limit:g}. Zelle {weakestCell:n} hat die niedrigste.",
  ],
  "cell-spread-unproven": [
    "Zellen verschieden, noch nicht bewiesen",
    "Die Säuredichten unterscheiden sich um {spread:g}, die Grenze ist {limit:g}. Zelle {weakestCell:n} hat die niedrigste. Es zählt erst nach vollem Laden mit durchmischter Säure.",
  ],
  "charge-low": [
    "Ladung niedrig",
    "Der Messwert ergibt {stateOfCharge:c}; nötig sind {limit:%}. Das ist kein Mangel.",
  ],
  "charge-above-full": [
    "Messwert über voll",
    "Höher, als eine volle Batterie dieser Bauart zeigt. Bauart und Messwert prüfen.",
  ],
  "charge-below-empty": ["Messwert unter leer", "Sie ist tiefentladen; wie tief, lässt sich nicht sagen."],
  "cells-not-all-measured": ["Nicht alle Zellen gemessen", "Über die anderen ist nichts bekannt."],
  "charge-not-established": [
    "Ladung nicht sicher genug",
    "Wahrscheinlichkeit, dass sie {limit:%} erreicht: {probability:p}. Das ist zu wenig, um ihr geringe Leistungsfähigkeit anzulasten.",
  ],
  "charge-evidence-disagrees": [
    "Spannung und Säuredichte widersprechen sich",
    "Nach der Spannung ist sie zu {fromVoltage:c} geladen, nach der Säuredichte zu {fromGravity:c}. Ruhen lassen, Säure mischen, neu messen.",
  ],
  "charge-history-contradicted": [
    "Niedrig trotz abgeschlossenen Ladens",
    "Der Messwert ergibt {stateOfCharge:c}. Ladegerät und Klemmen prüfen; vielleicht hat die Batterie die Ladung nicht angenommen.",
  ],
  "ability-above": [
    "Leistungsfähigkeit erreicht die Grenze",
    "{ratio:%} des Nennwerts: mindestens {limit:%} (Wahrscheinlichkeit: {probability:p}).",
  ],
  "ability-between": [
    "Leistungsfähigkeit nahe der Grenze",
    "{ratio:%} des Nennwerts: mindestens {limit:%} (Wahrscheinlichkeit: {probability:p}). Das entscheidet weder so noch so.",
  ],
  "ability-worn": [
    "Leistungsfähigkeit unter der Grenze",
    "{ratio:%} des Nennwerts: unter {limit:%} (Wahrscheinlichkeit: {probability:p}). Für geringen Bedarf kann sie noch reichen.",
  ],
  "ability-below": [
    "Leistungsfähigkeit viel zu gering",
    "{ratio:%} des Nennwerts: unter {limit:%} (Wahrscheinlichkeit: {probability:p}).",
  ],
  "ability-not-judged": [
    "Geringe Leistungsfähigkeit nicht angelastet",
    "Mit wenig Ladung misst sich jede Batterie schwach. Wahrscheinlichkeit, dass sie so, wie sie ist, die Grenze erreicht: {probability:p}.",
  ],
  "ability-evidence-disagrees": [
    "Messungen der Leistungsfähigkeit widersprechen sich",
    "[Belastungsprüfung: {loadTest:w}. ]Schätzungen: {lowest:%} bis {highest:%} des Nennwerts. Eine davon ist falsch.",
  ],
  "load-test-passed": [
    "Belastungsprüfung bestanden",
    "{marginVolts:V} über der Grenze von {limit:V}; Wahrscheinlichkeit, dass sie wirklich besteht: {probability:p}.",
  ],
  "load-test-failed": [
    "Belastungsprüfung einmal nicht bestanden",
    "{marginVolts:-V} unter der Grenze von {limit:V}. Das allein verurteilt nichts.",
  ],
  "load-test-failed-again": [
    "Belastungsprüfung nach dem Laden wieder nicht bestanden",
    "{marginVolts:-V} unter der Grenze von {limit:V}; Wahrscheinlichkeit, dass sie wirklich besteht: {probability:p}.",
  ],
  "load-test-undecided": [
    "Belastungsprüfung zu knapp",
    "Zu nahe an der Grenze von {limit:V}; Wahrscheinlichkeit, dass sie wirklich besteht: {probability:p}.",
  ],
  "load-test-not-valid": ["Belastungsprüfung zählt nicht", "Grund: {reasons:w}."],
  "requirement-met": [
    "Genug für diesen Motor",
    "Wahrscheinlichkeit eines Starts am kältesten Morgen: {probability:p}.",
  ],
  "requirement-not-met": [
    "Zu wenig für diesen Motor",
    "Wahrscheinlichkeit eines Starts am kältesten Morgen: {probability:p}.",
  ],
  "requirement-undecided": [
    "Nicht sicher für diesen Motor",
    "Wahrscheinlichkeit eines Starts am kältesten Morgen: {probability:p}.",
  ],
  "requirement-not-judged": ["Start des Motors nicht vorhergesagt", "Grund: {reason:w}."],
  "vehicle-uncertainty-assumed": [
    "Unsicherheit der Messwerte am Fahrzeug angenommen",
    "Standardunsicherheit: {dropMillivolts:mV} bei einem Spannungsabfall, {relativeAmperes:%} bei einem Strom, {drawMilliamperes:mA} bei einem Ruhestrom, {relativeRipple:%} bei der Welligkeit.",
  ],
  "vehicle-reading-undecided": [
    "Zu nahe an der Grenze",
    "{reading:w}: Wahrscheinlichkeit, dass die Grenze eingehalten ist: {probability:p}. Das entscheidet weder so noch so.",
  ],
  "cranking-voltage-held": [
    "Spannung hält beim Anlassen",
    "{volts:V} an den Polen; die Grenze ist {limit:V}.",
  ],
  "cranking-voltage-low": [
    "Spannung bricht beim Anlassen zu weit ein",
    "{volts:V} an den Polen; die Grenze ist {limit:V}. Batterie, Kabel, Starter oder ein schwergängiger Motor können die Ursache sein.",
  ],
  "cranking-current-usual": [
    "Starterstrom wie erwartet",
    "{amperes:A}; die Grenze für diesen Motor ist {limit:A}.",
  ],
  "cranking-current-high": [
    "Starter zieht zu viel Strom",
    "{amperes:A}; die Grenze für diesen Motor ist {limit:A}. Starter oder Motor.",
  ],
  "slow-with-high-current": ["Langsam bei hohem Strom", "Zu prüfen: {lookAt:w}."],
  "slow-with-low-current": ["Langsam oder still bei niedrigem Strom", "Zu prüfen: {lookAt:w}."],
  "slow-at-full-voltage": ["Dreht langsam, obwohl die Batterie ihre Spannung hält", "Zu prüfen: {lookAt:w}."],
  "no-turning-at-full-voltage": [
    "Dreht nicht, obwohl die Batterie ihre Spannung hält",
    "Zu prüfen: {lookAt:w}.",
  ],
  "voltage-drop-high": [
    "Spannungsverlust auf dem Weg zum Starter",
    "{reading:w}[: {volts:V}, die Grenze ist {limit:V}][: {milliohms:mΩ}, die Grenze ist {limit:mΩ}].",
  ],
  "voltage-drops-within": [
    "Weg zum Starter in Ordnung",
    "Die Spannungsabfälle beider Seiten halten beim Anlassen ihre Grenzen ein.",
  ],
  "regulated-voltage-within": ["Ladespannung wie erwartet", "{volts:V} an den Polen."],
  "regulated-voltage-low": [
    "Ladespannung zu niedrig",
    "{volts:V} an den Polen; bei dieser Temperatur sind mindestens {limit:V} nötig.",
  ],
  "regulated-voltage-high": [
    "Ladespannung zu hoch",
    "{volts:V} an den Polen; höchstens {limit:V} sind erlaubt. So gast die Batterie trocken.",
  ],
  "charging-not-judged": ["Ladespannung nicht beurteilt", "{volts:V} an den Polen. Grund: {reason:w}."],
  "charging-rise-enough": [
    "Lädt unter Last",
    "Mit Licht und Gebläse bleibt sie {volts:V} über dem Wert bei stehendem Motor.",
  ],
  "charging-rise-low": [
    "Laufender Motor hebt die Spannung kaum",
    "Um {volts:V}; mindestens {limit:V} sollten es sein.",
  ],
  "charging-rise-high": [
    "Laufender Motor hebt die Spannung zu weit",
    "Um {volts:V}; höchstens {limit:V} sollten es sein.",
  ],
  "charging-drop-high": [
    "Spannungsverlust auf dem Weg vom Generator",
    "{reading:w}: {volts:V}, die Grenze ist {limit:V}.",
  ],
  "ripple-within": [
    "Welligkeit innerhalb der gewählten Grenze",
    "{volts:V}; diese Grenze ist {limit:V}. Andere weichen um das Zehnfache ab.",
  ],
  "ripple-high": [
    "Welligkeit über der gewählten Grenze",
    "{volts:V}; diese Grenze ist {limit:V}. Eine Diode des Generators oder eine schwache Batterie.",
  ],
  "draw-expected": [
    "Ruhestrom des abgestellten Fahrzeugs wie erwartet",
    "{milliamperes:mA}; bis {limit:mA} sind üblich.",
  ],
  "draw-explained": [
    "Ruhestrom durch die Ausstattung erklärt",
    "{milliamperes:mA}; üblich wären {limit:mA}. Die mögliche Standzeit verkürzt er trotzdem.",
  ],
  "draw-high": [
    "Abgestelltes Fahrzeug zieht zu viel Strom",
    "[{milliamperes:mA}; bis {limit:mA} sind üblich. ]Etwas bleibt eingeschaltet.",
  ],
  "draw-not-settled": [
    "Ruhestrom zu früh gemessen",
    "{milliamperes:mA} nach {settledMinutes:min}; Steuergeräte waren vielleicht noch wach. {neededMinutes:min} warten.",
  ],
  "standing-time": [
    "Mögliche Standzeit",
    "Bei diesem Ruhestrom und anfangs {fromCharge:c} Ladung sollte sie noch nach {fromDays:d} bis {toDays:d} {toDays#one=Tag|other=Tagen} starten. Kälte und Selbstentladung verkürzen das.",
  ],
  "flat-by-drain": [
    "Der Ruhestrom allein erklärt die Entladung",
    "Standzeit {parkedDays:d} {parkedDays#one=Tag|other=Tage}; Wahrscheinlichkeit, dass eine gesunde Batterie dann nicht mehr startet: {probability:p}.",
  ],
  "flat-too-fast-for-drain": [
    "Schneller entladen, als der Ruhestrom erklärt",
    "Standzeit {parkedDays:d} {parkedDays#one=Tag|other=Tage}; Wahrscheinlichkeit, dass eine gesunde Batterie dann nicht mehr startet: {probability:p}. Eine geschwächte Batterie, oder ein Verbraucher, der beim Messen aus war.",
  ],
  "flat-unexplained": [
    "Die Standzeit entscheidet weder so noch so",
    "Standzeit {parkedDays:d} {parkedDays#one=Tag|other=Tage}; Wahrscheinlichkeit, dass eine gesunde Batterie dann nicht mehr startet: {probability:p}.",
  ],
  "charge-sufficient": [
    "Ladung reicht für ein Urteil",
    "[Wahrscheinlichkeit, dass sie das Nötige erreicht: {probability:p}.]",
  ],
  "starter-or-engine": [
    "An Batterie und Kabeln liegt es nicht",
    "Was bleibt: der Starter, der Motor, sein Öl.",
  ],
  "causes-conflict": [
    "Messwerte widersprechen sich bei einer Ursache",
    "Dafür wie dagegen sprechen sie bei: {cause:w}. Zur Klärung: {settleBy:w}.",
  ],
  "cause-unclear": ["Nichts Gemessenes erklärt es", "[Noch offen: {open:w}.]"],
};
