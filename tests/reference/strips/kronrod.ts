// Gauss–Kronrod pairs on 0…1 and the usual estimate of what the finer rule still misses.
// Source: R. Piessens et al., QUADPACK (1983), routines QK15 and QK21.

/** Nodes ascending on 0…1 with the weights of both rules (0 where the coarser one has no node). */
export interface Rule {
  readonly nodes: Float64Array;
  readonly fine: Float64Array;
  readonly coarse: Float64Array;
}

function rule(nodes: readonly number[], kronrod: readonly number[], gauss: readonly number[]): Rule {
  // Given from the outside in, the middle last; every second node from the second on is also one of Gauss's.
  const last = nodes.length - 1;
  const half = nodes.map((node, i) => {
    const coarse = i % 2 === 1 ? (gauss[(i - 1) / 2] ?? 0) : 0;
    return { node, fine: (kronrod[i] ?? 0) / 2, coarse: coarse / 2 };
  });
  const all = [
    ...half.map((n) => ({ ...n, node: (1 - n.node) / 2 })),
    ...half
      .slice(0, last)
      .reverse()
      .map((n) => ({ ...n, node: (1 + n.node) / 2 })),
  ];
  return {
    nodes: Float64Array.from(all, (n) => n.node),
    fine: Float64Array.from(all, (n) => n.fine),
    coarse: Float64Array.from(all, (n) => n.coarse),
  };
}

export const K15 = rule(
  [
    0.9914553711208126, 0.9491079123427585, 0.8648644233597691, 0.7415311855993945, 0.5860872354676911,
    0.4058451513773972, 0.20778495500789848, 0,
  ],
  [
    0.022935322010529224, 0.06309209262997856, 0.10479001032225019, 0.14065325971552592, 0.1690047266392679,
    0.19035057806478542, 0.20443294007529889, 0.20948214108472782,
  ],
  [0.1294849661688697, 0.27970539148927664, 0.3818300505051189, 0.4179591836734694],
);

export const K21 = rule(
  [
    0.9956571630258081, 0.9739065285171717, 0.9301574913557082, 0.8650633666889845, 0.7808177265864169,
    0.6794095682990244, 0.5627571346686047, 0.4333953941292472, 0.2943928627014602, 0.14887433898163122, 0,
  ],
  [
    0.011694638867371874, 0.032558162307964725, 0.054755896574351995, 0.07503967481091996, 0.0931254545836976,
    0.10938715880229764, 0.12349197626206584, 0.13470921731147334, 0.14277593857706009, 0.14773910490133849,
    0.1494455540029169,
  ],
  [0.06667134430868814, 0.1494513491505806, 0.21908636251598204, 0.26926671930999635, 0.29552422471475287],
);

/** What the finer rule may still miss, from the gap of the two and the variation of the integrand over the piece. */
export function missed(gap: number, variation: number): number {
  if (variation === 0 || gap === 0) return gap;
  const share = (200 * gap) / variation;
  return share >= 1 ? variation : variation * share * Math.sqrt(share);
}
