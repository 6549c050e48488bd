import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { type PictureReading, type ReadPicture, readPicture } from '#lib/exchange/picture/index'
import { sharp } from '#lib/exchange/picture/sharp.js'
import { pictureLimits } from '#lib/schema/picture'
import { boxed, corners, own, quarters } from './paint'

/** Pictures as they come from phones, cameras and drawing programs, through the worker that the shop runs. */

const file = (path: string) => own(readFileSync(`tests/cases/${path}`))
const expected = (folder: string) => JSON.parse(readFileSync(`tests/cases/${folder}/expected.json`, 'utf8'))

function taken(reading: PictureReading): ReadPicture {
  if (!reading.ok) throw new Error(`refused: ${reading.reason}`)
  return reading.picture
}

function reason(reading: PictureReading): string {
  if (reading.ok) throw new Error('it was taken')
  return reading.reason
}

const size = ({ widthPx, heightPx }: ReadPicture) => [widthPx, heightPx]
const sizeOf = async (bytes: Uint8Array | null) => {
  const { width, height } = await sharp(bytes!).metadata()
  return [width, height]
}
const upright = { top_left: 'red', top_right: 'green', bottom_left: 'blue', bottom_right: 'white' }

describe('turned right', () => {
  const folder = 'T50a-photo-exif-rotation'

  test('T50a: a phone held upright', async () => {
    const wanted = expected(folder)
    const bytes = file(`${folder}/upright.jpg`)
    const picture = taken(await readPicture(bytes))
    expect(size(picture)).toEqual(wanted.shown_size)
    for (const kept of [picture.full, picture.small]) {
      expect(await sizeOf(kept)).toEqual(wanted.shown_size)
      expect(await corners(kept!)).toEqual(wanted.corner_colours_shown)
    }
    const smaller = taken(await readPicture(bytes, { fullSidePx: 30, smallSidePx: 30 }))
    expect(size(smaller)).toEqual(wanted.resized_to_width_20)
    expect(await sizeOf(smaller.small)).toEqual(wanted.resized_to_width_20)
  })

  /** How pixels are stored so that the tag brings them back: EXIF 2.3, table of Orientation (0x0112). */
  const stored: Readonly<Record<number, (picture: Awaited<ReturnType<typeof quarters>>) => unknown>> = {
    1: (picture) => picture,
    2: (picture) => picture.flop(),
    3: (picture) => picture.rotate(180),
    4: (picture) => picture.flip(),
    5: (picture) => picture.flop().rotate(270),
    6: (picture) => picture.rotate(270),
    7: (picture) => picture.flop().rotate(90),
    8: (picture) => picture.rotate(90),
  }

  test.each([1, 2, 3, 4, 5, 6, 7, 8])('orientation %s', async (orientation) => {
    const turned = stored[orientation]?.(await quarters(120, 80)) as Awaited<ReturnType<typeof quarters>>
    // sharp turns before it mirrors, whatever the order of the calls: stored pixels first, then the tag.
    const pixels = await turned.png().toBuffer()
    const bytes = own(await sharp(pixels).jpeg({ quality: 95 }).withMetadata({ orientation }).toBuffer())
    const picture = taken(await readPicture(bytes))
    expect(size(picture)).toEqual([120, 80])
    expect(await corners(picture.full)).toEqual(upright)
    expect(await corners(picture.small!)).toEqual(upright)
    expect((await sharp(picture.full).metadata()).orientation).toBeUndefined()
  })

  test.each([0, 9, 6000])('a tag that no camera means (%s) turns nothing', async (orientation) => {
    const jpeg = own(await (await quarters()).jpeg().withMetadata({ orientation: 6 }).toBuffer())
    // The value of the tag, little-endian, stands right after 12 01 03 00 01 00 00 00.
    const at = Buffer.from(jpeg).indexOf(Buffer.from([0x12, 0x01, 0x03, 0x00, 0x01, 0x00, 0x00, 0x00]))
    expect(at).toBeGreaterThan(0)
    new DataView(jpeg.buffer).setUint16(at + 8, orientation, true)
    expect(await corners(taken(await readPicture(jpeg)).full)).toEqual(upright)
  })
})

describe('by content, not by name', () => {
  const folder = 'T51a-photo-type-heic-and-wrong-names'

  test('T51a: HEIC named .jpg is refused with advice, JPEG named .heic is taken', async () => {
    const wanted = expected(folder)
    const said = reason(await readPicture(file(`${folder}/photo1.jpg`)))
    expect(wanted['photo1.jpg'].action).toBe('convert-or-refuse')
    expect(said).toMatch(/HEIC.*settings of the phone's camera.*JPEG.*share or export it as JPEG/s)
    const picture = taken(await readPicture(file(`${folder}/photo2.heic`)))
    expect(picture.mimeType).toBe(wanted['photo2.heic'].is)
    expect(size(picture)).toEqual(wanted['photo2.heic'].size)
    expect((await sharp(picture.full).metadata()).format).toBe('jpeg')
  })

  test.each([
    ['webp', 'image/'],
    ['gif', 'image/'],
    ['avif', 'image/jpeg'],
    ['tiff', 'image/'],
    ['png', 'image/'],
  ] as const)('%s becomes a picture that every screen shows', async (format, mime) => {
    const bytes = own(
      await (await quarters(240, 160)).toFormat(format, { lossless: true } as object).toBuffer(),
    )
    const picture = taken(await readPicture(bytes))
    expect(picture.mimeType).toMatch(mime)
    expect(await corners(picture.full)).toEqual(upright)
    expect((await sharp(picture.full).metadata()).mediaType).toBe(picture.mimeType)
  })

  test('line art stays without loss, a photo as PNG becomes a JPEG', async () => {
    const art = own(await (await quarters(600, 400)).png().toBuffer())
    expect(taken(await readPicture(art)).mimeType).toBe('image/png')
    const noise = await sharp({
      create: {
        width: 300,
        height: 200,
        channels: 3,
        background: '#888888',
        noise: { type: 'gaussian', mean: 128, sigma: 30 },
      },
    })
      .png()
      .toBuffer()
    expect(taken(await readPicture(own(noise))).mimeType).toBe('image/jpeg')
  })

  test.each([
    [
      'SVG',
      own(Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="100" height="100"/>')),
      /SVG.*PDF or PNG/,
    ],
    ['BMP', own(Buffer.from(`BM${'\0'.repeat(12)}\x28${'\0'.repeat(60)}`, 'latin1')), /BMP.*PNG/],
    ['HEIF', boxed('mif1', 'miaf'), /HEIF.*JPEG/s],
    ['a film', boxed('isom'), /film/],
    ['words', own(Buffer.from('hello there')), /no picture that can be read/],
    ['nothing', new Uint8Array(), /empty \(0 bytes\)/],
  ] as const)('%s is refused with its cure', async (_what, bytes, words) => {
    const reading = await readPicture(bytes)
    expect(reason(reading)).toMatch(words)
    expect(reading).toMatchObject({ unable: false })
  })
})

describe('limits', () => {
  test('T52a: 900 million pixels are refused from the header, with the limit and the size', async () => {
    const folder = 'T52a-photo-of-huge-size'
    const wanted = expected(folder)
    const bytes = file(`${folder}/white.png`)
    expect(bytes.length).toBe(wanted.bytes)
    const began = performance.now()
    const said = reason(await readPicture(bytes))
    expect(said).toContain('30,000 x 30,000 pixels, 900 megapixels; at most 60 megapixels')
    expect(performance.now() - began).toBeLessThan(3000)
    // The next one notices nothing.
    expect(size(taken(await readPicture(own(await (await quarters()).jpeg().toBuffer()))))).toEqual([120, 80])
  })

  test('a GIF of huge size, and one just beyond the limit', async () => {
    const gif = own(
      Buffer.from(
        'GIF89a\xff\xff\xff\xff\x80\0\0\0\0\0\xff\xff\xff,\0\0\0\0\xff\xff\xff\xff\0\x02\x02\x44\x01\0;',
        'latin1',
      ),
    )
    expect(reason(await readPicture(gif))).toMatch(/65,535 x 65,535 pixels|breaks off or is damaged/)
    const wide = await sharp({ create: { width: 16000, height: 4000, channels: 3, background: '#fff' } })
      .png()
      .toBuffer()
    expect(reason(await readPicture(own(wide)))).toContain('64 megapixels; at most 60 megapixels')
  })

  test('bytes', async () => {
    const bytes = new Uint8Array(pictureLimits.mostBytes + 1)
    bytes.set([0xff, 0xd8, 0xff])
    expect(reason(await readPicture(bytes))).toMatch(/25\.0 MB; at most 25 MB/)
  })

  test('fewer than 16 pixels on a side', async () => {
    const thin = own(await (await quarters(200, 8)).png().toBuffer())
    expect(reason(await readPicture(thin))).toMatch(/only 200 x 8 pixels; at least 16/)
  })

  test('the longest side is 2560 and 480 px, and nothing is blown up', async () => {
    const large = own(await (await quarters(4000, 3000)).jpeg().toBuffer())
    const picture = taken(await readPicture(large))
    expect(size(picture)).toEqual([2560, 1920])
    expect(await sizeOf(picture.small)).toEqual([480, 360])
    const small = taken(await readPicture(own(await (await quarters(100, 60)).jpeg().toBuffer())))
    expect(size(small)).toEqual([100, 60])
  })
})

describe('damaged', () => {
  test.each(['jpeg', 'png', 'webp', 'gif', 'avif', 'tiff'] as const)(
    'a %s that breaks off',
    async (format) => {
      const noise = sharp({
        create: {
          width: 120,
          height: 90,
          channels: 3,
          background: '#888888',
          noise: { type: 'gaussian', mean: 128, sigma: 30 },
        },
      })
      const whole = await noise.toFormat(format).toBuffer()
      expect(reason(await readPicture(own(whole.subarray(0, Math.floor(whole.length * 0.6)))))).toMatch(
        /breaks off or is damaged/,
      )
      expect(reason(await readPicture(own(whole.subarray(0, 40))))).toMatch(
        /breaks off or is damaged|can't be opened|no picture/,
      )
    },
  )

  test('only the first bytes of a JPEG', async () => {
    expect(reason(await readPicture(own(Buffer.from('ffd8ffe0', 'hex'))))).toMatch(/breaks off or is damaged/)
  })

  test('what follows the end of a JPEG, as some phones append, is left out', async () => {
    const jpeg = await (await quarters()).jpeg().toBuffer()
    const picture = taken(
      await readPicture(own(Buffer.concat([jpeg, Buffer.from('MotionPhoto_Data secret place')]))),
    )
    expect(Buffer.from(picture.full).includes('secret place')).toBe(false)
  })
})

describe('several pictures in a file', () => {
  test('the first one is kept, and it says so', async () => {
    const frames = await Promise.all(
      ['#e01010', '#1010e0'].map((background) =>
        sharp({ create: { width: 60, height: 40, channels: 3, background } })
          .png()
          .toBuffer(),
      ),
    )
    for (const format of ['gif', 'webp'] as const) {
      const moving = await sharp(frames, { join: { animated: true } })
        .toFormat(format)
        .toBuffer()
      const picture = taken(await readPicture(own(moving)))
      expect(picture.notices).toEqual(['The file holds several pictures; only the first one is kept'])
      expect(size(picture)).toEqual([60, 40])
      expect((await corners(picture.full)).top_left).toBe('red')
    }
  })

  test('a still picture has nothing to say', async () => {
    expect(taken(await readPicture(own(await (await quarters()).gif().toBuffer()))).notices).toEqual([])
  })
})

describe('colour', () => {
  test('16 bits a colour, four inks, another profile, grey: all come out in sRGB', async () => {
    const deep = await (await quarters()).toColourspace('rgb16').png().toBuffer()
    expect((await sharp(deep).metadata()).depth).toBe('ushort')
    const ink = await (await quarters()).toColourspace('cmyk').jpeg({ quality: 95 }).toBuffer()
    expect((await sharp(ink).metadata()).space).toBe('cmyk')
    const wide = await (await quarters()).jpeg({ quality: 95 }).withIccProfile('p3').toBuffer()
    expect((await sharp(wide).metadata()).hasProfile).toBe(true)
    for (const bytes of [deep, ink, wide]) {
      const picture = taken(await readPicture(own(bytes)))
      expect(await corners(picture.full)).toEqual(upright)
      const { space, depth, hasProfile, channels } = await sharp(picture.full).metadata()
      expect({ space, depth, hasProfile, channels }).toEqual({
        space: 'srgb',
        depth: 'uchar',
        hasProfile: false,
        channels: 3,
      })
    }
    const grey = taken(await readPicture(own(await (await quarters()).greyscale().jpeg().toBuffer())))
    expect((await sharp(grey.full).metadata()).space).toBe('srgb')
  })

  test('a wide profile is carried over, not dropped: a colour keeps its look', async () => {
    // 200, 60, 60 of the wide space is a stronger red in sRGB.
    const strong = sharp({
      create: { width: 64, height: 64, channels: 3, background: { r: 200, g: 60, b: 60 } },
    })
    const raw = await strong.raw().toBuffer()
    const tagged = await sharp(raw, { raw: { width: 64, height: 64, channels: 3 } })
      .withIccProfile('p3', { attach: true })
      .jpeg({ quality: 95 })
      .toBuffer()
    const source = await sharp(tagged, { ignoreIcc: true }).raw().toBuffer()
    const picture = taken(await readPicture(own(tagged)))
    const kept = await sharp(picture.full).raw().toBuffer()
    // As stored in the wide space the numbers lie nearer to each other than in sRGB.
    expect((source[0] ?? 0) - (source[1] ?? 0)).toBeLessThan((kept[0] ?? 0) - (kept[1] ?? 0))
  })

  test('what is transparent lies on white', async () => {
    const clear = await sharp({
      create: { width: 80, height: 60, channels: 4, background: { r: 0, g: 0, b: 0, alpha: 0 } },
    })
      .png()
      .toBuffer()
    const picture = taken(await readPicture(own(clear)))
    expect(await corners(picture.full)).toEqual({
      top_left: 'white',
      top_right: 'white',
      bottom_left: 'white',
      bottom_right: 'white',
    })
    expect((await sharp(picture.full).metadata()).hasAlpha).toBe(false)
  })
})

describe('what a file tells beside the picture', () => {
  const exif = {
    IFD0: { Make: 'Invented', Copyright: 'somebody', Artist: 'a name' },
    IFD2: { DateTimeOriginal: '2026:10:21 14:05:00', BodySerialNumber: 'serial 4711' },
    IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 3/1 3230/100', GPSMapDatum: 'place secret' },
  }
  const xmp =
    '<?xpacket begin="" id="W5M0MpCehiHzreSzNTczkc9d"?><x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about="secret-person"/></rdf:RDF></x:xmpmeta><?xpacket end="w"?>'

  test.each(['jpeg', 'png', 'webp'] as const)(
    'nothing of it stays in what is made of a %s, but its day is read',
    async (format) => {
      const told = await (await quarters(200, 120)).toFormat(format).withExif(exif).withXmp(xmp).toBuffer()
      const before = await sharp(told).metadata()
      expect(before.exif?.includes('serial 4711')).toBe(true)
      expect(before.xmp).toBeDefined()
      const picture = taken(await readPicture(own(told)))
      expect(picture.takenOn).toBe('2026-10-21')
      for (const kept of [picture.full, picture.small!]) {
        const { exif: block, xmp: packet, iptc, icc, comments } = await sharp(kept).metadata()
        expect({ block, packet, iptc, icc, comments }).toEqual({
          block: undefined,
          packet: undefined,
          iptc: undefined,
          icc: undefined,
          comments: undefined,
        })
        const bytes = Buffer.from(kept)
        for (const word of ['Exif', 'serial 4711', 'secret', 'Invented', 'GPS', 'http://', 'Photoshop']) {
          expect(bytes.includes(word), word).toBe(false)
        }
      }
    },
  )

  test('IPTC and a comment of a JPEG go as well', async () => {
    const jpeg = await (await quarters()).jpeg().toBuffer()
    const segment = (marker: number, body: string) => {
      const bytes = Buffer.from(body, 'latin1')
      const head = Buffer.from([0xff, marker, (bytes.length + 2) >> 8, (bytes.length + 2) & 255])
      return Buffer.concat([head, bytes])
    }
    const iptc = segment(0xed, 'Photoshop 3.0\x008BIM\x04\x04\0\0\0\0\0\x12\x1c\x02\x5a\0\x0dsecret town!!')
    const told = Buffer.concat([jpeg.subarray(0, 2), iptc, segment(0xfe, 'secret comment'), jpeg.subarray(2)])
    expect((await sharp(told).metadata()).iptc).toBeDefined()
    const picture = taken(await readPicture(own(told)))
    expect(Buffer.from(picture.full).includes('secret')).toBe(false)
    expect((await sharp(picture.full).metadata()).iptc).toBeUndefined()
  })

  test.each([
    ['0000:00:00 00:00:00', null],
    ['1970:01:01 00:00:00', null],
    ['2026:02:30 10:00:00', null],
    ['    :  :     :  :  ', null],
    ['2025-03-14 09:00:00', '2025-03-14'],
    ['2031:01:01 00:00:00', '2031-01-01'],
  ])('the day of "%s" is %s', async (moment, day) => {
    const bytes = await (await quarters())
      .jpeg()
      .withExif({ IFD2: { DateTimeOriginal: moment } })
      .toBuffer()
    expect(taken(await readPicture(own(bytes))).takenOn).toBe(day)
  })
})

describe('a drawing as PDF', () => {
  const pdf = own(Buffer.from('%PDF-1.7\n1 0 obj<</Type/Catalog>>endobj\ntrailer<</Root 1 0 R>>\n%%EOF\n'))

  test('is kept as it is', async () => {
    const picture = taken(await readPicture(pdf))
    expect(picture).toMatchObject({ mimeType: 'application/pdf', widthPx: null, heightPx: null, small: null })
    expect(picture.full).toEqual(pdf)
  })

  test('is refused where its end is missing', async () => {
    expect(reason(await readPicture(pdf.slice(0, -8)))).toMatch(/breaks off/)
  })
})
