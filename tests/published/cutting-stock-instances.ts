/**
 * Instances of one-dimensional bin packing with their published fewest bins.
 *
 * u120 and t60: E. Falkenauer, "A hybrid grouping genetic algorithm for bin packing", Journal of Heuristics 2 (1996) 5, kept
 * in the OR-Library of J. E. Beasley as binpack1 and binpack5 (t60 with its lengths times ten, as it is also handed on).
 * The fewest are those that file gives; u120_08 and u120_19 stood open for years, one bin above what is now known.
 * N1W1B1R0: A. Scholl, R. Klein, C. Juergens, "BISON", Computers and Operations Research 24 (1997) 627, data set 2.
 * All read in reproductions.
 */
export interface CuttingStockInstance {
  readonly name: string;
  readonly room: number;
  /** How many pieces it is published with. */
  readonly pieces: number;
  readonly fewest: number;
  readonly lengths: readonly number[];
}

function numbers(text: string): number[] {
  return text.trim().split(/\s+/).map(Number);
}

export const CUTTING_STOCK_INSTANCES: readonly CuttingStockInstance[] = [
  {
    name: 'u120_00',
    pieces: 120,
    room: 150,
    fewest: 48,
    lengths: numbers(`
      42 69 67 57 93 90 38 36 45 42 33 79 27 57 44 84 86 92 46 38 85 33 82 73 49 70 59 23 57 72
      74 69 33 42 28 46 30 64 29 74 41 49 55 98 80 32 25 38 82 30 35 39 57 84 62 50 55 27 30 36
      20 78 47 26 45 41 58 98 91 96 73 84 37 93 91 43 73 85 81 79 71 80 76 83 41 78 70 23 42 87
      43 84 60 55 49 78 73 62 36 44 94 69 32 96 70 84 58 78 25 80 58 66 83 24 98 60 42 43 43 39`),
  },
  {
    name: 'u120_08',
    pieces: 120,
    room: 150,
    fewest: 50,
    lengths: numbers(`
      100 22 25 51 95 58 97 30 79 23 53 80 20 65 64 21 26 100 81 98 70 85 92 97 86 71 91 29 63 34
      67 23 33 89 94 47 100 37 40 58 73 39 49 79 54 57 98 69 67 49 38 34 96 27 92 82 69 45 69 20
      75 97 51 70 29 91 98 77 48 45 43 61 36 82 89 94 26 35 58 58 57 46 44 91 49 52 65 42 33 60
      37 57 91 52 95 84 72 75 89 81 67 74 87 60 32 76 85 59 62 39 64 52 88 45 29 88 85 54 40 57`),
  },
  {
    name: 'u120_19',
    pieces: 120,
    room: 150,
    fewest: 49,
    lengths: numbers(`
      49 95 38 62 63 97 42 62 100 43 44 77 97 94 68 23 50 36 89 58 97 27 64 65 54 58 24 35 33 63
      32 50 58 90 44 50 48 21 72 75 21 74 28 95 77 69 96 24 57 85 72 96 50 83 65 62 99 93 23 77
      94 31 50 33 79 73 23 55 44 78 84 66 31 59 97 95 22 76 90 66 29 100 90 92 50 49 47 43 37 40
      60 52 54 99 34 46 88 97 85 39 32 51 95 54 99 86 48 90 28 25 86 39 74 26 38 60 41 67 80 33`),
  },
  {
    name: 't60_00',
    pieces: 60,
    room: 1000,
    fewest: 20,
    lengths: numbers(`
      495 474 473 472 466 450 445 444 439 430 419 414 410 395 372 370 366 366 366 363
      361 357 355 351 350 350 347 320 315 307 303 299 298 298 292 288 287 283 275 275
      274 273 273 272 272 271 269 269 268 263 262 261 259 258 255 254 252 252 252 251`),
  },
  {
    name: 'N1W1B1R0',
    pieces: 50,
    room: 1000,
    fewest: 18,
    lengths: numbers(`
      395 394 394 391 390 389 388 384 383 382 380 379 376 371 368 365 360 360 354 350 346 346 344 342 340
      335 335 333 330 330 328 327 317 316 311 310 310 306 300 300 297 296 295 294 294 286 285 278 275 275`),
  },
];
