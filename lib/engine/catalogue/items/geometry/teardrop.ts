import { checkObserved, placeOf } from '../../checks'
import { notApplicable, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { findGround } from '../../land-ground'

export const teardrop = defineItem({
  id: 'teardrop',
  section: 'geometry',
  severity: 'minor',
  question: 'Does every pad on film meet its conductor in a teardrop?',
  titles: { meets: 'Pads have teardrops', fails: 'A pad has no teardrop' },
  appliesTo: { needs: ['pads'], says: 'designs that list pads' },
  limits: [],
  sourceKeys: ['guideDesignRules', 'guideRigidFlex2012'],
  restsOn: ['artwork', 'plan', 'features.pads', 'construction.zones', 'construction.layers'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.pads[].teardrop', worse: 'no' }],
  check: (context) =>
    context.design.features.pads.map((pad, index) => {
      const places = [placeOf('pad', pad)]
      // A teardrop is one, whatever it lies on.
      const ground = pad.teardrop === true ? 'film' : findGround(context, pad)
      if (ground === 'board') return notApplicable(`${pad.name} lies on a rigid board`, places)
      if (ground === null && pad.teardrop === false) {
        return notComputed(['features', 'pads', index, 'zoneId'], `zone of ${pad.name}`, places, 'typed')
      }
      return checkObserved({
        observed: pad.teardrop,
        wanted: true,
        path: ['features', 'pads', index, 'teardrop'],
        label: `teardrop of ${pad.name}`,
        whenRight: `${pad.name} has a teardrop.`,
        whenWrong: `${pad.name} has no teardrop.`,
        places,
        sourceKey: 'guideDesignRules',
      })
    }),
})
