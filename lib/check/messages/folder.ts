/** What can be wrong with a folder as a whole, and with its record. */
import type { FaultCode } from '../types.js';
import type { MessageSource } from './text.js';

export const folderMessages = {
  'record-missing': { code: 'unreadable', text: 'the record is missing' },
  'record-not-json': { code: 'unreadable', text: 'it is not JSON: {why}' },
  'record-value': { code: 'unreadable', text: 'a value is missing or wrong: {issues}' },
  'record-unlisted': {
    code: 'changed',
    text: 'it has no list of files and hashes, or no hash of its own',
  },
  'record-changed': { code: 'changed', text: 'it has been changed since it was written' },
  'file-missing': { code: 'missing-file', text: 'the file is missing' },
  'file-size': { code: 'changed', text: 'it has been changed since it was written: {bytes} bytes, not {written}' },
  'file-content': { code: 'changed', text: 'it has been changed since it was written: same size, different content' },
  'file-stray': {
    code: 'stray-file',
    text: 'the record does not name this file: it belongs to another job; do not cut from it',
  },
  'more-alike': { code: 'more', text: '{count} more faults of the kind "{kind}"' },

  'part-twice': { code: 'quantity', text: 'part "{part}" occurs twice' },
  'part-count': { code: 'quantity', text: '{count} of {quantity} pieces of "{part}" are on the sheets' },
  'copy-twice': { code: 'quantity', text: 'copy {copy} of "{part}" is placed {times} times' },
  'copy-beyond': { code: 'quantity', text: 'copy {copy} of "{part}" is placed, of {quantity}' },
  'sheet-file-twice': { code: 'quantity', text: 'two sheets have the same file' },
  'part-unknown': { code: 'quantity', text: '{sheet} places "{part}", which is not one of the parts' },

  'design-value': { code: 'record', text: 'a value for the comparison with the design is missing or wrong: {issue}' },
  'design-process': { code: 'record', text: '{sheet} is cut by {recorded}, but by {byDesign} in the design' },
  'sheet-machine': { code: 'record', text: '{of}: machine.{key} differs from the design' },
  'design-unmade': { code: 'record', text: 'the job cannot be made again from the design in the record: {why}' },
  'part-invented': { code: 'record', text: 'part "{of}" does not follow from the design' },
  'part-lacking': { code: 'record', text: 'part "{of}" follows from the design but is not in the record' },
  'part-other': { code: 'record', text: 'part "{of}" differs from what its design makes: {key}' },
  'fasteners-other': { code: 'record', text: 'the fasteners are not those that follow from the design: {key}' },
  'limits-other': { code: 'record', text: '{of}: a limit of its tool paths differs from the design: {key}' },
  'warning-lacking': { code: 'record', text: 'a warning that follows from the design is left out: {warning}' },
  'offcut-of-nothing': { code: 'record', text: 'an offcut is listed for {sheet}, which is not a sheet' },
  'offcut-beyond': { code: 'record', text: 'the offcut of {sheet} reaches beyond the sheet' },
} as const satisfies Readonly<Record<string, MessageSource<FaultCode>>>;

/** Values of the record that follow from the design in it; `{of}` is the part or sheet. */
export const comparisons = {
  'dish-radius': { code: 'record', text: 'the dish has a radius of {recorded}, but {byDesign} in the design' },
  'dish-base': { code: 'record', text: 'the dish has a base height of {recorded}, but {byDesign} in the design' },
  'dish-ribs': { code: 'record', text: 'the number of ribs of the dish is {recorded}, but {byDesign} in the design' },
  'rib-thickness': { code: 'record', text: 'the ribs have a thickness of {recorded}, but {byDesign} in the design' },
  'focal-length': { code: 'record', text: 'the dish has a focal length of {recorded}, but {byDesign} in the design' },
  'dish-depth': { code: 'record', text: 'the dish has a depth of {recorded}, but {byDesign} in the design' },
  'part-thickness': { code: 'record', text: 'part "{of}" has a thickness of {recorded}, but {byDesign} in the design' },
  'rib-count': { code: 'record', text: 'the number of ribs to be made is {recorded}, but {byDesign} in the design' },
  'nest-seed': { code: 'record', text: 'the seed of the nest is {recorded}, but {byDesign} in the design' },
  'tool-diameter': { code: 'record', text: 'the tool has a diameter of {recorded}, but {byDesign} in the design' },
  kerf: { code: 'record', text: '{of}: the kerf is {recorded}, but {byDesign} in the design' },
  'cut-width': { code: 'record', text: '{of}: the cut is {recorded} wide, but {byDesign} in the design' },
  'cut-bore': { code: 'record', text: '{of}: bored holes come out {recorded} wider, but {byDesign} in the design' },
  'axis-x': { code: 'record', text: '{of}: X makes {recorded}, but {byDesign} in the design' },
  'axis-y': { code: 'record', text: '{of}: Y makes {recorded}, but {byDesign} in the design' },
  'axis-lean': { code: 'record', text: '{of}: Y leans by {recorded}, but {byDesign} in the design' },
  'sheet-thickness': {
    code: 'record',
    text: '{of}: the material has a thickness of {recorded}, but {byDesign} in the design',
  },
  'sheet-overcut': { code: 'record', text: '{of}: the overcut is {recorded}, but {byDesign} in the design' },
  'sheet-mark-depth': { code: 'record', text: '{of}: the depth of marks is {recorded}, but {byDesign} in the design' },
  'sheet-margin': { code: 'record', text: '{of}: the margin is {recorded}, but {byDesign} in the design' },
  'roll-width': { code: 'record', text: '{of}: the roll has a width of {recorded}, but {byDesign} in the design' },
  'sheet-width': { code: 'record', text: '{of}: the sheet has a width of {recorded}, but {byDesign} in the design' },
  'sheet-height': { code: 'record', text: '{of}: the sheet has a height of {recorded}, but {byDesign} in the design' },
} as const satisfies Readonly<Record<string, MessageSource<FaultCode>>>;
