/** Random design files over the whole range that people could ask for, in any unit. Seeded: the same seed, the same text. */
import { randomOf } from './random-nester.js';

export interface RandomDesign {
  readonly text: string;
  readonly seed: number;
}

const unitsMm = { mm: 1, cm: 10, in: 25.4 } as const;
type Unit = keyof typeof unitsMm;

/** A design of which every length is a number in `unit`, bare but for one. */
export function designIn(unit: Unit, seed: number): string {
  const random = randomOf(seed);
  const between = (min: number, max: number): number => min + random() * (max - min);
  const whole = (min: number, max: number): number => Math.floor(between(min, max + 1));
  const chance = (share: number): boolean => random() < share;
  const pick = <T>(...choices: readonly T[]): T => choices[Math.floor(random() * choices.length)]!;
  // lengths are drawn in whole micrometres, so that a bare number in any unit gives the same length
  const length = (mm: number): string => String(Number((Math.round(mm * 1000) / 1000 / unitsMm[unit]).toPrecision(15)));

  const aperture = Math.exp(between(Math.log(250), Math.log(2600)));
  const focalLength = aperture * between(0.26, 1.1);
  const thickness = Math.min(18, Math.max(2, aperture * between(0.006, 0.014)));
  const panel = Math.min(4, Math.max(0.5, aperture * between(0.0006, 0.003)));
  const process = pick('router', 'laser', 'hand');
  const tool = Math.min(thickness, pick(4, 5, 6, 6.35, 8));
  const small = thickness < 8;
  const cleatLength = Math.min(150, Math.max(40, aperture * between(0.06, 0.1)));
  const cleatWidth = Math.max(12, Math.min(48, cleatLength * between(0.35, 0.6)));
  const screw = small ? 2 : pick(3, 3.5, 4, 5);
  const pilot = screw * 0.7;
  const board = aperture * between(0.55, 0.9);
  const sheet = Math.max(600, aperture * 1.2);
  // pins split ribs that are thinner
  const fixingOf = (fixing: string): string => (thickness < 9 ? 'glue' : fixing);
  const lines = [
    `name: Dish of seed ${seed}`,
    `units: ${unit}`,
    'dish:',
    `  aperture: ${length(aperture)}`,
    `  focalLength: ${length(focalLength)}`,
    `  ribs: ${whole(8, 30)}`,
    `  figure: ${pick('panel', 'rib')}`,
    ...(chance(0.5) ? [`  baseHeight: ${length(between(30, 90))}`] : []),
    'materials:',
    `  ply: { kind: ${pick('plywood', 'mdf')}, thickness: ${length(thickness)} }`,
    // with its unit, as boards under a millimetre are not taken bare
    `  face: { kind: ${pick('hardboard', 'plywood', 'card')}, thickness: ${length(panel)} ${unit} }`,
    `  film: { kind: film, thickness: ${length(0.1)} }`,
    'stock:',
    `  - { material: ply, size: "${length(sheet * 1.6)} x ${length(sheet)}", price: ${whole(0, 80)} }`,
    `  - { material: face, size: "${length(sheet * 1.3)} x ${length(sheet)}", price: ${whole(0, 30)} }`,
    `  - { material: film, rollWidth: ${length(Math.max(400, aperture * 0.5))}, price: 5 }`,
    `rib: { material: ply, pilotDiameter: ${length(pilot)}, lightening: ${chance(0.3)}, clampHole: ${length(seed % 2 === 0 ? 30 : 0)} }`,
    `hub: { shape: ${pick('polygon', 'round')}, boltDiameter: ${length(pick(0, 6, 8))}, dowels: 0 }`,
    `cleat: { length: ${length(cleatLength)}, width: ${length(cleatWidth)}, perRib: ${whole(1, 2)}, downScrews: ${whole(1, 2)}, ribScrews: ${whole(1, 2)}, screwDiameter: ${length(screw)}, headDiameter: ${length(screw * 2)} }`,
    `board: { shape: ${pick('round', 'square')}, size: ${length(board)}, pilotDiameter: ${length(pilot)}, mountingHoles: ${whole(0, 8)} }`,
    `panel: { material: face, gap: ${length(between(0, 4))}, fixing: ${fixingOf(pick('glue', 'pins'))} }`,
    chance(0.6)
      ? `reflector: { material: film, layout: ${pick('strip', 'rows')} }`
      : 'reflector: { reflectance: 0.8 } # the panel itself is bright',
    `vessel: { diameter: ${length(aperture * between(0.1, 0.3))} }`,
    process === 'router'
      ? `process: { kind: router, toolDiameter: ${length(tool)}, drillBits: [${[...new Set([1.4, 2.1, 2.45, 2.8, 3.5, 2.5, screw, pilot])].map(length).join(', ')}], web: ${length(between(1, 8))}, margin: ${length(between(3.9, 15))} }`
      : process === 'laser'
        ? `process: { kind: laser, kerf: ${length(between(0.05, 0.4))}, web: ${length(between(0.5, 4))}, margin: ${length(between(0.2, 10))} }`
        : `process: { kind: hand, web: ${length(between(1, 8))} }`,
    ...(process === 'router' && seed % 8 !== 0 ? ['router: { tabs: { without: onion-skin } }'] : []),
    'template: { process: hand }',
  ];
  return `${lines.join('\n')}\n`;
}

export function randomDesign(seed: number): RandomDesign {
  const unit = (['mm', 'cm', 'in'] as const)[seed % 3]!;
  return { text: designIn(unit, seed), seed };
}
