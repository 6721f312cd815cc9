import { type Design, withNetClasses } from '../../design'
import { STANDARD_FOILS } from '../../thickness'
import { editConductorLayers, editZone, resize } from '../edits'
import { type Family, writeUm } from '../subject'

/** Lighter foils are handled on a carrier and are not what flexible clads are ordinarily made with. Common practice. */
const LIGHTEST_ORDINARY_FOIL_UM = 8
/** How many steps down are worth trying: the next but two is a quarter of the weight. */
const STEPS_DOWN = 3
/** A step that is smaller than this is the same foil by another name (half ounce as 17.1 or 18 um). */
const SAME_FOIL_UM = 2

/** Lighter foil on every conductor layer of the bend that is heavier than it. */
export const lighterFoil: Family = ({ design, conductors }) => {
  const heaviestUm = Math.max(0, ...conductors.map(({ layer }) => layer.thicknessUm))
  return STANDARD_FOILS.filter(
    ({ nominalFoilUm }) => nominalFoilUm >= LIGHTEST_ORDINARY_FOIL_UM && nominalFoilUm <= heaviestUm - SAME_FOIL_UM,
  )
    .slice(-STEPS_DOWN)
    .flatMap(({ nominalFoilUm }) => {
      const heavier = conductors.filter(
        ({ layer }) => layer.thicknessUm - SAME_FOIL_UM >= nominalFoilUm && layer.processingLossUm < nominalFoilUm,
      )
      if (heavier.length === 0) return []
      const edited = editConductorLayers(design, new Set(heavier.map(({ layer }) => layer.id)), (layer) =>
        resize(layer, nominalFoilUm),
      )
      return [
        {
          id: `lighter-foil:${nominalFoilUm}`,
          family: 'lighter-foil' as const,
          title: 'Lighter foil',
          detail: heavier
            .map(({ layer }) => `${layer.name}: ${writeUm(layer.thicknessUm)} to ${writeUm(nominalFoilUm)}`)
            .join('; '),
          cautions: withNetClasses(design).features.conductors.some(
            (each) => each.impedanceOhm !== null && heavier.some(({ layer }) => layer.id === each.layerId),
          )
            ? ['Thinner copper moves the stated impedance a little: check the width.']
            : [],
          forbiddenBy: [],
          edited,
          touches: ['foil-weight'],
        },
      ]
    })
}

const ROLLED_ANNEALED_ID = 'copper-ra'

/** Rolled-annealed foil in place of electrodeposited. */
export const rolledAnnealedFoil: Family = ({ design, conductors, findMaterial }) => {
  const deposited = conductors.filter(({ layer }) => findMaterial(layer.materialId)?.foil?.type === 'electrodeposited')
  if (deposited.length === 0) return []
  return [
    {
      id: `rolled-annealed-foil:${ROLLED_ANNEALED_ID}`,
      family: 'rolled-annealed-foil',
      title: 'Rolled-annealed foil',
      detail: `${deposited.map(({ layer }) => layer.name).join(', ')}: electrodeposited to rolled-annealed`,
      cautions: [
        'Have the rolling direction run along the conductors through the bend.',
        'In the long-life range the fatigue relation does not rank foils: take the difference there from tests.',
      ],
      forbiddenBy: [],
      edited: editConductorLayers(design, new Set(deposited.map(({ layer }) => layer.id)), (layer) => ({
        ...layer,
        materialId: ROLLED_ANNEALED_ID,
      })),
      touches: ['foil-type'],
    },
  ]
}

/** Plating on the pads only (button plating) in place of panel or pattern plating. */
export const padsOnlyPlating: Family = ({ design, conductors }) => {
  const plated = conductors.filter(
    ({ layer: { plating } }) => plating.process === 'panel' || plating.process === 'pattern',
  )
  if (plated.length === 0) return []
  return [
    {
      id: 'pads-only-plating:bend',
      family: 'pads-only-plating',
      title: 'Pads-only plating',
      detail: plated
        .map(
          ({ layer }) =>
            `${layer.name}: ${layer.plating.process} plating of ${writeUm(layer.plating.thicknessUm)} kept to the pads`,
        )
        .join('; '),
      cautions: ['An extra imaging step before plating; conductors outside the pads keep the bare foil.'],
      forbiddenBy: [],
      edited: platePadsAlone(design, new Set(plated.map(({ layer }) => layer.id))),
      touches: ['plating'],
    },
  ]
}

/** Pads keep their plating where there are any: everywhere but in flex zones, as the zones then state. */
function platePadsAlone(design: Design, layerIds: ReadonlySet<string>): Design {
  const padsOnly = editConductorLayers(design, layerIds, (layer) => ({
    ...layer,
    plating: { ...layer.plating, process: 'button' },
  }))
  return padsOnly.construction.zones
    .filter(({ presence }) => presence.some(({ layerId }) => layerIds.has(layerId)))
    .reduce(
      (edited, { id }) =>
        editZone(edited, id, (zone) => ({
          ...zone,
          presence: zone.presence.map((each) =>
            layerIds.has(each.layerId) ? { ...each, platedCopper: zone.kind === 'flex' ? 'none' : 'pads-only' } : each,
          ),
        })),
      padsOnly,
    )
}
