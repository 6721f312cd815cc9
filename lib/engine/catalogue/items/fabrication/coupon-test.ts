import { BRIEF_PLACE, checkObserved } from '../../checks'
import { defineItem } from '../../define-item'

export const couponTest = defineItem({
  id: 'coupon-test',
  section: 'fabrication',
  severity: 'minor',
  question: 'Are coupons asked for, so that plated holes can be cut and looked at?',
  titles: { meets: 'Coupons are asked for', fails: 'No coupons are asked for' },
  appliesTo: { needs: ['plated-holes'], says: 'designs with plated holes' },
  limits: [],
  sourceKeys: ['ipc6013'],
  restsOn: ['brief.couponTest', 'features.holes'],
  decidedWhen: 'early',
  answeredBy: ['member'],
  monotone: [{ path: 'brief.couponTest', worse: 'no' }],
  check: ({ design }) => [
    checkObserved({
      observed: design.brief.couponTest,
      wanted: true,
      path: ['brief', 'couponTest'],
      label: 'whether coupons are asked for',
      whenRight: 'Coupons are asked for.',
      whenWrong: 'No coupons are asked for.',
      places: [BRIEF_PLACE],
      sourceKey: 'ipc6013',
      rests: 'typed',
    }),
  ],
})
