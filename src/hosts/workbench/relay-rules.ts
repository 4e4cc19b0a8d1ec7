/** Rules of entry, colours and names of a sheet laid out for more rows: what is to be done to those that stand. */
import type { IMutationInfo } from '@univerjs/core';
import { IDefinedNamesService, SetDefinedNameMutation } from '@univerjs/engine-formula';
import {
  ConditionalFormattingRuleModel,
  SetConditionalRuleMutation,
} from '@univerjs/preset-sheets-conditional-formatting';
import {
  SheetDataValidationModel,
  UpdateDataValidationMutation,
  UpdateRuleType,
} from '@univerjs/preset-sheets-data-validation';
import type { FWorksheet } from '@univerjs/sheets/facade';
import { areaAddress, quotedSheetName, type Area } from '../../sheets/plan/area';
import type { SheetPlan } from '../../sheets/plan/plan';
import type { Grid } from './grid';
import { AS_IT_STANDS, gridRange, highlightRule, validationRule } from './rules';
import type { Step } from './steps';

const isSame = (a: Area, b: Area) => areaAddress(a) === areaAddress(b);

/** The corner that an area begins at: a rule is known by it and by its words, however far down it reaches. */
const cornerOf = ({ row, column }: Area) => `${row},${column}`;

export function entrySteps(
  { univer, workbook }: Grid,
  sheet: FWorksheet,
  before: SheetPlan,
  after: SheetPlan,
): Step[] {
  const place = { unitId: workbook.getId(), subUnitId: sheet.getSheetId() };
  const rules = univer
    .__getInjector()
    .get(SheetDataValidationModel)
    .getRules(place.unitId, place.subUnitId);
  return before.entries.flatMap((entry, index): Step[] => {
    const wanted = after.entries[index]!;
    if (isSame(entry.area, wanted.area)) return [];
    const rule = rules.find(
      ({ ranges: [first], promptTitle, prompt }) =>
        first?.startRow === entry.area.row &&
        first.startColumn === entry.area.column &&
        promptTitle === entry.promptTitle &&
        prompt === entry.prompt,
    );
    if (rule === undefined) return [];
    const update = (payload: object): IMutationInfo => ({
      id: UpdateDataValidationMutation.id,
      params: {
        ...place,
        ruleId: rule.uid,
        payload: { type: UpdateRuleType.ALL, payload },
        source: AS_IT_STANDS,
      },
    });
    return [
      {
        does: update({ ...validationRule(wanted), uid: rule.uid }),
        undoes: update({ ...rule }),
      },
    ];
  });
}

export function highlightSteps(
  { univer, workbook }: Grid,
  sheet: FWorksheet,
  before: SheetPlan,
  after: SheetPlan,
): Step[] {
  const place = { unitId: workbook.getId(), subUnitId: sheet.getSheetId() };
  const rules =
    univer
      .__getInjector()
      .get(ConditionalFormattingRuleModel)
      .getSubunitRules(place.unitId, place.subUnitId) ?? [];
  const known = new Map<string, (typeof rules)[number]>(
    rules.map((rule) => {
      const { startRow, startColumn } = rule.ranges[0]!;
      const { value } = rule.rule as { value?: unknown };
      return [`${startRow},${startColumn} ${String(value)}`, rule] as const;
    }),
  );
  return before.highlights.flatMap((highlight, index): Step[] => {
    const wanted = after.highlights[index]!;
    const rule = known.get(`${cornerOf(highlight.area)} =${highlight.formula}`);
    const isAsBefore = isSame(highlight.area, wanted.area) && highlight.formula === wanted.formula;
    if (rule === undefined || isAsBefore) return [];
    const set = (to: typeof rule): IMutationInfo => ({
      id: SetConditionalRuleMutation.id,
      params: { ...place, cfId: rule.cfId, rule: to },
    });
    return [
      {
        does: set({ ...rule, ranges: [gridRange(wanted.area)], rule: highlightRule(wanted).rule }),
        undoes: set({ ...rule }),
      },
    ];
  });
}

export function nameSteps(
  { univer, workbook }: Grid,
  sheet: FWorksheet,
  before: SheetPlan,
  after: SheetPlan,
): Step[] {
  const unitId = workbook.getId();
  const names = univer.__getInjector().get(IDefinedNamesService);
  return before.names.flatMap(({ name, area }, index): Step[] => {
    const wanted = after.names[index]!.area;
    const known = names.getValueByName(unitId, name);
    if (isSame(area, wanted) || known === null || known === undefined) return [];
    const address = `${quotedSheetName(sheet.getSheetName())}!${areaAddress(wanted, 'both')}`;
    const set = (formulaOrRefString: string): IMutationInfo => ({
      id: SetDefinedNameMutation.id,
      params: { ...known, unitId, formulaOrRefString },
    });
    return [{ does: set(address), undoes: set(known.formulaOrRefString) }];
  });
}
