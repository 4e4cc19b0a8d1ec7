/** The sources of a station, one column of the Supply sheet each. */
import type { SourceKind } from './source-kinds';
import type { SupplyContent, SupplyValues } from './supply';
import { PANEL_KEYS, type SupplyKey } from './supply-keys';
import { BATTERY, PANEL } from './verdicts';

/** Columns that the Supply sheet has for sources. */
export const SOURCE_COLUMNS = 8;

/** The sources of a new schedule: a battery, and a panel of which nothing is known yet. */
const USUAL: readonly SupplyValues[] = [
  { name: BATTERY, kind: 'battery' satisfies SourceKind },
  { name: PANEL, kind: 'panel' satisfies SourceKind },
];

const isOfPanel = (key: string) => PANEL_KEYS.some((panelKey) => panelKey === key);

function part(values: SupplyValues, isTaken: (key: string) => boolean): SupplyValues {
  return Object.fromEntries(Object.entries(values).filter(([key]) => isTaken(key)));
}

/** The sources column by column, whether they were given so or as one battery and one panel. */
export function sourcesOf({ supply = {}, sources }: SupplyContent): readonly SupplyValues[] {
  if (sources !== undefined) return sources.slice(0, SOURCE_COLUMNS);
  const [battery, panel] = USUAL;
  return [
    { ...battery, ...part(supply, (key) => !isOfPanel(key)) },
    { ...panel, ...part(supply, isOfPanel) },
  ];
}

/** The same as one battery and one panel where nothing else is said, so that a plain station stays plain. */
export function supplyContent(
  columns: readonly SupplyValues[],
): Pick<SupplyContent, 'supply' | 'sources'> {
  const last = columns.findLastIndex((values) => Object.keys(values).length > 0);
  const given = columns.slice(0, last + 1);
  const isUsual = given.every((values, index) => {
    const usual = USUAL[index];
    return (
      usual !== undefined &&
      values.name === usual.name &&
      values.kind === usual.kind &&
      Object.keys(values).every(
        (key) => key === 'name' || key === 'kind' || isOfPanel(key) === (index === 1),
      )
    );
  });
  if (!isUsual) return { sources: given };
  const all: Partial<Record<SupplyKey, string | number>> = Object.assign({}, ...given) as object;
  delete all.name;
  delete all.kind;
  return { supply: all };
}
