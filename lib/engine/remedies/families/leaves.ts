import { type Bend, type Design, type DielectricLayer, type Layer, makePresence } from '../../design'
import { editConstruction, freshId } from '../edits'
import { type Candidate, type Family, type Subject, writeUm } from '../subject'

/** Coverlay that a leaf's bare copper gets where the construction has none to go by. Common practice. */
const DEFAULT_COVER = { filmUm: 25, adhesiveUm: 25, toleranceFraction: 0.1 } as const

/**
 * Leaves left unbonded in the bend: the bondply between two parts that both carry copper is left out of the zone, and
 * an air gap of its thickness takes its place. Copper that it covered gets a coverlay of its own.
 */
export const unbondedLeaves: Family = (subject) => {
  const { layers, conductors } = subject
  if (conductors.length < 2) return []
  const copperAt = new Set(conductors.map(({ at }) => at))
  const firstCopper = Math.min(...copperAt)
  const lastCopper = Math.max(...copperAt)
  return layers.flatMap(({ layer }, at): Candidate[] => {
    if (at <= firstCopper || at >= lastCopper || !doesBond(layer, at, subject)) return []
    return [part(subject, layer, copperAt.has(at - 1), copperAt.has(at + 1))]
  })
}

/** Bondply and prepreg join leaves; an adhesive does where it lies between two films. */
function doesBond(layer: Layer, at: number, { layers }: Subject): layer is DielectricLayer {
  if (layer.kind === 'bondply' || layer.kind === 'no-flow-prepreg') return true
  const isFilm = (kind: Layer['kind'] | undefined) => kind === 'base-film' || kind === 'coverlay-film'
  return layer.kind === 'adhesive' && isFilm(layers[at - 1]?.layer.kind) && isFilm(layers[at + 1]?.layer.kind)
}

function part(subject: Subject, bond: DielectricLayer, coverAbove: boolean, coverBelow: boolean): Candidate {
  const { design, zone } = subject
  const taken = [...design.construction.layers]
  const add = <T extends Layer>(layer: T): T => {
    const fresh = { ...layer, id: freshId(layer.id, taken) }
    taken.push(fresh)
    return fresh
  }
  const above = coverAbove ? makeCover(subject, `lower cover of the leaf above ${bond.name}`, add) : null
  const gap = add({
    id: `gap-${bond.id}`,
    name: `Gap at ${bond.name}`.slice(0, 120),
    kind: 'unbonded-gap',
    thicknessUm: bond.thicknessUm,
  })
  const below = coverBelow ? makeCover(subject, `upper cover of the leaf below ${bond.name}`, add) : null
  const inserted: Layer[] = [
    ...(above === null ? [] : [above.adhesive, above.film]),
    gap,
    ...(below === null ? [] : [below.film, below.adhesive]),
  ]
  const isElsewhere = design.construction.zones.some(
    (other) => other.id !== zone.id && other.presence.some(({ layerId }) => layerId === bond.id),
  )
  const covers = [above, below].filter((cover) => cover !== null).length
  return {
    id: `unbonded-leaves:${bond.id}`,
    family: 'unbonded-leaves',
    title: 'Unbonded leaves',
    detail: `${zone.name}: ${bond.name} (${writeUm(bond.thicknessUm)}) left out, air between the leaves${
      covers === 0 ? '' : `, ${covers === 1 ? 'one coverlay' : 'two coverlays'} added on the copper that it covered`
    }`,
    cautions: [
      'Leaves of equal length buckle or stretch in a fold: the outermost has to be made longer by the step that is stated.',
      ...(zone.lengthMm === null
        ? [`The length of ${zone.name} is open: until it is stated nobody can tell how far a leaf is pulled.`]
        : []),
    ],
    forbiddenBy: [],
    edited: editConstruction(stepLeaves(subject), {
      layers: design.construction.layers.flatMap((layer) =>
        layer.id !== bond.id ? [layer] : isElsewhere ? [layer, ...inserted] : inserted,
      ),
      zones: design.construction.zones.map((each) =>
        each.id !== zone.id
          ? each
          : {
              ...each,
              presence: each.presence.flatMap((present) =>
                present.layerId === bond.id ? inserted.map(({ id }) => makePresence(id)) : [present],
              ),
            },
      ),
    }),
    touches: ['copper-in-bend', `leaves-${bond.id}`],
  }
}

/**
 * Bends of the zone with their leaves stepped; by how much is fitted once the whole set of changes is known. Lengths that were stated of leaves
 * that are there already stay, but for their step.
 */
function stepLeaves({ design, zone, assessment }: Subject): Design {
  const bends = design.bends.map((bend, at): Bend => {
    const hasLeaves = (assessment.assembly.bends[at]?.leaves.length ?? 0) > 1
    const isStated = hasLeaves && bend.leafLengths !== null && bend.leafLengths !== 'stepped'
    return bend.zoneId !== zone.id || isStated ? bend : { ...bend, leafLengths: 'stepped', leafStepMm: null }
  })
  return { ...design, bends }
}

/** A coverlay like the one that the construction already has, or an ordinary one. */
function makeCover(
  { layers }: Subject,
  name: string,
  add: (layer: DielectricLayer) => DielectricLayer,
): { film: DielectricLayer; adhesive: DielectricLayer } {
  const at = layers.findIndex(({ layer }) => layer.kind === 'coverlay-film')
  const film = layers[at]?.layer
  const adhesive = [layers[at - 1]?.layer, layers[at + 1]?.layer].find((layer) => layer?.kind === 'adhesive')
  const { filmUm, adhesiveUm, toleranceFraction } = DEFAULT_COVER
  return {
    film: add({
      ...(film?.kind === 'coverlay-film'
        ? film
        : {
            kind: 'coverlay-film',
            materialId: 'pi-coverlay',
            thicknessUm: filmUm,
            tolerancePlusUm: filmUm * toleranceFraction,
            toleranceMinusUm: filmUm * toleranceFraction,
          }),
      id: 'leaf-cover',
      name: `Film, ${name}`.slice(0, 120),
    }),
    adhesive: add({
      ...(adhesive?.kind === 'adhesive'
        ? adhesive
        : {
            kind: 'adhesive',
            materialId: 'acrylic-adhesive',
            thicknessUm: adhesiveUm,
            tolerancePlusUm: adhesiveUm * toleranceFraction,
            toleranceMinusUm: adhesiveUm * toleranceFraction,
          }),
      id: 'leaf-cover-adhesive',
      name: `Adhesive, ${name}`.slice(0, 120),
    }),
  }
}
