import { describe, expect, test } from 'vitest'
import { CATALOGUE } from '@/lib/engine/catalogue'
import { listStatedInBrief } from '@/lib/review'
import { makeDesign } from './snapshot-factory'

describe('what the brief says about an item', () => {
  const long = 'Trays of twenty, dry packed with an indicator card; opened bags are baked again after eight hours.'
  const { brief } = makeDesign((design) => {
    design.brief.packingAndHandling = long
    design.brief.panelForm = 'assembly-arrays'
  })

  test('stands beside it in full', () => {
    expect(listStatedInBrief('packing', brief)).toMatchObject([
      { field: 'packingAndHandling', label: 'packing and handling', text: long },
      { field: 'assembly.packedAs' },
      { field: 'assembly.isDryPacked' },
      { field: 'assembly.storageMonths' },
      { field: 'panelForm', label: 'panel form', text: 'arrays for assembly' },
    ])
  })

  test('is there for terms too, in their units', () => {
    const stated = makeDesign((design) => {
      design.brief.assembly.solderPeakDegC = 245
      design.brief.tolerances.outlineMm = 0.15
    }).brief
    expect(listStatedInBrief('solder-heat', stated)).toContainEqual(
      expect.objectContaining({ field: 'assembly.solderPeakDegC', text: '245 °C' }),
    )
    expect(listStatedInBrief('tolerances-given', stated)).toContainEqual({
      field: 'tolerances.outlineMm',
      label: 'tolerance of outline ±',
      text: '0.15 mm',
    })
  })

  test('reads every field of the brief that an item rests on, without an id or a key in it', () => {
    for (const { id } of CATALOGUE) {
      for (const { field, label } of listStatedInBrief(id, brief)) {
        expect(label, `${id} ${field}`).toMatch(/^[\p{L}]/u)
        expect(label, `${id} ${field}`).not.toMatch(/[a-z][A-Z]|undefined/)
      }
    }
  })

  test('is empty where nothing is stated, and absent for items that rest on nothing of it', () => {
    expect(listStatedInBrief('tolerances-given', brief)).toContainEqual({
      field: 'toleranceScheme',
      label: 'tolerance scheme',
      text: '',
    })
    expect(listStatedInBrief('slit-end-relief', brief)).toEqual([])
  })
})
