/** Figures of a line by the name of what they are, unrounded; amounts and days as text. */
export type Figures = Readonly<Record<string, number | string | undefined>>;

/** One line of an answer: a plain sentence, the name of a group, an entry of a list, or a numbered step. */
export interface ReportLine {
  readonly kind: "text" | "group" | "item" | "step";
  /**
   * Free of control characters, but for a newline that ends a part of a step of the derivation. A no-break space holds a
   * number and its unit together.
   */
  readonly text: string;
  /** Worked-out figures that the line shows, where it names them. */
  readonly figures?: Figures;
}

/** Makes a line. */
export function line(text: string, kind: ReportLine["kind"] = "text", figures?: Figures): ReportLine {
  return { kind, text, ...(figures && { figures }) };
}
