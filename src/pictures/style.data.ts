/** What a colour is for. Nothing is told by colour alone, so each only has to stand out from paper. */
export type Ink = "ink" | "soft" | "rule" | "paper" | "first" | "second";

export type Palette = Readonly<Record<Ink, string>>;

/**
 * Colours on light and on dark paper. Text colours reach a contrast of 7 : 1 with the paper, curves 4.5 : 1; `first` (blue) and
 * `second` (brown-orange) differ for every common form of colour blindness.
 */
export const palettes: Readonly<Record<"light" | "dark", Palette>> = {
  light: {
    ink: "#1b1b1b",
    soft: "#4f4f4f",
    rule: "#c4c4c4",
    paper: "#ffffff",
    first: "#0b4f8a",
    second: "#9a3d0c",
  },
  dark: {
    ink: "#ececec",
    soft: "#b9b9b9",
    rule: "#4d4d4d",
    paper: "#17191b",
    first: "#86c5f7",
    second: "#f3ab79",
  },
};

/** Where the reader's system allows only its own colours. */
export const systemColours: Palette = {
  ink: "CanvasText",
  soft: "CanvasText",
  rule: "GrayText",
  paper: "Canvas",
  first: "CanvasText",
  second: "CanvasText",
};
