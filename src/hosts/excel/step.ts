/** Drawing in steps, each of a known size, and steps in requests that Excel on the web takes. */

/** A part of a drawing on one sheet. */
export interface Step {
  /** About how long it is in a request. */
  readonly bytes: number;
  draw(sheet: Excel.Worksheet): void;
}

/** A step and the sheet it belongs to, by its place among the plans. */
export interface Placed<S extends Step = Step> {
  readonly sheet: number;
  readonly step: S;
}

/**
 * About what one queued call or assignment comes to in a request, with the path of the object that it is made on.
 * Measured with Office.js 1.1.110: 160 to 330 bytes.
 */
export const CALL_BYTES = 350;

/** Excel on the web refuses requests of 5 MB; a small request also shows its progress and can be stopped sooner. */
const REQUEST_BYTES = 700_000;

/** Steps in their order, as many to a request as it has room for. */
export function intoRequests<P extends { readonly step: Step }>(
  steps: readonly P[],
): readonly (readonly P[])[] {
  const requests: P[][] = [];
  let room = 0;
  for (const step of steps) {
    if (requests.length === 0 || step.step.bytes > room) {
      requests.push([]);
      room = REQUEST_BYTES;
    }
    requests.at(-1)!.push(step);
    room -= step.step.bytes;
  }
  return requests;
}
