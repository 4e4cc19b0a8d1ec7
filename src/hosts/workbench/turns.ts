/** Long work in pieces, so that the page goes on drawing and hearing what is typed. */

/** A piece may take so long: as long as nobody notices. */
const PIECE_MS = 40;

/** Lets whatever else waits on the page have its turn. */
const letOthers = () =>
  new Promise<void>((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });

/** Says when a piece has taken long enough. */
export class Turns {
  private began = performance.now();

  isDue(): boolean {
    return performance.now() - this.began >= PIECE_MS;
  }

  async take(): Promise<void> {
    await letOthers();
    this.began = performance.now();
  }
}
