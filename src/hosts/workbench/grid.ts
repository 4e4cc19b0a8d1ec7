/** The spreadsheet grid of the workbench, set up with our functions, before any sheet of ours is in it. */
import { LocaleType, LogLevel, mergeLocales, Univer } from '@univerjs/core';
import { FUniver } from '@univerjs/core/facade';
import { UniverSheetsConditionalFormattingPreset } from '@univerjs/preset-sheets-conditional-formatting';
import conditionalFormattingEnglish from '@univerjs/preset-sheets-conditional-formatting/locales/en-US';
import { UniverSheetsCorePreset } from '@univerjs/preset-sheets-core';
import coreEnglish from '@univerjs/preset-sheets-core/locales/en-US';
import { UniverSheetsDataValidationPreset } from '@univerjs/preset-sheets-data-validation';
import dataValidationEnglish from '@univerjs/preset-sheets-data-validation/locales/en-US';
import type { FWorkbook } from '@univerjs/sheets/facade';
import type { WorksheetFunction } from '../../functions/worksheet-function';
import { calculateTakenBranches } from './branches';
import { compareAfresh } from './comparisons';
import { noteAreasOnce } from './dependencies';
import { gridFunctionHelp, gridFunctions } from './functions';
import { Sentences } from './sentences';

/** What the host and the page need of the grid. */
export interface Grid {
  readonly univer: Univer;
  readonly api: FUniver;
  readonly workbook: FWorkbook;
  readonly sentences: Sentences;
}

/** Puts an empty workbook with one blank sheet into the element, with these worksheet functions in its formulas. */
export function openGrid(container: HTMLElement, catalogue: readonly WorksheetFunction[]): Grid {
  compareAfresh();
  const sentences = new Sentences();
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: {
      [LocaleType.EN_US]: mergeLocales(
        coreEnglish,
        dataValidationEnglish,
        conditionalFormattingEnglish,
      ),
    },
    logLevel: LogLevel.WARN,
  });
  const presets = [
    UniverSheetsCorePreset({
      container,
      ribbonType: 'simple',
      // A size such as 12 stands as text on purpose: no warning mark at it.
      disableTextFormatAlert: true,
      disableTextFormatMark: true,
      formula: {
        function: gridFunctions(catalogue, sentences),
        description: gridFunctionHelp(catalogue),
      },
    }),
    // A search box in the list would take the keyboard from whoever types a size that is not in it.
    UniverSheetsDataValidationPreset({ showSearchOnDropdown: false, showEditOnDropdown: false }),
    UniverSheetsConditionalFormattingPreset(),
  ];
  for (const preset of presets) {
    for (const entry of preset.plugins) {
      if (Array.isArray(entry)) univer.registerPlugin(entry[0], entry[1]);
      else univer.registerPlugin(entry);
    }
  }
  const api = FUniver.newAPI(univer);
  calculateTakenBranches(univer);
  noteAreasOnce(univer);
  const workbook = api.createWorkbook({ name: 'Workbook' });
  return { univer, api, workbook, sentences };
}
