import type { CarriedBody } from '@/lib/fold/bodies/flat-bodies'
import type { FlatBand, FlatPart, FlatPlate, PlanePoint } from '@/lib/fold/kinematics/flat-part'

export const rectangle = (x: number, y: number, dx: number, dy: number): readonly PlanePoint[] => [
  [x, y],
  [x + dx, y],
  [x + dx, y + dy],
  [x, y + dy],
]

export interface StripBend {
  readonly angleDeg: number
  readonly insideMm: number
  readonly plateMm: number
}

/** A strip along x, as wide as told, with bends between plates; each bend's neutral surface is half-way through. */
export function makeStripPart(
  bends: readonly StripBend[],
  { widthMm = 8, thicknessMm = 0.1, lastMm = 10 } = {},
): FlatPart {
  const plates: FlatPlate[] = []
  const bands: FlatBand[] = []
  const [bottomMm, topMm] = [-thicknessMm / 2, thicknessMm / 2]
  const area = (id: string, from: number, long: number): FlatPlate => ({
    id,
    solids: [{ id, loops: [rectangle(from, 0, long, widthMm)], bottomMm, topMm }],
  })
  let x = 0
  bends.forEach(({ angleDeg, insideMm, plateMm }, index) => {
    plates.push(area(`p${index}`, x, plateMm))
    x += plateMm
    const lengthMm = ((Math.abs(angleDeg) * Math.PI) / 180) * (insideMm + thicknessMm / 2)
    bands.push({
      id: `b${index}`,
      fromPlateId: `p${index}`,
      toPlateId: `p${index + 1}`,
      start: [x, 0],
      across: [1, 0],
      lengthMm,
      angleDeg,
      neutralMm: 0,
      loops: [rectangle(x, 0, lengthMm, widthMm)],
      bottomMm,
      topMm,
    })
    x += lengthMm
  })
  plates.push(area(`p${bends.length}`, x, lastMm))
  return { plates, bands }
}

export const carry = (
  id: string,
  plateId: string,
  loop: readonly PlanePoint[],
  bottomMm: number,
  topMm: number,
): CarriedBody => ({
  id,
  plateId,
  loops: [loop],
  bottomMm,
  topMm,
})
