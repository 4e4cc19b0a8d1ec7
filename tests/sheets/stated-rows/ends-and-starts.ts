/**
 * Rows of runs that end at a source, that return through a chassis, and of loads that surge, worked out by hand from the
 * tables named in `stated-row`. How soon a blade may open: 0.75 s at 1.35 and 0.25 s at 1.6 times its rating, so within 0.5 s
 * from 1.35 x (0.75 / 0.5) ^ (ln(1.6 / 1.35) / ln 3) = 1.437 times (types C and F); 0.2 s at 3.5 and 2 s at 2 times, so from
 * 2 x 4 ^ (ln(3.5 / 2) / ln 10) = 2.801 times (type E).
 */
import type { SupplyValues } from '../../../src/sheets/station/supply';
import type { ScheduleRun } from '../../../src/sheets/station/run';
import type { StatedRow } from './stated-row';

/** 12.65 V full, 253 A in a dead short; 12.026 V low. */
const LEAD: SupplyValues = {
  name: 'battery',
  kind: 'battery',
  chemistry: 'lead-acid',
  milliohms: 50,
};
const VAN: SupplyValues = { ...LEAD, name: 'van' };
const SUN: SupplyValues = {
  name: 'sun',
  kind: 'panel',
  shortCircuitAmps: 4,
  maximumPowerAmps: 3.8,
  panelVolts: 18,
  openCircuitVolts: 22,
  coldestC: -10,
  percentPerC: -0.3,
};
const ENGINE: SupplyValues = { name: 'engine', kind: 'alternator' };

/**
 * 5 A x (10 ft x 1.588 x 1.0393 + 3) mOhm = 5 A x 19.5 mOhm = 0.098 V, of 0.36 V; 310.16 25 A; 5 x 1.25 = 6.25, fuse 7.5,
 * which must open at 10.125 A. Of either battery a short right at it draws 253 A and one through the run 12.026 V / (100 +
 * 22) mOhm = 98 A: both open it within 0.03 s, wire 2.3 s.
 */
const LAMP: ScheduleRun = { run: 'Lamp', peak: 5, length: 5, ownSize: '12 AWG' };

interface Lamp extends Partial<Omit<StatedRow, 'entries'>> {
  readonly entries?: Partial<ScheduleRun>;
}

const lamp = (
  verdict: StatedRow['verdict'],
  { entries = {}, sources = [LEAD, VAN], ...row }: Lamp = {},
): StatedRow => ({
  entries: { ...LAMP, ...entries },
  sources,
  verdict,
  size: '12 AWG',
  fuse: 7.5,
  ...row,
});

/** 3.8 A x 19.5 mOhm = 0.074 V, of 0.36 V (2 % of 18 V); 3.8 x 1.25 = 4.75, fuse 5, rated for more than 22 x 1.105 V. */
const fromSun = (verdict: StatedRow['verdict'], entries: Partial<ScheduleRun>): StatedRow =>
  lamp(verdict, {
    sources: [LEAD, SUN],
    entries: { fedFrom: 'sun', peak: 3.8, endsAt: 'battery', ...entries },
    fuse: entries.fused === 'no' ? 'none' : 5,
  });

export const END_UNFUSED: readonly StatedRow[] = [
  lamp(['endUnfused'], { entries: { endsAt: 'van' } }),
  lamp(['endUnfused'], { entries: { endsAt: 'van', endFused: 'no' } }),
  fromSun(['endUnfused'], {}),
  // Nothing at either end.
  fromSun(['endUnfused', 'needsFuse'], { fused: 'no' }),
  lamp(['endUnfused', 'needsFuse'], {
    sources: [LEAD, ENGINE],
    entries: { fedFrom: 'engine', endsAt: 'battery', fused: 'no' },
    fuse: 'none',
  }),
];

/** At either end, or at the battery alone where the other end has no more than the wire bears. */
export const END_OK: readonly StatedRow[] = [
  lamp(['ok'], { entries: { endsAt: 'van', endFused: 'yes' } }),
  // It breaks 253 A by itself: no main fuse covers it, though that one breaks them too.
  lamp(['ok'], {
    sources: [LEAD, { ...VAN, mainFuse: 100, mainFuseKind: 'high-breaking', mainCable: '2 AWG' }],
    entries: { endsAt: 'van', endFused: 'yes' },
  }),
  fromSun(['ok'], { endFused: 'yes' }),
  // 4 A x 1.5625 = 6.25 A of 25 A
  fromSun(['ok'], { endFused: 'yes', fused: 'no' }),
  lamp(['ok'], {
    sources: [LEAD, ENGINE],
    entries: { fedFrom: 'engine', endsAt: 'battery', endFused: 'yes', fused: 'no' },
    fuse: 'none',
  }),
  // A panel brings no fault current to its far end.
  lamp(['ok'], { sources: [LEAD, SUN], entries: { endsAt: 'sun' } }),
];

/** 12.026 V / (2 x 1000 + 22) mOhm = 5.9 A, under 10.125 A. */
export const END_TOO_WEAK: readonly StatedRow[] = [
  lamp(['faultTooWeak'], {
    sources: [LEAD, { ...VAN, milliohms: 1000 }],
    entries: { endsAt: 'van', endFused: 'yes' },
  }),
];

/**
 * 3 A x (10 ft x 6.385 x 1.0393 + 3) mOhm = 0.208 V; 310.16 12 A; 3 x 1.25 = 3.75, fuse 4. A short right at the van draws
 * 12.65 V / 13 mOhm = 973 A: by the maker's 8000 A2s in 0.01045 s, wire (115 x 0.823)^2 / 973^2 = 0.00946 s. At the battery it
 * draws 253 A: 0.1 s, wire 0.14 s; from there through the run 12.026 V / (100 + 79.4) mOhm = 67 A: 0.1 s, wire 2 s. With
 * 7000 A2s it takes 0.00939 s at the van.
 */
const slowAtVan = (verdict: StatedRow['verdict'], i2t: number): StatedRow =>
  lamp(verdict, {
    sources: [LEAD, { ...VAN, milliohms: 13 }],
    entries: { peak: 3, ownSize: '18 AWG', endsAt: 'van', endFused: 'yes' },
    protection: { fuses: [{ i2t }] },
    size: '18 AWG',
    fuse: 4,
  });

export const END_TOO_SLOW: readonly StatedRow[] = [slowAtVan(['fuseTooSlow'], 8000)];
export const END_SOON_ENOUGH: readonly StatedRow[] = [slowAtVan(['ok'], 7000)];

/** 12.65 V / 5 mOhm = 2530 A, of which a blade breaks 1000 A. */
export const END_MAY_NOT_BREAK: readonly StatedRow[] = [
  lamp(['mayNotBreak'], {
    sources: [LEAD, { ...VAN, milliohms: 5 }],
    entries: { endsAt: 'van', endFused: 'yes' },
  }),
];

/** 12.65 V / 10 mOhm = 1265 A, of which a blade breaks more than half and the main fuse all. */
export const END_COVERED: readonly StatedRow[] = [
  lamp(['coveredByMain'], {
    sources: [
      LEAD,
      {
        ...VAN,
        milliohms: 10,
        mainFuse: 100,
        mainFuseKind: 'high-breaking',
        mainCable: '2 AWG',
      },
    ],
    entries: { endsAt: 'van', endFused: 'yes' },
  }),
];

export const END_ASSUMED: readonly StatedRow[] = [
  lamp(['batteryAssumed'], {
    sources: [LEAD, { name: 'van', kind: 'battery' }],
    entries: { endsAt: 'van', endFused: 'yes' },
  }),
];

export const END_UNKNOWN: readonly StatedRow[] = [
  lamp(['endUnknown'], { entries: { endsAt: 'lorry' } }),
  // A run is no source.
  lamp(['endUnknown'], { entries: { endsAt: 'Lamp' } }),
  // It comes from there.
  lamp(['endUnknown'], { entries: { endsAt: 'battery', endFused: 'yes' } }),
];

const IN_CRAFT = { installed: 'craft' };

/** 33 CFR 12 AWG 30 A x 0.8; no limit of small wires; a fuse of 7.5 A as above. */
export const CHASSIS_IN_CRAFT: readonly StatedRow[] = [
  lamp(['chassisInCraft'], { rules: IN_CRAFT, entries: { returns: 'chassis' } }),
  lamp(['chassisInCraft'], { rules: IN_CRAFT, entries: { returns: 3 } }),
  lamp(['chassisInCraft'], { rules: { installed: 'engine space', returns: 'chassis' } }),
];

export const CHASSIS_OK: readonly StatedRow[] = [
  // 20 ft one way: 5 A x (20 ft x 1.588 x 1.0393 + 3 + 2) mOhm = 0.190 V; with a second wire 0.345 V, and 0.46 V of 0.36 V at
  // 27 ft, where through the chassis it is 5 A x (27 ft x 1.588 x 1.0393 + 5) mOhm = 0.248 V
  lamp(['ok'], { entries: { length: 20, returns: 'chassis' } }),
  lamp(['ok'], { entries: { length: 27 }, rules: { returns: 'chassis' } }),
  // 5 A x (27 ft x 1.588 x 1.0393 + 3 + 20) mOhm = 0.338 V
  lamp(['ok'], { entries: { length: 27, returns: 20 } }),
  lamp(['ok'], { rules: { ...IN_CRAFT, returns: 'chassis' }, entries: { returns: 'wire' } }),
];

/** 5 A x (54 ft x 1.588 x 1.0393 + 3) mOhm = 0.461 V; 5 A x (27 ft x 1.588 x 1.0393 + 3 + 30) mOhm = 0.388 V; both of 0.36 V. */
export const CHASSIS_DROP: readonly StatedRow[] = [
  lamp(['drop'], { entries: { length: 27, returns: 'wire' }, rules: { returns: 'chassis' } }),
  lamp(['drop'], { entries: { length: 27, returns: 30 } }),
];

/**
 * Ten times 110 mOhm: 12.026 V / (100 + 1100 + 12.5) mOhm = 9.92 A, under 10.125 A; with its 110 mOhm it would be 54 A.
 * 5 A x (5 ft x 1.588 x 1.0393 + 3 + 110) mOhm = 0.606 V, of 1.2 V
 */
export const CHASSIS_TOO_WEAK: readonly StatedRow[] = [
  lamp(['faultTooWeak'], { entries: { returns: 110 }, rules: { target: 0.1 } }),
];

const PUMP: ScheduleRun = { run: 'Pump', peak: 5, length: 5, ownSize: '12 AWG' };

export const START_VOLTS: readonly StatedRow[] = [
  // Low 12.026 V less 5 A x 69.5 mOhm = 11.68 V; 40 A more: less 40 A x 69.5 mOhm = 8.90 V; 45 A is 6 times 7.5 A
  lamp(['startVolts', 'startFuse'], { entries: { surge: 45, leastVolts: 9 } }),
  // Low 12.026 V less 10 A x 50 mOhm less 0.098 V = 11.43 V; 25 A more through the battery: less 1.25 V = 10.18 V
  lamp(['startVolts'], { others: [{ ...PUMP, surge: 30 }], entries: { leastVolts: 11 } }),
  // Trunk 8 AWG (20 ft x 0.6282 x 1.0393 + 3) mOhm = 16.06 mOhm: 12.026 V less 10 A x 66.06 mOhm less 0.098 V = 11.27 V; 10 A
  // more: less 10 A x 66.06 mOhm = 10.61 V; to the lamp 10 A x 16.06 mOhm + 0.098 V = 0.258 V, of 0.36 V
  lamp(['startVolts'], {
    others: [
      { run: 'Trunk', length: 10, ownSize: '8 AWG' },
      { ...PUMP, fedFrom: 'Trunk', surge: 15 },
    ],
    entries: { fedFrom: 'Trunk', leastVolts: 10.7 },
  }),
];

/** The same where it is enough: 10.18 V, 10.61 V; and a load that is never on with the others does not start beside them. */
export const START_OK: readonly StatedRow[] = [
  lamp(['ok'], { others: [{ ...PUMP, surge: 30 }], entries: { leastVolts: 10.1 } }),
  lamp(['ok'], {
    others: [
      { run: 'Trunk', length: 10, ownSize: '8 AWG' },
      { ...PUMP, fedFrom: 'Trunk', surge: 15 },
    ],
    entries: { fedFrom: 'Trunk', leastVolts: 10.6 },
  }),
  lamp(['ok'], { others: [{ ...PUMP, surge: 30, atOnce: 0 }], entries: { leastVolts: 11.6 } }),
  // Another battery's loads do not come to this one.
  lamp(['ok'], {
    others: [{ ...PUMP, surge: 30, fedFrom: 'van' }],
    entries: { leastVolts: 11.6 },
  }),
  // 1.42 times the 7.5 A
  lamp(['ok'], { entries: { surge: 10.7 } }),
];

export const START_FUSE: readonly StatedRow[] = [
  // 1.44 times the 7.5 A
  lamp(['startFuse'], { entries: { surge: 10.8 } }),
  // A surge of a second, at which 1.35 times is no longer sure: 8.4 A is 1.12 times
  lamp(['startFuse'], { protection: { surgeS: 1 }, entries: { surge: 8.4 } }),
  // The trunk carries 10 A, and 10 A more: 10 x 1.25, fuse 15; 20 A is 1.33 times; with 12 A more 22 A, 1.47 times.
  {
    entries: { run: 'Trunk', length: 10, ownSize: '8 AWG' },
    others: [
      { ...LAMP, fedFrom: 'Trunk' },
      { ...PUMP, fedFrom: 'Trunk', surge: 17 },
    ],
    sources: [LEAD],
    verdict: ['startFuse'],
    size: '8 AWG',
    fuse: 15,
  },
  // Of a bolt-in fuse no times are known: any surge above its rating.
  lamp(['startFuse'], { protection: { fuses: [{ kind: 'bolt-in' }] }, entries: { surge: 7.6 } }),
];

const BENCH: SupplyValues = { name: 'bench', kind: 'power supply', volts: 13.8, mostAmps: 20 };

export const SOURCE_START: readonly StatedRow[] = [
  // 5 A and 5 A, and 11 A more: 21 A of 20 A
  lamp(['sourceStart'], { sources: [BENCH], others: [{ ...PUMP, surge: 16 }] }),
  lamp(['sourceStart'], {
    sources: [{ ...LEAD, packAmps: 20 }],
    others: [{ ...PUMP, surge: 16 }],
  }),
  // By itself: 30 A of 20 A, which is 4 times its fuse
  lamp(['sourceStart', 'startFuse'], { sources: [BENCH], entries: { surge: 30 } }),
];
