import { AnswerFields } from './answering.tsx'
import { Advice } from './photos.tsx'
import {
  ActButton,
  Cautions,
  describedBy,
  ErrorSummary,
  errorOf,
  FieldRefusal,
  Hidden,
  Picture,
  useSay,
} from './pieces.tsx'
import { Answers, Thread } from './tag.tsx'
import { TallyLine } from './tally.tsx'
import type { Question, QuestionPage } from './view.ts'
import type { JustSaid, LookShown, MeasureOffer } from './view-question.ts'

/** The garments so far, and the one question that asks for attention. */
export function QuestionView({ page }: { page: QuestionPage }) {
  const say = useSay()
  const { question } = page
  const current = page.tags.find(({ n }) => n === question.item)
  const others = page.tags.filter(({ n }) => n !== question.item)
  const said = question.item === 0 ? page.pileAnswers : (current?.answers ?? [])
  return (
    <div class="table">
      {others.length > 0 && (
        <nav class="aside" aria-label={say('thread.name')}>
          <Thread tags={others} fold />
        </nav>
      )}
      <main id="main" tabIndex={-1}>
        <section
          class="card"
          aria-labelledby="title"
          {...(question.item > 0 && { 'data-garment': question.item })}
          {...(current?.grade && { 'data-grade': current.grade })}
        >
          <Asked question={question} />
          <AnswerForm question={question} />
        </section>
        {said.length > 0 && (
          <details class="said">
            <summary>{say('question.soFar', { count: said.length })}</summary>
            <Answers answers={said} about={question.itemName} />
          </details>
        )}
        {page.tally && <TallyLine tally={page.tally} />}
        {page.actions.length > 0 && (
          <div class="acts">
            {page.actions.map((action) => (
              <ActButton key={action.act} action={action} look="second" />
            ))}
          </div>
        )}
      </main>
    </div>
  )
}

function Asked({ question }: { question: Question }) {
  const say = useSay()
  const { item, itemName, position } = question
  return (
    <>
      <p class="item">
        {item > 0 ? say('question.garment', { n: item }) : say('question.pile')}
        {itemName && ` · ${itemName}`}
        {position && <span class="position">{say('question.position', position)}</span>}
      </p>
      {question.just && <Just just={question.just} />}
      <h1 id="title" tabIndex={-1}>
        {question.title}
      </h1>
      <ErrorSummary errors={question.errors} />
      {adviceOf(question).length > 0 && <Advice advice={adviceOf(question)} />}
      {question.help && (
        <p class="help" id="help">
          {question.help}
        </p>
      )}
      {question.drawing && <Picture name={question.drawing} told />}
      <Cautions texts={question.cautions} />
      {question.look && <Seen look={question.look} />}
      {question.measure && <Measure offer={question.measure} />}
    </>
  )
}

/** What was said last, with its way to take it back. */
function Just({ just: { words, href } }: { just: JustSaid }) {
  const say = useSay()
  return (
    <p class="just" id="just" data-told={say('question.told', { words })}>
      <span>{words}</span>{' '}
      <a href={href}>
        {say('question.undo')}
        <span class="unseen"> {words}</span>
      </a>
    </p>
  )
}

const adviceOf = ({ answering }: Question): readonly string[] =>
  answering.kind === 'photo' ? answering.advice : []

/** A photo of the garment with what was seen on it. */
function Seen({ look: { photo, box, sheet, sentence, filled } }: { look: LookShown }) {
  const say = useSay()
  return (
    <figure class="seen">
      <a href={photo.view} class="seen-picture">
        <img src={photo.view} alt={photo.alt} />
        {(box || sheet) && (
          <svg viewBox="0 0 1 1" preserveAspectRatio="none" aria-hidden="true">
            {box && <Frame box={box} />}
            {sheet && <SheetLine sheet={sheet} />}
          </svg>
        )}
      </a>
      <figcaption>
        {sentence} {say(filled ? 'look.filled' : 'look.check')}
      </figcaption>
    </figure>
  )
}

const Frame = ({ box: { x, y, w, h } }: { box: NonNullable<LookShown['box']> }) => (
  <>
    <rect class="seen-under" x={x} y={y} width={w} height={h} />
    <rect class="seen-over" x={x} y={y} width={w} height={h} />
  </>
)

function SheetLine({ sheet }: { sheet: NonNullable<LookShown['sheet']> }) {
  const points = sheet.map((corner) => corner.join()).join(' ')
  return (
    <>
      <polygon class="seen-under" points={points} />
      <polygon class="seen-sheet" points={points} />
    </>
  )
}

/** A size can be told by a sheet of paper that nobody has found on the photo yet, or that was found wrongly. */
const Measure = ({ offer: { sentence, label, href } }: { offer: MeasureOffer }) => (
  <p class="measure-offer">
    {sentence} <a href={href}>{label}</a>
  </p>
)

function AnswerForm({ question }: { question: Question }) {
  const say = useSay()
  return (
    <form
      method="post"
      action={question.postTo}
      noValidate
      data-question={question.id}
      data-kind={question.answering.kind}
      {...(question.optional && { 'data-optional': '' })}
      {...(question.tap && { 'data-tap': question.tap })}
      {...(takesFiles(question) && { enctype: 'multipart/form-data' })}
    >
      <Hidden fields={question.hidden} />
      {hasOtherButtons(question) && <EnterAnswers />}
      <AnswerFields question={question} />
      <div class="go">
        <button type="submit" name="act" value="answer" class="button main">
          {say('question.goOn')}
        </button>
        {question.optional && (
          <button type="submit" name="act" value="skip" class="button second" data-skip="">
            {question.skipLabel ?? say('question.skip')}
          </button>
        )}
      </div>
      <div class="asides">
        {question.backHref && (
          <a class="aside-link" href={question.backHref}>
            {say('question.back')}
          </a>
        )}
        {question.why && (
          <details>
            <summary>{say('question.why')}</summary>
            <p>{question.why}</p>
          </details>
        )}
        <AskPerson question={question} />
      </div>
    </form>
  )
}

const readsLabels = ({ answering }: Question): boolean =>
  answering.kind === 'label' && answering.photo !== null

const takesFiles = (question: Question): boolean =>
  question.answering.kind === 'photo' || readsLabels(question)

/** Buttons above the answer's: a label's that only reads its photo, those that move photos or mark them. */
const hasOtherButtons = (question: Question): boolean =>
  readsLabels(question) || ['photo', 'spots'].includes(question.answering.kind)

/** Enter presses a form's first button. */
const EnterAnswers = () => (
  <button type="submit" name="act" value="answer" class="unseen" tabIndex={-1} aria-hidden="true" />
)

function AskPerson({ question }: { question: Question }) {
  const say = useSay()
  const refused = errorOf(question.errors, 'note')
  const photoGoes = readsLabels(question)
  return (
    <details open={refused !== null || question.note !== ''}>
      <summary>{say('question.ask')}</summary>
      <label for="field-note">{say('question.askNote')}</label>
      {photoGoes && (
        <p class="hint" id="note-hint">
          {say('question.askPhoto')}
        </p>
      )}
      <FieldRefusal field="note" sentence={refused} />
      <textarea
        id="field-note"
        name="note"
        rows={3}
        maxLength={500}
        aria-describedby={describedBy(photoGoes && 'note-hint', refused && 'error-note')}
      >
        {question.note}
      </textarea>
      <button type="submit" name="act" value="ask" class="button second" data-ask="">
        {say('question.askSend')}
      </button>
    </details>
  )
}
