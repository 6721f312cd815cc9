import {
  type Bend,
  type ConductorLayer,
  type Design,
  type DielectricLayer,
  findLibraryMaterial,
  type Layer,
  makeBlankDesign,
  makePresence,
  type Zone,
} from '@/lib/engine'

/** Edits that several items' examples share. Each changes the copy that it is given. */

export function getLayer(design: Design, id: string): Layer {
  const layer = design.construction.layers.find((candidate) => candidate.id === id)
  if (layer === undefined) throw new RangeError(`the example design has no layer "${id}"`)
  return layer
}

export function getConductorLayer(design: Design, id: string): ConductorLayer {
  const layer = getLayer(design, id)
  if (layer.kind !== 'conductor') throw new RangeError(`layer "${id}" is ${layer.kind}, not a conductor`)
  return layer
}

export function getFilm(design: Design, id: string): DielectricLayer {
  const layer = getLayer(design, id)
  if (layer.kind === 'conductor' || layer.kind === 'unbonded-gap') throw new RangeError(`layer "${id}" is no film`)
  return layer
}

export function getZone(design: Design, id: string): Zone {
  const zone = design.construction.zones.find((candidate) => candidate.id === id)
  if (zone === undefined) throw new RangeError(`the example design has no zone "${id}"`)
  return zone
}

/** What a zone says of a layer. */
export function getPresence(design: Design, zoneId: string, layerId: string): Zone['presence'][number] {
  const presence = getZone(design, zoneId).presence.find((candidate) => candidate.layerId === layerId)
  if (presence === undefined) throw new RangeError(`layer "${layerId}" is not in zone "${zoneId}"`)
  return presence
}

export function getBend(design: Design, id: string): Bend {
  const bend = design.bends.find((candidate) => candidate.id === id)
  if (bend === undefined) throw new RangeError(`the example design has no bend "${id}"`)
  return bend
}

/** Of the only conductor that crosses the bend. */
export function getCrossing(
  design: Design,
  bendId: string,
): Design['features']['conductors'][number]['crossings'][number] {
  const crossings = design.features.conductors.flatMap((conductor) => conductor.crossings)
  return getOnly(crossings.filter((crossing) => crossing.bendId === bendId))
}

/** As a design begins: no layer, no zone, no bend, and no list marked. */
export function withoutConstruction(design: Design): void {
  const { brief } = design
  Object.assign(design, makeBlankDesign(design.name), { brief })
}

/** No bend is listed, and nobody said that there is none. */
export function withoutBends(design: Design): void {
  design.bends = []
  const { conductors, holes, pads, widthSteps, coverlayOpenings, components, stiffeners } = design.features
  for (const conductor of conductors) conductor.crossings = []
  for (const each of [...holes, ...pads, ...widthSteps, ...coverlayOpenings, ...components, ...stiffeners])
    each.nearestBend = null
}

/** Turns every bend into one that is folded once. */
export function makeBendsFolds(design: Design): void {
  for (const bend of design.bends)
    Object.assign(bend, { use: 'fold-once', requiredCycles: null } satisfies Partial<Bend>)
}

/** The only entry of a list of features. */
export function getOnly<T>(list: readonly T[]): T {
  const [only] = list
  if (only === undefined || list.length !== 1) throw new RangeError(`one entry expected, ${list.length} found`)
  return only
}

/** Puts layers below another one, in the listed zones. */
export function addLayersBelow(
  design: Design,
  belowId: string,
  layers: readonly Layer[],
  zoneIds: readonly string[],
): void {
  const at = design.construction.layers.findIndex((layer) => layer.id === belowId)
  design.construction.layers.splice(at + 1, 0, ...layers)
  for (const zoneId of zoneIds) {
    getZone(design, zoneId).presence.push(...layers.map(({ id }) => makePresence(id)))
  }
}

/** Gives the arm `count` conductor layers in all, adhesiveless, each with its own base film below. */
export function addFlexLayers(design: Design, count: number): void {
  for (let number = 2; number <= count; number += 1) {
    const below = number === 2 ? 'base' : `base-${number - 1}`
    addLayersBelow(
      design,
      below,
      [
        { ...getConductorLayer(design, 'l2'), id: `flex-${number}`, name: `Flex ${number}` },
        { ...getFilm(design, 'base'), id: `base-${number}`, name: `Base film ${number}, flex` },
      ],
      ['arm'],
    )
  }
}

/** Leaves air under the arm's base film and adds a second single-layer leaf below it. */
export function addUnbondedLeaf(design: Design, gapUm: number): void {
  addLayersBelow(
    design,
    'base',
    [
      { id: 'gap', name: 'Gap between leaves', kind: 'unbonded-gap', thicknessUm: gapUm },
      { ...getFilm(design, 'cover-top'), id: 'cover-leaf-2', name: 'Coverlay film, flex leaf 2' },
      { ...getFilm(design, 'cover-top-adhesive'), id: 'adhesive-leaf-2', name: 'Coverlay adhesive, flex leaf 2' },
      { ...getConductorLayer(design, 'l2'), id: 'l2-leaf-2', name: 'Flex leaf 2' },
      { ...getFilm(design, 'base'), id: 'base-leaf-2', name: 'Base film, flex leaf 2' },
    ],
    ['arm'],
  )
}

/** Lays a shield film of this thickness on the arm's coverlay. */
export function addShield(design: Design, thicknessUm: number): void {
  addLayersBelow(
    design,
    'prepreg-top',
    [
      {
        ...getFilm(design, 'cover-top'),
        id: 'shield',
        name: 'Shield film, flex',
        kind: 'shield-film',
        materialId: 'shield-film',
        thicknessUm,
        tolerancePlusUm: 1,
        toleranceMinusUm: 1,
      },
    ],
    ['arm'],
  )
}

/** Makes the coverlay of a material that nobody has given a specification. */
export function takeMaterialWithoutSpecification(design: Design): void {
  const film = findLibraryMaterial('pi-coverlay')
  if (film === null) throw new RangeError('the library has no "pi-coverlay"')
  design.materials.push({ ...film, id: 'film-of-our-own', name: 'Film of our own', specification: '' })
  getFilm(design, 'cover-top').materialId = 'film-of-our-own'
}
