declare module "svgdom" {
  /** A window with an empty SVG document, as much of one as svg.js needs. */
  export function createSVGWindow(): unknown;
}
