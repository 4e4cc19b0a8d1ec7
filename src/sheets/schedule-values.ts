/**
 * What every computed cell of a schedule and its Supply sheet comes to, outside any spreadsheet: the figures that a
 * written workbook shows before anything calculates, the verdicts a terminal prints, and what tests hold spreadsheets to.
 * It follows the columns of `schedule-formulas`, one step a column.
 */
import { METHODS } from '../core/ampacity';
import { VERDICT_JOINT, VERDICT_WORDS } from '../core/verdict';
import { CellError, isBlank, type Cell, type ResultCell } from '../functions/cell';
import { attempt, callCell, callList, fail, numberIn } from './evaluate';
import { HOUSE_RULES, RULE_KEYS, type RuleKey } from './house-rules';
import type { StationContent } from './new-schedule';
import type { FormulaKey } from './schedule-formulas';
import type { ScheduleRun } from './schedule-run';
import { MEND_WORDS, PANEL, SCHEDULE_WORDS } from './schedule-words';
import { PROTECTION_FIGURES } from './protection-words';
import { protectionValues, type ProtectionResult } from './protection-values';
import { supplyInputs, supplyResults, type SupplyResult } from './supply-values';

export type RuleValues = Readonly<Record<RuleKey, Cell>>;
export type RunValues = Readonly<Record<FormulaKey, ResultCell>>;

export interface StationValues {
  readonly rules: RuleValues;
  readonly runs: readonly RunValues[];
  readonly supply: SupplyResult;
  readonly protection: ProtectionResult;
}

/** The house rules in force: those given, the others as a new sheet has them. */
export function ruleValues(given: StationContent['rules'] = {}): RuleValues {
  const usual = RULE_KEYS.map((key): [RuleKey, Cell] => {
    const initial = HOUSE_RULES[key].initial({} as never);
    return [key, typeof initial === 'object' ? null : initial];
  });
  const rules = { ...Object.fromEntries(usual), ...given } as Record<RuleKey, Cell>;
  const isHot = String(rules.installed).trim().toLowerCase() === 'engine space';
  return {
    ...rules,
    ambientC: given.ambientC ?? METHODS[isHot ? 'engine space' : 'cable'].usualAmbientC,
  };
}

const trimmed = (value: unknown) => (typeof value === 'string' ? value.trim() : '');
const isError = (cell: Cell): cell is CellError => cell instanceof CellError;
const isNA = (cell: Cell) => isError(cell) && cell.code === '#N/A';
const isSame = (a: unknown, b: unknown) => String(a).toLowerCase() === String(b).toLowerCase();

/** A division as a spreadsheet does it. */
function quotient(dividend: number, divisor: number): number {
  return divisor === 0 ? fail('#DIV/0!', 'a division by 0') : dividend / divisor;
}

type Column = readonly ResultCell[];

/** Places of the feeders above a row, nearest first, up to four; empty where a feeder is not listed. */
function placesAbove(place1: readonly (number | undefined)[], row: number): readonly number[] {
  const places: number[] = [];
  for (let at = place1[row]; at !== undefined && places.length < 4; at = place1[at])
    places.push(at);
  return places;
}

/** A cell as formulas see one that a person left empty. */
function typed(run: ScheduleRun, key: keyof ScheduleRun): Cell {
  return run[key] ?? null;
}

/** Values of every computed column, row by row. */
export function stationValues(content: StationContent): StationValues {
  const { runs } = content;
  const rules = ruleValues(content.rules);
  const inputs = supplyInputs(content.supply);
  const rowsOf = (value: (run: ScheduleRun, row: number) => ResultCell) => runs.map(value);
  const column = (key: keyof ScheduleRun) => runs.map((run) => typed(run, key));
  const names = runs.map((run) => trimmed(run.run));

  const isPanel = (run: ScheduleRun) => isSame(trimmed(run.fedFrom), PANEL);
  const usual = (
    run: ScheduleRun,
    key: 'volts' | 'target',
    panel: Cell,
    rule: Cell,
  ): ResultCell => {
    if (!isBlank(typed(run, key))) return run[key]!;
    if (isBlank(typed(run, 'length'))) return '';
    return (isPanel(run) ? panel : rule) ?? 0;
  };
  const volts = rowsOf((run) => usual(run, 'volts', inputs.panelVolts, rules.volts));
  const target = rowsOf((run) => usual(run, 'target', inputs.panelTarget, rules.target));
  const feeder = rowsOf((run) => (isPanel(run) ? '' : trimmed(run.fedFrom)));

  const ownLoad = rowsOf((run, row) => {
    if (!isBlank(typed(run, 'peak'))) return run.peak!;
    const feeds = names[row] !== '' && feeder.some((name) => isSame(name, names[row]));
    return !isBlank(typed(run, 'length')) && feeds ? 0 : '';
  });
  const ownAmps = rowsOf((run, row) => {
    const load = ownLoad[row]!;
    if (load === '' || run.kind?.toUpperCase() !== 'W') return load;
    return attempt(() => {
      const least = typed(run, 'leastVolts');
      const atVolts = isBlank(least)
        ? numberIn(volts[row]!) * (1 - numberIn(target[row]!))
        : numberIn(least);
      return atVolts === 0 ? fail('#VALUE!', 'no volts') : numberIn(load) / atVolts;
    });
  });

  /** The row's value once it can be computed: nothing while something needed is blank, an error that stands there. */
  const ready = (row: number, compute: () => ResultCell): ResultCell => {
    const needed = [ownAmps[row]!, typed(runs[row]!, 'length'), volts[row]!, target[row]!];
    const error = needed.find(isError);
    if (error !== undefined) return error;
    return needed.some(isBlank) ? '' : attempt(compute);
  };
  const each = (compute: (run: ScheduleRun, row: number) => ResultCell): Column =>
    rowsOf((run, row) => ready(row, () => compute(run, row)));

  const continuous = !isSame(rules.duty, 'bursts');
  const wire = (run: ScheduleRun): Cell[] => [rules.material, rules.tempC, typed(run, 'joints')];
  const heat = [rules.insulationC, rules.ambientC, rules.conductors, rules.installed];
  const feedAmps = callList('FEED_AMPS', runs.length, column('run'), feeder, ownAmps);
  const runAmps = each((_, row) => (names[row] === '' ? ownAmps[row]! : feedAmps[row]!));

  const gauge = (id: string, row: number, wanted: Cell = target[row]!) =>
    callCell(
      id,
      runAmps[row]!,
      typed(runs[row]!, 'length'),
      rules.unit,
      volts[row]!,
      wanted,
      ...wire(runs[row]!),
      ...heat,
      continuous,
      rules.series,
    );
  const suggested = each((_, row) => gauge('MINGAUGE', row));
  const setBy = each((_, row) => gauge('GAUGE_LIMIT', row));
  const size = each((run, row) =>
    isBlank(typed(run, 'ownSize')) ? suggested[row]! : run.ownSize!,
  );
  const ohms = each((run, row) =>
    callCell('RUN_OHMS', typed(run, 'length'), rules.unit, size[row]!, ...wire(run)),
  );
  const dropVolts = each((_, row) => numberIn(runAmps[row]!) * numberIn(ohms[row]!));
  const dropShare = each((_, row) => quotient(numberIn(dropVolts[row]!), numberIn(volts[row]!)));
  const ampacity = each((_, row) => callCell('AMPACITY', size[row]!, ...heat, rules.material));
  const isFused = (run: ScheduleRun) => !isSame(run.fused ?? '', 'no');
  const fuse = each((run, row) =>
    isFused(run)
      ? callCell('FUSE_FOR', runAmps[row]!, size[row]!, ...heat, rules.material, continuous)
      : 'none',
  );
  const heatWatts = each((_, row) => numberIn(runAmps[row]!) * numberIn(dropVolts[row]!));

  const onBattery = (run: ScheduleRun, row: number) =>
    trimmed(run.fedFrom) === '' && volts[row] === rules.volts;
  const batteryAmps = each((run, row) =>
    onBattery(run, row) && typeof runAmps[row] === 'number' ? runAmps[row] : 0,
  );
  const supply = supplyResults(inputs, batteryAmps, content.duty ?? []);
  const source = (terminal: 'fullTerminal' | 'lowTerminal') =>
    each((run, row) => (onBattery(run, row) ? supply.cells[terminal] : volts[row]!));
  const fullSource = source('fullTerminal');
  const lowSource = source('lowTerminal');
  const solved = (from: Column) => {
    const answers = callList(
      'FEED_VOLTS',
      runs.length,
      from,
      column('run'),
      feeder,
      ownLoad,
      column('kind'),
      ohms,
    );
    return each((_, row) =>
      names[row] === '' ? numberIn(from[row]!) - numberIn(dropVolts[row]!) : answers[row]!,
    );
  };
  const loadVolts = solved(fullSource);
  const lowVolts = solved(lowSource);

  const place1 = rowsOf((_, row) => {
    const found = feeder[row] === '' ? -1 : names.findIndex((name) => isSame(name, feeder[row]));
    return found >= 0 ? found + 1 : new CellError('#N/A', 'no such run');
  });
  const above1 = place1.map((place) => (typeof place === 'number' ? place - 1 : undefined));
  const above = runs.map((_, row) => placesAbove(above1, row));
  const placeCell = (level: number): Column =>
    above.map((places) =>
      places[level] === undefined
        ? new CellError('#N/A', 'no feeder so far up')
        : places[level] + 1,
    );

  const feederFuse = rowsOf((run, row) => {
    if (isFused(run)) return '';
    const fusedAt = above[row]!.find((at) => isFused(runs[at]!));
    return fusedAt === undefined ? new CellError('#N/A', 'no fuse upstream') : fuse[fusedAt]!;
  });
  const treeWord = each((_, row): ResultCell => {
    if (names[row] === '') return feeder[row] === '' ? '' : SCHEDULE_WORDS.nameMissing;
    if (names.filter((name) => isSame(name, names[row])).length > 1)
      return SCHEDULE_WORDS.nameTwice;
    if (feeder[row] !== '' && isNA(place1[row]!)) return SCHEDULE_WORDS.feederNotListed;
    if (!isError(runAmps[row]!) || isError(ownAmps[row]!)) return '';
    return above[row]!.includes(row) ? SCHEDULE_WORDS.inLoop : SCHEDULE_WORDS.tiedToAnother;
  });
  const judged = each((run, row) =>
    callCell(
      'RUN_VERDICT',
      runAmps[row]!,
      typed(run, 'length'),
      rules.unit,
      volts[row]!,
      target[row]!,
      size[row]!,
      ...wire(run),
      ...heat,
      continuous,
    ),
  );
  const shortOf = (reached: Column) =>
    rowsOf((run, row): number => {
      const least = typed(run, 'leastVolts');
      const at = reached[row]!;
      if (isBlank(least) || isBlank(at)) return 0;
      if (isError(at)) return 1;
      // Any text is more than any number to a spreadsheet.
      return typeof least !== 'number' || Number(at) < least ? 1 : 0;
    });
  const shortFull = shortOf(loadVolts);
  const shortLow = shortOf(lowVolts);

  const lowDrop = each((_, row) => {
    const from = typeof place1[row] === 'number' ? lowVolts[place1[row] - 1]! : lowSource[row]!;
    return numberIn(from) - numberIn(lowVolts[row]!);
  });
  const lost = (row: number) => (typeof lowDrop[row] === 'number' ? lowDrop[row] : 0);
  const mendPlace = rowsOf((_, row): ResultCell => {
    if (shortLow[row] !== 1 || typeof lowVolts[row] !== 'number') return '';
    const path = [row, ...above[row]!];
    const most = Math.max(...path.map(lost));
    return path.find((at) => lost(at) === most)! + 1;
  });

  const guard = protectionValues({
    runs,
    rules,
    supply: supply.cells,
    columns: {
      volts,
      runAmps,
      size,
      ohms,
      fuse,
      feederFuse,
      place1,
      place2: placeCell(1),
      place3: placeCell(2),
      place4: placeCell(3),
    },
    typed: content.protection,
  });
  const protection = each((_, row) => guard.rows[row]!.wrong);
  const guardedFrom = rowsOf((_, row): ResultCell => {
    const found = guard.rows[row]!.guardedFrom;
    if (found === '') return '';
    return found === PROTECTION_FIGURES.none
      ? MEND_WORDS.unguarded
      : `${MEND_WORDS.guarded}${String(found)}`;
  });

  const mendVolts = (run: ScheduleRun, row: number): ResultCell => {
    const place = mendPlace[row];
    if (typeof place !== 'number') return '';
    const at = place - 1;
    const none: ResultCell = MEND_WORDS.none;
    const answer = attempt(() => {
      const missing = (numberIn(run.leastVolts!) - numberIn(lowVolts[row]!)) / lost(at);
      if (!(missing < 1)) return none;
      const thicker = gauge('MINGAUGE', at, numberIn(dropShare[at]!) * (1 - missing));
      return isError(thicker)
        ? none
        : `${MEND_WORDS.mends}${runs[at]!.run ?? ''}${MEND_WORDS.inSize}${thicker}`;
    });
    return isError(answer) ? none : answer;
  };
  const mend = rowsOf((run, row): ResultCell =>
    [guardedFrom[row]!, mendVolts(run, row)].filter((said) => said !== '').join(VERDICT_JOINT),
  );

  const words = each((run, row) => {
    const wrong = (word: string) => VERDICT_JOINT + word;
    if (isError(treeWord[row]!)) return treeWord[row];
    if (treeWord[row] !== '') return wrong(String(treeWord[row]));
    if (isNA(size[row]!)) return wrong(SCHEDULE_WORDS.noSize);
    const judgement = judged[row]!;
    if (!isNA(ampacity[row]!) && isError(judgement)) return judgement;
    const alone = isNA(ampacity[row]!)
      ? wrong(SCHEDULE_WORDS.noAmpacity)
      : judgement === VERDICT_WORDS.ok
        ? ''
        : wrong(String(judgement));
    const low = lowVolts[row]!;
    const served = isNA(low)
      ? wrong(SCHEDULE_WORDS.cannotBeServed)
      : isError(low)
        ? wrong(SCHEDULE_WORDS.voltsUnknown)
        : shortLow[row] === 1
          ? wrong(SCHEDULE_WORDS.tooFewVolts)
          : '';
    const upstream = feederFuse[row]!;
    const guarded =
      isFused(run) ||
      (typeof upstream === 'number' &&
        typeof ampacity[row] === 'number' &&
        upstream <= ampacity[row])
        ? ''
        : wrong(SCHEDULE_WORDS.needsFuse);
    return alone + served + guarded + String(protection[row]);
  });
  const verdict = rowsOf((run, row): ResultCell => {
    const lengthBlank = isBlank(typed(run, 'length'));
    if (lengthBlank && isBlank(typed(run, 'peak'))) return '';
    if (lengthBlank) return SCHEDULE_WORDS.lengthMissing;
    if (ownLoad[row] === '') return SCHEDULE_WORDS.peakMissing;
    const wrong = words[row]!;
    if (isError(wrong)) return SCHEDULE_WORDS.checkEntries;
    return wrong === '' ? VERDICT_WORDS.ok : String(wrong).slice(VERDICT_JOINT.length);
  });

  const columns = {
    volts,
    target,
    feeder,
    ownLoad,
    ownAmps,
    runAmps,
    suggested,
    setBy,
    size,
    ohms,
    dropVolts,
    dropShare,
    fullSource,
    lowSource,
    batteryAmps,
    loadVolts,
    lowVolts,
    ampacity,
    fuse,
    heat: heatWatts,
    place1,
    place2: placeCell(1),
    place3: placeCell(2),
    place4: placeCell(3),
    feederFuse,
    treeWord,
    judged,
    shortFull,
    shortLow,
    lowDrop,
    mendPlace,
    protection,
    guardedFrom,
    words,
    verdict,
    mend,
  } satisfies Readonly<Record<FormulaKey, Column>>;
  const keys = Object.keys(columns) as FormulaKey[];
  return {
    rules,
    supply: supply.withShortages(shortFull, shortLow),
    protection: guard,
    runs: runs.map(
      (_, row) =>
        Object.fromEntries(keys.map((key) => [key, columns[key][row]!])) as unknown as RunValues,
    ),
  };
}
