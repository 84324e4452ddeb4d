/** A complete, validated design: every length in mm, every default filled in. */
import type { MaterialKind } from './sections/materials.js';
import type { ProcessKind } from './sections/process.js';
import type { DesignFile } from './schema.js';
import type { FilledMachine } from './machine.js';
import type { FilledStand } from './stand-sizes.js';
import type { FilledLoad, FilledVessel } from './vessel-sizes.js';

export interface Material {
  readonly id: string;
  readonly kind: MaterialKind;
  /** At the thinnest place that was measured: parts are made to fit by it. */
  readonly thickness: number;
  /** At the thickest: cuts go through it. */
  readonly thickest: number;
  readonly cut: ProcessKind;
  readonly description: string;
  readonly densityKgPerM3: number;
}

export type Filled<Section, Keys extends keyof Section> = Omit<Section, Keys> & {
  readonly [Key in Keys]-?: NonNullable<Section[Key]>;
};

export type StockItem = Filled<DesignFile['stock'][number], 'margin'> & {
  /** File-safe and unique: names the sheet files. */
  readonly id: string;
};

export interface Design extends Omit<
  DesignFile,
  | 'dish'
  | 'materials'
  | 'stock'
  | 'rib'
  | 'hub'
  | 'cleat'
  | 'board'
  | 'panel'
  | 'reflector'
  | 'vessel'
  | 'load'
  | 'machine'
  | 'stand'
  | 'template'
  | 'marking'
  | 'print'
> {
  readonly materials: Readonly<Record<string, Material>>;
  readonly stock: readonly StockItem[];
  readonly dish: Filled<DesignFile['dish'], 'baseHeight'>;
  /** `housing` is there where that is the joint. */
  readonly rib: Filled<DesignFile['rib'], 'joint' | 'fit' | 'toeRadius' | 'rimHeight' | 'pilotDiameter' | 'clampHole'>;
  readonly hub: Filled<
    DesignFile['hub'],
    'build' | 'radius' | 'material' | 'layers' | 'bolt' | 'boltDiameter' | 'dowels' | 'dowelDiameter'
  >;
  /** `start` stays open until the parts are known: it follows from what is in the way. */
  readonly cleat: Filled<
    DesignFile['cleat'],
    'material' | 'length' | 'width' | 'rows' | 'downScrews' | 'screw' | 'screwDiameter' | 'headDiameter' | 'ribScrews'
  >;
  readonly board: Filled<
    DesignFile['board'],
    | 'material'
    | 'size'
    | 'spliceWidth'
    | 'spliceBolt'
    | 'pilotDiameter'
    | 'centreHole'
    | 'mountingBolt'
    | 'mountingDiameter'
  >;
  /** `battenScrew` is there where battens are held by screws. */
  readonly panel: Filled<DesignFile['panel'], 'fixing' | 'battenMaterial' | 'battenWidth'>;
  readonly reflector: Filled<DesignFile['reflector'], 'hem'>;
  readonly vessel?: FilledVessel | undefined;
  readonly load?: FilledLoad | undefined;
  readonly machine: FilledMachine;
  /** Absent where none is made. */
  readonly stand?: FilledStand | undefined;
  readonly template: Filled<DesignFile['template'], 'material'>;
  readonly marking: Filled<DesignFile['marking'], 'step'>;
  readonly print: Filled<DesignFile['print'], 'paper'>;
  /** Paths of the keys that took their default. */
  readonly defaults: readonly string[];
}
