/** The little of the parser's interface that the tests use; it comes without types of its own. */
declare module 'gcode-toolpath' {
  interface Place {
    readonly x: number;
    readonly y: number;
    readonly z: number;
  }
  interface Modal {
    readonly motion: string;
  }
  export default class Toolpath {
    constructor(options: {
      readonly addLine: (modal: Modal, from: Place, to: Place) => void;
      readonly addArcCurve: (modal: Modal, from: Place, to: Place, centre: Place) => void;
    });
    loadFromStringSync(text: string): unknown;
  }
}
