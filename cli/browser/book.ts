/** The book's own script: the dish in space, pictures that zoom and open large, parts that light up. */
import { makeLarge } from './large.js';
import { lightParts } from './light.js';
import { spatialDish, type SpatialView } from './spatial.js';
import { makeZoomable } from './zoom.js';

document.documentElement.classList.add('live');
for (const figure of document.querySelectorAll<HTMLElement>('main figure:not(#drawn)'))
  makeLarge(figure, figure.classList.contains('zoom') ? makeZoomable(figure) : undefined);

let view: SpatialView | null = null;
lightParts((part) => view?.light(part));
// the drawn picture is there at once; the dish in space takes its place when the page has been shown
const stage = document.getElementById('stage');
if (stage) requestAnimationFrame(() => setTimeout(() => (view = spatialDish(stage))));
