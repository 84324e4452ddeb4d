/** What is wrong with a stand, as diagnostics about keys of the design file. */
import { type Diagnostic, diagnostic, type KeyPath, type Severity } from '../diagnostic/index.js';
import type { DiagnosticCode } from '../diagnostic/index.js';
import { axleSpan, barrelNut, pipeFor, pipeName, pipes } from '../hardware/index.js';
import { formatLength, inInches } from '../units/index.js';
import { edgeNeeds, finestStep, jointBolt, mountingHoles, pairsFor, type StandSource } from './cradle.js';
import { canHang } from './holder.js';
import type { Stand } from './make.js';
import { gravity, tippingFactor } from './tipping.js';

/** Bearing of steel in plywood, N/mm²: a working value, common practice, no source. */
const maxBearing = 8;
/** Bending of plywood and of flat steel, N/mm²: a fifth of the strength, common practice, no source. */
const maxWood = 8;
const maxSteel = 120;
/** Counterweight on one arm that a person can put on, kg (common practice, no source). */
const maxEach = 60;

const found = (
  code: DiagnosticCode,
  path: KeyPath,
  message: string,
  remedy: string,
  severity: Severity = 'error',
): Diagnostic => diagnostic(code, path, message, remedy, severity);

/** What forbids a stand before one is made. */
export function mountProblems(source: StandSource): Diagnostic[] {
  const { design, dish } = source;
  const { mountingHoles: asked, mountingBolt } = design.board;
  const holes = mountingHoles(source).length;
  if (asked !== 4 || holes !== 4)
    return [
      found(
        'stand-mount',
        ['board', 'mountingHoles'],
        `a cradle is bolted to 4 mounting holes of the board, but there are ${asked === 4 ? holes : asked}`,
        'use board.mountingHoles: 4',
      ),
    ];
  if (dish.layout.ribs.length % 2 !== 0)
    return [
      found(
        'stand-mount',
        ['dish', 'ribs'],
        `with ${dish.layout.ribs.length} ribs the mounting holes are not opposite each other, as the two beams of a cradle require`,
        `use ${dish.layout.ribs.length + 1} ribs`,
      ),
    ];
  if (barrelNut(mountingBolt) === null)
    return [
      found(
        'stand-mount',
        ['board', 'mountingBolt'],
        `no barrel nut is sold for board.mountingBolt of ${mountingBolt}`,
        'use one from M5 to M10, or from 3/16 to 3/8 in',
      ),
    ];
  return edgeProblems(source);
}

/** Whether the edges of the stand's sheet take its bolts. */
function edgeProblems({ design, stand }: StandSource): Diagnostic[] {
  const sheet = design.materials[stand.material]?.thickness ?? 0;
  const { mountingBolt } = design.board;
  const show = (mm: number): string => formatLength(Math.round(10 * mm) / 10, design.units);
  if (jointBolt(sheet, mountingBolt.endsWith('in')) === null)
    return [
      found(
        'stand-mount',
        ['stand', 'material'],
        `${stand.material}, ${show(sheet)} thick, is too thin for a bolt in its edge`,
        `use a stand.material of ${show(edgeNeeds(mountingBolt.endsWith('in') ? '3/16 in' : 'M5'))} or more`,
      ),
    ];
  const needed = edgeNeeds(mountingBolt);
  if (needed <= sheet) return [];
  return [
    found(
      'stand-mount',
      ['board', 'mountingBolt'],
      `a bolt of ${mountingBolt} leaves too little wood in the edge of a beam of ${show(sheet)}`,
      `use a smaller one, or a stand.material of ${show(needed)} or more`,
    ),
  ];
}

/** The range of heights of the sun. */
export function rangeProblems({ stand, highestSunDeg }: StandSource): Diagnostic[] {
  const highest = stand.highest ?? highestSunDeg ?? 90;
  if (highest > stand.lowest) return [];
  return [
    found(
      'stand-range',
      ['stand', 'lowest'],
      `stand.lowest of ${stand.lowest} deg is not below the highest sun, ${highest} deg`,
      stand.highest === undefined
        ? `use ${Math.max(5, Math.floor(highest) - 10)} or less`
        : 'use a larger stand.highest or a smaller stand.lowest',
    ),
  ];
}

function holderProblems({ design, dish, stand }: StandSource): Diagnostic[] {
  const { vessel, load } = design;
  const show = (mm: number): string => formatLength(Math.round(10 * mm) / 10, design.units);
  if (vessel === undefined)
    return stand.holderWidth === undefined && design.stand?.holder !== 'hanger'
      ? []
      : [
          found(
            'stand-holder',
            ['stand', 'holder'],
            'there is no vessel to hold',
            'add `vessel`, or use stand.holder: none',
          ),
        ];
  if (stand.holder === 'none') return [];
  if (vessel.mount !== 'level')
    return [
      found(
        'stand-holder',
        ['stand', 'holder'],
        'a hanger keeps its vessel level, but this one tilts with the dish (vessel.mount: axis)',
        'use vessel.mount: level, or stand.holder: none',
      ),
    ];
  const problems: Diagnostic[] = [];
  if (stand.holderWidth !== undefined && stand.holderWidth < vessel.diameter + 4)
    problems.push(
      found(
        'stand-holder',
        ['stand', 'holderWidth'],
        `the vessel of ${show(vessel.diameter)} is too wide for its frame of ${show(stand.holderWidth)}`,
        `use ${show(vessel.diameter + 4)} or more`,
      ),
    );
  const span = axleSpan(dish.apertureRadius);
  const newton = (vessel.wallMass + (load?.mass ?? 0)) * gravity;
  const pipe = pipeFor(span, newton);
  if (pipe === null)
    return [
      ...problems,
      found(
        'stand-loaded',
        ['load', 'mass'],
        `no pipe up to ${pipeName(pipes.at(-1)!, inInches(design.units))} carries ${(newton / gravity).toFixed(0)} kg over ${show(span)}`,
        'use a smaller load',
      ),
    ];
  const { from, to, fits } = canHang(pipe, vessel.offset);
  if (!fits)
    problems.push(
      found(
        'stand-holder',
        ['vessel', 'offset'],
        `a base ${show(Math.abs(vessel.offset))} ${vessel.offset < 0 ? 'below' : 'above'} the focus cannot be hung from a frame on the tilt axis`,
        `use a vessel.offset from ${show(from)} to ${show(to)}, or stand.holder: none`,
      ),
    );
  return problems;
}

function lockProblems({ stand: { step } }: StandSource, { cradle: { lock } }: Stand): Diagnostic[] {
  if (pairsFor(step, lock.radius) !== null) return [];
  return [
    found(
      'stand-range',
      ['stand', 'step'],
      `lock holes for steps of ${step} deg would run into each other`,
      `use ${(Math.ceil(10 * finestStep(lock.radius)) / 10).toFixed(1)} deg or more`,
    ),
  ];
}

const degrees = (angle: number): string => (90 - (angle * 180) / Math.PI).toFixed(1);

function loadProblems({ values }: Stand): Diagnostic[] {
  const problems: Diagnostic[] = [];
  const warn = (key: KeyPath, message: string, remedy: string): void => {
    problems.push(found('stand-loaded', key, message, remedy, 'warning'));
  };
  if (values.pinBearing > maxBearing)
    warn(
      ['stand', 'wind'],
      `the pins of the lock press on the wood with ${values.pinBearing.toFixed(1)} N/mm² in gusts of the design’s wind`,
      `take the dish down earlier, or use a thicker stand.material: ${maxBearing} N/mm² is usual`,
    );
  if (values.deflection.beamStress > maxWood)
    warn(
      ['stand', 'material'],
      `the bending stress of the cross beams is ${values.deflection.beamStress.toFixed(1)} N/mm²`,
      `use a thicker stand.material: ${maxWood} N/mm² is usual`,
    );
  if (values.weights.each > maxEach)
    warn(
      ['stand', 'handForce'],
      `${values.weights.each} kg of counterweight are needed on each arm`,
      'allow a larger stand.handForce, or tilt the dish with two people',
    );
  return problems;
}

/** What is wrong with a stand that was made. */
export function standProblems(source: StandSource, stand: Stand): Diagnostic[] {
  const { values, holder } = stand;
  const { maxBallast, wind } = source.stand;
  const problems = [...lockProblems(source, stand), ...holderProblems(source), ...loadProblems(stand)];
  if (values.ballastKg > maxBallast)
    problems.push(
      found(
        'stand-ballast',
        ['stand', 'wind'],
        `gusts of ${wind} m/s need ${values.ballastKg} kg of ballast for a factor of ${tippingFactor} against tipping, but stand.maxBallast is ${maxBallast} kg`,
        `with only that much, take the dish down above ${(Math.floor(10 * stand.windAt(maxBallast)) / 10).toFixed(1)} m/s; a larger stand.foot needs less ballast`,
      ),
    );
  for (const { between, from, to } of values.collisions)
    problems.push(
      found(
        'stand-collision',
        ['stand', 'lowest'],
        `${between[0]} and ${between[1]} run into each other with the dish at ${degrees(to)} to ${degrees(from)} deg`,
        from > 0
          ? `use a stand.lowest of ${Math.ceil(Number(degrees(from)) + 1)} or more`
          : 'use a different stand.foot, or a different hub and board',
      ),
    );
  if (values.hollow !== null && holder !== null && values.hollow < 20)
    problems.push(
      found(
        'stand-holder',
        ['vessel', 'diameter'],
        `vessel and hanger come within ${values.hollow.toFixed(0)} mm of the mirror when the dish tilts`,
        'use a smaller vessel',
      ),
    );
  if (holder !== null && holder.strapStress > maxSteel)
    problems.push(
      found(
        'stand-loaded',
        ['load', 'mass'],
        `the bending stress of the straps under the vessel is ${holder.strapStress.toFixed(0)} N/mm²`,
        `${maxSteel} N/mm² is usual: use a smaller load or straps on edge`,
        'warning',
      ),
    );
  return problems;
}
