/** The entry of the functions script: ties every function of the catalogue to its id in functions.json. */
import { CATALOGUE } from './catalogue';
import { excelFunction } from './excel-boundary';

for (const entry of CATALOGUE) CustomFunctions.associate(entry.id, excelFunction(entry));
