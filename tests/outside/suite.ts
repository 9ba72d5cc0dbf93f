/** One comparison of a number (or text) of ours with one published elsewhere. */
export interface OutsideRow {
  readonly label: string;
  /** What the source prints. */
  readonly published: number | string;
  /** What this library gives; called when the check runs. */
  readonly ours: () => number | string;
  /** Largest difference allowed, in the unit of the quantity. Leave out for text, which must be equal. */
  readonly allowed?: number;
}

/** A table of one quantity from one published source. */
export interface OutsideSuite {
  /** Short stable name, also the heading on the validation page. */
  readonly title: string;
  /** Document, section, address, and its standing: printed beside the table. */
  readonly source: string;
  readonly unit: string;
  /** Why the allowed difference is what it is. */
  readonly why: string;
  readonly rows: readonly OutsideRow[];
}
