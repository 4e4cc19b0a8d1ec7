/** The demonstration: a volunteer river-flood watch with a hilltop hut, a response van and carry-out radio cases. */
import demo from '../../assets/river-flood-watch.json';
import type { RuleKey } from './house-rules';
import type { ScheduleRun } from './schedule-run';

export const DEMO_TITLE: string = demo.title;
export const DEMO_RULES: Readonly<Partial<Record<RuleKey, string | number>>> = demo.rules;
export const DEMO_RUNS: readonly ScheduleRun[] = demo.runs;
