import { edgeBevelAt, weighKnife } from "@scantling/geometry";
import { describe, expect, test } from "vitest";
import { sumDrawn } from "../orders/by-rule.js";
import { drawnHeight } from "../orders/drawn.js";
import { forgedVolume } from "../orders/forged.js";
import { weighByHand } from "../orders/hand-sums.js";
import { forgedByLibrary, weighOrder } from "../orders/library.js";
import { drawingOf, type LoadedOrder, loadOrder } from "../orders/load.js";
import { ORDERS, type Order } from "../orders/orders.js";
import { readText } from "./repository.js";

// docs/orders.md holds figures; each of its rows is worked out anew here.
const page = readText("docs/orders.md");

const row = (...cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
const cubic = (volume: number): string => (volume / 1000).toFixed(2);
const signed = (value: number, decimals: number): string =>
  `${value < 0 ? "−" : "+"}${Math.abs(value).toFixed(decimals)}`;
const percent = (ratio: number): string => `${signed((ratio - 1) * 100, 1)} %`;

function weights(order: Order, loaded: LoadedOrder): string {
  const { hand } = order;
  const ours = weighOrder(order, loaded);
  return row(
    order.code,
    `${hand.bladeVolume.toFixed(1)} / ${cubic(ours.bladeVolume)}`,
    `${hand.bladeMass} / ${ours.bladeMass.toFixed(1)}`,
    `${hand.tangMass} / ${ours.tangMass.toFixed(1)}`,
    `${hand.totalMass} / ${ours.mass.toFixed(1)}`,
    `${signed(hand.balance, 0)} / ${signed(ours.balance, 1)}`,
  );
}

function causes(order: Order, loaded: LoadedOrder): string {
  const drawn = drawingOf(loaded);
  const { volume: byTable } = weighByHand(order).blade;
  const { volume: byDrawing } = sumDrawn(order, drawn, "straight up", false);
  const { volume: nearest } = sumDrawn(order, drawn, "nearest", false);
  const { volume: sharpened } = sumDrawn(order, drawn, "nearest", true);
  return row(
    order.code,
    cubic(byTable),
    signed((byDrawing - byTable) / 1000, 2),
    signed((nearest - byDrawing) / 1000, 2),
    signed((sharpened - nearest) / 1000, 2),
    cubic(weighOrder(order, loaded).bladeVolume),
    percent(weighOrder(order, loaded).bladeVolume / byTable),
  );
}

function edges(order: Order, { knife }: LoadedOrder): string {
  const { edgeBevel } = order.hand;
  const bevel = edgeBevelAt(knife, 1e-9);
  return row(
    order.code,
    edgeBevel.map((size) => size.toFixed(2)).join(" / "),
    [bevel?.height, bevel?.width].map((size) => (size ?? Number.NaN).toFixed(2)).join(" / "),
  );
}

function forged(order: Order, loaded: LoadedOrder): string {
  const drawn = drawingOf(loaded);
  const model = forgedVolume(order, "face allowance everywhere", (x) => drawnHeight(drawn, x));
  const ours = forgedByLibrary(loaded);
  return row(
    order.code,
    order.hand.forgedVolume.toFixed(1),
    (model / 1000).toFixed(1),
    (ours / 1000).toFixed(1),
    percent(ours / 1000 / order.hand.forgedVolume),
  );
}

describe.each(ORDERS)("docs/orders.md on $code", async (order) => {
  const loaded = await loadOrder(order.name);

  test.each([
    ["weights", weights],
    ["causes", causes],
    ["edges", edges],
    ["forged", forged],
  ])("%s", (_, rowOf) => {
    expect(page).toContain(rowOf(order, loaded));
  });

  test("names its file", () => {
    expect(page).toContain(`(../examples/${order.name}/${order.name}.knife.yaml)`);
  });
});

test("the slicer's weight to add, and the mass that it then has", async () => {
  const { knife } = weighKnife((await loadOrder("long-slicer")).knife);
  const masses = [25, 20].map((wanted) => (knife.mass * (knife.balanceFromHeel - wanted)) / (wanted + 73));
  const [top, lower] = masses.map((added) => [added.toFixed(0), (knife.mass + added).toFixed(0)]);
  expect(page).toContain(`${top?.[0]} g there bring it to +25 mm at ${top?.[1]} g`);
  expect(page).toContain(`${lower?.[0]} g to +20 mm at ${lower?.[1]} g`);
});
