/**
 * The modules of dxf-writer that `write.ts` builds on, as far as it needs them. The package's own types know neither
 * layers that can be extended nor handles, and take numbers alone, which print with an exponent when they are small.
 */
declare module 'dxf-writer/src/Handle.js' {
  /** Counts the handles of every drawing in this process. */
  const Handle: { seed: number };
  export default Handle;
}

declare module 'dxf-writer/src/Layer.js' {
  export interface TagsManager {
    push(code: number, value: string | number): void;
  }
  export interface Shape {
    layer: Layer;
  }
  export default class Layer {
    constructor(name: string, colourIndex: number, lineType: string);
    readonly shapes: Shape[];
    addShape(shape: Shape): void;
    tags(manager: TagsManager): void;
  }
}

declare module 'dxf-writer/src/Drawing.js' {
  import type Layer from 'dxf-writer/src/Layer.js';

  export default class Drawing {
    readonly layers: Record<string, Layer>;
    setUnits(unit: 'Millimeters'): this;
    header(variable: string, tags: readonly (readonly [code: number, value: string | number])[]): this;
    setActiveLayer(name: string): this;
    drawCircle(x: string, y: string, radius: string): this;
    drawPolyline(points: readonly (readonly string[])[], closed: boolean): this;
    toDxfString(): string;
  }
}
