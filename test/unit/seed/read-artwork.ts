/**
 * The least of a reader, for the demonstration's own artwork: one closed profile of lines and arcs in millimetres
 * (Gerber layer format specification, Ucamco, rev. 2022.02: FSLAX46, G01/G02/G03, G75), and holes with their tools
 * (XNC format specification, Ucamco, rev. 2021.11: METRIC, decimal coordinates, TF.FileFunction in a comment).
 */
export interface Profile {
  /** Ends of lines and arcs, in order; the last is the first again. */
  readonly points: readonly (readonly [xMm: number, yMm: number])[]
  readonly extents: { readonly xMin: number; readonly yMin: number; readonly xMax: number; readonly yMax: number }
  readonly areaMm2: number
  readonly arcRadiiMm: readonly number[]
}

const NUMBER = /([XYIJ])(-?\d+)/g

export function readProfile(text: string): Profile {
  if (!text.includes('%FSLAX46Y46*%') || !text.includes('%MOMM*%')) throw new Error('another format than FSLAX46 in mm')
  if (!/%TF\.FileFunction,Profile,NP\*%/.test(text)) throw new Error('the file does not say that it is the profile')
  let mode = 'G01'
  let [x, y] = [0, 0]
  const points: [number, number][] = []
  const arcRadiiMm: number[] = []
  let twiceArea = 0
  for (const [, block = ''] of text.replaceAll(/%[^%]*%/g, '').matchAll(/([^*\n]+)\*/g)) {
    if (/^G0[123]$/.test(block)) mode = block
    const end = /D0([12])$/.exec(block)
    if (end === null) continue
    const at: Record<string, number> = { X: x, Y: y, I: 0, J: 0 }
    for (const [, axis = '', digits = ''] of block.matchAll(NUMBER)) at[axis] = Number(digits) / 1e6
    const [toX = 0, toY = 0, i = 0, j = 0] = [at.X, at.Y, at.I, at.J]
    if (end[1] === '1') {
      twiceArea += x * toY - toX * y
      if (mode !== 'G01') {
        const radius = Math.hypot(i, j)
        arcRadiiMm.push(radius)
        const centre: [number, number] = [x + i, y + j]
        if (Math.abs(Math.hypot(toX - centre[0], toY - centre[1]) - radius) > 1e-6)
          throw new Error('an arc off its circle')
        const from = Math.atan2(y - centre[1], x - centre[0])
        const to = Math.atan2(toY - centre[1], toX - centre[0])
        let turn = to - from
        if (mode === 'G02' && turn > 0) turn -= 2 * Math.PI
        if (mode === 'G03' && turn < 0) turn += 2 * Math.PI
        // What lies between the arc and its chord.
        twiceArea += radius * radius * (turn - Math.sin(turn))
      }
    }
    if (end[1] === '2' && points.length > 0) throw new Error('more than one contour')
    ;[x, y] = [toX, toY]
    points.push([x, y])
  }
  const [first, last] = [points[0], points.at(-1)]
  if (first?.[0] !== last?.[0] || first?.[1] !== last?.[1]) throw new Error('the profile is not closed')
  const [xs, ys] = [points.map(([each]) => each), points.map(([, each]) => each)]
  return {
    points,
    // Arcs of the demonstration turn inward between their ends, so that ends decide.
    extents: { xMin: Math.min(...xs), yMin: Math.min(...ys), xMax: Math.max(...xs), yMax: Math.max(...ys) },
    areaMm2: Math.abs(twiceArea / 2),
    arcRadiiMm,
  }
}

export interface DrillFile {
  readonly isPlated: boolean
  readonly holes: readonly { readonly drillMm: number; readonly xMm: number; readonly yMm: number }[]
}

export function readDrillFile(text: string): DrillFile {
  const plating = /TF\.FileFunction,(Plated|NonPlated),/.exec(text)?.[1]
  if (plating === undefined || !/^METRIC$/m.test(text)) throw new Error('plating or unit is not stated')
  const tools = new Map<string, number>()
  const holes: { drillMm: number; xMm: number; yMm: number }[] = []
  let drillMm: number | undefined
  for (const line of text.split('\n')) {
    const defined = /^(T\d+)C([\d.]+)$/.exec(line)
    if (defined !== null) tools.set(defined[1] ?? '', Number(defined[2]))
    else if (/^T\d+$/.test(line)) drillMm = tools.get(line)
    const hole = /^X([-\d.]+)Y([-\d.]+)$/.exec(line)
    if (hole === null) continue
    if (drillMm === undefined) throw new Error('a hole without a tool')
    holes.push({ drillMm, xMm: Number(hole[1]), yMm: Number(hole[2]) })
  }
  return { isPlated: plating === 'Plated', holes }
}
