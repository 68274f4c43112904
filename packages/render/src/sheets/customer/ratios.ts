/** Reductions of a customer's drawing, true size first: those of ISO 5455 (from memory), and 1 : 2.5 between two of them. */
export const CUSTOMER_RATIOS = [1, 2, 2.5, 5, 10] as const;
