import tseslint from 'typescript-eslint';

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
