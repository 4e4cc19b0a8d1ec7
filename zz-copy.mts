import { writeFileSync } from 'node:fs';
import { sharedCopy } from './src/sheets/shared-copy';
import { writeWorkbook } from './src/hosts/xlsx/write';
const R = [['Porch radio','','', '5 A','10 ft'],['Tower trunk','','','','6 ft'],['Siren','tower trunk','Siren','10 A','12'],['Tower radio','Tower trunk ','Radio','22','2.5 m'],['Gauge','Tower trunk','Level gauge','800 mA','40 ft'],['Lamp 1','Tower trunk','Lamp','12 W',`8' 6"`],['Van main','','','','4 ft'],['Van radio','Van main','Radio','20 A','10 ft'],['Van fridge','Van main','Fridge','60 W','3 yd'],['Case','','Carry-out case','12 A','6']];
const content = { title: 'Hands', runs: R.map(([run, fedFrom, load, peak, length]) => ({ run, ...(fedFrom ? { fedFrom } : {}), ...(load ? { load } : {}), ...(peak ? { peak } : {}), length })) } as any;
const copy: any = sharedCopy(content);
const bytes: any = await (writeWorkbook as any)(copy.plans, copy.values ?? copy.calculated);
writeFileSync('/tmp/hands.xlsx', bytes);
