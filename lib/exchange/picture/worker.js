// @ts-check
import { sharp } from './sharp.js'

/**
 * Decodes and encodes one picture after the other in a process of its own: a file that brings the decoder down, or
 * that fills the memory, takes this process with it and not the shop. Plain JavaScript: it runs beside the built
 * screens, as it stands here.
 * @typedef {{ bytes: Uint8Array, fullSidePx: number, smallSidePx: number, mostPixels: number, leastSidePx: number }} Task
 */

// Only what the shop takes is decoded, whatever the bytes look like.
sharp.block({ operation: ['VipsForeignLoad'] })
sharp.unblock({
  operation: ['Jpeg', 'Png', 'Webp', 'Nsgif', 'Tiff', 'Heif'].map((name) => `VipsForeignLoad${name}Buffer`),
})

const photoQuality = 82
const lossy = new Set(['jpeg', 'heif'])

process.on('message', (/** @type {Task} */ task) => {
  work(task).then(
    (answer) => process.send?.(answer),
    (error) => process.send?.({ ok: false, fault: 'broken', said: String(error?.message ?? error) }),
  )
})
// Whoever gave the work is gone.
process.on('disconnect', () => process.exit())
process.send?.({ ready: true })

/** @param {Task} task */
async function work({ bytes, fullSidePx, smallSidePx, mostPixels, leastSidePx }) {
  const head = await sharp(bytes, { limitInputPixels: false }).metadata()
  const size = { widthPx: head.autoOrient.width, heightPx: head.autoOrient.height }
  if (size.widthPx * size.heightPx > mostPixels) return { ok: false, fault: 'pixels', ...size }
  if (Math.min(size.widthPx, size.heightPx) < leastSidePx) return { ok: false, fault: 'small', ...size }
  // Decoded and turned once; both sizes come from it. What is transparent is laid on white, colours become sRGB.
  const turned = sharp(bytes, { limitInputPixels: mostPixels, failOn: 'error' })
    .autoOrient()
    .resize({ width: fullSidePx, height: fullSidePx, fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#ffffff' })
    .toColourspace('srgb')
  const { data: raw, info } = await turned.raw().toBuffer({ resolveWithObject: true })
  const pixels = () =>
    sharp(raw, { raw: { width: info.width, height: info.height, channels: info.channels } })
  const photo = await pixels().jpeg({ quality: photoQuality }).toBuffer()
  const drawn = lossy.has(head.format) ? null : await pixels().png({ compressionLevel: 9 }).toBuffer()
  // Line art is smaller, and sharper, without loss.
  const asPng = drawn !== null && drawn.length <= photo.length
  const smaller = pixels().resize({
    width: smallSidePx,
    height: smallSidePx,
    fit: 'inside',
    withoutEnlargement: true,
  })
  const small = await (asPng
    ? smaller.png({ compressionLevel: 9 })
    : smaller.jpeg({ quality: photoQuality })
  ).toBuffer()
  return {
    ok: true,
    mimeType: asPng ? 'image/png' : 'image/jpeg',
    widthPx: info.width,
    heightPx: info.height,
    full: asPng ? drawn : photo,
    small,
    exif: head.exif ?? null,
    pages: head.pages ?? 1,
  }
}
