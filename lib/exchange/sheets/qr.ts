import { encode } from 'uqr'
import type { Paper } from './paper'

/** A QR code as vector squares; `side` is its width without the quiet zone, which the caller leaves white. */
export function drawQr({ doc }: Paper, address: string, x: number, y: number, side: number): void {
  const { data, size } = encode(address, { ecc: 'M', border: 0 })
  const module = side / size
  for (const [row, cells] of data.entries()) {
    for (let column = 0; column < size; column += 1) {
      if (!cells[column]) continue
      let end = column
      while (end + 1 < size && cells[end + 1]) end += 1
      // A hair of overlap keeps viewers from showing seams between rows.
      doc.rect(x + column * module, y + row * module, (end - column + 1) * module, module * 1.02)
      column = end
    }
  }
  doc.fill('#000000')
}
