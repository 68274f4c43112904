import { lettering } from "../../drawing.js";
import { massText } from "../../label-text.js";
import { KEY, SMALL } from "../../lettering-size.js";
import type { PlotPlan, PlotsModel } from "../../models/plots-model.js";
import { barItems } from "../../plot/bars.js";
import { type Block, gap, paragraph, stackBlocks } from "../../plot/block.js";
import { textReach, textWidth } from "../../text-metrics.js";
import { money, percent, plainNumber } from "./figures.js";

/** Plans that are shown. */
const MOST_PLANS = 4;
const BAR = 2.2;
/** Where the bars begin: after the number of the plan, mm. */
const START = 5;
const BETWEEN = 1.5;
const AFTER = 1;
const LEADING = 0.2;

/** A figure by which plans are compared. */
interface Measure {
  readonly name: string;
  readonly value: (plan: PlotPlan) => number | undefined;
  readonly write: (value: number) => string;
}

/** The plans of the rack side by side, figure by figure. */
export function plansPlot(model: PlotsModel, width: number): Block {
  const plans = model.plans.slice(0, MOST_PLANS);
  const isSome = plans.length < model.plans.length;
  const heading = paragraph(isSome ? `Plans, ${plans.length} of ${model.plans.length}` : "Plans", width, KEY);
  if (plans.length === 0)
    return stackBlocks([heading, paragraph(model.noPlans ?? "No bars are known.", width)]);
  return stackBlocks([
    heading,
    ...plans.map(({ words, joints }, index) =>
      paragraph(`${index + 1}: ${words}${joints > 0 ? `, ${jointWords(joints)}` : ""}`, width),
    ),
    ...measuresOf(model, plans).flatMap((measure) => measureBlocks(measure, plans, width)),
  ]);
}

const jointWords = (joints: number): string => `${plainNumber(joints)} ${joints === 1 ? "joint" : "joints"}`;

function measuresOf({ units, currency }: PlotsModel, plans: readonly PlotPlan[]): Measure[] {
  const mass = (grams: number): string => massText(grams, units).main;
  return [
    { name: "bar", value: (plan) => plan.mass, write: mass },
    { name: "thinning that goes into height", value: (plan) => plan.reach, write: percent },
    ...(plans.some(({ cost }) => cost !== undefined)
      ? [
          {
            name: "cost",
            value: (plan: PlotPlan) => plan.cost,
            write: (value: number) => money(value, currency),
          },
        ]
      : []),
  ];
}

function measureBlocks({ name, value, write }: Measure, plans: readonly PlotPlan[], width: number): Block[] {
  const rows = plans.map((plan, index) => {
    const found = value(plan);
    return {
      number: `${index + 1}`,
      value: found ?? 0,
      figure: found === undefined ? "no price" : write(found),
    };
  });
  const room = width - START - BETWEEN - Math.max(...rows.map(({ figure }) => textWidth(figure, SMALL)));
  const most = Math.max(...rows.map((row) => row.value));
  const { over, under } = textReach("", SMALL);
  const height = over + under + LEADING;
  const scale = most > 0 ? room / most : 0;
  return [
    gap(AFTER),
    paragraph(name, width),
    ...rows.map((row): Block => {
      const end = START + row.value * scale;
      const base = -over;
      return {
        height,
        items: [
          lettering(row.number, { x: 0, y: base }, { height: SMALL }),
          ...(row.value > 0 ? barItems(START, end, { bottom: base, height: BAR, look: "grey" }) : []),
          lettering(row.figure, { x: end + BETWEEN, y: base }, { height: SMALL }),
        ],
      };
    }),
  ];
}
