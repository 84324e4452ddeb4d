/** What is wrong with an input, or out of the dish's reach, in the words of the design file. */
import { type Diagnostic, diagnostic, type DiagnosticCode } from '../diagnostic/index.js';
import { litRange } from '../dish/index.js';
import type { Forecast } from './forecast.js';
import { startOfDay, sunDay } from './sun-day.js';
import type { OpticsInput, Site } from './types.js';

/** A whole number of mm as text, 0 without a sign. */
const roundMm = (mm: number) => String(Math.round(mm));

const share = (value: number) => value > 0 && value <= 1;

/** Reports what is not fine; message after the key, and what would do. */
type Check = (
  fine: boolean,
  code: DiagnosticCode,
  path: readonly string[],
  rest: () => readonly [message: string, remedy: string],
) => void;

function checkPlaces(check: Check, { dish, vessel }: OpticsInput): void {
  const { apertureRadius: R, profile } = dish;
  const f = profile.focusHeight;
  const { diameter, offset } = vessel;
  check(dish.seamGap / 2 < Math.sin(dish.layout.halfAngle) * litRange(dish).to, 'panel', ['panel', 'gap'], () => [
    ` of ${dish.seamGap} mm leaves nothing of the panels`,
    'use a gap of a few millimetres',
  ]);
  check(diameter > 0 && diameter <= 2 * R, 'vessel', ['vessel', 'diameter'], () => [
    diameter > 0
      ? ` of ${diameter} mm is larger than the aperture of ${2 * R} mm and would shade the whole dish`
      : ` is ${diameter} mm`,
    'a tenth to a quarter of the aperture would do',
  ]);
  check(f + offset > 0, 'vessel', ['vessel', 'offset'], () => [
    ` of ${offset} mm puts the vessel below the vertex (the focus is ${f} mm above it)`,
    '0 puts it in the focus',
  ]);
}

function checkLight(check: Check, { vessel, reflector, sun }: OpticsInput): void {
  check(share(vessel.absorptance), 'vessel', ['vessel', 'absorptance'], () => [
    ` is ${vessel.absorptance}`,
    'it must be above 0 and at most 1',
  ]);
  check(share(vessel.emittance), 'vessel', ['vessel', 'emittance'], () => [
    ` is ${vessel.emittance}`,
    'it must be above 0 and at most 1',
  ]);
  check(reflector.reflectance !== 0, 'no-mirror', ['reflector', 'material'], () => [
    ' is left out or names something that is no mirror, so nothing comes to the focus',
    'name a film or an aluminium sheet, or state reflector.finish (such as mirror-tiles) or reflector.reflectance',
  ]);
  check(reflector.reflectance === 0 || share(reflector.reflectance), 'reflector', ['reflector', 'reflectance'], () => [
    ` is ${reflector.reflectance}`,
    'it must be above 0 and at most 1; a clean mirror sheet gives 0.8 to 0.95',
  ]);
  check(reflector.stripSeamShare >= 0 && reflector.stripSeamShare < 1, 'reflector', ['reflector'], () => [
    `: tape, inset and joints cover ${(100 * reflector.stripSeamShare).toFixed(0)} % of the panels, which leaves no mirror`,
    'use narrower reflector.tape or a smaller reflector.inset',
  ]);
  check(sun.irradianceWPerM2 > 0 && sun.irradianceWPerM2 <= 1400, 'sun', ['sun', 'irradiance'], () => [
    ` is ${sun.irradianceWPerM2} W/m²`,
    'it must be above 0 and at most 1400 W/m²',
  ]);
  const csr = sun.circumsolarRatio;
  check(csr >= 0 && csr <= 0.8, 'sun', ['sun', 'circumsolarRatio'], () => [` is ${csr}`, 'it must be 0 to 0.8']);
  check(sun.pointingErrorDeg >= 0 && sun.pointingErrorDeg <= 20, 'sun', ['sun', 'pointingError'], () => [
    ` is ${sun.pointingErrorDeg} deg`,
    'it must be 0 to 20 deg',
  ]);
}

function checkLoad(check: Check, { load, air }: OpticsInput): void {
  check(air.windMPerS >= 0, 'load', ['load', 'wind'], () => [` is ${air.windMPerS} m/s`, 'it must be at least 0 m/s']);
  if (load === null) return;
  const { startC, targetC, boilingPointC } = load;
  check(targetC > startC, 'load', ['load', 'target'], () => [
    ` of ${targetC} °C is not above load.start (${startC} °C)`,
    `use more than ${startC} °C`,
  ]);
  check(targetC <= boilingPointC, 'boiling', ['load', 'target'], () => [
    ` of ${targetC} °C is above load.boilingPoint (${boilingPointC} °C): the liquid boils away and gets no hotter`,
    `use ${boilingPointC} °C or less, or give the boiling point of the liquid at the place`,
  ]);
  check(startC < boilingPointC, 'boiling', ['load', 'start'], () => [
    ` of ${startC} °C is not below load.boilingPoint (${boilingPointC} °C)`,
    `use less than ${boilingPointC} °C`,
  ]);
}

function checkSite(check: Check, site: Site): void {
  check(Math.abs(site.latitudeDeg) <= 90, 'site', ['site', 'latitude'], () => [
    ` is ${site.latitudeDeg} deg`,
    'it must be -90 to 90 deg',
  ]);
  check(Math.abs(site.longitudeDeg) <= 180, 'site', ['site', 'longitude'], () => [
    ` is ${site.longitudeDeg} deg`,
    'it must be -180 to 180 deg',
  ]);
  check(!Number.isNaN(startOfDay(site.date)), 'site', ['site', 'date'], () => [
    ` ${site.date} is not a day of the calendar`,
    'write it as 2026-06-21',
  ]);
}

function checkDay(check: Check, site: Site): void {
  const day = sunDay(site);
  check(day.aiming.kind !== 'never', 'no-sun', ['site', 'date'], () => [
    ` ${site.date}: at latitude ${site.latitudeDeg} the sun stands at ${day.noonElevationDeg.toFixed(1)}° at most, and the dish is used from ${site.minElevationDeg}° up (site.minElevation)`,
    'choose another day',
  ]);
}

/** Everything that keeps the forecast from being made; with an error among them it must not be asked for. */
export function inputProblems(input: OpticsInput): Diagnostic[] {
  const { site } = input;
  const found: Diagnostic[] = [];
  const check: Check = (fine, code, path, rest) => {
    if (fine) return;
    const [message, remedy] = rest();
    found.push(diagnostic(code, path, `${path.join('.')}${message}`, remedy));
  };
  checkPlaces(check, input);
  checkLight(check, input);
  checkLoad(check, input);
  if (site !== null) checkSite(check, site);
  if (site !== null && found.length === 0) checkDay(check, site);
  return found;
}

/** What the forecast found that the builder must know. */
export function forecastProblems(input: OpticsInput, forecast: Forecast): Diagnostic[] {
  const found: Diagnostic[] = [];
  const warn = (code: DiagnosticCode, path: readonly string[], message: string, remedy: string) =>
    found.push(diagnostic(code, path, `${path.join('.')}${message}`, remedy, 'warning'));
  const { warming } = forecast.heat;
  if (warming.kind === 'out-of-reach' && input.load !== null) {
    const reach = warming.reachableC.value;
    warn(
      'target-out-of-reach',
      ['load', 'target'],
      ` of ${input.load.targetC} °C is out of reach: this dish brings the load to ${reach.toFixed(0)} °C at ${forecast.irradianceWPerM2.toFixed(0)} W/m²`,
      'a larger dish, a vessel that catches more, shelter from the wind, or a target below that would do',
    );
  }
  if (forecast.spot.intercept.value < 0.8) {
    const { bestPlane, interceptInBestPlane, intercept } = forecast.spot;
    const percent = (value: number) => `${(100 * value).toFixed(0)} %`;
    warn(
      'spot-misses-vessel',
      ['vessel', 'diameter'],
      ` of ${input.vessel.diameter} mm catches ${percent(intercept.value)} of the light`,
      interceptInBestPlane.value > intercept.value + 0.02
        ? `set ${roundMm(bestPlane.value - forecast.vessel.height)} mm from where it stands (vessel.offset ${roundMm(bestPlane.value - input.dish.profile.focusHeight)} mm) it would catch ${percent(interceptInBestPlane.value)}`
        : Number.isFinite(forecast.spot.radius90.value)
          ? `a diameter of ${(2 * forecast.spot.radius90.value).toFixed(0)} mm would catch 90 %, and ${forecast.minRibs} ribs make the panels narrow enough`
          : 'hardly any light comes to its plane; put it near the focus, and keep it well below the aperture in size',
    );
  }
  return found;
}
