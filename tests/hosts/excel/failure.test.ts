/** Every code that Excel's typings name has a sentence of its own that says what to do. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { failure, REASONS, reasonOf } from '../../../src/hosts/excel/failure';
import { OfficeError } from './recording-excel';

const TYPINGS = createRequire(import.meta.url).resolve('@types/office-js/index.d.ts');

/** Codes of Excel.ErrorCodes, and those of any Office host. */
function namedCodes(): readonly string[] {
  const text = readFileSync(TYPINGS, 'utf8');
  const enums = [...text.matchAll(/enum ErrorCodes \{([^}]*)\}/g)].map(([, body = '']) => body);
  const ofExcel = enums.find((body) => body.includes('invalidOperationInCellEditMode'));
  return [...(ofExcel ?? '').matchAll(/= "(\w+)"/g)].map(([, code]) => code!);
}

/** Words by which a sentence says what to do. */
const WHAT_TO_DO =
  /try again|unprotect|press|choose|update|close|calculate|delete|insert|go back|sign in|rename|report|check|bring|save|select|wait/;

describe('the codes of Excel', () => {
  const codes = [
    ...namedCodes(),
    'RequestPayloadSizeLimitExceeded',
    'InvalidOperationInProtectedView',
  ];

  it('are found in the typings', () => {
    expect(codes).toContain('GeneralException');
    expect(codes.length).toBeGreaterThan(30);
  });

  it.each(codes)('%s has a sentence with what to do', (code) => {
    expect(Object.keys(REASONS)).toContain(code);
    expect(reasonOf(new OfficeError(code))).toMatch(WHAT_TO_DO);
    expect(failure('It failed', new OfficeError(code)).message).toMatch(
      /^It failed: [^.]+(\.xlsx[^.]*)?\.$/,
    );
  });

  it('keeps Excel’s own words for a code that nobody has heard of', () => {
    expect(reasonOf(new OfficeError('NeverHeardOf'))).toBe(
      'Excel says "Excel\'s own words for NeverHeardOf"',
    );
  });
});
