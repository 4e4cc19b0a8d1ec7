/** The pane's colours: the design system's neutral ones, and a ramp of our own around the sheets' heading colour. */
import {
  createDarkTheme,
  createLightTheme,
  type BrandVariants,
  type Theme,
} from '@fluentui/tokens';

const RAMP: BrandVariants = {
  10: '#04141a',
  20: '#08222b',
  30: '#0c2e3a',
  40: '#123b4a',
  50: '#154656',
  60: '#195163',
  70: '#1d5b70',
  80: '#22687f',
  90: '#3a7c93',
  100: '#5190a6',
  110: '#6aa3b7',
  120: '#84b6c7',
  130: '#9fc8d6',
  140: '#bad9e3',
  150: '#d3e8ee',
  160: '#eaf4f7',
};

export const LIGHT_THEME: Theme = createLightTheme(RAMP);
export const DARK_THEME: Theme = createDarkTheme(RAMP);
