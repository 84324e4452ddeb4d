/** What a drawing has to show of a part: values along its sides, labels, tables, notes. */
import type { Point } from '../../geometry/index.js';
import type { FeatureSketch, RingSketch, ScribedSketch } from './sketch.js';
import type { Table } from './table.js';
import type { Axis, Fact } from './types.js';

/** A running dimension: its value from the origin, and the corners that it belongs to. */
export interface RailValue {
  readonly axis: Axis;
  readonly value: number;
  readonly text: string;
  readonly from: readonly Point[];
  readonly states: readonly Fact[];
}

/** Text that points at a place of the part. */
export interface Label {
  readonly text: string;
  readonly at: Point;
  /** With a line to the place; else it only stands near it. */
  readonly leader: boolean;
  /** It may stand on the place itself. */
  readonly onIt?: true;
  readonly states: readonly Fact[];
}

export interface Described {
  readonly rings: readonly RingSketch[];
  readonly features: readonly FeatureSketch[];
  /** Indices of the line marks that are given by their middles. */
  readonly pins: readonly number[];
  readonly scribed: readonly ScribedSketch[];
  readonly rails: readonly RailValue[];
  readonly labels: readonly Label[];
  readonly tables: readonly Table[];
  readonly notes: readonly string[];
}

/** Letters of the marks on a drawing: without I, O and Q, which are taken for digits. */
export function lettersFrom(start: number): (index: number) => string {
  const letters = 'ABCDEFGHJKLMNPRSTUVWXYZ';
  return (index) => {
    const i = start + index;
    const letter = letters.charAt(i % letters.length);
    return i < letters.length ? letter : `${letter}${letter}`;
  };
}
