/** What can be wrong with a folder as a whole, and with its record. */
import type { FaultCode } from '../types.js';
import type { MessageSource } from './text.js';

export const folderMessages = {
  'record-missing': { code: 'unreadable', text: 'the record is missing' },
  'record-not-json': { code: 'unreadable', text: 'it is not JSON: {why}' },
  'record-value': { code: 'unreadable', text: 'a value is missing or wrong: {issues}' },
  'record-unlisted': {
    code: 'changed',
    text: 'it has no list of the files with their hashes, or no hash of its own',
  },
  'record-changed': { code: 'changed', text: 'it was changed after it was written' },
  'file-missing': { code: 'missing-file', text: 'the file is missing' },
  'file-size': { code: 'changed', text: 'it was changed after it was written: {bytes} bytes, not {written}' },
  'file-content': { code: 'changed', text: 'it was changed after it was written: same size, other content' },
  'file-stray': {
    code: 'stray-file',
    text: 'the record does not name this file: it belongs to another job, do not cut by it',
  },
  'more-alike': { code: 'more', text: '{count} more faults of the kind "{kind}"' },

  'part-twice': { code: 'quantity', text: 'part "{part}" stands twice' },
  'part-count': { code: 'quantity', text: '{count} of {quantity} pieces of "{part}" are on the sheets' },
  'copy-twice': { code: 'quantity', text: 'copy {copy} of "{part}" is placed {times} times' },
  'copy-beyond': { code: 'quantity', text: 'copy {copy} of "{part}" is placed, of {quantity}' },
  'sheet-file-twice': { code: 'quantity', text: 'two sheets have the same file' },
  'part-unknown': { code: 'quantity', text: '{sheet} places "{part}", which is not among the parts' },

  'design-value': { code: 'record', text: 'a value for the comparison with the design is missing or wrong: {issue}' },
  'design-process': { code: 'record', text: '{sheet} is cut by {recorded}, by its design by {byDesign}' },
  'sheet-machine': { code: 'record', text: '{of}: machine.{key} is not what its design has' },
  'design-unmade': { code: 'record', text: 'it cannot be made again from the design in it: {why}' },
  'part-invented': { code: 'record', text: 'part "{of}" does not follow from the design' },
  'part-lacking': { code: 'record', text: 'part "{of}" follows from the design and is not in the record' },
  'part-other': { code: 'record', text: 'part "{of}" is not as its design makes it: {key}' },
  'fasteners-other': { code: 'record', text: 'the fasteners are not those that follow from the design: {key}' },
  'limits-other': { code: 'record', text: '{of}: a limit of its tool paths is not as its design has it: {key}' },
  'warning-lacking': { code: 'record', text: 'a warning that follows from the design is left out: {warning}' },
  'offcut-of-nothing': { code: 'record', text: 'an offcut is said to be left of {sheet}, which is no sheet' },
  'offcut-beyond': { code: 'record', text: 'the offcut of {sheet} reaches beyond the sheet' },
} as const satisfies Readonly<Record<string, MessageSource<FaultCode>>>;

/** Values of the record that follow from the design in it; `{of}` is the part or sheet. */
export const comparisons = {
  'dish-radius': { code: 'record', text: 'the dish has a radius of {recorded}, by its design {byDesign}' },
  'dish-base': { code: 'record', text: 'the dish has a base height of {recorded}, by its design {byDesign}' },
  'dish-ribs': { code: 'record', text: 'the dish has a number of ribs of {recorded}, by its design {byDesign}' },
  'rib-thickness': { code: 'record', text: 'the ribs are as thick as {recorded}, by its design {byDesign}' },
  'focal-length': { code: 'record', text: 'the dish has a focal length of {recorded}, by its design {byDesign}' },
  'dish-depth': { code: 'record', text: 'the dish has a depth of {recorded}, by its design {byDesign}' },
  'part-thickness': { code: 'record', text: 'part "{of}" has a thickness of {recorded}, by its design {byDesign}' },
  'rib-count': { code: 'record', text: 'the number of ribs to be made is {recorded}, by its design {byDesign}' },
  'nest-seed': { code: 'record', text: 'the seed of the nest is {recorded}, by its design {byDesign}' },
  'tool-diameter': { code: 'record', text: 'the tool has a diameter of {recorded}, by its design {byDesign}' },
  kerf: { code: 'record', text: '{of}: the kerf is {recorded}, by its design {byDesign}' },
  'cut-width': { code: 'record', text: '{of}: the cut is {recorded} wide, by its design {byDesign}' },
  'cut-bore': { code: 'record', text: '{of}: bored holes come out {recorded} wider, by its design {byDesign}' },
  'axis-x': { code: 'record', text: '{of}: X makes {recorded}, by its design {byDesign}' },
  'axis-y': { code: 'record', text: '{of}: Y makes {recorded}, by its design {byDesign}' },
  'axis-lean': { code: 'record', text: '{of}: Y leans by {recorded}, by its design {byDesign}' },
  'sheet-thickness': { code: 'record', text: '{of}: the material is as thick as {recorded}, by its design {byDesign}' },
  'sheet-overcut': { code: 'record', text: '{of}: the overcut is {recorded}, by its design {byDesign}' },
  'sheet-mark-depth': { code: 'record', text: '{of}: the depth of marks is {recorded}, by its design {byDesign}' },
  'sheet-margin': { code: 'record', text: '{of}: the margin is {recorded}, by its design {byDesign}' },
  'roll-width': { code: 'record', text: '{of}: the roll has a width of {recorded}, by its design {byDesign}' },
  'sheet-width': { code: 'record', text: '{of}: the sheet has a width of {recorded}, by its design {byDesign}' },
  'sheet-height': { code: 'record', text: '{of}: the sheet has a height of {recorded}, by its design {byDesign}' },
} as const satisfies Readonly<Record<string, MessageSource<FaultCode>>>;
