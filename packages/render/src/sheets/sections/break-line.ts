import { type PathItem, polyline } from "../../drawing.js";

/** How far it runs past what it breaks off, and the size of its zigzag, mm. */
const PAST = 2;
const ZIG = 1.2;

/** The thin line with a zigzag at which a view is broken off (ISO 128-2, from memory). */
export function breakLine(left: number, right: number, y: number): PathItem {
  const middle = (left + right) / 2;
  const points = [
    { x: left - PAST, y },
    { x: middle - ZIG, y },
    { x: middle - ZIG / 2, y: y + ZIG },
    { x: middle + ZIG / 2, y: y - ZIG },
    { x: middle + ZIG, y },
    { x: right + PAST, y },
  ];
  return { kind: "path", role: "thin", paths: [polyline(points)] };
}
