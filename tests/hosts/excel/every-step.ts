/** Whether every step of everything is failed, as `npm run faults` asks, or a sample that a test command can afford. */
export const EVERY_STEP = process.env['LOOM_EVERY_STEP'] === '1';
