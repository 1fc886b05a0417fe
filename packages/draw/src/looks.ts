import type { Ink } from '@evenhand/core/ground/scene';

/** Which inks a drawing is painted in. */
export type LookName = 'light' | 'dark' | 'print';

export type InkRole = Exclude<Ink, { readonly colour: string }>;

export interface Look {
  readonly name: LookName;
  /** A colour (#rrggbb) for every role. */
  readonly inks: Readonly<Record<InkRole, string>>;
  /** CSS names of the typeface, best first. */
  readonly fontFamily: string;
}

const fontFamily = "'IBM Plex Sans', 'Helvetica Neue', Arial, sans-serif";

const light: Look['inks'] = {
  ink: '#1d1f21',
  soft: '#5b6066',
  faint: '#8d9196',
  rule: '#c9c6bd',
  paper: '#fbfaf7',
  shade: '#f1efe9',
  accent: '#1f4e79',
  warn: '#8a3b12',
};

export const looks: Readonly<Record<LookName, Look>> = {
  light: { name: 'light', inks: light, fontFamily },
  dark: {
    name: 'dark',
    inks: {
      ink: '#e8e6e0',
      soft: '#a9adb2',
      faint: '#73777c',
      rule: '#3a3d41',
      paper: '#17181a',
      shade: '#202225',
      accent: '#8ab4dc',
      warn: '#e0a070',
    },
    fontFamily,
  },
  // Paper is white of its own; a tint would be printed as a screen of dots.
  print: { name: 'print', inks: { ...light, paper: '#ffffff', shade: '#f3f2ee' }, fontFamily },
};

export function colourOf(ink: Ink, look: Look): string {
  return typeof ink === 'object' ? ink.colour : look.inks[ink];
}
