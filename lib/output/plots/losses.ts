/** Where the sunlight on the aperture goes. */
import type { Forecast } from '../../optics/index.js';
import { writeCsv } from '../csv.js';
import { markup } from '../markup.js';
import { colours, frame, levelBar, picture, type ChartSize } from './chart.js';
import type { ForecastPlot } from './plot.js';

interface Bar {
  readonly label: string;
  readonly watts: number;
  readonly error: number;
  readonly kept: boolean;
}

/** A bar shorter than this share of the longest is not seen as one: those are drawn together. */
const SEEN = 0.02;

/** The bars that can be seen, in their order, and one for all others. */
function seenBars(bars: readonly Bar[]): Bar[] {
  const longest = Math.max(...bars.map(({ watts }) => watts));
  const there = bars.filter(({ watts }) => watts > 0);
  const small = there.filter(({ watts, kept }) => !kept && watts < SEEN * longest);
  if (small.length < 2) return there;
  const seen = there.filter((bar) => !small.includes(bar));
  const watts = small.reduce((sum, bar) => sum + bar.watts, 0);
  return [{ label: `${small.length} smaller losses together`, watts, error: 0, kept: false }, ...seen];
}

export function lossesPlot({ power, vessel }: Forecast): ForecastPlot {
  const bar = (label: string, amount: { value: number; standardError: number }, kept: boolean): Bar => ({
    label,
    watts: amount.value,
    error: amount.standardError,
    kept,
  });
  const bars = [
    ...power.losses.map(({ label, watts }) => bar(label, watts, false)),
    ...(vessel === null
      ? [bar('light at the focus', power.takenUpW, true)]
      : power.surfaces.map(({ surface, takenUpW }) => bar(`absorbed by the ${surface}`, takenUpW, true))),
  ];
  const title = 'Where the sunlight goes';
  const description = `Of ${power.incomingW.toFixed(0)} W on the aperture ${vessel === null ? 'the mirror brings to the focus' : 'the vessel takes up'} ${power.takenUpW.value.toFixed(0)} W; the losses: ${power.losses.map(({ label, watts }) => `${label} ${watts.value.toFixed(1)} W`).join('; ')}.`;
  const drawn = seenBars(bars);
  const [left, top, rowHeight, barHeight] = [12, 6, 38, 13];
  const size: ChartSize = { width: 480, height: top + 64 + rowHeight * drawn.length, left, right: 70, top, bottom: 58 };
  const max = Math.max(...drawn.map(({ watts }) => watts));
  const plot = frame(size, { label: 'power (W)', domain: [0, max], nice: true }, null);
  const svg = picture('losses', title, description, size, [
    plot.axes,
    ...drawn.map(({ label, watts, kept }, i) =>
      levelBar(plot, {
        value: watts,
        name: label,
        text: watts.toFixed(watts < 10 ? 1 : 0),
        colour: kept ? colours.green : colours.vermilion,
        middle: top + (i + 1) * rowHeight - barHeight / 2,
        height: barHeight,
        over: true,
      }),
    ),
    markup`<path d="M${left},${top}V${size.height - size.bottom}" stroke="currentColor"/>`,
  ]);
  const csv = writeCsv([
    ['what', 'watts', 'standard error'],
    ['falls on the aperture', { value: power.incomingW, digits: 3 }, { value: 0, digits: 4 }],
    ...bars.map(({ label, watts, error }) => [label, { value: watts, digits: 3 }, { value: error, digits: 4 }]),
  ]);
  return { name: 'losses', title, description, svg, csv };
}
