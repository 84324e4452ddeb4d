/** Zoom and pan of a drawn picture: buttons, keys, drag, and the wheel with Ctrl held. */

interface Window {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const deepest = 1 / 40;

/** Puts a frame and buttons round the picture of a figure. */
export function makeZoomable(figure: HTMLElement): void {
  const svg = figure.querySelector('svg');
  if (!svg) return;
  const { x, y, width, height } = svg.viewBox.baseVal;
  const whole: Window = { x, y, width, height };
  let now = whole;
  const name = svg.getAttribute('aria-label') ?? 'picture';

  const show = (next: Window): void => {
    const w = Math.min(whole.width, Math.max(whole.width * deepest, next.width));
    const h = (w / whole.width) * whole.height;
    const inside = (at: number, size: number, from: number, room: number) =>
      Math.min(from + room - size, Math.max(from, at));
    now = {
      x: inside(next.x, w, whole.x, whole.width),
      y: inside(next.y, h, whole.y, whole.height),
      width: w,
      height: h,
    };
    svg.setAttribute('viewBox', `${now.x} ${now.y} ${now.width} ${now.height}`);
  };
  /** Zooms by `factor` about a place given as fractions of the frame. */
  const zoom = (factor: number, fx = 0.5, fy = 0.5): void => {
    const w = Math.min(whole.width, Math.max(whole.width * deepest, now.width * factor));
    const h = (w / whole.width) * whole.height;
    show({ x: now.x + (now.width - w) * fx, y: now.y + (now.height - h) * fy, width: w, height: h });
  };
  const pan = (dx: number, dy: number): void => show({ ...now, x: now.x + dx * now.width, y: now.y + dy * now.height });

  const pane = document.createElement('div');
  pane.className = 'pane';
  pane.tabIndex = 0;
  pane.setAttribute('role', 'group');
  pane.setAttribute('aria-label', `${name}. Arrow keys move it, plus and minus zoom.`);
  svg.replaceWith(pane);
  pane.append(svg);

  const tools = document.createElement('div');
  tools.className = 'tools';
  const actions: readonly (readonly [string, () => void])[] = [
    ['Zoom in', () => zoom(0.7)],
    ['Zoom out', () => zoom(1 / 0.7)],
    ['Whole', () => show(whole)],
  ];
  for (const [label, act] of actions) {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = label;
    button.addEventListener('click', act);
    tools.append(button);
  }
  pane.after(tools);

  const keys: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => pan(-0.15, 0),
    ArrowRight: () => pan(0.15, 0),
    ArrowUp: () => pan(0, -0.15),
    ArrowDown: () => pan(0, 0.15),
    '+': () => zoom(0.7),
    '=': () => zoom(0.7),
    '-': () => zoom(1 / 0.7),
    '0': () => show(whole),
  };
  pane.addEventListener('keydown', (event) => {
    const act = event.ctrlKey || event.metaKey || event.altKey ? undefined : keys[event.key];
    if (!act) return;
    event.preventDefault();
    act();
  });
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
