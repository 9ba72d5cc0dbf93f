import type { Messages } from "../../report/index.js";

/** French: what was found, and what it means. */
export const findings: Messages["finding"] = {
  "missing-temperature": [
    "Température non indiquée",
    "25 °C environ ont été supposés. La mesurer sur la batterie.",
  ],
  "missing-rest-history": [
    "Repos avant la mesure non indiqué",
    "Ce que dit sa tension dépend de ce qu’elle a fait en dernier et de la durée du repos qui a suivi. Noter les deux.",
  ],
  "missing-charge-measurement": [
    "Charge non mesurée",
    "Aucune mesure utilisable ne la donne. Mesurer la tension au repos une fois qu’elle est stabilisée.",
  ],
  "missing-ability-measurement": [
    "Aptitude au démarrage non mesurée",
    "Une tension au repos indique la charge, pas l’aptitude au démarrage. Mesurer le courant de démarrage ou faire un essai de décharge.",
  ],
  "missing-instrument-uncertainty": [
    "Incertitude de l’appareil non indiquée",
    "{assumed:%1} de la valeur lue ont été supposés.",
  ],
  "missing-voltmeter-uncertainty": [
    "Incertitude du voltmètre non indiquée",
    "{assumedVolts:V} (incertitude-type) ont été supposés.",
  ],
  "missing-inspection-date": [
    "Date du contrôle non indiquée",
    "Sans elle, le code de date ne donne pas d’âge.",
  ],
  "chemistry-unknown": [
    "Technologie inconnue",
    "La charge est connue avec moins de certitude, et aucune tension de charge ne peut être donnée. Lire la technologie sur l’étiquette.",
  ],
  "label-refused": [
    "Code de l’étiquette non lu",
    "« {text} » n’a pas pu être lu comme {scheme}. Vérifier sur l’étiquette.",
  ],
  "rating-estimated": [
    "Valeur nominale seulement estimée",
    "L’étiquette n’en donne pas ; environ {amperes:A} sont estimés d’après le type. L’écart peut être grand.",
  ],
  "rating-not-comparable": [
    "Mesure et valeur nominale non comparables",
    "Motif : {reason:w}. Seules des mesures selon la norme de l’étiquette, ou selon une norme convertible, disent de quoi elle est capable.",
  ],
  "rating-edition-unstated": [
    "Niveau EN non indiqué",
    "Le niveau 2 est jusqu’à 15 % au-dessous du niveau 1 ; {relativeUncertainty:%1} ont donc été ajoutés à l’incertitude.",
  ],
  "date-code-ambiguous": [
    "Code de date à plusieurs sens",
    "« {text} » peut se lire de {readings:n} façons.[ Serait utile : {settledBy:w}.]",
  ],
  "date-code-refused": [
    "Code de date non lu",
    "« {text} » n’a pas été lu comme une date. Vérifier sur la batterie.",
  ],
  "date-code-confusable": [
    "Caractère trompeur dans le code de date",
    "Dans « {text} », {read} est peut-être {couldBe}. Regarder de nouveau.",
  ],
  "case-damaged": [
    "Dommage visible",
    "Constaté : {signs:w}. Ne pas la charger, ne pas la faire débiter, ne pas y brancher de câbles de démarrage.",
  ],
  "frozen-seen": [
    "Glace dans la batterie",
    "Ne pas la charger, ne pas la faire débiter, ne pas y brancher de câbles de démarrage.",
  ],
  "frozen-possible": [
    "Peut-être gelée",
    "Elle est à {temperatureCelsius:°C} ; un acide aussi dilué que l’indiquent ses mesures gèle à {freezingPointCelsius:°C}. La traiter comme gelée.",
  ],
  "near-freezing": [
    "Près de geler",
    "Il s’en faut de moins de 3 °C que son acide ne gèle. La réchauffer, puis la charger sans tarder.",
  ],
  "electrolyte-low": [
    "Niveau d’électrolyte bas",
    "Les plaques sont peut-être à sec : elle donne les mesures d’une batterie plus petite, et la charge produit chaleur et gaz. Faire l’appoint d’eau distillée avant toute charge.",
  ],
  "other-system-voltage": [
    "Pas une batterie de 12 V",
    "[Tension lue : {volts:V}. ]Cette méthode ne vaut pas pour elle.",
  ],
  "system-voltage-unclear": [
    "Tension du système incertaine",
    "Avec {volts:V}, il n’est pas certain que ce soit une batterie de 12 V. Vérifier l’étiquette et le branchement.",
  ],
  "no-voltage": [
    "Presque pas de tension",
    "{volts:V} aux bornes. Un mauvais contact ou une coupure interne peut en être la cause.",
  ],
  "voltage-above-rest": [
    "Pas une tension au repos",
    "{volts:V}, c’est plus qu’aucune batterie ne garde au repos après ce temps. Un chargeur ou un moteur est encore en marche.",
  ],
  "reversed-polarity": [
    "Mesure inversée",
    "Tension lue : {volts:V}. Les cordons de mesure sont probablement intervertis.",
  ],
  "reversed-after-check": [
    "Batterie inversée",
    "Tension lue : {volts:V}, cordons vérifiés ; elle a donc été chargée à l’envers. Ne pas la charger ni la brancher.",
  ],
  "surface-charge": [
    "Charge de surface non exclue",
    "La valeur de {volts:V} est peut-être trop haute, et la charge plus faible qu’il ne semble.",
  ],
  "rest-extrapolated": [
    "Tension au repos extrapolée",
    "{volts:V}, c’est la valeur vers laquelle tend une relaxation enregistrée, pas une mesure après un repos complet. Son incertitude dit à quel point elle est connue.",
  ],
  "vehicle-loads-possible": [
    "Consommateurs du véhicule non exclus",
    "Des lampes, une soufflerie ou des calculateurs en marche abaissent les mesures. Les couper.",
  ],
  "temperature-unusual": [
    "Température inhabituelle",
    "{temperatureCelsius:°C}, c’est possible. Vérifier la valeur et son unité.",
  ],
  "readings-scatter": [
    "Mesures dispersées",
    "Elles s’étalent sur {relative:%} ; l’appareil explique {limit:%}. Soupçonner d’abord les pinces et les bornes.",
  ],
  "temperature-compensation-assumed": [
    "Correction de température supposée",
    "L’appareil est supposé avoir tenu compte de {temperatureCelsius:°C} ; {relativeUncertainty:%1} ont été ajoutés à l’incertitude.",
  ],
  "electrical-load-present": [
    "Un consommateur était en marche",
    "{amperes:d} A passaient pendant la mesure, ce qui compte pour environ {shiftMillivolts:mV}, et davantage avec le temps. Le couper et mesurer de nouveau.",
  ],
  "modules-may-be-awake": [
    "Calculateurs peut-être éveillés",
    "{minutesSinceLocked:min} après la dernière manipulation ; beaucoup ne s’endorment qu’après {neededMinutes:min}. Verrouiller, éloigner la clé, attendre.",
  ],
  "contact-spread": [
    "Les mesures changent avec les pinces",
    "Les replacer décale la mesure de {between:%1} ; la simple répétition explique {limit:%1}. Nettoyer les bornes ; poser les pinces sur le plomb, pas sur des goujons ni des adaptateurs.",
  ],
  "low-reading-in-vehicle": [
    "Mesure basse dans le véhicule non retenue contre elle",
    "Motif : {reasons:w}. Débrancher la batterie et mesurer de nouveau à ses propres bornes.",
  ],
  "ability-implausible": [
    "Mesure invraisemblable",
    "{ratio:%} de la valeur nominale : aucune batterie n’en est capable. Soupçonner les pinces, le réglage ou l’étiquette.",
  ],
  "cell-missing": [
    "Un élément est défaillant",
    "Après une charge menée à terme, il manque {shortfallVolts:V}, comme avec {cells:n} {cells#one=élément défaillant|other=éléments défaillants} sur 6.",
  ],
  "cell-missing-unproven": [
    "Tension aussi basse qu’avec un élément défaillant",
    "Il manque {shortfallVolts:V}, comme avec {cells:n} {cells#one=élément défaillant|other=éléments défaillants} sur 6. Une batterie vide peut donner la même mesure.",
  ],
  "cell-spread": [
    "Un élément bien plus faible",
    "Les densités diffèrent de {spread:g}, la limite est {limit:g}. L’élément {weakestCell:n} a la plus basse.",
  ],
  "cell-spread-unproven": [
    "Éléments inégaux, pas encore prouvé",
    "Les densités diffèrent de {spread:g}, la limite est {limit:g}. L’élément {weakestCell:n} a la plus basse. Cela ne compte qu’après une charge complète, l’acide bien mélangé.",
  ],
  "charge-low": [
    "Charge faible",
    "La mesure donne {stateOfCharge:c} ; il faut {limit:%}. Ce n’est pas un défaut.",
  ],
  "charge-above-full": [
    "Mesure au-dessus de la pleine charge",
    "Plus haut que ce que montre une batterie pleine de ce type. Vérifier le type et la mesure.",
  ],
  "charge-below-empty": [
    "Mesure au-dessous de la décharge complète",
    "Elle est profondément déchargée ; à quel point, on ne peut le dire.",
  ],
  "cells-not-all-measured": ["Éléments pas tous mesurés", "On ne sait rien des autres."],
  "charge-not-established": [
    "Charge connue avec trop peu de certitude",
    "Probabilité qu’elle atteigne {limit:%} : {probability:p}. C’est trop peu pour retenir contre elle une faible aptitude au démarrage.",
  ],
  "charge-evidence-disagrees": [
    "Tension et densité se contredisent",
    "Charge d’après la tension : {fromVoltage:c}, d’après la densité : {fromGravity:c}. Laisser reposer, mélanger l’acide, mesurer de nouveau.",
  ],
  "charge-history-contradicted": [
    "Faible malgré une charge menée à terme",
    "La mesure donne {stateOfCharge:c}. Vérifier le chargeur et ses pinces ; la batterie n’a peut-être pas pris la charge.",
  ],
  "ability-above": [
    "L’aptitude au démarrage atteint la limite",
    "{ratio:%} de la valeur nominale : au moins {limit:%} (probabilité : {probability:p}).",
  ],
  "ability-between": [
    "Aptitude au démarrage proche de la limite",
    "{ratio:%} de la valeur nominale : au moins {limit:%} (probabilité : {probability:p}). Cela ne tranche dans aucun sens.",
  ],
  "ability-worn": [
    "Aptitude au démarrage au-dessous de la limite",
    "{ratio:%} de la valeur nominale : moins de {limit:%} (probabilité : {probability:p}). Elle peut encore suffire à un faible besoin.",
  ],
  "ability-below": [
    "Aptitude au démarrage bien trop faible",
    "{ratio:%} de la valeur nominale : moins de {limit:%} (probabilité : {probability:p}).",
  ],
  "ability-not-judged": [
    "Faible aptitude au démarrage non retenue contre elle",
    "Peu chargée, toute batterie donne des mesures basses. Probabilité que, telle quelle, elle atteigne la limite : {probability:p}.",
  ],
  "ability-evidence-disagrees": [
    "Mesures de l’aptitude contradictoires",
    "[Essai de décharge : {loadTest:w}. ]Estimations : de {lowest:%} à {highest:%} de la valeur nominale. L’une des mesures est fausse.",
  ],
  "load-test-passed": [
    "Essai de décharge réussi",
    "{marginVolts:V} au-dessus de la limite de {limit:V} ; probabilité d’une vraie réussite : {probability:p}.",
  ],
  "load-test-failed": [
    "Un premier échec à l’essai de décharge",
    "{marginVolts:-V} au-dessous de la limite de {limit:V}. À lui seul, cet essai ne condamne rien.",
  ],
  "load-test-failed-again": [
    "Nouvel échec à l’essai de décharge après une charge",
    "{marginVolts:-V} au-dessous de la limite de {limit:V} ; probabilité d’une vraie réussite : {probability:p}.",
  ],
  "load-test-undecided": [
    "Essai de décharge trop serré",
    "Trop près de la limite de {limit:V} ; probabilité d’une vraie réussite : {probability:p}.",
  ],
  "load-test-not-valid": ["L’essai de décharge ne compte pas", "Motif : {reasons:w}."],
  "requirement-met": [
    "Assez pour ce moteur",
    "Probabilité d’un démarrage le matin le plus froid : {probability:p}.",
  ],
  "requirement-not-met": [
    "Trop peu pour ce moteur",
    "Probabilité d’un démarrage le matin le plus froid : {probability:p}.",
  ],
  "requirement-undecided": [
    "Incertain pour ce moteur",
    "Probabilité d’un démarrage le matin le plus froid : {probability:p}.",
  ],
  "requirement-not-judged": ["Pas de prévision du démarrage", "Motif : {reason:w}."],
  "vehicle-uncertainty-assumed": [
    "Incertitude des mesures sur le véhicule supposée",
    "Incertitude-type : {dropMillivolts:mV} pour une chute de tension, {relativeAmperes:%} d’un courant, {drawMilliamperes:mA} pour une consommation à l’arrêt, {relativeRipple:%} d’une ondulation.",
  ],
  "vehicle-reading-undecided": [
    "Trop près de sa limite",
    "{reading:w}, probabilité que la limite soit respectée : {probability:p}. Cela ne tranche dans aucun sens.",
  ],
  "cranking-voltage-held": [
    "La tension tient pendant le lancement",
    "{volts:V} aux bornes ; la limite est {limit:V}.",
  ],
  "cranking-voltage-low": [
    "La tension baisse trop pendant le lancement",
    "{volts:V} aux bornes ; la limite est {limit:V}. La batterie, les câbles, le démarreur ou un moteur dur à tourner peut en être la cause.",
  ],
  "cranking-current-usual": [
    "Courant du démarreur normal",
    "{amperes:A} ; la limite pour ce moteur est {limit:A}.",
  ],
  "cranking-current-high": [
    "Le démarreur tire trop de courant",
    "{amperes:A} ; la limite pour ce moteur est {limit:A}. Démarreur ou moteur.",
  ],
  "slow-with-high-current": ["Lent avec un courant élevé", "À examiner : {lookAt:w}."],
  "slow-with-low-current": ["Lent ou immobile avec un courant faible", "À examiner : {lookAt:w}."],
  "slow-at-full-voltage": [
    "Tourne lentement alors que la batterie garde sa tension",
    "À examiner : {lookAt:w}.",
  ],
  "no-turning-at-full-voltage": [
    "Ne tourne pas alors que la batterie garde sa tension",
    "À examiner : {lookAt:w}.",
  ],
  "voltage-drop-high": [
    "Tension perdue en chemin vers le démarreur",
    "{reading:w}[ : {volts:V}, la limite est {limit:V}][ : {milliohms:mΩ}, la limite est {limit:mΩ}].",
  ],
  "voltage-drops-within": [
    "Le chemin vers le démarreur est sain",
    "Pendant le lancement, les chutes de tension des deux côtés respectent leurs limites.",
  ],
  "regulated-voltage-within": ["Tension de charge normale", "{volts:V} aux bornes."],
  "regulated-voltage-low": [
    "Tension de charge trop basse",
    "{volts:V} aux bornes ; à cette température, il faut au moins {limit:V}.",
  ],
  "regulated-voltage-high": [
    "Tension de charge trop élevée",
    "{volts:V} aux bornes ; {limit:V} au plus sont admis. La batterie perd ainsi son eau et s’assèche.",
  ],
  "charging-not-judged": ["Tension de charge non jugée", "{volts:V} aux bornes. Motif : {reason:w}."],
  "charging-rise-enough": [
    "Charge malgré les consommateurs",
    "Éclairage et soufflerie en marche, la tension reste {volts:V} au-dessus de sa valeur moteur arrêté.",
  ],
  "charging-rise-low": [
    "Le moteur en marche relève à peine la tension",
    "De {volts:V} ; il faut au moins {limit:V}.",
  ],
  "charging-rise-high": [
    "Le moteur en marche relève trop la tension",
    "De {volts:V} ; il faut au plus {limit:V}.",
  ],
  "charging-drop-high": [
    "Tension perdue en chemin depuis l’alternateur",
    "{reading:w} : {volts:V}, la limite est {limit:V}.",
  ],
  "ripple-within": [
    "Ondulation au-dessous de la limite choisie",
    "{volts:V} ; cette limite est {limit:V}. D’autres en diffèrent d’un facteur dix.",
  ],
  "ripple-high": [
    "Ondulation au-dessus de la limite choisie",
    "{volts:V} ; cette limite est {limit:V}. Une diode de l’alternateur, ou une batterie faible.",
  ],
  "draw-expected": [
    "Consommation du véhicule garé normale",
    "{milliamperes:mA} ; jusqu’à {limit:mA}, c’est habituel.",
  ],
  "draw-explained": [
    "Consommation à l’arrêt expliquée par l’équipement",
    "{milliamperes:mA} ; {limit:mA} seraient habituels. Elle raccourcit quand même la durée d’arrêt possible.",
  ],
  "draw-high": [
    "Le véhicule garé consomme trop",
    "[{milliamperes:mA} ; jusqu’à {limit:mA}, c’est habituel. ]Quelque chose reste en marche.",
  ],
  "draw-not-settled": [
    "Consommation à l’arrêt mesurée trop tôt",
    "{milliamperes:mA} après {settledMinutes:min} ; des calculateurs étaient peut-être encore éveillés. Attendre {neededMinutes:min}.",
  ],
  "standing-time": [
    "Durée d’arrêt possible",
    "Avec cette consommation et {fromCharge:c} de charge au départ, elle devrait encore démarrer le moteur pendant {fromDays:d} à {toDays:d} {toDays#one=jour|other=jours}. Le froid et l’autodécharge raccourcissent cette durée.",
  ],
  "flat-by-drain": [
    "La consommation à l’arrêt suffit à expliquer la décharge",
    "Durée d’arrêt : {parkedDays:d} {parkedDays#one=jour|other=jours} ; probabilité qu’une batterie saine ne démarre plus le moteur ensuite : {probability:p}.",
  ],
  "flat-too-fast-for-drain": [
    "Déchargée plus vite que la consommation à l’arrêt ne l’explique",
    "Durée d’arrêt : {parkedDays:d} {parkedDays#one=jour|other=jours} ; probabilité qu’une batterie saine ne démarre plus le moteur ensuite : {probability:p}. Une batterie affaiblie, ou un consommateur coupé pendant la mesure.",
  ],
  "flat-unexplained": [
    "La durée d’arrêt ne tranche dans aucun sens",
    "Durée d’arrêt : {parkedDays:d} {parkedDays#one=jour|other=jours} ; probabilité qu’une batterie saine ne démarre plus le moteur ensuite : {probability:p}.",
  ],
  "charge-sufficient": [
    "Charge suffisante pour juger",
    "[Probabilité qu’elle atteigne ce qu’il faut : {probability:p}.]",
  ],
  "starter-or-engine": [
    "La batterie et les câbles ne sont pas en cause",
    "Restent : le démarreur, le moteur, son huile.",
  ],
  "causes-conflict": [
    "Mesures contradictoires sur une cause",
    "Elles parlent à la fois pour et contre : {cause:w}. Pour trancher : {settleBy:w}.",
  ],
  "cause-unclear": ["Rien de ce qui a été mesuré ne l’explique", "[Reste à voir : {open:w}.]"],
};
