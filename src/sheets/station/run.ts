/** One run as a person lists it, before anything is computed. Text stands where a person wrote no number. */
export interface ScheduleRun {
  readonly run?: string;
  /** Another run's name, or a source's; nothing for the first source. */
  readonly fedFrom?: string;
  readonly load?: string;
  /** Amps or watts, as `kind` says. Nothing for a run that only feeds others. */
  readonly peak?: number | string;
  /** "A" (the usual) or "W". */
  readonly kind?: string;
  /** One way, in the schedule's length unit. */
  readonly length?: number | string;
  /** Left out, the usual one holds. */
  readonly volts?: number | string;
  readonly target?: number | string;
  /** Milliohms. */
  readonly joints?: number | string;
  readonly ownSize?: string;
  /** "yes" (the usual): a fuse of its own at its source end; "no": it leans on its feeder's. */
  readonly fused?: string;
  /** The least volts the load works with. */
  readonly leastVolts?: number | string;
  /** The most volts that the load bears. */
  readonly mostVolts?: number | string;
  /** Share of its peak that a load adds to its feeders when volts are judged; 1 left out. */
  readonly atOnce?: number | string;
  /** Output watts over input watts, of a load in watts that states its output; 1 left out. */
  readonly efficiency?: number | string;
  /** Length without a fuse between the battery and the run's fuse, in the schedule's length unit. */
  readonly unfused?: number | string;
  /** "wire", "chassis", or milliohms of the chassis that the current returns through; left out, as the house rules say. */
  readonly returns?: number | string;
  /** Amps that the load draws for a moment as it starts. */
  readonly surge?: number | string;
  /** The source that the run ends at, where it ends at one. */
  readonly endsAt?: string;
  /** "yes": a fuse at that end too. */
  readonly endFused?: string;
  readonly notes?: string;
}
