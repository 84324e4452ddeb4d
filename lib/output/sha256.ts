/** SHA-256 (FIPS 180-4) of what is written. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/** Hexadecimal, as the record lists its files. */
export function sha256Hex(bytes: Uint8Array): string {
  return bytesToHex(sha256(bytes));
}

/** Base64, as a content security policy names scripts and styles. */
export function sha256Base64(text: string): string {
  return btoa(String.fromCharCode(...sha256(utf8ToBytes(text))));
}
