/** A bar chart of the file's own (ECMA-376 part 1, 21.2): it follows its cells in every spreadsheet. */
import type { Cell } from '../../functions/cell';
import type { Calculated } from '../../sheets/calculate/calculate';
import { areaAddress, quotedSheetName, type Area } from '../../sheets/plan/area';
import type { BarLook, ChartPlan } from '../../sheets/plan/chart';
import { PALETTE } from '../../sheets/plan/palette';
import type { SheetPlan } from '../../sheets/plan/plan';
import { xmlText } from '../../sheets/plan/xml-text';

const EMU_PER_PT = 12_700;
const colour = (of: string) => `<a:srgbClr val="${of.slice(1).toUpperCase()}"/>`;
const solid = (of: string) => `<a:solidFill>${colour(of)}</a:solidFill>`;
const EDGE = `<a:ln w="9525">${solid(PALETTE.darkText)}</a:ln>`;

const LOOKS: Readonly<Record<BarLook, string>> = {
  plain: solid(PALETTE.quietText) + EDGE,
  hatched: `<a:pattFill prst="dkUpDiag"><a:fgClr>${colour(PALETTE.danger)}</a:fgClr><a:bgClr>${colour('#ffffff')}</a:bgClr></a:pattFill>${EDGE}`,
  outlined: solid('#ffffff') + EDGE,
};

/** A part of the sheet's cells: where it stands, and what stands there for viewers that do not calculate. */
class Cells {
  constructor(
    private readonly sheet: string,
    private readonly values: Calculated | undefined,
  ) {}

  private points(of: Area, text: (value: Cell) => string | undefined): string {
    const points = Array.from({ length: of.rows }, (_, down) => {
      const said = text(this.values?.at(this.sheet, of.row + down, of.column) ?? null);
      return said === undefined ? '' : `<c:pt idx="${down}"><c:v>${xmlText(said)}</c:v></c:pt>`;
    });
    return `<c:ptCount val="${of.rows}"/>${points.join('')}`;
  }

  private formula(of: Area): string {
    return `<c:f>${xmlText(`${quotedSheetName(this.sheet)}!${areaAddress(of, 'both')}`)}</c:f>`;
  }

  texts(of: Area): string {
    const points = this.points(of, (value) => (value === null ? undefined : String(value)));
    return `<c:strRef>${this.formula(of)}<c:strCache>${points}</c:strCache></c:strRef>`;
  }

  numbers(of: Area, format: string): string {
    const points = this.points(of, (value) =>
      typeof value === 'number' ? String(value) : undefined,
    );
    return `<c:numRef>${this.formula(of)}<c:numCache><c:formatCode>${xmlText(format)}</c:formatCode>${points}</c:numCache></c:numRef>`;
  }
}

const textLook = (sizePt: number, bold = false, turned = '') =>
  `<a:bodyPr${turned}/><a:lstStyle/><a:p><a:pPr><a:defRPr sz="${sizePt * 100}" b="${bold ? 1 : 0}">${solid(PALETTE.darkText)}</a:defRPr></a:pPr>`;

const titleXml = (said: string, sizePt: number, turned = '') =>
  `<c:title><c:tx><c:rich>${textLook(sizePt, true, turned)}<a:r><a:rPr lang="en-GB" sz="${sizePt * 100}" b="1">${solid(PALETTE.darkText)}</a:rPr><a:t>${xmlText(said)}</a:t></a:r></a:p></c:rich></c:tx><c:overlay val="0"/></c:title>`;
/** Along the names it is read from below, in 60,000ths of a degree. */
const UPWARDS = ' rot="-5400000" vert="horz"';

/** The chart of a plan as a part of the file. */
export function chartXml(
  { name }: SheetPlan,
  { title, categories, categoryTitle, valueTitle, series, numberFormat }: ChartPlan,
  values: Calculated | undefined,
): string {
  const cells = new Cells(name, values);
  const bars = series.map(
    ({ name: heading, values: of, look }, index) =>
      `<c:ser><c:idx val="${index}"/><c:order val="${index}"/><c:tx>${cells.texts(heading)}</c:tx><c:spPr>${LOOKS[look]}</c:spPr><c:invertIfNegative val="0"/><c:cat>${cells.texts(categories)}</c:cat><c:val>${cells.numbers(of, numberFormat)}</c:val></c:ser>`,
  );
  const small = `<c:txPr>${textLook(9)}<a:endParaRPr lang="en-GB"/></a:p></c:txPr>`;
  const grid = `<c:majorGridlines><c:spPr><a:ln w="6350">${solid(PALETTE.line)}</a:ln></c:spPr></c:majorGridlines>`;
  return (
    '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n' +
    '<c:chartSpace xmlns:c="http://schemas.openxmlformats.org/drawingml/2006/chart" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><c:roundedCorners val="0"/><c:chart>' +
    `${titleXml(title, 12)}<c:autoTitleDeleted val="0"/>` +
    `<c:plotArea><c:layout/><c:barChart><c:barDir val="bar"/><c:grouping val="clustered"/><c:varyColors val="0"/>${bars.join('')}<c:gapWidth val="40"/><c:overlap val="0"/><c:axId val="1"/><c:axId val="2"/></c:barChart>` +
    // The first line of the table on top, and the figures below the last.
    `<c:catAx><c:axId val="1"/><c:scaling><c:orientation val="maxMin"/></c:scaling><c:delete val="0"/><c:axPos val="l"/>${titleXml(categoryTitle, 9, UPWARDS)}<c:numFmt formatCode="General" sourceLinked="0"/><c:majorTickMark val="none"/><c:minorTickMark val="none"/><c:tickLblPos val="low"/>${small}<c:crossAx val="2"/><c:crosses val="autoZero"/><c:auto val="0"/><c:lblAlgn val="ctr"/><c:lblOffset val="100"/><c:tickLblSkip val="1"/><c:noMultiLvlLbl val="1"/></c:catAx>` +
    `<c:valAx><c:axId val="2"/><c:scaling><c:orientation val="minMax"/><c:min val="0"/></c:scaling><c:delete val="0"/><c:axPos val="b"/>${grid}${titleXml(valueTitle, 9)}<c:numFmt formatCode="${xmlText(numberFormat)}" sourceLinked="0"/><c:majorTickMark val="out"/><c:minorTickMark val="none"/><c:tickLblPos val="nextTo"/>${small}<c:crossAx val="1"/><c:crosses val="max"/><c:crossBetween val="between"/></c:valAx>` +
    `</c:plotArea><c:legend><c:legendPos val="b"/><c:overlay val="0"/>${small}</c:legend><c:plotVisOnly val="1"/><c:dispBlanksAs val="gap"/></c:chart><c:spPr>${solid('#ffffff')}${EDGE}</c:spPr></c:chartSpace>`
  );
}

/** The chart's place over the cells; `relation` is how the drawing names it. */
export function chartAnchor(
  { first, title, description, widthPt, heightPt }: ChartPlan,
  relation: string,
): string {
  const [cx, cy] = [Math.round(widthPt * EMU_PER_PT), Math.round(heightPt * EMU_PER_PT)];
  return (
    `<xdr:oneCellAnchor><xdr:from><xdr:col>${first.column}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${first.row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from><xdr:ext cx="${cx}" cy="${cy}"/>` +
    `<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="2" name="${xmlText(title)}" descr="${xmlText(description)}"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr><xdr:xfrm><a:off x="0" y="0"/><a:ext cx="${cx}" cy="${cy}"/></xdr:xfrm><a:graphic><a:graphicData uri="http://schemas.openxmlformats.org/drawingml/2006/chart"><c:chart xmlns:c="http://schemas.openxmlformats.org/drawingml/2006/chart" r:id="${relation}"/></a:graphicData></a:graphic></xdr:graphicFrame>` +
    '<xdr:clientData/></xdr:oneCellAnchor>'
  );
}
