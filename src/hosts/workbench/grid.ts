/** The spreadsheet grid of the workbench, set up with our functions, before any sheet of ours is in it. */
import { LocaleType, LogLevel, Univer, type IWorkbookData } from '@univerjs/core';
import { FUniver } from '@univerjs/core/facade';
import { UniverSheetsConditionalFormattingPreset } from '@univerjs/preset-sheets-conditional-formatting';
import { UniverSheetsCorePreset } from '@univerjs/preset-sheets-core';
import { UniverSheetsDataValidationPreset } from '@univerjs/preset-sheets-data-validation';
import { CalculationMode } from '@univerjs/sheets-formula';
import type { FWorkbook } from '@univerjs/sheets/facade';
import type { WorksheetFunction } from '../../functions/worksheet-function';
import { mendEngine } from './engine-mends';
import { askEntryRulesOnce } from './entry-rules';
import { gridFunctionHelp, gridFunctions } from './functions';
import { ENGLISH } from './language';
import { calculateOwnSheets } from './own-formulas';
import { takeOtherThanOffered } from './offered';
import { pasteAsTyped } from './pasting';
import { Sentences } from './sentences';
import { keepWhatIsTyped, leaveKeysBeside } from './typing';

/** What the host and the page need of the grid. */
export interface Grid {
  readonly univer: Univer;
  readonly api: FUniver;
  readonly workbook: FWorkbook;
  readonly sentences: Sentences;
}

/**
 * Puts a workbook into the element, with these worksheet functions in its formulas: an empty one with one blank sheet, or
 * the one that was kept. Throws where the kept one cannot be opened; the element is empty again then.
 */
export function openGrid(
  container: HTMLElement,
  catalogue: readonly WorksheetFunction[],
  kept?: Partial<IWorkbookData>,
): Grid {
  const sentences = new Sentences();
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: ENGLISH },
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
        // New sheets bring their values; a kept workbook is calculated when its page asks for it.
        initialFormulaComputing: CalculationMode.NO_CALCULATION,
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
  mendEngine(univer);
  calculateOwnSheets(univer, sentences);
  try {
    const workbook = api.createWorkbook(kept ?? { name: 'Workbook' });
    askEntryRulesOnce(univer);
    takeOtherThanOffered(univer);
    keepWhatIsTyped(univer);
    pasteAsTyped(univer);
    leaveKeysBeside(univer, container);
    return { univer, api, workbook, sentences };
  } catch (fault) {
    univer.dispose();
    container.replaceChildren();
    throw fault;
  }
}
