/** The pin or staple that holds the panels, besides glue. */
import type { Dish } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { pinDepth, pinFor, pinReach, sizeSystemOf, stapleFor, stapleReach } from '../hardware/index.js';

export interface PanelFixing {
  readonly kind: 'pin' | 'staple';
  /** As it is sold. */
  readonly size: string;
  /** Of a pin, or of a staple's leg, mm. */
  readonly diameter: number;
  readonly length: number;
  /** The longest that any unit of the design would give: it decides the places, mm. */
  readonly reach: number;
}

/** What is driven through the panels; null where they are glued alone or lie under battens. */
export function panelFixing(design: Design, dish: Dish): PanelFixing | null {
  const system = sizeSystemOf(design.units);
  switch (design.panel.fixing) {
    case 'glue':
    case 'battens':
      return null;
    case 'staples': {
      const { staple, length } = stapleFor(dish.panelThickness, pinDepth, system);
      return {
        kind: 'staple',
        size: staple.size,
        diameter: staple.diameter,
        length,
        reach: stapleReach(dish.panelThickness, pinDepth),
      };
    }
    case 'pins': {
      const { pin, length } = pinFor(dish.panelThickness, pinDepth, system);
      return {
        kind: 'pin',
        size: pin.size,
        diameter: pin.diameter,
        length,
        reach: pinReach(dish.panelThickness, pinDepth),
      };
    }
  }
}
