/** Light or dark, as the person's system asks. Contrast themes are the browser's own and need nothing here. */
import { setTheme } from '@fluentui/web-components/theme/set-theme.js';
import { DARK_THEME, LIGHT_THEME } from './brand';

/** Dresses the page and keeps to the system's choice; returns the way to stop. */
export function followTheme(): () => void {
  const dark = window.matchMedia('(prefers-color-scheme: dark)');
  const dress = () => {
    setTheme(dark.matches ? DARK_THEME : LIGHT_THEME);
  };
  dark.addEventListener('change', dress);
  dress();
  return () => {
    dark.removeEventListener('change', dress);
  };
}
