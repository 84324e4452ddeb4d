/** What is wrong with an input, or out of the dish's reach, in the words of the design file. */
import { type Diagnostic, diagnostic, type DiagnosticCode } from '../diagnostic/index.js';
import { litRange } from '../dish/index.js';
import { knownZone } from './clock.js';
import type { Forecast } from './forecast.js';
import { strikes } from './hanging.js';
import { maxWind } from './heat.js';
import { placeVessel } from './solid.js';
import { startOfDay, sunDay } from './sun-day.js';
import type { Day, OpticsInput, Site } from './types.js';

/** A whole number of mm as text, 0 without a sign. */
const roundMm = (mm: number) => String(Math.round(mm));

const share = (value: number) => value > 0 && value <= 1;

/** Reports what is not fine; message after the key, and how to fix it. */
type Check = (
  fine: boolean,
  code: DiagnosticCode,
  path: readonly string[],
  rest: () => readonly [message: string, remedy: string],
) => void;

function checkPlaces(check: Check, { dish, vessel, sun, site, day }: OpticsInput): void {
  const { apertureRadius: R, profile } = dish;
  const f = profile.focusHeight;
  check(dish.seamGap / 2 < Math.sin(dish.layout.halfAngle) * litRange(dish).to, 'panel', ['panel', 'gap'], () => [
    ` of ${dish.seamGap} mm leaves nothing of the panels`,
    'use a gap of a few millimetres',
  ]);
  if (vessel === null) return;
  const { diameter, offset, height } = vessel;
  check(diameter > 0 && diameter <= 2 * R, 'vessel', ['vessel', 'diameter'], () => [
    diameter > 0
      ? ` of ${diameter} mm is larger than the aperture of ${2 * R} mm and would shade the whole dish`
      : ` is ${diameter} mm`,
    'a tenth to a quarter of the aperture is usual',
  ]);
  check(f + offset > 0, 'vessel', ['vessel', 'offset'], () => [
    ` of ${offset} mm puts the vessel below the vertex (the focus is ${f} mm above it)`,
    '0 puts it at the focus',
  ]);
  check(height >= 0, 'vessel', ['vessel', 'height'], () => [` is ${height} mm`, 'it must not be negative']);
  if (!(diameter > 0 && diameter <= 2 * R && f + offset > 0)) return;
  // the lower the sun, the more a level vessel leans towards the mirror's lower half
  const lowest = site === null ? sun.elevationDeg : day.minElevationDeg;
  const struck = (elevationDeg: number) => strikes(placeVessel(vessel, f, (elevationDeg * Math.PI) / 180), dish);
  const at = [lowest, (lowest + 90) / 2, 90].find(struck);
  check(at === undefined, 'vessel', ['vessel', vessel.height > vessel.diameter ? 'height' : 'diameter'], () => [
    `: a vessel ${diameter} mm wide and ${roundMm(height)} mm high, its base ${roundMm(Math.abs(offset))} mm ${offset < 0 ? 'below' : 'above'} the focus, hits the mirror when the sun is ${(at ?? 0).toFixed(0)}° high`,
    'hang it higher (vessel.offset), or use a smaller one',
  ]);
}

function checkLight(check: Check, { vessel, reflector, sun }: OpticsInput): void {
  const shares = (vessel && [vessel.baseAbsorptance, vessel.emittance]) ?? [];
  (['baseAbsorptance', 'emittance'] as const).forEach((key, i) => {
    const value = shares[i] ?? 1;
    check(share(value), 'vessel', ['vessel', key], () => [` is ${value}`, 'it must be above 0 and at most 1']);
  });
  check(reflector.reflectance !== 0, 'no-mirror', ['reflector', 'material'], () => [
    ' is missing or names something that is not a mirror, so no light reaches the focus',
    'name a film or an aluminium sheet, or state reflector.finish (such as mirror-tiles) or reflector.reflectance',
  ]);
  check(reflector.reflectance === 0 || share(reflector.reflectance), 'reflector', ['reflector', 'reflectance'], () => [
    ` is ${reflector.reflectance}`,
    'it must be above 0 and at most 1; a clean mirror sheet gives 0.8 to 0.95',
  ]);
  check(reflector.stripSeamShare >= 0 && reflector.stripSeamShare < 1, 'reflector', ['reflector'], () => [
    `: tape, battens, inset and joints cover ${(100 * reflector.stripSeamShare).toFixed(0)} % of the panels, so no mirror is left`,
    'use narrower reflector.tape or panel.battenWidth, or a smaller reflector.inset',
  ]);
  const named = sun.irradianceWPerM2 ?? 800;
  check(named > 0 && named <= 1400, 'sun', ['sun', 'irradiance'], () => [
    ` is ${named} W/m²`,
    'it must be above 0 and at most 1400 W/m²',
  ]);
  const csr = sun.circumsolarRatio;
  check(csr >= 0 && csr <= 0.8, 'sun', ['sun', 'circumsolarRatio'], () => [` is ${csr}`, 'it must be 0 to 0.8']);
  check(sun.pointingErrorDeg >= 0 && sun.pointingErrorDeg <= 20, 'sun', ['sun', 'pointingError'], () => [
    ` is ${sun.pointingErrorDeg} deg`,
    'it must be 0 to 20 deg',
  ]);
  check(sun.elevationDeg > 0 && sun.elevationDeg <= 90, 'sun', ['sun', 'elevation'], () => [
    ` is ${sun.elevationDeg} deg`,
    'it must be above 0 and at most 90 deg',
  ]);
}

function checkLoad(check: Check, { load, day }: OpticsInput): void {
  const windy = day.windMPerS.find(([, wind]) => !(wind >= 0 && wind <= maxWind));
  check(windy === undefined, 'day', ['day', 'wind'], () => [
    ` is ${windy?.[1] ?? 0} m/s`,
    `the heat-loss formula is valid from 0 to ${maxWind} m/s: shelter the vessel`,
  ]);
  if (load === null) return;
  const { massKg, startC, targetC, boilingPointC } = load;
  check(massKg > 0, 'load', ['load', 'mass'], () => [` is ${massKg} kg`, 'nothing is heated: state a mass above 0']);
  check(targetC > startC, 'load', ['load', 'target'], () => [
    ` of ${targetC} °C is not above load.start (${startC} °C)`,
    `use more than ${startC} °C`,
  ]);
  check(boilingPointC === null || startC < boilingPointC, 'boiling', ['load', 'start'], () => [
    ` of ${startC} °C is not below load.boilingPoint (${boilingPointC ?? 0} °C)`,
    `use less than ${boilingPointC ?? 0} °C`,
  ]);
}

function checkSite(check: Check, site: Site, day: Day): void {
  check(Math.abs(site.latitudeDeg) <= 90, 'site', ['site', 'latitude'], () => [
    ` is ${site.latitudeDeg} deg`,
    'it must be -90 to 90 deg',
  ]);
  check(Math.abs(site.longitudeDeg) <= 180, 'site', ['site', 'longitude'], () => [
    ` is ${site.longitudeDeg} deg`,
    'it must be -180 to 180 deg',
  ]);
  const zone = site.timeZone;
  check(typeof zone === 'number' || knownZone(zone), 'site', ['site', 'timeZone'], () => [
    ` ${zone} is not a known time zone`,
    'write it as Europe/Vienna, or as hours ahead of UTC',
  ]);
  check(!Number.isNaN(startOfDay(day.date)), 'day', ['day', 'date'], () => [
    ` ${day.date} is not a calendar date`,
    'write it as 2026-06-21',
  ]);
}

function checkDay(check: Check, site: Site, day: Day): void {
  const { aiming, noonElevationDeg } = sunDay(site, day);
  check(aiming.kind !== 'never', 'no-sun', ['day', 'date'], () => [
    ` ${day.date}: at latitude ${site.latitudeDeg} the sun only reaches ${noonElevationDeg.toFixed(1)}°, but the dish is used from ${day.minElevationDeg}° up (day.minElevation)`,
    'choose another day',
  ]);
}

/** Everything that keeps the forecast from being made; with an error among them it must not be asked for. */
export function inputProblems(input: OpticsInput): Diagnostic[] {
  const { site, day } = input;
  const found: Diagnostic[] = [];
  const check: Check = (fine, code, path, rest) => {
    if (fine) return;
    const [message, remedy] = rest();
    found.push(diagnostic(code, path, `${path.join('.')}${message}`, remedy));
  };
  checkPlaces(check, input);
  checkLight(check, input);
  checkLoad(check, input);
  if (site !== null) checkSite(check, site, day);
  if (site !== null && found.length === 0) checkDay(check, site, day);
  return found;
}

/** A loss of power, compared with what is there. */
function comparedWith(costW: number): string {
  const watts = Math.round(Math.abs(costW));
  if (watts === 0) return 'as much as';
  return `${watts} W ${costW > 0 ? 'less' : 'more'} than`;
}

/** What the forecast found that the builder must know. */
export function forecastProblems(input: OpticsInput, { heat, vessel, spot, irradianceWPerM2 }: Forecast): Diagnostic[] {
  const found: Diagnostic[] = [];
  const warn = (code: DiagnosticCode, path: readonly string[], message: string, remedy: string) =>
    found.push(diagnostic(code, path, `${path.join('.')}${message}`, remedy, 'warning'));
  if (heat === null || vessel === null) return found;
  const { warming, hotSpot } = heat;
  if (warming.kind === 'out-of-reach' && input.load !== null)
    warn(
      'target-out-of-reach',
      ['load', 'target'],
      ` of ${input.load.targetC} °C is out of reach: this dish heats the load to ${warming.reachableC.value.toFixed(0)} °C at ${irradianceWPerM2.toFixed(0)} W/m²`,
      'use a larger dish, a vessel that catches more light, shelter from the wind, or a target below that',
    );
  const percent = (value: number) => `${(100 * value).toFixed(0)} %`;
  if (vessel.intercept.value < 0.8) {
    const { hanging } = vessel;
    const moved = hanging === null ? 0 : hanging.bestOffset - vessel.offset;
    const outside = hanging !== null && (vessel.offset < hanging.from || vessel.offset > hanging.to);
    warn(
      'spot-misses-vessel',
      outside ? ['vessel', 'offset'] : ['vessel', 'diameter'],
      outside
        ? ` of ${roundMm(vessel.offset)} mm lets only ${percent(vessel.intercept.value)} of the light hit the vessel`
        : ` of ${roundMm(2 * vessel.radius)} mm catches ${percent(vessel.intercept.value)} of the light`,
      outside
        ? `${roundMm(Math.abs(moved))} mm ${moved > 0 ? 'higher' : 'lower'} (vessel.offset ${roundMm(hanging.bestOffset)} mm) it would absorb ${roundMm(hanging.bestW)} W`
        : Number.isFinite(spot.radius90.value)
          ? `a diameter of ${(2 * spot.radius90.value).toFixed(0)} mm would catch 90 % across the axis, and ${vessel.minRibs} ribs make the panels narrow enough`
          : 'hardly any light reaches its plane; put it near the focus, and make it much smaller than the aperture',
    );
  }
  const { limitWPerM2, fluxWPerM2, defocus } = hotSpot;
  if (limitWPerM2 !== null && fluxWPerM2.value > limitWPerM2 && input.load !== null)
    warn(
      'scorches',
      ['load', 'filling'],
      ` ${input.load.filling} tolerates ${(limitWPerM2 / 1000).toFixed(0)} kW/m² at any one spot, but the brightest gives it ${(fluxWPerM2.value / 1000).toFixed(0)}: it scorches there unless it is stirred`,
      defocus === null
        ? 'use dish.profile: spread, a thicker base that spreads the heat, or a water bath'
        : `hang its base ${roundMm(Math.abs(defocus.offset))} mm ${defocus.offset < 0 ? 'below' : 'above'} the focus (vessel.offset ${roundMm(defocus.offset)} mm): that keeps within the limit and absorbs ${roundMm(defocus.takenUpW)} W, ${comparedWith(defocus.costW)} now`,
    );
  return found;
}
