import { randomBodies } from "../reference/random/suite.js";

// 1,000 bodies in four files: the kernel against strips square to x (tests/reference/strips), a second method that shares
// nothing with it but the outline. 1e-9 of every integral, 1e-6 where a ridge of the distance to the edge runs inside the
// steel; the error that comes with the integrals covers what they are off.
randomBodies(0, 250);
