/** Pictures of the demo shop as SVG: plain, technical, and seen to be drawn. */

const width = 1600
const height = 1200
const top = -100

const sheet = (background: string, body: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 ${top} ${width} ${height}">
  <rect y="${top}" width="${width}" height="${height}" fill="${background}"/>${body}</svg>`

const floorLengthMm = 2200
const floorWidthMm = 430

/** Where a place on the floor is seen by who stands in front of it: the far edge is shorter. */
function seen(uMm: number, vMm: number): readonly [number, number] {
  const far = vMm / floorWidthMm
  const half = 700 - 170 * far
  return [Math.round(800 + (uMm / floorLengthMm - 0.5) * 2 * half), Math.round(860 - 560 * far)]
}

const corners = (spots: readonly (readonly [number, number])[]) =>
  spots.map(([u, v]) => seen(u, v).join(',')).join(' ')

const box = (u0: number, v0: number, u1: number, v1: number) =>
  corners([
    [u0, v0],
    [u1, v0],
    [u1, v1],
    [u0, v1],
  ])

/** A bush: the nearer it is, the larger. */
function bush(uMm: number, vMm: number): string {
  const [x, y] = seen(uMm, vMm)
  const radius = 17 - (6 * vMm) / floorWidthMm
  return `<ellipse cx="${x}" cy="${y}" rx="${radius}" ry="${radius * 0.72}" fill="#c9c4b4" stroke="#6d6a60" stroke-width="3"/>
    <ellipse cx="${x}" cy="${y}" rx="${radius * 0.45}" ry="${radius * 0.33}" fill="#22262b"/>`
}

const bushes = [
  [150, 60],
  [520, 340],
  [900, 130],
  [1350, 215],
  [1980, 90],
] as const

/** Weave of the surface ply, as lines that run with the floor. */
function weave(): string {
  const along = Array.from({ length: 22 }, (_, row) => {
    const v = (row * floorWidthMm) / 21
    const [[x0, y0], [x1, y1]] = [seen(0, v), seen(floorLengthMm, v)]
    return `<line x1="${x0}" y1="${y0}" x2="${x1}" y2="${y1}"/>`
  })
  const across = Array.from({ length: 56 }, (_, row) => {
    const u = (row * floorLengthMm) / 55
    const [[x0, y0], [x1, y1]] = [seen(u, 0), seen(u, floorWidthMm)]
    return `<line x1="${x0}" y1="${y0}" x2="${x1}" y2="${y1}"/>`
  })
  return `<g stroke="#4a525b" stroke-width="1.5">${[...along, ...across].join('')}</g>`
}

/** The floor of the lower hull's port mould, always seen from the same place. */
export function hullFloor({
  patched,
  scratched,
}: {
  readonly patched: boolean
  readonly scratched: boolean
}): string {
  const [x0, y0] = seen(1700, 300)
  const [x1, y1] = seen(1745, 318)
  return sheet(
    '#a59d8d',
    `<polygon points="${box(-90, -60, floorLengthMm + 90, floorWidthMm + 50)}" fill="#6f7377"/>
    <polygon points="${box(0, 0, floorLengthMm, floorWidthMm)}" fill="#39414a"/>${weave()}
    <polygon points="${box(40, 30, floorLengthMm - 40, floorWidthMm - 30)}" fill="none" stroke="#d8d2bf" stroke-width="2.5" stroke-dasharray="26 8 4 8"/>
    ${patched ? `<polygon points="${box(1245, 120, 1455, 310)}" fill="#4d5a66" stroke="#7d8a95" stroke-width="3"/><polygon points="${box(1305, 172, 1395, 258)}" fill="#56646f" stroke="#8d99a3" stroke-width="2"/>` : ''}
    ${bushes.map(([u, v]) => bush(u, v)).join('')}
    ${scratched ? `<line x1="${x0}" y1="${y0}" x2="${x1}" y2="${y1}" stroke="#e9e6dc" stroke-width="6" stroke-linecap="round"/>` : ''}`,
  )
}

/** Rule of a decimetre along the lower edge, a mark each centimetre. */
function rule(): string {
  const marks = Array.from(
    { length: 11 },
    (_, mark) =>
      `<line x1="${300 + mark * 100}" y1="880" x2="${300 + mark * 100}" y2="${mark % 5 === 0 ? 815 : 845}"/>`,
  )
  return `<rect x="270" y="800" width="1060" height="90" fill="#e9e4d4"/><g stroke="#23282e" stroke-width="4">${marks.join('')}</g>`
}

const twill = `<defs><pattern id="w" width="36" height="36" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
  <rect width="36" height="36" fill="#343b43"/><rect width="18" height="36" fill="#3d454e"/></pattern></defs>
  <rect y="${top}" width="${width}" height="${height}" fill="url(#w)"/>`

export function tornBush(): string {
  return sheet(
    '#39414a',
    `${twill}<path d="M610 430 L690 300 L800 350 L930 280 L1010 420 L960 520 L1000 620 L860 690 L760 640 L640 690 L590 560 Z" fill="#7b7466" stroke="#b8ae98" stroke-width="5"/>
    <ellipse cx="800" cy="480" rx="120" ry="112" fill="#16191d"/>
    <g transform="rotate(24 860 470)"><ellipse cx="860" cy="470" rx="96" ry="84" fill="#c9c4b4" stroke="#6d6a60" stroke-width="8"/><ellipse cx="860" cy="470" rx="46" ry="40" fill="#22262b"/></g>${rule()}`,
  )
}

export function burntTray(): string {
  return sheet(
    '#39414a',
    `${twill}<path d="M560 420 Q640 270 820 290 Q1030 300 1040 480 Q1050 650 850 680 Q600 700 560 420 Z" fill="#8a7a62"/>
    <path d="M640 440 Q700 340 820 350 Q960 360 960 480 Q960 600 830 610 Q660 620 640 440 Z" fill="#211d19"/>
    <g stroke="#a8957a" stroke-width="4">${Array.from({ length: 13 }, (_, row) => `<line x1="${668 + row * 20}" y1="${400 + (row % 3) * 14}" x2="${690 + row * 20}" y2="${560 - (row % 4) * 16}"/>`).join('')}</g>${rule()}`,
  )
}

/** Black lines on white: a section through a pattern on its base, with two pins. */
export function patternSection(): string {
  const pin = (x: number) =>
    `<rect x="${x - 14}" y="360" width="28" height="150" fill="#fff"/><line x1="${x}" y1="320" x2="${x}" y2="560" stroke-width="2" stroke-dasharray="24 6 4 6"/>`
  const hatch = Array.from(
    { length: 48 },
    (_, row) => `<line x1="${120 + row * 40}" y1="780" x2="${-280 + row * 40}" y2="1180"/>`,
  )
  return sheet(
    '#ffffff',
    `<defs><clipPath id="p"><path d="M160 780 L160 640 Q320 420 640 410 L1000 410 Q1300 420 1440 640 L1440 780 Z"/></clipPath></defs>
    <g clip-path="url(#p)" stroke="#111" stroke-width="2"><g transform="translate(300 -400)">${hatch.join('')}</g></g>
    <g fill="none" stroke="#111" stroke-width="5"><path d="M160 780 L160 640 Q320 420 640 410 L1000 410 Q1300 420 1440 640 L1440 780 Z"/>
    <rect x="90" y="780" width="1420" height="70"/>${pin(700)}${pin(960)}</g>
    <g stroke="#111" stroke-width="2"><line x1="160" y1="900" x2="1440" y2="900"/><line x1="160" y1="870" x2="160" y2="920"/><line x1="1440" y1="870" x2="1440" y2="920"/></g>`,
  )
}
