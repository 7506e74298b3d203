import { createKeybindingsHandler } from 'tinykeys';
import type { Command } from './command';
import { binding } from './keys';

/** How long after a key the next one of the same command may come, ms. */
const pause = 1500;

/**
 * Listens to the keys of commands. A dialog keeps all keys to itself, a field in which someone types keeps those that
 * are not said to work there.
 *
 * @param keys every combination to listen to
 * @param commands the commands as they are when a key is pressed
 */
export function keyListener(
  keys: readonly string[],
  commands: () => readonly Command[],
): (event: KeyboardEvent) => void {
  const press = (combination: string) => (event: KeyboardEvent) => {
    const bound = commands().filter((command) => command.keys === combination && !command.heardElsewhere);
    const command = bound.find(({ whyNot }) => !whyNot) ?? bound[0];
    if (!command || (isTyping(event) && !command.whileTyping)) return;
    if (combination === ownOfFields && isTextInput(event.target)) return;
    event.preventDefault();
    if (!command.whyNot) command.run();
  };
  const listen = createKeybindingsHandler(
    Object.fromEntries(keys.map((combination) => [binding(combination), press(combination)])),
    { timeout: pause },
  );
  return (event) => {
    if (event.defaultPrevented || event.isComposing || document.querySelector('dialog[open]')) return;
    listen(event);
  };
}

const textInputs = new Set(['text', 'search', 'number', 'date', 'email', 'url', 'tel', '']);

/** Whoever presses it in a field means the words there, typed in or not. */
const ownOfFields = 'Ctrl+A';

function isTextInput(target: EventTarget | null): target is HTMLInputElement {
  return target instanceof HTMLInputElement && textInputs.has(target.type);
}

function isTyping({ target, ctrlKey, metaKey }: KeyboardEvent): boolean {
  if (target instanceof HTMLTextAreaElement) return true;
  // A list of choices goes by letters and arrows: what is chosen is taken back with Ctrl as everywhere.
  if (target instanceof HTMLSelectElement) return !ctrlKey && !metaKey;
  if (isTextInput(target)) return target.dataset.settled !== 'true';
  return target instanceof HTMLElement && target.isContentEditable;
}
