// Handle blocks as triangle meshes of manifold-3d: sections round the block, less the tang and the pins.
import type { Manifold, ManifoldToplevel } from "manifold-3d";
import { locate } from "./curve.js";
import type { BlockShape, HandleShapes, TangShape } from "./handle-shapes.js";
import { MeshBuilder, sameArea, withSolids } from "./mesh.js";

/**
 * Volumes of every block less the tang in it and the pins through it, and of the pins, mm³.
 *
 * @param fineness - stations between two of the block's own, and points on a quarter of a section; chords cut off an
 *   error that falls with the square of it.
 */
export function weighHandleMeshes(
  wasm: ManifoldToplevel,
  { tang, blocks, pins }: HandleShapes,
  fineness: number,
): Map<string, number> {
  return withSolids((keep) => {
    const steel = tangMesh(wasm, keep, tang, fineness);
    const sides = 4 * fineness;
    const rods = pins.map((pin) => {
      const radius = sameArea(pin.radius, sides);
      return keep(
        keep(wasm.Manifold.cylinder(REACH, radius, radius, sides, true)).translate([pin.x, pin.y, 0]),
      );
    });
    const whole = blocks.map((block) => ({
      name: block.name,
      solid: keep(blockMesh(wasm, block, fineness)),
    }));
    const volumes = new Map<string, number>();
    for (const { name, solid } of whole)
      volumes.set(name, [steel, ...rods].reduce((rest, tool) => keep(rest.subtract(tool)), solid).volume());
    if (rods.length > 0) {
      const pinned = whole.flatMap(({ solid }) => rods.map((rod) => keep(solid.intersect(rod)).volume()));
      volumes.set(
        "pins",
        pinned.reduce((sum, volume) => sum + volume, 0),
      );
    }
    return volumes;
  });
}

const REACH = 120;

/** The outline behind the handle front drawn out across z, within the profile drawn out across y. */
function tangMesh(
  wasm: ManifoldToplevel,
  keep: (solid: Manifold) => Manifold,
  { outline, profile }: TangShape,
  fineness: number,
): Manifold {
  const { tangTop, butt, tangBottom } = outline.runs;
  const flats = [...tangTop, ...butt, ...tangBottom].flatMap((segment) => {
    const count = segment.kind === "line" ? 1 : fineness;
    return Array.from({ length: count }, (_, i) => pair(locate(segment, i / count)));
  });
  const end = tangBottom.at(-1);
  if (end) flats.push(pair(end.to));
  const sides = [
    ...profile.map(({ x, half }): [number, number] => [x, -half]),
    ...[...profile].reverse().map(({ x, half }): [number, number] => [x, half]),
  ];
  const drawnOut = keep(wasm.Manifold.extrude([flats], REACH, 0, 0, [1, 1], true));
  const across = keep(wasm.Manifold.extrude([sides.reverse()], REACH, 0, 0, [1, 1], true));
  return keep(drawnOut.intersect(keep(across.rotate([90, 0, 0]))));
}

const pair = ({ x, y }: { readonly x: number; readonly y: number }): [number, number] => [x, y];

function blockMesh(wasm: ManifoldToplevel, block: BlockShape, fineness: number): Manifold {
  const mesh = new MeshBuilder();
  const xs = block.stations.slice(1).flatMap((to, k) => {
    const from = block.stations[k] ?? to;
    return Array.from({ length: fineness }, (_, i) => to + ((from - to) * (fineness - i)) / fineness);
  });
  xs.push(block.stations.at(-1) ?? 0);
  const rings = xs.map((x) =>
    sectionPoints(block, x, fineness).map(({ u, z }) => ({ index: mesh.vertex([x, block.centre + u, z]) })),
  );
  rings.slice(1).forEach((next, i) => {
    const here = rings[i];
    here?.forEach((corner, j) => {
      const k = (j + 1) % here.length;
      mesh.polygon([corner, next[j], next[k], here[k]]);
    });
  });
  // Sections are convex: a fan closes either end.
  mesh.polygon(rings[0] ?? []);
  mesh.polygon([...(rings.at(-1) ?? [])].reverse());
  return wasm.Manifold.ofMesh(new wasm.Mesh({ numProp: 3, ...mesh.arrays() }));
}

/** Once round a section, from u toward z. */
function sectionPoints(block: BlockShape, x: number, fineness: number): { u: number; z: number }[] {
  const { halfHeight: a, halfWidth: b, corner } = block.section(x);
  const turn = (k: number): number => (Math.PI * k) / (2 * fineness);
  if (block.form === "oval")
    return Array.from({ length: 4 * fineness }, (_, k) => ({
      u: a * Math.cos(turn(k)),
      z: b * Math.sin(turn(k)),
    }));
  const quarter = (): { u: number; z: number }[] => {
    if (block.form === "box") return [{ u: a, z: b }];
    const [u, z] = [a - corner, b - corner];
    if (block.form === "octagonal")
      return [
        { u: a, z },
        { u, z: b },
      ];
    return Array.from({ length: fineness + 1 }, (_, k) => ({
      u: u + corner * Math.cos(turn(k)),
      z: z + corner * Math.sin(turn(k)),
    }));
  };
  const one = quarter();
  const back = [...one].reverse();
  return [
    ...one,
    ...back.map(({ u, z }) => ({ u: -u, z })),
    ...one.map(({ u, z }) => ({ u: -u, z: -z })),
    ...back.map(({ u, z }) => ({ u, z: -z })),
  ];
}
