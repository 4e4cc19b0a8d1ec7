/**
 * Kinds of fuse by what they are made to break. Blade: ISO 8820-3, 1000 A at 32 V (the standard has links for 58 V too);
 * bolt-in: ISO 8820-5, 2000 A at 32 V; both from the standards' abstracts. High-breaking: fast links of UL 248-15 (class T),
 * 20 kA at 125 V d.c. or more, from memory. Makers' links differ: the figure on the sheet of the fuse goes first.
 */
import { BLADE_BREAKING_A, BOLT_IN_BREAKING_A } from './iso-8820-types';

export interface FuseKind {
  readonly breaksA: number;
  readonly ratedVolts: number;
}

export const FUSE_KINDS: Readonly<Record<'blade' | 'bolt-in' | 'high-breaking', FuseKind>> = {
  blade: { breaksA: BLADE_BREAKING_A, ratedVolts: 32 },
  'bolt-in': { breaksA: BOLT_IN_BREAKING_A, ratedVolts: 32 },
  'high-breaking': { breaksA: 20_000, ratedVolts: 125 },
};

/** A fuse of the user's own, whose figures are typed. */
export const OWN_FUSE = 'own';
/** Blade up to 100 A, bolt-in above. */
export const BY_RATING = 'by rating';
