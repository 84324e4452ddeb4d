import type { Part } from './types.js';

type Needed = 'id' | 'kind' | 'name' | 'material' | 'thickness' | 'quantity' | 'outline';

/** A part without holes, lettering or joints but those given; by default in any orientation, its front up. */
export function blank(part: Pick<Part, Needed> & Partial<Part>): Part {
  return {
    grain: 'any',
    up: 'front',
    openings: [],
    pockets: [],
    holes: [],
    marks: [],
    edges: [],
    seatCorners: [],
    edgeHoles: [],
    fitDeviation: 0,
    notes: [],
    ...part,
  };
}
