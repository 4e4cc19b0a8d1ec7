/** Handing a file over to the browser's downloads. */

export const XLSX_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** Long enough for any browser to have taken the file. */
const KEPT_MS = 60_000;

/** Offers the bytes under a name. */
export function download(bytes: Uint8Array, fileName: string, type: string): void {
  const address = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => {
    URL.revokeObjectURL(address);
  }, KEPT_MS);
}

/** A title as a file's name: without what file systems refuse. */
export function fileNameOf(title: string, ending: string): string {
  const plain = title
    // eslint-disable-next-line no-control-regex
    .replace(/[\u0000-\u001F<>:"/\\|?*]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/^\.+|\.+$/g, '')
    .slice(0, 80)
    .trim();
  return `${plain === '' ? 'Run schedule' : plain}.${ending}`;
}
