import { type Design, type Layer, nameLayerKind } from '../../../design'
import { editLayers } from '../../edits'
import type { Mover } from './move'

/** Layers whose names leave the fabricator guessing get one that says side, kind, and where copper flexes. */
export const nameLayersClearly: Mover = function* (failure, { design }) {
  if (failure.item.id !== 'layer-names') return
  const unclear = new Set(failure.outcome.places.flatMap(({ kind, id }) => (kind === 'layer' ? [id] : [])))
  // The first of two that share a name is not reported, and is as unclear.
  const shared = new Set(
    design.construction.layers.flatMap(({ id, name }) => (unclear.has(id) ? [name.toLowerCase()] : [])),
  )
  const names = proposeNames(design, (layer) => unclear.has(layer.id) || shared.has(layer.name.toLowerCase()))
  const renamed = design.construction.layers.flatMap((layer) => {
    const name = names.get(layer.id)
    return name === undefined || name === layer.name ? [] : [`${layer.name} to ${name}`]
  })
  yield {
    id: 'layer-names',
    title: 'Layer names that say what each layer is',
    detail: renamed.join('; '),
    relaxes: null,
    cautions: [],
    design: editLayers(design, (layer) => ({ ...layer, name: names.get(layer.id) ?? layer.name })),
  }
}

function proposeNames(
  { construction: { layers, zones } }: Design,
  isUnclear: (layer: Layer) => boolean,
): Map<string, string> {
  const inFlex = new Set(
    zones.flatMap(({ kind, presence }) => (kind === 'flex' ? presence.map(({ layerId }) => layerId) : [])),
  )
  const names = new Map<string, string>()
  const taken = new Set(layers.filter((layer) => !isUnclear(layer)).map(({ name }) => name.toLowerCase()))
  const conductors = layers.filter(({ kind }) => kind === 'conductor')
  layers.forEach((layer, at) => {
    if (!isUnclear(layer)) return
    const wanted =
      layer.kind === 'conductor'
        ? `L${conductors.indexOf(layer) + 1} ${inFlex.has(layer.id) ? 'flex' : 'rigid'}, ${layer.role === 'plane' ? 'plane' : 'signals'}`
        : nameByPlace(layer, at, layers)
    let name = wanted
    for (let number = 2; taken.has(name.toLowerCase()); number += 1) name = `${wanted} ${number}`
    taken.add(name.toLowerCase())
    names.set(layer.id, name)
  })
  return names
}

/** `Upper coverlay adhesive`: the side of the middle it lies on, and what it belongs to. */
function nameByPlace(layer: Layer, at: number, layers: readonly Layer[]): string {
  const beside = [layers[at - 1]?.kind, layers[at + 1]?.kind]
  const kind = nameLayerKind(layer.kind).toLowerCase()
  if (layer.kind === 'adhesive' && beside.includes('stiffener')) return 'Stiffener adhesive'
  const owner = layer.kind === 'adhesive' && beside.includes('coverlay-film') ? 'coverlay ' : ''
  return `${at < layers.length / 2 ? 'Upper' : 'Lower'} ${owner}${kind}`
}
