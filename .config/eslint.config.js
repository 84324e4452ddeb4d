import tseslint from 'typescript-eslint';

// words of earlier names, with the field's own word for each: DEVELOPERS.md has the glossary
const oldWords = [
  ['(least|most)([A-Z_].*)?|(LEAST|MOST)(_.*)?', 'min and max'],
  ['told|tells?|says', 'report, result, statement or state'],
  ['rooms?|room[A-Z].*', 'module, clearance, area or width'],
  ['ways?', 'path, orientation, direction or length'],
  ['rims', 'boundary edges'],
  ['spoil|spoilt', 'mutate, mutated'],
  ['bush|.*Bush', 'bushing'],
  ['throughCut', 'overcut'],
  ['poses?|strew.*|clash(es)?|wound|amiss|anew|besides?', 'place, scatter, overlap, fill rule, invalid, again, with'],
  ['[mM]eetings?|.*Meetings?', 'intersections'],
  ['figures|(stock|Stock)Figures', 'values, results, digits or plots; a figure is the shape of the dish alone'],
  ['whole(Auto|Key|Number)', 'integer'],
];

export default tseslint.config(
  { ignores: ['dist/**', 'out/**', 'node_modules/**'] },
  ...tseslint.configs.strictTypeChecked,
  {
    languageOptions: {
      parserOptions: {
        project: ['./test/tsconfig.json', './cli/browser/tsconfig.json'],
        tsconfigRootDir: new URL('..', import.meta.url).pathname,
      },
    },
    rules: {
      'max-lines': ['error', 350],
      complexity: ['error', 20],
      'no-restricted-syntax': [
        'error',
        ...oldWords.map(([words, better]) => ({
          selector: `Identifier[name=/^(${words})$/]`,
          message: `A word of an earlier name; use ${better}.`,
        })),
      ],
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true, allowBoolean: true }],
      '@typescript-eslint/no-unnecessary-condition': ['error', { allowConstantLoopConditions: true }],
      // typed arrays in hot loops are indexed within bounds that the loop itself states
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
    },
  },
  // tests are lists of cases
  { files: ['lib/**', 'cli/**'], rules: { 'max-lines-per-function': ['error', 80] } },
);
