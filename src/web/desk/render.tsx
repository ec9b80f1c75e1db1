import { renderToString } from 'preact-render-to-string'
import type { Say } from '../../words/words.ts'
import { Speaking } from '../chat/pieces.tsx'
import { PrintedView } from '../printed.tsx'
import { AgreementView } from './agreement.tsx'
import { ArrangeView } from './arrange.tsx'
import { BenchView } from './bench.tsx'
import { BoxChangedView, BoxCheckView } from './box-check.tsx'
import { CalendarView } from './calendar.tsx'
import { CountView } from './count.tsx'
import { CustodyHomeView, CustodyMapView } from './custody-home.tsx'
import { CustodyPileView } from './custody-pile.tsx'
import { SubjectView } from './custody-subject.tsx'
import { DoorView } from './door.tsx'
import { DraftView, TryView } from './draft.tsx'
import { EmbedView } from './embed.tsx'
import { FactsView } from './facts.tsx'
import { FilesView, FileView } from './files.tsx'
import { KeptView } from './kept.tsx'
import { LaidOutView } from './laid-out.tsx'
import { MailsView } from './mails.tsx'
import { PileMessagesView, WrittenView } from './messages.tsx'
import { NumbersView } from './numbers.tsx'
import { OfferDeskView } from './offer.tsx'
import { PeopleView } from './people.tsx'
import { PileView } from './pile.tsx'
import { PlanView } from './plan.tsx'
import { QueueView } from './queue.tsx'
import { RecordView } from './record.tsx'
import { DeskSheetView } from './sheet.tsx'
import { Shell } from './shell.tsx'
import { ShopView } from './shop.tsx'
import { SpotsView } from './spots.tsx'
import { TeardownView } from './teardown.tsx'
import { TroubleView } from './trouble.tsx'
import type { DeskPage } from './view.ts'
import type { Frame } from './view-frame.ts'
import { WhatIfView } from './what-if.tsx'

/** A whole page of the desk as HTML, in the language of `say`. */
export function renderDesk(page: DeskPage, frame: Frame, say: Say): string {
  const html = renderToString(
    <Speaking value={say}>
      <Shell
        frame={frame}
        title={titleOf(page, say)}
        look={page.page}
        scripts={scriptsOf(page, frame)}
      >
        <View page={page} />
      </Shell>
    </Speaking>,
  )
  return `<!doctype html>${html}`
}

const scriptsOf = (page: DeskPage, { script, sheetScript }: Frame): string[] =>
  page.page === 'sheet' ? [script, sheetScript] : [script]

function View({ page }: { page: DeskPage }) {
  switch (page.page) {
    case 'queue':
      return <QueueView page={page} />
    case 'bench':
      return <BenchView page={page} />
    case 'people':
      return <PeopleView page={page} />
    case 'files':
      return <FilesView page={page} />
    case 'file':
      return <FileView page={page} />
    case 'try':
      return <TryView page={page} />
    case 'draft':
      return <DraftView page={page} />
    case 'embed':
      return <EmbedView page={page} />
    case 'shop':
      return <ShopView page={page} />
    case 'numbers':
      return <NumbersView page={page} />
    case 'pile':
      return <PileView page={page} />
    case 'messages':
      return <PileMessagesView page={page} />
    case 'written':
      return <WrittenView page={page} />
    case 'mails':
      return <MailsView page={page} />
    case 'kept':
      return <KeptView page={page} />
    case 'plan':
      return <PlanView page={page} />
    case 'arrange':
      return <ArrangeView page={page} />
    case 'offer':
      return <OfferDeskView page={page} />
    case 'agreement':
      return <AgreementView page={page} />
    case 'calendar':
      return <CalendarView page={page} />
    case 'what-if':
      return <WhatIfView page={page} />
    case 'teardown':
      return <TeardownView page={page} />
    case 'printed':
      return <PrintedView page={page} />
    case 'facts':
      return <FactsView page={page} />
    case 'spots':
      return <SpotsView page={page} />
    case 'sheet':
      return <DeskSheetView page={page} />
    case 'sign-in':
    case 'welcome':
    case 'password':
      return <DoorView page={page} />
    case 'custody-home':
      return <CustodyHomeView page={page} />
    case 'custody-map':
      return <CustodyMapView page={page} />
    case 'custody-pile':
      return <CustodyPileView page={page} />
    case 'custody':
      return <SubjectView page={page} />
    case 'box-check':
      return <BoxCheckView page={page} />
    case 'box-changed':
      return <BoxChangedView page={page} />
    case 'count':
      return <CountView page={page} />
    case 'record':
      return <RecordView page={page} />
    case 'laid-out':
      return <LaidOutView page={page} />
    case 'trouble':
      return <TroubleView page={page} />
  }
}

function titleOf(page: DeskPage, say: Say): string {
  switch (page.page) {
    case 'queue':
    case 'bench':
    case 'people':
    case 'files':
    case 'file':
    case 'try':
    case 'draft':
    case 'numbers':
    case 'embed':
    case 'shop':
    case 'pile':
    case 'plan':
    case 'arrange':
    case 'what-if':
    case 'offer':
    case 'agreement':
    case 'calendar':
    case 'teardown':
    case 'printed':
    case 'facts':
    case 'spots':
    case 'sheet':
    case 'custody-home':
    case 'custody-map':
    case 'custody-pile':
    case 'custody':
    case 'box-check':
    case 'box-changed':
    case 'count':
    case 'record':
    case 'laid-out':
    case 'messages':
    case 'written':
    case 'mails':
    case 'kept':
      return page.title
    case 'sign-in':
      return say('desk.sign_in.title')
    case 'welcome':
      return say('desk.welcome.title')
    case 'password':
      return say('desk.choose_password.title')
    case 'trouble':
      return say('desk.trouble.title')
  }
}
