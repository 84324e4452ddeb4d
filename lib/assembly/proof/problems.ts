/** The faults of an assembly as diagnostics, each kind once a joint and part. */
import {
  type Diagnostic,
  type DiagnosticCode,
  diagnostic,
  type KeyPath,
  type Severity,
} from '../../diagnostic/index.js';
import type { Design } from '../../design/index.js';
import type { Dish } from '../../dish/index.js';
import { formatLength } from '../../units/index.js';
import type { Assembly, JointKind } from '../types.js';
import type { AssemblyFault } from './fault.js';
import { battenFaults } from './battens.js';
import { codeDistances } from './code-distances.js';
import { codeWords } from './code-words.js';
import { fastenerFaults } from './holes.js';
import { markFaults } from './marks.js';
import { overlapFaults } from './overlap.js';
import { seamFaults } from './seams.js';
import { slotFaults } from './slots.js';

/** All faults of an assembly. */
export function assemblyFaults(design: Design, dish: Dish, assembly: Assembly): AssemblyFault[] {
  return [
    ...overlapFaults(design, dish, assembly),
    ...battenFaults(design, dish, assembly),
    ...slotFaults(design, assembly),
    ...seamFaults(design, assembly),
    ...fastenerFaults(assembly),
    ...markFaults(design, assembly),
  ];
}

const joints: Readonly<Record<JointKind, { readonly name: string; readonly key: KeyPath }>> = {
  'cleat-to-board': { name: 'screws down through the cleats', key: ['cleat', 'screw'] },
  'cleat-to-rib': { name: 'screws from the cleats into the ribs', key: ['cleat', 'screw'] },
  'hub-dowel': { name: 'dowels of the hub', key: ['hub', 'dowelDiameter'] },
  'hub-bolt': { name: 'bolt of the hub', key: ['hub', 'bolt'] },
  'board-to-stand': { name: 'bolts to the stand', key: ['board', 'mountingBolt'] },
  'splice-to-board': { name: 'screws of the splice plates', key: ['cleat', 'screw'] },
  'splice-bolt': { name: 'bolts of the splice plates', key: ['board', 'spliceBolt'] },
  'panel-over-joint': { name: 'screws of the panels over joints', key: ['panel', 'fixing'] },
  'panel-to-rib': { name: 'pins or staples of the panels', key: ['panel', 'fixing'] },
  'batten-to-rib': { name: 'screws or pins of the battens', key: ['panel', 'battenScrew'] },
  'stand-joint': { name: 'bolts of the stand', key: ['stand', 'material'] },
};

interface Words {
  readonly code: DiagnosticCode;
  readonly key: KeyPath;
  readonly message: string;
  readonly remedy: string;
  readonly severity: Severity;
}

/** Keys that move a part, by its kind: the start of its id. */
const keyOfPart: Readonly<Record<string, KeyPath>> = {
  rib: ['dish', 'ribs'],
  hub: ['hub', 'radius'],
  cleat: ['cleat', 'start'],
  board: ['board', 'size'],
  splice: ['board', 'spliceWidth'],
  panel: ['panel', 'gap'],
  batten: ['panel', 'battenWidth'],
  reflector: ['reflector', 'inset'],
  stand: ['stand', 'material'],
};

const partKey = (name: string): KeyPath => keyOfPart[/^[a-z]+/.exec(name)?.[0] ?? ''] ?? ['dish'];

type Show = (mm: number) => string;
type PartFaultKind = 'overlap' | 'gap' | 'mark' | 'play' | 'proud' | 'parts';
type OfParts = Extract<AssemblyFault, { readonly kind: PartFaultKind }>;
type OfFasteners = Exclude<AssemblyFault, OfParts>;

const report = 'please report this';
const measured = 'correct the measured thickness';

function partWords(fault: OfParts, show: Show): Words {
  if (fault.kind === 'mark')
    return {
      code: 'mark-misplaced',
      key: partKey(fault.part),
      message: `on ${fault.part} ${fault.what}`,
      remedy: report,
      severity: 'error',
    };
  if (fault.kind === 'proud' || fault.kind === 'parts') return slotWords(fault, show);
  const [one, other] = fault.between;
  const key = partKey(one);
  if (fault.kind === 'play')
    return {
      code: 'slot-play',
      key: ['rib', 'fit'],
      message: `${one} has ${show(fault.play)} of play in its slot of ${other}, not ${show(fault.wanted)}`,
      remedy: measured,
      severity: 'error',
    };
  return fault.kind === 'overlap'
    ? {
        code: 'parts-overlap',
        key,
        message: `${one} and ${other} run ${show(fault.depth)} into each other`,
        remedy: `give them more room, or ${measured}`,
        severity: 'error',
      }
    : {
        code: 'parts-apart',
        key,
        message: `${one} is ${show(fault.gap)} away from ${other}, which it should touch`,
        remedy: measured,
        severity: 'error',
      };
}

function slotWords(fault: Extract<AssemblyFault, { readonly kind: 'proud' | 'parts' }>, show: Show): Words {
  return fault.kind === 'proud'
    ? {
        code: 'part-proud',
        key: ['rib', 'joint'],
        message: `${fault.part} protrudes ${show(fault.by)} from ${fault.of}, which has to lie flat`,
        remedy: measured,
        severity: 'error',
      }
    : {
        code: 'parts-missing',
        key: ['rib', 'joint'],
        message: `there are ${fault.found} ${fault.what} where the design asks for ${fault.wanted}`,
        remedy: report,
        severity: 'error',
      };
}

/** Which code, how grave, what is wrong and how to fix it. */
type Phrase = readonly [DiagnosticCode, Severity, string, string];

function fastenerPhrase(fault: OfFasteners, name: string, show: Show): Phrase {
  switch (fault.kind) {
    case 'hole': {
      const where =
        fault.off === null
          ? `have no hole in ${fault.part}`
          : `are ${show(fault.off)} off their holes in ${fault.part}`;
      return ['hole-off-axis', 'error', `the ${name} ${where}`, report];
    }
    case 'hole-size':
      return [
        'hole-size',
        'warning',
        `a hole of ${show(fault.diameter)} in ${fault.part} does not suit the ${name} of ${show(fault.shank)}`,
        'do not state the diameter of the hole: it then follows from the size of the fastener',
      ];
    case 'length':
      return fault.length === null
        ? [
            'fastener-length',
            'warning',
            `no length that is sold suits the ${name}, which go through ${show(fault.wood)} of material`,
            'use another size, or thicker material',
          ]
        : [
            'fastener-length',
            'error',
            `${name} of ${show(fault.length)} come through ${show(fault.wood)} of material`,
            'use shorter ones, or thicker material',
          ];
    case 'bite':
      return [
        'fastener-length',
        'warning',
        `only ${show(fault.bite)} of the thread of the ${name} holds`,
        `use a size sold in a length that gives ${show(fault.needed)} or more, or thicker material`,
      ];
    case 'edge':
      return [
        'edge-distance',
        fault.wood < fault.needed / 1.5 - 1e-6 ? 'error' : 'warning',
        `the ${name} have ${show(fault.wood)} of wood beside them in ${fault.part}, and may split it`,
        `use a smaller size, or leave ${show(fault.needed)}`,
      ];
    case 'reach':
      return [
        'driver-reach',
        'warning',
        `a driver on the ${name} has only ${show(fault.clearance)} to the next rib`,
        `leave ${show(fault.needed)} or more: wider cleats, or a cleat.start further out`,
      ];
    case 'count':
      return [
        'fastener-count',
        'error',
        `there are ${fault.found} ${name} where the design asks for ${fault.wanted}`,
        report,
      ];
  }
}

const ofParts = (fault: AssemblyFault): fault is OfParts => !('joint' in fault);

function words(fault: AssemblyFault, show: Show): Words {
  if (ofParts(fault)) return partWords(fault, show);
  const { name, key } = joints[fault.joint];
  const [code, severity, message, remedy] = fastenerPhrase(fault, name, show);
  return { code, key: fault.kind === 'reach' ? ['cleat', 'width'] : key, message, remedy, severity };
}

/** How far a joint stays below the timber code. */
export interface BelowCode {
  /** mm */
  readonly distance: number;
  readonly what: 'edge' | 'spacing';
  /** Which, by how much, and why it does. */
  readonly words: string;
}

/** Distances of screws, pins and staples below those of the timber code, the furthest below first. */
export function belowCode(assembly: Assembly): BelowCode[] {
  return codeDistances(assembly)
    .filter(({ shanks, asked }) => shanks < asked - 1e-6)
    .sort((a, b) => a.shanks - a.asked - (b.shanks - b.asked))
    .map((one) => ({ distance: one.distance, what: one.what, words: codeWords(joints[one.joint].name, one) }));
}

/** What a builder has to know of the assembly; a fault that copies of a part have in common is reported once. */
export function assemblyProblems(design: Design, dish: Dish, assembly: Assembly): Diagnostic[] {
  const show = (mm: number) => formatLength(Math.round(100 * mm) / 100, design.units, design.units === 'mm' ? 2 : 4);
  const found = new Map<string, Diagnostic>();
  for (const fault of assemblyFaults(design, dish, assembly)) {
    const { code, key, message, remedy, severity } = words(fault, show);
    const alike = `${code} ${message.replaceAll(/(?<=[a-z]) \d+/g, '')}`;
    if (!found.has(alike)) found.set(alike, diagnostic(code, key, message, remedy, severity));
  }
  return [...found.values()];
}
