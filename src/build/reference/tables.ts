/** The published tables by the names of their files: what each exports, from which its sources are read. */
import * as cfr33_183_425 from '../../core/tables/33cfr-183-425';
import * as cfr33_183_455 from '../../core/tables/33cfr-183-455';
import * as air from '../../core/tables/air';
import * as awg from '../../core/tables/awg';
import * as batteryMilliohms from '../../core/tables/battery-milliohms';
import * as chargingVolts from '../../core/tables/charging-volts';
import * as fuseKinds from '../../core/tables/fuse-kinds';
import * as iec60228 from '../../core/tables/iec-60228';
import * as insulationWalls from '../../core/tables/insulation-walls';
import * as iso8820_3Times from '../../core/tables/iso-8820-3-times';
import * as iso8820Ratings from '../../core/tables/iso-8820-ratings';
import * as iso8820Types from '../../core/tables/iso-8820-types';
import * as jointPractice from '../../core/tables/joint-practice';
import * as materials from '../../core/tables/materials';
import * as nfpa70_240_4D from '../../core/tables/nfpa70-240-4-d';
import * as nfpa70_310_15Bundling from '../../core/tables/nfpa70-310-15-bundling';
import * as nfpa70_310_16 from '../../core/tables/nfpa70-310-16';
import * as nfpa70_310_17 from '../../core/tables/nfpa70-310-17';
import * as restingVolts from '../../core/tables/resting-volts';
import * as shortCircuitConstants from '../../core/tables/short-circuit-constants';

export const TABLES: Readonly<Record<string, object>> = {
  '33cfr-183-425': cfr33_183_425,
  '33cfr-183-455': cfr33_183_455,
  air,
  awg,
  'battery-milliohms': batteryMilliohms,
  'charging-volts': chargingVolts,
  'fuse-kinds': fuseKinds,
  'iec-60228': iec60228,
  'insulation-walls': insulationWalls,
  'iso-8820-3-times': iso8820_3Times,
  'iso-8820-ratings': iso8820Ratings,
  'iso-8820-types': iso8820Types,
  'joint-practice': jointPractice,
  materials,
  'nfpa70-240-4-d': nfpa70_240_4D,
  'nfpa70-310-15-bundling': nfpa70_310_15Bundling,
  'nfpa70-310-16': nfpa70_310_16,
  'nfpa70-310-17': nfpa70_310_17,
  'resting-volts': restingVolts,
  'short-circuit-constants': shortCircuitConstants,
};
