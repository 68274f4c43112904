import { arcAround, crossingsAtX, type Path, type Vec2 } from "@scantling/geometry";
import type { Callout } from "../../callouts.js";
import type { DrawingItem } from "../../drawing.js";
import { onOneLine, sizeText } from "../../label-text.js";
import type { PatternModel } from "../../models/pattern-model.js";
import type { Role } from "../../role.js";
import type { Silhouette } from "../../silhouette.js";

/** The true outline is wide, unless another line is cut along: then it is dashed. */
export const outlineRole = ({ cutLine }: PatternModel): Role =>
  cutLine === undefined ? "outline" : "hidden";

/** Kinds of line for what lies inside, from the outline in, for so many of them; the label says what each is. */
function innerRoles({ cutLine }: PatternModel, count: number): readonly Role[] {
  if (cutLine !== undefined) return ["adjacent", "thin"];
  return count < 2 ? ["hidden"] : ["adjacent", "hidden"];
}

/** Half the length of the cross in a hole that a further outline has, mm. */
const CROSS = 1.5;

/** The outlines inside the main one, and the line to cut along. */
export function furtherItems(model: PatternModel): DrawingItem[] {
  const { finishedOutline, further = [], cutLine } = model;
  const single = innerRoles(model, 1)[0] ?? "hidden";
  const roles = innerRoles(model, further.length);
  return [
    ...(finishedOutline === undefined
      ? []
      : [{ kind: "path" as const, role: single, paths: [finishedOutline], name: "finished-outline" }]),
    ...further.flatMap(({ outline, holes = [] }, index): DrawingItem[] => {
      const role = roles[index] ?? "thin";
      return [
        { kind: "path", role, paths: [outline], name: `outline-${index + 2}` },
        ...holes.flatMap(({ centre, diameter, slot }) => furtherHole(role, centre, diameter, slot?.rim)),
      ];
    }),
    ...(cutLine === undefined
      ? []
      : [{ kind: "path" as const, role: "cut" as const, paths: cutLine.paths, name: "cut-line" }]),
  ];
}

/** A hole that is not there yet: its rim in the line of its outline, and a small cross. */
function furtherHole(role: Role, centre: Vec2, diameter: number, rim: Path | undefined): DrawingItem[] {
  const bar = (dx: number, dy: number): Path => ({
    closed: false,
    segments: [
      {
        kind: "line",
        from: { x: centre.x - dx, y: centre.y - dy },
        to: { x: centre.x + dx, y: centre.y + dy },
      },
    ],
  });
  return [
    rim === undefined
      ? { kind: "circle", role, centre, radius: diameter / 2 }
      : { kind: "path", role, paths: [rim] },
    { kind: "path", role: "thin", paths: [bar(CROSS, 0), bar(0, CROSS)] },
  ];
}

/** Places along the knife at which a label may point to its line. */
const PLACES = 120;
/** Share of the length at either end where the lines run together, and none may. */
const ENDS = 0.06;

/**
 * Labels of the lines where there are several, each tied to its own line at the spine, as far as can be from the other
 * labels' places; and the dots that end their leaders.
 *
 * @param taken - x of the other labels, mm.
 */
export function outlineCallouts(
  model: PatternModel,
  { bounds }: Silhouette,
  taken: readonly number[],
): { readonly callouts: Callout[]; readonly dots: DrawingItem[] } {
  const lines = labelledLines(model);
  const length = bounds.maxX - bounds.minX;
  const places = Array.from(
    { length: PLACES + 1 },
    (_, index) => bounds.minX + length * (ENDS + ((1 - 2 * ENDS) * index) / PLACES),
  );
  const used = [...taken];
  const callouts = lines.flatMap(({ words, paths }): Callout[] => {
    const free = places.flatMap((x) => {
      const y = topOf(paths, x);
      return y === undefined ? [] : [{ at: { x, y }, room: roomAt(x, used) }];
    });
    const best = free.reduce<(typeof free)[number] | undefined>(
      (a, b) => (a === undefined || b.room > a.room ? b : a),
      undefined,
    );
    if (best === undefined) return [];
    used.push(best.at.x);
    return [{ from: best.at, lines: words }];
  });
  return { callouts, dots: callouts.map(({ from }) => dot(from)) };
}

const roomAt = (x: number, used: readonly number[]): number =>
  Math.min(Number.MAX_VALUE, ...used.map((other) => Math.abs(other - x)));

function topOf(paths: readonly Path[], x: number): number | undefined {
  const ys = paths.flatMap((path) => crossingsAtX(path, x).map(({ point }) => point.y));
  return ys.length === 0 ? undefined : Math.max(...ys);
}

function labelledLines(model: PatternModel): { readonly words: string[]; readonly paths: readonly Path[] }[] {
  const { further, cutLine, finishedOutline, state, outline, units } = model;
  if (further === undefined && cutLine === undefined) return [];
  return [
    ...(cutLine === undefined
      ? []
      : [
          {
            words: [
              `cut line, ${cutLine.offset < 0 ? "inside" : "outside"}`,
              onOneLine(sizeText(Math.abs(cutLine.offset), units)),
            ],
            paths: cutLine.paths,
          },
        ]),
    { words: [state], paths: [outline] },
    ...(finishedOutline === undefined ? [] : [{ words: ["finished"], paths: [finishedOutline] }]),
    ...(further ?? []).map((inner) => ({ words: [inner.state], paths: [inner.outline] })),
  ];
}

/** Radius of the dot that ends a leader on a line, mm: plain beside a wide line, and far from the next. */
const DOT = 0.5;

/** The dot that ends a leader. */
export const dot = (centre: Vec2): DrawingItem => ({
  kind: "path",
  role: "thin",
  paths: [
    {
      closed: true,
      segments: [arcAround(centre, DOT, 0, Math.PI), arcAround(centre, DOT, Math.PI, Math.PI)],
    },
  ],
  fill: "black",
});
