/** What drew a section out: learnt spread is kept apart by it. By itself, so that help does not load what reads files. */
export const DRAWN_WITH = ["hammer", "flat dies", "fullers"] as const;
