/** Router files of the sheets, what they keep to, and their pictures. */
import { drawSimulation } from '../check/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnosticText } from '../diagnostic/index.js';
import { planRouter, type RouterPlan } from '../machining/index.js';
import type { CutPicture, CutTool } from '../output/book/index.js';
import { formatLength, type LengthUnit } from '../units/index.js';
import { type RecordedSheet, writeNgc } from '../output/index.js';
import { routerData, routerProblems } from './problems.js';
import { holdingProblems, spreadSentence } from './thickness-problems.js';
import type { JobSheet, Prepared, Route } from './types.js';

/** What the head of a file says beside the standing sentences. @param spread of the sheet's thickness, if there is any */
export function headNotes({ toolWear, problems }: RouterPlan, spread: string | null): string[] {
  const wear = toolWear.map(({ tool, length }) => `tool ${tool} cuts ${(length / 1000).toFixed(1)} m`);
  return [
    ...(spread === null ? [] : [spread]),
    `On the whole sheet ${wear.join(', ')}.`,
    ...problems.map(diagnosticText),
  ];
}

function routeSheet(design: Design, parts: Prepared['parts'], sheet: JobSheet): Route {
  const { cut, nested } = sheet;
  const stock = design.stock.find(({ id }) => id === nested.stock);
  const material = stock && design.materials[stock.material];
  if (!stock || !material) throw new Error(`no stock ${nested.stock}`);
  const plan = planRouter(
    { cut, placed: nested.placed, keepOuts: stock.keepOuts },
    new Map(parts.map((part) => [part.id, part])),
    routerData(design),
    { kind: material.kind, thickness: material.thickest },
  );
  const header = {
    job: design.name,
    material: material.description,
    notes: headNotes(plan, spreadSentence(material, design)),
  };
  const folder = sheet.file.slice(0, sheet.file.lastIndexOf('/') + 1);
  const texts = [...writeNgc(plan.toolpath, header)];
  return { sheet, plan, files: new Map(texts.map(([name, text]) => [folder + name, text])) };
}

/** Routes every sheet that a router cuts. With an error among the problems the files are not to be used. */
export function routeSheets(
  { design, parts }: Pick<Prepared, 'design' | 'parts'>,
  sheets: readonly JobSheet[],
): { readonly routes: readonly Route[]; readonly problems: readonly Diagnostic[] } {
  const routes = sheets
    .filter(({ cut }) => cut.process.kind === 'router' && cut.compensated)
    .map((sheet) => routeSheet(design, parts, sheet));
  const thin = routes.flatMap(({ sheet, plan }) => {
    const stock = design.stock.find(({ id }) => id === sheet.nested.stock);
    const material = stock && design.materials[stock.material];
    return material ? holdingProblems(design, material, plan) : [];
  });
  const once = [...new Map(thin.map((problem) => [problem.message, problem])).values()];
  return { routes, problems: [...routerProblems(routes.flatMap(({ plan }) => plan.problems)), ...once] };
}

/** What the record states of a sheet's router files; nothing for a sheet without any. */
export function routerRecord(routes: readonly Route[], file: string): Pick<RecordedSheet, 'router'> {
  const route = routes.find(({ sheet }) => sheet.file === file);
  if (route === undefined || route.files.size === 0) return {};
  const { limits, cuttingSeconds, travelLength, toolWear } = route.plan;
  return { router: { files: [...route.files.keys()], limits, cuttingSeconds, travelLength, toolWear } };
}

const kindNames = { mill: 'end mill', drill: 'drill bit', v: 'V-bit of 90°' } as const;

/** The tools of a sheet in the order of the file. */
function toolsOf({ toolpath, toolWear }: RouterPlan, units: LengthUnit): CutTool[] {
  const first = toolpath.runs.filter(
    ({ tool }, i) => toolpath.runs.findIndex((run) => run.tool.number === tool.number) === i,
  );
  return first.map(({ tool, spindle }) => ({
    number: tool.number,
    name: `${formatLength(tool.sold ?? tool.diameter, units)} ${kindNames[tool.kind]}, ${tool.flutes} flutes`,
    spindle,
    length: toolWear.find((wear) => wear.tool === tool.number)?.length ?? 0,
  }));
}

/** Pictures of the sheets as the simulated router leaves them, drawn from the files' own text. */
export function routedPictures(routes: readonly Route[], units: LengthUnit): CutPicture[] {
  return routes
    .filter(({ files }) => files.size > 0)
    .map(({ sheet, plan, files }) => ({
      sheet: sheet.cut.id,
      routed: { cuttingSeconds: plan.cuttingSeconds, tools: toolsOf(plan, units) },
      svg: drawSimulation(
        [...files].map(([name, text]) => ({ name, text })),
        sheet.cut,
        { ...plan.limits, travelHeight: plan.toolpath.safeHeight, axes: plan.toolpath.axes },
      ),
    }));
}
