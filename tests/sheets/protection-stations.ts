/** Stations whose fuses fail in every way: too slow, not opened, not breaking, beside those that guard. */
import type { StationContent } from '../../src/sheets/station/content';
import { DEMO } from '../../src/sheets/station/demo';
import type { ScheduleRun } from '../../src/sheets/station/run';
import { generatedStations } from './generated-stations';

/** Batteries stiff and weak, spans of heat usual and tight, so that every kind of failing comes up. */
const SOURCES = [
  { supply: { milliohms: 6 } },
  { supply: { milliohms: 40 }, protection: { startC: 90, limitC: 250 } },
  { supply: { milliohms: 250 }, protection: { startC: 150 } },
  { supply: { milliohms: 0 } },
  { supply: { milliohms: 15 }, protection: { startC: 160, limitC: 70 } },
  { supply: { milliohms: 12 } },
] as const;

const generated = (): readonly StationContent[] =>
  generatedStations({
    stations: SOURCES.length,
    rows: 80,
    watts: false,
  }).map((content, index) => {
    const { supply, ...more } = SOURCES[index]!;
    return { ...content, ...more, supply: { ...content.supply, ...supply } };
  });

/** Thin wires behind fuses of every type, by themselves and as branches that lean on the fuse of a feeder. */
const thin = (series: string, milliohms: number): StationContent => ({
  title: `Thin, ${series}`,
  rules: { unit: 'm', series, insulationC: 90, installed: 'air' },
  supply: { milliohms },
  runs: [2, 12, 20, 30, 38, 45, 80].flatMap((peak, feeder): ScheduleRun[] => {
    const name = `Feed ${feeder + 1}`;
    const sizes = ['18 AWG', '14 AWG', '4 mm2', '8 AWG'];
    return [
      { run: name, peak, length: 1.5, joints: 1 },
      ...sizes.map((ownSize, index): ScheduleRun => ({
        run: `${name}, branch ${index + 1}`,
        fedFrom: name,
        peak: 0.3,
        length: 2 * 3 ** index + feeder,
        joints: index,
        ownSize,
        fused: index % 2 === 0 ? 'no' : 'yes',
      })),
    ];
  }),
});

/** The stations by name. */
export function protectionStations(): Readonly<Record<string, StationContent>> {
  return {
    demo: DEMO,
    thin1: thin('AWG', 14),
    thin2: thin('AWG all', 22),
    thin3: thin('mm2', 9),
    ...Object.fromEntries(
      generated().map((content, index) => [`generated${index + 1}`, content] as const),
    ),
  };
}
