import { DESIGN_PLACE } from '../../checks'
import { notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'
import { findArtworkInView, etchTraps as findEtchTraps } from '../../measured'

export const etchTraps = defineItem({
  id: 'etch-traps',
  section: 'geometry',
  severity: 'minor',
  question: 'Is copper free of slivers, narrow slits and sharp corners that etch unevenly?',
  titles: { meets: 'Copper etches evenly', fails: 'A sliver, a slit or a sharp corner of copper etches unevenly' },
  appliesTo: { needs: ['conductor-layers'], says: 'designs with a conductor layer' },
  limits: ['conductorWidthMm', 'conductorSpaceMm'],
  sourceKeys: ['ownChoice'],
  restsOn: ['artwork', ...SECTION_INPUTS],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: (context) => {
    const { artworkFileCount = 0, artwork = null } = context.facts
    const missing = (field: string, label: string) => [notComputed(['facts', field], label, [DESIGN_PLACE])]
    if (artworkFileCount === 0) return missing('artworkFileCount', 'artwork')
    if (artwork === null) return missing('artwork', 'what the artwork files say')
    const view = findArtworkInView(context)
    if (view === null || view.layers.length === 0) return missing('artwork', 'copper of which the layer is known')
    const found = findEtchTraps(context, view)
    const isWhole = view.areLayersWhole && view.layers.every(({ copper }) => copper.etching !== null)
    // What was not measured may hold what the rest does not.
    return isWhole ? found : [...found, ...missing('artwork', 'a measurement of every copper layer')]
  },
  judgment: {
    evidence: 'Who looked at which layers for slivers, slits and sharp corners, and with which program.',
    replacesMissing: true,
    isStatement: true,
  },
})
