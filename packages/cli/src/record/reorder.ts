import type { Planned } from "../file/record-file.js";
import { type ChangedInput, changedInputs, dataOf, withInput } from "./inputs.js";
import { isSameRow, keysOf, type PlanRow, planRows } from "./plan-rows.js";
import type { JobTexts } from "./planned.js";

/** What a figure moved by. */
export type Cause =
  | { readonly kind: "input"; readonly input: ChangedInput }
  /** Another of the plans of stock is taken. */
  | { readonly kind: "choice"; readonly was: number | undefined; readonly is: number | undefined }
  /** The program itself answers otherwise on the files as they were. */
  | { readonly kind: "program"; readonly was: string; readonly is: string };

/** A figure then and now; `causes` index into the list of the report. */
export interface ReorderRow {
  readonly key: string;
  readonly was: PlanRow | undefined;
  readonly is: PlanRow | undefined;
  readonly same: boolean;
  readonly causes: readonly number[];
  /** Moved by several inputs together, none of which does it alone. */
  readonly together: boolean;
}

/** An old plan against what is planned today. */
export interface Reorder {
  readonly was: Planned;
  readonly is: Planned;
  readonly rows: readonly ReorderRow[];
  /** Those that move a figure. */
  readonly causes: readonly Cause[];
  /** Inputs that changed and move nothing of it. */
  readonly idle: readonly ChangedInput[];
  /** Why the causes cannot be told apart; undefined where they can. */
  readonly unexplained: string | undefined;
}

/** More changed inputs than this are not tried one by one: then it is another order. */
const MOST_INPUTS = 24;

/** Makes a plan of texts, of the bars that stand at a place among those of stock; undefined where they make none. */
export type PlanTexts = (texts: JobTexts, place: number | undefined) => Planned | undefined;

/**
 * Holds today's plan against the one that a record keeps, and finds for each figure that moved which input moves it: each
 * changed input alone is put into the files as they were, and the plan made again.
 *
 * @param was - The snapshot.
 * @param is - Today's plan.
 * @param plan - Plans by today's program.
 */
export function reorder(was: Planned, is: Planned, plan: PlanTexts): Reorder {
  const [before, now] = [planRows(was), planRows(is)];
  const changed = inputsBetween(was.files, is.files);
  const keys = keysOf(before, now);
  const moved = keys.filter((key) => differs(before, now, key));
  const { steps, unexplained } =
    // Where nothing moved there is nothing to explain.
    moved.length === 0 ? { steps: [], unexplained: undefined } : stepsOf(was, is, changed, plan);
  const moving = steps.filter(({ from, to }) => moved.some((key) => differs(from, to, key)));
  const movers = moving.map(({ cause }) => cause);
  return {
    was,
    is,
    rows: keys.map((key): ReorderRow => {
      const same = !moved.includes(key);
      const causes = same
        ? []
        : moving.flatMap(({ from, to }, index) => (differs(from, to, key) ? [index] : []));
      return {
        key,
        was: find(before, key),
        is: find(now, key),
        same,
        causes,
        together: !same && causes.length === 0 && unexplained === undefined,
      };
    }),
    causes: movers,
    idle: changed.filter((input) => !movers.some((cause) => cause.kind === "input" && cause.input === input)),
    unexplained,
  };
}

interface Steps {
  readonly steps: readonly Step[];
  /** Why none are told; undefined where they are. */
  readonly unexplained: string | undefined;
}

/** What each thing that changed does by itself: every input, the choice of the plan, the program. */
function stepsOf(was: Planned, is: Planned, changed: readonly ChangedInput[], plan: PlanTexts): Steps {
  const rowsBy = (texts: JobTexts, place: number | undefined): readonly PlanRow[] | undefined => {
    const planned = plan(texts, place);
    return planned && planRows(planned);
  };
  const none = (unexplained: string): Steps => ({ steps: [], unexplained });
  if (changed.length > MOST_INPUTS)
    return none(`${changed.length} inputs changed, more than can be told apart`);
  const replay = rowsBy(was.files, was.plan);
  const base = was.plan === is.plan ? replay : rowsBy(was.files, is.plan);
  if (replay === undefined || base === undefined) {
    return none("this version of the program makes no plan of the files as they were");
  }
  const inputs = changed.map((input): Step => {
    const to = rowsBy(textsWith(input, was.files), is.plan) ?? base;
    return { cause: { kind: "input", input }, from: base, to };
  });
  const steps: readonly Step[] = [
    ...inputs,
    { cause: { kind: "choice", was: was.plan, is: is.plan }, from: replay, to: base },
    { cause: { kind: "program", was: was.program, is: is.program }, from: planRows(was), to: replay },
  ];
  return { steps, unexplained: undefined };
}

/** One cause, and the figures without it and with it. */
interface Step {
  readonly cause: Cause;
  readonly from: readonly PlanRow[];
  readonly to: readonly PlanRow[];
}

const differs = (a: readonly PlanRow[], b: readonly PlanRow[], key: string): boolean =>
  !isSameRow(find(a, key), find(b, key));

const find = (rows: readonly PlanRow[], key: string): PlanRow | undefined =>
  rows.find((row) => row.key === key);

function inputsBetween(was: JobTexts, is: JobTexts): readonly ChangedInput[] {
  const shop =
    was.shop === undefined || is.shop === undefined
      ? was.shop === is.shop
        ? []
        : [
            {
              file: "shop" as const,
              path: [],
              was: was.shop && dataOf(was.shop),
              is: is.shop && dataOf(is.shop),
            },
          ]
      : changedInputs("shop", was.shop, is.shop);
  const drawing =
    was.drawing === is.drawing
      ? []
      : [{ file: "drawing" as const, path: [], was: was.drawing, is: is.drawing }];
  return [...changedInputs("knife", was.knife, is.knife), ...drawing, ...shop];
}

/** The files as they were with one input as it is now. */
function textsWith(input: ChangedInput, { knife, shop, drawing }: JobTexts): JobTexts {
  const texts = {
    knife: input.file === "knife" ? withInput(dataOf(knife), input) : knife,
    shop: input.file === "shop" ? shopWith(shop, input) : shop,
    drawing: input.file === "drawing" ? (input.is as string | undefined) : drawing,
  };
  const { shop: newShop, drawing: newDrawing } = texts;
  return {
    knife: texts.knife,
    ...(newShop === undefined ? {} : { shop: newShop }),
    ...(newDrawing === undefined ? {} : { drawing: newDrawing }),
  };
}

/** A shop file that came or went as a whole, or one with an input changed. */
function shopWith(shop: string | undefined, input: ChangedInput): string | undefined {
  if (input.path.length === 0) return input.is === undefined ? undefined : JSON.stringify(input.is);
  return shop === undefined ? undefined : withInput(dataOf(shop), input);
}
