/** The book's own script: the dish in space, pictures that zoom, parts that light up. */
import { lightParts } from './light.js';
import { spatialDish, type SpatialView } from './spatial.js';
import { makeZoomable } from './zoom.js';

document.documentElement.classList.add('live');
for (const figure of document.querySelectorAll<HTMLElement>('figure.zoom')) makeZoomable(figure);

let view: SpatialView | null = null;
lightParts((part) => view?.light(part));
// the drawn picture is there at once; the dish in space takes its place when the page has been shown
const stage = document.getElementById('stage');
if (stage) requestAnimationFrame(() => setTimeout(() => (view = spatialDish(stage))));
