import { createContext, untrack } from 'svelte';
import type { Command } from './command';

type Provider = () => readonly Command[];

/** All commands of the parts of the screen that are there now. */
export class Commands {
  #providers = $state.raw<readonly Provider[]>([]);

  get all(): readonly Command[] {
    return this.#providers.flatMap((provide) => provide());
  }

  /** Does what its keys would do; nothing if it cannot. */
  run(keys: string): void {
    this.all.find((command) => command.keys === keys && !command.whyNot)?.run();
  }

  /** @returns takes them out again */
  add(provide: Provider): () => void {
    untrack(() => (this.#providers = [...this.#providers, provide]));
    return () => {
      this.#providers = this.#providers.filter((other) => other !== provide);
    };
  }
}

const [commandsOf, setCommands] = createContext<Commands>();

export { setCommands, commandsOf };

/** Call while a component starts: its commands are in the list for as long as it is on the screen. */
export function provideCommands(provide: Provider): void {
  const commands = commandsOf();
  $effect(() => commands.add(provide));
}
