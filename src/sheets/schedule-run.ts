/** One run as a person lists it, before anything is computed. */
export interface ScheduleRun {
  readonly run?: string;
  readonly fedFrom?: string;
  readonly load?: string;
  readonly amps?: number | string;
  readonly length?: number | string;
  /** Left out, the house rule holds. */
  readonly volts?: number | string;
  readonly target?: number | string;
  readonly joints?: number | string;
  readonly ownSize?: string;
}
