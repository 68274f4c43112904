/** What a job waits for with nobody at the bench, with the words that reports use. */
export const WAIT_WORDS = {
  reply: "the customer's reply",
  delivery: "materials to arrive",
  anneal: "slow cooling",
  temper: "tempering and cooling",
  etch: "drying after the etch",
  glue: "the glue to cure",
  coat: "oil to dry",
  cure: "the last coat to cure",
} as const;

/** One of {@link WAIT_WORDS}. */
export type WaitName = keyof typeof WAIT_WORDS;
