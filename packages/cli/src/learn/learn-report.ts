import {
  type Banded,
  FIGURE_PATHS,
  type FigurePath,
  type JobRecord,
  type LearntShop,
  learnShop,
  presentFigure,
} from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import type { ShopFile } from "../file/index.js";
import { unifiedDiff } from "../report/unified-diff.js";
import type { CopiedRecord } from "./copied-records.js";
import { learningShop } from "./learning-shop.js";
import { type Proposal, proposalsOf } from "./propose.js";
import { newShopText, withProposals } from "./store-learnt.js";

/** What became of the change: `by-hand` where the file is laid out so that nothing can be put into it. */
export type LearnOutcome = "proposed" | "written" | "by-hand";

/** What records say of a shop, and what is to change in its file. */
export interface LearnReport {
  /** The shop file as the person sees it; undefined where there is none. */
  readonly shop: string | undefined;
  /** Records that were learnt from, as the person sees them. */
  readonly records: readonly string[];
  /** Records that were left out whole, for they hold what another one holds. */
  readonly copies: readonly CopiedRecord[];
  readonly learnt: LearntShop;
  /** What the shop reckons with today. */
  readonly now: Partial<Record<FigurePath, Banded>>;
  readonly proposals: readonly Proposal[];
  /** The text of the shop file as it becomes; undefined where it is to be changed by hand, or not at all. */
  readonly edited: string | undefined;
  readonly diff: readonly string[];
  readonly outcome: LearnOutcome;
  /** Units to show. */
  readonly units: FileUnits;
  /** The command that writes the change, as it can be typed. */
  readonly again: readonly string[];
}

/** The shop file that is learnt for. */
export interface LearningFile {
  readonly shown: string;
  readonly text: string;
  /** Undefined where the file has nothing but comments in it. */
  readonly file: ShopFile | undefined;
}

/**
 * Learns from records what a shop should reckon with, and makes the change of its file.
 *
 * @param units - To show figures in; left out: those of the shop file.
 * @throws {FileError} where the shop breaks rules.
 */
export function learnReport(
  records: readonly JobRecord[],
  shopFile: LearningFile | undefined,
  {
    units,
    again,
    copies,
  }: {
    readonly units: FileUnits | undefined;
    readonly again: readonly string[];
    readonly copies: readonly CopiedRecord[];
  },
): LearnReport {
  const shop = learningShop(shopFile?.file);
  const learnt = learnShop(records, shop);
  const fileUnits = shopFile?.file?.units ?? units ?? "mm";
  const proposals = proposalsOf(learnt.figures, shop, fileUnits);
  const before = shopFile?.text ?? "";
  const base = shopFile?.file === undefined ? before + newShopText(fileUnits) : before;
  const edited = proposals.length === 0 ? undefined : withProposals(base, proposals, fileUnits);
  return {
    shop: shopFile?.shown,
    records: records.map(({ file }) => file),
    copies,
    learnt,
    now: Object.fromEntries(
      FIGURE_PATHS.flatMap((path) => {
        const figure = presentFigure(path, shop);
        return figure === undefined ? [] : [[path, figure]];
      }),
    ),
    proposals,
    edited,
    diff: edited === undefined ? [] : unifiedDiff(before, edited, shopFile?.shown),
    outcome: proposals.length > 0 && edited === undefined ? "by-hand" : "proposed",
    units: units ?? fileUnits,
    again,
  };
}
