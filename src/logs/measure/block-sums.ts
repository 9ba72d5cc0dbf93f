/** Levels of doubling: 2³⁰ terms. */
const LEVELS = 31;
/** Fewer blocks tell too little of their own scatter. Our choice: with ten, Student's t is 15 % wider than the normal distribution. */
const LEAST_BLOCKS = 10;

/** @internal Uncertainty of a sum whose terms follow each other. */
export interface BlockSums {
  push(term: number): void;
  standardUncertainty(): number;
}

/**
 * @internal Uncertainty of a sum of terms around zero, from the scatter of the sums of blocks: neighbours that go the same way
 * make long blocks scatter more than short ones. Blocks double in length while at least 10 remain, and the greatest result
 * counts. One pass, nothing kept but the open blocks. Equation: u² = max over lengths of n/(n − 3)·Σ block²·(terms/terms in blocks);
 * n − 3 for n so that 1.96·u covers 95 % (JCGM 100 G.3).
 */
export function createBlockSums(): BlockSums {
  const open = new Float64Array(LEVELS);
  const squares = new Float64Array(LEVELS);
  let terms = 0;
  return {
    push(term) {
      let sum = term;
      // Binary counting: a block of a level closes when its second half does.
      for (let level = 0, bits = terms; level < LEVELS; level++, bits >>>= 1) {
        squares[level]! += sum * sum;
        if ((bits & 1) === 0) {
          open[level] = sum;
          break;
        }
        sum += open[level]!;
      }
      terms++;
    },
    standardUncertainty() {
      let most = 0;
      for (let level = 0; level < LEVELS; level++) {
        const blocks = Math.floor(terms / 2 ** level);
        if (blocks < LEAST_BLOCKS) break;
        const share = terms / (blocks * 2 ** level);
        most = Math.max(most, (squares[level]! * share * blocks) / (blocks - 3));
      }
      return Math.sqrt(most);
    },
  };
}
