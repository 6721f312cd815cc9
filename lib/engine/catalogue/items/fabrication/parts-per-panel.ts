import { DESIGN_PLACE } from '../../checks'
import { decide, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const partsPerPanel = defineItem({
  id: 'parts-per-panel',
  section: 'fabrication',
  severity: 'advice',
  question: "Does the outline make good use of the fabricator's panel?",
  titles: { meets: 'The panel is well used', fails: 'Much of the panel is thrown away' },
  appliesTo: { needs: ['zones'], says: 'designs with zones' },
  limits: ['panelUtilisationFraction'],
  sourceKeys: [],
  restsOn: [
    'features.outline',
    'plan',
    'construction.zones.*.lengthMm',
    'construction.zones.*.widthMm',
    'brief.quantityPerYear',
    'brief.panelForm',
  ],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'facts.panelUtilisationFraction', worse: 'smaller' }],
  check: (context) => {
    const { panelUtilisationFraction, partsPerPanel: count } = context.facts
    return [
      panelUtilisationFraction === undefined
        ? notComputed(['facts', 'panelUtilisationFraction'], "nesting in the fabricator's panel", [DESIGN_PLACE])
        : decide({
            value: panelUtilisationFraction,
            limit: context.getLimit('panelUtilisationFraction'),
            places: [DESIGN_PLACE],
            what: 'share of the panel that becomes parts',
            equation: 'area of parts / area of panel',
            remark: count === undefined ? undefined : `${count} parts per panel.`,
          }),
    ]
  },
  judgment: { evidence: "The fabricator's nesting, with the number of parts per panel.", replacesMissing: true },
})
