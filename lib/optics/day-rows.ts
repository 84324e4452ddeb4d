/** The day by the hour and the months as rows. */
import { clockText } from './clock.js';
import type { DayForecast, HeatDay, HourRow, MonthRow } from './day-forecast.js';
import type { SummaryRow } from './summary.js';

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

const signed = (degrees: number, more: string, fewer: string): string =>
  `${Math.abs(degrees).toFixed(1)}° ${degrees < 0 ? fewer : more}`;

function hourRow({ hour, azimuthDeg, elevationDeg, irradianceWPerM2, light, turn }: HourRow): SummaryRow {
  const by = `${signed(turn.azimuthDeg, 'right', 'left')}, ${signed(turn.elevationDeg, 'up', 'down')}`;
  return {
    label: `at ${clockText(hour)}`,
    value: light.takenUp,
    unit: 'W',
    digits: 0,
    note: `sun ${elevationDeg.toFixed(0)}° high, ${azimuthDeg.toFixed(0)}° from north, ${irradianceWPerM2.toFixed(0)} W/m²; turn every ${turn.minutes.toFixed(0)} min, ${by}`,
  };
}

function heatingRows({ startHour, reachedHour, hours, steamKg }: HeatDay): SummaryRow[] {
  const last = hours[hours.length - 1];
  return [
    {
      label: 'heating from',
      value: clockText(startHour),
      unit: '',
      digits: 0,
      note:
        reachedHour === null
          ? `${last === undefined ? 0 : last.temperatureC.toFixed(0)} °C at the end of the day; the target is not reached`
          : `hot at ${clockText(reachedHour)}${steamKg > 0.05 ? `; ${steamKg.toFixed(1)} kg of steam by the end of the day` : ''}`,
    },
  ];
}

function monthRow({ month, noonElevationDeg, hours, takenUpKWh, litres }: MonthRow): SummaryRow {
  return {
    label: months[month - 1] ?? '',
    value: hours,
    unit: 'h',
    digits: 1,
    note: `of use on a clear day, ${takenUpKWh.toFixed(1)} kWh absorbed${litres === null ? '' : `, ${litres.toFixed(0)} litres`}; noon sun ${noonElevationDeg.toFixed(0)}° high`,
  };
}

/** Hours, the heating, the one best height for the day, and the months. */
export function byHourRows({ hours, heating, hanging, months: year }: DayForecast): SummaryRow[] {
  return [
    ...hours.map(hourRow),
    ...(heating === null ? [] : heatingRows(heating)),
    ...(hanging === null
      ? []
      : [
          {
            label: 'best height for the whole day',
            value: hanging.bestOffset,
            unit: 'mm',
            digits: 0,
            note: `above the focus (vessel.offset): ${hanging.bestW.toFixed(0)} W on average`,
          },
        ]),
    ...year.map(monthRow),
  ];
}
