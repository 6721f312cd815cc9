import {
  getLineFigures,
  getPairFigures,
  type LineConductor,
  type LineSection,
  type SectionSolution,
  solveSection,
  USUAL_FINENESS,
} from '@/lib/engine/signals'

/** Of one cross-section of lines, at a tenth of a per cent. */
export const LINE_TARGET_MS = 30

const FILM = { thicknessUm: 50, relativePermittivity: 3.4 }

/** A line of 110 um and 18 um copper over 50 um of film. */
const makeLine = (centreUm: number, bottomUm = 50): LineConductor => ({
  name: `line at ${centreUm} and ${bottomUm}`,
  centreUm,
  bottomUm,
  bottomWidthUm: 110,
  topWidthUm: 110,
  thicknessUm: 18,
})

const COVERED = [FILM, { thicknessUm: 43, relativePermittivity: 3.6 }, { thicknessUm: 25, relativePermittivity: 3.4 }]

function makeSection(slabs: LineSection['slabs'], conductors: LineSection['conductors'], hasPlaneAbove = false) {
  return { slabs, conductors, hasPlaneBelow: true, hasPlaneAbove }
}

const SECTIONS: readonly { readonly what: string; readonly section: LineSection }[] = [
  { what: 'line on film, bare', section: makeSection([FILM], [makeLine(0)]) },
  { what: 'line under cover and adhesive', section: makeSection(COVERED, [makeLine(0)]) },
  { what: 'pair under cover and adhesive', section: makeSection(COVERED, [makeLine(0), makeLine(220)]) },
  { what: 'pair between planes', section: makeSection([...COVERED, FILM], [makeLine(0), makeLine(220)], true) },
  {
    what: 'two lines and a guard',
    section: makeSection(COVERED, [makeLine(0), { ...makeLine(220), isGrounded: true }, makeLine(440)]),
  },
  {
    what: 'two lines on adjacent layers, 60 um aside',
    section: makeSection(
      [
        FILM,
        { thicknessUm: 18, relativePermittivity: 3.6 },
        { thicknessUm: 25, relativePermittivity: 3.4 },
        { thicknessUm: 38, relativePermittivity: 3.6 },
        { thicknessUm: 25, relativePermittivity: 3.4 },
      ],
      [makeLine(0), makeLine(60, 93)],
    ),
  },
]

/** So fine that the dense matrix has some thousand rows: what a tenth of a per cent is held against. */
const REFERENCE = { cornerShare: 1e-5, growth: 1.6, cornerGrowth: 2.5, order: 6 } as const

export interface LineCase {
  readonly what: string
  readonly run: () => unknown
  /** Unknowns and difference from the fine reference. */
  readonly remark: string
}

const readOhm = (solution: SectionSolution) =>
  solution.names.length === 1 ? getLineFigures(solution).impedanceOhm : getPairFigures(solution).differentialOhm

export function prepareLines(): LineCase[] {
  return SECTIONS.map(({ what, section }) => {
    const [usual, fine] = [solveSection(section, USUAL_FINENESS), solveSection(section, REFERENCE)]
    if (!usual.ok || !fine.ok) throw new Error(`${what} has no solution`)
    const offPct = 100 * Math.abs(readOhm(usual) / readOhm(fine) - 1)
    return {
      what,
      run: () => solveSection(section, USUAL_FINENESS),
      remark: `${usual.unknowns} unknowns, ${offPct.toFixed(4)} % from the dense reference of ${fine.unknowns}`,
    }
  })
}
