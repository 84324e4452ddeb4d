/** What the tests use of the solids library; its own declarations name files without their endings. */
declare module 'manifold-3d' {
  export interface Manifold {
    transform(columns: readonly number[]): Manifold;
    translate(x: number, y: number, z: number): Manifold;
    rotate(x: number, y: number, z: number): Manifold;
    intersect(other: Manifold): Manifold;
    subtract(other: Manifold): Manifold;
    trimByPlane(normal: readonly [number, number, number], offset: number): Manifold;
    getMesh(): { readonly vertProperties: Float32Array; readonly triVerts: Uint32Array; readonly numProp: number };
    volume(): number;
  }
  export interface ManifoldToplevel {
    setup(): void;
    readonly CrossSection: new (
      rings: readonly (readonly (readonly [number, number])[])[],
      fillRule: 'NonZero' | 'EvenOdd',
    ) => { extrude(height: number): Manifold };
    readonly Manifold: {
      union(solids: readonly Manifold[]): Manifold;
      cylinder(height: number, radiusLow: number, radiusHigh: number, segments: number): Manifold;
      hull(points: readonly (readonly [number, number, number])[]): Manifold;
    };
  }
  export default function load(): Promise<ManifoldToplevel>;
}
