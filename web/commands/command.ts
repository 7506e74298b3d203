/** Something that the user can have done, as it stands in the list of commands. */
export interface Command {
  /** What it does, in the words of the button that does the same: "Put in a socket". */
  readonly name: string;
  /** The heading it stands under. */
  readonly group: CommandGroup;
  /** `Ctrl+Shift+Z`, `F1`, `Alt+1`, or one after another: `P S`. */
  readonly keys: string;
  /** Other words that a user may look for. */
  readonly also?: string;
  /** Why it can do nothing now, in a few words; null or absent if it can. */
  readonly whyNot?: string | null;
  /** Its keys do it while someone types in a field too. */
  readonly whileTyping?: true;
  /** Whoever holds the focus listens to these keys itself; the list only tells them. */
  readonly heardElsewhere?: true;
  readonly run: () => void;
}

export const commandGroups = [
  'Job',
  'Stations',
  'Walls',
  'Put in',
  'Chosen objects',
  'Zones',
  'Panels',
  'View',
  'Schedule',
  'Documents',
] as const;

export type CommandGroup = (typeof commandGroups)[number];

/** The commands whose name, group or other words hold a word beginning with each word typed, in the order of the groups. */
export function commandsFor(typed: string, commands: readonly Command[]): readonly Command[] {
  const wanted = wordsOf(typed);
  return commands
    .filter(({ name, group, also = '' }) => {
      const words = wordsOf(`${name} ${group} ${also}`);
      return wanted.every((start) => words.some((word) => word.startsWith(start)));
    })
    .toSorted((a, b) => commandGroups.indexOf(a.group) - commandGroups.indexOf(b.group));
}

function wordsOf(text: string): string[] {
  return text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
}
