import { getLineFigures, type LineSection, solveSection, USUAL_FINENESS } from '@/lib/engine/signals'

/** A line of 110 um and 18 um copper over 50 um, bare and under a cover; and two of them. */
function makeSection(coverUm: number, lines: number): LineSection {
  const line = (centreUm: number) => ({
    name: 'line',
    centreUm,
    bottomUm: 50,
    bottomWidthUm: 110,
    topWidthUm: 110,
    thicknessUm: 18,
  })
  return {
    slabs: [
      { thicknessUm: 50, relativePermittivity: 3.4 },
      ...(coverUm > 0
        ? [
            { thicknessUm: 18 + coverUm / 2, relativePermittivity: 3.6 },
            { thicknessUm: coverUm / 2, relativePermittivity: 3.4 },
          ]
        : []),
    ],
    hasPlaneBelow: true,
    hasPlaneAbove: false,
    conductors: Array.from({ length: lines }, (_, at) => line(at * 220)),
  }
}

/** So fine that the dense matrix has some thousand rows: what a tenth of a per cent is held against. */
const REFERENCE = { cornerShare: 1e-6, growth: 1.5, cornerGrowth: 2, order: 6 } as const

export interface LineCase {
  readonly what: string
  readonly run: () => unknown
  /** Unknowns and difference from the fine reference. */
  readonly remark: string
}

export function prepareLines(): LineCase[] {
  return [
    { what: 'line on film, bare', section: makeSection(0, 1) },
    { what: 'line under cover and adhesive', section: makeSection(50, 1) },
    { what: 'pair under cover and adhesive', section: makeSection(50, 2) },
  ].map(({ what, section }) => {
    const [usual, fine] = [solveSection(section, USUAL_FINENESS), solveSection(section, REFERENCE)]
    if (!usual.ok || !fine.ok) throw new Error(`${what} has no solution`)
    const offPct = 100 * Math.abs(getLineFigures(usual).impedanceOhm / getLineFigures(fine).impedanceOhm - 1)
    return {
      what,
      run: () => solveSection(section, USUAL_FINENESS),
      remark: `${usual.unknowns} unknowns, ${offPct.toFixed(4)} % from the dense reference of ${fine.unknowns}`,
    }
  })
}
