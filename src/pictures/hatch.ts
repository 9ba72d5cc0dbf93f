import { line, stroke } from "./paint.js";
import type { Sheet } from "./sheet.js";
import type { Ink } from "./style.data.js";
import { element } from "./svg.js";

/** Ways to fill an area that can be told apart without colour. */
export type Hatch = "rising" | "falling" | "level" | "upright" | "dots" | "crosses" | "solid" | "blank";

type Lines = readonly (readonly [number, number, number, number])[];

const PATHS: Readonly<Record<Exclude<Hatch, "solid" | "blank" | "dots">, { size: number; lines: Lines }>> = {
  rising: {
    size: 6,
    lines: [
      [-1, 1, 1, -1],
      [0, 6, 6, 0],
      [5, 7, 7, 5],
    ],
  },
  falling: {
    size: 6,
    lines: [
      [-1, 5, 1, 7],
      [0, 0, 6, 6],
      [5, -1, 7, 1],
    ],
  },
  level: { size: 4, lines: [[0, 2, 4, 2]] },
  upright: { size: 4, lines: [[2, 0, 2, 4]] },
  crosses: {
    size: 8,
    lines: [
      [1, 1, 5, 5],
      [1, 5, 5, 1],
    ],
  },
};

/** Collects the patterns a picture uses, each once. */
export interface Hatches {
  /** Value for a `fill` attribute. */
  readonly fill: (hatch: Hatch, ink?: Ink) => string;
  /** A box nothing is drawn outside of; value for a `clip-path` attribute. */
  readonly clip: (name: string, box: Box) => string;
  readonly definitions: () => string;
}

/** Edges of a box [px]. */
interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export function hatchesFor(sheet: Sheet, id: string): Hatches {
  const made = new Map<string, string>();
  return {
    fill: (hatch, ink = "soft") => {
      if (hatch === "blank") return "none";
      const name = `${id}-${hatch}-${ink}`;
      if (!made.has(name)) made.set(name, pattern(sheet, name, hatch, ink));
      return `url(#${name})`;
    },
    clip: (name, { left, right, top, bottom }) => {
      const box = { x: left, y: top, width: right - left, height: bottom - top };
      made.set(name, element("clipPath", { id: `${id}-${name}` }, element("rect", box)));
      return `url(#${id}-${name})`;
    },
    definitions: () => (made.size === 0 ? "" : element("defs", {}, ...made.values())),
  };
}

function pattern(sheet: Sheet, id: string, hatch: Exclude<Hatch, "blank">, ink: Ink): string {
  let size = 5;
  let content: string;
  if (hatch === "dots")
    content = element("circle", {
      cx: 2.5,
      cy: 2.5,
      r: 1.1,
      class: `f-${ink}`,
      fill: sheet.palette[ink],
    });
  else if (hatch === "solid")
    content = element("rect", {
      width: size,
      height: size,
      class: `f-${ink}`,
      fill: sheet.palette[ink],
    });
  else {
    const { size: own, lines } = PATHS[hatch];
    size = own;
    content = lines.map((one) => line(sheet, one, ink)).join("");
  }
  return element("pattern", { id, width: size, height: size, patternUnits: "userSpaceOnUse" }, content);
}

/** A box filled with a hatch, with a thin outline. */
export function hatchedBox(
  sheet: Sheet,
  hatches: Hatches,
  box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
  hatch: Hatch,
  ink?: Ink,
): string {
  const { class: classes, stroke: colour } = stroke(sheet, "ink");
  return element("rect", {
    ...box,
    class: classes,
    fill: hatches.fill(hatch, ink),
    stroke: colour,
    "stroke-width": 0.8,
  });
}
