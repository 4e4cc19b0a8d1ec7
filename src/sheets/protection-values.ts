/** What every computed cell of the Protection sheet comes to, outside any spreadsheet; it follows `protection-formulas`. */
import { RELATIVE_SLACK } from '../core/limits';
import { formatSize, SERIES, SERIES_SIZES } from '../core/size';
import { FUSE_TYPES } from '../core/tables/iso-8820-types';
import { VERDICT_JOINT } from '../core/verdict';
import { CellError, type Cell, type ResultCell } from '../functions/cell';
import { attempt, callCell, fail, numberIn } from './evaluate';
import type { SteadyAtWriting } from './without-add-in/native-protection';
import { PROTECTION_CELLS, type ProtectionTyped } from './protection/cells';
import type { ProtectionCellKey, ProtectionKey } from './station/protection-keys';
import { PROTECTION_FIGURES, PROTECTION_WORDS, STATE } from './protection/words';
import type { ColumnKey } from './station/schedule-keys';
import type { ScheduleRun } from './station/run';
import type { StationValues } from './schedule-values';
import type { RuleValues } from './values/rows';
import { PANEL, SCHEDULE_WORDS } from './station/verdicts';
import type { SupplyKey } from './supply/cells';

export interface ProtectionResult {
  readonly cells: Readonly<Record<ProtectionCellKey, ResultCell>>;
  readonly rows: readonly Readonly<Record<ProtectionKey, ResultCell>>[];
}

type Needed = Extract<
  ColumnKey,
  | 'volts'
  | 'runAmps'
  | 'size'
  | 'ohms'
  | 'fuse'
  | 'feederFuse'
  | 'place1'
  | 'place2'
  | 'place3'
  | 'place4'
>;

/** What the sheet reads of the schedule and the Supply sheet. */
export interface ProtectionInputs {
  readonly runs: readonly ScheduleRun[];
  readonly rules: RuleValues;
  readonly supply: Readonly<Record<SupplyKey, ResultCell>>;
  readonly columns: Readonly<Record<Needed, readonly ResultCell[]>>;
  readonly typed: ProtectionTyped | undefined;
}

const isSame = (a: unknown, b: unknown) => String(a).toLowerCase() === String(b).toLowerCase();
const trimmed = (value: unknown) => (typeof value === 'string' ? value.trim() : '');
const isNumber = (cell: Cell | undefined): cell is number => typeof cell === 'number';
const over = (value: number, limit: number) => value > limit * (1 + RELATIVE_SLACK);

/** The head of the sheet. */
function cellValues({
  rules,
  supply,
  typed,
}: ProtectionInputs): Readonly<Record<ProtectionCellKey, ResultCell>> {
  const startC = typed?.startC ?? PROTECTION_CELLS.startC.initial!;
  const limitC = typed?.limitC ?? PROTECTION_CELLS.limitC.initial!;
  const { milliohms, fullRest } = supply;
  return {
    batteryFault: attempt(() =>
      isNumber(milliohms) && isNumber(fullRest) && milliohms > 0
        ? fullRest / (milliohms / 1000)
        : fail('#N/A', 'the battery has no milliohms'),
    ),
    startC,
    limitC,
    k: attempt(() =>
      Math.sqrt(
        numberIn(callCell('WITHSTAND_SECONDS', '1 mm2', 1, startC, limitC, rules.material)),
      ),
    ),
    airC: rules.ambientC!,
    ratingC: rules.insulationC!,
  };
}

/** Values of the sheet, row by row. */
export function protectionValues(inputs: ProtectionInputs): ProtectionResult {
  const cells = cellValues(inputs);
  return { cells, rows: inputs.runs.map((_, row) => rowValues(inputs, cells, row)) };
}

/** What the steady temperatures were worked out from. */
export function steadyInputs(
  station: Pick<StationValues, 'rules' | 'runs' | 'protection'>,
): readonly SteadyAtWriting[] {
  const { rules, runs, protection } = station;
  return protection.rows.map(({ steady }, row) => ({
    amps: runs[row]!.runAmps,
    size: runs[row]!.size,
    airC: protection.cells.airC,
    material: rules.material,
    steady,
  }));
}

function rowValues(
  inputs: ProtectionInputs,
  cells: ProtectionResult['cells'],
  row: number,
): Readonly<Record<ProtectionKey, ResultCell>> {
  const { runs, rules, supply, columns } = inputs;
  const run = runs[row]!;
  const at = (key: Needed, of = row) => columns[key][of]!;
  const amps = at('runAmps');
  const size = at('size');
  const places = [at('place1'), at('place2'), at('place3'), at('place4')].filter(isNumber);
  const root = places.at(-1) ?? row + 1;
  const rootRun = runs[root - 1]!;
  const rootVolts = at('volts', root - 1);
  const onBattery = trimmed(rootRun.fedFrom) === '' && rootVolts === rules.volts;
  const sourceVolts = onBattery ? supply.fullRest : rootVolts;
  const { milliohms } = supply;
  const nearOhms = attempt((): ResultCell =>
    isNumber(milliohms) && milliohms >= 0
      ? places.reduce((sum, place) => sum + numberIn(at('ohms', place - 1)), 0)
      : fail('#N/A', 'the source has no milliohms'),
  );
  const farOhms = attempt(() => numberIn(nearOhms) + numberIn(at('ohms')));

  const state = ((): ResultCell => {
    if (amps === '') return '';
    if (!isNumber(amps) || !isNumber(at('ohms'))) return STATE.row;
    const last = places.length === 4 ? places[3] : undefined;
    if (last !== undefined && isNumber(at('place1', last - 1))) return STATE.deep;
    if (isSame(trimmed(rootRun.fedFrom), PANEL)) return STATE.panel;
    const known = [sourceVolts, nearOhms, farOhms, cells.k, cells.airC, cells.ratingC];
    return known.every(isNumber) && Number(sourceVolts) > 0 ? STATE.judged : STATE.source;
  })();
  const judged = state === STATE.judged;
  const hasCurrent = state !== '' && state !== STATE.row;

  const isFused = !isSame(run.fused ?? '', 'no');
  const rating = isFused ? at('fuse') : at('feederFuse');
  const fuse: ResultCell = state === '' ? '' : isNumber(rating) ? rating : PROTECTION_FIGURES.none;
  const typeAt = isNumber(fuse) ? FUSE_TYPES.findLastIndex(({ fromA }) => fromA <= fuse) : -1;
  const type = FUSE_TYPES[typeAt];

  const faultAt = (ohms: ResultCell): ResultCell => {
    if (state === STATE.panel) return supply.shortCircuitAmps;
    if (!judged) return '';
    return Number(milliohms) / 1000 + Number(ohms) > 0
      ? callCell('FAULT_AMPS', sourceVolts, milliohms, ohms)
      : PROTECTION_FIGURES.noLimit;
  };
  const opensWithin = (fault: ResultCell): ResultCell => {
    if (!judged || type === undefined || !isNumber(fault) || !isNumber(fuse)) return '';
    const { limits } = type;
    if (limits === undefined) return PROTECTION_FIGURES.notPublished;
    return over(limits[0]!.timesRating * fuse, fault)
      ? PROTECTION_FIGURES.needNotOpen
      : callCell('FUSE_SECONDS', fuse, fault);
  };
  const farFault = faultAt(farOhms);
  const nearFault = faultAt(nearOhms);
  const farOpens = opensWithin(farFault);
  const nearOpens = opensWithin(nearFault);
  const farBears: ResultCell =
    judged && isNumber(farFault)
      ? callCell('WITHSTAND_SECONDS', size, farFault, cells.startC, cells.limitC, rules.material)
      : '';
  const nearBears =
    isNumber(farBears) && isNumber(farFault) && isNumber(nearFault)
      ? farBears * (farFault / nearFault) ** 2
      : '';
  const steady: ResultCell = hasCurrent
    ? callCell('CONDUCTOR_TEMP', amps, size, cells.airC, null, rules.material)
    : '';
  const insulation: ResultCell = hasCurrent ? cells.ratingC : '';

  const slower = (opens: ResultCell, bears: ResultCell) =>
    isNumber(opens) && isNumber(bears) && over(opens, bears);
  const isWeak = farOpens === PROTECTION_FIGURES.needNotOpen;
  const isSlow = slower(farOpens, farBears) || slower(nearOpens, nearBears);
  const isUnbroken =
    judged && type !== undefined && (!isNumber(nearFault) || over(nearFault, type.breakingA));
  const isHot =
    steady instanceof CellError
      ? steady.code === '#N/A'
      : isNumber(steady) && isNumber(insulation) && over(steady, insulation);

  const choice = choices(inputs);
  const guards = (candidate: string, ampacityA: number) => {
    const ohms = callCell(
      'RUN_OHMS',
      run.length ?? null,
      rules.unit,
      candidate,
      rules.material,
      rules.tempC,
      run.joints ?? null,
    );
    const far =
      numberIn(sourceVolts) / (numberIn(milliohms) / 1000 + numberIn(nearOhms) + numberIn(ohms));
    const holds = (fault: Cell) =>
      callCell(
        'FUSE_GUARDS',
        fuse,
        candidate,
        fault,
        cells.startC,
        cells.limitC,
        rules.material,
      ) === true;
    return !over(numberIn(fuse), ampacityA) && holds(far) && holds(nearFault);
  };
  const guardPlace: ResultCell =
    (isWeak || isSlow) && !isUnbroken
      ? attempt(() => {
          const sizes = choice();
          return 1 + sizes.filter(([candidate, ampacityA]) => !guards(candidate, ampacityA)).length;
        })
      : '';
  const guardedFrom: ResultCell = isNumber(guardPlace)
    ? (choice()[guardPlace - 1]?.[0] ?? PROTECTION_FIGURES.none)
    : '';

  const told = (isTold: boolean, word: string) => (isTold ? VERDICT_JOINT + word : '');
  const isUnjudged = state === STATE.source || state === STATE.deep;
  const wrong =
    told(isUnjudged, SCHEDULE_WORDS.notJudged) +
    told(isSlow, SCHEDULE_WORDS.fuseTooSlow) +
    told(isWeak, SCHEDULE_WORDS.faultTooWeak) +
    told(isUnbroken, SCHEDULE_WORDS.mayNotBreak) +
    told(isHot, SCHEDULE_WORDS.tooHot);
  const why =
    state === STATE.panel
      ? PROTECTION_WORDS.panel
      : state === STATE.deep
        ? PROTECTION_WORDS.tooDeep
        : state === STATE.source
          ? PROTECTION_WORDS.sourceUnknown
          : type === undefined
            ? PROTECTION_WORDS.noFuse
            : type.limits === undefined
              ? PROTECTION_WORDS.noTime
              : '';
  const note = hasCurrent && why !== '' ? VERDICT_JOINT + why : '';
  const said = wrong + note;
  const words: ResultCell =
    state === ''
      ? ''
      : state === STATE.row
        ? PROTECTION_WORDS.rowFirst
        : said === ''
          ? PROTECTION_WORDS.guarded
          : said.slice(VERDICT_JOINT.length);

  return {
    run: state === '' ? '' : (run.run ?? ''),
    size: state === '' ? '' : size instanceof CellError ? PROTECTION_FIGURES.none : String(size),
    fuse,
    fuseFrom: isNumber(fuse)
      ? isFused
        ? PROTECTION_FIGURES.own
        : PROTECTION_FIGURES.upstream
      : '',
    fuseType: type?.name ?? '',
    farFault,
    farOpens,
    farBears,
    nearFault,
    nearOpens,
    nearBears,
    steady,
    insulation,
    guardedFrom,
    words,
    place: row + 1,
    state,
    root,
    sourceVolts,
    nearOhms,
    farOhms,
    type: typeAt < 0 ? '' : typeAt + 1,
    weak: Number(isWeak),
    slow: Number(isSlow),
    unbroken: Number(isUnbroken),
    hot: Number(isHot),
    guardPlace,
    wrong,
    verdict: state === '' ? '' : wrong === '' ? PROTECTION_FIGURES.none : wrong,
    note,
  };
}

/** The sizes that may be suggested under the rules, thinnest first, with their ampacities. */
function choices({ rules }: ProtectionInputs): () => readonly (readonly [string, number])[] {
  return () => {
    const series = SERIES.find((known) => isSame(known, rules.series)) ?? SERIES[0];
    return SERIES_SIZES[series].flatMap((of) => {
      const size = formatSize(of);
      const ampacityA = callCell(
        'AMPACITY',
        size,
        rules.insulationC,
        rules.ambientC,
        rules.conductors,
        rules.installed,
        rules.material,
      );
      return isNumber(ampacityA) ? [[size, ampacityA] as const] : [];
    });
  };
}
