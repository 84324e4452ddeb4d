/** What the tests use of the solids library; its own declarations name files without their endings. */
declare module 'manifold-3d' {
  export interface Manifold {
    transform(columns: readonly number[]): Manifold;
    translate(x: number, y: number, z: number): Manifold;
    intersect(other: Manifold): Manifold;
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
      hull(points: readonly (readonly [number, number, number])[]): Manifold;
    };
  }
  export default function load(): Promise<ManifoldToplevel>;
}
