import { renderToString } from 'preact-render-to-string'
import type { Say } from '../../words/words.ts'
import { PrintedView } from '../printed.tsx'
import { ClosetView } from './closet.tsx'
import { ConfirmedView, confirmedTitle } from './confirmed.tsx'
import { GatherView } from './gather.tsx'
import { LaidOutView } from './laid-out.tsx'
import { LeaveView } from './leave.tsx'
import { MessagesView, RemindersView } from './messages.tsx'
import { OfferView } from './offer.tsx'
import { Speaking } from './pieces.tsx'
import { QuestionView } from './question.tsx'
import { ReceiptView } from './receipt.tsx'
import { ReviewView } from './review.tsx'
import { SaveView } from './save.tsx'
import { ScreeningView } from './screening.tsx'
import { SheetView } from './sheet.tsx'
import { Shell } from './shell.tsx'
import { StartView } from './start.tsx'
import { TagView } from './tag-page.tsx'
import { TroubleView } from './trouble.tsx'
import type { ChatPage, Frame } from './view.ts'
import { ErasedView, YoursView } from './yours.tsx'

/** A whole page as HTML, in the language of `say`. The same page, frame and words give the same text. */
export function renderPage(page: ChatPage, frame: Frame, say: Say): string {
  const look = page.page === 'confirmed' && page.print ? 'paper' : page.page
  const html = renderToString(
    <Speaking value={say}>
      <Shell frame={frame} title={titleOf(page, say)} look={look} scripts={scriptsOf(page, frame)}>
        <View page={page} frame={frame} />
      </Shell>
    </Speaking>,
  )
  return `<!doctype html>${html}`
}

function scriptsOf(page: ChatPage, { script, spotScript, sheetScript }: Frame): string[] {
  if (page.page === 'sheet') return [script, sheetScript]
  const isSpots = page.page === 'question' && page.question.answering.kind === 'spots'
  return isSpots ? [script, spotScript] : [script]
}

function View({ page, frame }: { page: ChatPage; frame: Frame }) {
  switch (page.page) {
    case 'question':
      return <QuestionView page={page} />
    case 'sheet':
      return <SheetView page={page} />
    case 'gather':
      return <GatherView page={page} />
    case 'closet':
      return <ClosetView page={page} />
    case 'screening':
      return <ScreeningView page={page} />
    case 'review':
      return <ReviewView page={page} />
    case 'confirmed':
      return <ConfirmedView page={page} />
    case 'offer':
      return <OfferView page={page} />
    case 'receipt':
      return <ReceiptView page={page} />
    case 'leave':
      return <LeaveView page={page} />
    case 'yours':
      return <YoursView page={page} />
    case 'erased':
      return <ErasedView page={page} />
    case 'laid-out':
      return <LaidOutView page={page} />
    case 'printed':
      return <PrintedView page={page} />
    case 'start':
      return <StartView page={page} frame={frame} />
    case 'save':
      return <SaveView page={page} />
    case 'tag':
      return <TagView page={page} />
    case 'messages':
      return <MessagesView page={page} />
    case 'reminders':
      return <RemindersView page={page} />
    case 'trouble':
      return <TroubleView page={page} />
  }
}

function titleOf(page: ChatPage, say: Say): string {
  switch (page.page) {
    case 'question': {
      const refused = page.question.errors.length > 0 ? `${say('page.error')} ` : ''
      return refused + page.question.title
    }
    case 'gather':
      return say('gather.title', { count: page.tally.garments })
    case 'closet':
      return page.refusal ? `${say('page.error')} ${say('closet.title')}` : say('closet.title')
    case 'confirmed':
      return say(confirmedTitle(page))
    case 'offer':
      return page.paper.title
    case 'receipt':
      return page.title
    case 'leave':
      return say(`leave.${page.kind}.title`)
    case 'laid-out':
      return say('laid_out.title')
    case 'tag':
      return say('custody.tag.title', { shop: page.shop })
    case 'printed':
      return page.title
    case 'sheet':
      return page.shown.refused ? `${say('page.error')} ${page.title}` : page.title
    case 'trouble':
      return say(`trouble.${page.trouble}`)
    default:
      return say(`${page.page}.title`)
  }
}
