/** Fills in what follows from other keys. */
import { type Diagnostic, pathText } from '../diagnostic/index.js';
import { checkSizes } from './check-sizes.js';
import type { Design, Material, StockItem } from './design.js';
import { checkJoint } from './check-joint.js';
import { checkNames } from './check-names.js';
import { checkStock } from './check-stock.js';
import { thicknessIn } from './dish-shape.js';
import type { CleatSpace, FoundCleat } from './cleat-size.js';
import { housingSpan, minTabLength, tabLength, tabSpan } from '../dish/index.js';
import { holdings, type Joinery, joineryOf } from './joinery.js';
import { checkMachine, filledMachine } from './machine.js';
import { hardwareSizes, usualBattenScrew, usualCleat, usualFixing } from './hardware-sizes.js';
import type { DesignFile } from './schema.js';
import type { MaterialKind } from './sections/materials.js';
import { formatLength, inInches } from '../units/index.js';
import { filledStand, hungVessel } from './stand-sizes.js';
import { checkFilling, filledLoad, filledVessel } from './vessel-sizes.js';
import { type Sizes, workedOut } from './worked-out.js';

/** kg/m³, from memory of makers' sheets; weights only. */
const density: Readonly<Record<MaterialKind, number>> = {
  plywood: 680,
  osb: 620,
  mdf: 740,
  hardboard: 950,
  card: 800,
  acrylic: 1190,
  aluminium: 2700,
  foil: 2700,
  film: 1390,
  other: 700,
};

/** Whether a material is cut by hand unless the design says otherwise: a mirror throws a laser's beam back, a router tears film. */
export function handOnly(kind: MaterialKind): boolean {
  return kind === 'aluminium' || kind === 'foil' || kind === 'film';
}

/** Paths of the leaves of `full` that the file did not state. */
function defaulted(full: unknown, stated: unknown, path: readonly (string | number)[] = []): string[] {
  if (full === undefined) return [];
  if (typeof full !== 'object' || full === null || Array.isArray(full))
    return stated === undefined ? [pathText(path)] : [];
  const given = typeof stated === 'object' && stated !== null ? (stated as Record<string, unknown>) : {};
  return Object.entries(full).flatMap(([key, value]) => defaulted(value, given[key], [...path, key]));
}

/** Width turned over at the rim, mm: the edge of sheet metal cuts (common practice, no source). */
const metalHem = 10;

/** A hem where the mirror is sheet metal that leaves a bare edge. */
function usualHem({ reflector }: DesignFile, materials: Readonly<Record<string, Material>>): number {
  const mirror = reflector.material === undefined ? undefined : materials[reflector.material];
  return mirror?.kind === 'aluminium' && mirror.thickness >= 0.1 && reflector.inset === 0 ? metalHem : 0;
}

function materialsOf(file: DesignFile): Record<string, Material> {
  const unit = inInches(file.units) ? file.units : 'mm';
  const filled = Object.entries(file.materials).map(([id, material]): [string, Material] => [
    id,
    {
      id,
      kind: material.kind,
      thickness: Math.min(...material.thickness),
      thickest: Math.max(...material.thickness),
      cut: material.cut ?? (handOnly(material.kind) ? 'hand' : file.process.kind),
      description: material.description ?? `${material.kind} ${formatLength(Math.min(...material.thickness), unit)}`,
      densityKgPerM3: material.densityKgPerM3 ?? density[material.kind],
    },
  ]);
  return Object.fromEntries(filled);
}

/** Stock with its margins, each item under a name of its own. */
function stockOf(file: DesignFile): StockItem[] {
  const seen = new Map<string, number>();
  return file.stock.map((item) => {
    const kind = item.outline ? 'offcut' : item.rollWidth !== undefined ? 'roll' : 'sheet';
    const base = `${item.material}-${kind}`;
    const number = (seen.get(base) ?? 0) + 1;
    seen.set(base, number);
    const id = number === 1 ? base : `${base}${number}`;
    return { ...item, id, margin: item.margin ?? file.process.margin };
  });
}

/** Those of the machine go before those of the design. */
function coloursOf({ colours, machine }: DesignFile): DesignFile['colours'] {
  const own = Object.entries(machine.colours).filter(([, colour]) => colour !== undefined);
  return { ...colours, ...Object.fromEntries(own) };
}

/** Board sizes to try, as shares of the aperture: where ribs stand close, cleats find room only further out. */
const boardShares = [0.8, 0.9, 1] as const;

/** A way to build it, with the cleats in their space. */
interface Tried {
  readonly sizes: Sizes;
  readonly space: CleatSpace;
  readonly cleat: FoundCleat;
}

/** A default that is round in the file's own units. */
const bySystem = <Value>({ units }: DesignFile, metric: Value, inch: Value): Value => (inInches(units) ? inch : metric);

/** Whether the joint has space: tabs or a groove along the ribs' base, or cleats between the ribs. */
function hasSpace({ sizes, space, cleat }: Tried): boolean {
  const { joint, fit, housing } = sizes.joinery;
  const source = { ...space, fit, halfAngle: Math.PI / space.ribs };
  if (joint === 'housing') {
    const { from, to } = housingSpan({ ...source, slotDepth: housing });
    return to - from >= minTabLength(space.ribThickness);
  }
  if (joint !== 'tab-slot') return cleat.start !== null;
  return tabLength(tabSpan({ ...source, slotDepth: space.boardThickness })) >= minTabLength(space.ribThickness);
}

/** The first way to build it in which the joint has space; the usual one where none has. */
function firstWithSpace(
  file: DesignFile,
  materials: Readonly<Record<string, Material>>,
  stock: readonly StockItem[],
  { boardMaterial, cleatMaterial }: { readonly boardMaterial: string; readonly cleatMaterial: string },
): Tried {
  const tried = (share: number, joinery: Joinery): Tried => {
    const sizes = workedOut(file, materials, share, joinery);
    const comesApart = file.board.splice === 'bolted';
    const space: CleatSpace = {
      aperture: file.dish.aperture,
      ribs: file.dish.ribs,
      ribThickness: sizes.shape.ribThickness,
      cleatThickness: thicknessIn(materials, cleatMaterial),
      boardThickness: thicknessIn(materials, boardMaterial),
      innerRadius: sizes.shape.innerRadius,
      hubReach: sizes.hubReach,
      toeRadius: sizes.toeRadius,
      boardSize: sizes.boardSize,
      roundBoard: file.board.shape === 'round',
      joint: joinery.joint,
      comesApart,
      segmented:
        comesApart ||
        !stock.some(
          ({ material, size, margin }) =>
            material === boardMaterial && size && Math.min(size.width, size.height) - 2 * margin >= sizes.boardSize,
        ),
    };
    return { sizes, space, cleat: usualCleat(file, space, sizes.cleatRows) };
  };
  const shares = file.board.size === undefined ? boardShares : [boardShares[0]];
  const choices = holdings(file, materials);
  for (const holding of choices)
    for (const share of shares) {
      const one = tried(share, joineryOf(file, materials, holding));
      if (hasSpace(one)) return one;
    }
  return tried(boardShares[0], joineryOf(file, materials, choices[0]));
}

/** How the panels are held. @param material that of the panels; undefined where the file names none that is there */
function filledPanel(file: DesignFile, { shape }: Sizes, material: Material | undefined): Design['panel'] {
  const { panel } = file;
  return {
    ...panel,
    fixing: panel.fixing ?? (material ? usualFixing(file, material, shape) : 'glue'),
    battenMaterial: panel.battenMaterial ?? panel.material,
    battenWidth: panel.battenWidth ?? bySystem(file, 20, 19.05),
    battenScrew: usualBattenScrew(file, shape.ribThickness),
  };
}

/**
 * Completes a design.
 * @param file the parsed file, lengths in mm
 * @param raw what the file stated, to know which defaults were taken
 * @param machineFile what the file of the machine stated, where it has one of its own
 * @returns the design and every problem found; with an error among them the design must not be used
 */
export function complete(
  file: DesignFile,
  raw: object,
  machineFile?: Readonly<Record<string, unknown>>,
): { readonly design: Design; readonly problems: readonly Diagnostic[] } {
  const materials = materialsOf(file);
  const stock = stockOf(file);
  const boardMaterial = file.board.material ?? file.rib.material;
  const cleatMaterial = file.cleat.material ?? boardMaterial;
  const { sizes, space, cleat } = firstWithSpace(file, materials, stock, { boardMaterial, cleatMaterial });
  const hardware = hardwareSizes(file, space, cleat);
  const load = file.load && filledLoad(file.load);
  const vessel = file.vessel && filledVessel(file.vessel, load);
  const stand = filledStand(file, { rib: file.rib.material, board: boardMaterial }, vessel);
  const machine = filledMachine(file);
  const stated = machineFile === undefined ? raw : { ...raw, machine: machineFile };
  const filled: Omit<Design, 'defaults'> = {
    ...file,
    machine,
    colours: coloursOf(file),
    materials,
    stock,
    dish: { ...file.dish, baseHeight: sizes.shape.baseHeight },
    rib: {
      ...file.rib,
      joint: hardware.joint,
      fit: sizes.joinery.fit,
      housing: hardware.joint === 'housing' ? sizes.joinery.housing : undefined,
      toeRadius: sizes.toeRadius,
      rimHeight: sizes.rimHeight,
      clampHole: file.rib.clampHole ?? bySystem(file, 30, 31.75),
      pilotDiameter: hardware.ribPilot,
    },
    hub: {
      ...file.hub,
      build: sizes.joinery.hubBuild,
      radius: sizes.shape.innerRadius,
      material: sizes.hubMaterial,
      layers: sizes.hubLayers,
      ...hardware.hub,
    },
    cleat: { ...file.cleat, material: cleatMaterial, rows: sizes.cleatRows, ...hardware.cleat },
    board: {
      ...file.board,
      material: boardMaterial,
      size: sizes.boardSize,
      spliceWidth: sizes.spliceWidth,
      spliceBolt: file.board.spliceBolt ?? bySystem(file, 'M6', '1/4 in'),
      ...hardware.board,
    },
    panel: filledPanel(file, sizes, materials[file.panel.material]),
    reflector: { ...file.reflector, hem: file.reflector.hem ?? usualHem(file, materials) },
    vessel: hungVessel(file, vessel, load, stand),
    load,
    stand,
    template: {
      ...file.template,
      material: file.template.material ?? file.rib.material,
      bed: file.template.bed ?? (machine.kind === file.template.process ? machine.area : undefined),
    },
    print: { ...file.print, paper: file.print.paper ?? bySystem(file, 'a4', 'letter') },
    marking: { ...file.marking, step: file.marking.step ?? bySystem(file, 25, 25.4) },
  };
  const problems = [
    ...checkNames(file),
    ...checkMachine(machine, file, materials, machineFile !== undefined),
    ...checkStock(file, stock),
    ...checkSizes(file, sizes),
    ...checkJoint(file, hardware, sizes.joinery, materials[boardMaterial]),
    ...checkFilling(file),
  ];
  return { design: { ...filled, defaults: defaulted(filled, stated) }, problems };
}
