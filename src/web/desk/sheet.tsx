import { SheetMarker } from '../chat/sheet.tsx'
import type { DeskSheetPage } from './view-sheet.ts'

/** A photo of a garment to mark the corners of a sheet of paper on. */
export function DeskSheetView({ page }: { page: DeskSheetPage }) {
  const { title, lead, back, found, shown } = page
  return (
    <main id="main" class="sheet-desk" tabIndex={-1}>
      <p class="onward">
        <a href={back.href}>{back.label}</a>
      </p>
      <h1>{title}</h1>
      <p class="help">{lead}</p>
      {found && <p>{found}</p>}
      <section class="card" aria-label={title}>
        <SheetMarker shown={shown} />
      </section>
    </main>
  )
}
