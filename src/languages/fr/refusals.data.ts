import type { Messages } from "../../report/index.js";

/** French: why something could not be worked out, and what would help. Holds wherever the code is used. */
export const refusals: NonNullable<Messages["refusal"]> = {
  // label codes and ratings
  "malformed-code": ["Le texte n’a pas la forme d’un tel code.", "Le code exactement comme il est imprimé."],
  "unlisted-code": ["Le sens d’une partie n’est pas connu ici.", "Les données de l’étiquette."],
  "zero-capacity": ["Les chiffres donnent 0 Ah.", "Le code exactement comme il est imprimé."],
  "implausible-current": [
    "Le code correspond à un courant de démarrage qu’aucune batterie de démarrage n’a.",
    "Le code exactement comme il est imprimé.",
  ],
  "jis-rank-no-rating": [
    "Un même indice de performance JIS convient à beaucoup de batteries.",
    "Le CCA ou la capacité de réserve sur l’étiquette.",
  ],
  "no-rating-in-code": [
    "Le code ne contient pas de courant de démarrage à froid.",
    "Le CCA sur l’étiquette.",
  ],
  "rank-class-unknown": [
    "Pour ce bac, aucun rapport entre indice de performance et CCA n’est connu.",
    "Le CCA ou la capacité de réserve sur l’étiquette.",
  ],
  "jis-before-2006": [
    "Les valeurs JIS d’avant 2006 reposent sur un autre essai.",
    "Une étiquette de 2006 ou plus récente.",
  ],
  "en-level-2": [
    "Le niveau EN 2 vient de la charge fournie en 150 s, les autres valeurs de la tension en décharge.",
    "La valeur du fabricant selon l’autre norme.",
  ],
  "en-level-unstated": [
    "Les niveaux EN 1 et 2 portent le même nom, et le niveau n’est pas indiqué.",
    "Le niveau imprimé, ou une étiquette selon l’édition 2015.",
  ],
  "iec-edition-unstated": [
    "IEC désigne des essais séparés d’un facteur d’environ 1,5.",
    "L’édition ou l’année de l’étiquette.",
  ],
  "iec-test-not-read": ["L’essai de cette édition IEC n’est pas établi ici.", "Le texte de la norme."],
  "hca-not-a-rating": ["HCA n’a pas d’essai convenu.", "Le CCA du fabricant."],
  "standard-unstated": [
    "Un courant sans sa norme est incertain d’un facteur 1,7.",
    "La norme sur l’étiquette.",
  ],
  "test-not-established": ["L’essai de cette valeur n’est pas établi ici.", "Le texte de la norme."],
  "no-direct-conversion": [
    "Aucun rapport direct n’est publié, et les rapports mis bout à bout ne concordent pas.",
    "La valeur du fabricant selon l’autre norme.",
  ],
  "capacity-out-of-range": [
    "Le rapport ne vaut pas pour une capacité de cette grandeur.",
    "La valeur imprimée.",
  ],
  "exponent-out-of-range": ["Les exposants publiés se situent entre 1 et 1,6.", "Deux essais de décharge."],
  "current-too-high": [
    "La loi de Peukert ne va pas jusqu’aux courants de démarrage.",
    "Un essai de démarrage.",
  ],
  "same-current": ["Les deux essais ont été faits au même courant.", "Un essai à un autre courant."],
  // state of charge
  "voltage-below-acid-range": [
    "Six éléments en état de marche ne reposent jamais à une tension si basse.",
    "La tension de chaque élément.",
  ],
  "voltage-above-acid-range": [
    "Une charge de surface, ou un chargeur encore en marche.",
    "Une mesure après un jour de repos.",
  ],
  "may-be-frozen": [
    "Plus froide que le point de congélation de l’acide que cette tension révèle.",
    "Une mesure une fois la batterie dégelée.",
  ],
  "no-free-electrolyte": [
    "Les éléments étanches à soupape ne contiennent pas d’acide libre.",
    "Une tension au repos.",
  ],
  "acid-outside-range": ["La concentration de l’acide est hors de la plage.", "Une mesure dans cette plage."],
  "gravity-outside-range": ["La densité est hors de la plage.", "Une mesure dans cette plage."],
  "gravity-out-of-range": [
    "Un élément est hors de la plage de 0,985 à 1,400.",
    "La mesure comme densité relative, par exemple 1,265.",
  ],
  "temperature-outside-range": [
    "Pour cette température, aucune valeur n’est publiée.",
    "Une mesure plus près de la température d’un local tempéré.",
  ],
  "too-few-cells": ["Un écart demande au moins deux éléments.", "Les mesures de tous les éléments."],
  "charge-outside-range": [
    "Au-dessous de 30 % de charge, l’aptitude au démarrage ne suit aucune loi publiée, et au-dessus de 120 % la charge est fausse.",
    "Une batterie chargée et une tension au repos.",
  ],
  "temperature-outside-table": [
    "La table ne dit rien de cette température.",
    "Une batterie amenée entre 0 et 30 °C.",
  ],
  // bench
  "charging-forbidden": [
    "Dans cet état, il ne faut pas la charger.",
    "Une batterie dégelée, examinée et trouvée sans dommage.",
  ],
  "chemistry-unknown": [
    "La tension et le courant de charge dépendent de la technologie et de la capacité.",
    "La technologie et les ampères-heures ou la capacité de réserve, sur l’étiquette.",
  ],
  "capacity-unknown": [
    "La tension et le courant de charge dépendent de la technologie et de la capacité.",
    "La technologie et les ampères-heures ou la capacité de réserve, sur l’étiquette.",
  ],
  "no-rating": [
    "Ni le courant de démarrage à froid ni la capacité ne sont connus.",
    "Le courant de démarrage à froid ou la capacité, sur l’étiquette.",
  ],
  "no-six-volt-column": [
    "La table de limites choisie n’a pas de colonne pour 6 V.",
    "La table de limites usuelle.",
  ],
  "flooded-only": [
    "Pour cette technologie, aucune limite de la charge de trois minutes n’est confirmée.",
    "À la place, l’acceptation de charge après cinq minutes.",
  ],
  "record-too-short": [
    "L’enregistrement ne contient pas la décharge assez longtemps.",
    "Un enregistrement de tout l’essai.",
  ],
  "record-gap": [
    "Autour de l’instant voulu, les lignes sont trop espacées.",
    "Un enregistrement avec une ligne par seconde.",
  ],
  // date codes
  empty: ["Le code de date est vide.", "Le code qui se trouve sur la batterie."],
  "too-long": [
    "Le texte est plus long qu’aucun code de date.",
    "Seulement le marquage qui contient la date.",
  ],
  "not-ascii": [
    "Le texte a des caractères qui ne figurent dans aucun code de date.",
    "Le code en A-Z, 0-9 et / - ainsi que le point.",
  ],
  "no-reading": [
    "Aucun système de codage choisi ne lit ce texte comme une date.",
    "Le système de codage du fabricant, ou un modèle.",
  ],
  "outside-window": [
    "La date tombe après le contrôle ou au-delà de l’âge admis.",
    "La date du contrôle, ou un âge admis plus grand.",
  ],
  "template-mismatch": ["Le texte ne correspond pas au modèle.", "Un modèle avec un signe par caractère."],
  "iec-60062-year-g": [
    "Les séries publiées de lettres d’année ne s’accordent pas sur G.",
    "Un second code, ou le système de codage si ce n’est pas IEC 60062.",
  ],
  "contradicted-by-evidence": [
    "Toute lecture tombe après la vente ou la mise en service.",
    "Une vérification du code et de ces dates.",
  ],
  "grid-not-punched": ["Aucun mois ou aucune année n’est enlevé.", "Le mois et l’année enlevés."],
  // vehicle
  "not-12-volt": [
    "Les limites pour le véhicule sont celles des installations de 12 V.",
    "Une méthode pour cette tension.",
  ],
  "temperature-unknown": [
    "La limite dépend de la température du moteur.",
    "La température du moteur ou de la batterie.",
  ],
  "below-table": ["La table s’arrête à -18 °C.", "Une mesure par moins grand froid."],
  "inrush-included": [
    "Le premier creux n’est pas une tension de lancement.",
    "La tension la plus basse après 0,3 s.",
  ],
  "sampled-too-slowly": ["Les points de mesure sont trop espacés.", "Deux mesures par seconde ou plus."],
  "no-row-for-temperature": [
    "Aucune valeur n’est publiée pour cette température.",
    "Une mesure moteur chaud.",
  ],
  "negative-reading": ["Cette grandeur ne peut être négative.", "Le signe de la mesure."],
  "leads-exchanged": ["La chute de tension est négative.", "Une mesure avec les cordons intervertis."],
  "no-current": [
    "Sans courant, aucune liaison ne perd de tension.",
    "La chute de tension pendant que le courant passe.",
  ],
  "current-required": ["La limite vaut pour un courant donné.", "Le courant."],
  "limit-needs-current": ["La limite d’une partie dépend du courant.", "Des limites en volts."],
  "outside-table": ["Les bandes sont publiées pour -20 à 80 °C.", "Une mesure dans cette plage."],
  "charging-not-begun": ["La charge ne commence que vers 1200 tr/min.", "Une mesure à 2500 tr/min."],
  "may-be-computer-controlled": [
    "Un calculateur maintient peut-être la tension basse.",
    "La façon dont la tension est réglée.",
  ],
  "place-differs": ["La limite vaut pour un autre point de mesure.", "Une autre limite."],
  "method-differs": ["Valeur crête à crête et valeur efficace diffèrent.", "Une autre limite."],
  "not-a-standing-draw": [
    "Aucun véhicule garé ne consomme plus de 10 A ; c’étaient peut-être des milliampères.",
    "L’unité de la mesure.",
  ],
  "not-settled": [
    "Les calculateurs sont peut-être encore éveillés.",
    "Une mesure après une attente plus longue.",
  ],
  "draw-not-established": ["La consommation à l’arrêt ne se distingue pas de zéro.", "Une mesure plus fine."],
  "charge-out-of-range": [
    "La charge au moment de garer le véhicule est hors de 0 à 100 %.",
    "La charge au moment de garer le véhicule.",
  ],
  "reserve-capacity-unknown": [
    "La durée d’arrêt possible dépend de la capacité de réserve de la batterie.",
    "La capacité de réserve ou les ampères-heures, sur l’étiquette.",
  ],
};
