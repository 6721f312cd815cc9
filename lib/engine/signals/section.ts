/**
 * A cross-section of lines for the quasi-static solution: conductors of real cross-section in dielectrics that lie flat over one
 * another. Frame: x across the lines, y upwards from the lowest plane (or from the lowest dielectric), all in um.
 */
export interface LineConductor {
  readonly name: string
  /** Middle of the conductor. */
  readonly centreUm: number
  /** Height of its lower face. */
  readonly bottomUm: number
  /** Width of its lower face, and of its upper face: etching leaves one of them narrower. */
  readonly bottomWidthUm: number
  readonly topWidthUm: number
  /** 0 is a strip without thickness: a mathematical limit that published values are known for. */
  readonly thicknessUm: number
  /** A guard or a coplanar return, held at the potential of the planes. */
  readonly isGrounded?: boolean
}

export interface DielectricSlab {
  readonly thicknessUm: number
  readonly relativePermittivity: number
}

export interface LineSection {
  /** From below upwards. Above them is air, unless a plane closes them. */
  readonly slabs: readonly DielectricSlab[]
  /** A plane under the lowest dielectric. */
  readonly hasPlaneBelow: boolean
  /** A plane on the highest dielectric. */
  readonly hasPlaneAbove: boolean
  readonly conductors: readonly LineConductor[]
}

/** Lengths that differ by less than this share of the section count as equal: rounding of sums in binary. */
const EQUAL_SHARE = 1e-9
/** More conductors, guards among them, than a question about lines has. */
const MOST_CONDUCTORS = 8

export function getHeightUm({ slabs }: LineSection): number {
  return slabs.reduce((sum, { thicknessUm }) => sum + thicknessUm, 0)
}

/** Heights at which two dielectrics of different permittivity meet; air counts as one above the highest and below the lowest. */
export function listInterfaces(section: LineSection): { atUm: number; below: number; above: number }[] {
  const found: { atUm: number; below: number; above: number }[] = []
  let atUm = 0
  let below = section.hasPlaneBelow ? null : 1
  for (const { thicknessUm, relativePermittivity } of section.slabs) {
    if (below !== null && below !== relativePermittivity) found.push({ atUm, below, above: relativePermittivity })
    atUm += thicknessUm
    below = relativePermittivity
  }
  if (!section.hasPlaneAbove && below !== null && below !== 1) found.push({ atUm, below, above: 1 })
  return found
}

/** Sentences that say why a section has no solution; empty where it has one. */
export function findSectionFaults(section: LineSection): string[] {
  const { slabs, conductors, hasPlaneBelow, hasPlaneAbove } = section
  const faults: string[] = []
  for (const [index, { thicknessUm, relativePermittivity }] of slabs.entries()) {
    if (!(Number.isFinite(thicknessUm) && thicknessUm > 0))
      faults.push(`Dielectric ${index + 1} has no thickness: it must be greater than 0 µm.`)
    if (!(Number.isFinite(relativePermittivity) && relativePermittivity >= 1))
      faults.push(`Dielectric ${index + 1} has no usable permittivity: it must be at least 1.`)
  }
  if (hasPlaneAbove && slabs.length === 0) faults.push('A plane above needs a dielectric under it.')
  const lines = conductors.filter(({ isGrounded }) => isGrounded !== true)
  if (lines.length === 0) faults.push('The section has no line.')
  if (conductors.length > MOST_CONDUCTORS)
    faults.push(`The section has ${conductors.length} conductors: at most ${MOST_CONDUCTORS} can be solved.`)
  if (!hasPlaneBelow && !hasPlaneAbove && lines.length === conductors.length)
    faults.push('Nothing carries the return: a plane, or a grounded conductor beside the line, is missing.')
  for (const each of conductors) {
    const numbers = [each.centreUm, each.bottomUm, each.bottomWidthUm, each.topWidthUm, each.thicknessUm]
    if (!numbers.every(Number.isFinite)) faults.push(`${each.name}: a dimension is not a number.`)
    else if (each.bottomWidthUm <= 0 || each.topWidthUm <= 0)
      faults.push(`${each.name}: both widths must be greater than 0 µm. Etching this deep leaves no conductor.`)
    else if (each.thicknessUm < 0) faults.push(`${each.name}: the thickness must not be negative.`)
    else if (each.thicknessUm === 0 && each.bottomWidthUm !== each.topWidthUm)
      faults.push(`${each.name}: a strip without thickness has one width.`)
  }
  if (faults.length > 0) return faults
  return [...findMisplaced(section), ...findTouching(section)]
}

function findMisplaced(section: LineSection): string[] {
  const heightUm = getHeightUm(section)
  const slack = EQUAL_SHARE * Math.max(heightUm, 1)
  const faults: string[] = []
  for (const { name, bottomUm, thicknessUm } of section.conductors) {
    const topUm = bottomUm + thicknessUm
    if (section.hasPlaneBelow && bottomUm <= slack) faults.push(`${name} touches the plane below: no gap is left.`)
    if (section.hasPlaneAbove && topUm >= heightUm - slack)
      faults.push(`${name} touches the plane above: no gap is left.`)
    const crossed = listInterfaces(section).find(({ atUm }) => atUm > bottomUm + slack && atUm < topUm - slack)
    if (crossed !== undefined)
      faults.push(`${name} stands in two dielectrics: give the dielectric between the conductors its full height.`)
  }
  return faults
}

function findTouching({ conductors }: LineSection): string[] {
  const faults: string[] = []
  conductors.forEach((one, at) => {
    for (const other of conductors.slice(at + 1)) {
      const oneTop = one.bottomUm + one.thicknessUm
      const otherTop = other.bottomUm + other.thicknessUm
      const levels = oneTop >= other.bottomUm && otherTop >= one.bottomUm
      const halves = (Math.max(one.bottomWidthUm, one.topWidthUm) + Math.max(other.bottomWidthUm, other.topWidthUm)) / 2
      if (levels && Math.abs(one.centreUm - other.centreUm) <= halves)
        faults.push(`${one.name} and ${other.name} overlap or touch: the gap between them must be greater than 0 µm.`)
    }
  })
  return faults
}
