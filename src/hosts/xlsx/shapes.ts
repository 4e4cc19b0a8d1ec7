/**
 * A figure as shapes of the file's own drawing language (ECMA-376 part 1, 20.5 and 20.1): sharp at every size, the same
 * bytes wherever they are written, and text stays text. A raster picture would want a renderer and fonts of its own.
 */
import type { BoxMark, Figure, LineMark, Mark, TextMark } from '../../drawing/figure';
import { textBox } from '../../drawing/figure';
import { colourOf, DASHES, ON_PAPER } from '../../drawing/svg';
import { xmlText } from '../../sheets/plan/xml-text';

/** English Metric Units. */
const EMU_PER_PT = 12_700;
/** Dashes are told in thousandths of a percent of the line's width. */
const DASH_UNIT = 100_000;

const emu = (pt: number) => Math.round(pt * EMU_PER_PT);

const colour = (ink: TextMark['ink']) =>
  `<a:solidFill><a:srgbClr val="${colourOf(ink, ON_PAPER).slice(1).toUpperCase()}"/></a:solidFill>`;

function placeOf(x: number, y: number, width: number, height: number, flip = ''): string {
  return `<a:xfrm${flip}><a:off x="${emu(x)}" y="${emu(y)}"/><a:ext cx="${emu(width)}" cy="${emu(height)}"/></a:xfrm>`;
}

function shape(id: number, properties: string, text = '', isText = false): string {
  return `<xdr:sp macro="" textlink=""><xdr:nvSpPr><xdr:cNvPr id="${id}" name="Mark ${id}"/><xdr:cNvSpPr${isText ? ' txBox="1"' : ''}/></xdr:nvSpPr><xdr:spPr>${properties}</xdr:spPr>${text}</xdr:sp>`;
}

const preset = (name: string) => `<a:prstGeom prst="${name}"><a:avLst/></a:prstGeom>`;

function strokeOf({ widthPt, dash, ink, arrow }: LineMark): string {
  const lengths = DASHES[dash];
  const pairs = lengths.flatMap((length, index) =>
    index % 2 === 0
      ? [
          `<a:ds d="${Math.round(length * DASH_UNIT)}" sp="${Math.round((lengths[index + 1] ?? 1) * DASH_UNIT)}"/>`,
        ]
      : [],
  );
  const dashes = pairs.length === 0 ? '' : `<a:custDash>${pairs.join('')}</a:custDash>`;
  const head = arrow === true ? '<a:tailEnd type="triangle" w="med" len="med"/>' : '';
  return `<a:ln w="${emu(widthPt)}" cap="flat">${colour(ink)}${dashes}<a:miter lim="800000"/>${head}</a:ln>`;
}

function lineShape(mark: LineMark, id: number): string {
  const { points } = mark;
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [width, height] = [Math.max(...xs) - left, Math.max(...ys) - top];
  if (points.length === 2) {
    const [[fromX, fromY], [toX, toY]] = points as [LineMark['points'][0], LineMark['points'][0]];
    const flip = `${toX < fromX ? ' flipH="1"' : ''}${toY < fromY ? ' flipV="1"' : ''}`;
    return shape(id, placeOf(left, top, width, height, flip) + preset('line') + strokeOf(mark));
  }
  const corners = points.map(([x, y], index) => {
    const point = `<a:pt x="${emu(x - left)}" y="${emu(y - top)}"/>`;
    return index === 0 ? `<a:moveTo>${point}</a:moveTo>` : `<a:lnTo>${point}</a:lnTo>`;
  });
  const path = `<a:custGeom><a:avLst/><a:gdLst/><a:ahLst/><a:cxnLst/><a:rect l="0" t="0" r="r" b="b"/><a:pathLst><a:path w="${emu(width)}" h="${emu(height)}" fill="none">${corners.join('')}</a:path></a:pathLst></a:custGeom>`;
  return shape(id, placeOf(left, top, width, height) + path + '<a:noFill/>' + strokeOf(mark));
}

function boxShape(
  { kind, xPt, yPt, widthPt, heightPt, fill, edgePt }: BoxMark,
  id: number,
): string {
  const edge =
    edgePt === undefined
      ? '<a:ln><a:noFill/></a:ln>'
      : `<a:ln w="${emu(edgePt)}">${colour('line')}</a:ln>`;
  return shape(
    id,
    placeOf(xPt, yPt, widthPt, heightPt) +
      preset(kind === 'box' ? 'rect' : 'ellipse') +
      colour(fill) +
      edge,
  );
}

/** A text in a box as high as its letters, on one line however wide the reader's font is. */
function textShape(mark: TextMark, id: number): string {
  const { xPt, yPt, widthPt, heightPt } = textBox(mark);
  const look = `lang="en-GB" sz="${Math.round(mark.sizePt * 100)}" b="${mark.bold ? 1 : 0}"`;
  const text = `<xdr:txBody><a:bodyPr wrap="none" lIns="0" tIns="0" rIns="0" bIns="0" anchor="ctr"><a:noAutofit/></a:bodyPr><a:lstStyle/><a:p><a:pPr algn="l"/><a:r><a:rPr ${look}>${colour(mark.ink)}<a:latin typeface="+mn-lt"/></a:rPr><a:t>${xmlText(mark.text)}</a:t></a:r></a:p></xdr:txBody>`;
  return shape(
    id,
    placeOf(xPt, yPt, widthPt, heightPt) + preset('rect') + '<a:noFill/>',
    text,
    true,
  );
}

function markShape(mark: Mark, id: number): string {
  if (mark.kind === 'line') return lineShape(mark, id);
  return mark.kind === 'text' ? textShape(mark, id) : boxShape(mark, id);
}

/** The figure as one group, its upper left corner in a cell. */
export function figureAnchor(figure: Figure, row: number, column: number): string {
  const size = `cx="${emu(figure.widthPt)}" cy="${emu(figure.heightPt)}"`;
  const frame = `<a:xfrm><a:off x="0" y="0"/><a:ext ${size}/><a:chOff x="0" y="0"/><a:chExt ${size}/></a:xfrm>`;
  // The group comes first; numbers of a drawing are each used once.
  const shapes = figure.marks.map((mark, index) => markShape(mark, index + 3)).join('');
  return (
    `<xdr:oneCellAnchor><xdr:from><xdr:col>${column}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from><xdr:ext ${size}/>` +
    `<xdr:grpSp><xdr:nvGrpSpPr><xdr:cNvPr id="2" name="${xmlText(figure.title)}" descr="${xmlText(figure.description)}"/><xdr:cNvGrpSpPr/></xdr:nvGrpSpPr><xdr:grpSpPr>${frame}</xdr:grpSpPr>${shapes}</xdr:grpSp>` +
    '<xdr:clientData/></xdr:oneCellAnchor>'
  );
}
