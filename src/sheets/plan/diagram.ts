/** A one-line diagram as data: what is drawn, and in which words. Places on paper come of laying it out. */

/** A source, the far end of a run that others start at, a load, or a place that the list does not tell. */
export type NodeKind =
  'battery' | 'power supply' | 'panel' | 'charger' | 'alternator' | 'joint' | 'load' | 'unknown';

/** How grave the verdict of a run is. */
export type RunLevel = 'danger' | 'fails' | 'unclear' | 'check' | 'ok';

export interface DiagramNode {
  readonly kind: NodeKind;
  /** Empty where nothing is said. */
  readonly name: string;
  /** What else is said of it, piece by piece. */
  readonly details: readonly string[];
  /** Of a source that stands elsewhere already: what is drawn here only says where the run goes. */
  readonly isReference?: boolean;
}

export interface DiagramRun {
  readonly from: number;
  readonly to: number;
  readonly name: string;
  readonly level: RunLevel;
  /** Rating where the run starts, and how far from there; nothing where no fuse of its own is. */
  readonly fuse?: string;
  readonly endFuse?: string;
  /** What protects a run without a fuse of its own. */
  readonly leansOn?: string;
  /** Wire, length and what is lost, piece by piece. */
  readonly details: readonly string[];
  /** How grave it is, everything that is wrong, and the fix; empty where nothing is. */
  readonly note: string;
}

export interface Diagram {
  readonly title: string;
  readonly summary: string;
  readonly nodes: readonly DiagramNode[];
  /** In the order of the schedule. */
  readonly runs: readonly DiagramRun[];
}
