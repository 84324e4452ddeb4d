/** Faults by which a drawing cannot be read, one for each message of its readers. */
import type { readingMessages } from '../../../lib/check/messages/reading.js';
import { drawingsOnly, type Files, sheetFile } from '../../helpers/small-job.js';
import { mutated, type Planted } from './planted.js';

const dxf = `${sheetFile}.dxf`;
const svg = `${sheetFile}.svg`;

const inDxf =
  (from: string | RegExp, to: string): (() => Files) =>
  () =>
    mutated(drawingsOnly(), dxf, (text) => text.replace(from, to));
const inSvg =
  (from: string | RegExp, to: string): (() => Files) =>
  () =>
    mutated(drawingsOnly(), svg, (text) => text.replace(from, to));
/** The path data of the first line changed. */
const pathData = (data: string) => inSvg(/ d="[^"]*"/, ` d="${data}"`);
/** An entity put before all others. */
const entity = (...lines: (string | number)[]) => inDxf('\n2\nENTITIES\n', `\n2\nENTITIES\n0\n${lines.join('\n')}\n`);

export const readingPlants: Readonly<Record<keyof typeof readingMessages, Planted>> = {
  'dxf-code': [inDxf(/^/, 'x\n1\n'), 'line 1 should be a group code, not "x"'],
  'dxf-half': [inDxf(/\s*$/, '\n0\n'), 'the file ends after a group code, in line '],
  'dxf-cut-short': [inDxf(/0\nEOF\s*$/, ''), 'the file does not end with EOF: it is cut short'],
  'dxf-number': [inDxf(/(CIRCLE\n(?:.*\n)*?40\n).*/, '$1abc'), 'should be a number within a kilometre, not "abc"'],
  'dxf-integer': [inDxf('$INSUNITS\n70\n4', '$INSUNITS\n70\nx'), 'should be an integer, not "x"'],
  'dxf-section-begin': [inDxf('SECTION\n2\nHEADER', 'SECTION\n3\nHEADER'), 'a malformed section begins in line '],
  'dxf-section-twice': [inDxf('SECTION\n2\nCLASSES', 'SECTION\n2\nHEADER'), 'section "HEADER" occurs twice'],
  'dxf-section-end': [inDxf('0\nENDSEC\n', '0\nENDSEC\n0\nENDSEC\n'), 'ends a section that never began'],
  'dxf-no-section': [inDxf('0\nENDSEC\n', '0\nENDSEC\n0\nX\n'), ' belongs to no section'],
  'dxf-section-open': [inDxf(/0\nENDSEC\n0\nEOF/, '0\nEOF'), 'the last section has no end'],
  'dxf-sections': [inDxf('SECTION\n2\nTABLES', 'SECTION\n2\nTABLE'), 'one of the sections HEADER, TABLES and ENTITIES'],
  'dxf-variable': [inDxf('$INSUNITS', '$OTHER'), 'the header lacks $INSUNITS'],
  'dxf-lacks-code': [inDxf(/(CIRCLE\n(?:.*\n)*?)40\n.*\n/, '$1'), 'the CIRCLE in line '],
  'dxf-hidden-layer': [inDxf(/(\noutline\n62\n\d+\n70\n)0/, '$11'), 'layer "outline" is hidden'],
  'dxf-stray-code': [inDxf('CIRCLE\n5\n', 'CIRCLE\n67\n1\n5\n'), 'has group code 67, which does not belong there'],
  'dxf-no-size': [inDxf(/(CIRCLE\n(?:.*\n)*?40\n).*/, '$10'), 'has no size'],
  'dxf-vertex-count': [inDxf(/(LWPOLYLINE\n(?:.*\n)*?90\n).*/, '$199'), 'should have 99 vertices and has 4'],
  'dxf-few-vertices': [entity('LWPOLYLINE', 8, 'outline', 90, 1, 70, 1, 10, 5, 20, 5), 'has fewer than two vertices'],
  'dxf-vertex-y': [entity('LWPOLYLINE', 8, 'outline', 90, 2, 70, 1, 10, 5, 10, 6, 20, 6), 'has a vertex without y'],
  'dxf-entity': [inDxf('CIRCLE\n5\n', 'SPLINE\n5\n'), 'begins a "SPLINE", which is neither LWPOLYLINE nor CIRCLE'],
  'dxf-block': [inDxf('0\nENDBLK\n', '0\nLINE\n8\n0\n0\nENDBLK\n'), 'a block contains a "LINE", in line '],
  'dxf-layer': [
    entity('LWPOLYLINE', 8, 'nowhere', 90, 2, 70, 1, 10, 5, 20, 5, 10, 6, 20, 6),
    'layer "nowhere" is used but not in the table of layers',
  ],
  'too-many-entities': [
    inSvg(/(<circle [^>]*>)/, '<circle cx="1" cy="1" r="1"/>'.repeat(200_001)),
    'it contains more than 200000 entities',
  ],

  'svg-xml': [inSvg('<g', '&a;<g'), 'it is not well-formed XML: '],
  'svg-doctype': [inSvg('<svg', '<!DOCTYPE svg><svg'), 'it has a document type, which does not belong in a cut file'],
  'svg-element': [inSvg('<g', '<style>a{}</style><g'), '<style> does not belong in <svg>'],
  'svg-attribute': [inSvg('<g ', '<g transform="scale(2)" '), '<g> has the attribute transform, which does not belong'],
  'svg-lacks': [inSvg(/ cx="[^"]*"/, ''), '<circle> lacks cx'],
  'svg-fill': [inSvg('<g ', '<g fill="#FF0000" '), '<g> has the fill "#FF0000": a laser would engrave it'],
  'svg-number': [inSvg(/ cx="[^"]*"/, ' cx="abc"'), 'cx should be a number within a kilometre, not "abc"'],
  'svg-not-mm': [inSvg('mm"', 'in"'), 'width of the page is not in mm'],
  'svg-view-box': [inSvg(/viewBox="[^"]*"/, 'viewBox="0 0 180"'), 'viewBox should be four numbers'],
  'svg-view-origin': [inSvg('viewBox="0 ', 'viewBox="1 '), 'viewBox does not begin at 0 0'],
  'svg-page-size': [inSvg(/viewBox="[^"]*"/, 'viewBox="0 0 0 72"'), 'the page has no size'],
  'svg-page-shape': [inSvg(/viewBox="[^"]*"/, 'viewBox="0 0 180 80"'), 'viewBox and page differ in shape'],
  'svg-circle-size': [inSvg(/ r="[^"]*"/, ' r="0"'), 'a circle has no size'],

  'path-data': [pathData('M0 0C1 1 2 2 3 3'), 'a path contains something other than M, L, H, V, A, Z and numbers'],
  'path-number': [pathData('M0 0L5'), 'a path lacks a number, or has one beyond a kilometre'],
  'path-flag': [pathData('M0 0A5 5 0 2 1 3 3'), 'a flag of an arc is neither 0 nor 1'],
  'path-after-close': [pathData('M0 0L5 5L5 0ZL1 1'), 'a path goes on after it was closed'],
  'path-start': [pathData('L5 5L6 6'), 'a path must have one M, at its start'],
  'path-ellipse': [pathData('M0 0A5 6 0 0 1 3 3'), 'an arc of a path is not circular'],
  'path-arc-span': [pathData('M0 0A1 1 0 0 1 9 0'), 'an arc of radius 1 cannot span 9'],
  'path-short': [pathData('M0 0'), 'a path has fewer than two points'],
};
