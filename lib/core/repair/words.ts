import type { Edge, Side } from './types'

/** The three sides in words: two for a title strip, a short one for a list, a sentence for the question. */
export const sideWords: Readonly<
  Record<
    Side,
    { readonly worked: string; readonly from: string; readonly short: string; readonly asked: string }
  >
> = {
  'pattern-back': {
    worked: 'against the pattern',
    from: 'from the back',
    short: 'pattern, back',
    asked:
      'The mould goes back on its pattern; the opening is laid up from the back. Normal when the shape is kept.',
  },
  'place-back': {
    worked: 'in place, caul on the face',
    from: 'from the back',
    short: 'in place, back',
    asked:
      'The mould stays where it is; a caul holds the shape on the face, the plies are laid from the back.',
  },
  'place-face': {
    worked: 'in place',
    from: 'from the face',
    short: 'in place, face',
    asked:
      'The plies are laid from the tool face. The join shows on the face; kept to surface plies where possible.',
  },
}

export const edgeWords: Readonly<Record<Edge, { readonly name: string; readonly asked: string }>> = {
  scarf: { name: 'sanded scarf', asked: 'An even taper, sanded; its length is a ratio of the thickness.' },
  steps: { name: 'machined steps', asked: 'A land for each ply, cut by machine.' },
}

/** "cure" to "Cure": the first sign of a sentence. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
