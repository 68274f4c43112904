import type {
  BenchSetUp,
  BevelSetUp,
  Drill,
  DrillChoice,
  EdgeSetUp,
  GuardSlot,
  HandleBlank,
  HoleSetUp,
  MortiseSetUp,
  PinsSetUp,
  QuenchSetUp,
  ScribeSetUp,
  ScribingDrill,
  SwedgeSetUp,
  TaperSetUp,
  WedgeSet,
} from "@scantling/geometry";
import { radiansToDegrees } from "@scantling/geometry/units";
import type { Job } from "../load.js";
import { findingJson } from "./findings.js";

/** What tools at the bench are set to, for programs. What there is not, or what the shop does not own, is `null`. */
export const benchJson = (bench: BenchSetUp, job: Job): unknown => ({
  scribe: scribeJson(bench.scribe),
  tangTaper: bench.taper === undefined ? null : taperJson(bench.taper),
  holes: bench.holes.map(holeJson),
  bevels: bench.bevels.map(bevelJson),
  swedge: bench.swedge === undefined ? null : swedgeJson(bench.swedge),
  quench: quenchJson(bench.quench),
  handleBlank: bench.blank === undefined ? null : blankJson(bench.blank),
  guardSlot: bench.guard === undefined ? null : guardJson(bench.guard),
  mortise: bench.mortise === undefined ? null : mortiseJson(bench.mortise),
  pins: bench.pins === undefined ? null : pinsJson(bench.pins),
  glue:
    bench.glue === undefined
      ? null
      : {
          areaMm2: bench.glue.area,
          joints: bench.glue.joints,
          neededMm3: bench.glue.needed,
          toMixMm3: bench.glue.toMix,
        },
  edge: bench.edge.map(edgeJson),
  findings: bench.findings.map((finding) => findingJson(finding, job)),
});

const degrees = (angle: number): number => radiansToDegrees(angle);

const drillJson = (drill: Drill | undefined) =>
  drill === undefined ? null : { name: drill.name, diameterMm: drill.diameter };

const choiceJson = (choice: DrillChoice | undefined) =>
  choice === undefined ? null : { ...drillJson(choice.drill), clearanceMm: choice.clearance };

const scribingJson = ({ drill, height, error }: ScribingDrill) => ({
  ...drillJson(drill),
  lineHeightMm: height,
  errorMm: error,
});

const scribeJson = ({ level, stations, oneSetting, drills }: ScribeSetUp) => ({
  restsAtXMm: level.restsAt,
  restsOn: level.restsOn,
  thicknessMm: level.thickness,
  centrePlaneMm: level.centre,
  offCentreWithoutShimMm: level.offWithoutShim,
  shims: level.shims.map(({ x, shim }) => ({ xMm: x, shimMm: shim })),
  oneSetting,
  stations: stations.map((station) => ({
    xMm: station.x,
    thicknessMm: station.thickness,
    edgeMm: station.edge,
    lowerLineMm: station.lower,
    upperLineMm: station.upper,
    gaugeLeftDownMm: station.leftDown,
    gaugeRightDownMm: station.rightDown,
  })),
  drillsLeftDown: drills.leftDown.map(scribingJson),
  drillsRightDown: drills.rightDown.map(scribingJson),
});

const taperJson = ({ front, butt, length, lean, even, shims, drillingNeedsShim }: TaperSetUp) => ({
  frontMm: front,
  buttMm: butt,
  lengthMm: length,
  leanDeg: degrees(lean),
  even,
  drillingNeedsShim,
  shims: shims.map((shim) => ({
    behindFrontMm: shim.at,
    firstFaceMm: shim.oneFace,
    secondFaceMm: shim.twoFace,
  })),
});

const holeJson = ({ path, kind, at, to, diameter, pin, steel, handle, before, lean }: HoleSetUp) => ({
  path,
  kind,
  atMm: [at.x, at.y],
  toMm: to === undefined ? null : [to.x, to.y],
  diameterMm: diameter,
  pinMm: pin ?? null,
  steelDrill: choiceJson(steel),
  handleDrill: choiceJson(handle),
  drilledBeforeHandle:
    before === undefined
      ? null
      : { leastMm: before.least, mostMm: before.most, drill: choiceJson(before.drill) },
  lean:
    lean === undefined
      ? null
      : {
          leanDeg: degrees(lean.lean),
          shiftMm: lean.shift,
          mismatchMm: lean.mismatch,
          clearanceMm: lean.clearance,
          needsShim: lean.needsShim,
        },
});

const bevelJson = ({ side, form, stations, droop, leverShim, smallestRadius, wheels }: BevelSetUp) => ({
  side,
  form,
  droopShare: droop ?? null,
  leverShimMm: leverShim ?? null,
  smallestWheelRadiusMm: smallestRadius ?? null,
  wheels: (wheels ?? []).map(({ diameter, fits, highest, error }) => ({
    diameterMm: diameter,
    fits,
    highestBevelMm: highest,
    radiusErrorMm: error,
  })),
  stations: stations.map((station) => ({
    xMm: station.x,
    heightMm: station.height,
    thicknessMm: station.thickness,
    edgeMm: station.edge,
    angleDeg: degrees(station.angle),
    depthMm: station.depth,
    fromHammeredMm: station.fromHammered,
    heightAtFirstAngleMm: station.heightAtFirstAngle ?? null,
    arc:
      station.arc === undefined
        ? null
        : {
            radiusMm: station.arc.radius,
            depthMm: station.arc.depth,
            atEdgeDeg: degrees(station.arc.atEdge),
            atLineDeg: degrees(station.arc.atLine),
          },
  })),
});

const swedgeJson = ({ from, to, angle, stations }: SwedgeSetUp) => ({
  fromXMm: from,
  toXMm: to,
  anglePerSideDeg: degrees(angle),
  stations: stations.map(({ x, before, left, strip }) => ({
    xMm: x,
    thicknessBeforeMm: before,
    leftAtSpineMm: left,
    stripMm: strip,
  })),
});

const quenchJson = ({ mass, from, oil, rise, usualLitres, litres, depthNeeded, depth }: QuenchSetUp) => ({
  massG: mass,
  fromC: from,
  oilC: oil,
  oilRiseK: rise ?? null,
  usualLitres,
  litres: litres ?? null,
  depthNeededMm: depthNeeded,
  depthMm: depth ?? null,
});

const blankJson = ({ kind, material, length, height, thickness, bookMatched }: HandleBlank) => ({
  kind,
  material,
  lengthMm: length,
  heightMm: height,
  thicknessMm: thickness,
  bookMatchedThicknessMm: bookMatched ?? null,
});

const guardJson = (slot: GuardSlot) => ({
  guard: { lengthMm: slot.outer.length, heightMm: slot.outer.height, widthMm: slot.outer.width },
  heightMm: slot.height,
  thicknessMm: slot.thickness,
  overMm: slot.over,
  coverHeightMm: slot.coverHeight,
  coverThicknessMm: slot.coverThickness,
  reliefRadiusMm: slot.relief,
  drill: drillJson(slot.drill),
  holes: slot.holes ?? null,
});

const mortiseJson = ({ steps, through, wall, thinnestAt }: MortiseSetUp) => ({
  through,
  wallMm: wall,
  thinnestAtXMm: thinnestAt,
  steps: steps.map(({ depth, tang, mortise, drill, holes }) => ({
    depthMm: depth,
    tang: { heightMm: tang.height, thicknessMm: tang.thickness },
    mortise: { heightMm: mortise.height, thicknessMm: mortise.thickness },
    drill: drillJson(drill),
    holes: holes ?? null,
  })),
});

const pinsJson = ({ material, pins, rods }: PinsSetUp) => ({
  material,
  pins: pins.map(({ path, at, diameter, grip, sawn, peened }) => ({
    path,
    atMm: [at.x, at.y],
    diameterMm: diameter,
    gripMm: grip,
    sawToGrindFlushMm: sawn,
    cutToPeenMm: [peened.least, peened.most],
  })),
  rods: rods.map(({ diameter, count, length }) => ({ diameterMm: diameter, count, lengthMm: length })),
});

const wedgesJson = (set: WedgeSet | undefined) =>
  set === undefined
    ? null
    : {
        addDeg: set.add.map(degrees),
        subtractDeg: set.subtract.map(degrees),
        angleDeg: degrees(set.angle),
        errorDeg: degrees(set.error),
      };

const edgeJson = ({ side, angle, stations, wedges, microbevel }: EdgeSetUp) => ({
  side,
  anglePerSideDeg: degrees(angle),
  wedges: wedgesJson(wedges),
  microbevel:
    microbevel === undefined
      ? null
      : {
          anglePerSideDeg: degrees(microbevel.angle),
          heightMm: microbevel.height,
          wedges: wedgesJson(microbevel.wedges),
        },
  stations: stations.map((station) => ({
    xMm: station.x,
    behindEdgeMm: station.behind,
    widthMm: station.width,
    oneAboveMm: station.oneAbove ?? null,
    spineCentreMm: station.lift.centre,
    spineUndersideMm: station.lift.underside,
  })),
});
