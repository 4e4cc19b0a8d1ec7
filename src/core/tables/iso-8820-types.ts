/**
 * Which type of fuse a bare rating is taken for, and what such a fuse is proved to do. A rating alone does not tell the
 * type: up to 40 A a blade fuse is as a rule of type C or F (common practice), though makers list type E from 20 A, and
 * a type E fuse may take longer (1 s at 6 times its rating); from 50 A a blade is of type E, above 100 A bolted in.
 */
import {
  OPENING_TYPE_C_40_A,
  OPENING_TYPE_E,
  OPENING_TYPES_C_F,
  SHORTEST_TYPE_E,
  SHORTEST_TYPES_C_F,
  type OpeningLimit,
} from './iso-8820-3-times';

/** Most amps a blade fuse is proved to break, ISO 8820-3 (at 32 V or 58 V; read in the standard's abstract). */
export const BLADE_BREAKING_A = 1000;
/** Most amps a bolt-in fuse is proved to break, ISO 8820-5 (read in the standard's abstract). */
export const BOLT_IN_BREAKING_A = 2000;

export interface FuseType {
  readonly name: string;
  /** The ratings that are taken for it, in words. */
  readonly ratings: string;
  /** From this rating, in amps, up to the next type. */
  readonly fromA: number;
  readonly breakingA: number;
  /** Longest times to open; none where no table of them is known. */
  readonly limits: readonly OpeningLimit[] | undefined;
  /** Shortest times; none where they are not known. */
  readonly shortest: readonly OpeningLimit[] | undefined;
  readonly source: string;
}

/** By rating, ascending. */
export const FUSE_TYPES: readonly FuseType[] = [
  {
    name: 'blade C or F',
    ratings: 'under 40 A',
    fromA: 0,
    breakingA: BLADE_BREAKING_A,
    limits: OPENING_TYPES_C_F,
    shortest: SHORTEST_TYPES_C_F,
    source: 'ISO 8820-3, times from memory',
  },
  {
    name: 'blade C, 40 A',
    ratings: '40 A',
    fromA: 40,
    breakingA: BLADE_BREAKING_A,
    limits: OPENING_TYPE_C_40_A,
    shortest: SHORTEST_TYPES_C_F,
    source: "the same, slower end of makers' sheets",
  },
  {
    name: 'blade E',
    ratings: '50 to 100 A',
    fromA: 50,
    breakingA: BLADE_BREAKING_A,
    limits: OPENING_TYPE_E,
    shortest: SHORTEST_TYPE_E,
    source: 'ISO 8820-3, times from memory',
  },
  {
    name: 'bolt-in',
    ratings: '125 A and up',
    fromA: 125,
    breakingA: BOLT_IN_BREAKING_A,
    limits: undefined,
    shortest: undefined,
    source: "ISO 8820-5; times: maker's curve",
  },
];

/** The type that a rating in amps is taken for. */
export function assumedFuseType(ratingA: number): FuseType {
  return FUSE_TYPES.findLast(({ fromA }) => fromA <= ratingA) ?? FUSE_TYPES[0]!;
}

/** The assumption in one sentence, for helps and sheets. */
export const FUSE_TYPE_SENTENCE =
  'Ratings up to 40 A as types C and F, 50 to 100 A as type E; a type E fuse of 20 to 40 A may take longer: 1 s at 6 times.';
