/** Fills in what follows from other keys, and checks what no key can be checked for by itself. */
import { clearRadius, type DishShape, edgeOffsetAt } from '../dish/index.js';
import type { Design, Material, StockItem } from './design.js';
import { shapeOf, thicknessIn } from './dish-shape.js';
import { nearest } from './nearest.js';
import { pathText, type Problem } from './problem.js';
import type { DesignFile } from './schema.js';
import type { MaterialKind } from './sections/materials.js';
import { formatLength } from '../units/index.js';

/** kg/m³, from memory of makers' sheets; weights only. */
const density: Readonly<Record<MaterialKind, number>> = {
  plywood: 680,
  mdf: 740,
  hardboard: 950,
  card: 800,
  aluminium: 2700,
  film: 1390,
  other: 700,
};

// the same design in inches and in mm must round to the same whole millimetre, whatever the last bit says
const roundingSlack = 1e-6;

/** Whether a material is cut by hand unless the design says otherwise: a mirror throws a laser's beam back, a router tears film. */
export function handOnly(kind: MaterialKind): boolean {
  return kind === 'aluminium' || kind === 'film';
}

type Report = (
  code: string,
  path: readonly (string | number)[],
  message: string,
  severity?: Problem['severity'],
) => void;

/** Paths of the leaves of `full` that the file did not state. */
function defaulted(full: unknown, stated: unknown, path: readonly (string | number)[] = []): string[] {
  if (typeof full !== 'object' || full === null || Array.isArray(full))
    return stated === undefined ? [pathText(path)] : [];
  const given = typeof stated === 'object' && stated !== null ? (stated as Record<string, unknown>) : {};
  return Object.entries(full).flatMap(([key, value]) => defaulted(value, given[key], [...path, key]));
}

function materialsOf(file: DesignFile): Record<string, Material> {
  const filled = Object.entries(file.materials).map(([id, material]): [string, Material] => [
    id,
    {
      id,
      kind: material.kind,
      thickness: material.thickness,
      cut: material.cut ?? (handOnly(material.kind) ? 'hand' : file.process.kind),
      description: material.description ?? `${material.kind} ${formatLength(material.thickness, 'mm')}`,
      densityKgPerM3: material.densityKgPerM3 ?? density[material.kind],
    },
  ]);
  return Object.fromEntries(filled);
}

function stockOf(file: DesignFile, report: Report): StockItem[] {
  const seen = new Map<string, number>();
  return file.stock.map((item, index) => {
    const shapes = [item.size, item.outline, item.rollWidth].filter((shape) => shape !== undefined).length;
    if (shapes !== 1)
      report(
        'stock-shape',
        ['stock', index],
        `stock[${index + 1}] must have one of size, outline or rollWidth, and has ${shapes}`,
      );
    const kind = item.outline ? 'offcut' : item.rollWidth !== undefined ? 'roll' : 'sheet';
    const base = `${item.material}-${kind}`;
    const number = (seen.get(base) ?? 0) + 1;
    seen.set(base, number);
    const id = number === 1 ? base : `${base}${number}`;
    const margin = item.margin ?? file.process.margin;
    if (item.size && 2 * margin >= Math.min(item.size.width, item.size.height))
      report(
        'margin',
        ['stock', index, 'margin'],
        `stock[${index + 1}]: a margin of ${margin} mm leaves nothing of the sheet`,
      );
    return { ...item, id, margin };
  });
}

function checkMaterialNames(file: DesignFile, report: Report): void {
  const known = Object.keys(file.materials);
  if (known.length === 0)
    report('no-materials', ['materials'], 'materials is empty; name at least the rib and panel materials');
  const used: [readonly (string | number)[], string | undefined][] = [
    [['rib', 'material'], file.rib.material],
    [['hub', 'material'], file.hub.material],
    [['cleat', 'material'], file.cleat.material],
    [['board', 'material'], file.board.material],
    [['panel', 'material'], file.panel.material],
    [['reflector', 'material'], file.reflector.material],
    [['template', 'material'], file.template.material],
    ...file.stock.map((item, index): [(string | number)[], string] => [['stock', index, 'material'], item.material]),
    ...file.extra.map((item, index): [(string | number)[], string] => [['extra', index, 'material'], item.material]),
  ];
  for (const [path, name] of used) {
    if (name === undefined || Object.hasOwn(file.materials, name)) continue;
    const near = nearest(name, known);
    const advice = near === null ? `known: ${known.join(', ') || 'none'}` : `did you mean ${near}?`;
    report(
      'unknown-material',
      path,
      `${pathText(path)} names the material "${name}", which is not in materials; ${advice}`,
    );
  }
}

type Materials = Readonly<Record<string, Material>>;

/** The shape with the hub's radius as stated, or the least that leaves the ribs clear of each other. */
function shapeWithHub(file: DesignFile, materials: Materials, report: Report): DishShape {
  const { ribs, aperture } = file.dish;
  const ribThickness = thicknessIn(materials, file.rib.material);
  const clear = clearRadius(ribs, ribThickness);
  const hubRadius = file.hub.radius ?? Math.ceil(clear + 5 - roundingSlack);
  // a round hub gives no flat to seat on, so the rib's corners decide; both clear at the same radius
  if (hubRadius < clear)
    report(
      'set-back',
      ['hub', 'radius'],
      `hub.radius of ${hubRadius} mm is too small: ${ribs} ribs of this thickness clear each other from ${clear.toFixed(2)} mm`,
    );
  if (hubRadius >= 0.4 * aperture)
    report(
      'set-back',
      ['dish', 'ribs'],
      `${ribs} ribs of ${ribThickness} mm cannot start before ${hubRadius} mm, which leaves too little of the ${aperture / 2} mm radius; use fewer or thinner ribs`,
    );
  return shapeOf({ ...file, materials, hub: { radius: hubRadius } });
}

/** Whether the profile can be built, and the facing lies on the ribs. */
function checkFacing(file: DesignFile, shape: DishShape, report: Report): void {
  const { apertureRadius, facingThickness, ribThickness, baseHeight, profile } = shape;
  if (file.dish.focalLength < apertureRadius / 2)
    report(
      'focal-length',
      ['dish', 'focalLength'],
      `dish.focalLength of ${file.dish.focalLength} mm makes a rim angle over 90°; use at least ${apertureRadius / 2} mm for this aperture`,
    );
  const edgeOffset = edgeOffsetAt(shape, profile.slopeAngle(apertureRadius));
  if (edgeOffset >= ribThickness / 2 && ribThickness > 0)
    report(
      'facing',
      ['panel', 'gap'],
      `panels would not reach the ribs: their edges lie ${edgeOffset.toFixed(2)} mm off the rib's centre plane, and the rib is ${ribThickness.toFixed(2)} mm thick; use a smaller panel.gap or a thinner facing`,
    );
  if (baseHeight - facingThickness <= 5)
    report(
      'facing',
      ['dish', 'baseHeight'],
      `dish.baseHeight of ${baseHeight} mm leaves nothing of the ribs under a facing of ${facingThickness} mm at the vertex; use at least ${Math.ceil(facingThickness + 6)} mm`,
    );
}

/** The board's size, and the rib's toe cut over it. */
function boardAndToe(
  file: DesignFile,
  shape: DishShape,
  report: Report,
): { readonly boardSize: number; readonly toeRadius: number; readonly rimHeight: number } {
  const { apertureRadius, innerRadius, baseHeight, facingThickness, profile } = shape;
  const boardSize = file.board.size ?? 2 * Math.round(0.4 * file.dish.aperture - roundingSlack);
  const boardRadius = boardSize / 2;
  if (boardRadius <= innerRadius + 10)
    report(
      'board',
      ['board', 'size'],
      `board.size of ${boardSize} mm is too small for the hub of ${innerRadius} mm radius`,
    );
  const toeRadius = file.rib.toeRadius ?? Math.min(apertureRadius, boardRadius - 10);
  if (toeRadius > apertureRadius || toeRadius <= innerRadius)
    report(
      'toe',
      ['rib', 'toeRadius'],
      `rib.toeRadius of ${toeRadius} mm must lie between the hub (${innerRadius} mm) and the rim (${apertureRadius} mm)`,
    );
  const rimEnd = baseHeight + profile.height(apertureRadius);
  const rimHeight =
    file.rib.rimHeight ?? Math.min(rimEnd - facingThickness, Math.max(40, Math.round(0.2 * rimEnd - roundingSlack)));
  if (rimHeight > rimEnd || rimHeight <= 0)
    report(
      'toe',
      ['rib', 'rimHeight'],
      `rib.rimHeight of ${rimHeight} mm must lie between 0 and the rib's height at the rim, ${rimEnd.toFixed(1)} mm`,
    );
  return { boardSize, toeRadius, rimHeight };
}

/** Layers of the hub: as many as stand below the ribs' inner ends unless the design says. */
function hubLayers(file: DesignFile, shape: DishShape, hubThickness: number, report: Report): number {
  const innerHeight = shape.baseHeight + shape.profile.height(shape.innerRadius) - shape.facingThickness;
  const fitting = hubThickness > 0 ? Math.floor(innerHeight / hubThickness + roundingSlack) : 1;
  const layers = file.hub.layers ?? Math.max(1, fitting);
  if (hubThickness > 0 && layers * hubThickness > innerHeight + roundingSlack)
    report(
      'hub',
      file.hub.layers === undefined ? ['dish', 'baseHeight'] : ['hub', 'layers'],
      `${layers} hub layer(s) of ${hubThickness} mm stand higher than the inner rib ends (${innerHeight.toFixed(1)} mm); use fewer layers or a larger dish.baseHeight`,
    );
  return layers;
}

function checkReceiver(file: DesignFile, shape: DishShape, report: Report): void {
  if (file.load && file.load.target <= file.load.start)
    report(
      'load',
      ['load', 'target'],
      `load.target of ${file.load.target} °C is not above load.start (${file.load.start} °C)`,
    );
  if (file.receiver && file.receiver.diameter > file.dish.aperture)
    report(
      'receiver',
      ['receiver', 'diameter'],
      `receiver.diameter of ${file.receiver.diameter} mm is larger than the aperture`,
    );
  if (file.receiver && shape.profile.focusHeight + file.receiver.offset <= 0)
    report(
      'receiver',
      ['receiver', 'offset'],
      `receiver.offset of ${file.receiver.offset} mm puts the receiver below the vertex`,
    );
}

/**
 * Completes a design.
 * @param file the parsed file, lengths in mm
 * @param raw what the file stated, to know which defaults were taken
 * @returns the design and every problem found; with an error among them the design must not be used
 */
export function complete(file: DesignFile, raw: unknown): { readonly design: Design; readonly problems: Problem[] } {
  const problems: Problem[] = [];
  const report: Report = (code, path, message, severity = 'error') =>
    problems.push({ code, severity, message, place: { path } });
  checkMaterialNames(file, report);
  const materials = materialsOf(file);
  const shape = shapeWithHub(file, materials, report);
  checkFacing(file, shape, report);
  const { boardSize, toeRadius, rimHeight } = boardAndToe(file, shape, report);
  const hubMaterial = file.hub.material ?? file.rib.material;
  const layers = hubLayers(file, shape, thicknessIn(materials, hubMaterial), report);
  checkReceiver(file, shape, report);
  const stock = stockOf(file, report);
  const boardMaterial = file.board.material ?? file.rib.material;
  const filled: Omit<Design, 'defaults'> = {
    ...file,
    materials,
    stock,
    rib: { ...file.rib, toeRadius, rimHeight },
    hub: { ...file.hub, radius: shape.innerRadius, material: hubMaterial, layers },
    cleat: { ...file.cleat, material: file.cleat.material ?? boardMaterial },
    board: {
      ...file.board,
      material: boardMaterial,
      size: boardSize,
      spliceWidth: file.board.spliceWidth ?? Math.min(150, Math.max(50, Math.round(boardSize / 8 - roundingSlack))),
    },
    template: { ...file.template, material: file.template.material ?? file.rib.material },
    marking: { ...file.marking, step: file.marking.step ?? (file.units === 'in' || file.units === 'ft' ? 25.4 : 25) },
  };
  return { design: { ...filled, defaults: defaulted(filled, raw) }, problems };
}
