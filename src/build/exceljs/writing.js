/**
 * What of the library that writes workbooks ships: its workbook, from its own source. Its ready-made script for browsers is
 * three times as large: it brings old browsers' missing pieces, the reading of .csv, and a stack of cryptography for passwords,
 * none of which is used here.
 */
module.exports = { Workbook: require('exceljs/lib/doc/workbook') };
