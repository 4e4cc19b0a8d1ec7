/** The one-line diagram of a station, and the plans of its sheets with that in its place. */
import { diagramOf } from './drawing/diagram';
import { drawingName } from './drawing/layout';
import { drawingSheet, withDiagram } from './drawing/sheet';
import type { Diagram } from './plan/diagram';
import type { PicturePlan, SheetPlan } from './plan/plan';
import { stationValues, type StationValues } from './station-values';
import type { StationContent } from './station/content';
import type { Layout } from './station/layout';
import { scheduleNames } from './station/naming';

/** The content with a Drawing sheet among its sheets, on which the words of the diagram are computed. */
const withDrawing = (content: StationContent): StationContent => ({
  ...content,
  extras: [...new Set([...(content.extras ?? []), 'drawing' as const])],
});

const layoutOf = ({ runs }: StationContent, names = scheduleNames()): Layout => ({
  names,
  references: 'cells',
  rows: Math.max(1, runs.length),
});

/** The diagram of a station. */
export function stationDiagram(content: StationContent): Diagram {
  const wanted = withDrawing(content);
  return diagramOf(wanted, stationValues(wanted), layoutOf(wanted));
}

/** The Drawing sheet of a station by itself, with its picture. */
export function drawnSheet(content: StationContent): SheetPlan & { readonly picture: PicturePlan } {
  const wanted = withDrawing(content);
  const layout = layoutOf(wanted);
  const station = stationValues(wanted);
  const diagram = diagramOf(wanted, station, layout);
  return withDiagram(drawingSheet(layout, wanted), layout, diagram, station.sheets);
}

/** The plans, the Drawing sheet among them with its picture. `station` holds the values of all of them. */
export function withDiagrams(
  plans: readonly SheetPlan[],
  layout: Layout,
  content: StationContent,
  station: StationValues,
): readonly SheetPlan[] {
  const name = drawingName(layout.names);
  return plans.map((plan) =>
    plan.name === name
      ? withDiagram(
          plan,
          layout,
          diagramOf(content, station, layoutOf(content, layout.names)),
          station.sheets,
        )
      : plan,
  );
}
