/** The linter's rules. Run from the top of the repository: patterns below are relative to it. */
import eslint from '@eslint/js';
import officeAddins from 'eslint-plugin-office-addins';
import tseslint from 'typescript-eslint';
import { layerRules } from './layers.mjs';

const NODE_GLOBALS = ['process', 'console', 'URL'];

function readable(...names) {
  return Object.fromEntries(names.map((name) => [name, 'readonly']));
}

export default tseslint.config(
  { ignores: ['dist/**', 'coverage/**', '.cache/**'] },
  eslint.configs.recommended,
  {
    files: ['**/*.ts'],
    extends: [tseslint.configs.recommendedTypeChecked, tseslint.configs.stylisticTypeChecked],
    languageOptions: {
      parserOptions: { projectService: true, tsconfigRootDir: process.cwd() },
    },
    rules: {
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      // Numbers stand in sentences all over; only objects and the like turn into nonsense there.
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      // Index signatures are read with brackets under noPropertyAccessFromIndexSignature and without it alike.
      '@typescript-eslint/dot-notation': 'off',
      eqeqeq: 'error',
    },
  },
  {
    // Plain records, whose functions know no "this" and may be taken out of them; classes live in the hosts.
    files: ['src/core/**/*.ts', 'src/functions/**/*.ts', 'src/sheets/**/*.ts', 'tests/**/*.ts'],
    rules: { '@typescript-eslint/unbound-method': 'off' },
  },
  {
    files: ['**/*.{js,cjs}'],
    languageOptions: {
      sourceType: 'commonjs',
      globals: readable('require', 'module', '__dirname', '__filename', ...NODE_GLOBALS),
    },
  },
  {
    files: ['**/*.mjs'],
    languageOptions: { sourceType: 'module', globals: readable(...NODE_GLOBALS) },
  },
  {
    files: ['src/hosts/excel/**/*.ts'],
    plugins: { 'office-addins': officeAddins },
    rules: {
      'office-addins/call-sync-after-load': 'error',
      'office-addins/call-sync-before-read': 'error',
      'office-addins/load-object-before-read': 'error',
      'office-addins/no-context-sync-in-loop': 'error',
      'office-addins/no-empty-load': 'error',
      'office-addins/no-navigational-load': 'error',
      'office-addins/no-office-initialize': 'error',
      'office-addins/test-for-null-using-isNullObject': 'error',
    },
  },
  ...layerRules,
);
