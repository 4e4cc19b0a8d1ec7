/** One request to Excel at a time, each with a context of its own. */

/**
 * Runs a batch. While a cell is being edited Excel holds it back rather than refuse it. A batch ends with its own sync; no
 * object of it outlives it, so a later request finds sheets by their ids.
 */
export function request<T>(batch: (context: Excel.RequestContext) => Promise<T>): Promise<T> {
  return Excel.run({ delayForCellEdit: true }, batch);
}

/** Queues drawing that gives nothing back, without repainting or calculating between its steps. */
export function draw(queue: (context: Excel.RequestContext) => void): Promise<void> {
  return request(async (context) => {
    context.application.suspendScreenUpdatingUntilNextSync();
    context.application.suspendApiCalculationUntilNextSync();
    queue(context);
    await context.sync();
  });
}
