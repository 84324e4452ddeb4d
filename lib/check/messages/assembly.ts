/** What can be wrong with the dish that is put together from the files. */
import type { FaultCode } from '../types.js';
import type { MessageSource } from './text.js';

export const assemblyMessages = {
  'assembly-value': { code: 'assembly', text: 'a value for putting the dish together is missing or wrong: {issue}' },
  'hub-reach': {
    code: 'assembly',
    text: 'the hub reaches {reach} towards rib {rib}, whose inner end is made to start at {start}',
  },
  'hub-slot': { code: 'assembly', text: 'the hub’s slot for rib {rib} is {width} wide, the rib {thickness} thick' },
  'ribs-meet': { code: 'assembly', text: 'neighbouring ribs run {depth} into each other at their inner ends' },
  'bolt-hole': { code: 'assembly', text: 'the hub has no hole of {diameter} on its axis for its bolt' },
  'dowel-count': { code: 'assembly', text: 'the hub has {count} holes for dowels, but {wanted} in the design' },
  'dowel-board': {
    code: 'assembly',
    text: 'a dowel of {diameter} through the hub finds no hole of its size in the board; the nearest is {off} off',
  },
  'tab-long': { code: 'assembly', text: 'the ribs’ tabs are {depth} long and come out of the board of {board}' },
  'tab-slot-missing': { code: 'assembly', text: 'a tab of rib {rib} finds no slot in the board' },
  'groove-shallow': {
    code: 'assembly',
    text: 'the ribs’ bases go {depth} into the board, but its grooves are {groove} deep',
  },
  'tab-slot': {
    code: 'assembly',
    text: 'a slot for rib {rib} in the board is {tight} too narrow or short for its tab',
  },
  'cleat-line': { code: 'assembly', text: 'the ribs have no line to show where their cleats go' },
  'cleat-screws': {
    code: 'assembly',
    text: 'a cleat has {down} holes down and {sideways} sideways, but {wanted} in all in the design',
  },
  'board-pilot': {
    code: 'assembly',
    text: 'a screw down through the cleat on the scribed face of rib {rib} finds no pilot hole in the board; the nearest is {off} off',
  },
  'rib-pilot': {
    code: 'assembly',
    text: 'a screw from a cleat on the scribed face finds no pilot hole in its rib; the nearest is {off} off',
  },
  'cleat-overlap': { code: 'assembly', text: 'the cleat of rib 1 and {other} run {depth} into each other' },
  'rib-curve': {
    code: 'assembly',
    text: 'the ribs’ top edge is {off} off its design curve, {radius} from the axis',
  },
  'panel-length': { code: 'assembly', text: 'the panels are {length} long, but {wanted} in the design' },
  'panel-wide': {
    code: 'assembly',
    text: 'the panels are {off} too wide on a side, {at} from their inner end, and run into their neighbours',
  },
  'panel-narrow': { code: 'assembly', text: 'the panels are {off} too narrow on a side, {at} from their inner end' },
  'mirror-length': { code: 'assembly', text: 'the mirror covers {length} of a panel, but {wanted} in the design' },
  'mirror-hem': { code: 'assembly', text: 'the hem of the mirror reaches {off} over the ribs on which its panel lies' },
  'mirror-wide': { code: 'assembly', text: 'the mirror is {off} too wide on a side, {at} from the panel’s inner end' },
  'mirror-narrow': {
    code: 'assembly',
    text: 'the mirror is {off} too narrow on a side, {at} from the panel’s inner end',
  },
  'batten-count': { code: 'assembly', text: 'there are {count} battens for {wanted} ribs' },
  'batten-width': { code: 'assembly', text: 'the battens are {width} wide, but {wanted} in the design' },
  'batten-length': { code: 'assembly', text: 'the battens are {length} long, but {wanted} in the design' },
  'batten-hole': { code: 'assembly', text: 'a hole of the battens is {off} off their middle, over a panel' },
  'batten-gap': {
    code: 'assembly',
    text: 'the battens’ screws or pins of {diameter} do not fit through the gap of {gap} between two panels',
  },
  'splice-nut': {
    code: 'assembly',
    text: 'a bolt through a splice plate finds no hole in its segment; the nearest is {off} off',
  },
  'splice-pilot': {
    code: 'assembly',
    text: 'a screw through a splice plate finds no pilot hole in its segment; the nearest is {off} off',
  },
  'board-seam': {
    code: 'assembly',
    text: 'two segments of the board are {gap} apart, or run into each other, at their joint',
  },
  'splice-screw': { code: 'assembly', text: 'a screw through a splice plate runs into a hole or slot of its segment' },
  'fastener-number': { code: 'assembly', text: '{count} of {joint} are listed, but the parts need {wanted}' },
  'screw-long': { code: 'assembly', text: 'screws of {joint} are {length} long and come out of {wood} of wood' },
} as const satisfies Readonly<Record<string, MessageSource<FaultCode>>>;
