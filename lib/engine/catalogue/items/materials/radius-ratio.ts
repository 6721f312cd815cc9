import { findRatioTable } from '../../../bending'
import { getRadiusRangeMm, listBends } from '../../checks'
import { decide, makeSourceLimit, notApplicable, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { formatValue } from '../../format-value'

export const radiusRatio = defineItem({
  id: 'radius-ratio',
  section: 'materials',
  severity: 'minor',
  question: 'Is the ratio of inside radius to thickness at least that of the chosen table?',
  titles: {
    meets: 'Radius-to-thickness ratios meet the chosen table',
    fails: 'A radius-to-thickness ratio is below the chosen table',
  },
  appliesTo: { needs: ['bends'], says: 'designs with a bend' },
  limits: [],
  sourceKeys: ['ratioAttributedToIpc2223', 'commonPractice'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  check: (context) =>
    listBends(context).map(({ bend, result, index, place }) => {
      if (bend.use === null) return notComputed(['bends', index, 'use'], `use of bend ${bend.name}`, [place])
      const { actual, required, tableKey, tableName, surfaceStrainPct } = result.ratio
      if (required === null) {
        return notApplicable(`"${tableName}" has no ratio for this use and construction, or advises against it`, [
          place,
        ])
      }
      const thicknessMm = result.sectionThicknessUm / 1000
      const radius = getRadiusRangeMm(bend)
      return decide({
        value: actual,
        range: { low: radius.low / thicknessMm, high: radius.high / thicknessMm },
        limit: makeSourceLimit({
          key: 'radiusToThicknessRatio',
          value: required,
          unit: 'ratio',
          sense: 'at-least',
          sourceKey: findRatioTable(tableKey)?.source ?? 'commonPractice',
        }),
        places: [place],
        what: `radius to thickness in bend ${bend.name}`,
        equation: 'inside radius / finished thickness',
        remark: `Table: ${tableName}. A ratio of ${formatValue(actual)} means ${formatValue(surfaceStrainPct, 'pct')} at the outer surface.`,
      })
    }),
})
