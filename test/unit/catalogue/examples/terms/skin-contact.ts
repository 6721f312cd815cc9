import type { Design } from '@/lib/engine'
import { getZone } from '../changes'
import type { ItemExample } from '../item-example'

export const skinContactExamples: readonly ItemExample[] = [
  { name: 'evaluated, without nickel', expect: 'needs-judgment' },
  {
    name: 'open nickel on skin',
    change: (d) => {
      Object.assign(d.brief, { surfaceFinish: 'electroplated-nickel-gold' })
      d.brief.exposure.openFinishCovered = false
    },
    expect: 'fails',
  },
  {
    name: 'nickel, nobody said whether it is covered',
    change: (d) => {
      Object.assign(d.brief, { surfaceFinish: 'electroplated-nickel-gold' })
    },
    expect: 'not-computed',
  },
  {
    name: 'nickel, covered',
    change: (d) => {
      Object.assign(d.brief, { surfaceFinish: 'electroplated-nickel-gold' })
      d.brief.exposure.openFinishCovered = true
    },
    expect: 'needs-judgment',
  },
  {
    name: 'not evaluated',
    change: (d) => {
      d.brief.exposure.skinMaterialsEvaluated = false
    },
    expect: 'fails',
  },
  {
    name: 'no contact',
    change: (d) => {
      d.brief.exposure.skinContact = 'none'
    },
    expect: 'not-applicable',
  },
  {
    name: 'nobody said',
    change: (d) => {
      d.brief.exposure.skinContact = null
    },
    expect: 'not-computed',
  },
  {
    name: 'finish open',
    change: (d) => {
      d.brief.surfaceFinish = null
    },
    expect: 'not-computed',
  },
  {
    name: 'open nickel on lands, and no opening is listed besides',
    change: (d) => {
      withOpenNickel(d)
      d.features.coverlayOpenings = []
      d.features.none.push('coverlayOpenings')
    },
    expect: 'fails',
  },
  {
    name: 'open nickel in openings, and no land is listed besides',
    change: (d) => {
      withOpenNickel(d)
      d.features.pads = []
      d.features.none.push('pads')
    },
    expect: 'fails',
  },
  {
    name: 'neither lands nor openings',
    change: (d) => {
      withOpenNickel(d)
      Object.assign(d.features, { pads: [], coverlayOpenings: [] })
      d.features.none.push('pads', 'coverlayOpenings')
    },
    expect: 'needs-judgment',
  },
]

/** Without fingers and soldering nothing implies lands or openings: the lists alone say whether there are any. */
function withOpenNickel(design: Design): void {
  Object.assign(design.brief, { surfaceFinish: 'electroplated-nickel-gold', solderedAssembly: false })
  design.brief.exposure.openFinishCovered = false
  Object.assign(getZone(design, 'fingers'), { kind: 'stiffened', connectorWindow: null })
}
