import type { GuidanceMessages } from "../../report/index.js";

/** French: what the guidance says. */
export const guidance: GuidanceMessages = {
  step: {
    "look-over":
      "L’examiner avant de toucher à quoi que ce soit : fissures, fuites, gonflement, bornes brûlées ou desserrées, odeur de soufre, glace. Relever aussi si l’électrolyte est bas.",
    "read-label":
      "Lire l’étiquette : technologie de la batterie, courant de démarrage à froid avec sa norme, ou code de type.",
    "check-leads":
      "Nettoyer les bornes, vérifier les deux cordons de mesure d’après les repères des bornes, et mesurer de nouveau.",
    "measure-temperature":
      "Mesurer la température de la batterie, pas celle du local, et dire de quelle façon.",
    "tell-rest-history":
      "Chercher ce qu’elle a fait en dernier, charge, trajet ou décharge, et il y a combien d’heures.",
    "measure-rest-voltage": "Mesurer la tension aux bornes, chargeur et consommateurs arrêtés.",
    "draw-off-surface-charge":
      "Éliminer la charge de surface : éclairage allumé pendant 15 s, puis éteint. Attendre 3 à 10 min et mesurer de nouveau la tension.",
    "measure-gravity":
      "Si elle a des bouchons faits pour être ouverts : mesurer l’acide de chaque élément avec un pèse-acide, yeux et mains protégés. Sinon, sauter cette étape.",
    "measure-cranking":
      "Mesurer le courant de démarrage avec un appareil portatif[, réglé sur la norme {standard}].",
    "repeat-reading":
      "Répéter la mesure jusqu’à en avoir {readings:n}, en replaçant les pinces à chaque fois.",
    "top-up-water":
      "S’il y a des bouchons, couvrir les plaques d’eau distillée, sans plus, yeux et mains protégés. Ne jamais ajouter d’acide.",
    "warm-up":
      "La laisser venir à la température d’un local tempéré. Puis chercher de nouveau glace et fissures, et mesurer sa température.",
    "cool-down":
      "La laisser refroidir au-dessous de 45 °C. Puis chercher de nouveau un gonflement, et mesurer sa température.",
    "change-room":
      "La porter dans un local plus aéré avant de la charger[ : {neededCubicMetresPerHour:m³/h} d’air frais, ou, sans ventilateur, {freeVolumeCubicMetres:m³} de volume libre], et relever quel est ce local. S’il n’y en a pas, ne pas la charger.",
    charge:
      "La charger à fond[ avec {fromAmperes:n} à {toAmperes:A} jusqu’à {endVolts:V}][, environ {fromHours:d} à {toHours:h}], là où l’air circule. La laisser reposer {hours:h}, puis mesurer la tension. Ce qui a été mesuré avant ne compte plus.",
    "load-test": "Faire un essai de décharge : {loadAmperes:A} pendant 15 s, et lire la tension à la fin.",
    "charge-and-repeat-load-test":
      "La charger à fond[ avec {fromAmperes:n} à {toAmperes:A} jusqu’à {endVolts:V}], là où l’air circule, la laisser reposer {hours:h}, mesurer la tension, et refaire l’essai de décharge avec {loadAmperes:A}.",
    "read-date-code":
      "Lire le code de date sur le bac, une borne ou un autocollant, et relever la date du jour.",
    "give-purchase-and-terms": "Relever la vente, avec sa preuve d’achat, et les conditions de la garantie.",
  },
  reason: {
    "hazard-first":
      "Une batterie endommagée ou gelée peut blesser celui qui la mesure ; rien ne passe avant cela.",
    "nothing-without-label": "Une mesure ne dit rien tant qu’on ne sait pas à quoi la comparer.",
    "connection-doubtful": "La mesure ressemble à celle de pinces ou de cordons, pas à celle de la batterie.",
    "temperature-unknown":
      "Toute mesure en dépend, et sans elle la batterie ne doit être ni chargée ni mise en décharge.",
    "rest-history-unknown":
      "Une tension n’indique la charge que si l’on sait depuis combien de temps la batterie repose.",
    "charge-unknown": "La charge décide si une mesure basse peut être retenue contre la batterie.",
    "surface-charge-possible":
      "Une charge de surface peut cacher une batterie qui n’est pas chargée du tout.",
    "charge-uncertain": "Acide et tension ensemble indiquent mieux la charge que l’un des deux seul.",
    "ability-unknown": "Rien n’a encore mesuré ce qu’elle peut fournir.",
    "one-reading-uncertain":
      "Plusieurs mesures resserrent la réponse, et une demande de garantie en exige une répétée.",
    "plates-uncovered":
      "Des plaques au-dessus de l’acide chauffent pendant la charge ; telle quelle, il ne faut pas la charger.",
    "too-cold-to-charge": "Il fait trop froid pour la charger, et de la glace peut s’y cacher.",
    "too-hot-to-charge": "Elle est trop chaude pour être chargée.",
    "room-without-air": "Le local où elle serait chargée n’évacue pas le gaz explosif de la charge.",
    "too-little-charge": "Une mesure basse avec peu de charge ne prouve rien contre une batterie.",
    "ability-between-limits":
      "Les mesures laissent la question ouverte ; une forte décharge est une preuve d’un autre genre.",
    "first-failure-needs-repeat":
      "Un premier échec à l’essai de décharge peut être un manque de charge ; seul le second condamne.",
    "age-unknown":
      "Sans preuve d’achat, ou si la durée de stockage est limitée, les conditions comptent à partir de la date de fabrication.",
    "claim-open":
      "La batterie quitte le service ; ce que paie la garantie dépend de la vente et des conditions.",
  },
  end: {
    hazard: "Arrêter ici. La mettre à l’écart et ne rien y mesurer.",
    "other-system":
      "Arrêter ici. Ce n’est pas une batterie de 12 V ; cette méthode n’est pas faite pour elle.",
    settled: "Rien de plus n’est nécessaire : aucune autre étape ne changerait assez la réponse.",
    "nothing-left": "Il ne reste aucune étape sûre qui n’ait été faite. La réponse reste ouverte.",
    "not-evaluable": "Sans l’étiquette, ou sans aucune mesure, il n’y a pas de réponse.",
  },
  why: "Pourquoi : {reason}",
  risk: "Risque d’une réponse fausse maintenant : {riskNow:p}. Cette étape en retire {drop:p} en moyenne.",
  prepares:
    "Risque d’une réponse fausse maintenant : {riskNow:p}. Cette étape permet à la suivante de compter.",
  residual: "Une réponse fausse reste possible : {riskNow:p}.",
  untaken: "Ce qui fait obstacle : {reason}",
};
