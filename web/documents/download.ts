/** Hands a file to the browser's own way of saving. */
export function download(content: Blob, name: string): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser needs the address until it has begun to save.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** A job's name as a file name: what file systems refuse is left out. "Lodeplan job" if nothing is left. */
export function fileName(name: string): string {
  const kept = name
    .normalize('NFC')
    .replace(/[\p{Cc}<>:"/\\|?*]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[\s.]+|[\s.]+$/g, '');
  return kept.slice(0, 100).trim() || 'Lodeplan job';
}
