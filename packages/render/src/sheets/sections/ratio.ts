/** Enlargements and reductions of a drawing: 1, 2 and 5 and their tens (ISO 5455, from memory). */
const LARGER = [10, 5, 2] as const;
const SMALLER = [1, 2, 5, 10, 20, 50] as const;

/** Height and width that an enlarged section may take, mm. */
const ROOM = { height: 112, width: 60 } as const;
/** Height of the lower part that is enlarged where the whole is too high, mm on paper. */
const PART_HEIGHT = 84;

/** How much a section is enlarged, and up to which height above its lowest point: all of it where left out. */
export interface Enlargement {
  readonly ratio: number;
  readonly upTo?: number;
}

/**
 * The largest enlargement at which a section fits; at 2 : 1 its lower part where the whole does not.
 *
 * @param height - mm, with what is still on it in earlier states.
 * @param most - The largest enlargement that is of use.
 */
export function enlargementOf(height: number, width: number, most = Number.POSITIVE_INFINITY): Enlargement {
  const ratio = LARGER.filter((one) => one <= most).find(
    (one) => one * height <= ROOM.height && one * width <= ROOM.width,
  );
  return ratio === undefined ? { ratio: 2, upTo: PART_HEIGHT / 2 } : { ratio };
}

/** The reduction at which a length fits. */
export const reductionOf = (length: number, room: number): number =>
  SMALLER.find((one) => length / one <= room) ?? 100;

/** How a ratio is written: "5 : 1" for enlarged, "1 : 2" for reduced. */
export const enlargedText = (ratio: number): string => `${ratio} : 1`;
export const reducedText = (ratio: number): string => `1 : ${ratio}`;
