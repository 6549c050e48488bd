import {
  type LineStyle,
  type PathItem,
  type Primitive,
  type Role,
  screenStroke,
  type Xy,
} from '#lib/core/drawing/index'

/** One line, circle or text of a display list. Widths and dashes are in CSS pixels at every zoom. */
export function SvgPrimitive({ shape, denominator }: { shape: Primitive; denominator: number }) {
  switch (shape.kind) {
    case 'path':
      return (
        <path
          d={pathData(shape)}
          fillRule="evenodd"
          fill={fillOf(shape.fill, shape.role)}
          {...stroke(shape)}
        />
      )
    case 'circle':
      return (
        <circle
          cx={round(shape.centre[0])}
          cy={round(shape.centre[1])}
          r={round(shape.radiusMm)}
          fill={fillOf(shape.fill, shape.role)}
          {...stroke(shape)}
        />
      )
    case 'text': {
      const [x, y] = [round(shape.at[0]), round(shape.at[1])]
      return (
        <text
          x={x}
          y={y}
          fontSize={round(shape.sizeMm)}
          textAnchor={shape.anchor}
          fill={colours[shape.role]}
          {...(shape.weight === 'semibold' ? { fontWeight: 600 } : {})}
          {...(shape.turnDeg === 0 ? {} : { transform: `rotate(${round(shape.turnDeg)} ${x} ${y})` })}
          {...(shape.halo ? halo(denominator) : {})}
        >
          {shape.text}
        </text>
      )
    }
  }
}

const colours: Readonly<Record<Role, string>> = {
  ink: 'var(--ink)',
  soft: 'var(--soft)',
  act: 'var(--act)',
  held: 'var(--held)',
  due: 'var(--due)',
  good: 'var(--good)',
  hair: 'var(--hair)',
}

function fillOf(fill: PathItem['fill'], role: Role): string {
  if (fill === 'none') return 'none'
  if (fill === 'solid') return colours[role]
  return fill === 'sheet' ? 'var(--sheet)' : 'var(--wash, var(--hair))'
}

function stroke({ style, role }: { style: LineStyle; role: Role }) {
  const { widthPx, dashPx } = screenStroke(style)
  return {
    stroke: colours[role],
    strokeWidth: round(widthPx),
    vectorEffect: 'non-scaling-stroke' as const,
    ...(dashPx.length === 0 ? {} : { strokeDasharray: dashPx.map(round).join(' ') }),
  }
}

/** A rim of a paper millimetre in the sheet's colour keeps words readable over lines. */
function halo(denominator: number) {
  return {
    stroke: 'var(--sheet)',
    strokeWidth: round(denominator),
    strokeLinejoin: 'round' as const,
    paintOrder: 'stroke',
  }
}

function pathData({ lines, closed }: PathItem): string {
  return lines.map((line) => `M${line.map(pair).join('L')}${closed ? 'Z' : ''}`).join('')
}

function pair([x, y]: Xy): string {
  return `${round(x)} ${round(y)}`
}

/** A hundredth of a millimetre is finer than any screen shows. */
function round(value: number): number {
  return Math.round(value * 100) / 100
}
