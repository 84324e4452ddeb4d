/** What can be wrong with the drawings of a sheet, by themselves and against the record. */
import type { FaultCode } from '../types.js';
import type { MessageSource } from './text.js';

export const sheetMessages = {
  'dxf-unit': { code: 'units', text: '$INSUNITS is {unit}, not {wanted} (millimetres)' },
  'svg-unit': { code: 'units', text: 'a user unit is {scale} mm, not 1 mm' },
  'page-size': { code: 'scale', text: 'the page is {page}, not {sheet}' },
  'edge-for-laser': { code: 'layer', text: 'the edge of the sheet is drawn: a laser would cut along it' },
  'edge-count': { code: 'scale', text: 'it has {count} sheet edges, not one' },
  'edge-size': { code: 'scale', text: 'the sheet edge is {size}, {times} times as wide as the sheet' },
  'off-sheet': { code: 'margin', text: 'a line on layer {layer} runs off the sheet' },

  'layer-unknown': { code: 'layer', text: 'layer {layer} is not an operation' },
  'layer-circle': { code: 'layer', text: 'a circle is on layer {layer}' },
  'line-twice': { code: 'duplicate', text: 'a line on layer {layer} occurs twice' },
  'circle-size': { code: 'drill', text: 'a circle of {diameter} is on layer {layer}' },
  'path-open': { code: 'open-contour', text: 'a path on layer {layer} is not closed' },
  'edge-short': { code: 'zero-length', text: 'a path on layer {layer} has an edge without length' },

  'key-missing': { code: 'colour', text: 'the key does not give the colour of layer {layer}' },
  'key-other': { code: 'colour', text: 'layer {layer} has the colour {colour}, but {key} in the key' },
  'key-design': { code: 'colour', text: 'the key gives layer {layer} the colour {key}, but the design says {design}' },

  'pair-page': { code: 'disagreement', text: 'the page is {svg}, but {dxf} in the DXF' },
  'pair-order': { code: 'disagreement', text: 'line {line} is on layer {svg}, but on layer {dxf} in the DXF' },
  'pair-count': { code: 'disagreement', text: 'layer {layer} has {svg} lines, but {dxf} in the DXF' },
  'pair-circle': { code: 'disagreement', text: 'a circle differs by {off} from the DXF, on layer {layer}' },
  'pair-path': { code: 'disagreement', text: 'a path differs from the DXF, on layer {layer}' },
  'pair-kind': {
    code: 'disagreement',
    text: 'a path replaces a circle of the DXF, or the reverse, on layer {layer}',
  },

  'path-missing': { code: 'missing-path', text: 'no path cuts {what} of {part} where it should be' },
  'countersink-missing': { code: 'missing-path', text: 'the {diameter} countersink of {part} is missing' },
  'path-stray': { code: 'stray-path', text: 'a path on layer {layer} belongs to no part' },
  'circle-stray': { code: 'stray-path', text: 'a circle on layer {layer} belongs to no part' },
  'bore-layer': { code: 'drill', text: 'a {diameter} hole is on layer {layer}' },
  'pocket-layer': { code: 'layer', text: 'a pocket {depth} deep is on layer {layer}' },
  'cut-into': { code: 'cut-error', text: 'the cut eats {depth} into the part: {what} of {part}' },
  'cut-leaves': { code: 'cut-error', text: 'the cut leaves {depth} outside the part: {what} of {part}' },
  'scribe-off': { code: 'cut-error', text: 'a scribed line of {part} is {off} out of place' },
  'hole-off': { code: 'drill', text: 'the {hole} of {part} is {off} off in place or size' },
  'hole-bare': { code: 'drill', text: 'the {hole} of {part} is a bare circle, which a beam of {kerf} cuts too wide' },
  'mark-missing': {
    code: 'mark',
    text: 'the mark "{text}" of {part} is missing, incomplete or not where it should be',
  },
  'mark-stray': { code: 'mark', text: 'a scribed line is not a mark of any part placed there' },

  'order-within': { code: 'order', text: '{what} of {part} comes after its outline' },
  'order-machine': { code: 'order', text: '{part}: {what} comes before {before}, against the order of the machine' },
  'order-nested': { code: 'order', text: '{part} lies in an opening of {around}, which is cut first' },

  overlap: { code: 'overlap', text: '{part} and {other} overlap' },
  spacing: { code: 'spacing', text: '{part} and {other} are {apart} apart, not {wanted}' },
  'keep-out-on': { code: 'keep-out', text: '{part} is on a place of the stock to keep clear' },
  'keep-out-near': {
    code: 'keep-out',
    text: '{part} is {apart} from a place of the stock to keep clear, not {wanted}',
  },
  'margin-outside': { code: 'margin', text: '{part} is outside the sheet, not {wanted} within it' },
  'margin-near': { code: 'margin', text: '{part} is {apart} from the edge of the sheet, not {wanted}' },
} as const satisfies Readonly<Record<string, MessageSource<FaultCode>>>;
