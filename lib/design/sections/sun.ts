/** What the dish heats and under which sun. */
import { choice, group, keysIn, number, numberAuto, numberOr } from '../keys.js';
import * as z from 'zod';
import type { KeyMeta } from '../keys.js';
import type { LengthUnit } from '../../units/index.js';

export function vesselSection(unit: LengthUnit) {
  const { length, lengthOr } = keysIn(unit);
  return group(
    { about: 'What stands in the focus.' },
    {
      diameter: length({ about: 'Diameter of the vessel’s underside.', above: 0 }),
      offset: lengthOr(0, {
        about: 'Height of its underside above the focus; negative for below.',
        min: -5000,
        max: 5000,
      }),
      absorptance: numberOr(0.9, {
        about: 'Share of the light that it takes up, 0 to 1.',
        why: 'matt black paint, from memory',
        above: 0,
        max: 1,
      }),
      emittance: numberOr(0.9, {
        about: 'Share of a black body’s heat radiation that it gives off, 0 to 1.',
        why: 'painted or sooty metal, from memory; bare bright metal gives off a tenth of that',
        above: 0,
        max: 1,
      }),
    },
  );
}

export function loadSection() {
  return group(
    { about: 'What is heated.' },
    {
      mass: number({ about: 'Mass of the liquid.', unit: 'kg', above: 0, max: 10_000 }),
      heatCapacity: numberOr(4186, {
        about: 'Specific heat capacity.',
        unit: 'J/(kg K)',
        why: 'water',
        above: 0,
        max: 20_000,
      }),
      density: numberOr(1000, {
        about: 'Density; with the mass it gives the height of the vessel, which loses heat.',
        unit: 'kg/m³',
        why: 'water',
        above: 0,
        max: 20_000,
      }),
      start: numberOr(15, { about: 'Temperature at the start.', unit: '°C', min: -50, max: 500 }),
      target: numberOr(95, { about: 'Temperature to be reached.', unit: '°C', min: -50, max: 1000 }),
      boilingPoint: numberAuto({
        about: 'Boiling point of the liquid at the place.',
        unit: '°C',
        auto: 'that of water at the altitude of the site, in whole degrees: 100 °C at the sea, 88 °C at 3600 m',
        min: -50,
        max: 1000,
      }),
      ambient: numberOr(20, { about: 'Air temperature.', unit: '°C', min: -50, max: 60 }),
      wind: numberOr(2, {
        about: 'Speed of the wind at the vessel.',
        unit: 'm/s',
        why: 'a light breeze, 2 on the Beaufort scale',
        min: 0,
        max: 20,
      }),
    },
  );
}

export function sunSection() {
  return group(
    { about: 'The sun and the care of the work.' },
    {
      irradiance: numberOr(800, {
        about: 'Direct irradiance at the dish; a site’s clear sky takes its place.',
        unit: 'W/m²',
        why: 'a round value for a clear day',
        above: 0,
        max: 1400,
      }),
      shape: choice(['uniform', 'limb-darkened', 'circumsolar'], 'uniform', {
        about: 'How bright the sun’s disc is across.',
      }),
      circumsolarRatio: numberOr(0.05, {
        about: 'Share of the light that comes from around the disc, for shape `circumsolar`.',
        min: 0,
        max: 0.8,
      }),
      slopeError: numberAuto({
        about: 'Waviness of the reflector with usual care, one standard deviation in each direction.',
        unit: 'mrad',
        auto: 'by reflector.finish: 4 to 6 mrad for hand work on thin board, from memory',
        min: 0,
        max: 100,
      }),
      slopeErrorGood: numberAuto({
        about: 'The same with good care: ribs true to the template, panels and mirror laid without bumps.',
        unit: 'mrad',
        auto: 'half of slopeError, from memory',
        min: 0,
        max: 100,
      }),
      slopeErrorPoor: numberAuto({
        about: 'The same with poor care.',
        unit: 'mrad',
        auto: 'twice slopeError, from memory',
        min: 0,
        max: 200,
      }),
      specularity: numberAuto({
        about: 'Spread of the reflection itself, one standard deviation.',
        unit: 'mrad',
        auto: 'by reflector.finish and state: 0.5 mrad for glass to 50 mrad for crinkled foil',
        min: 0,
        max: 100,
      }),
      edgeCurl: numberAuto({
        about: 'Extra slope at the edges of a bent panel, growing evenly from the mid-line; 0 for none.',
        unit: 'mrad',
        auto: 'worked out from the panel’s thickness, width and bend: some mrad, as a bent sheet turns its edges the other way',
        min: 0,
        max: 100,
      }),
      pointingError: numberOr(0, {
        about: 'Angle by which the dish is aimed off the sun.',
        unit: 'deg',
        min: 0,
        max: 20,
      }),
      parkedAngle: numberAuto({
        about: 'Smallest angle between axis and sun over the day while the dish is parked; from 90 on it is dark.',
        unit: 'deg',
        auto: 'lying on its back: 90 deg less the sun’s height at noon; without a site nothing is said of parking',
        min: 0,
        max: 180,
      }),
    },
  );
}

export function siteSection() {
  return z
    .strictObject({
      latitude: number({ about: 'North positive.', unit: 'deg', min: -90, max: 90 }),
      longitude: number({ about: 'East positive.', unit: 'deg', min: -180, max: 180 }),
      date: z
        .string()
        .regex(/^\d{4}-\d{2}-\d{2}$/, 'must be a date such as 2026-06-21')
        .meta({ quantity: 'text', about: 'Day of the forecast, year-month-day.' } satisfies KeyMeta),
      altitude: numberAuto({ about: 'Height above the sea.', unit: 'm', auto: 'sea level', min: -500, max: 9000 }),
      minElevation: numberOr(15, {
        about: 'Height of the sun from which on the dish is used.',
        unit: 'deg',
        why: 'lower down the light is weak and the dish stands on its edge',
        min: 0,
        max: 89,
      }),
    })
    .meta({
      quantity: 'group',
      about: 'The place and day; gives the sun’s height, hours and irradiance.',
    } satisfies KeyMeta);
}
