import type { Content } from 'pdfmake/interfaces'
import {
  cautionOfFlexTestSet,
  describeFlexTestSet,
  listFlexTestConditions,
  listFlexTestSpecimens,
  type PictureTable,
} from '@/lib/drawing'
import { nameOwnTests } from '@/lib/engine'
import type { PackageContent } from '../content'
import { describeWithheld, listUsedFlexTestSets } from '../flex-tests'
import type { Pictures } from './pictures'
import { type Heading, keepTogether, level2, makeTable, PICTURE_SCALE, showPicture } from './style'

const PLOT_WIDTH_PT = 340

/** The flex tests that lives of this report rest on: what they give, every specimen, and how far they reach. */
export function makeFlexTests(content: PackageContent, pictures: Pictures | null): Content[] {
  return listUsedFlexTestSets(content).flatMap(({ use, packed }): Content[] => {
    const title = `Flex tests: ${nameOwnTests(use)}`
    if (packed === null) {
      return [
        keepTogether([
          { text: title, style: 'subsection' },
          { text: describeWithheld(use), margin: [0, 1, 0, 2] },
        ]),
      ]
    }
    const { set, rows } = packed
    const plot = pictures?.drawFlexTests(set, Math.round(PLOT_WIDTH_PT * PICTURE_SCALE)) ?? null
    return [
      keepTogether([
        { text: title, style: 'subsection' },
        { text: describeFlexTestSet(set), margin: [0, 1, 0, 2] },
        layOut(listFlexTestConditions(set)),
        { text: cautionOfFlexTestSet(set), style: 'caution', margin: [0, 1, 0, 2] },
      ]),
      ...(plot === null
        ? []
        : [
            keepTogether([
              { text: plot.title, style: 'label' },
              showPicture(plot, PLOT_WIDTH_PT),
              { text: plot.description, style: 'small', margin: [0, 0, 0, 4] },
            ]),
          ]),
      layOut(listFlexTestSpecimens(rows), level2(`Specimens of set ${use.set}`)),
    ]
  })
}

function layOut({ columns, rows }: PictureTable, heading?: Heading): Content {
  return makeTable(
    columns.map(({ label, numeric }, at) => ({
      label,
      width: at === columns.length - 1 ? '*' : 'auto',
      isNumeric: numeric,
    })),
    rows.map((row) => columns.map(({ key }) => row[key] ?? '')),
    heading,
  )
}
