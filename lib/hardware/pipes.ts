/** Threaded steel pipes with their floor flanges. Millimetres; EN 10255, medium series, from memory. */

export interface Pipe {
  /** Of the thread: `3/4 in`. */
  readonly size: string;
  /** Nominal size DN (ISO 6708), from memory. */
  readonly nominal: number;
  readonly outside: number;
  readonly wall: number;
}

export const pipes: readonly Pipe[] = [
  { size: '1/2 in', nominal: 15, outside: 21.3, wall: 2.6 },
  { size: '3/4 in', nominal: 20, outside: 26.9, wall: 2.6 },
  { size: '1 in', nominal: 25, outside: 33.7, wall: 3.2 },
  { size: '1-1/4 in', nominal: 32, outside: 42.4, wall: 3.2 },
  { size: '1-1/2 in', nominal: 40, outside: 48.3, wall: 3.2 },
  { size: '2 in', nominal: 50, outside: 60.3, wall: 3.6 },
];

/** What a pipe is called where it is bought: `DN 20` in a metric design, `3/4 in` in inches. */
export const pipeName = ({ size, nominal }: Pipe, inches: boolean): string => (inches ? size : `DN ${nominal}`);

/** Play of a pipe in the hole in which it turns, mm on the diameter: common practice, no source. */
export const pipePlay = 0.6;

/** Modulus of steel, N/mm² (EN 1993-1-1). */
export const steelModulus = 210_000;
/** kg/m³ (EN 1991-1-1). */
export const steelDensity = 7850;

const inner = ({ outside, wall }: Pipe): number => outside - 2 * wall;

/** Second moment of area, mm⁴. */
export const pipeInertia = (pipe: Pipe): number => (Math.PI / 64) * (pipe.outside ** 4 - inner(pipe) ** 4);

/** kg per mm of length. */
export const pipeMass = (pipe: Pipe): number =>
  (Math.PI / 4) * (pipe.outside ** 2 - inner(pipe) ** 2) * steelDensity * 1e-9;

/**
 * Sag in the middle of a pipe on two supports under a load in its middle, mm: F·L³/48EI, the handbook case.
 * @param force N
 */
export const pipeSag = (pipe: Pipe, span: number, force: number): number =>
  (force * span ** 3) / (48 * steelModulus * pipeInertia(pipe));

/** Bending stress there, N/mm²: (F·L/4)/(I/(d/2)). */
export const pipeStress = (pipe: Pipe, span: number, force: number): number =>
  (force * span * pipe.outside) / (8 * pipeInertia(pipe));

/** Largest sag of an axle as a share of its span, and its largest stress, N/mm²: common practice, no source. */
const maxSag = 1 / 300;
const maxStress = 80;

/** The thinnest pipe that carries a load in the middle of a span; null when none does. */
export function pipeFor(span: number, force: number): Pipe | null {
  return (
    pipes.find((pipe) => pipeSag(pipe, span, force) <= maxSag * span && pipeStress(pipe, span, force) <= maxStress) ??
    null
  );
}
