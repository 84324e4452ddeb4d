/**
 * Texts of the pictures of a page that touch another text or a line that measures or points, or are cut off. It is run in the page, by
 * what the browser has set: the ink of each text in its own font, turned as it is turned. It shares no code with what
 * places them.
 */
import type { Page } from 'playwright-core';

const script = `(() => {
  const pen = document.createElement('canvas').getContext('2d');
  const inkOf = (text) => {
    const { fontStyle, fontWeight, fontFamily } = getComputedStyle(text);
    // measured large, as letters of a millimetre are rounded
    const size = 100;
    pen.font = [fontStyle, fontWeight, size + 'px', fontFamily].join(' ');
    const ink = pen.measureText(text.textContent);
    const box = text.getBBox();
    const em = box.height / (ink.fontBoundingBoxAscent + ink.fontBoundingBoxDescent);
    const base = box.y + ink.fontBoundingBoxAscent * em;
    const [top, bottom] = [base - ink.actualBoundingBoxAscent * em, base + ink.actualBoundingBoxDescent * em];
    const to = text.getScreenCTM();
    return [[box.x, top], [box.x + box.width, top], [box.x + box.width, bottom], [box.x, bottom]]
      .map(([x, y]) => [to.a * x + to.c * y + to.e, to.b * x + to.d * y + to.f]);
  };
  const subpaths = (path) => (path.getAttribute('d').match(/M[^M]*/g) ?? []).flatMap((d) => {
    const one = path.cloneNode();
    one.setAttribute('d', d);
    const plain = [...d.matchAll(/([ML])([-\\d.e]+)[ ,]([-\\d.e]+)/g)];
    if (plain.length > 0 && !/[A-KN-Z a-z]/.test(d.replace(/[ML][-\\d.e]+[ ,][-\\d.e]+|Z$/gi, '')))
      return [[...plain.map(([, , x, y]) => [Number(x), Number(y)]), ...(/Z$/i.test(d) ? [[Number(plain[0][2]), Number(plain[0][3])]] : [])]];
    const long = one.getTotalLength();
    return [Array.from({ length: 121 }, (_, i) => { const { x, y } = one.getPointAtLength((long * i) / 120); return [x, y]; })];
  });
  const linesOf = (path) => {
    const to = path.getScreenCTM();
    return subpaths(path).map((points) => points.map(([x, y]) => [to.a * x + to.c * y + to.e, to.b * x + to.d * y + to.f]));
  };
  // axes along which two convex shapes are held apart
  const normals = (shape) => shape.slice(0, shape.length === 2 ? 1 : 4).map(([x, y], i) => {
    const [u, v] = shape[(i + 1) % shape.length];
    const size = Math.hypot(u - x, v - y) || 1;
    return [(y - v) / size, (u - x) / size];
  });
  const deep = (a, b) => Math.min(...[...normals(a), ...normals(b)].map(([x, y]) => {
    const [p, q] = [a, b].map((shape) => shape.map(([u, v]) => x * u + y * v));
    return Math.min(Math.max(...p) - Math.min(...q), Math.max(...q) - Math.min(...p));
  }));
  const extent = (shape) => { const xs = shape.map(([x]) => x), ys = shape.map(([, y]) => y); return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)]; };
  const far = (a, b) => a[0] > b[2] || b[0] > a[2] || a[1] > b[3] || b[1] > a[3];
  const counted = { pictures: 0, texts: 0, lines: 0 };
  const found = [];
  for (const svg of document.querySelectorAll('main svg:not(.true)')) {
    if (svg.getClientRects().length === 0) continue;
    counted.pictures += 1;
    const name = (svg.getAttribute('aria-label') ?? svg.querySelector('title')?.textContent ?? '').slice(0, 70);
    // a hundredth of the height of a text is no overlap
    const texts = [...svg.querySelectorAll('text')].filter((each) => each.textContent.trim() !== '').map((each) => {
      const ink = inkOf(each);
      return { text: each.textContent, ink, box: extent(ink), slack: 0.02 * Math.hypot(ink[3][0] - ink[0][0], ink[3][1] - ink[0][1]) };
    });
    counted.texts += texts.length;
    const paths = svg.matches('.shop') ? 'g > path[class^=l-]' : svg.matches('.forecast-plot') ? 'no-line' : 'path.leader, path.way, path.along, path.thin, path.dim, path.axis, path.ray';
    const lines = [...svg.querySelectorAll(paths)].flatMap(linesOf).flatMap((points) => points.slice(1).map((b, i) => { const line = [points[i], b]; return { line, box: extent(line) }; }));
    counted.lines += lines.length;
    const { left, right, top, bottom } = svg.getBoundingClientRect();
    texts.forEach((one, i) => {
      // to the whole pixel, as the browser rounds it
      if (one.box[0] < left - 1 || one.box[1] < top - 1 || one.box[2] > right + 1 || one.box[3] > bottom + 1) found.push(name + ': "' + one.text + '" is cut off');
      for (const other of texts.slice(i + 1))
        if (!far(one.box, other.box) && deep(one.ink, other.ink) > Math.min(one.slack, other.slack)) found.push(name + ': "' + one.text + '" on "' + other.text + '"');
      if (lines.some(({ line, box }) => !far(one.box, box) && deep(one.ink, line) > one.slack)) found.push(name + ': a line through "' + one.text + '"');
    });
  }
  return { found, counted };
})()`;

export interface Crowding {
  readonly found: readonly string[];
  /** What was looked at. */
  readonly counted: { readonly pictures: number; readonly texts: number; readonly lines: number };
}

/** Of all pictures that are shown. */
export function crowdedIn(page: Page): Promise<Crowding> {
  return page.evaluate<Crowding>(script);
}
