/** The grid's dark look: it turns every colour of its cells over by lightness, so that contrasts stay. */
import type { Grid } from './grid';

/** Follows the system's choice of light or dark from now on. */
export function followLook({ api }: Grid): void {
  const dark = window.matchMedia('(prefers-color-scheme: dark)');
  const dress = () => {
    api.toggleDarkMode(dark.matches);
  };
  dark.addEventListener('change', dress);
  dress();
}
