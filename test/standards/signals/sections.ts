import { type LineSection, type MeshFineness, type SectionSolution, solveSection } from '@/lib/engine/signals'

/** Pieces that shrink to a ten-millionth of a strip: its charge grows without bound at the edges. */
export const STRIP_FINENESS: MeshFineness = { cornerShare: 1e-7, growth: 1.5, cornerGrowth: 2, order: 7 }
export const THICK_FINENESS: MeshFineness = { cornerShare: 1e-5, growth: 1.8, cornerGrowth: 3, order: 5 }

export function solved(section: LineSection, fineness: MeshFineness): SectionSolution {
  const solution = solveSection(section, fineness)
  if (!solution.ok) throw new Error(solution.faults.join(' '))
  return solution
}

interface Strip {
  centreUm?: number
  bottomUm: number
  widthUm: number
  thicknessUm?: number
}

export const makeConductors = (strips: readonly Strip[]): LineSection['conductors'] =>
  strips.map(({ centreUm = 0, bottomUm, widthUm, thicknessUm = 0 }, index) => ({
    name: `line ${index + 1}`,
    centreUm,
    bottomUm,
    bottomWidthUm: widthUm,
    topWidthUm: widthUm,
    thicknessUm,
  }))

/** Conductors in one dielectric between two planes. */
export const betweenPlanes = (spacingUm: number, permittivity: number, strips: readonly Strip[]): LineSection => ({
  slabs: [{ thicknessUm: spacingUm, relativePermittivity: permittivity }],
  hasPlaneBelow: true,
  hasPlaneAbove: true,
  conductors: makeConductors(strips),
})

/** Conductors on or in one dielectric over a plane, air above. */
export const overPlane = (slabUm: number, permittivity: number, strips: readonly Strip[]): LineSection => ({
  slabs: [{ thicknessUm: slabUm, relativePermittivity: permittivity }],
  hasPlaneBelow: true,
  hasPlaneAbove: false,
  conductors: makeConductors(strips),
})
