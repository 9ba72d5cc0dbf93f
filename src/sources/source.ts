/**
 * How far a figure can be trusted to say what its source says.
 *
 * - `read`: the text was read at the address or document named
 * - `secondary`: read in somebody else's account of it
 * - `from-memory`: recalled; the document is named; not verified
 * - `common-practice`: done in the trade, no citable text
 * - `computed`: worked out from other figures, method given
 * - `our-choice`: a default or an uncertainty chosen by this library
 */
export type Standing = "read" | "secondary" | "from-memory" | "common-practice" | "computed" | "our-choice";

/** One entry of the bibliography. */
export interface Source {
  /** Title of the document or page; never a maker's name. */
  readonly title: string;
  readonly edition?: string;
  /** Page, clause, table or line inside the document. */
  readonly locator?: string;
  /** Where it was read. */
  readonly address?: string;
  readonly standing: Standing;
}

/** One step of a worked derivation; made only when it is asked for. */
export interface DerivationStep {
  /** What the step yields, in the words of the glossary. */
  readonly quantity: string;
  /** The formula in plain text, with the names used in `inputs`. */
  readonly formula: string;
  readonly inputs: Readonly<Record<string, number | string>>;
  readonly result: number | string;
  /** SI symbol, `1` for a pure number, empty for text. */
  readonly unit: string;
  readonly standardUncertainty?: number;
  /** Key of the bibliography. */
  readonly source: string;
  readonly standing: Standing;
}

/** Collects the steps of a derivation. Rooms push into it when the caller passed one, and do nothing otherwise. */
export type Derivation = DerivationStep[];
