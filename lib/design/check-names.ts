/** Names of materials: each listed, and none that a file system takes for another. */
import { type Diagnostic, diagnostic, type KeyPath, pathText } from '../diagnostic/index.js';
import { nearestWord } from './nearest.js';
import type { DesignFile } from './schema.js';

/** Every key that names a material, with the name. */
function uses(file: DesignFile): readonly (readonly [KeyPath, string | undefined])[] {
  return [
    [['rib', 'material'], file.rib.material],
    [['hub', 'material'], file.hub.material],
    [['cleat', 'material'], file.cleat.material],
    [['board', 'material'], file.board.material],
    [['panel', 'material'], file.panel.material],
    [['panel', 'battenMaterial'], file.panel.battenMaterial],
    [['reflector', 'material'], file.reflector.material],
    [['template', 'material'], file.template.material],
    [['stand', 'material'], file.stand?.material],
    [['stand', 'baseMaterial'], file.stand?.baseMaterial],
    ...file.stock.map(({ material }, index): [KeyPath, string] => [['stock', index, 'material'], material]),
    ...file.extra.map(({ material }, index): [KeyPath, string] => [['extra', index, 'material'], material]),
  ];
}

function unknownNames(file: DesignFile): Diagnostic[] {
  const known = Object.keys(file.materials);
  return uses(file).flatMap(([path, name]) => {
    if (name === undefined || Object.hasOwn(file.materials, name)) return [];
    const near = nearestWord(name, known);
    const remedy = near === null ? `known: ${known.join(', ') || 'none'}` : `did you mean ${near}?`;
    const message = `${pathText(path)} names the material "${name}", which is not in materials`;
    return [diagnostic('unknown-material', path, message, remedy)];
  });
}

/** Names of materials become names of files: `Ply` and `ply` are one file on many systems. Both are reported. */
function collidingNames(file: DesignFile): Diagnostic[] {
  const names = Object.keys(file.materials);
  return names.flatMap((name) => {
    const twin = names.find((other) => other !== name && other.toLowerCase() === name.toLowerCase());
    if (twin === undefined) return [];
    const message = `the materials "${name}" and "${twin}" differ only in upper and lower case, and many file systems would take their files for the same one`;
    return [diagnostic('names-collide', ['materials', name], message, 'rename one of them')];
  });
}

/** What is wrong with the names of materials. */
export function checkNames(file: DesignFile): Diagnostic[] {
  const none =
    Object.keys(file.materials).length > 0
      ? []
      : [diagnostic('no-materials', ['materials'], 'materials is empty', 'name at least the rib and panel materials')];
  return [...none, ...unknownNames(file), ...collidingNames(file)];
}
