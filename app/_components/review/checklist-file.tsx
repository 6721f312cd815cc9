'use client'

import { Button } from '@/app/_components/ui/button'
import { saveFile } from '@/app/_components/ui/save-file'
import { makeChecklistRows, makeFigureRows } from './checklist-rows'

/** Saves the items that are shown as an XLSX file: results and answers on one worksheet, the figures behind them on another. */
export function ChecklistFile({
  items,
  texts,
  citations,
}: {
  items: Parameters<typeof makeChecklistRows>[0]
  texts: Parameters<typeof makeChecklistRows>[1]
  citations: Parameters<typeof makeFigureRows>[2]
}) {
  const save = async () => {
    const { writeWorkbook } = await import('@/lib/spreadsheet')
    const bytes = await writeWorkbook([
      { name: 'Checklist', rows: makeChecklistRows(items, texts) },
      { name: 'Figures', rows: makeFigureRows(items, texts, citations) },
    ])
    saveFile('checklist.xlsx', bytes, 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet')
  }
  return (
    <Button isDisabled={items.length === 0} onPress={save}>
      Save as XLSX
    </Button>
  )
}
