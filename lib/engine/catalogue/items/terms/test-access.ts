import { defineItem } from '../../define-item'

export const testAccess = defineItem({
  id: 'test-access',
  section: 'fabrication',
  severity: 'minor',
  question: 'Are probe points on rigid or stiffened zones, away from bends?',
  titles: { judgment: 'Somebody must look where probes touch the part' },
  appliesTo: {
    needs: ['conductor-layers', 'electrical-test', 'flex-zones'],
    says: 'designs with an electrical test and a flex zone',
  },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['features.pads', 'features.coverlayOpenings', 'construction.zones', 'bends.*.zoneId', 'artwork'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  judgment: { evidence: 'The layers with the probe points, beside the zones and bends.' },
})
