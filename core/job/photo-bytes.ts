import { sha256 } from '@noble/hashes/sha2.js';
import type { Photo } from './schema';

export type PhotoType = Photo['type'];

/** What a photo is kept under: the SHA-256 of its bytes, in hex. */
export function photoIdOf(bytes: Uint8Array): string {
  return [...sha256(bytes)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/**
 * By the signature that every file of the type begins with: JPEG SOI marker, PNG signature, RIFF WEBP; an SVG by its
 * root element near the beginning of a text in markup.
 */
export function photoTypeOf(bytes: Uint8Array): PhotoType | null {
  const has = (at: number, signature: readonly number[]) =>
    signature.every((byte, i) => bytes[at + i] === byte);
  if (has(0, [0xff, 0xd8, 0xff])) return 'image/jpeg';
  if (has(0, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return 'image/png';
  if (has(0, [0x52, 0x49, 0x46, 0x46]) && has(8, [0x57, 0x45, 0x42, 0x50])) return 'image/webp';
  const text = new TextDecoder().decode(bytes.subarray(0, 4096));
  return /^\uFEFF?\s*</.test(text) && /<(?:[\w.-]+:)?svg[\s>]/.test(text) ? 'image/svg+xml' : null;
}

export function toBase64(bytes: Uint8Array): string {
  let text = '';
  // A part at a time: arguments of a call lie on the stack.
  for (let i = 0; i < bytes.length; i += 0x8000) {
    text += String.fromCharCode(...bytes.subarray(i, i + 0x8000));
  }
  return btoa(text);
}

/** @returns null if the text is no base64 */
export function fromBase64(text: string): Uint8Array<ArrayBuffer> | null {
  let characters: string;
  try {
    characters = atob(text);
  } catch {
    return null;
  }
  const bytes = new Uint8Array(characters.length);
  for (let i = 0; i < bytes.length; i++) bytes[i] = characters.charCodeAt(i);
  return bytes;
}
