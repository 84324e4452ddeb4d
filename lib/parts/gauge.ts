/** Gauges to check the curve with, and what else helps to put the dish together. */
import { fitArcs, type FittedPath } from '../geometry/index.js';
import { type Dish, facetAt } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { blank, type Part } from '../part/index.js';
import { focalStick, focalStickProblems } from './focal-stick.js';
import { gaugeBlank } from './gauge-blank.js';
import { gaugeShape } from './gauge-shape.js';
import { fitToBed } from './joint.js';
import { rimSpacers } from './rim-spacer.js';

/** A gauge in more pieces than this is no gauge. */
const maxPieces = 4;

/** The reflecting mid-line of a panel: x radius, y height above the board. */
function midLine(design: Design, dish: Dish): FittedPath {
  return fitArcs(
    {
      from: dish.litFrom,
      to: dish.litTo,
      at: (u) => ({ x: u, y: dish.baseHeight + facetAt(dish, u).z }),
      tangent: (u) => ({ x: 1, y: Math.tan(facetAt(dish, u).slopeAngle) }),
    },
    design.dish.arcTolerance,
  );
}

/**
 * The mirror's edge at a rib: x the radius along the rib, y height above the board. The edge's point at mid-line u
 * lies at u·cos α + w·sin α along the rib, w half the reflecting chord.
 */
function seamLine(design: Design, dish: Dish): FittedPath {
  const { halfAngle } = dish.layout;
  const [cos, sin, tan] = [Math.cos(halfAngle), Math.sin(halfAngle), Math.tan(halfAngle)];
  return fitArcs(
    {
      from: dish.litFrom,
      to: dish.litTo,
      at: (u) => {
        const { z, halfWidth } = facetAt(dish, u);
        return { x: u * cos + halfWidth * sin, y: dish.baseHeight + z };
      },
      tangent: (u) => ({ x: cos + tan * sin, y: Math.tan(facetAt(dish, u).slopeAngle) }),
    },
    design.dish.arcTolerance,
  );
}

function makeGauge(
  design: Design,
  curve: FittedPath,
  names: { readonly id: string; readonly name: string; readonly title: string; readonly note: string },
): Part {
  const shape = gaugeShape({
    side: curve.path,
    full: design.template.gauge === 'rim-to-rim',
    title: names.title,
  });
  return blank({
    ...gaugeBlank(design),
    id: names.id,
    name: names.name,
    outline: shape.outline,
    openings: shape.windows,
    marks: shape.marks,
    edges: shape.curve.map((run) => ({ ring: 0, ...run, role: 'optical' })),
    fitDeviation: curve.deviation,
    notes: [
      names.note,
      'Set its scribed marks on the inner end and the rim; look through the windows and from the side against a light. Never with the sun in the dish.',
    ],
  });
}

/** What the gauges cannot be made with. */
export function gaugeProblems(design: Design, dish: Dish): Diagnostic[] {
  const problems: Diagnostic[] = [];
  if (design.template.gauge === 'rim-to-rim' && dish.layout.ribs.length % 2 === 1)
    problems.push(
      diagnostic(
        'gauge',
        ['template', 'gauge'],
        'a rim-to-rim gauge needs an even number of ribs, so that every rib has one opposite',
        `dish.ribs is ${dish.layout.ribs.length}: use template.gauge: vertex-to-rim`,
      ),
    );
  return [...problems, ...focalStickProblems(design, dish)];
}

/** Gauges for bare ribs, for the mirror over a rib and for the middle of a panel; focal stick; rim spacers. */
export function makeGauges(design: Design, dish: Dish): Part[] {
  const skinned = [
    makeGauge(design, seamLine(design, dish), {
      id: 'gauge-seam',
      name: 'Gauge for the mirror at the rib line',
      title: 'MIRROR AT RIB LINE',
      note: 'The negative of the mirror along a seam, over the middle of a rib.',
    }),
    makeGauge(design, midLine(design, dish), {
      id: 'gauge-panel',
      name: 'Gauge for the middle of a panel',
      title: 'MIRROR AT PANEL MIDDLE',
      note: 'The negative of the mirror along the middle of a panel.',
    }),
  ];
  const bare = makeGauge(design, dish.ribTop, {
    id: 'gauge-rib',
    name: 'Gauge for bare ribs',
    title: 'BARE RIB',
    note: 'The negative of a rib’s top edge, before the panels go on.',
  });
  return [bare, ...skinned, ...focalStick(design, dish), ...rimSpacers(design, dish)].flatMap(
    (part) =>
      fitToBed(part, design.template.bed, design.template.joint, maxPieces) ?? [
        { ...part, notes: [...part.notes, `It does not fit the bed even in ${maxPieces} pieces: cut it by hand.`] },
      ],
  );
}
