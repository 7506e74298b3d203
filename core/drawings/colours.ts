import type { Colour } from './page';

/** The look's colours as hex, for every writer alike. */
export const colours: Readonly<Record<Colour, string>> = {
  ink: '#1f2d36',
  soft: '#5d6870',
  hairline: '#cfc8b6',
  'red-lead': '#b5401c',
  wash: '#e9b9a4',
  water: '#d9e8e6',
  slate: '#31413f',
  paper: '#fffdf7',
  white: '#ffffff',
};
