/** The whole design file: every section in the order in which `new` writes it. */
import { hasHidden } from '../diagnostic/index.js';
import * as z from 'zod';
import { colour, group, type KeyMeta, keysIn, textOr, integer } from './keys.js';
import { dishSection } from './sections/dish.js';
import { materialsSection, stockSection } from './sections/materials.js';
import { nestSection, processSection } from './sections/process.js';
import { machineSection } from './sections/machine.js';
import { routerSection } from './sections/router.js';
import { panelSection, reflectorSection } from './sections/skin.js';
import { boardSection, cleatSection, hubSection, ribSection } from './sections/structure.js';
import { daySection, siteSection } from './sections/day.js';
import { standSection } from './sections/stand.js';
import { sunSection } from './sections/sun.js';
import { loadSection, vesselSection } from './sections/vessel.js';
import { markingSection, printSection, templateSection } from './sections/template.js';
import { type LengthUnit, lengthUnits } from '../units/index.js';

/**
 * Operations that carry a colour and a layer. The default colours are from the palette of Okabe and Ito (2002), but for
 * the two greys, of what is not cut through: they are our own.
 */
export const defaultColours = {
  outline: '#009E73',
  opening: '#56B4E9',
  pocket: '#0072B2',
  drill: '#CC79A7',
  countersink: '#E69F00',
  scribe: '#7F7F7F',
  'sheet-edge': '#BBBBBB',
} as const;
export type LayerName = keyof typeof defaultColours;

function coloursSection() {
  const colourOf = (name: LayerName) => {
    const about = `Colour of ${name} lines.`;
    return colour(about)
      .default(defaultColours[name])
      .meta({ quantity: 'text', shown: defaultColours[name], about } satisfies KeyMeta);
  };
  return group(
    { about: 'Colours of the lines, for laser drivers that distinguish operations by colour.' },
    {
      outline: colourOf('outline'),
      opening: colourOf('opening'),
      pocket: colourOf('pocket'),
      drill: colourOf('drill'),
      countersink: colourOf('countersink'),
      scribe: colourOf('scribe'),
      'sheet-edge': colourOf('sheet-edge'),
    },
  );
}

function extraSection(unit: LengthUnit) {
  const { lengthAuto } = keysIn(unit);
  return z
    .array(
      group(
        { about: 'Outlines of your own, nested along with the dish.' },
        {
          file: z
            .string()
            .min(1)
            .max(400)
            .refine((text) => !hasHidden(text), 'must not hold control characters or direction marks')
            .meta({ quantity: 'text', about: 'DXF or SVG file, in the folder of the design file.' } satisfies KeyMeta),
          material: z
            .string()
            .meta({ quantity: 'text', about: 'Name of the material, from `materials`.' } satisfies KeyMeta),
          quantity: integer({ about: 'How many of each outline.', min: 1, max: 1000 }).default(1),
          unit: lengthAuto({
            about: 'Length of one drawing unit, for files that state none.',
            auto: 'what the file states',
            above: 0,
          }),
        },
      ),
    )
    .max(50, 'at most 50 files')
    .default([])
    .meta({
      quantity: 'list',
      shown: '[]',
      about: 'Files with outlines of your own, nested along with the dish to use up part sheets.',
    } satisfies KeyMeta);
}

function schemaIn(unit: LengthUnit) {
  return group(
    { about: 'A ribbed paraboloid dish.' },
    {
      name: textOr('dish', { about: 'Name of the job, for titles and the book.' }),
      units: z
        .enum(lengthUnits)
        .default('mm')
        .meta({
          quantity: 'choice',
          shown: 'mm',
          about: 'Unit of every length that is written as a bare number, and of what is printed.',
        } satisfies KeyMeta),
      dish: dishSection(unit),
      materials: materialsSection(unit),
      stock: stockSection(unit),
      rib: ribSection(unit),
      hub: hubSection(unit).prefault({}),
      cleat: cleatSection(unit).prefault({}),
      board: boardSection(unit).prefault({}),
      panel: panelSection(unit),
      reflector: reflectorSection(unit).prefault({}),
      vessel: vesselSection(unit).optional(),
      load: loadSection().optional(),
      stand: standSection(unit).optional(),
      sun: sunSection().prefault({}),
      site: siteSection().optional(),
      day: daySection().prefault({}),
      process: processSection(unit).prefault({}),
      machine: machineSection(unit).prefault({}),
      router: routerSection(unit).prefault({}),
      nest: nestSection().prefault({}),
      template: templateSection(unit).prefault({}),
      print: printSection(unit).prefault({}),
      marking: markingSection(unit).prefault({}),
      extra: extraSection(unit),
      colours: coloursSection().prefault({}),
    },
  );
}

const made = new Map<LengthUnit, ReturnType<typeof schemaIn>>();

/**
 * The schema of a design file whose bare numbers are in `unit`; made once, as putting it together takes ten times as
 * long as reading a design by it.
 */
export function designSchema(unit: LengthUnit): ReturnType<typeof schemaIn> {
  const known = made.get(unit) ?? schemaIn(unit);
  made.set(unit, known);
  return known;
}

export type DesignFile = z.output<ReturnType<typeof designSchema>>;
