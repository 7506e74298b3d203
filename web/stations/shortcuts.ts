import type { OpenJob } from '../job/open-job.svelte';
import { stations } from './stations';

/** Undo, redo and the route by keys. A field in which someone is typing keeps its own undo. */
export function followShortcuts(event: KeyboardEvent, open: OpenJob): void {
  if (event.defaultPrevented || document.querySelector('dialog[open]')) return;
  const station = event.altKey && !event.ctrlKey && !event.metaKey && stationOfKey(event);
  if (station) {
    open.station = station.name;
    event.preventDefault();
    return;
  }
  if (!(event.ctrlKey || event.metaKey) || event.altKey || isTextField(event.target)) return;
  const key = event.key.toLowerCase();
  if (key === 'z' && !event.shiftKey) open.undo();
  else if ((key === 'z' && event.shiftKey) || (key === 'y' && event.ctrlKey)) open.redo();
  else return;
  event.preventDefault();
}

/** By the place of the key, since Alt changes what some layouts write. */
function stationOfKey(event: KeyboardEvent) {
  return stations.find(({ number }) => event.code === `Digit${number}` || event.code === `Numpad${number}`);
}

const textInputs = new Set(['text', 'search', 'number', 'date', 'email', 'url', 'tel', '']);

function isTextField(target: EventTarget | null): boolean {
  if (target instanceof HTMLTextAreaElement) return true;
  if (target instanceof HTMLInputElement) {
    return textInputs.has(target.type) && target.dataset.settled !== 'true';
  }
  return target instanceof HTMLElement && target.isContentEditable;
}
