/** The parts of a JIS D 5301 designation such as 55B24LS. */
export interface JisParts {
  /** Performance rank, dimensionless. */
  readonly performanceRank: number;
  /** Width and height class, A-H. */
  readonly caseClass: string;
  /** Length, about cm, as printed. */
  readonly lengthDigits: string;
  readonly polarity?: "L" | "R";
  /** Suffix S: thick posts on a case that normally has thin ones (low authority). */
  readonly thickPosts: boolean;
  /** Prefix S: valve-regulated with vent line. */
  readonly valveRegulated: boolean;
}
