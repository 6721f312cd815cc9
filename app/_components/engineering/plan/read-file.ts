import { DRAWING_UNITS, type Drawing, drawDxf, drawSvg, readDxf, readSvg } from '@/lib/drawing-files'

/** A file that was read, with what it says of its unit, and how it is drawn in one. */
export type ReadFile =
  | {
      readonly ok: true
      readonly says: string
      /** Key of the unit; null where somebody has to say it. */
      readonly unitKey: string | null
      readonly units: readonly { readonly key: string; readonly label: string; readonly mmPerUnit: number }[]
      readonly draw: (mmPerUnit: number, toleranceMm: number) => Drawing
    }
  | { readonly ok: false; readonly reason: string }

const UNITS = DRAWING_UNITS.map(({ key, name, mmPerUnit }) => ({ key: key as string, label: name, mmPerUnit }))
/** CSS: 96 to an inch, where an SVG was drawn in pixels. */
const PIXEL = { key: 'px', label: 'pixels, 96 to an inch', mmPerUnit: 25.4 / 96 }

export function readFile(name: string, bytes: Uint8Array): ReadFile {
  if (/\.svg$/i.test(name)) {
    const read = readSvg(bytes)
    if (!read.ok) return read
    const { mmPerUnit, says } = read.file
    const own = mmPerUnit === null ? [] : [{ key: 'own', label: 'as the file says', mmPerUnit }]
    return {
      ok: true,
      says,
      unitKey: mmPerUnit === null ? null : 'own',
      units: [...own, ...UNITS, PIXEL],
      draw: (mm, toleranceMm) => drawSvg(read.file, mm, toleranceMm),
    }
  }
  const read = readDxf(bytes)
  if (!read.ok) return read
  const { unit, says } = read.file.stated
  return {
    ok: true,
    says,
    unitKey: unit?.key ?? null,
    units: UNITS,
    draw: (mm, toleranceMm) => drawDxf(read.file, mm, toleranceMm),
  }
}

/** Extents of a drawing, to tell whether its unit can be right. */
export function sizeOf({ strokes }: Drawing): readonly [number, number] {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const { pieces, point } of strokes) {
    for (const at of [...pieces.flatMap(({ from, to }) => [from, to]), ...(point === null ? [] : [point])]) {
      minX = Math.min(minX, at[0])
      minY = Math.min(minY, at[1])
      maxX = Math.max(maxX, at[0])
      maxY = Math.max(maxY, at[1])
    }
  }
  return minX <= maxX ? [maxX - minX, maxY - minY] : [0, 0]
}
