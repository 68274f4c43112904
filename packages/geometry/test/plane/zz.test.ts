import fc from "fast-check";
import { it } from "vitest";
import { meetings } from "../../src/plane/intersect.js";
import { cubic } from "../../src/plane/segment.js";
import { vec2 } from "../../src/plane/vec2.js";
import { anySegment } from "./arbitraries.js";
it("x",()=>{
  const corner = fc.constantFrom(vec2(0, 0), vec2(10, 0), vec2(10, 10), vec2(5, 5), vec2(0, 1e-12));
  const degenerate = fc.tuple(corner, corner, corner, corner).map(([a, b, c, d]) => cubic(a, b, c, d));
  const rows: [number,string][] = [];
  for (const [a,b] of fc.sample(fc.tuple(degenerate, fc.oneof(degenerate, anySegment)), {seed:1, numRuns:300})) {
    const t=performance.now(); let r="";
    try { r=JSON.stringify(meetings(a,b)).slice(0,150);} catch(e){ r=String(e)}
    rows.push([performance.now()-t, JSON.stringify([a,b])+" => "+r]);
  }
  rows.sort((p,q)=>q[0]-p[0]);
  console.log(rows.reduce((s,r)=>s+r[0],0), rows.slice(0,12).map(r=>r.join(" ")).join("\n"));
});
