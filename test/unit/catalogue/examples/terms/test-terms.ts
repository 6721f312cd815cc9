import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

export const testTermsExamples: readonly ItemExample[] = [
  { name: 'all stated', expect: 'meets' },
  {
    name: 'a test below the working voltage',
    change: (d) => {
      d.brief.acceptance.testVoltageVolt = 10
    },
    expect: 'fails',
  },
  {
    name: 'a continuity limit that no conductor of this size meets',
    change: (d) => {
      d.brief.acceptance.continuityOhm = 0.01
    },
    expect: 'fails',
  },
  {
    name: 'isolation open',
    change: (d) => {
      d.brief.acceptance.isolationMegohm = null
    },
    expect: 'not-computed',
  },
  {
    name: 'a working voltage open',
    change: (d) => {
      getOnly(d.features.conductors).voltageVolt = null
    },
    expect: 'not-computed',
  },
  {
    name: 'conductors neither listed nor ruled out',
    change: (d) => {
      d.features.conductors = []
    },
    expect: 'not-computed',
  },
  {
    name: 'no electrical test',
    change: (d) => {
      d.brief.electricalTest = false
    },
    expect: 'not-applicable',
  },
]
