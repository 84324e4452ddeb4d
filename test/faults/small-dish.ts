/** A dish that is cut within a moment, for tests that cut it again and again. Without a vessel no light is traced. */
export function smallDish(name: string, extra = ''): string {
  return `name: ${name}
dish: { aperture: 300, focalLength: 150, ribs: 8 }
materials:
  ply: { kind: plywood, thickness: 6 }
  card: { kind: card, thickness: 0.5 }
stock:
  - { material: ply, size: 900 x 600 }
  - { material: card, size: 900 x 600 }
rib: { material: ply, pilotDiameter: 1.5 }
cleat: { length: 40, width: 16, screwDiameter: 2, headDiameter: 4, ribScrews: 1, downScrews: 1 }
panel: { material: card, gap: 1, fixing: glue }
process: { kind: hand }
template: { process: hand }
nest: { effort: 0 }
${extra}`;
}
