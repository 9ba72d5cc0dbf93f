import type { Messages } from "../../report/index.js";
import { findings } from "./findings.data.js";
import { refusals } from "./refusals.data.js";
import { warranty } from "./warranty.data.js";
import { words } from "./words.data.js";

/** French: everything a report says. What to do stands in the infinitive; the battery is "elle". */
export const messages: Messages = {
  language: "fr",
  direction: "ltr",
  comma: ", ",
  semicolon: "\u00a0; ",
  sentence: [".", " "],
  firstDay: "1er",
  chance: ["{n} sur 100", "{n} sur 1000", "plus de 999 sur 1000", "moins de 1 sur 1000"],
  question: {
    what: "De quelle batterie s’agit-il ?",
    trust: "Peut-on se fier aux mesures ?",
    charge: "Quel est son état de charge ?",
    ability: "Aptitude au démarrage : qu’en reste-t-il ?",
    start: "Fera-t-elle démarrer le moteur ?",
    vehicle: "Qu’a montré le véhicule ?",
    now: "Que vaut-elle, et que faire maintenant ?",
    cause: "Quelle en est la cause ?",
    noticed: "Qu’a-t-on remarqué ?",
    next: "Que faire ensuite ?",
    hurt: "Qu’est-ce qui peut me blesser ?",
    age: "Quel âge a-t-elle ?",
    warranty: "Que paie la garantie ?",
    refused: "Qu’est-ce qui n’a pas pu être établi ?",
    derivation: "Comment cela a-t-il été établi ?",
  },
  severity: { hazard: "Dangers", defect: "Défauts", warning: "Avertissements", note: "Remarques" },
  chemistry: {
    flooded: "Batterie à électrolyte liquide",
    "flooded-calcium": "Batterie au calcium à électrolyte liquide",
    efb: "Batterie EFB",
    agm: "Batterie AGM",
    gel: "Batterie gel",
    unknown: "Batterie de technologie inconnue",
  },
  standard: {
    "sae-j537": "CCA (SAE)",
    "en-50342-1:2015": "EN (2015)",
    "en-50342-1:2006-level-1": "EN1 (2006)",
    "en-50342-1:2006-level-2": "EN2 (2006)",
    "en-50342-1:unstated": "EN (niveau non indiqué)",
    "iec-60095-1:pre-2006": "IEC (avant 2006)",
    "iec-60095-1:2006": "IEC (2006)",
    "iec-60095-1:2018": "IEC (2018)",
    "iec-60095-1:unstated": "IEC (édition non indiquée)",
    "din-43539-2": "DIN",
    "jis-d-5301:2006": "CCA (JIS)",
    "jis-d-5301:pre-2006": "JIS (avant 2006)",
    "bci-ca": "CA",
    "bci-mca": "MCA",
    hca: "HCA",
    "gost-959-91": "GOST",
    "gb-t-5008-1": "GB/T",
    unstated: "CCA (norme non indiquée)",
  },
  condition: {
    serviceable: ["Apte au service", "Elle fournit assez de ce que promet sa valeur nominale."],
    worn: [
      "Affaiblie",
      "Elle est au-dessous de la limite d’une batterie apte au service, mais rien ne montre qu’elle soit inutilisable.",
    ],
    unserviceable: ["Inapte au service", "Elle ne convient pas à l’usage."],
    "internally-failed": ["Défaillance interne", "Un élément ne fonctionne plus."],
    "not-established": ["État non établi", "Les mesures ne tranchent pas."],
  },
  action: {
    keep: ["La garder en service"],
    "charge-then-keep": ["La charger, puis la garder en service"],
    "charge-then-repeat": ["La charger, puis mesurer de nouveau"],
    repeat: ["Mesurer de nouveau avant de décider"],
    retire: ["La retirer du service"],
    isolate: ["La mettre à l’écart et ne pas la charger"],
    stop: ["Arrêter ici", "Cette méthode ne vaut que pour les batteries de 12 V."],
  },
  decidedBy: {
    "damaged-case": "un dommage visible passe avant toute mesure",
    frozen: "une batterie qui est gelée, ou peut l’être, n’est pas jugée",
    "low-electrolyte": "plaques à sec, toute batterie donne des mesures basses",
    "system-voltage":
      "l’étiquette ou la tension n’est pas celle d’une batterie de 12 V au repos, branchée dans le bon sens",
    "scattered-readings": "les mesures se dispersent plus que l’appareil ne l’explique",
    "contact-spread": "replacer les pinces change plus la mesure que la répéter",
    "in-vehicle-reading": "une mesure basse dans le véhicule peut venir du véhicule",
    "missing-cell": "il manque à la tension un élément entier",
    "cell-spread": "un élément est bien plus faible que les autres",
    "too-little-charge": "la charge est trop faible, ou pas assez connue, pour la juger",
    "conflicting-evidence": "l’essai de décharge et l’estimation se contredisent",
    "load-test": "l’essai de décharge",
    ability: "l’aptitude au démarrage mesurée, comparée à la valeur nominale",
    "no-ability-evidence": "aucune mesure valable n’indique son aptitude au démarrage",
  },
  trust: {
    sound: "Oui. Rien n’a été trouvé qui les limite.",
    limited: "En partie. Ceci les limite :",
    unusable: "Non. Elles ne permettent aucun jugement.",
  },
  finding: findings,
  cause: {
    battery: "La batterie elle-même",
    connection: "Sa liaison avec le démarreur",
    "charging-circuit": "Le circuit de charge",
    drain: "Une décharge à l’arrêt",
    "only-discharged": "Simplement déchargée",
  },
  support: {
    supported: "les mesures parlent pour",
    contradicted: "les mesures parlent contre",
    open: "non tranché",
  },
  caution: {
    "local-codes-first": "Les règles de sécurité locales priment.",
    "eyes-and-acid":
      "L’acide brûle. Porter une protection des yeux, un tablier et des gants en caoutchouc. Acide dans un œil : rincer pendant 15 min, appeler un médecin.",
    "hydrogen-no-sparks":
      "Elle dégage un gaz explosif, même au repos. À proximité, ni flamme ni étincelle, et ne pas fumer.",
    "ventilate-charging":
      "Charger là où l’air circule, bouchons en place. Arrêter le chargeur avant de toucher à ses pinces.",
    "charge-temperature": "Arrêter la charge quand la batterie atteint 50 °C.",
    "warm-before-charging":
      "Avant la charge, l’amener à la température d’un local tempéré et chercher glace et fissures.",
    "never-charge": "Ne pas la charger, ne pas la faire débiter, ne pas y brancher de câbles de démarrage.",
    "frozen-handling":
      "La glace a pu fendre le bac. La laisser dégeler à la température d’un local tempéré, puis l’examiner.",
    "damaged-handling":
      "Endommagée : la tenir droite, porter des gants, absorber l’acide avec du bicarbonate de soude.",
    "toxic-gas":
      "Une odeur d’œuf pourri est un gaz toxique : arrêter le chargeur, ouvrir les portes, rester à l’écart jusqu’à ce qu’elle ait disparu.",
    "sealed-overheating":
      "Batterie étanche : ne jamais l’ouvrir. Si elle est chaude ou sent l’œuf pourri : arrêter le chargeur, aérer, se tenir à distance.",
    "clamp-order": "Débrancher en premier la cosse de masse, la rebrancher en dernier.",
    lifting: "Elle est lourde. La lever droite, avec une sangle ou à deux mains.",
    "short-circuit":
      "Ni outil, ni bague, ni bracelet en travers des bornes : un court-circuit brûle aussitôt.",
    "return-and-transport":
      "La porter droite, bornes couvertes ; sur la route, c’est {unNumber}, classe 8. La donner au recyclage, jamais à la poubelle.",
    "charging-air":
      "La charge demande {neededCubicMetresPerHour:m³/h} d’air frais ({batteries:n} {batteries#one=batterie|other=batteries} à la fois) : sans ventilateur, deux ouvertures de {openingSquareCentimetres:cm²} chacune et {freeVolumeCubicMetres:m³} de volume libre.",
    "room-air":
      "Ne pas charger à cet endroit : il faut [{freeVolumeCubicMetres:m³} de volume libre, il y en a {roomCubicMetres:m³}][{neededCubicMetresPerHour:m³/h} d’air frais, il y en a {givenCubicMetresPerHour:m³/h}].",
    "jump-starting":
      "Câbles de démarrage : consommateurs coupés, plus sur plus, dernière pince sur du métal nu à au moins {groundMetres:m} de la batterie déchargée, retrait dans l’ordre inverse. Jamais 24 V, jamais plus de {mostVolts:n} V.",
    "eye-wash": "De l’eau pour rincer les yeux et la peau, à {metres:m} au plus.",
    "neutralise-spills":
      "Acide renversé : verser une solution de {gramsPerLitre:n} g de bicarbonate de soude par litre d’eau jusqu’à ce que cela ne mousse plus, puis rincer.",
    "take-back":
      "La remettre à un vendeur ou à un point de collecte qui reprend les batteries ; le plomb et l’acide sont des déchets dangereux.",
    "system-voltage-supply":
      "Ne pas la brancher sur un chargeur, un appareil de contrôle ou un véhicule de 12 V.",
  },
  nextStep: {
    "exchange-leads": "Intervertir les cordons de mesure et les vérifier d’après les repères des bornes.",
    "check-connection": "Nettoyer les bornes, vérifier pinces et cordons.",
    "end-charging":
      "Arrêter le chargeur ou le moteur, laisser refroidir une batterie chaude, puis la laisser au repos.",
    "thaw-and-inspect":
      "La laisser dégeler à la température d’un local tempéré. Puis chercher fissures et gonflement ; s’il y en a, la faire reprendre.",
    "top-up-water":
      "S’il y a des bouchons, couvrir les plaques d’eau distillée, sans plus, les yeux protégés. Ne jamais ajouter d’acide.",
    "find-comparable-rating":
      "Chercher sur l’étiquette une valeur nominale avec sa norme, ou mesurer selon la norme imprimée.",
    "change-room": "Avant la charge, la porter dans un local plus aéré, ou amener plus d’air dans celui-ci.",
    "offer-claim":
      "Les conditions la couvrent : proposer la demande de garantie avant de rendre la batterie.",
    "warm-up": "La laisser se réchauffer à la température d’un local tempéré, et chercher glace et fissures.",
    "cool-down": "La laisser d’abord refroidir au-dessous de 45 °C.",
    "set-apart": "La mettre à l’écart, loin des étincelles. Ne pas la charger.",
    charge:
      "La charger à fond[ avec {fromAmperes:n} à {toAmperes:A} jusqu’à {endVolts:V}][ (pour {atCelsius:°C})][, environ {fromHours:d} à {toHours:h}].",
    "rest-after-charge": "La laisser reposer {hours:h}, sans chargeur ni consommateur.",
    "draw-off-surface-charge":
      "Éliminer la charge de surface : éclairage allumé pendant 15 s, puis éteint, et attendre 3 min. Ou la laisser reposer 3 h ou plus.",
    "measure-ability": "Mesurer le courant de démarrage, ou faire un essai de décharge.",
    "measure-again": "Mesurer de nouveau[ : {readings:n} mesures, en replaçant les pinces à chaque fois].",
    "measure-with-load": "Faire un essai de décharge[ : {loadAmperes:A} pendant 15 s].",
    "measure-at-the-posts":
      "La débrancher, cosse de masse en premier, et mesurer de nouveau à ses propres bornes, à l’établi.",
    "repair-connection":
      "Nettoyer et serrer les cosses, les câbles et la masse du circuit de démarrage, puis mesurer de nouveau les chutes de tension.",
    "measure-voltage-drops":
      "Mesurer les chutes de tension des deux côtés, démarreur actionné : {seconds:n} s au plus, puis {pauseSeconds:n} s de pause.",
    "look-at-starter": "Faire examiner le démarreur et le moteur.",
    "repair-charging-circuit":
      "Faire remettre en état l’alternateur, le régulateur et leurs câbles, sinon la batterie se videra de nouveau.",
    "find-consumer":
      "Chercher ce qui reste en marche : observer la consommation en retirant les fusibles un par un, sans réveiller le véhicule.",
    "let-modules-sleep":
      "Verrouiller le véhicule, éloigner la clé, attendre[ {neededMinutes:min}], puis mesurer de nouveau la consommation à l’arrêt.",
    "settle-cause": "Pour trancher sur la cause ({cause:w}) : {settleBy:w}.",
    "hand-back": "La rendre au client.",
    "look-again-before-winter": "La contrôler de nouveau avant l’hiver.",
    "take-back": "La retirer du service : avec la demande de garantie s’il y en a une, sinon au recyclage.",
    "other-method": "Utiliser une méthode faite pour sa propre tension.",
  },
  ...warranty,
  word: words,
  refusal: refusals,
  phrase: {
    title: "Contrôle de la batterie",
    reference: "Référence : {id}",
    inspected: "Contrôlée le {day:date}",
    identity: "{chemistry}[, {nominalVolts:n} V].",
    label: "Code de l’étiquette « {text} » ({scheme}).",
    rating: "Valeur nominale {amperes} {standard}, {from:w}.",
    capacity: "Capacité {amount} au régime de 20 h.",
    reserve: "Capacité de réserve {amount} à 25 A.",
    about: "environ {value}",
    range: "de {lower} à {upper}",
    atLeast: "au moins {value}",
    atMost: "au plus {value}",
    anything: "tout est possible, de vide à pleine",
    group: "{name}\u00a0:",
    unknown: "Inconnu.",
    none: "Non mesuré.",
    charge: "Environ {share:c} ({interval}), d’après {from:w}.",
    chargeBound:
      "Au plus {upper:c}, d’après {from:w}. Une charge de surface peut cacher une charge plus faible.",
    ability:
      "D’après {from:w} : {ratio:%} de la valeur nominale ({interval}).[ Soit {amperes:A} {standard}[ ({converted:w})].]",
    reaches:
      "Probabilité qu’elle atteigne la limite[ de {limit:%}] d’une batterie apte au service : {probability:p}.",
    below:
      "Probabilité qu’elle soit au-dessous de la limite[ de {limit:%}] d’une batterie inapte : {probability:p}.",
    limits: "Aucune norme ne fixe ces limites ; elles sont un choix.",
    loadAbove:
      "Essai de décharge : {margin:V} au-dessus de la limite de {limit:V} ; probabilité d’une vraie réussite : {probability:p}.",
    loadBelow:
      "Essai de décharge : {margin:-V} au-dessous de la limite de {limit:V} ; probabilité d’une vraie réussite : {probability:p}.",
    loadFaults: "Contre l’essai de décharge : {faults:w}.",
    startDownTo:
      "Chargée à fond, elle a au moins une chance sur deux de démarrer le moteur jusqu’à {celsius:°C}[ ({interval})].",
    startBelow:
      "Chargée à fond, elle a plus d’une chance sur deux de démarrer le moteur à {celsius:°C}, et peut-être aussi par plus grand froid.",
    startAbove: "Même à {celsius:°C}, elle ne démarrera peut-être pas le moteur.",
    coldMorning:
      "Le matin le plus froid, elle peut fournir {ability:A} et le moteur demande {demand:A}. Probabilité d’un démarrage : {probability:p}.",
    assumed: "Supposé : {assumptions:w}.",
    reason: "Motif : {reason}.",
    chargePlan:
      "Pleine quand {equal-hourly-readings:n} mesures prises d’heure en heure sont égales. Arrêter à {electrolyte-temperature:°C} ; ne jamais dépasser {ceilingVolts:V} ni {charge-current:A}[, ni une durée de {longest:h}].[ Profondément déchargée : ne la juger qu’après {judgeAfterHours:h}.]",
    vehicleReading:
      "{code:w} : {measured} ; limite {limit}, {outcome:w} (probabilité qu’elle soit respectée : {probability:p}).",
    otherSources: "D’autres limites publiées donneraient un autre résultat.",
    care: "Avec prudence : {doubts:w}.",
    standing: "Durée d’arrêt possible avec cette consommation : {span} {count#one=jour|other=jours}.",
    flatBattery:
      "La durée d’arrêt et la charge trouvée parlent pour : {code:w} ; probabilité que la consommation à l’arrêt suffise seule : {probability:p}.",
    because: "{cause} : {support}[ ({findings})].",
    dateCode: "Code de date « {text} ».",
    reading: "Fabrication : {period} ; âge : {age} ({scheme}[ ; {reasons:w}]).",
    period: "du {from:date} au {to:date}",
    years: "{span} {count#one=an|other=ans}",
    months: "{span} {count#one=mois|other=mois}",
    span: "{from} à {to}",
    overall: "Toutes les lectures ensemble : âge {age}. Les mieux étayées viennent en premier.",
    ruledOut:
      "{n:n} {n#one=autre lecture tombe|other=autres lectures tombent} après la vente ou la mise en service.",
    note: "Remarque : {note:w}.",
    more: "et {n:n} de plus",
    term: "Garantie du {startedOn:date} au {lastCoveredDay:date}[, {used:n} {unit:w} sur {whole:n} écoulés].",
    amount: "{line} : {amount} {currency}[, {why}][ = {formula}]",
    replacement: "La batterie neuve est couverte du {startsOn:date} au {lastCoveredDay:date}.",
    worst: "Au pire pour le client : {outcome}[ À payer : {total} {currency}.]",
    best: "Au mieux pour le client : {outcome}[ À payer : {total} {currency}.]",
    shelf: "De la fabrication à la vente : {lower:n} à {upper:n} {upper#one=jour|other=jours}.",
    refusal: "{about:w} : {reason} Serait utile : {wouldHelp}",
    stepResult: "= {result}[ {unit}]",
    stepSource: "Source : {title}[, {edition}][, {locator}] ({standing:w})",
    plusMinus: "± indique l’incertitude-type.",
    noDerivation: "Cette évaluation ne contient pas son calcul.",
    dayTitle: "Récapitulatif",
    evaluated: "Évaluées",
    unusable: "Non utilisables",
    byCondition: "État",
    byAction: "Que faire",
    byChemistry: "Technologie",
    byRatingStandard: "Norme de la valeur nominale",
    byFinding: "Remarqué",
    pictures: "Images",
    step: "Étape {n:n}",
    stepsInBrackets:
      "Les numéros entre crochets renvoient aux étapes, en fin de page, d’où viennent les valeurs.",
  },
};
