/** A picture over the whole window, at a size at which its smallest letters can be read, to be moved as a page is. */

/** Smallest letters, px. */
const LEGIBLE = 12;
/** Each step of the buttons and keys. */
const STEP = 1.4;
/** Where pictures are wide enough to be read in their place, a press on them does not open them. */
const narrow = matchMedia('(max-width:46rem)');

const nameOf = (svg: SVGSVGElement): string =>
  svg.getAttribute('aria-label') ?? svg.querySelector('title')?.textContent ?? 'Picture';

/** Height of the smallest letters in units of the picture; null where it has none. */
function smallestLetters(svg: SVGSVGElement): number | null {
  const sizes = [...svg.querySelectorAll('text')].map((text) => Number.parseFloat(getComputedStyle(text).fontSize));
  return sizes.length === 0 ? null : Math.min(...sizes);
}

function buttonOf(text: string, label: string, act: () => void): HTMLButtonElement {
  const button = document.createElement('button');
  button.type = 'button';
  button.textContent = text;
  button.setAttribute('aria-label', label);
  button.addEventListener('click', act);
  return button;
}

interface Frame {
  readonly pane: HTMLElement;
  readonly zoom: (factor: number) => void;
  /** Brings a place, as fractions of the picture, to the middle. */
  readonly look: (fx: number, fy: number) => void;
}

/** The frame in which the picture lies; the browser scrolls it by touch, wheel and arrow keys. */
function frameOf(svg: SVGSVGElement): Frame {
  const pane = document.createElement('div');
  pane.className = 'pane';
  pane.tabIndex = 0;
  pane.setAttribute('role', 'group');
  pane.setAttribute('aria-label', `${nameOf(svg)}. Arrow keys move it, plus and minus zoom.`);
  pane.append(svg);
  let scale = 1;
  const look = (fx: number, fy: number): void => {
    pane.scrollLeft = fx * svg.clientWidth - pane.clientWidth / 2;
    pane.scrollTop = fy * svg.clientHeight - pane.clientHeight / 2;
  };
  const { width, height } = svg.viewBox.baseVal;
  const size = (): void => {
    const letters = smallestLetters(svg);
    const whole = Math.min(pane.clientWidth / width, pane.clientHeight / height);
    svg.style.width = `${scale * Math.max(whole, letters === null ? 0 : LEGIBLE / letters) * width}px`;
  };
  pane.addEventListener('pointermove', (event) => {
    if (event.pointerType === 'mouse' && event.buttons === 1) pane.scrollBy(-event.movementX, -event.movementY);
  });
  const zoom = (factor: number): void => {
    const fx = (pane.scrollLeft + pane.clientWidth / 2) / (svg.clientWidth || 1);
    const fy = (pane.scrollTop + pane.clientHeight / 2) / (svg.clientHeight || 1);
    scale = Math.min(8, Math.max(0.2, scale * factor));
    size();
    look(fx, fy);
  };
  return { pane, zoom, look };
}

/** Opens a picture; it goes back to its place when it is closed. */
function open(svg: SVGSVGElement, at: readonly [number, number] | null): void {
  const place = document.createComment('');
  svg.replaceWith(place);
  const dialog = document.createElement('dialog');
  dialog.className = 'large';
  dialog.setAttribute('aria-label', nameOf(svg));
  const { pane, zoom, look } = frameOf(svg);
  const tools = document.createElement('div');
  tools.className = 'tools';
  tools.append(
    buttonOf('Close', 'Close the large picture', () => dialog.close()),
    buttonOf('+', 'Zoom in', () => zoom(STEP)),
    buttonOf('−', 'Zoom out', () => zoom(1 / STEP)),
  );
  dialog.append(tools, pane);
  dialog.addEventListener('keydown', ({ key }) => {
    if (key === '+' || key === '=') zoom(STEP);
    if (key === '-') zoom(1 / STEP);
  });
  dialog.addEventListener('close', () => {
    svg.style.width = '';
    place.replaceWith(svg);
    dialog.remove();
  });
  document.body.append(dialog);
  dialog.showModal();
  zoom(1);
  if (at === null) pane.scrollTo(0, 0);
  else look(...at);
  pane.focus();
}

/**
 * Lets the picture of a figure be opened by its button, and by a tap where it is small.
 * @param whole called before it opens
 */
export function makeLarge(figure: HTMLElement, whole: () => void = () => undefined): void {
  const svg = figure.querySelector('svg');
  if (!svg) return;
  const show = (at: readonly [number, number] | null): void => {
    whole();
    open(svg, at);
  };
  const button = buttonOf('Large', `Large: ${nameOf(svg)}`, () => show(null));
  const tools = figure.querySelector('.tools');
  if (tools) tools.append(button);
  else {
    const own = document.createElement('div');
    own.className = 'tools narrow';
    own.append(button);
    (svg.closest('.scroll') ?? svg).after(own);
  }
  svg.addEventListener('click', (event) => {
    if (!narrow.matches || svg.closest('dialog')) return;
    const box = svg.getBoundingClientRect();
    show([(event.clientX - box.left) / box.width, (event.clientY - box.top) / box.height]);
  });
}
