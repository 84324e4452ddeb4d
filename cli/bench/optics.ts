/** Times the ray trace and the forecast; one JSON line a case: what, size (rays), seconds (minimum of the runs), result. */
import { readFileSync } from 'node:fs';
import { readDesign } from '../../lib/index.js';
import { advise, forecast, type OpticsInput } from '../../lib/optics/index.js';
import { withShade } from '../../lib/optics/catch.js';
import { estimate } from '../../lib/optics/estimate.js';
import { disc } from '../../lib/optics/solid.js';
import { intercepts, squaredRadii } from '../../lib/optics/spot.js';
import { sunShape } from '../../lib/optics/sun-shape.js';
import { trace, type TraceSettings } from '../../lib/optics/trace.js';
import { inputOf, litOf } from '../../lib/pipeline/forecast.js';

const RUNS = 5;

function report(what: string, size: number, run: () => number): void {
  let figure = run();
  let seconds = Infinity;
  for (let i = 0; i < RUNS; i++) {
    const start = performance.now();
    figure = run();
    seconds = Math.min(seconds, (performance.now() - start) / 1000);
  }
  console.log(
    JSON.stringify({ what, size, seconds: Number(seconds.toPrecision(4)), figure: Number(figure.toPrecision(8)) }),
  );
}

/** What the light needs of a design file. */
function inputFrom(file: string): OpticsInput {
  const reading = readDesign(readFileSync(file, 'utf8'));
  if (reading.kind === 'refused') throw new Error(`${file} is refused`);
  return inputOf(litOf(reading.design));
}

/** Runs all cases; the result is the intercept of a 120 mm vessel, the watts taken up, or the least number of ribs. @param file the demo's design */
export function benchOptics(file: string): void {
  const input = inputFrom(file);
  const settings: TraceSettings = {
    shape: input.dish,
    sun: sunShape('uniform', 0),
    slopeError: 3e-3,
    specularity: 1e-3,
    edgeCurlMrad: null,
    pointing: 0,
    towards: 0,
    ribError: 0,
    ribShift: 0,
    tile: 0,
    rays: 1_000_000,
    batches: 16,
    seed: 1,
  };
  const intercept = (pointing: number) => {
    const rays = withShade(trace({ ...settings, pointing }), disc(130, 550));
    return estimate(intercepts(rays, squaredRadii(rays, 550), 60)).value;
  };
  report('trace, aimed true', 1_000_000, () => intercept(0));
  report('trace, aimed 1° off the sun', 1_000_000, () => intercept(Math.PI / 180));
  report('forecast', 262_144, () => forecast(input, { seed: 1 }).power.takenUpW.value);
  report('advice', 16_384, () => advise(input, { seed: 1 })?.ribs.best ?? NaN);
}
