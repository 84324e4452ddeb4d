/** What stands in the focus, and what is in it. */
import type { LengthUnit } from '../../units/index.js';
import { choice, choiceAuto, group, integerAuto, keysIn, number, numberAuto, numberOr, yesNo } from '../keys.js';

const vesselKinds = ['pot', 'plate', 'coil', 'cavity'] as const;
export const fillings = ['water', 'milk', 'juice', 'oil', 'solid'] as const;
export const wallMaterials = ['stainless', 'steel', 'enamel', 'aluminium', 'cast-iron', 'copper', 'clay'] as const;

/** What is round the vessel. */
function casingKeys(unit: LengthUnit) {
  const { lengthOr, lengthAuto } = keysIn(unit);
  return {
    insulation: lengthOr(0, {
      about: 'Thickness of insulation on side and lid, or on all of a cavity but its mouth; 0 for none.',
      max: 500,
    }),
    insulationConductivity: numberOr(0.04, {
      about: 'Thermal conductivity of the insulation.',
      unit: 'W/(m K)',
      why: 'mineral wool; dry sheep’s wool is similar, straw 0.06 (from memory)',
      above: 0,
      max: 5,
    }),
    holderArms: integerAuto({
      about: 'Number of level bars from the rim that carry the vessel and shade the mirror.',
      auto: '2 with a hanger of the stand, else 0',
      min: 0,
      max: 12,
    }),
    holderWidth: lengthAuto({
      about: 'Width of a bar as the sun sees it.',
      auto: 'with a hanger of the stand, the width that it shades, shared out among its bars; else 20 mm',
      min: 0,
      max: 500,
    }),
  };
}

export function vesselSection(unit: LengthUnit) {
  const { length, lengthOr, lengthAuto } = keysIn(unit);
  return group(
    { about: 'What is heated at the focus.' },
    {
      kind: choice(vesselKinds, 'pot', {
        about:
          'A pot with base, side and lid; a flat plate, heated from below; a tube wound into a close coil, closed by a turn at the bottom; a cavity with a mouth in its base.',
      }),
      mount: choiceAuto(['level', 'axis'], {
        about: 'Hung level whatever the dish’s tilt, or fixed to the dish so that it tilts with the axis.',
        auto: 'level for a pot and a plate, axis for a coil and a cavity',
      }),
      diameter: length({ about: 'Outer diameter.', above: 0 }),
      height: lengthAuto({
        about: 'Height from the base to the lid, or thickness of a plate.',
        auto: 'what the load needs at the stated fill; without a load, half the diameter; 6 mm for a plate, the diameter for a coil and a cavity',
        above: 0,
      }),
      offset: lengthOr(0, {
        about:
          'Height of the base above the focus, measured vertically for a level vessel and along the axis for one fixed to it; negative is below.',
        min: -5000,
        max: 5000,
      }),
      opening: lengthAuto({
        about: 'Diameter of a cavity’s mouth.',
        auto: 'half the diameter',
        above: 0,
      }),
      baseAbsorptance: numberOr(0.9, {
        about: 'Share of the light that the base absorbs, 0 to 1; for a cavity, the inside.',
        why: 'matt black paint or soot, from memory; bare bright metal absorbs 0.2 to 0.4',
        above: 0,
        max: 1,
      }),
      sideAbsorptance: numberAuto({
        about: 'Share of the light that side and lid absorb, 0 to 1.',
        auto: 'as the base; 0 under insulation and for a cavity',
        min: 0,
        max: 1,
      }),
      emittance: numberOr(0.9, {
        about: 'Thermal emittance: its heat radiation as a share of a black body’s, 0 to 1.',
        why: 'painted or sooty metal, from memory; bare bright metal emits a tenth of that',
        above: 0,
        max: 1,
      }),
      lid: yesNo(true, { about: 'Whether a lid is on. Without one the load loses heat by evaporation.' }),
      wall: choice(wallMaterials, 'stainless', { about: 'What the wall is made of.' }),
      wallThickness: lengthOr(1, {
        about: 'Thickness of the wall.',
        why: 'a common kitchen pot, from memory',
        above: 0,
        max: 100,
      }),
      wallMass: numberAuto({
        about: 'Mass of the empty vessel, which is heated too.',
        unit: 'kg',
        auto: 'worked out from its size, wall and material',
        min: 0,
        max: 1000,
      }),
      fill: numberOr(0.83, {
        about: 'Maximum share of the height that the load fills.',
        why: 'leaves headroom of a fifth of the load’s depth for boiling, from memory',
        min: 0.05,
        max: 1,
      }),
      ...casingKeys(unit),
    },
  );
}

export function loadSection() {
  return group(
    { about: 'What is heated.' },
    {
      filling: choice(fillings, 'water', {
        about:
          'What is heated: sets the heat capacity, the density, whether it boils and freezes, and how bright a spot on the wall it tolerates.',
      }),
      mass: number({ about: 'Mass of the load.', unit: 'kg', above: 0, max: 10_000 }),
      heatCapacity: numberAuto({
        about: 'Specific heat capacity, the same at every temperature.',
        unit: 'J/(kg K)',
        auto: 'that of the filling: of water by temperature, of milk 3930, of fruit juice 3850, of cooking oil 2000, of a solid 900',
        above: 0,
        max: 20_000,
      }),
      density: numberAuto({
        about: 'Density; with the mass it gives the volume of the load.',
        unit: 'kg/m³',
        auto: 'that of the filling: water 1000, milk 1030, fruit juice 1050, cooking oil 920, a solid 2500',
        above: 0,
        max: 20_000,
      }),
      start: numberOr(15, {
        about: 'Temperature at the start; below 0 °C a load that contains water is ice and is melted first.',
        unit: '°C',
        min: -50,
        max: 500,
      }),
      target: numberOr(95, {
        about: 'Temperature to reach; at or above the boiling point, the load is brought to the boil.',
        unit: '°C',
        min: -50,
        max: 1000,
      }),
      boilingPoint: numberAuto({
        about: 'Boiling point of the liquid at the site.',
        unit: '°C',
        auto: 'that of water at the altitude of the site, in whole degrees: 100 °C at sea level, 88 °C at 3600 m; oil and solids do not boil',
        min: -50,
        max: 1000,
      }),
      maxFlux: numberAuto({
        about:
          'Maximum heat flux from the brightest place of the wall into the load, above which the load scorches there.',
        unit: 'kW/m²',
        auto: 'milk 15, fruit juice 40, cooking oil 45, water and solids no limit; from memory of the watt densities that makers of immersion heaters recommend, for a load stirred from time to time',
        above: 0,
        max: 10_000,
      }),
    },
  );
}
