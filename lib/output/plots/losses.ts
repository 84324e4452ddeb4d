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

/** What is too little to be seen as a bar stands in the description and the numbers only, W. */
const SHOWN_W = 0.05;

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
      : power.surfaces.map(({ surface, takenUpW }) => bar(`taken up by the ${surface}`, takenUpW, true))),
  ];
  const title = 'Where the sunlight goes';
  const description = `Of ${power.incomingW.toFixed(0)} W on the aperture ${vessel === null ? 'the mirror brings to the focus' : 'the vessel takes up'} ${power.takenUpW.value.toFixed(0)} W; the losses: ${power.losses.map(({ label, watts }) => `${label} ${watts.value.toFixed(1)} W`).join('; ')}.`;
  const drawn = bars.filter(({ watts }) => Math.abs(watts) >= SHOWN_W);
  const left = 310;
  const rowHeight = 30;
  const top = 16;
  const size: ChartSize = { width: 740, height: 68 + rowHeight * drawn.length, left, right: 70, top, bottom: 52 };
  const max = Math.max(...drawn.map(({ watts }) => watts));
  const plot = frame(size, { label: 'power (W)', domain: [0, max], nice: true }, null);
  const svg = picture('losses', title, description, size, [
    plot.axes,
    ...drawn.map(({ label, watts, kept }, i) =>
      levelBar(plot, {
        value: watts,
        name: label,
        text: watts.toFixed(1),
        colour: kept ? colours.green : colours.vermilion,
        middle: top + (i + 0.5) * rowHeight,
        height: 26,
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
