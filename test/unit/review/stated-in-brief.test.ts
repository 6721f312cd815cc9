import { describe, expect, test } from 'vitest'
import { listStatedInBrief } from '@/lib/review'
import { makeDesign } from './snapshot-factory'

describe('what the brief says about an item', () => {
  const long = 'Trays of twenty, dry packed with an indicator card; opened bags are baked again after eight hours.'
  const { brief } = makeDesign((design) => {
    design.brief.packingAndHandling = long
    design.brief.panelForm = 'assembly-arrays'
  })

  test('stands beside it in full', () => {
    expect(listStatedInBrief('packing', brief)).toEqual([
      { field: 'packingAndHandling', label: 'packing and handling', text: long },
      { field: 'panelForm', label: 'panel form', text: 'arrays for assembly' },
    ])
  })

  test('is empty where nothing is stated, and absent for items that rest on nothing of it', () => {
    expect(listStatedInBrief('tolerances-given', brief)).toEqual([
      { field: 'toleranceScheme', label: 'tolerance scheme', text: '' },
    ])
    expect(listStatedInBrief('slit-end-relief', brief)).toEqual([])
  })
})
