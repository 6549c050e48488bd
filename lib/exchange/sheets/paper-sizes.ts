/** Papers that sheets can be asked for, upright. A4 and A3 after ISO 216, the others after ANSI/ASME Y14.1 (A and B). */
export const paperSizes = {
  a4: { name: 'A4', widthMm: 210, heightMm: 297 },
  a3: { name: 'A3', widthMm: 297, heightMm: 420 },
  letter: { name: 'US Letter', widthMm: 215.9, heightMm: 279.4 },
  tabloid: { name: 'US Tabloid', widthMm: 279.4, heightMm: 431.8 },
} as const satisfies Record<
  string,
  { readonly name: string; readonly widthMm: number; readonly heightMm: number }
>

export type PaperName = keyof typeof paperSizes

export const paperNames = ['a4', 'a3', 'letter', 'tabloid'] as const satisfies readonly PaperName[]
