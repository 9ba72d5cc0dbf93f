// The pictures that an evaluation allows, each under the question it answers.
import type { BatteryRecord, Evaluation } from "crankworthy";
import {
  abilityPicture,
  chargePicture,
  coldStartPicture,
  type PictureOptions,
  warrantyPicture,
} from "crankworthy/pictures";
import { fromMarkup, h } from "./dom.js";

/** Questions with a picture. */
export const drawn = ["charge", "ability", "start", "warranty"] as const;
export type Drawn = (typeof drawn)[number];

/** The picture for a question; nothing where the library refuses one. */
export function drawing(
  question: Drawn,
  evaluation: Evaluation,
  record: BatteryRecord,
  options: PictureOptions,
): HTMLElement | undefined {
  const named = { ...options, id: `picture-${question}` };
  // The sheet's name stands on top of the page already.
  const { id: _, ...nameless } = evaluation;
  const picture = {
    charge: () => chargePicture(nameless, named),
    ability: () => abilityPicture(nameless, named),
    start: () => coldStartPicture({ evaluation: nameless, record }, named),
    warranty: () => warrantyPicture({ evaluation: nameless, record }, named),
  }[question]();
  return typeof picture === "string" ? h("figure", {}, ...fromMarkup(picture, "image/svg+xml")) : undefined;
}
