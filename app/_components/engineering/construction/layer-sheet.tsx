'use client'

import { FabricationGrid } from '@/app/_components/fabrication/grid/fabrication-grid'
import { Button } from '@/app/_components/ui/button'
import { FileButton } from '@/app/_components/ui/file-button'
import { Notice } from '@/app/_components/ui/notices'
import { saveFile } from '@/app/_components/ui/save-file'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { getShownUnit } from '@/lib/engine/units'
import { writeLayerSheet } from '@/lib/layer-sheet'
import { nameColumn, readCsv, readXlsx, writeCsv, writeXlsx } from '@/lib/spreadsheet'
import { useDraft } from '../draft'
import { makeFileStem } from './file-stem'
import { useLayerSheet } from './use-layer-sheet'

const XLSX_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'

/** Layers, their copper and their zones as one sheet of cells: typed, pasted as a block or as a table, read from a file and saved as one. */
export default function LayerSheet() {
  const { state, isReadOnly } = useDraft()
  const { unit } = useLengthUnit()
  const { sheet, faults, faultCount, notes, refusals, onChange, onTable, setRefusals, discard } = useLayerSheet()
  const stem = makeFileStem(state.design.name)
  const rows = () => writeLayerSheet(state.design, getShownUnit('um', unit))

  const readFile = async (file: File) => {
    const bytes = new Uint8Array(await file.arrayBuffer())
    const read = /\.xlsx$/i.test(file.name) ? readXlsx(bytes) : readCsv(bytes)
    if (!read.ok) {
      setRefusals([`${file.name} was not read. ${read.reason}`])
      return
    }
    const { rows: block, refused } = read.grid
    if (refused.length > 0) {
      setRefusals(refused.map(({ row, column, reason }) => `Cell ${nameColumn(column)}${row} ${reason}.`))
      return
    }
    if (!onTable(block)) setRefusals([`${file.name} was not read: its first row needs the headings Layer and Kind.`])
  }

  return (
    <div className="stack">
      <div className="row no-print">
        {!isReadOnly && (
          <FileButton
            label="Import from CSV or XLSX"
            inputLabel="Spreadsheet of layers to import"
            accept=".csv,.tsv,.txt,.xlsx"
            onChoose={readFile}
          />
        )}
        <Button onPress={async () => saveFile(`${stem}-layers.xlsx`, await writeXlsx('Layers', rows()), XLSX_TYPE)}>
          Save as XLSX
        </Button>
        <Button onPress={() => saveFile(`${stem}-layers.csv`, writeCsv(rows()), 'text/csv')}>Save as CSV</Button>
      </div>
      {!isReadOnly && (
        <p className="small muted no-print">
          A table that you paste or import with headings (Layer, Kind, Material, Thickness, …, and a column “Zone: name”
          for each zone) replaces the whole sheet. Lines “Zone kind”, “Zone length” and “Zone width” above the layers
          describe the zones. Lengths may carry a unit: 1 mil, 0.5 oz, 0.002 in. An empty cell takes the usual value,
          marked as assumed. In a zone’s column, x means the layer is there.
        </p>
      )}
      {refusals.length > 0 && (
        <Notice tone="refused" role="alert">
          <p>Nothing was changed.</p>
          <ul>
            {refusals.slice(0, 20).map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
            {refusals.length > 20 && <li>and {refusals.length - 20} more</li>}
          </ul>
        </Notice>
      )}
      {notes.length > 0 && (
        <Notice role="status">
          <p>{notes.join(' ')}</p>
        </Notice>
      )}
      <FabricationGrid
        label="Layer sheet"
        table={sheet.table}
        state={sheet.grid}
        onChange={onChange}
        faults={faults}
        isReadOnly={isReadOnly}
        onTable={onTable}
      />
      {faultCount > 0 && (
        <div className="row no-print">
          <span className="small" role="status">
            The design below is the last one that could be read. It follows once every cell can be read.
          </span>
          <Button onPress={discard}>Discard these entries</Button>
        </div>
      )}
    </div>
  )
}
