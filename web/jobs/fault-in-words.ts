/** Fields of the job file by what the schedule calls them; of the others the object alone is named. */
const fieldWords: Readonly<Record<string, string>> = {
  name: 'name',
  width: 'width',
  height: 'height',
  x: 'distance from left',
  y: 'distance from floor',
  floor: 'distance from floor',
  clearance: 'clearance',
  depth: 'depth out of the wall',
  length: 'measured length',
  hollow: 'deepest hollow',
  jointGap: 'joint gap',
  leastWidth: 'least width',
  leastArea: 'least area',
  thickness: 'thickness',
  price: 'price',
  spares: 'number of spares',
  available: 'number of them available',
  spacingAcross: 'spacing across',
  spacingUp: 'spacing up',
  headingHeight: 'height of the row of headings',
  headingWidth: 'width of the column of headings',
  letterHeight: 'height of a capital',
  lineWidth: 'width of the lines',
  side: 'side of a square',
};

/**
 * A refusal of a job file as it is said where there is no file yet: "walls[0].outline (wall A) crosses …" becomes
 * "Wall A crosses …", "walls[0].openings[2].width (door D1 of wall A) is -5; …" "The width of door D1 of wall A is -5; …".
 */
export function faultInWords(text: string): string {
  const [, path, words, says] = /^(\S+) \((.+?)\) (.*)$/s.exec(text) ?? [];
  if (!path || !words || !says) return text;
  const field = /^(is|has) [^ ]+; |^has \d+ /.test(says) ? fieldOf(path) : undefined;
  const subject = field ? `the ${field} of ${words}` : words;
  return `${subject.charAt(0).toUpperCase()}${subject.slice(1)} ${says}`;
}

function fieldOf(path: string): string | undefined {
  const [parent, field = ''] = path.split('.').slice(-2);
  return parent === 'rim' ? `rim at the ${field}` : fieldWords[field];
}
