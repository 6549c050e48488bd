/**
 * Text of a file. UTF-8 with or without its mark; what is not UTF-8 is taken for the western 8-bit code of older
 * programs, which gives the same digits and can spoil only letters outside the English alphabet in names.
 */
export function decodeText(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}
