/** The machine with what follows from its kind, and what its keys say together. */
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import type { Material } from './design.js';
import { nearestWord } from './nearest.js';
import type { DesignFile } from './schema.js';
import { laserOnly } from './sections/laser.js';
import { machineKinds, machineSection, routerOnly } from './sections/machine.js';
import { formatLength } from '../units/index.js';

export type FilledMachine = Omit<DesignFile['machine'], 'kind'> & { readonly kind: (typeof machineKinds)[number] };

/** A light gantry machine, from memory: mm/min, mm/s². */
const routerSpeeds = { travelSpeed: 6000, acceleration: 500 };

/** The machine of a design, of the kind of its process where it states none. */
export function filledMachine({ machine, process }: Pick<DesignFile, 'machine' | 'process'>): FilledMachine {
  const kind = machine.kind ?? (process.kind === 'laser' ? 'laser' : 'router');
  return { ...machine, kind };
}

/** What a router's files do without, what is filled in for them, and what stands in the process of each sheet. */
const notRouted = [
  'kind',
  'materials',
  'travelSpeed',
  'acceleration',
  'order',
  'colours',
  'toolPaths',
  'beam',
  'fullPower',
  'calibration',
] as const;

/** A router's machine without the keys that are for a laser alone. */
export type RouterKeys = Omit<FilledMachine, (typeof notRouted)[number]> & typeof routerSpeeds;

function without<T extends object, Key extends keyof T>(value: T, keys: readonly Key[]): Omit<T, Key> {
  const kept = Object.entries(value).filter(([name]) => keys.every((key) => key !== name));
  return Object.fromEntries(kept) as Omit<T, Key>;
}

/** The router of a design: as described, or, where the machine is a laser, one of which nothing is stated. */
export function routerOf({ machine }: { readonly machine: FilledMachine }): RouterKeys {
  const router: DesignFile['machine'] = machine.kind === 'router' ? machine : machineSection('mm').parse({});
  return {
    ...without(router, notRouted),
    travelSpeed: router.travelSpeed ?? routerSpeeds.travelSpeed,
    acceleration: router.acceleration ?? routerSpeeds.acceleration,
  };
}

/** The laser of a design: as described; null where the machine is none. */
export function laserOf({ machine }: { readonly machine: FilledMachine }): FilledMachine | null {
  return machine.kind === 'laser' ? machine : null;
}

/** Keys that are for the other kind of machine, and not at their defaults. */
function otherKind(machine: FilledMachine): Diagnostic[] {
  const { kind } = machine;
  const usual: Readonly<Record<string, unknown>> = machineSection('mm').parse({});
  const stated: Readonly<Record<string, unknown>> = machine;
  const [barred, other] = kind === 'laser' ? [routerOnly, 'router'] : [laserOnly, 'laser'];
  return barred
    .filter((key) => JSON.stringify(stated[key]) !== JSON.stringify(usual[key]))
    .map((key) =>
      diagnostic(
        'machine-kind',
        ['machine', key],
        `machine.${key} is for a ${other}, but the machine is a ${kind}`,
        `remove it, or write kind: ${other}`,
      ),
    );
}

/** Names of materials that the design does not have; a file that several designs name may have more of them. */
function unknownMaterials(names: readonly string[], known: readonly string[]): Diagnostic[] {
  return names
    .filter((name) => !known.includes(name))
    .map((name) => {
      const near = nearestWord(name, known);
      return diagnostic(
        'unknown-material',
        ['machine', 'materials', name],
        `machine.materials names the material "${name}", which is not in materials`,
        near === null ? `known: ${known.join(', ')}` : `did you mean ${near}?`,
      );
    });
}

/**
 * What is wrong with the machine's keys together.
 * @param own whether the machine has a file of its own
 */
export function checkMachine(
  machine: FilledMachine,
  file: DesignFile,
  materials: Readonly<Record<string, Material>>,
  own: boolean,
): Diagnostic[] {
  const { materials: described, kind, calibration } = machine;
  const names = Object.keys(described);
  const unnamed =
    kind === 'laser' && names.length > 0
      ? Object.values(materials).filter(
          ({ id, cut }) =>
            cut === 'laser' && described[id]?.kerf === undefined && calibration.materials[id] === undefined,
        )
      : [];
  return [
    ...otherKind(machine),
    ...(own ? [] : unknownMaterials(names, Object.keys(materials))),
    ...unnamed.map(({ id }) =>
      diagnostic(
        'machine-material',
        ['machine', 'materials'],
        `machine.materials states no kerf for ${id}: it is cut with the ${formatLength(file.process.kerf, file.units, 3)} of process.kerf`,
        `measure it and add ${id} to machine.materials`,
        'warning',
      ),
    ),
  ];
}
