/** Zoom and pan of a drawn picture: buttons, keys, drag, and the wheel with Ctrl held. */

interface Window {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** What of a picture is shown, and how that is changed. */
interface View {
  /** Zooms by `factor` about a place given as fractions of the frame, or its middle. */
  readonly zoom: (factor: number, fx?: number, fy?: number) => void;
  /** Moves by fractions of the frame. */
  readonly pan: (dx: number, dy: number) => void;
  readonly all: () => void;
}

const deepest = 1 / 40;

function viewOf(svg: SVGSVGElement): View {
  const { x, y, width, height } = svg.viewBox.baseVal;
  const whole: Window = { x, y, width, height };
  let now = whole;
  const show = (next: Window): void => {
    const w = Math.min(whole.width, Math.max(whole.width * deepest, next.width));
    const h = (w / whole.width) * whole.height;
    const inside = (at: number, size: number, from: number, space: number) =>
      Math.min(from + space - size, Math.max(from, at));
    now = {
      x: inside(next.x, w, whole.x, whole.width),
      y: inside(next.y, h, whole.y, whole.height),
      width: w,
      height: h,
    };
    svg.setAttribute('viewBox', `${now.x} ${now.y} ${now.width} ${now.height}`);
  };
  return {
    zoom: (factor, fx = 0.5, fy = 0.5) => {
      const w = Math.min(whole.width, Math.max(whole.width * deepest, now.width * factor));
      const h = (w / whole.width) * whole.height;
      show({ x: now.x + (now.width - w) * fx, y: now.y + (now.height - h) * fy, width: w, height: h });
    },
    pan: (dx, dy) => show({ ...now, x: now.x + dx * now.width, y: now.y + dy * now.height }),
    all: () => show(whole),
  };
}

/** A frame in the picture's place, with the picture in it. */
function frameOf(svg: SVGSVGElement): HTMLElement {
  const pane = document.createElement('div');
  pane.className = 'pane';
  pane.tabIndex = 0;
  pane.setAttribute('role', 'group');
  const name = svg.getAttribute('aria-label') ?? 'picture';
  pane.setAttribute('aria-label', `${name}. Arrow keys move it, plus and minus zoom.`);
  svg.replaceWith(pane);
  pane.append(svg);
  return pane;
}

function buttonsOf({ zoom, all }: View): HTMLElement {
  const tools = document.createElement('div');
  tools.className = 'tools';
  const actions: readonly (readonly [string, () => void])[] = [
    ['Zoom in', () => zoom(0.7)],
    ['Zoom out', () => zoom(1 / 0.7)],
    ['Whole', all],
  ];
  for (const [label, act] of actions) {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = label;
    button.addEventListener('click', act);
    tools.append(button);
  }
  return tools;
}

function listenToKeys(pane: HTMLElement, { zoom, pan, all }: View): void {
  const keys: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => pan(-0.15, 0),
    ArrowRight: () => pan(0.15, 0),
    ArrowUp: () => pan(0, -0.15),
    ArrowDown: () => pan(0, 0.15),
    '+': () => zoom(0.7),
    '=': () => zoom(0.7),
    '-': () => zoom(1 / 0.7),
    '0': all,
  };
  pane.addEventListener('keydown', (event) => {
    const act = event.ctrlKey || event.metaKey || event.altKey ? undefined : keys[event.key];
    if (!act) return;
    event.preventDefault();
    act();
  });
}

function listenToPointer(pane: HTMLElement, { zoom, pan }: View): void {
  pane.addEventListener(
    'wheel',
    (event) => {
      // the bare wheel belongs to the page
      if (!event.ctrlKey) return;
      event.preventDefault();
      const box = pane.getBoundingClientRect();
      zoom(
        Math.exp(event.deltaY / 300),
        (event.clientX - box.left) / box.width,
        (event.clientY - box.top) / box.height,
      );
    },
    { passive: false },
  );
  pane.addEventListener('pointermove', (event) => {
    if (event.buttons !== 1) return;
    const box = pane.getBoundingClientRect();
    pan(-event.movementX / box.width, -event.movementY / box.height);
  });
}

/**
 * Puts a frame and buttons round the picture of a figure.
 * @returns what shows the whole picture again
 */
export function makeZoomable(figure: HTMLElement): () => void {
  const svg = figure.querySelector('svg');
  if (!svg) return () => undefined;
  const view = viewOf(svg);
  const pane = frameOf(svg);
  pane.after(buttonsOf(view));
  listenToKeys(pane, view);
  listenToPointer(pane, view);
  return view.all;
}
