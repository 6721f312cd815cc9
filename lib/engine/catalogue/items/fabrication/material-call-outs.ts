import type { Outcome } from '../../../results'
import { placeOf } from '../../checks'
import { decide, makeNoneAllowed, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const materialCallOuts = defineItem({
  id: 'material-call-outs',
  section: 'fabrication',
  severity: 'minor',
  question: 'Is every material called out by specification and thickness?',
  titles: { meets: 'Materials are called out by specification', fails: 'A material has no specification' },
  appliesTo: { needs: ['layers'], says: 'designs with layers' },
  limits: [],
  sourceKeys: ['ipc4203', 'ipc4204', 'ipc4562'],
  restsOn: ['construction.layers', 'materials'],
  decidedWhen: 'early',
  answeredBy: ['member'],
  monotone: [],
  check: (context) => {
    const outcomes: Outcome[] = []
    const seen = new Set<string>()
    context.design.construction.layers.forEach((layer, index) => {
      if (layer.kind === 'unbonded-gap' || seen.has(layer.materialId)) return
      seen.add(layer.materialId)
      const material = context.findMaterial(layer.materialId)
      const places = [placeOf('layer', layer)]
      outcomes.push(
        material === null
          ? notComputed(['construction', 'layers', index, 'materialId'], `material of ${layer.name}`, places)
          : decide({
              value: namesStandard(material.specification) ? 0 : 1,
              limit: makeNoneAllowed('missingSpecificationsCount', layer.kind === 'conductor' ? 'ipc4562' : 'ipc4203'),
              places,
              what: `missing specifications of ${material.name}`,
              equation: 'material record',
              remark:
                material.specification === ''
                  ? undefined
                  : namesStandard(material.specification)
                    ? `${material.specification}.`
                    : `"${material.specification}" names no standard and allows no equivalent.`,
            }),
      )
    })
    return outcomes
  },
})

/** Bodies that publish standards; a number follows their letters. */
const STANDARD = /\b(AISI|AMS|ANSI|ASTM|BS|DIN|ECSS|EN|GB|IEC|IPC|ISO|JIS|JPCA|MIL|NEMA|NF|SAE|UL|UNS)\b[A-Z /-]*\d/
/** A number of a house's own: `AB-1234`. A film and its thickness, `PI 25`, is none. */
const HOUSE_NUMBER = /\b[A-Z]{2,}(-[A-Z]+)*-\d{3,}/

/** A standard by its body and number, or the word that another sheet will do as well. Common practice, no published source. */
function namesStandard(specification: string): boolean {
  return STANDARD.test(specification) || HOUSE_NUMBER.test(specification) || /\bequivalent\b/i.test(specification)
}
