/**
 * The form of `job.json`, once: the writer's types are read off it, tests hold written records against it, and it is
 * published as a JSON Schema. `lib/check` reads records by a schema of its own.
 */
import * as z from 'zod';

const closed = <Shape extends z.core.$ZodLooseShape>(shape: Shape) => z.strictObject(shape).readonly();
const listOf = <Item extends z.ZodType>(item: Item) => z.array(item).readonly();

const length = (about: string) => z.number().describe(`${about}, mm`);
const size = (about: string) => z.number().min(0).describe(`${about}, mm`);
const count = (about: string, min: number) => z.number().int().min(min).describe(about);
const text = (about: string) => z.string().describe(about);
const hash = (about: string) =>
  z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .describe(`${about}: SHA-256 (FIPS 180-4), hexadecimal`);

function partSchema() {
  const vertex = z
    .tuple([
      length('x'),
      length('y'),
      z
        .number()
        .describe('bulge of the edge that starts here: 0 straight, tan(sweep/4) of an arc, positive anticlockwise'),
    ])
    .readonly();
  const contour = closed({
    operation: z.enum(['outline', 'opening', 'pocket', 'scribe']).describe('what is done along it'),
    depth: size('depth of a pocket below the face that is up; all other rings are cut through').optional(),
    closed: z.literal(false).optional().describe('present, and false, on an open scribe; all else is a closed ring'),
    vertices: listOf(vertex).describe(
      'true, finished size; outlines run anticlockwise, openings and pockets clockwise',
    ),
  });
  const drill = closed({
    x: length('centre'),
    y: length('centre'),
    diameter: size('finished diameter'),
    depth: z.union([z.number(), z.literal('through')]).describe('depth from the face that is up, mm, or right through'),
    countersink: size('head diameter of a 90 degree countersink on the face that is up').optional(),
  });
  const label = closed({
    text: text('lettering; `{n}` stands for the number of the copy'),
    x: length('lower left corner of the first letter'),
    y: length('lower left corner of the first letter'),
    height: size('capital height'),
    angleDeg: z.number().describe('direction of the line, degrees anticlockwise from x'),
    face: z
      .enum(['front', 'back'])
      .describe('the face that it stands on: corner and direction are those of someone who looks at that face'),
  });
  return closed({
    id: text('name in the files: `rib`, `board-2`'),
    name: text('name for a person'),
    material: text('key of the design’s `materials`'),
    thickness: size('thickness'),
    quantity: count('number of copies', 0),
    contours: listOf(contour).describe(
      'the outline first, then openings, then pockets, then scribed lines, in the part’s own axes',
    ),
    drills: listOf(drill).describe('holes'),
    labels: listOf(label).describe(
      'lettering of copies that lie with that face up: the front, or the back of mirrored ones',
    ),
  });
}

function processSchema() {
  const compensated = z.boolean().describe('whether files hold paths of the tool’s centre instead of finished edges');
  const kind = <Kind extends string>(name: Kind) => z.literal(name).describe('what cuts');
  const scale = (axis: string) => z.number().describe(`actual length of a programmed length of 1 along ${axis}`);
  const corrections = {
    bore: length('how much wider than its diameter a bored hole comes out, which its path makes up for').optional(),
    axes: closed({
      scaleX: scale('X'),
      scaleY: scale('Y'),
      lean: z.number().describe('how far the Y axis leans towards +X, as a share of the length along it'),
    })
      .optional()
      .describe('errors of the axes, for which the files are corrected'),
  };
  return z.discriminatedUnion('kind', [
    closed({
      kind: kind('router'),
      toolDiameter: size('nominal diameter of the end mill'),
      width: size('width that it takes away, as measured').optional(),
      compensated,
      ...corrections,
    }),
    closed({ kind: kind('laser'), kerf: size('width that the beam takes away'), compensated, ...corrections }),
    closed({ kind: kind('hand'), compensated }),
  ]);
}

function machineSchema() {
  const feed = (axis: string) => z.number().describe(`fastest along ${axis}, mm/min`);
  const point = (about: string) => closed({ x: length('position'), y: length('position') }).describe(about);
  return closed({
    area: closed({ width: size('width'), height: size('height') })
      .optional()
      .describe('working area'),
    programUnits: z.enum(['mm', 'in']).describe('unit of the files'),
    decimals: count('decimal places of coordinates', 0).optional(),
    arcs: z.enum(['arcs', 'lines']).describe('arcs as they are, or short lines'),
    lineTolerance: size('how far a short line may deviate from its arc'),
    lineNumbers: count('increment of the line numbers; 0 for none', 0),
    commentLength: count('maximum length of a comment', 1),
    commentCharacters: z.enum(['ascii', 'capitals']).describe('characters allowed in comments'),
    toolChange: z.enum(['automatic', 'by-hand', 'none']).describe('how a tool is changed'),
    lengthOffsets: z.boolean().describe('whether a change applies the tool’s length offset'),
    changeAt: point('where a tool is changed by hand'),
    changeHeight: size('height at which a tool is changed by hand'),
    pathMode: z.enum(['exact', 'exact-stop', 'continuous']).describe('how corners are run'),
    pathTolerance: size('how far a rounded corner may leave the path'),
    maxFeed: closed({ x: feed('X'), y: feed('Y'), z: feed('Z') }).describe('maximum feed of each axis'),
    travelSpeed: z.number().describe('speed of travel, mm/min'),
    acceleration: z.number().describe('acceleration, mm/s²'),
    spindle: closed({
      min: z.number().describe('slowest, rev/min'),
      max: z.number().describe('fastest, rev/min'),
    }).describe('range of the spindle'),
    spinUp: z.number().describe('time for the spindle to come up to speed, s'),
    coolant: z.enum(['off', 'mist', 'flood']).describe('what is on while it cuts'),
    parking: point('where the machine goes at the end').optional(),
    end: z.enum(['M2', 'M30']).describe('word at the end'),
  });
}

function routerSchema() {
  const tool = closed({
    number: count('number in the machine’s tool table', 0),
    kind: z.enum(['mill', 'drill', 'v']).describe('end mill, drill bit or 90 degree V-bit'),
    diameter: size('diameter that it cuts'),
    sold: size('nominal diameter, where it cuts another').optional(),
    flutes: count('cutting edges', 1),
    cuttingDepth: size('longest depth that it may cut'),
    spindle: z.number().describe('rev/min'),
    passDepth: size('maximum depth of one pass or peck'),
    feed: z.number().describe('feed along the path, mm/min'),
    plunge: z.number().describe('feed down more steeply than a ramp, mm/min'),
    range: closed({
      minChip: size('thinnest chip').optional(),
      maxChip: size('thickest chip').optional(),
      maxPlunge: z.number().describe('fastest feed down more steeply than a ramp, mm/min').optional(),
      maxSpindle: z.number().describe('fastest spindle, rev/min').optional(),
      outside: z.literal(true).describe('present where the design asks for other values, with a warning').optional(),
    }).describe('usual values for the tool in the material'),
  });
  const holding = closed({
    part: text('part'),
    copy: count('copy', 1),
    tabs: count('tabs on its edges; 0 for an onion skin', 0),
    onionSkin: z.boolean().describe('whether an onion skin holds it'),
  });
  const corner = closed({ x: length('corner'), y: length('corner') });
  const limits = closed({
    tools: listOf(tool).describe('tools in use'),
    thickness: size('thickness of the sheet'),
    overcut: size('depth to which cuts go below the sheet'),
    rampAngleDeg: z.number().describe('steepest ramp at the feed along the path, degrees'),
    finishing: size('material left for the last pass'),
    markDepth: size('depth of marks'),
    hopHeight: size('lowest travel of a V-bit, over one part alone'),
    tabWidth: size('width of tabs'),
    tabHeight: size('height of tabs'),
    onionSkin: size('thickness of onion skins'),
    minSpindle: z.number().describe('slowest spindle, rev/min'),
    maxSpindle: z.number().describe('fastest spindle, rev/min'),
    machine: machineSchema().describe('the machine that the files are written for, as in the design'),
    holding: listOf(holding).describe('how each part is held until the sheet is done'),
    tabs: listOf(listOf(corner)).describe('corners of each tab, which bridges the cut'),
    keepOuts: listOf(listOf(corner)).describe('places that no cut may enter'),
  });
  return closed({
    files: listOf(z.string()).describe('names of the tool-path files, in the order of running'),
    limits: limits.describe('what the files keep to'),
    cuttingSeconds: z.number().describe('time without tool changes, s'),
    travelLength: length('level travel between cuts'),
    toolWear: listOf(closed({ tool: count('tool', 0), length: length('what it cuts') })).describe(
      'length that each tool cuts',
    ),
  });
}

function laserSchema() {
  return closed({
    files: listOf(z.string()).describe('names of the tool-path files; none where the laser takes the drawings'),
    seconds: z.number().nullable().describe('time, s; null where a speed is not known'),
    atLeast: z.boolean().describe('whether the time leaves out acceleration'),
    cutLength: length('what is cut through'),
    markLength: length('what is marked'),
    travelLength: length('travel between'),
  });
}

function sheetSchema() {
  const placement = closed({
    part: text('`id` of the part'),
    copy: count('number among the part’s copies', 1),
    x: length('move, after the turn'),
    y: length('move, after the turn'),
    rotationDeg: z.number().describe('rotation about the part’s origin, degrees anticlockwise'),
    mirrored: z.boolean().describe('whether the back is up: x to -x, before the turn'),
  });
  return closed({
    file: text('path of its drawings in the folder, without the ending'),
    stock: text('key of the design’s `stock`'),
    width: size('width of the sheet; of a roll, the length used'),
    height: size('height of the sheet'),
    margin: size('distance that parts keep from the edge'),
    placed: listOf(placement).describe('parts on the sheet'),
    process: processSchema().optional().describe('present where the sheet is not cut like the rest of the job'),
    laser: laserSchema().optional().describe('present where a laser cuts the sheet'),
    router: routerSchema().optional().describe('present where the sheet has tool-path files'),
  });
}

/** The schema of the record. */
export function recordSchema() {
  const place = closed({
    path: listOf(z.union([z.string(), z.number()])).describe('steps from the top of the design file to the key'),
    file: text('design file').optional(),
    line: count('line', 1).optional(),
    column: count('column', 1).optional(),
  });
  const problem = closed({
    code: text('code, from the list in the reference page of the design file'),
    severity: z.enum(['error', 'warning']).describe('an error stops a job, so a record holds warnings only'),
    message: text('what is wrong, with the value'),
    remedy: text('how to fix it').optional(),
    place: place.optional().describe('where in the design file'),
    value: z.union([z.string(), z.number(), z.boolean()]).optional().describe('what the file states there'),
  });
  const fastener = closed({
    joint: text('what it joins, such as `cleat-to-board`'),
    item: z.enum(['wood-screw', 'bolt', 'dowel', 'pin', 'staple']).describe('what it is'),
    size: text('size as it is sold'),
    diameter: size('shank'),
    length: size('length').nullable().describe('length as it is sold, mm; null where no length sold is suitable'),
    count: count('how many', 1),
  });
  const offcut = closed({
    sheet: text('`file` of the sheet'),
    x: length('lower left corner'),
    y: length('lower left corner'),
    width: size('width'),
    height: size('height'),
  });
  const file = closed({
    name: text('path in the folder'),
    bytes: count('size in bytes', 0),
    sha256: hash('hash of its bytes'),
  });
  return closed({
    version: text('version of the program that made it'),
    units: z.literal('mm').describe('unit of all lengths; angles are in radians unless the key ends in `Deg`'),
    seed: z.number().describe('seed of the nest'),
    coupon: z
      .literal(true)
      .optional()
      .describe('present where the sheets hold coupons; the files measured-….yaml are then for you to fill in'),
    design: z.unknown().describe('the complete design, every default filled in, lengths in mm'),
    dish: z.unknown().describe('the solved dish'),
    parts: listOf(partSchema()).describe('parts, templates, gauges and jigs at true size'),
    fasteners: listOf(fastener).describe('everything that holds the parts together'),
    sheets: listOf(sheetSchema()).describe('sheets, with what lies on them'),
    process: processSchema().describe('how the job is cut'),
    optics: z.unknown().describe('the forecast; null when nothing stands in the focus'),
    problems: listOf(problem).describe('warnings'),
    offcuts: listOf(offcut).describe('rectangles left over from sheets and worth keeping'),
    extras: listOf(closed({ part: text('`id` of the part'), file: text('the file that it was read from') })).describe(
      'parts read from drawings of your own',
    ),
    files: listOf(file).describe('every other file of the folder, in order of names').optional(),
    recordHash: hash('of this file with zeros in place of this hash').optional(),
  });
}
