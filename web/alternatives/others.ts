import { createContext } from 'svelte';
import type { AlternativeResults } from '../results/alternative-results.svelte';

const [othersOf, setOthers] = createContext<AlternativeResults>();

/** What follows from the alternatives that are not on the walls. */
export { othersOf, setOthers };
