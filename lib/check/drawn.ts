/** A drawing as read from a file, whatever its format. Lengths in mm, y up. */
import { filled, messages, type MessageValues, type ReadingId } from './messages/index.js';
import type { Line } from './ring.js';

export interface ReadBackPath {
  readonly kind: 'path';
  readonly layer: string;
  readonly line: Line;
}

export interface ReadBackCircle {
  readonly kind: 'circle';
  readonly layer: string;
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
}

export type ReadBack = ReadBackPath | ReadBackCircle;

export interface ReadBackSheet {
  readonly width: number;
  readonly height: number;
  /** In the order of the file. */
  readonly entities: readonly ReadBack[];
  /** Colours by layer as the file's own key has them. */
  readonly key: ReadonlyMap<string, string>;
  /** Colours by layer as the lines have them. */
  readonly colours: ReadonlyMap<string, readonly string[]>;
}

/** Why a file is refused: what is wrong, and where in the file. */
export class Unreadable extends Error {
  override readonly name = 'Unreadable';
  readonly id: ReadingId;

  constructor(id: ReadingId, message: string) {
    super(message);
    this.id = id;
  }
}

/** The error for a message of the catalogue. */
export function unreadable<Id extends ReadingId>(id: Id, values: MessageValues<Id>): Unreadable {
  return new Unreadable(id, filled(messages[id].text, values));
}

/** `drill-4mm` names the operation and its diameter in mm, `pocket-4mm` that and its depth. */
const drillName = /^drill-(\d+(?:\.\d+)?)mm$/;
const pocketName = /^pocket-(\d+(?:\.\d+)?)mm$/;

export type LayerKind = 'outline' | 'opening' | 'pocket' | 'drill' | 'countersink' | 'scribe' | 'sheet-edge';

/** The operation that a layer stands for, or null for a layer that has no meaning. */
export function layerKind(layer: string): LayerKind | null {
  if (drillName.test(layer)) return 'drill';
  if (pocketName.test(layer)) return 'pocket';
  switch (layer) {
    case 'outline':
    case 'opening':
    case 'countersink':
    case 'scribe':
    case 'sheet-edge':
      return layer;
    default:
      return null;
  }
}

/** Diameter of a drill layer in mm; NaN for any other layer. */
export function drillDiameter(layer: string): number {
  return Number(drillName.exec(layer)?.[1]);
}

/** Depth of a pocket layer in mm; NaN for any other layer. */
export function pocketDepth(layer: string): number {
  return Number(pocketName.exec(layer)?.[1]);
}
