import { type Affine, affine, compose, IDENTITY } from "./affine.js";
import { drawingError, quoted } from "./drawing-issue.js";
import { readNumbers } from "./number-list.js";

/** No editor nests this many steps in one attribute. */
const LONGEST = 4_000;
const FUNCTION = /^[\s,]*([a-zA-Z]+)\s*\(([^()]*)\)/u;

/**
 * The map of a `transform` attribute: a list of matrix, translate, scale, rotate, skewX and skewY, the last one done
 * first. Angles are in degrees, as the format has them.
 *
 * Source: W3C, CSS Transforms Module Level 1, section 9 (syntax of the `transform` attribute).
 *
 * @throws {SpecError} `drawing-transform-unreadable`
 *
 * @example
 * readTransform("translate(10 20) scale(2)"); // (1, 1) goes to (12, 22)
 */
export function readTransform(text: string): Affine {
  let rest = text.trim();
  let map = IDENTITY;
  if (rest === "none") return map;
  while (rest !== "") {
    const [all = "", name = "", list = ""] = (rest.length <= LONGEST && FUNCTION.exec(rest)) || [];
    const numbers = readNumbers(list);
    const step = all === "" || numbers === undefined ? undefined : stepOf(name, numbers);
    if (step === undefined) {
      throw drawingError(
        "drawing-transform-unreadable",
        'The drawing has a transform that cannot be read: "{transform}". Ungroup it in the editor, or save as plain SVG.',
        { transform: quoted(text) },
      );
    }
    map = compose(map, step);
    rest = rest.slice(all.length).trim();
  }
  return map;
}

function stepOf(name: string, numbers: readonly number[]): Affine | undefined {
  const [n0 = 0, n1 = 0, n2 = 0, n3 = 0, n4 = 0, n5 = 0] = numbers;
  const counts = `${name}/${numbers.length}`;
  switch (counts) {
    case "matrix/6":
      return affine(n0, n1, n2, n3, n4, n5);
    case "translate/1":
    case "translate/2":
      return affine(1, 0, 0, 1, n0, n1);
    case "scale/1":
      return affine(n0, 0, 0, n0, 0, 0);
    case "scale/2":
      return affine(n0, 0, 0, n1, 0, 0);
    case "rotate/1":
      return rotation(n0);
    case "rotate/3":
      return compose(affine(1, 0, 0, 1, n1, n2), compose(rotation(n0), affine(1, 0, 0, 1, -n1, -n2)));
    case "skewX/1":
      return affine(1, 0, Math.tan(radians(n0)), 1, 0, 0);
    case "skewY/1":
      return affine(1, Math.tan(radians(n0)), 0, 1, 0, 0);
    default:
      return undefined;
  }
}

function rotation(degrees: number): Affine {
  const cos = Math.cos(radians(degrees));
  const sin = Math.sin(radians(degrees));
  return affine(cos, sin, -sin, cos, 0, 0);
}

// The format counts in degrees; nothing else here does.
const radians = (degrees: number): number => (degrees / 180) * Math.PI;
