/** Letters that no decomposition takes apart. */
const apart: Readonly<Record<string, string>> = {
  ø: 'o',
  ł: 'l',
  đ: 'd',
  ı: 'i',
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
}

/**
 * Text as it is compared in a search: lower case, accents and umlauts off, ß as ss. The database's plain_words does the
 * same to what is stored.
 */
export function fold(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase()
    .replace(/[øłđıßæœ]/g, (letter) => apart[letter] ?? letter)
}

/** A code without the signs between: "LH-P2", "lh p2" and "lhp2" are one. */
export function squeeze(code: string): string {
  return fold(code).replace(/[^\p{L}\p{N}]+/gu, '')
}
