/** An SVG as PNG, by the browser's own drawing. */
import type { Figure } from '../drawing/figure';

/** Print resolution, as far as the picture stays within what browsers draw and Excel on the web takes in a request. */
const DOTS_PER_INCH = 300;
const POINTS_PER_INCH = 72;
const MOST_PIXELS = 16_000_000;
const MOST_SIDE = 16_000;
const MOST_CHARACTERS = 3_500_000;
const SMALLER = 0.8;

/** Pixels for a point. */
function scaleFor(widthPt: number, heightPt: number): number {
  return Math.min(
    DOTS_PER_INCH / POINTS_PER_INCH,
    Math.sqrt(MOST_PIXELS / (widthPt * heightPt)),
    MOST_SIDE / Math.max(widthPt, heightPt),
  );
}

/** The picture in base64. */
export async function pngOf(svg: string, { widthPt, heightPt }: Figure): Promise<string> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('This browser cannot draw pictures.');
  for (let scale = scaleFor(widthPt, heightPt); ; scale *= SMALLER) {
    canvas.width = Math.ceil(widthPt * scale);
    canvas.height = Math.ceil(heightPt * scale);
    context.drawImage(image, 0, 0, canvas.width, canvas.height);
    const base64 = canvas.toDataURL('image/png').split(',')[1] ?? '';
    if (base64.length <= MOST_CHARACTERS) return base64;
  }
}
