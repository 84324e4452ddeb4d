/** Sliders of what decides: while one moves a draft is worked out, and the file is written when it rests. */
import type { Outline, State, Steps } from '../../watch/shown.js';
import { element, make } from './dom.js';
import type { Seen, Send } from './form.js';

interface Slider {
  readonly name: string;
  readonly path: Steps;
  readonly label: string;
  /** mm, or a count. */
  readonly of: (outline: Outline) => number;
  readonly isLength: boolean;
}

const sliders: readonly Slider[] = [
  {
    name: 'aperture',
    path: ['dish', 'aperture'],
    label: 'Aperture',
    of: ({ profile }) => 2 * (profile.at(-1) ?? [0])[0],
    isLength: true,
  },
  { name: 'focal', path: ['dish', 'focalLength'], label: 'Focal length', of: ({ focus }) => focus, isLength: true },
  { name: 'ribs', path: ['dish', 'ribs'], label: 'Ribs', of: ({ ribs }) => ribs, isLength: false },
];

/** Where a slider rests this long it is meant (ms): arrow keys give a change for every step. */
const rest = 350;

const inFile: Readonly<Record<string, readonly [mm: number, step: number]>> = {
  mm: [1, 5],
  cm: [10, 0.5],
  m: [1000, 0.005],
  in: [25.4, 0.25],
  ft: [304.8, 0.02],
};

export interface Sliding {
  /** Each time one moves. */
  readonly moved: (path: Steps, value: string) => void;
  readonly send: Send;
}

export const statedAt = (state: State, path: Steps): string | null =>
  state.keys?.find((key) => key.path.join('.') === path.join('.'))?.shown ?? null;

let state: State | null = null;
let moving: string | null = null;

const unitOf = (now: State): string => statedAt(now, ['units']) ?? 'mm';

function setUp(slider: Slider, { moved, send }: Sliding): HTMLElement {
  const id = `slide-${slider.name}`;
  const input = make('input', { id, type: 'range', min: '0', max: '1', step: '1' });
  const output = make('output', { for: id, id: `${id}-value` });
  let timer = 0;
  let seen: Seen | undefined;
  const words = (): void => {
    const unit = slider.isLength && state ? ` ${unitOf(state)}` : '';
    output.textContent = `${input.value}${unit}`;
    input.setAttribute('aria-valuetext', output.textContent);
  };
  input.addEventListener('input', () => {
    clearTimeout(timer);
    moving = slider.name;
    if (state) seen ??= { was: statedAt(state, slider.path), revision: state.revision };
    words();
    moved(slider.path, input.value);
  });
  input.addEventListener('change', () => {
    clearTimeout(timer);
    const commit = (): void => {
      const begun = seen;
      seen = undefined;
      void send(slider.path, input.value, begun).finally(() => (moving = null));
    };
    timer = window.setTimeout(commit, rest);
  });
  return make('div', { class: 'slider' }, make('label', { for: id }, slider.label), input, output);
}

export function makeSliders(sliding: Sliding): void {
  element('sliders').replaceChildren(...sliders.map((slider) => setUp(slider, sliding)));
}

/** Brings the sliders to the state; one that is being moved is left alone. */
export function showSliders(now: State): void {
  const { outline, readOnly } = now;
  state = now;
  const [mm, step] = inFile[unitOf(now)] ?? [1, 5];
  for (const slider of sliders) {
    const input = element(`slide-${slider.name}`) as HTMLInputElement;
    input.disabled = readOnly || outline === null;
    if (!outline || moving === slider.name) continue;
    const value = slider.of(outline) / (slider.isLength ? mm : 1);
    const size = slider.isLength ? step : 1;
    // a range about the value that holds still while the value stays well within it
    const [low, high] = [Number(input.min), Number(input.max)];
    if (value < low + (high - low) * 0.1 || value > low + (high - low) * 0.9) {
      input.min = String(Math.max(slider.isLength ? size : 3, Math.round((value * 0.5) / size) * size));
      input.max = String(Math.round((value * 1.8) / size) * size);
    }
    input.step = String(size);
    input.value = String(value);
    const shown = slider.isLength ? `${Number(value.toFixed(3))} ${unitOf(now)}` : String(value);
    element(`slide-${slider.name}-value`).textContent = shown;
    input.setAttribute('aria-valuetext', shown);
  }
}
