import { DESIGN_PLACE } from '../../checks'
import { decide, makeNoneAllowed, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const stockMaterials = defineItem({
  id: 'stock-materials',
  section: 'fabrication',
  severity: 'major',
  question: "Are the materials on the fabricator's shelf, or ordered in time?",
  titles: {
    meets: 'Materials are on the shelf or can be ordered in time',
    fails: 'A material will come too late or is unknown',
  },
  appliesTo: { needs: ['layers'], says: 'designs with layers' },
  limits: ['orderSlackDays'],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'construction.layers.*.materialId',
    'construction.layers.*.thicknessUm',
    'materials',
    'brief.needDate',
    'brief.quantityPerYear',
  ],
  decidedWhen: 'fabricator',
  answeredBy: ['fabricator'],
  monotone: [
    { path: 'facts.stock.unknown', worse: 'larger' },
    { path: 'facts.orderSlackDays', worse: 'smaller' },
  ],
  check: (context) => {
    const { stock, orderSlackDays } = context.facts
    if (stock === undefined) return [notComputed(['facts', 'stock'], "the fabricator's shelf stock", [DESIGN_PLACE])]
    const held = decide({
      value: stock.unknown,
      limit: makeNoneAllowed('unknownMaterialsCount', 'commonPractice'),
      places: [DESIGN_PLACE],
      what: 'materials of which the fabricator says nothing',
      equation: 'count against shelf stock',
      remark: `On the shelf ${stock.onShelf}, to be ordered ${stock.toOrder}.`,
    })
    if (stock.toOrder === 0) return [held]
    return [
      held,
      orderSlackDays === undefined
        ? notComputed(['facts', 'orderSlackDays'], 'latest order date', [DESIGN_PLACE])
        : decide({
            value: orderSlackDays,
            limit: context.getLimit('orderSlackDays'),
            places: [DESIGN_PLACE],
            what: 'time left to order',
            equation: 'need date - lead time - today',
          }),
    ]
  },
  judgment: { evidence: "The fabricator's list of stock and lead times for these materials.", replacesMissing: true },
})
