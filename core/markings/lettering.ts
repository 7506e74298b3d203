/**
 * How wide letters are, in thousandths of the height of a capital: advance widths of Fira Sans Regular, which the sheets
 * print (SIL Open Font License; `test/markings/lettering.reference.test.ts` holds them against the font). A signwriter's
 * own letters differ, so what follows from them is said with "about".
 */
const widths: readonly (readonly [thousandths: number, letters: string])[] = [
  [318, "'"],
  [348, ',.:;·!¡'],
  [385, ' '],
  [406, 'jiìíîï'],
  [428, 'lIÌÍÎÏ`´'],
  [443, 'J'],
  [468, '[]{}()'],
  [486, 'f'],
  [524, 't'],
  [560, 'r¨'],
  [582, '"-|'],
  [635, 'z*'],
  [666, '?¿'],
  [686, 'scç'],
  [708, 'xF'],
  [718, 'vyýÿL'],
  [746, 'kT'],
  [756, '/\\_gZ'],
  [780, 'EÈÉÊËX^'],
  [791, 'aàáâãäåSeèéêë'],
  [803, 'YÝV'],
  [813, '#$+0123456789<=>C~£±Ç×÷'],
  [832, 'AÀÁÂÃÄÅ'],
  [846, 'PÞuùúûüoòóôõöø'],
  [855, 'hnñµKßbpþ'],
  [875, 'dqRB'],
  [916, 'G'],
  [940, 'DÐ'],
  [961, 'UÙÚÛÜ'],
  [989, 'HNÑ'],
  [1004, 'QOÒÓÔÕÖØ'],
  [1041, 'w'],
  [1058, '&'],
  [1129, 'M'],
  [1184, 'Æ'],
  [1199, 'W'],
  [1238, 'æm'],
  [1306, '%'],
  [1480, '@'],
];

/** Letters of other scripts are taken as wide as the widest of these that is common. */
const ofOthers = 1000;

const widthOf = new Map(widths.flatMap(([width, letters]) => [...letters].map((letter) => [letter, width])));

/** Width of a text whose capitals are `height` high, in the unit of that height. */
export function letteringWidth(text: string, height: number): number {
  const sum = [...text.normalize('NFC')].reduce(
    (total, letter) => total + (widthOf.get(letter) ?? ofOthers),
    0,
  );
  return (sum / 1000) * height;
}
