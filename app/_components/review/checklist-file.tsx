'use client'

import { Button } from '@/app/_components/ui/button'
import { saveFile } from '@/app/_components/ui/save-file'
import { makeChecklistRows } from './checklist-rows'

/** Saves the items that are shown with their results and answers, as an XLSX file. */
export function ChecklistFile({
  items,
  texts,
}: {
  items: Parameters<typeof makeChecklistRows>[0]
  texts: Parameters<typeof makeChecklistRows>[1]
}) {
  const save = async () => {
    const { writeXlsx } = await import('@/lib/spreadsheet')
    const bytes = await writeXlsx('Checklist', makeChecklistRows(items, texts))
    saveFile('checklist.xlsx', bytes, 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet')
  }
  return (
    <Button isDisabled={items.length === 0} onPress={save}>
      Save as XLSX
    </Button>
  )
}
