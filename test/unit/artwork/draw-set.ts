import type { NamedFile } from '@/lib/artwork'

type Point = readonly [number, number]
type Move = (point: Point) => Point

/** What a layer of a drawn set holds, in mm. */
export type Drawn =
  | { readonly stroke: readonly [Point, Point]; readonly widthMm: number; readonly net?: string }
  | { readonly arc: readonly [from: Point, to: Point, centre: Point]; readonly widthMm: number }
  | { readonly pad: Point; readonly sizeMm: number; readonly net?: string; readonly isClear?: true }
  | { readonly area: readonly Point[]; readonly isClear?: true }

/** How a set is written: moved as a whole, and in which unit. */
export interface Writing {
  readonly move?: Move
  /** Arcs turn round where the move mirrors. */
  readonly isMirrored?: boolean
  readonly unit?: 'mm' | 'inch'
}

const encode = (text: string) => new TextEncoder().encode(text)

/** A Gerber file with a file function (Gerber Layer Format Specification, rev. 2024.05, from memory). */
export function drawGerber(
  name: string,
  fileFunction: string,
  objects: readonly Drawn[],
  { move = (point) => point, isMirrored = false, unit = 'mm' }: Writing = {},
): NamedFile {
  const scale = unit === 'mm' ? 1e6 : 1e6 / 25.4
  const size = (mm: number) => (unit === 'mm' ? mm : mm / 25.4).toFixed(7)
  const number = (mm: number) => Math.round(mm * scale)
  const at = (point: Point) => {
    const [x, y] = move(point)
    return `X${number(x)}Y${number(y)}`
  }
  const sizes = [
    ...new Set(objects.flatMap((each) => ('area' in each ? [] : ['pad' in each ? each.sizeMm : each.widthMm]))),
  ]
  const code = (mm: number) => `D${10 + sizes.indexOf(mm)}*`
  const lines = [
    `%TF.FileFunction,${fileFunction}*%`,
    '%FSLAX46Y46*%',
    unit === 'mm' ? '%MOMM*%' : '%MOIN*%',
    ...sizes.map((mm, index) => `%ADD${10 + index}C,${size(mm)}*%`),
    'G75*',
  ]
  for (const each of objects) {
    if ('net' in each && each.net !== undefined) lines.push(`%TO.N,${each.net}*%`)
    if ('stroke' in each)
      lines.push(code(each.widthMm), 'G01*', `${at(each.stroke[0])}D02*`, `${at(each.stroke[1])}D01*`)
    else if ('pad' in each)
      lines.push(
        ...(each.isClear ? ['%LPC*%'] : []),
        code(each.sizeMm),
        `${at(each.pad)}D03*`,
        ...(each.isClear ? ['%LPD*%'] : []),
      )
    else if ('arc' in each) {
      const [from, to, centre] = each.arc
      const [[fx, fy], [cx, cy]] = [move(from), move(centre)]
      lines.push(code(each.widthMm), `${at(from)}D02*`, isMirrored ? 'G02*' : 'G03*')
      lines.push(`${at(to)}I${number(cx) - number(fx)}J${number(cy) - number(fy)}D01*`, 'G01*')
    } else {
      const [first] = each.area as [Point]
      lines.push(each.isClear ? '%LPC*%' : '%LPD*%', 'G36*', 'G01*', `${at(first)}D02*`)
      for (const corner of [...each.area.slice(1), first]) lines.push(`${at(corner)}D01*`)
      lines.push('G37*', '%LPD*%')
    }
    if ('net' in each && each.net !== undefined) lines.push('%TD*%')
  }
  return { name, bytes: encode([...lines, 'M02*', ''].join('\n')) }
}

/** Holes of one size in an XNC file (XNC Format Specification, rev. 2021.11, from memory). */
export function drawDrill(
  name: string,
  holes: readonly Point[],
  diameterMm: number,
  { move = (point) => point, unit = 'mm' }: Writing = {},
  isPlated = true,
): NamedFile {
  const scale = unit === 'mm' ? 1 : 1 / 25.4
  const lines = [
    'M48',
    `; #@! TF.FileFunction,${isPlated ? 'Plated' : 'NonPlated'},1,2,${isPlated ? 'PTH' : 'NPTH'}`,
    unit === 'mm' ? 'METRIC' : 'INCH',
    `T1C${(diameterMm * scale).toFixed(6)}`,
    '%',
    'G05',
    'T1',
    ...holes.map((hole) => {
      const [x, y] = move(hole)
      return `X${(x * scale).toFixed(6)}Y${(y * scale).toFixed(6)}`
    }),
    'M30',
    '',
  ]
  return { name, bytes: encode(lines.join('\n')) }
}
