/** All parts that are nested on the stock. */
import type { Dish } from '../dish/index.js';
import type { Design } from '../design/index.js';
import type { Diagnostic } from '../diagnostic/index.js';
import { makeUndividedBoard } from './board.js';
import { battenProblems, makeBattens } from './battens.js';
import { cleatProblems, makeCleat } from './cleat.js';
import { gaugeProblems } from './gauge.js';
import { housingProblems } from './housing.js';
import { dowelPlaces, hubProblems, makeHub } from './hub.js';
import { placeMounting } from './mounting.js';
import { makePanel, panelProblems } from './panel.js';
import { type CleatStart, cleatPlaces, placeCleats, planItems } from './plan.js';
import { makeReflectors, reflectorProblems, stripSeamShare } from './reflector.js';
import { makeRib, ribProblems } from './rib.js';
import { divideBoard, makeSegments, needsSegments } from './segments.js';
import { distanceToPlates, type SplicePlace, splicePlaces } from './splices.js';
import { tabProblems } from './tabs.js';
import { templateProblems } from './template.js';
import type { Part } from '../part/index.js';

export interface MadeParts {
  /** Ribs, hub, cleats, board, panels, reflector strips: in the order of building. */
  readonly parts: readonly Part[];
  readonly problems: readonly Diagnostic[];
  readonly cleatStart: CleatStart;
  /** Where the plates lie that join the segments of the board; none where it is in one piece. */
  readonly splices: readonly SplicePlace[];
}

/** Makes every part of the dish, true size, and reports what does not fit. */
export function makeParts(design: Design, dish: Dish): MadeParts {
  const cleats = placeCleats(design, dish);
  const { start } = cleats;
  const items = planItems(design, dish, start);
  const division = needsSegments(design) ? divideBoard(design, dish, start, items) : null;
  const blocked = division === null ? () => Infinity : distanceToPlates(design, division);
  const mounting = placeMounting(design, dish, items, blocked);
  const dowels = dowelPlaces(design, dish, division?.joints);
  const board =
    division === null
      ? [makeUndividedBoard(design, dish, items, start, mounting.holes, dowels)]
      : makeSegments(design, dish, items, start, division, mounting.holes, dowels);
  const parts = [
    makeRib(design, dish, start),
    makeHub(design, dish, dowels),
    ...(start === null ? [] : [makeCleat(design, dish.layout.ribs.length * cleatPlaces(design, dish, start).length)]),
    ...board,
    makePanel(design, dish),
    ...makeBattens(design, dish),
    ...makeReflectors(design, dish),
  ];
  return {
    parts,
    problems: [
      ...ribProblems(design, dish),
      ...hubProblems(design, dish),
      ...(start === null ? [] : cleatProblems(design)),
      ...tabProblems(design, dish),
      ...housingProblems(design, dish),
      ...cleats.problems,
      ...mounting.problems,
      ...(division?.problems ?? []),
      ...panelProblems(design, dish),
      ...battenProblems(design, dish, stripSeamShare(design, dish)),
      ...reflectorProblems(design, dish),
      ...templateProblems(design, dish, parts),
      ...gaugeProblems(design, dish),
    ],
    cleatStart: start,
    splices: division === null ? [] : splicePlaces(design, division),
  };
}
