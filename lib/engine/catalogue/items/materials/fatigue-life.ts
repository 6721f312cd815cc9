import { isDynamic, listBends, placeOf } from '../../checks'
import { decide, makeDesignLimit, notApplicable, notComputed, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { formatValue } from '../../format-value'

/** Above this the relation says "longer than anybody will test"; the figure itself means nothing. */
const LONGEST_LIFE_CYCLES = 1e12

export const fatigueLife = defineItem({
  id: 'fatigue-life',
  section: 'materials',
  severity: 'blocking',
  question: 'Does each dynamic bend reach its required cycles at the chosen survival percentile?',
  titles: {
    meets: 'Dynamic bends reach their required cycles',
    fails: 'A dynamic bend falls short of its required cycles',
  },
  appliesTo: { needs: ['dynamic-bends', 'conductor-layers'], says: 'designs with a dynamic bend' },
  limits: [],
  sourceKeys: ['fatigueDuctility', 'weibull'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  check: (context) =>
    listBends(context, isDynamic).map(({ bend, result, index, place }) => {
      if (result.conductors.length === 0) return notApplicable(`no conductor runs through bend ${bend.name}`, [place])
      if (bend.requiredCycles === null) {
        return notComputed(['bends', index, 'requiredCycles'], `required cycles of bend ${bend.name}`, [place])
      }
      const { survivalLifeCycles, medianLifeCycles, survivalPct } = result
      if (survivalLifeCycles === null) {
        return result.missing.length > 0
          ? notComputedFrom(result.missing, [place])
          : notComputed(['bends', index, 'zoneId'], `conductor in bend ${bend.name}`, [place])
      }
      const worst = result.conductors.find((conductor) => conductor.survivalLifeCycles === survivalLifeCycles)
      return decide({
        value: Math.min(survivalLifeCycles, LONGEST_LIFE_CYCLES),
        limit: makeDesignLimit({
          key: 'requiredCycles',
          value: bend.requiredCycles,
          unit: 'cycles',
          sense: 'at-least',
          sourceKey: 'fatigueDuctility',
          name: 'required cycles',
        }),
        places: worst === undefined ? [place] : [place, placeOf('layer', { id: worst.layerId, name: worst.name })],
        what: `life of bend ${bend.name} at ${formatValue(survivalPct, 'pct')} survival`,
        equation: 'fatigue-ductility relation, Weibull percentile',
        sourceKey: 'fatigueDuctility',
        cautions: result.cautions,
        remark:
          medianLifeCycles === null || !Number.isFinite(medianLifeCycles)
            ? undefined
            : `Median ${formatValue(medianLifeCycles, 'cycles')}. An estimate of order of magnitude: qualify by test.`,
      })
    }),
})
